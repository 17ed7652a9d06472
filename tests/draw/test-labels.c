/* test-labels.c - labels are moved apart, stay inside, and keep clear. */
#include "draw-probe.h"
#include "draw/stead-labels.h"

static void
test_spread_leaves_alone (void)
{
  SteadEndLabel labels[] = { { 10, 10, 0 }, { 50, 10, 0 }, { 90, 10, 0 } };

  g_assert_true (stead_labels_spread (labels, 3, 0, 100));
  for (int i = 0; i < 3; i++)
    g_assert_cmpfloat (labels[i].y, ==, labels[i].want_y);
}

/* Many seeded cases: no two touch, the order holds, nothing leaves the range. */
static void
test_spread_holds (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (7);

  for (int round = 0; round < 2000; round++)
    {
      int n = g_rand_int_range (rand, 1, 9);
      double sum = 0;
      SteadEndLabel labels[8];
      gboolean fits;

      for (int i = 0; i < n; i++)
        {
          labels[i] = (SteadEndLabel) { g_rand_double_range (rand, -20, 120), g_rand_double_range (rand, 5, 25), 0 };
          sum += labels[i].height;
        }
      fits = stead_labels_spread (labels, n, 0, 100);
      g_assert_cmpint (fits, ==, sum <= 100);
      for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++)
          {
            if (i == j)
              continue;
            g_assert_cmpfloat (fabs (labels[i].y - labels[j].y), >=,
                               (labels[i].height + labels[j].height) / 2 - 1e-9);
            if (labels[i].want_y < labels[j].want_y)
              g_assert_cmpfloat (labels[i].y, <, labels[j].y);
          }
      for (int i = 0; fits && i < n; i++)
        {
          g_assert_cmpfloat (labels[i].y - labels[i].height / 2, >=, -1e-9);
          g_assert_cmpfloat (labels[i].y + labels[i].height / 2, <=, 100 + 1e-9);
        }
    }
}

static void
test_place_inside_and_clear (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (11);

  for (int round = 0; round < 2000; round++)
    {
      SteadObstacles obstacles = { .inside = { 10, 10, 400, 300 } };
      SteadBox box, block = { g_rand_double_range (rand, 10, 300), g_rand_double_range (rand, 10, 250), 80, 40 };
      double x = g_rand_double_range (rand, 10, 410), y = g_rand_double_range (rand, 10, 310);

      stead_obstacles_add_box (&obstacles, block);
      stead_obstacles_add_box (&obstacles, (SteadBox) { x - 8, y - 8, 16, 16 });
      g_assert_true (stead_labels_place (&obstacles, x, y, 120, 20, 10, &box));
      g_assert_cmpfloat (box.x, >=, 10);
      g_assert_cmpfloat (box.y, >=, 10);
      g_assert_cmpfloat (box.x + box.width, <=, 410);
      g_assert_cmpfloat (box.y + box.height, <=, 310);
      g_assert_false (stead_box_overlaps (&box, &block));
      g_assert_false (x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height);
    }
}

static void
test_place_says_when_it_cannot (void)
{
  SteadObstacles obstacles = { .inside = { 0, 0, 100, 40 } };
  SteadBox box;

  stead_obstacles_add_box (&obstacles, (SteadBox) { 0, 0, 100, 40 });
  g_assert_false (stead_labels_place (&obstacles, 50, 20, 60, 20, 5, &box));
  g_assert_cmpfloat (box.x, >=, 0);
  g_assert_cmpfloat (box.x + box.width, <=, 100);
}

static void
test_place_shuns_lines (void)
{
  SteadObstacles obstacles = { .inside = { 0, 0, 200, 200 } };
  SteadBox box;

  /* A line through the place that would come first, below right. */
  stead_obstacles_add_stroke (&obstacles, 100, 125, 200, 125);
  g_assert_true (stead_labels_place (&obstacles, 100, 100, 60, 30, 10, &box));
  g_assert_true (box.y + box.height <= 125 || box.y >= 125 || box.x + box.width <= 100);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/labels/spread-leaves-alone", test_spread_leaves_alone);
  g_test_add_func ("/draw/labels/spread-holds", test_spread_holds);
  g_test_add_func ("/draw/labels/place-inside-and-clear", test_place_inside_and_clear);
  g_test_add_func ("/draw/labels/place-says-when-it-cannot", test_place_says_when_it_cannot);
  g_test_add_func ("/draw/labels/place-shuns-lines", test_place_shuns_lines);
  return g_test_run ();
}

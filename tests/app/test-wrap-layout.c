/* test-wrap-layout.c - a row of children goes on in a next line, and none is cut off. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-wrap-layout.h"

#define CHILD_WIDTH 100
#define CHILD_HEIGHT 20
#define SPACING 6

/* A box of @n children of one size, as a GtkBox in a .ui file has it. */
static GtkWidget *
make (guint n)
{
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));

  gtk_widget_set_layout_manager (box, stead_wrap_layout_new ());
  for (guint i = 0; i < n; i++)
    {
      GtkWidget *child = gtk_drawing_area_new ();

      gtk_widget_set_size_request (child, CHILD_WIDTH, CHILD_HEIGHT);
      gtk_box_append (GTK_BOX (box), child);
    }
  return box;
}

static int
height_at (GtkWidget *box,
           int        width)
{
  int natural;

  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

static GdkRectangle
place_of (GtkWidget *box,
          guint      n)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (fixture_find (box, GTK_TYPE_DRAWING_AREA, n), box, &bounds));
  return (GdkRectangle) { (int) bounds.origin.x, (int) bounds.origin.y,
                          (int) bounds.size.width, (int) bounds.size.height };
}

static void
assert_place (GtkWidget *box,
              guint      n,
              int        x,
              int        y)
{
  GdkRectangle found = place_of (box, n);

  g_assert_cmpint (found.x, ==, x);
  g_assert_cmpint (found.y, ==, y);
  g_assert_cmpint (found.width, ==, CHILD_WIDTH);
  g_assert_cmpint (found.height, ==, CHILD_HEIGHT);
}

/* As narrow as one child, as wide as all of them in one line. */
static void
test_width (void)
{
  GtkWidget *box = make (3);
  int minimum;
  int natural;

  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);
  g_assert_cmpint (minimum, ==, CHILD_WIDTH);
  g_assert_cmpint (natural, ==, 3 * CHILD_WIDTH + 2 * SPACING);
  g_assert_finalize_object (box);
}

static void
test_height (void)
{
  GtkWidget *box = make (3);
  int all = 3 * CHILD_WIDTH + 2 * SPACING;
  int two = 2 * CHILD_WIDTH + SPACING;

  g_assert_cmpint (height_at (box, all), ==, CHILD_HEIGHT);
  g_assert_cmpint (height_at (box, all - 1), ==, 2 * CHILD_HEIGHT + SPACING);
  g_assert_cmpint (height_at (box, two), ==, 2 * CHILD_HEIGHT + SPACING);
  g_assert_cmpint (height_at (box, two - 1), ==, 3 * CHILD_HEIGHT + 2 * SPACING);
  g_assert_finalize_object (box);
}

static void
test_empty (void)
{
  GtkWidget *box = make (0);

  g_assert_cmpint (height_at (box, 500), ==, 0);
  g_assert_finalize_object (box);
}

static void
test_places (void)
{
  GtkWidget *box = make (3);
  int width = 2 * CHILD_WIDTH + SPACING;

  gtk_widget_allocate (box, width, height_at (box, width), -1, NULL);
  assert_place (box, 0, 0, 0);
  assert_place (box, 1, CHILD_WIDTH + SPACING, 0);
  assert_place (box, 2, 0, CHILD_HEIGHT + SPACING);
  g_assert_finalize_object (box);
}

static void
test_from_the_right (void)
{
  GtkWidget *box = make (3);
  int width = 2 * CHILD_WIDTH + SPACING + 10;

  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  gtk_widget_allocate (box, width, height_at (box, width), -1, NULL);
  assert_place (box, 0, width - CHILD_WIDTH, 0);
  assert_place (box, 1, width - 2 * CHILD_WIDTH - SPACING, 0);
  assert_place (box, 2, width - CHILD_WIDTH, CHILD_HEIGHT + SPACING);
  g_assert_finalize_object (box);
}

/* A hidden child leaves no gap. */
static void
test_hidden (void)
{
  GtkWidget *box = make (3);
  int width = 2 * CHILD_WIDTH + SPACING;

  gtk_widget_set_visible (fixture_find (box, GTK_TYPE_DRAWING_AREA, 1), FALSE);
  g_assert_cmpint (height_at (box, width), ==, CHILD_HEIGHT);
  gtk_widget_allocate (box, width, CHILD_HEIGHT, -1, NULL);
  assert_place (box, 2, CHILD_WIDTH + SPACING, 0);
  g_assert_finalize_object (box);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/wrap-layout/width", test_width);
  g_test_add_func ("/app/wrap-layout/height", test_height);
  g_test_add_func ("/app/wrap-layout/empty", test_empty);
  g_test_add_func ("/app/wrap-layout/places", test_places);
  g_test_add_func ("/app/wrap-layout/from-the-right", test_from_the_right);
  g_test_add_func ("/app/wrap-layout/hidden", test_hidden);
  return g_test_run ();
}

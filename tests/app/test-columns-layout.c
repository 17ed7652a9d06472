/* test-columns-layout.c - children in columns of one width, as many as there is room for. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-columns-layout.h"

#define LEAST 100
#define SPACING 12

/* A box of children as high as told; 0 ends them. */
static GtkWidget *
make (gboolean even, const int *heights)
{
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));

  gtk_widget_set_layout_manager (box, stead_columns_layout_new (3, LEAST, even));
  for (int i = 0; heights[i] != 0; i++)
    {
      GtkWidget *child = gtk_drawing_area_new ();

      gtk_widget_set_size_request (child, 50, heights[i]);
      gtk_box_append (GTK_BOX (box), child);
    }
  return box;
}

static int
height_at (GtkWidget *box, int width)
{
  int natural;

  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

static void
assert_place (GtkWidget *box, guint n, int x, int y, int width, int height)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (fixture_find (box, GTK_TYPE_DRAWING_AREA, n), box, &bounds));
  g_assert_cmpint ((int) bounds.origin.x, ==, x);
  g_assert_cmpint ((int) bounds.origin.y, ==, y);
  g_assert_cmpint ((int) bounds.size.width, ==, width);
  g_assert_cmpint ((int) bounds.size.height, ==, height);
}

/* Each goes under the shortest column. */
static void
test_packed (void)
{
  GtkWidget *box = make (FALSE, (const int []) { 100, 20, 30, 10, 0 });
  int two = 2 * LEAST + SPACING;

  g_assert_cmpint (height_at (box, two), ==, 100);
  gtk_widget_allocate (box, two, 100, -1, NULL);
  assert_place (box, 0, 0, 0, LEAST, 100);
  assert_place (box, 1, LEAST + SPACING, 0, LEAST, 20);
  assert_place (box, 2, LEAST + SPACING, 32, LEAST, 30);
  assert_place (box, 3, LEAST + SPACING, 74, LEAST, 10);
  g_assert_finalize_object (box);
}

/* In rows, each as high as its highest child. */
static void
test_even (void)
{
  GtkWidget *box = make (TRUE, (const int []) { 100, 20, 30, 10, 0 });
  int two = 2 * LEAST + SPACING;

  g_assert_cmpint (height_at (box, two), ==, 142);
  gtk_widget_allocate (box, two, 142, -1, NULL);
  assert_place (box, 0, 0, 0, LEAST, 100);
  assert_place (box, 1, LEAST + SPACING, 0, LEAST, 100);
  assert_place (box, 2, 0, 112, LEAST, 30);
  assert_place (box, 3, LEAST + SPACING, 112, LEAST, 30);
  g_assert_finalize_object (box);
}

/* Where there is no room for two there is one, however narrow; and three at most. */
static void
test_columns (void)
{
  GtkWidget *box = make (TRUE, (const int []) { 10, 10, 10, 10, 0 });
  int minimum;

  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  g_assert_cmpint (minimum, ==, 50);
  g_assert_cmpint (height_at (box, 2 * LEAST + SPACING - 1), ==, 4 * 10 + 3 * SPACING);
  g_assert_cmpint (height_at (box, 50), ==, 4 * 10 + 3 * SPACING);
  g_assert_cmpint (height_at (box, 3000), ==, 2 * 10 + SPACING);
  g_assert_finalize_object (box);
}

/* A child that needs more than the least width makes all columns wide. */
static void
test_wide_child (void)
{
  GtkWidget *box = make (TRUE, (const int []) { 10, 10, 0 });

  gtk_widget_set_size_request (fixture_find (box, GTK_TYPE_DRAWING_AREA, 1), 150, 10);
  g_assert_cmpint (height_at (box, 300 + SPACING - 1), ==, 2 * 10 + SPACING);
  g_assert_cmpint (height_at (box, 300 + SPACING), ==, 10);
  g_assert_finalize_object (box);
}

static void
test_hidden_and_from_the_right (void)
{
  GtkWidget *box = make (FALSE, (const int []) { 10, 10, 10, 0 });
  int width = 2 * LEAST + SPACING;

  gtk_widget_set_visible (fixture_find (box, GTK_TYPE_DRAWING_AREA, 1), FALSE);
  gtk_widget_set_direction (box, GTK_TEXT_DIR_RTL);
  g_assert_cmpint (height_at (box, width), ==, 10);
  gtk_widget_allocate (box, width, 10, -1, NULL);
  assert_place (box, 0, LEAST + SPACING, 0, LEAST, 10);
  assert_place (box, 2, 0, 0, LEAST, 10);
  g_assert_finalize_object (box);
}

static void
test_empty (void)
{
  GtkWidget *box = make (FALSE, (const int []) { 0 });

  g_assert_cmpint (height_at (box, 500), ==, 0);
  g_assert_finalize_object (box);
}

int
main (int argc, char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/columns-layout/packed", test_packed);
  g_test_add_func ("/app/columns-layout/even", test_even);
  g_test_add_func ("/app/columns-layout/columns", test_columns);
  g_test_add_func ("/app/columns-layout/wide-child", test_wide_child);
  g_test_add_func ("/app/columns-layout/hidden-and-from-the-right", test_hidden_and_from_the_right);
  g_test_add_func ("/app/columns-layout/empty", test_empty);
  return g_test_run ();
}

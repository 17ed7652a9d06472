/* test-level.c - fields side by side stand on one line, however long their labels are. */
#include "config.h"

#include "app-fixture.h"
#include "app/stead-field.h"
#include "app/stead-level.h"

#define COLUMN_PX 220

static GtkWidget *
grid_new (const char *first,
          const char *second)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_attach (GTK_GRID (grid), stead_field_new (first, STEAD_FIELD_COUNT), 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), stead_field_new (second, STEAD_FIELD_COUNT), 1, 0, 1, 1);
  return g_object_ref_sink (grid);
}

/* How far down the nth entry stands once the grid is as wide as two columns. */
static float
entry_top (GtkWidget *grid,
           guint      nth)
{
  GtkWidget *entry = fixture_find (grid, GTK_TYPE_ENTRY, nth);
  graphene_rect_t bounds;
  int height;

  gtk_widget_measure (grid, GTK_ORIENTATION_VERTICAL, 2 * COLUMN_PX, &height, NULL, NULL, NULL);
  gtk_widget_allocate (grid, 2 * COLUMN_PX, height, -1, NULL);
  g_assert_true (gtk_widget_compute_bounds (entry, grid, &bounds));
  return bounds.origin.y;
}

static void
test_long_beside_short (void)
{
  static const char long_label[] = "Eggs that one bird is expected to lay in the whole of her laying time";
  GtkWidget *grid = grid_new ("Birds", long_label);

  /* Without it the two differ, or this tells nothing. */
  g_assert_cmpfloat (entry_top (grid, 0), <, entry_top (grid, 1));
  stead_level_fields (grid);
  g_assert_cmpfloat (entry_top (grid, 0), ==, entry_top (grid, 1));
  g_assert_finalize_object (grid);
}

/* Labels that take a line each are no higher than they were. */
static void
test_short_labels (void)
{
  GtkWidget *grid = grid_new ("Birds", "Eggs");
  float top = entry_top (grid, 0);

  stead_level_fields (grid);
  g_assert_cmpfloat (entry_top (grid, 0), ==, top);
  g_assert_cmpfloat (entry_top (grid, 1), ==, top);
  g_assert_finalize_object (grid);
}

/* A label beside its field stays beside it: it is no label of the row. */
static void
test_compact (void)
{
  GtkWidget *grid = grid_new ("Birds", "Eggs");
  GtkWidget *field = gtk_grid_get_child_at (GTK_GRID (grid), 0, 0);
  GtkWidget *label = fixture_find (field, GTK_TYPE_LABEL, 0);
  float yalign = gtk_label_get_yalign (GTK_LABEL (label));

  g_object_set (field, "compact", TRUE, NULL);
  stead_level_fields (grid);
  g_assert_cmpfloat (gtk_label_get_yalign (GTK_LABEL (label)), ==, yalign);
  g_assert_cmpfloat (yalign, <, 1);
  g_assert_finalize_object (grid);
}

/* A grid of such fields within a grid: the row around it is not their row either. */
static void
test_compact_within (void)
{
  GtkWidget *grid = grid_new ("Birds", "Eggs"), *inner = gtk_grid_new ();
  GtkWidget *field = GTK_WIDGET (stead_field_new ("$100.00 ×", STEAD_FIELD_COUNT));
  GtkWidget *label = fixture_find (field, GTK_TYPE_LABEL, 0);
  float yalign = gtk_label_get_yalign (GTK_LABEL (label));

  g_object_set (field, "compact", TRUE, NULL);
  gtk_grid_attach (GTK_GRID (inner), field, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), inner, 0, 1, 2, 1);
  stead_level_fields (grid);
  g_assert_cmpfloat (gtk_label_get_yalign (GTK_LABEL (label)), ==, yalign);
  g_assert_null (gtk_widget_get_layout_manager (label));
  g_assert_finalize_object (grid);
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/app/level/long-beside-short", test_long_beside_short);
  g_test_add_func ("/app/level/short-labels", test_short_labels);
  g_test_add_func ("/app/level/compact", test_compact);
  g_test_add_func ("/app/level/compact-within", test_compact_within);
  return g_test_run ();
}

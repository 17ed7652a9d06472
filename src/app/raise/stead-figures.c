/* stead-figures.c - named figures one under the other. */
#include "config.h"

#include "app/raise/stead-figures.h"

void
stead_figures_clear (GtkGrid *grid)
{
  GtkWidget *child;

  g_return_if_fail (GTK_IS_GRID (grid));
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
}

static int
n_rows (GtkGrid *grid)
{
  int n = 0;

  while (gtk_grid_get_child_at (grid, 0, n) != NULL)
    n++;
  return n;
}

void
stead_figures_add (GtkGrid    *grid,
                   const char *name,
                   char       *value)
{
  GtkWidget *left, *right;
  int row;

  g_return_if_fail (GTK_IS_GRID (grid) && name != NULL);

  left = gtk_label_new (name);
  right = gtk_label_new (value != NULL ? value : "–");
  row = n_rows (grid);
  gtk_label_set_xalign (GTK_LABEL (left), 0);
  gtk_label_set_xalign (GTK_LABEL (right), 1);
  gtk_label_set_wrap (GTK_LABEL (left), TRUE);
  gtk_widget_set_hexpand (left, TRUE);
  gtk_widget_add_css_class (left, "soft");
  gtk_widget_add_css_class (right, "figure");
  gtk_widget_add_css_class (right, "strong");
  gtk_grid_attach (grid, left, 0, row, 1, 1);
  gtk_grid_attach (grid, right, 1, row, 1, 1);
  g_free (value);
}

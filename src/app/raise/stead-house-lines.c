/* stead-house-lines.c - what a house gives its birds beside what they need. */
#include "config.h"

#include "app/raise/stead-house-lines.h"

#include "app/raise/stead-figures.h"

static void
add_line (GtkGrid              *grid,
          const SteadHouseLine *line,
          int                  *row)
{
  GtkWidget *name = gtk_label_new (line->name), *text = gtk_label_new (line->text);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (text), 1);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_justify (GTK_LABEL (text), GTK_JUSTIFY_RIGHT);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_widget_add_css_class (name, "soft");
  gtk_widget_add_css_class (text, line->state == STEAD_HOUSE_SHORT ? "warn" : "figure");
  gtk_grid_attach (grid, name, 0, *row, 1, 1);
  gtk_grid_attach (grid, text, 1, (*row)++, 1, 1);
  if (line->what != NULL)
    {
      GtkWidget *what = gtk_label_new (line->what);

      gtk_label_set_xalign (GTK_LABEL (what), 0);
      gtk_label_set_wrap (GTK_LABEL (what), TRUE);
      gtk_widget_add_css_class (what, "small");
      gtk_grid_attach (grid, what, 0, (*row)++, 2, 1);
    }
}

void
stead_house_lines_show (GtkGrid                *grid,
                        const SteadHouseAnswer *house)
{
  int row = 0;

  g_return_if_fail (GTK_IS_GRID (grid));

  stead_figures_clear (grid);
  for (guint i = 0; house != NULL && i < house->lines->len; i++)
    add_line (grid, house->lines->pdata[i], &row);
  gtk_widget_set_visible (GTK_WIDGET (grid), row > 0);
}

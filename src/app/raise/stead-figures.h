/* stead-figures.h - named figures one under the other, as the views of batches show them. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void stead_figures_clear (GtkGrid *grid);
/* @value: (transfer full) (nullable): a dash stands for what is not known yet */
void stead_figures_add   (GtkGrid    *grid,
                          const char *name,
                          char       *value);

G_END_DECLS

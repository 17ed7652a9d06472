/* stead-what-if-grid.h - what is left when two things change: a table of five values of each. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-what-if-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WHAT_IF_GRID (stead_what_if_grid_get_type ())
G_DECLARE_FINAL_TYPE (SteadWhatIfGrid, stead_what_if_grid, STEAD, WHAT_IF_GRID, GtkWidget)

GtkWidget *stead_what_if_grid_new    (void);
/* @answer: (transfer none) (nullable): outlives this, or is taken away by NULL first. */
void       stead_what_if_grid_show   (SteadWhatIfGrid *self, SteadWhatIf *answer);
/* The handles of the answer stand elsewhere. */
void       stead_what_if_grid_settle (SteadWhatIfGrid *self);

G_END_DECLS

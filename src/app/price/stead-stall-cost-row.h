/* stead-stall-cost-row.h - one cost of a sale day in the product dialog. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-product-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STALL_COST_ROW (stead_stall_cost_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadStallCostRow, stead_stall_cost_row, STEAD, STALL_COST_ROW, GtkWidget)

/* Signal "removed" (): the person takes the line off. */

GtkWidget      *stead_stall_cost_row_new      (const char *currency);
void            stead_stall_cost_row_show     (SteadStallCostRow *self, const SteadStallCost *cost);
/* Returns: (transfer full) (nullable): NULL: a field says what is wrong */
SteadStallCost *stead_stall_cost_row_read     (SteadStallCostRow *self);
/* A message at the number of units. */
void            stead_stall_cost_row_complain (SteadStallCostRow *self, const char *message);

G_END_DECLS

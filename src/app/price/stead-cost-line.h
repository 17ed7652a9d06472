/* stead-cost-line.h - one line of the cost sheet, and what stands behind it. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-cost-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COST_LINE (stead_cost_line_get_type ())
G_DECLARE_FINAL_TYPE (SteadCostLine, stead_cost_line, STEAD, COST_LINE, GtkWidget)

GtkWidget *stead_cost_line_new (SteadDesk     *desk,
                                SteadCostKind  kind);
/* @answer: (nullable): read once more when the line is opened; must stay until
 * the next call.  A line whose part is not there hides itself. */
void       stead_cost_line_set (SteadCostLine         *self,
                                const SteadCostAnswer *answer);

G_END_DECLS

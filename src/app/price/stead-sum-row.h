/* stead-sum-row.h - a sum under the cost sheet, with the way it is worked out. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-words.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SUM_ROW (stead_sum_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadSumRow, stead_sum_row, STEAD, SUM_ROW, GtkWidget)

/* @total: the one that all lines add up to */
GtkWidget *stead_sum_row_new (gboolean total);
/* @why: (nullable): nothing to open then */
void       stead_sum_row_set (SteadSumRow    *self,
                              const char     *name,
                              gint64          cents,
                              const char     *currency,
                              const SteadWhy *why);

G_END_DECLS

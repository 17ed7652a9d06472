/* stead-month-grid.h - a month of checks as a calendar: each day a mark and a number. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-days-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_MONTH_GRID (stead_month_grid_get_type ())
G_DECLARE_FINAL_TYPE (SteadMonthGrid, stead_month_grid, STEAD, MONTH_GRID, GtkWidget)

/* Signal: "chosen" (gint64 list): a day was pressed; the list of it that is to be looked at first. */

GtkWidget *stead_month_grid_new  (void);
/* @answer: of one whole month, or of a part of it; nothing of it is kept.  @today is ringed. */
void       stead_month_grid_show (SteadMonthGrid *self, const SteadCheckDaysAnswer *answer, SteadDay today);

G_END_DECLS

/* stead-figure-row.h - what follows from the numbers on the chart, and why. */
#pragma once

#include <gtk/gtk.h>

#include "app/price/stead-price-model.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FIGURE_ROW (stead_figure_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadFigureRow, stead_figure_row, STEAD, FIGURE_ROW, GtkWidget)

GtkWidget *stead_figure_row_new (SteadPriceModel *model);

G_END_DECLS

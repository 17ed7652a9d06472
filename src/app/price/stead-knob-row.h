/* stead-knob-row.h - exact typing beside dragging: the field of one knob. */
#pragma once

#include <gtk/gtk.h>

#include "app/price/stead-price-model.h"

G_BEGIN_DECLS

#define STEAD_TYPE_KNOB_ROW (stead_knob_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadKnobRow, stead_knob_row, STEAD, KNOB_ROW, GtkWidget)

GtkWidget *stead_knob_row_new (SteadPriceModel *model,
                               SteadKnob        knob);

G_END_DECLS

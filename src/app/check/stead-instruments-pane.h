/* stead-instruments-pane.h - thermometers and meters, and what they showed when they were tried. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_INSTRUMENTS_PANE (stead_instruments_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadInstrumentsPane, stead_instruments_pane, STEAD, INSTRUMENTS_PANE, GtkWidget)

void stead_instruments_pane_refresh (SteadInstrumentsPane *self, SteadDesk *desk);

G_END_DECLS

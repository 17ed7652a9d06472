/* stead-drill-pane.h - recall drills: a lot, everything it touched, everyone to call, and how long it took. */
#pragma once

#include "app/stead-desk.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_DRILL_PANE (stead_drill_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadDrillPane, stead_drill_pane, STEAD, DRILL_PANE, GtkWidget)

void stead_drill_pane_refresh (SteadDrillPane *self, SteadDesk *desk);

G_END_DECLS

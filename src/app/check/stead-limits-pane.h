/* stead-limits-pane.h - the farm's own stricter limits of food safety. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LIMITS_PANE (stead_limits_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadLimitsPane, stead_limits_pane, STEAD, LIMITS_PANE, GtkWidget)

void stead_limits_pane_refresh (SteadLimitsPane *self, SteadDesk *desk);

G_END_DECLS

/* stead-coolers-pane.h - refrigerators and other cold places, each with its air over time. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COOLERS_PANE (stead_coolers_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadCoolersPane, stead_coolers_pane, STEAD, COOLERS_PANE, GtkWidget)

void stead_coolers_pane_refresh (SteadCoolersPane *self, SteadDesk *desk);

G_END_DECLS

/* stead-tank-dialog.h - the shape and the measures of a tank, and what it holds. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TANK_DIALOG (stead_tank_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTankDialog, stead_tank_dialog, STEAD, TANK_DIALOG, SteadDialog)

/* @place_id: 0 for a new tank; @water_id: what a new one stands in, 0 for none. */
void stead_tank_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 place_id, gint64 water_id);

G_END_DECLS

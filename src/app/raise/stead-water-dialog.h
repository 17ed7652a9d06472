/* stead-water-dialog.h - a water: what it is, what stands in it, how often it is tested. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WATER_DIALOG (stead_water_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadWaterDialog, stead_water_dialog, STEAD, WATER_DIALOG, SteadDialog)

/* @water_id: 0 for a new one. */
void stead_water_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 water_id);

G_END_DECLS

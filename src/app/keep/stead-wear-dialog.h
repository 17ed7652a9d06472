/* stead-wear-dialog.h - a thing that wears by use was used. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WEAR_DIALOG (stead_wear_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadWearDialog, stead_wear_dialog, STEAD, WEAR_DIALOG, SteadDialog)

/* @asset_id: a thing that wears by use; of any other the person is told why not. */
void stead_wear_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 asset_id);

G_END_DECLS

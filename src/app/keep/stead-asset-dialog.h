/* stead-asset-dialog.h - a thing that lasts for years: new, or changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ASSET_DIALOG (stead_asset_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadAssetDialog, stead_asset_dialog, STEAD, ASSET_DIALOG, SteadDialog)

/* @asset_id: 0 for a new one. */
void stead_asset_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 asset_id);

G_END_DECLS

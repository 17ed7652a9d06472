/* stead-crop-dialog.h - a crop and what is expected of it: new, or changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CROP_DIALOG (stead_crop_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadCropDialog, stead_crop_dialog, STEAD, CROP_DIALOG, SteadDialog)

/* @crop_id: 0 for a new one */
void stead_crop_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 crop_id);

G_END_DECLS

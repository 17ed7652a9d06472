/* stead-export-dialog.h - what is to leave the farm, shown before it does. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_EXPORT_DIALOG (stead_export_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadExportDialog, stead_export_dialog, STEAD, EXPORT_DIALOG, SteadDialog)

void stead_export_dialog_show (GtkWidget *parent,
                               SteadDesk *desk);

G_END_DECLS

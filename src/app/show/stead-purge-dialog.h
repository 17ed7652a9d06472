/* stead-purge-dialog.h - people who left are removed for good. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PURGE_DIALOG (stead_purge_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPurgeDialog, stead_purge_dialog, STEAD, PURGE_DIALOG, SteadDialog)

void stead_purge_dialog_show (GtkWidget *parent,
                              SteadDesk *desk);

G_END_DECLS

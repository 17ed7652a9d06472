/* stead-use-dialog.h - something of the store room goes into a batch. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_USE_DIALOG (stead_use_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadUseDialog, stead_use_dialog, STEAD, USE_DIALOG, SteadDialog)

/* @item_id: chosen at first; 0: the first item. */
void stead_use_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 item_id);

G_END_DECLS

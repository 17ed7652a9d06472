/* stead-end-dialog.h - a batch is over. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_END_DIALOG (stead_end_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadEndDialog, stead_end_dialog, STEAD, END_DIALOG, SteadDialog)

void stead_end_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);

G_END_DECLS

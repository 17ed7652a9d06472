/* stead-move-dialog.h - money that goes from one account or fund to another. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_MOVE_DIALOG (stead_move_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadMoveDialog, stead_move_dialog, STEAD, MOVE_DIALOG, SteadDialog)

/* @line_id: either half of a transfer, to look at or take back; 0: a new one, out of @account_id. */
void stead_move_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 line_id, gint64 account_id);

G_END_DECLS

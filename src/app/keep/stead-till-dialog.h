/* stead-till-dialog.h - two people count the money in a box together. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TILL_DIALOG (stead_till_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTillDialog, stead_till_dialog, STEAD, TILL_DIALOG, SteadDialog)

/* @count_id: 0: a new count, of @account_id (0: the first box). */
void stead_till_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 count_id, gint64 account_id);

G_END_DECLS

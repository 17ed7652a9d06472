/* stead-receipt-dialog.h - a receipt: new, changed, signed, or corrected. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECEIPT_DIALOG (stead_receipt_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadReceiptDialog, stead_receipt_dialog, STEAD, RECEIPT_DIALOG, SteadDialog)

/* @receipt_id: 0 for a new one, which then starts with a line for @item_id (0: any item). */
void stead_receipt_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 receipt_id, gint64 item_id);

G_END_DECLS

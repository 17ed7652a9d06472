/* stead-order-dialog.h - one order taken before a sale day. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ORDER_DIALOG (stead_order_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadOrderDialog, stead_order_dialog, STEAD, ORDER_DIALOG, SteadDialog)

/* @order_id: 0: a new one */
void stead_order_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 sale_id, gint64 order_id);

G_END_DECLS

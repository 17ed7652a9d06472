/* stead-sale-dialog.h - the whole plan of a sale day. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SALE_DIALOG (stead_sale_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadSaleDialog, stead_sale_dialog, STEAD, SALE_DIALOG, SteadDialog)

/* @sale_id: 0: a new one, with what is sold now and its prices */
void stead_sale_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 sale_id);

G_END_DECLS

/* stead-again-sale-dialog.h - the plan of a sale, copied to another day. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_AGAIN_SALE_DIALOG (stead_again_sale_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadAgainSaleDialog, stead_again_sale_dialog, STEAD, AGAIN_SALE_DIALOG, SteadDialog)

void stead_again_sale_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 sale_id);

G_END_DECLS

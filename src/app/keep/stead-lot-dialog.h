/* stead-lot-dialog.h - a lot's card: where it came from, where it went, and what
 * else happened to it. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOT_DIALOG (stead_lot_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadLotDialog, stead_lot_dialog, STEAD, LOT_DIALOG, SteadDialog)

void stead_lot_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 lot_id);

G_END_DECLS

/* stead-put-dialog.h - a lot goes to another place. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PUT_DIALOG (stead_put_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPutDialog, stead_put_dialog, STEAD, PUT_DIALOG, SteadDialog)

void stead_put_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 lot_id);

G_END_DECLS

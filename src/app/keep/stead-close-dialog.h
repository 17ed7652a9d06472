/* stead-close-dialog.h - an advisor closes the books through a day. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CLOSE_DIALOG (stead_close_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadCloseDialog, stead_close_dialog, STEAD, CLOSE_DIALOG, SteadDialog)

void stead_close_dialog_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS

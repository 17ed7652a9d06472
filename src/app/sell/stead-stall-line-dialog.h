/* stead-stall-line-dialog.h - price and amount of one product, changed in the middle of a sale. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STALL_LINE_DIALOG (stead_stall_line_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadStallLineDialog, stead_stall_line_dialog, STEAD, STALL_LINE_DIALOG, SteadDialog)

void stead_stall_line_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 sale_id, gint64 line_id);

G_END_DECLS

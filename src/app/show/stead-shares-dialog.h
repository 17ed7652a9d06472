/* stead-shares-dialog.h - how a result is shared from now on. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SHARES_DIALOG (stead_shares_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadSharesDialog, stead_shares_dialog, STEAD, SHARES_DIALOG, SteadDialog)

/* @enterprise_id: 0: of the whole farm */
void stead_shares_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 enterprise_id);

G_END_DECLS

/* stead-fund-dialog.h - money that may be used for one thing only. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FUND_DIALOG (stead_fund_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadFundDialog, stead_fund_dialog, STEAD, FUND_DIALOG, SteadDialog)

/* @fund_id: 0: a new one. */
void stead_fund_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 fund_id);

G_END_DECLS

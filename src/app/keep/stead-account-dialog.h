/* stead-account-dialog.h - where money lies: a till box, an account. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ACCOUNT_DIALOG (stead_account_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadAccountDialog, stead_account_dialog, STEAD, ACCOUNT_DIALOG, SteadDialog)

/* @account_id: 0: a new one, of @kind. */
void stead_account_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 account_id, SteadAccountKind kind);

G_END_DECLS

/* stead-bank-dialog.h - the cash book beside what the bank, or the school's bookkeeper, says. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

/* @account_id: 0: the first account that is no box. */
void stead_bank_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 account_id);

G_END_DECLS

/* stead-cash-dialog.h - one line of the cash book: money in or out, and its correction. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CASH_DIALOG (stead_cash_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadCashDialog, stead_cash_dialog, STEAD, CASH_DIALOG, SteadDialog)

/* A line that is on file.  One of a closed day is corrected by a new one that names it. */
void stead_cash_dialog_show     (GtkWidget *parent, SteadDesk *desk, gint64 line_id);
/* Money in (@sign 1) or out (-1), into or out of @account_id (0: the first one). */
void stead_cash_dialog_show_new (GtkWidget *parent, SteadDesk *desk, int sign, gint64 account_id);
/* A new line as @line has it (taken over); its sign tells whether it is in or out. */
void stead_cash_dialog_show_draft (GtkWidget *parent, SteadDesk *desk, SteadCashLine *line);
/* Money out for @receipt_id: its shop and what is open stand there already. */
void stead_cash_dialog_show_pay (GtkWidget *parent, SteadDesk *desk, gint64 receipt_id);

G_END_DECLS

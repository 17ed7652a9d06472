/* stead-ask-dialog.h - what is made or sold, and the questions that matter; then its checklist. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ASK_DIALOG (stead_ask_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadAskDialog, stead_ask_dialog, STEAD, ASK_DIALOG, SteadDialog)

/* A new list; @batch_id: of that kitchen batch, 0: chosen in the dialog.  The list is shown once it is made. */
void stead_ask_dialog_show       (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);
/* The list of a sale day; a new one if it has none yet. */
void stead_ask_dialog_show_sale  (GtkWidget *parent, SteadDesk *desk, gint64 sale_id);
/* The list made anew, from its own answers. */
void stead_ask_dialog_show_renew (GtkWidget *parent, SteadDesk *desk, gint64 list_id);

G_END_DECLS

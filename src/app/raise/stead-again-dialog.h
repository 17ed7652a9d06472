/* stead-again-dialog.h - the next batch, after the model of a former one. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_AGAIN_DIALOG (stead_again_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadAgainDialog, stead_again_dialog, STEAD, AGAIN_DIALOG, SteadDialog)

void stead_again_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);

G_END_DECLS

/* stead-label-dialog.h - labels for what is in a lot: which pack, which blanks, how many. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LABEL_DIALOG (stead_label_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadLabelDialog, stead_label_dialog, STEAD, LABEL_DIALOG, SteadDialog)

void stead_label_dialog_show (GtkWidget *parent, SteadDesk *desk, const SteadLot *lot);

G_END_DECLS

/* stead-count-dialog.h - two people count the store room. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COUNT_DIALOG (stead_count_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadCountDialog, stead_count_dialog, STEAD, COUNT_DIALOG, SteadDialog)

void stead_count_dialog_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS

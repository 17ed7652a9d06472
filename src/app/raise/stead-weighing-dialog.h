/* stead-weighing-dialog.h - some fish weighed: each by itself, or all together. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WEIGHING_DIALOG (stead_weighing_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadWeighingDialog, stead_weighing_dialog, STEAD, WEIGHING_DIALOG, SteadDialog)

/* @weighing_id: 0 for a new one */
void stead_weighing_dialog_show (GtkWidget *parent,
                                 SteadDesk *desk,
                                 gint64     batch_id,
                                 gint64     weighing_id);

G_END_DECLS

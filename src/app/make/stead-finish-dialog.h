/* stead-finish-dialog.h - what came out of a kitchen batch: good, spoiled, tasted. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FINISH_DIALOG (stead_finish_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadFinishDialog, stead_finish_dialog, STEAD, FINISH_DIALOG, SteadDialog)

/* @person_id: 0: not said */
void stead_finish_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id, gint64 person_id);

G_END_DECLS

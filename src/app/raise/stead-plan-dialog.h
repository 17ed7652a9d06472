/* stead-plan-dialog.h - what is meant with a batch, to hold the log against. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PLAN_DIALOG (stead_plan_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadPlanDialog, stead_plan_dialog, STEAD, PLAN_DIALOG, SteadDialog)

void stead_plan_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id);

G_END_DECLS

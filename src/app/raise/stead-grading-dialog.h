/* stead-grading-dialog.h - a grading sheet: eggs by weight class, and what the light found. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-egg-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_GRADING_DIALOG (stead_grading_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadGradingDialog, stead_grading_dialog, STEAD, GRADING_DIALOG, SteadDialog)

/* @grading: (nullable): the sheet to change; %NULL: a new one, of today */
void stead_grading_dialog_show (GtkWidget             *parent,
                                SteadDesk             *desk,
                                gint64                 flock_id,
                                const SteadEggGrading *grading);

G_END_DECLS

/* stead-treatment-dialog.h - a medicine that a veterinarian ordered, and the wait after it. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_TREATMENT_DIALOG (stead_treatment_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadTreatmentDialog, stead_treatment_dialog, STEAD, TREATMENT_DIALOG, SteadDialog)

/* @treatment_id: 0 for a new one */
void stead_treatment_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id, gint64 treatment_id);

G_END_DECLS

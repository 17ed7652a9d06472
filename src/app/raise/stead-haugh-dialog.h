/* stead-haugh-dialog.h - one egg broken out: weight, height of the white, Haugh units at once. */
#pragma once

#include "app/stead-dialog.h"
#include "store/stead-egg-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HAUGH_DIALOG (stead_haugh_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadHaughDialog, stead_haugh_dialog, STEAD, HAUGH_DIALOG, SteadDialog)

/* @sample: (nullable): the egg to change; %NULL: a new one, of today */
void stead_haugh_dialog_show (GtkWidget            *parent,
                              SteadDesk            *desk,
                              gint64                flock_id,
                              const SteadEggSample *sample);

G_END_DECLS

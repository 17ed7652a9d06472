/* stead-flock-dialog.h - the plan of a flock: new, or changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FLOCK_DIALOG (stead_flock_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadFlockDialog, stead_flock_dialog, STEAD, FLOCK_DIALOG, SteadDialog)

/* @flock_id: 0 for a new one.  Saving a new one jumps to it. */
void stead_flock_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     flock_id);

G_END_DECLS

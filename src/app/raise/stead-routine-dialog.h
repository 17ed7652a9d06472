/* stead-routine-dialog.h - what has to be done again and again, or once at an age, for one
 * batch or one water.
 */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ROUTINE_DIALOG (stead_routine_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadRoutineDialog, stead_routine_dialog, STEAD, ROUTINE_DIALOG, SteadDialog)

/* One of the two ids is 0. */
void stead_routine_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 batch_id, gint64 water_id);

G_END_DECLS

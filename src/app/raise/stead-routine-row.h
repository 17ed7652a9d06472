/* stead-routine-row.h - one task of a routine in its dialog. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-routine-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ROUTINE_ROW (stead_routine_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadRoutineRow, stead_routine_row, STEAD, ROUTINE_ROW, GtkWidget)

/* Signal "removed".  @of_batch: ages and degree days may be chosen, too. */
GtkWidget    *stead_routine_row_new  (gboolean of_batch, SteadDay today);
void          stead_routine_row_show (SteadRoutineRow *self, const SteadRoutine *routine);
/* (transfer full) (nullable): without its owner; %NULL when a field says what is wrong */
SteadRoutine *stead_routine_row_read (SteadRoutineRow *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-check-row-private.h - what the files of a row share: building, writing down, showing. */
#pragma once

#include "app/check/stead-check-entry.h"
#include "app/check/stead-check-row.h"
#include "app/stead-field.h"

G_BEGIN_DECLS

struct _SteadCheckRow
{
  GtkWidget               parent_instance;

  SteadDesk              *desk;
  SteadPersonPick        *person;       /* of the view */
  SteadPick              *instrument;   /* likewise */
  SteadCheckAnswer       *answer;       /* of the view, as last shown */
  const SteadCheckedLine *line;
  gint64                  line_id;
  int                     number;
  gboolean                again;        /* one more reading is wanted of a line that is met */
  gint64                  wrong_id;     /* the reading that is corrected; 0: none */

  GtkLabel               *digits, *text, *own, *state;
  GtkWidget              *reads, *todo_box, *done, *undone, *links, *why_box, *leave_box;
  GtkWidget              *why, *more, *correct, *leave, *pots, *take_back, *did, *leave_save, *done_save;
  GtkLabel               *todo, *todo_source, *reason, *source, *how;
  SteadField             *action, *leave_reason;
  SteadCheckEntry        *entry;
};

/* Of what is ticked nothing is read. */
gboolean              stead_check_row_is_tick     (SteadCheckRow *self);
gboolean              stead_check_row_is_signed   (SteadCheckRow *self);
/* (nullable): the last reading that counts; the last one that nothing was done about */
const SteadCheckRead *stead_check_row_last_read   (SteadCheckRow *self);
const SteadCheckRead *stead_check_row_failed_read (SteadCheckRow *self);

/* What buttons and Return do (stead-check-row-write.c). */
void stead_check_row_read      (SteadCheckRow *self);
void stead_check_row_done      (SteadCheckRow *self);
void stead_check_row_undone    (SteadCheckRow *self);
void stead_check_row_save_done (SteadCheckRow *self);
void stead_check_row_did       (SteadCheckRow *self);
void stead_check_row_save_left (SteadCheckRow *self);
void stead_check_row_take_back (SteadCheckRow *self);

/* It was written down: the entry goes, and the view is told. */
void stead_check_row_saved     (SteadCheckRow *self);

G_END_DECLS

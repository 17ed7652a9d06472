/* stead-check-row.h - one line of a checklist: what to check, why, what was read, and what was done. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-answer.h"
#include "app/keep/stead-pick.h"
#include "app/stead-person-pick.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHECK_ROW (stead_check_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadCheckRow, stead_check_row, STEAD, CHECK_ROW, GtkWidget)

/* Signals: "saved" (): something was written down; "pots" (): its pots are wanted. */

/* Who reads, and with what, is chosen once for the whole list. */
GtkWidget *stead_check_row_new    (SteadDesk *desk, SteadPersonPick *person, SteadPick *instrument);
/* Both must live until the next call.  What is being typed stays. */
void       stead_check_row_show   (SteadCheckRow *self, SteadCheckAnswer *answer, const SteadCheckedLine *line,
                                   int number);
gint64     stead_check_row_get_id (SteadCheckRow *self);
/* Whether something is to be done about the line. */
gboolean   stead_check_row_is_open (SteadCheckRow *self);
/* What was typed last about when and who is proposed for @next, where the sheet is typed in later. */
void       stead_check_row_carry  (SteadCheckRow *self, SteadCheckRow *next);
/* Where the next reading is typed, or ticked. */
void       stead_check_row_focus  (SteadCheckRow *self);

G_END_DECLS

/* stead-check-entry.h - where one reading is typed: what was shown, for how long, when. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHECK_ENTRY (stead_check_entry_get_type ())
G_DECLARE_FINAL_TYPE (SteadCheckEntry, stead_check_entry, STEAD, CHECK_ENTRY, GtkWidget)

/* Signal: "read" (): Return, or the button; then ask stead_check_entry_read(). */

GtkWidget *stead_check_entry_new   (void);
void       stead_check_entry_show  (SteadCheckEntry *self, SteadCheckAnswer *answer, const SteadCheckedLine *line,
                                    int number);
/* The same for a pot of the line; its fields bear the pot's name. */
void       stead_check_entry_show_pot (SteadCheckEntry *self, SteadCheckAnswer *answer, const SteadCheckedLine *line,
                                       const char *name);
/* Fills in value, scale, how long it was so, and when; of a sanitizer also what it is made of.
 * %FALSE: something is asked, or said at a field. */
gboolean   stead_check_entry_read  (SteadCheckEntry *self, SteadCheckAnswer *answer, const SteadCheckedLine *line,
                                    SteadShown *shown, SteadSolution *solution);
/* When and by whom a line of a list of an earlier day was ticked; %FALSE: something is said at a field.
 * On the day itself it is now, and who is not said here. */
gboolean   stead_check_entry_read_tick (SteadCheckEntry *self, SteadCheckAnswer *answer, SteadShown *shown);
/* Whether the list is of an earlier day, so that it is typed in from paper; once shown. */
gboolean   stead_check_entry_is_on_paper (SteadCheckEntry *self);
/* Of a list of an earlier day: what was typed last about when and who is proposed for the next line. */
void       stead_check_entry_carry (SteadCheckEntry *self, SteadCheckEntry *next);
/* Whether it corrects a wrong reading: then its time stays, unless one is typed. */
void       stead_check_entry_set_corrects (SteadCheckEntry *self, gboolean corrects);
void       stead_check_entry_complain (SteadCheckEntry *self, const char *message);
void       stead_check_entry_clear (SteadCheckEntry *self);
void       stead_check_entry_focus (SteadCheckEntry *self);

G_END_DECLS

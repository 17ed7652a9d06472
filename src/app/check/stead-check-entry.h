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
/* Whether it corrects a wrong reading: then its time stays, unless one is typed. */
void       stead_check_entry_set_corrects (SteadCheckEntry *self, gboolean corrects);
void       stead_check_entry_complain (SteadCheckEntry *self, const char *message);
void       stead_check_entry_clear (SteadCheckEntry *self);
void       stead_check_entry_focus (SteadCheckEntry *self);

G_END_DECLS

/* stead-chips.h - a row of choices, one of them chosen, and a way to add one.
 *
 * Left and Right move along the row, as in any group of radio buttons.  Widgets that
 * a ui file puts into it stand after the chips, at the far end of the last line.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_CHIPS (stead_chips_get_type ())
G_DECLARE_FINAL_TYPE (SteadChips, stead_chips, STEAD, CHIPS, GtkWidget)

/* Signals: "chosen" (gint64 id), "add" ().  Property "add-label": text of the last
 * chip, which adds; no such chip while it is NULL. */

GtkWidget *stead_chips_new    (void);
/* Takes all chips away but the one that adds. */
void       stead_chips_clear  (SteadChips *self);
void       stead_chips_append (SteadChips *self, gint64 id, const char *label);
/* Chooses without the signal; an unknown @id chooses none. */
void       stead_chips_choose (SteadChips *self, gint64 id);
gint64     stead_chips_get    (SteadChips *self);   /* 0: none */
/* (transfer none) (nullable): the chip that adds, for what pops up from it. */
GtkWidget *stead_chips_get_add (SteadChips *self);

G_END_DECLS

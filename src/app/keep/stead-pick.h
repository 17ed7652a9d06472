/* stead-pick.h - a labelled choice of one of several things that have ids, with room for
 * a word about what was chosen.
 *
 * In a .ui file: <object class="SteadPick"><property name="label" translatable="yes">Account</property></object>
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_PICK (stead_pick_get_type ())
G_DECLARE_FINAL_TYPE (SteadPick, stead_pick, STEAD, PICK, GtkWidget)

/* Property: "label".  Signal: "changed" (), only when a person chooses. */

GtkWidget *stead_pick_new    (const char *label);
/* Takes all choices away. */
void       stead_pick_clear  (SteadPick *self);
/* Adds a choice; the first one is chosen until another is.  @id: of any sign, 0 for "none". */
void       stead_pick_append (SteadPick *self, gint64 id, const char *text);
/* Shows the choices that were appended.  Chooses @id, or the first one if it is not there.  While "changed" is emitted
 * a list that differs comes only after that. */
void       stead_pick_show   (SteadPick *self, gint64 id);
gint64     stead_pick_get    (SteadPick *self);   /* 0: nothing to choose from */
guint      stead_pick_count  (SteadPick *self);
/* The text of what is chosen; (transfer none) (nullable). */
const char *stead_pick_get_text (SteadPick *self);
/* @text: (nullable): shown under the choice; @is_wrong: as something to be mended. */
void       stead_pick_say    (SteadPick *self, const char *text, gboolean is_wrong);

G_END_DECLS

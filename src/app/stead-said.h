/* stead-said.h - the quiet strip at the bottom: what was saved, with its Undo, or what was left unsaved. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_SAID (stead_said_get_type ())
G_DECLARE_FINAL_TYPE (SteadSaid, stead_said, STEAD, SAID, GtkWidget)

/* One thing at a time, gone after ten seconds unless the pointer or the keys are
 * on it.  It never takes the focus.  Its button is the action "win.undo". */

GtkWidget *stead_said_new  (void);
void       stead_said_show (SteadSaid *self, const char *text, gboolean with_undo);
/* Takes @dialog over and hides it: a button shows it again.  It is destroyed when the strip
 * says something else or nothing more. */
void       stead_said_offer (SteadSaid *self, const char *text, GtkWindow *dialog);
/* With the button @label, which does @action: "window.close". */
void       stead_said_ask  (SteadSaid *self, const char *text, const char *label, const char *action);
/* Returns: whether stead_said_ask() stands there with this text */
gboolean   stead_said_asks (SteadSaid *self, const char *text);
void       stead_said_hide (SteadSaid *self);

G_END_DECLS

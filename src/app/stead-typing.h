/* stead-typing.h - Ctrl+Z takes back what was done last: typing in the field that has
 * the focus, or else the farm's last step.
 *
 * A field's typing is its own until the farm changes: what was typed before that went
 * into the step, or was left behind by it, and taking it back would only refill a form
 * that the step emptied.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

/* Gives windows of @widget_class the actions "win.undo-here" and "win.redo-here"; where
 * the field has nothing of its own they go on to "win.undo" and "win.redo". */
void stead_typing_install (GtkWidgetClass *widget_class);

/* Follows the fields of @window that get the focus, and the steps of @desk. */
void stead_typing_watch   (GtkWindow *window,
                           SteadDesk *desk);

G_END_DECLS

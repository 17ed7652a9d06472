/* stead-focus.h - widgets that hand the focus on to a part of theirs. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What grab_focus of such a @widget does.  GTK 4.8 asks for it, too, when Shift+Tab is about to leave
 * the widget: if the focus came to @part again, the keyboard could never go back past it. */
static inline gboolean
stead_focus_part (GtkWidget *widget,
                  GtkWidget *part)
{
  return gtk_widget_get_focus_child (widget) == NULL && gtk_widget_grab_focus (part);
}

G_END_DECLS

/* stead-help-window.h - the help: its pages at the left, one of them at the right. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define STEAD_TYPE_HELP_WINDOW (stead_help_window_get_type ())
G_DECLARE_FINAL_TYPE (SteadHelpWindow, stead_help_window, STEAD, HELP_WINDOW, GtkWindow)

GtkWidget *stead_help_window_new  (void);

/* @name: of a page of the guide: "price".  Nothing happens where there is none of that name. */
void       stead_help_window_show (SteadHelpWindow *self, const char *name);

/* Shows the page in the one help window of @application, which is made when first needed;
 * @name: (nullable): the page that it shows already. */
void       stead_help_window_present (GtkApplication *application, const char *name);

/* Closes the help window of @application, if it is open. */
void       stead_help_window_close   (GtkApplication *application);

G_END_DECLS

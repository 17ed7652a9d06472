/* stead-window-private.h - the window as its own files share it: the frame, the
 * farm file, the dialogs.
 */
#pragma once

#include "app/stead-window.h"

G_BEGIN_DECLS

/* The farm file that the window is about, open or not. */
void stead_window_set_path   (SteadWindow *self, const char *path);
/* Shows @page alone, without posts: welcome, new farm, trouble. */
void stead_window_show_alone (SteadWindow *self, GtkWidget *page);
/* Takes the places away and closes the farm. */
void stead_window_close_farm (SteadWindow *self);
/* A band over the place; NULL takes it away. @with_copy: with the button "Save a copy". */
void stead_window_set_notice (SteadWindow *self, const char *text, gboolean with_copy);

/* Each adds its actions to the class. */
void stead_window_install_files   (GtkWidgetClass *widget_class);
void stead_window_install_rescue  (GtkWidgetClass *widget_class);
void stead_window_install_dialogs (GtkWidgetClass *widget_class);

/* What a window without a farm shows. */
void stead_window_welcome (SteadWindow *self);

G_END_DECLS

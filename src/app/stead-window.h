/* stead-window.h - one window: one farm, its posts and its places. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WINDOW (stead_window_get_type ())
G_DECLARE_FINAL_TYPE (SteadWindow, stead_window, STEAD, WINDOW, GtkApplicationWindow)

/* Shows the welcome until a farm is opened. */
GtkWidget  *stead_window_new       (GtkApplication *application);
SteadDesk  *stead_window_get_desk  (SteadWindow *self);
/* (nullable): of the farm that is shown, or that could not be opened */
const char *stead_window_get_path  (SteadWindow *self);
/* Opens a farm here; what stands in the way is shown as a page. */
void        stead_window_open      (SteadWindow *self, const char *path);
/* Takes over a farm that is open already. */
void        stead_window_take      (SteadWindow *self, SteadStore *store);
/* Goes to a place by its name: "today". */
void        stead_window_go        (SteadWindow *self, const char *place);
/* (nullable): the name of the place that is shown */
const char *stead_window_get_place (SteadWindow *self);

G_END_DECLS

/* stead-people-window.h - who works on the farm. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PEOPLE_WINDOW (stead_people_window_get_type ())
G_DECLARE_FINAL_TYPE (SteadPeopleWindow, stead_people_window, STEAD, PEOPLE_WINDOW, GtkWindow)

void stead_people_window_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS

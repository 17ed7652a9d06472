/* stead-counts-window.h - what was counted in the store room, and what differed. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

void stead_counts_window_show (GtkWidget *parent, SteadDesk *desk);

G_END_DECLS

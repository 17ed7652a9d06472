/* stead-flock-view.h - one flock in Raise: its day, its chart, its log. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FLOCK_VIEW (stead_flock_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadFlockView, stead_flock_view, STEAD, FLOCK_VIEW, GtkWidget)

GtkWidget *stead_flock_view_new   (SteadDesk *desk);
void       stead_flock_view_show  (SteadFlockView *self, gint64 flock_id);
/* Puts the cursor where the day's first number goes. */
void       stead_flock_view_focus (SteadFlockView *self);

G_END_DECLS

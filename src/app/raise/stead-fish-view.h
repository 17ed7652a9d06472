/* stead-fish-view.h - one group of fish in Raise: its day, its log, its weighings, its growth. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FISH_VIEW (stead_fish_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadFishView, stead_fish_view, STEAD, FISH_VIEW, GtkWidget)

GtkWidget *stead_fish_view_new   (SteadDesk *desk);
/* Reads the answer anew; what stands typed in the form for the same group stays. */
void       stead_fish_view_show  (SteadFishView *self, gint64 fish_id);
/* To the form of the day. */
void       stead_fish_view_focus (SteadFishView *self);

G_END_DECLS

/* stead-egg-view.h - the grading of a flock's eggs: sheets, broken-out eggs, what they say. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_EGG_VIEW (stead_egg_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadEggView, stead_egg_view, STEAD, EGG_VIEW, GtkWidget)

void stead_egg_view_show (SteadEggView *self,
                          SteadDesk    *desk,
                          gint64        flock_id);

G_END_DECLS

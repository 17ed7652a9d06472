/* stead-season-view.h - all sale days: a calendar, and what does best. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SEASON_VIEW (stead_season_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadSeasonView, stead_season_view, STEAD, SEASON_VIEW, GtkBox)

/* Reads all sales anew and shows them. */
void stead_season_view_show (SteadSeasonView *self, SteadDesk *desk);

G_END_DECLS

/* stead-climate-view.h - a crop's thermometer day by day, gaps among them. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-crop-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CLIMATE_VIEW (stead_climate_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadClimateView, stead_climate_view, STEAD, CLIMATE_VIEW, GtkWidget)

void stead_climate_view_show (SteadClimateView *self, SteadDesk *desk, const SteadCropAnswer *answer);

G_END_DECLS

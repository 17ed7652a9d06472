/* stead-heat-view.h - what it costs to keep a crop's bay warm, month by month. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-crop-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_HEAT_VIEW (stead_heat_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadHeatView, stead_heat_view, STEAD, HEAT_VIEW, GtkWidget)

void stead_heat_view_show (SteadHeatView *self, SteadDesk *desk, const SteadCropAnswer *answer);

G_END_DECLS

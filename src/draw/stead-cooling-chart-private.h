/* stead-cooling-chart-private.h - what the layout and the paint of the cooling chart share. */
#pragma once

#include "draw/stead-cooling-chart.h"

G_BEGIN_DECLS

#define STEAD_COOLING_TICK_GAP 7.0

SteadAxis stead_cooling_chart_y_axis (const SteadCoolingLayout *layout);

G_END_DECLS

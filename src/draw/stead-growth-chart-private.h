/* stead-growth-chart-private.h - what the layout and the paint of the growth chart share. */
#pragma once

#include "draw/stead-growth-chart.h"

G_BEGIN_DECLS

#define STEAD_GROWTH_TICK_GAP 7.0

SteadAxis stead_growth_chart_y_axis (const SteadGrowthLayout *layout);

G_END_DECLS

/* stead-trend-chart-private.h - what the layout and the paint of the trend chart share. */
#pragma once

#include "draw/stead-day-axis.h"
#include "draw/stead-trend-chart.h"

G_BEGIN_DECLS

#define STEAD_TREND_TICK_GAP 7.0

SteadAxis stead_trend_chart_y_axis (const SteadTrendLayout *layout);

G_END_DECLS

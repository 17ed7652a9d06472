/* stead-harvest-chart-private.h - what the layout and the paint of the harvest chart share. */
#pragma once

#include "draw/stead-harvest-chart.h"

G_BEGIN_DECLS

#define STEAD_HARVEST_TICK_GAP 7.0

SteadAxis stead_harvest_chart_x_axis (const SteadHarvestLayout *layout);
SteadAxis stead_harvest_chart_y_axis (const SteadHarvestLayout *layout);

/* The middle of a week. */
double stead_harvest_chart_week_x (const SteadHarvestLayout *layout,
                                   const SteadPickWeek      *week);

G_END_DECLS

/* stead-day-axis.h - an axis of days, with round steps of weeks and their dates. */
#pragma once

#include "core/stead-calendar.h"
#include "draw/stead-axis.h"

G_BEGIN_DECLS

/**
 * stead_day_axis:
 * @first: the left end
 * @last: the right end, after @first
 * @width: of the plot
 *
 * Steps of one, two, four, eight, … weeks from @first on, as many as have room for
 * their dates; over about ten months the dates have their year.
 *
 * Returns: the axis, in days
 */
SteadAxis stead_day_axis (cairo_t              *cr,
                          const SteadDrawStyle *style,
                          SteadDay              first,
                          SteadDay              last,
                          double                width);

/* Where a day stands in the plot. */
double stead_day_axis_x (const SteadAxis *axis,
                         const SteadBox  *plot,
                         SteadDay         day);

G_END_DECLS

/* stead-lay-chart-private.h - what the layout and the paint of the laying chart share. */
#pragma once

#include "draw/stead-axis.h"
#include "draw/stead-lay-chart.h"

G_BEGIN_DECLS

#define STEAD_LAY_TICK_GAP 7.0

SteadAxis stead_lay_chart_x_axis    (const SteadLayLayout *layout);
SteadAxis stead_lay_chart_y_axis    (const SteadLayLayout *layout);
SteadAxis stead_lay_chart_feed_axis (const SteadLayLayout *layout,
                                     const SteadLayWords  *words);

double stead_lay_chart_x (const SteadLayLayout *layout,
                          double                age_weeks);
double stead_lay_chart_y (const SteadLayLayout *layout,
                          double                frac);

/* Looks for a free place for the notes, the latest first. */
void stead_lay_chart_place_notes (cairo_t              *cr,
                                  const SteadLaySeries *series,
                                  const SteadDrawStyle *style,
                                  SteadLayLayout       *layout);

/* Whether every note of that kind has its place, so that no key needs to name them. */
gboolean stead_lay_chart_all_noted (const SteadLaySeries *series,
                                    const SteadLayLayout *layout,
                                    gboolean              far_off);

/* kg a hen and day in the week; 0: none entered */
double stead_lay_feed_kg (const SteadLayWeek *week);

/* From kg to the unit that feed is shown in; 1 where the caller gave none. */
double stead_lay_feed_factor (const SteadLayWords *words);

G_END_DECLS

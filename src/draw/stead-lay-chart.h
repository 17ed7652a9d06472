/* stead-lay-chart.h - eggs per 100 hens a day by age, with deaths and feed. */
#pragma once

#include "core/stead-flock.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  const char *rate;        /* (nullable): over the left axis, "eggs per 100 hens a day" */
  const char *axis;        /* "age of the flock, weeks" */
  const char *expected;    /* "expected" at the end of the curve */
  const char *today;       /* "today" */
  const char *lost;        /* "hens lost" */
  const char *feed;        /* "feed, lb a hen a day" */
  const char *left_out;    /* "left out" */
  const char *far_off;     /* "far off the curve" */
  const char *forecast;    /* at the end of the dashed line, "forecast 70%" */
  const char *band_high;   /* at the upper end of the band, "8 times in 10 under 79%" */
  const char *band_low;    /* at the lower end, "and over 60%" */
  const char *band;        /* both in one, where there is no room beside: "8 times in 10: 60 to 79%" */
  double      feed_factor; /* from kg to the unit that feed is shown in */
} SteadLayWords;

#define STEAD_LAY_MAX_NOTES 6

typedef struct
{
  SteadBox    plot;             /* eggs */
  SteadBox    feed_plot;        /* the band under it; height 0 without feed */
  double      min_age, max_age; /* weeks */
  SteadTicks  x_ticks;
  double      max_feed;         /* kg a hen and day at the top of the band */
  double      lost_y;           /* where the crosses of lost hens stand */
  double      today_x;
  double      max_frac;         /* rate at the top of the plot: 1, more only if a hen laid more */
  SteadTicks  y_ticks, feed_ticks;
  double      font_size;        /* the text that this box carries */
  double      point_radius;     /* of a week's dot; smaller where they stand close */
  gboolean    narrow;           /* named by keys over the plot, not beside it */
  gboolean    has_curve, has_lost, has_left_out, has_far_off, has_today;
  double      curve_end_x, curve_end_y;
  double      right_labels_x, right_labels_width;
  int         n_keys;
  SteadKey    keys[STEAD_MAX_KEYS];

  /* Of the latest notes those that found a free place by their points. */
  int         n_notes;
  gsize       notes[STEAD_LAY_MAX_NOTES];        /* index into the series' notes */
  SteadBox    note_boxes[STEAD_LAY_MAX_NOTES];
  double      note_width;       /* lines of notes break there */

  /* What each text covers; width 0 where there is none. */
  SteadBox    expected_box, lost_box, feed_box, left_out_box, far_off_box, today_box, rate_box, axis_box;
  SteadBox    forecast_box, band_high_box, band_low_box, band_box;
} SteadLayLayout;

void stead_lay_chart_layout (cairo_t              *cr,
                             const SteadLaySeries *series,
                             const SteadLayWords  *words,
                             const SteadDrawStyle *style,
                             double                width,
                             double                height,
                             SteadLayLayout       *out);

/* The point of one week; %FALSE if it has no rate. */
gboolean stead_lay_chart_point (const SteadLayLayout *layout,
                                const SteadLayWeek   *week,
                                double               *x,
                                double               *y);

/* The week whose point is nearest to @x, or -1: values under the pointer, stepping by keys. */
int stead_lay_chart_nearest (const SteadLayLayout *layout,
                             const SteadLaySeries *series,
                             double                x);

/* The age at @x, whether inside the plot or not: what is forecast under the pointer. */
double stead_lay_chart_age (const SteadLayLayout *layout,
                            double                x);

/* @marked: the week to ring, or -1 */
void stead_lay_chart_paint (cairo_t              *cr,
                            const SteadLaySeries *series,
                            const SteadLayWords  *words,
                            const SteadDrawStyle *style,
                            const SteadLayLayout *layout,
                            int                   marked);

G_END_DECLS

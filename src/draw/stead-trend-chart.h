/* stead-trend-chart.h - one reading over time, with the limits of those that live by it. */
#pragma once

#include "core/stead-reading-series.h"
#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  const char *unit;         /* (nullable): over the left axis, "mg/L" */
  const char *today;        /* "today" */
  const char *most;         /* names of the four ends; (nullable) where there is none: "most 1 mg/L" */
  const char *least;
  const char *harm_above;   /* "harm above 5 mg/L" */
  const char *harm_below;
  const char *ahead;        /* "if it goes on so" */
} SteadTrendWords;

typedef struct
{
  SteadBox   plot;
  double     low, high;          /* of the left axis */
  SteadTicks y_ticks;
  SteadDay   from, to;
  SteadAxis  days;               /* of the lower axis */
  double     font_size;          /* the text that this box carries */
  double     point_radius;
  gboolean   narrow;             /* named by keys over the plot, not beside it */
  double     today_x;
  double     right_labels_x, right_labels_width;
  int        n_keys;
  SteadKey   keys[STEAD_MAX_KEYS];
  int        arrows[STEAD_MAX_KEYS];   /* 1 (-1): what is named lies above (under) the plot */

  /* What each text covers; width 0 where there is none. */
  SteadBox   today_box, unit_box;
} SteadTrendLayout;

/**
 * stead_trend_chart_layout:
 *
 * The axis holds all points; an end of the limits that lies far off is named at the
 * edge with an arrow instead of pressing the points flat.
 */
void stead_trend_chart_layout (cairo_t                  *cr,
                               const SteadReadingSeries *series,
                               const SteadTrendWords    *words,
                               const SteadDrawStyle     *style,
                               double                    width,
                               double                    height,
                               SteadTrendLayout         *out);

/* @marked: a point to ring, or -1 */
void stead_trend_chart_paint (cairo_t                  *cr,
                              const SteadReadingSeries *series,
                              const SteadTrendWords    *words,
                              const SteadDrawStyle     *style,
                              const SteadTrendLayout   *layout,
                              int                       marked);

/* Where a point stands; where a day and a value would. */
void   stead_trend_chart_point (const SteadTrendLayout   *layout,
                                const SteadReadingPoint  *point,
                                double                   *x,
                                double                   *y);
double stead_trend_chart_x     (const SteadTrendLayout   *layout,
                                double                    day);
double stead_trend_chart_y     (const SteadTrendLayout   *layout,
                                double                    value);

/* The point nearest to @x; -1 if there is none. */
int    stead_trend_chart_nearest (const SteadTrendLayout   *layout,
                                  const SteadReadingSeries *series,
                                  double                    x);

G_END_DECLS

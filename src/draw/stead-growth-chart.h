/* stead-growth-chart.h - the weight of a fish over time: weighings, what is learned, what is expected. */
#pragma once

#include "core/stead-growth-series.h"
#include "draw/stead-axis.h"
#include "draw/stead-key.h"

G_BEGIN_DECLS

typedef struct
{
  const char *weight;       /* (nullable): over the left axis, "weight of a fish, lb" */
  const char *expected;     /* "expected" at the end of the line ahead */
  const char *today;        /* "today" */
  const char *sale;         /* "sale weight" */
  const char *sale_day;     /* (nullable): over the plot, "80 in 100: Jun 12" */
  const char *lost;         /* "fish lost" */
  const char *not_counted;  /* "weighing not counted" */
  double      factor;       /* from grams to the unit that weights are shown in */
} SteadGrowthWords;

typedef struct
{
  SteadBox   plot;
  SteadAxis  x_axis;           /* days */
  SteadTicks y_ticks;          /* in the unit shown */
  double     max_g;            /* at the top of the plot */
  double     factor;
  double     font_size;        /* the text that this box carries */
  gboolean   narrow;           /* named by keys over the plot, not beside it */
  gboolean   has_ahead, has_lost, has_not_counted, has_today, has_sale, has_sale_day;
  double     lost_y;           /* where the crosses of lost fish stand */
  double     today_x, sale_x, sale_y;
  double     soonest_x, latest_x;   /* ends of the bar of likely sale days */
  double     right_labels_x, right_labels_width;
  int        n_keys;
  SteadKey   keys[STEAD_MAX_KEYS];

  /* What each text covers; width 0 where there is none. */
  SteadBox   expected_box, sale_box, lost_box, not_counted_box, today_box, sale_day_box, weight_box;
} SteadGrowthLayout;

void stead_growth_chart_layout (cairo_t                 *cr,
                                const SteadGrowthSeries *series,
                                const SteadGrowthWords  *words,
                                const SteadDrawStyle    *style,
                                double                   width,
                                double                   height,
                                SteadGrowthLayout       *out);

double stead_growth_chart_x (const SteadGrowthLayout *layout,
                             SteadDay                 day);
double stead_growth_chart_y (const SteadGrowthLayout *layout,
                             double                   weight_g);

/* The weighing, or the point of the line, nearest to @x; -1 if there is none. */
int stead_growth_chart_nearest_mark (const SteadGrowthLayout *layout,
                                     const SteadGrowthSeries *series,
                                     double                   x);
int stead_growth_chart_nearest_step (const SteadGrowthLayout *layout,
                                     const SteadGrowthSeries *series,
                                     double                   x);

void stead_growth_chart_paint (cairo_t                 *cr,
                               const SteadGrowthSeries *series,
                               const SteadGrowthWords  *words,
                               const SteadDrawStyle    *style,
                               const SteadGrowthLayout *layout);

G_END_DECLS

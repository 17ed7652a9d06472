/* stead-growth-series.h - the weights of a group of fish over time, as a chart shows them.
 *
 * Weights are grams a fish.  The arrays belong to whoever filled them in.
 */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

/* One weighing. */
typedef struct
{
  SteadDay day;
  gint64   n;          /* fish in the sample */
  double   mean_g;
  double   sd_g;       /* of single fish; NAN: weighed in bulk */
  gboolean far_off;    /* the curve does not follow it */
  gboolean left_out;   /* not to learn from */
} SteadGrowthMark;

/* Mean weight of all on one day: learned up to today, expected after. */
typedef struct
{
  SteadDay day;
  double   low_g, likely_g, high_g;   /* all the same where nothing is unsure */
} SteadGrowthStep;

/* Fish that died or were taken out on one day. */
typedef struct
{
  SteadDay day;
  gint64   n;
} SteadGrowthLoss;

typedef struct
{
  const SteadGrowthMark *marks;    /* by day */
  gsize                  n_marks;
  const SteadGrowthStep *steps;    /* by day; two of one day where fish came or went */
  gsize                  n_steps;
  const SteadGrowthLoss *losses;   /* by day */
  gsize                  n_losses;
  SteadDay               first;    /* day of stocking */
  SteadDay               today;    /* STEAD_DAY_NONE: over */
  double                 sale_g;   /* from which a fish can be sold; NAN: not shown */
  SteadDay               sale_day; /* the chosen share has it; STEAD_DAY_NONE: not known */
  SteadDay               sale_soonest, sale_latest;   /* STEAD_DAY_NONE: past the chart */
} SteadGrowthSeries;

G_END_DECLS

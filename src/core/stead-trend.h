/* stead-trend.h - where a reading is going: a straight line through the last few.
 *
 * Each reading is known only as well as the kit reads, and a few of them tell
 * little: the line carries its uncertainty along, and says nothing where up or
 * down cannot be told.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A line through readings; days are counted from the last one. */
typedef struct
{
  double level;       /* at the last reading */
  double slope;       /* a day */
  double level_var;   /* variance of the level, */
  double slope_var;   /* of the slope, */
  double cov;         /* and what they share */
  double span_days;   /* from the first reading to the last */
  int    n;           /* readings */
} SteadTrend;

/* Half of the 80 % band, in standard deviations: 0.9 quantile of the normal law. */
#define STEAD_TREND_BAND 1.2815515655446004

/* A line is carried on no further than this, nor twice as far as it was measured. */
#define STEAD_TREND_MAX_DAYS 60

/**
 * stead_trend_fit:
 * @days: (array length=n): of the readings, in order
 * @values: (array length=n): what was read
 * @sds: (array length=n): standard deviation of each reading, above 0
 * @n: 2 or more
 * @out: (out): the line
 *
 * Weighted least squares (GSL).  Where three readings or more scatter wider than
 * @sds says, the variances grow by chi-square over its degrees of freedom.
 *
 * Returns: %TRUE, or %FALSE where all readings are of one time or fewer than two
 */
gboolean stead_trend_fit (const double *days,
                          const double *values,
                          const double *sds,
                          gsize         n,
                          SteadTrend   *out);

/**
 * stead_trend_at: what the line says so many days after the last reading
 * stead_trend_sd: standard deviation of that
 */
double stead_trend_at (const SteadTrend *trend,
                       double            days_ahead);
double stead_trend_sd (const SteadTrend *trend,
                       double            days_ahead);

/**
 * stead_trend_told:
 *
 * Returns: whether up or down can be told: zero lies outside of the 80 % band of the slope
 */
gboolean stead_trend_told (const SteadTrend *trend);

/**
 * stead_trend_horizon_days:
 *
 * Returns: days that the line may be carried on: twice its span, at most
 *   %STEAD_TREND_MAX_DAYS (our own rule: a few readings know no more)
 */
int stead_trend_horizon_days (const SteadTrend *trend);

G_END_DECLS

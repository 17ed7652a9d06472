/* stead-run-chart.h - whether a row of figures is chance, or something changed.
 *
 * For cash over and short by drawer, takings by market, practice scores: a line through
 * the median, and two signs that chance alone seldom gives.
 * Source: Perla, Provost and Murray, The run chart: a simple analytical tool for learning
 * from variation in healthcare processes (2011), rules 1 and 2; from memory.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* So many points in a row on one side of the median are a shift; points on it are passed
 * over. */
#define STEAD_RUN_SHIFT 6

/* So many points in a row that all rise or all fall are a trend; of equal ones in a row
 * one counts. */
#define STEAD_RUN_TREND 5

/* With fewer points the signs say nothing. */
#define STEAD_RUN_LEAST 10

/* A sign, by the points that make it. */
typedef struct
{
  gboolean found;
  gsize    first;    /* from 0 */
  gsize    last;
  gboolean upward;   /* above the median, or rising */
} SteadRunSign;

typedef struct
{
  double       median;
  gboolean     can_tell;   /* there are enough points */
  SteadRunSign shift;      /* the latest one */
  SteadRunSign trend;      /* the latest one */
} SteadRunChart;

/**
 * stead_run_chart:
 * @values: (array length=n): in the order of time
 * @n: 1 or more
 * @out: (out): median and signs; without signs where @can_tell is %FALSE
 *
 * Returns: %FALSE, with @out left alone, if a value cannot be
 */
gboolean stead_run_chart (const double  *values,
                          gsize          n,
                          SteadRunChart *out);

G_END_DECLS

/* stead-run-chart.c - whether a row of figures is chance, or something changed. */
#include "config.h"

#include "core/stead-run-chart.h"

#include <gsl/gsl_sort.h>
#include <gsl/gsl_statistics.h>
#include <math.h>

/* -1, 0 or 1. */
static int
sign_of (double difference)
{
  return (difference > 0) - (difference < 0);
}

/* A row of points that are all on one side, or all go one way. */
typedef struct
{
  int   side;
  gsize first;
  gsize last;
  gsize n;
} Row;

static void
keep_sign (const Row    *row,
           gsize         least,
           SteadRunSign *sign)
{
  if (row->side != 0 && row->n >= least)
    *sign = (SteadRunSign) { TRUE, row->first, row->last, row->side > 0 };
}

static void
find_shift (const double *values,
            gsize         n,
            double        median,
            SteadRunSign *sign)
{
  Row row = { 0 };

  for (gsize i = 0; i < n; i++)
    {
      int side = sign_of (values[i] - median);

      if (side == 0)
        continue;
      if (side != row.side)
        row = (Row) { side, i, i, 0 };
      row.n++;
      row.last = i;
      keep_sign (&row, STEAD_RUN_SHIFT, sign);
    }
}

/* The point before a turn begins the row after it, too. */
static void
find_trend (const double *values,
            gsize         n,
            SteadRunSign *sign)
{
  Row row = { 0, 0, 0, 1 };

  for (gsize i = 1; i < n; i++)
    {
      int side = sign_of (values[i] - values[i - 1]);

      if (side == 0)
        continue;
      if (side != row.side)
        row = (Row) { side, i - 1, i, 1 };
      row.n++;
      row.last = i;
      keep_sign (&row, STEAD_RUN_TREND, sign);
    }
}

gboolean
stead_run_chart (const double  *values,
                 gsize          n,
                 SteadRunChart *out)
{
  SteadRunChart chart = { 0 };
  g_autofree double *sorted = NULL;

  g_return_val_if_fail (values != NULL && n > 0 && out != NULL, FALSE);

  for (gsize i = 0; i < n; i++)
    if (!isfinite (values[i]))
      return FALSE;
  sorted = g_memdup2 (values, n * sizeof *values);
  gsl_sort (sorted, 1, n);
  chart.median = gsl_stats_median_from_sorted_data (sorted, 1, n);
  chart.can_tell = n >= STEAD_RUN_LEAST;
  if (chart.can_tell)
    {
      find_shift (values, n, chart.median, &chart.shift);
      find_trend (values, n, &chart.trend);
    }
  *out = chart;
  return TRUE;
}

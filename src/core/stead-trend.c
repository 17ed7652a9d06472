/* stead-trend.c - where a reading is going. */
#include "config.h"

#include "core/stead-trend.h"

#include <gsl/gsl_fit.h>
#include <math.h>

gboolean
stead_trend_fit (const double *days,
                 const double *values,
                 const double *sds,
                 gsize         n,
                 SteadTrend   *out)
{
  g_autofree double *x = NULL;
  g_autofree double *w = NULL;
  double chisq;
  double wide = 1;
  SteadTrend trend = { 0 };

  g_return_val_if_fail (days != NULL && values != NULL && sds != NULL && out != NULL, FALSE);
  if (n < 2 || !(days[n - 1] > days[0]))
    return FALSE;
  x = g_new (double, n);
  w = g_new (double, n);
  for (gsize i = 0; i < n; i++)
    {
      x[i] = days[i] - days[n - 1];
      w[i] = 1 / (sds[i] * sds[i]);
    }
  gsl_fit_wlinear (x, 1, w, 1, values, 1, n, &trend.level, &trend.slope, &trend.level_var, &trend.cov,
                   &trend.slope_var, &chisq);
  if (n > 2)
    wide = MAX (1, chisq / (double) (n - 2));
  trend.level_var *= wide;
  trend.slope_var *= wide;
  trend.cov *= wide;
  trend.span_days = days[n - 1] - days[0];
  trend.n = (int) n;
  *out = trend;
  return TRUE;
}

double
stead_trend_at (const SteadTrend *trend,
                double            days_ahead)
{
  g_return_val_if_fail (trend != NULL, NAN);
  return trend->level + trend->slope * days_ahead;
}

double
stead_trend_sd (const SteadTrend *trend,
                double            days_ahead)
{
  double variance;

  g_return_val_if_fail (trend != NULL, NAN);
  variance = trend->level_var + 2 * days_ahead * trend->cov + days_ahead * days_ahead * trend->slope_var;
  return sqrt (MAX (0, variance));
}

gboolean
stead_trend_told (const SteadTrend *trend)
{
  g_return_val_if_fail (trend != NULL, FALSE);
  return fabs (trend->slope) > STEAD_TREND_BAND * sqrt (trend->slope_var);
}

int
stead_trend_horizon_days (const SteadTrend *trend)
{
  g_return_val_if_fail (trend != NULL, 0);
  return (int) MIN (STEAD_TREND_MAX_DAYS, floor (2 * trend->span_days));
}

/* stead-demand-line.c - what people ask for along a price, a temperature, a week. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-demand-line.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <math.h>

#define LARGEST 1e12

static gboolean
set_error (GError         **error,
           SteadCoreError   code,
           const char      *message)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, code, message);
  return FALSE;
}

gboolean
stead_demand_line_fit (const double     *x,
                       const double     *units,
                       gsize             n,
                       SteadDemandLine  *out,
                       GError          **error)
{
  SteadDemandLine line = { .x_low = INFINITY, .x_high = -INFINITY, .n = n };
  double var_intercept, cov, var_slope, squares;

  g_return_val_if_fail ((x != NULL && units != NULL) || n == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  if (n < 3)
    return set_error (error, STEAD_CORE_ERROR_NONE, _("A line needs three days or more. Note some more sale days."));
  for (gsize i = 0; i < n; i++)
    {
      if (!(fabs (x[i]) <= LARGEST && fabs (units[i]) <= LARGEST))
        return set_error (error, STEAD_CORE_ERROR_RANGE, _("A number of the past days cannot be. Check them."));
      line.x_low = MIN (line.x_low, x[i]);
      line.x_high = MAX (line.x_high, x[i]);
      line.x_mean += x[i] / (double) n;
    }
  for (gsize i = 0; i < n; i++)
    line.x_squares += (x[i] - line.x_mean) * (x[i] - line.x_mean);
  if (!(line.x_high - line.x_low > STEAD_ROUND_NOISE * MAX (1, fabs (line.x_mean))))
    return set_error (error, STEAD_CORE_ERROR_NONE,
                      _("All past days are alike in this, so they cannot tell what a change does."));
  gsl_fit_linear (x, 1, units, 1, n, &line.intercept, &line.slope, &var_intercept, &cov, &var_slope, &squares);
  line.residual_sd = sqrt (squares / (double) (n - 2));
  line.slope_sd = sqrt (var_slope);
  *out = line;
  return TRUE;
}

static double
student (const SteadDemandLine *line,
         double                 level)
{
  return gsl_cdf_tdist_Pinv ((1 + level) / 2, (double) line->n - 2);
}

gboolean
stead_demand_line_at (const SteadDemandLine  *line,
                      double                  x,
                      double                  level,
                      SteadBand              *out,
                      GError                **error)
{
  double noise;
  double off;
  double half;

  g_return_val_if_fail (line != NULL && line->n >= 3 && out != NULL, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  noise = STEAD_ROUND_NOISE * MAX (1, fabs (line->x_high));
  if (!(x >= line->x_low - noise && x <= line->x_high + noise))
    return set_error (error, STEAD_CORE_ERROR_RANGE,
                      _("No past day was like this, so the line does not reach there. Choose a value among those "
                        "of past days."));
  off = x - line->x_mean;
  half = student (line, level) * line->residual_sd
         * sqrt (1 + 1 / (double) line->n + off * off / line->x_squares);
  out->likely = line->intercept + line->slope * x;
  out->low = out->likely - half;
  out->high = out->likely + half;
  return TRUE;
}

gboolean
stead_demand_line_told (const SteadDemandLine *line,
                        double                 level)
{
  g_return_val_if_fail (line != NULL && line->n >= 3, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);
  return fabs (line->slope) > student (line, level) * line->slope_sd;
}

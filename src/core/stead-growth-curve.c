/* stead-growth-curve.c - the growth curve of young animals, learned from weighings. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit.h"
#include "core/stead-growth-curve.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sort.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

enum { ASYM, MID, SCALE, N_PARAMS };

#define LEAST_AGES 4
#define GUESS_POINTS 100
#define TOLD_FRAC 0.2   /* of the full weight, as its standard deviation */

/* Full weights to start from, as multiples of the largest weighing. */
static const double starts[] = { 1.1, 1.6, 3, 8 };

static double
weight_at (const double *params,
           double        age_days,
           double       *gradient)
{
  double late = exp ((params[MID] - age_days) / params[SCALE]);
  double share = 1 / (1 + late);
  double not_yet = isfinite (late) ? late * share : 1;
  double slope = params[ASYM] * share * not_yet / params[SCALE];

  if (gradient != NULL)
    {
      gradient[ASYM] = share;
      gradient[MID] = -slope;
      gradient[SCALE] = slope * (params[MID] - age_days) / params[SCALE];
    }
  return params[ASYM] * share;
}

static double
model_cb (const double *params,
          gsize         i,
          double       *gradient,
          gpointer      data)
{
  const SteadGrowthPoint *points = data;

  return weight_at (params, points[i].age_days, gradient);
}

/* Checks ---------------------------------------------------------------------------------- */

static gsize
count_ages (const SteadGrowthPoint *points,
            gsize                   n)
{
  gsize ages = 0;

  for (gsize i = 0; i < n && ages < LEAST_AGES; i++)
    {
      gboolean seen = FALSE;

      for (gsize k = 0; k < i && !seen; k++)
        seen = points[k].age_days == points[i].age_days;
      ages += !seen;
    }
  return ages;
}

static gboolean
are_usable (const SteadGrowthPoint  *points,
            gsize                    n,
            GError                 **error)
{
  for (gsize i = 0; i < n; i++)
    if (!(isfinite (points[i].age_days) && points[i].weight_g > 0 && isfinite (points[i].weight_g)
          && points[i].animals >= 1 && isfinite (points[i].animals)))
      {
        g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                     _("Weighing %u has a number that cannot be right. Look through the weighings."),
                     (guint) i + 1);
        return FALSE;
      }
  if (count_ages (points, n) >= LEAST_AGES)
    return TRUE;
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
               _("A growth curve needs weighings at %d ages or more. Go on weighing."), LEAST_AGES);
  return FALSE;
}

static double
median_of (double *values,
           gsize   n)
{
  gsl_sort (values, 1, n);
  return gsl_stats_median_from_sorted_data (values, 1, n);
}

/* With the full weight given, the logit of the share of it is a straight line of age.
 * Middle slope of all pairs, middle height: a slip of the pen does not bend it. */
static gboolean
guess (const SteadGrowthPoint *points,
       gsize                   n,
       double                  full_g,
       double                 *params)
{
  const gsize stride = 1 + n / GUESS_POINTS;
  g_autofree double *logit = g_new (double, n);
  g_autofree double *values = g_new (double, GUESS_POINTS * GUESS_POINTS / 2 + n);
  gsize pairs = 0;
  double slope;

  for (gsize i = 0; i < n; i++)
    logit[i] = log (points[i].weight_g / (full_g - points[i].weight_g));
  for (gsize i = 0; i < n; i += stride)
    for (gsize k = 0; k < i; k += stride)
      if (points[i].age_days != points[k].age_days)
        values[pairs++] = (logit[i] - logit[k]) / (points[i].age_days - points[k].age_days);
  slope = pairs > 0 ? median_of (values, pairs) : 0;
  if (!(slope > 0))
    return FALSE;
  for (gsize i = 0; i < n; i++)
    values[i] = points[i].age_days - logit[i] / slope;
  params[ASYM] = full_g;
  params[MID] = median_of (values, n);
  params[SCALE] = 1 / slope;
  return TRUE;
}

/* The fit --------------------------------------------------------------------------------- */

static gboolean
run_from (const SteadGrowthPoint  *points,
          gsize                    n,
          const double            *observed,
          const double            *weights,
          const double            *start,
          SteadFitResult          *out,
          gboolean                *named,
          GError                 **error)
{
  SteadFitParam params[N_PARAMS] = {
    { .start = start[ASYM], .low = 0, .high = INFINITY },
    { .start = start[MID], .low = -INFINITY, .high = INFINITY },
    { .start = start[SCALE], .low = 0, .high = INFINITY },
  };
  SteadFit fit = { .model = model_cb, .data = (gpointer) points, .observed = observed, .weights = weights,
                   .n = n, .params = params, .n_params = N_PARAMS, .scatter = STEAD_FIT_SCATTER_FREE };
  g_autofree double *z = g_new (double, n);

  return stead_fit_run_naming (&fit, out, named, z, error);
}

static void
set_curve (const SteadGrowthPoint *points,
           gsize                   n,
           const SteadFitResult   *result,
           const gboolean         *named,
           SteadGrowthCurve       *out)
{
  *out = (SteadGrowthCurve) { .asym_g = result->values[ASYM], .mid_days = result->values[MID],
                              .scale_days = result->values[SCALE], .sd_g = sqrt (result->phi),
                              .df = result->phi_df, .last_age_days = -INFINITY };
  for (gsize a = 0; a < N_PARAMS; a++)
    for (gsize b = 0; b < N_PARAMS; b++)
      out->covariance[a][b] = result->covariance[a][b];
  for (gsize i = 0; i < n; i++)
    {
      if (named[i] && out->n_outliers < STEAD_GROWTH_MAX_OUTLIERS)
        out->outliers[out->n_outliers] = i;
      out->n_outliers += named[i];
      out->n_used += !named[i];
      if (!named[i])
        out->last_age_days = MAX (out->last_age_days, points[i].age_days);
    }
  out->tells_full = sqrt (out->covariance[ASYM][ASYM]) <= TOLD_FRAC * out->asym_g
                    && out->mid_days < out->last_age_days;
}

gboolean
stead_growth_curve_fit (const SteadGrowthPoint  *points,
                        gsize                    n,
                        SteadGrowthCurve        *out,
                        GError                 **error)
{
  g_autofree double *observed = NULL;
  g_autofree double *weights = NULL;
  g_autofree gboolean *named = NULL;
  g_autoptr(GError) last = NULL;
  double most = 0;

  g_return_val_if_fail (points != NULL || n == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  if (!are_usable (points, n, error))
    return FALSE;
  observed = g_new (double, n);
  weights = g_new (double, n);
  named = g_new (gboolean, n);
  for (gsize i = 0; i < n; i++)
    {
      observed[i] = points[i].weight_g;
      weights[i] = points[i].animals;
      most = MAX (most, points[i].weight_g);
    }
  for (gsize s = 0; s < G_N_ELEMENTS (starts); s++)
    {
      double start[N_PARAMS] = { 0 };
      SteadFitResult result;

      if (!guess (points, n, starts[s] * most, start))
        continue;
      g_clear_error (&last);
      if (!run_from (points, n, observed, weights, start, &result, named, &last))
        continue;
      set_curve (points, n, &result, named, out);
      return TRUE;
    }
  if (last != NULL)
    g_propagate_error (error, g_steal_pointer (&last));
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("These weighings do not grow with age. Look through them."));
  return FALSE;
}

/* Bands ----------------------------------------------------------------------------------- */

static double
value_at (const SteadGrowthCurve *curve,
          double                  age_days,
          double                 *gradient)
{
  const double params[N_PARAMS] = { curve->asym_g, curve->mid_days, curve->scale_days };

  return weight_at (params, age_days, gradient);
}

double
stead_growth_curve_weight_g (const SteadGrowthCurve *curve,
                             double                  age_days)
{
  g_return_val_if_fail (curve != NULL, NAN);
  return value_at (curve, age_days, NULL);
}

void
stead_growth_curve_band (const SteadGrowthCurve *curve,
                         double                  age_days,
                         double                  animals,
                         double                  level,
                         SteadBand              *out)
{
  double gradient[N_PARAMS];
  double weight, variance, half;

  g_return_if_fail (curve != NULL && out != NULL);
  g_return_if_fail (curve->df > 0 && animals > 0);
  g_return_if_fail (level > 0 && level < 1);

  weight = value_at (curve, age_days, gradient);
  variance = curve->sd_g * curve->sd_g / animals;
  for (gsize a = 0; a < N_PARAMS; a++)
    for (gsize b = 0; b < N_PARAMS; b++)
      variance += gradient[a] * curve->covariance[a][b] * gradient[b];
  half = sqrt (variance) * gsl_cdf_tdist_Pinv ((1 + level) / 2, curve->df);
  *out = (SteadBand) { MAX (0, weight - half), weight, weight + half };
}

/* stead-fit-naming.c - which of a handful of entries lies far off the others. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit.h"

#include <gsl/gsl_cdf.h>
#include <math.h>
#include <string.h>

/* Entries looked at one by one, if there is no curve with all of them. */
#define MOST_SPOILERS 100

static gsize
farthest (const double *z,
          gsize         n)
{
  gsize worst = n;

  for (gsize i = 0; i < n; i++)
    if (!isnan (z[i]) && (worst == n || fabs (z[i]) >= fabs (z[worst])))
      worst = i;
  return worst;
}

/* How far entry @i lies from what a fit without it foretells. */
static double
deleted_z (const SteadFit       *fit,
           const SteadFitResult *without,
           gsize                 i,
           double                weight)
{
  double gradient[STEAD_FIT_MAX_PARAMS] = { 0 };
  double expected = fit->model (without->values, i, gradient, fit->data);
  double sd = stead_fit_sd (without, gradient, fit->n_params);

  return (fit->observed[i] - expected) / sqrt (without->phi / weight + sd * sd);
}

/* Chance that one of @n entries that are all well lies so far off, at most. */
static double
chance_of (double               z,
           const SteadFitResult *without,
           const SteadFit       *fit,
           gsize                 n)
{
  double one = fit->scatter == STEAD_FIT_SCATTER_KNOWN || !(without->phi_df > 0)
               ? gsl_cdf_ugaussian_Q (fabs (z)) : gsl_cdf_tdist_Q (fabs (z), without->phi_df);

  return 2 * one * (double) n;
}

/* A slip may bend the curve of all entries until there is none.  Looks for the entry
 * without which the others lie nearest to a curve. */
static gsize
find_spoiler (SteadFit *rest,
              double   *weights)
{
  gsize spoiler = rest->n;
  double least = INFINITY;

  for (gsize i = 0; i < rest->n && i < MOST_SPOILERS; i++)
    {
      double weight = weights[i];
      SteadFitResult without;

      if (!(weight > 0))
        continue;
      weights[i] = 0;
      if (stead_fit_run (rest, &without, NULL, NULL, NULL) && without.chi_square < least)
        {
          least = without.chi_square;
          spoiler = i;
        }
      weights[i] = weight;
    }
  return spoiler;
}

/* Takes out entry @i if the others see that it lies far off. */
static gboolean
take_out (const SteadFit *fit,
          SteadFit       *rest,
          double         *weights,
          gsize           i,
          gsize           n_used,
          SteadFitResult *result,
          double         *out_z)
{
  g_autofree double *z = g_new (double, fit->n);
  double weight = weights[i];
  SteadFitResult without;

  weights[i] = 0;
  if (stead_fit_run (rest, &without, NULL, z, NULL)
      && chance_of (deleted_z (fit, &without, i, weight), &without, fit, n_used) <= STEAD_FIT_NAMING_CHANCE)
    {
      *result = without;
      memcpy (out_z, z, fit->n * sizeof *z);
      return TRUE;
    }
  weights[i] = weight;
  return FALSE;
}

static gsize
count_used (const SteadFit *fit)
{
  gsize n = 0;

  for (gsize i = 0; i < fit->n; i++)
    n += fit->weights == NULL || fit->weights[i] > 0;
  return n;
}

gboolean
stead_fit_run_naming (const SteadFit  *fit,
                      SteadFitResult  *out,
                      gboolean        *out_named,
                      double          *out_z,
                      GError         **error)
{
  g_autofree double *weights = NULL;
  g_autoptr(GError) first = NULL;
  SteadFit rest;
  SteadFitResult result = { 0 };
  gsize n_used, n_named = 0;
  gboolean found;

  g_return_val_if_fail (fit != NULL && out != NULL, FALSE);
  g_return_val_if_fail (out_named != NULL && out_z != NULL, FALSE);
  g_return_val_if_fail (fit->loss == STEAD_FIT_LOSS_SQUARE, FALSE);

  weights = g_new (double, fit->n);
  for (gsize i = 0; i < fit->n; i++)
    {
      weights[i] = fit->weights != NULL ? fit->weights[i] : 1;
      out_named[i] = FALSE;
    }
  rest = *fit;
  rest.weights = weights;
  n_used = count_used (fit);
  found = stead_fit_run (&rest, &result, NULL, out_z, &first);
  while (3 * (n_named + 1) <= n_used && !(first != NULL && first->code != STEAD_CORE_ERROR_NONE))
    {
      gsize worst = found ? farthest (out_z, fit->n) : find_spoiler (&rest, weights);

      if (worst == fit->n || !take_out (fit, &rest, weights, worst, n_used, &result, out_z))
        break;
      out_named[worst] = TRUE;
      found = TRUE;
      n_named++;
    }
  if (!found)
    {
      g_propagate_error (error, g_steal_pointer (&first));
      return FALSE;
    }
  for (gsize i = 0; i < fit->n; i++)
    if (out_named[i])
      out_z[i] = deleted_z (fit, &result, i, fit->weights != NULL ? fit->weights[i] : 1);
  result.n_outliers = n_named;
  *out = result;
  return TRUE;
}

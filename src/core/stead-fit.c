/* stead-fit.c - a curve through entries that scatter, and how sure it is.
 *
 * Passes: solve for the weights as they are; look where each entry lies; give it
 * its weight; take phi anew; until both hold still.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit-private.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_sort.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

#define MAX_PASSES 30
#define WEIGHTS_STILL 1e-3
#define PHI_STILL 1e-3
#define PHI_STILL_SQUARE 1e-8  /* without weights that move along, it settles fast */
#define COARSE 1e-4             /* near enough while the weights still move */
#define FINE 1e-10
#define MOST_LEVERAGE 0.999     /* of one entry; beyond, its residual says nothing */
#define NORMAL_QUARTILE 0.6744897501960817

/* Weights --------------------------------------------------------------------------------- */

static double
tuning_of (const SteadFit *fit)
{
  if (fit->tuning > 0)
    return fit->tuning;
  return fit->loss == STEAD_FIT_LOSS_HUBER ? 1.345 : 4.685;
}

static double
weight_at (const SteadFit *fit,
           double          z)
{
  double share = fabs (z) / tuning_of (fit);

  switch (fit->loss)
    {
    case STEAD_FIT_LOSS_HUBER:
      return share > 1 ? 1 / share : 1;
    case STEAD_FIT_LOSS_BISQUARE:
      return share < 1 ? (1 - share * share) * (1 - share * share) : 0;
    case STEAD_FIT_LOSS_SQUARE:
    default:
      return 1;
    }
}

/* Mean weight, and mean weighted square, of normal entries: what the weights take
 * away from entries that are all well. */
static void
mean_weights (const SteadFit *fit,
              double         *weight,
              double         *square)
{
  const double width = 0.02;

  *weight = *square = 1;
  if (fit->loss == STEAD_FIT_LOSS_SQUARE)
    return;
  *weight = *square = 0;
  for (double z = -8 + width / 2; z < 8; z += width)
    {
      double mass = width * gsl_ran_ugaussian_pdf (z) * weight_at (fit, z);

      *weight += mass;
      *square += mass * z * z;
    }
}

static gboolean
is_used (const SteadFit *fit,
         gsize           i)
{
  return fit->weights == NULL || fit->weights[i] > 0;
}

/* Residuals in units of what the weights say, spread by leverage. */
static void
standardize (SteadFitWork *work)
{
  const SteadFit *fit = work->fit;

  for (gsize i = 0; i < fit->n; i++)
    work->z[i] = is_used (fit, i)
                 ? work->residual[i] * sqrt (fit->weights != NULL ? fit->weights[i] : 1)
                   / sqrt (1 - MIN (work->leverage[i], MOST_LEVERAGE))
                 : NAN;
}

/* The usual size of z, from the middle one: entries far off do not move it.  A few
 * entries tell it badly, so what is known beforehand counts along. */
static double
usual_size (SteadFitWork *work)
{
  const SteadFit *fit = work->fit;
  gsize n = 0;
  double size;

  for (gsize i = 0; i < fit->n; i++)
    if (is_used (fit, i))
      work->sorted[n++] = fabs (work->z[i]);
  gsl_sort (work->sorted, 1, n);
  size = gsl_stats_median_from_sorted_data (work->sorted, 1, n) / NORMAL_QUARTILE;
  if (fit->phi_prior_df > 0)
    size = sqrt ((fit->phi_prior_df * fit->phi_prior + (double) n * size * size)
                 / (fit->phi_prior_df + (double) n));
  if (fit->scatter == STEAD_FIT_SCATTER_KNOWN)
    return 1;
  if (fit->scatter == STEAD_FIT_SCATTER_AT_LEAST)
    return MAX (1, size);
  return size;
}

/* z in usual sizes.  If all entries lie on the curve, none is far off. */
static void
scale_to_size (SteadFitWork *work)
{
  double size = usual_size (work);

  for (gsize i = 0; i < work->fit->n; i++)
    if (is_used (work->fit, i))
      work->z[i] = size > 0 ? work->z[i] / size : 0;
}

/* Returns: the largest change */
static double
renew_weights (SteadFitWork *work)
{
  double change = 0;

  scale_to_size (work);
  for (gsize i = 0; i < work->fit->n; i++)
    {
      double weight;

      if (!is_used (work->fit, i))
        continue;
      weight = weight_at (work->fit, work->z[i]);
      change = MAX (change, fabs (weight - work->robust[i]));
      work->robust[i] = weight;
    }
  return change;
}

/* Scatter --------------------------------------------------------------------------------- */

typedef struct
{
  double phi;
  double df;
  double chi_square;
} Scatter;

/* By the weights that the solution was found with. */
static Scatter
scatter_of (const SteadFitWork *work)
{
  const SteadFit *fit = work->fit;
  double mean_weight, mean_square, weights = 0;
  Scatter s = { 0 };

  mean_weights (fit, &mean_weight, &mean_square);
  for (gsize i = 0; i < fit->n; i++)
    if (is_used (fit, i))
      {
        weights += work->robust[i] / mean_weight;
        s.chi_square += work->robust[i] / mean_square * (fit->weights != NULL ? fit->weights[i] : 1)
                        * work->residual[i] * work->residual[i];
      }
  s.df = MAX (0, weights - work->told) + fit->phi_prior_df;
  s.phi = s.df > 0 ? (s.chi_square + fit->phi_prior_df * fit->phi_prior) / s.df : 1;
  if (fit->scatter == STEAD_FIT_SCATTER_KNOWN)
    s.phi = 1;
  else if (fit->scatter == STEAD_FIT_SCATTER_AT_LEAST)
    s.phi = MAX (1, s.phi);
  return s;
}

/* Passes ---------------------------------------------------------------------------------- */

/* Does phi, or a weight, change what the best parameters are? */
static gboolean
needs_passes (const SteadFitWork *work)
{
  return work->fit->loss != STEAD_FIT_LOSS_SQUARE
         || (work->n_priors > 0 && work->fit->scatter != STEAD_FIT_SCATTER_KNOWN);
}

/* Entries on the curve to the last digit have no scatter but that of rounding, and
 * would weigh without end. */
static double
usable_phi (const SteadFitWork *work,
            double              phi)
{
  const SteadFit *fit = work->fit;
  double largest = 0;

  for (gsize i = 0; i < fit->n; i++)
    if (is_used (fit, i))
      largest = MAX (largest, (fit->weights != NULL ? fit->weights[i] : 1)
                              * fit->observed[i] * fit->observed[i]);
  return MAX (phi, MAX (largest, DBL_MIN) * DBL_EPSILON * DBL_EPSILON);
}

static gboolean
solve_and_measure (SteadFitWork  *work,
                   double         tolerance,
                   GError       **error)
{
  return stead_fit_solve (work, tolerance, error) && stead_fit_measure (work, error);
}

static void
take_scatter (const SteadFitWork *work,
              SteadFitResult     *out)
{
  Scatter scatter = scatter_of (work);

  out->phi = scatter.phi;
  out->phi_df = scatter.df;
  out->chi_square = scatter.chi_square;
}

static gboolean
run_passes (SteadFitWork    *work,
            SteadFitResult  *out,
            GError         **error)
{
  const double phi_still = work->fit->loss == STEAD_FIT_LOSS_SQUARE ? PHI_STILL_SQUARE : PHI_STILL;
  double change = INFINITY, phi_change = INFINITY;

  /* The first pass already leaves aside what lies far off where it starts: a slip of
   * ten times would else bend the curve so far that it looks near. */
  if (work->fit->loss != STEAD_FIT_LOSS_SQUARE && stead_fit_measure (work, NULL))
    {
      standardize (work);
      renew_weights (work);
    }
  while (needs_passes (work) && out->passes < MAX_PASSES
         && (change > WEIGHTS_STILL || phi_change > phi_still))
    {
      if (!solve_and_measure (work, COARSE, error))
        return FALSE;
      out->passes++;
      take_scatter (work, out);
      standardize (work);
      change = renew_weights (work);
      phi_change = fabs (log (usable_phi (work, out->phi) / work->phi));
      work->phi = usable_phi (work, out->phi);
    }
  if (!solve_and_measure (work, FINE, error))
    return FALSE;
  out->passes++;
  take_scatter (work, out);
  standardize (work);
  scale_to_size (work);
  /* The covariance by the last phi. */
  work->phi = usable_phi (work, out->phi);
  return stead_fit_measure (work, error);
}

/* Checks ---------------------------------------------------------------------------------- */

static gboolean
is_fit (const SteadFit *fit)
{
  g_return_val_if_fail (fit->model != NULL, FALSE);
  g_return_val_if_fail (fit->observed != NULL || fit->n == 0, FALSE);
  g_return_val_if_fail (fit->params != NULL, FALSE);
  g_return_val_if_fail (fit->n_params >= 1 && fit->n_params <= STEAD_FIT_MAX_PARAMS, FALSE);
  for (gsize p = 0; p < fit->n_params; p++)
    {
      const SteadFitParam *param = &fit->params[p];

      g_return_val_if_fail (isfinite (param->start), FALSE);
      g_return_val_if_fail (param->prior_sd >= 0 && isfinite (param->prior_sd), FALSE);
      g_return_val_if_fail ((param->fixed && param->prior_sd == 0)
                            || (param->low < param->start && param->start < param->high), FALSE);
    }
  return TRUE;
}

static void
sort_params (SteadFitWork *work)
{
  for (gsize p = 0; p < work->fit->n_params; p++)
    {
      if (work->fit->params[p].fixed && !(work->fit->params[p].prior_sd > 0))
        continue;
      if (work->fit->params[p].prior_sd > 0)
        work->prior[work->n_priors++] = work->n_free;
      work->free[work->n_free++] = p;
    }
}

static gboolean
is_enough (const SteadFitWork  *work,
           gsize               *n_used,
           GError             **error)
{
  const SteadFit *fit = work->fit;
  gsize needed = work->n_free - work->n_priors;

  *n_used = 0;
  for (gsize i = 0; i < fit->n; i++)
    {
      double weight = fit->weights != NULL ? fit->weights[i] : 1;

      if (weight == 0)
        continue;
      (*n_used)++;
      if (isfinite (fit->observed[i]) && isfinite (weight) && weight > 0)
        continue;
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("An entry has no number that can be used. Look through the entries."));
      return FALSE;
    }
  /* The scatter needs one entry more, unless it is known. */
  if (fit->scatter == STEAD_FIT_SCATTER_FREE && !(fit->phi_prior_df > 0))
    needed++;
  if (fit->n <= STEAD_FIT_MAX_OBSERVATIONS && *n_used >= MAX (1, needed))
    return TRUE;
  if (fit->n > STEAD_FIT_MAX_OBSERVATIONS)
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                         _("There are too many entries for one curve. Choose a shorter time."));
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("There are too few entries to learn from yet."));
  return FALSE;
}

/* Room of all entries, in one piece that the caller frees. */
static double *
give_room (SteadFitWork *work)
{
  gsize n = work->fit->n;
  double *room = g_new0 (double, n * (5 + work->fit->n_params));

  work->robust = room;
  work->residual = room + n;
  work->leverage = room + 2 * n;
  work->z = room + 3 * n;
  work->sorted = room + 4 * n;
  work->gradient = room + 5 * n;
  for (gsize i = 0; i < n; i++)
    work->robust[i] = 1;
  return room;
}

static void
take_result (const SteadFitWork *work,
             SteadFitResult     *out,
             double             *out_weights,
             double             *out_z)
{
  const SteadFit *fit = work->fit;

  stead_fit_covariance (work, out);
  out->told = work->told;
  out->iterations = work->iterations;
  for (gsize p = 0; p < fit->n_params; p++)
    out->values[p] = fit->params[p].fixed ? fit->params[p].start : work->theta[p];
  for (gsize i = 0; i < fit->n; i++)
    {
      out->n_outliers += is_used (fit, i) && work->robust[i] < STEAD_FIT_OUTLIER_WEIGHT;
      if (out_weights != NULL)
        out_weights[i] = is_used (fit, i) ? work->robust[i] : 0;
      if (out_z != NULL)
        out_z[i] = work->z[i];
    }
}

gboolean
stead_fit_run (const SteadFit  *fit,
               SteadFitResult  *out,
               double          *out_weights,
               double          *out_z,
               GError         **error)
{
  SteadFitWork work = { .fit = fit, .phi = 1 };
  SteadFitResult result = { 0 };
  g_autofree double *room = NULL;

  g_return_val_if_fail (fit != NULL && out != NULL, FALSE);
  if (!is_fit (fit))
    return FALSE;

  sort_params (&work);
  g_return_val_if_fail (work.n_free > 0, FALSE);
  if (!is_enough (&work, &result.n_used, error))
    return FALSE;
  if (fit->phi_prior_df > 0 && fit->scatter != STEAD_FIT_SCATTER_KNOWN)
    work.phi = fit->phi_prior;
  room = give_room (&work);
  stead_fit_solve_start (&work);
  if (!run_passes (&work, &result, error))
    return FALSE;
  take_result (&work, &result, out_weights, out_z);
  *out = result;
  return TRUE;
}

double
stead_fit_sd (const SteadFitResult *result,
              const double         *gradient,
              gsize                 n_params)
{
  double sum = 0;

  g_return_val_if_fail (result != NULL && gradient != NULL, NAN);
  g_return_val_if_fail (n_params <= STEAD_FIT_MAX_PARAMS, NAN);

  for (gsize a = 0; a < n_params; a++)
    for (gsize b = 0; b < n_params; b++)
      sum += gradient[a] * result->covariance[a][b] * gradient[b];
  return sqrt (MAX (0, sum));
}

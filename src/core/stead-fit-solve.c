/* stead-fit-solve.c - least squares for weights that are given: GSL's trust region.
 *
 * GSL moves numbers without bounds; theta is made from them.  A step to where the
 * model has no value is made so dear that it is taken back.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_blas.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>

#define MAX_STEPS 500
#define PATIENCE 40      /* steps, after which it is enough ... */
#define GAIN 1e-8        /* ... that a step takes no more than this share off the sum of squares */
#define NO_VALUE 1e100   /* of a residual; its square still is a number */
#define EDGE 1e-9        /* share of the room that a start keeps from its bounds */

typedef gsl_multifit_nlinear_workspace Solver;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Solver, gsl_multifit_nlinear_free)

/* Bounds ------------------------------------------------------------------------------ */

static double
to_inner (const SteadFitParam *param)
{
  gboolean low = isfinite (param->low), high = isfinite (param->high);

  if (low && high)
    {
      double share = CLAMP ((param->start - param->low) / (param->high - param->low), EDGE, 1 - EDGE);

      return log (share / (1 - share));
    }
  if (low)
    return log (param->start - param->low);
  return high ? -log (param->high - param->start) : param->start;
}

/* @slope: (nullable): of the parameter by the inner number */
static double
from_inner (const SteadFitParam *param,
            double               inner,
            double              *slope)
{
  gboolean low = isfinite (param->low), high = isfinite (param->high);
  double share, rise;

  if (low && high)
    {
      share = inner < 0 ? exp (inner) / (1 + exp (inner)) : 1 / (1 + exp (-inner));
      rise = (param->high - param->low) * share * (1 - share);
      if (slope != NULL)
        *slope = rise;
      return param->low + (param->high - param->low) * share;
    }
  rise = low ? exp (inner) : high ? exp (-inner) : 1;
  if (slope != NULL)
    *slope = rise;
  return low ? param->low + rise : high ? param->high - rise : inner;
}

static void
take (SteadFitWork     *work,
      const gsl_vector *inner,
      double           *slopes)
{
  for (gsize c = 0; c < work->n_free; c++)
    {
      const SteadFitParam *param = &work->fit->params[work->free[c]];

      work->inner[c] = gsl_vector_get (inner, c);
      work->theta[work->free[c]] = from_inner (param, work->inner[c], slopes != NULL ? &slopes[c] : NULL);
    }
}

void
stead_fit_solve_start (SteadFitWork *work)
{
  for (gsize p = 0; p < work->fit->n_params; p++)
    work->theta[p] = work->fit->params[p].start;
  for (gsize c = 0; c < work->n_free; c++)
    {
      work->inner[c] = to_inner (&work->fit->params[work->free[c]]);
      work->theta[work->free[c]] = from_inner (&work->fit->params[work->free[c]], work->inner[c], NULL);
    }
}

/* Residuals and slopes, for GSL --------------------------------------------------------- */

static int
residuals_cb (const gsl_vector *inner,
              void             *data,
              gsl_vector       *out)
{
  SteadFitWork *work = data;
  const SteadFit *fit = work->fit;

  take (work, inner, NULL);
  for (gsize i = 0; i < fit->n; i++)
    {
      double weight = stead_fit_entry_weight (work, i);
      double off = weight > 0 ? fit->model (work->theta, i, NULL, fit->data) - fit->observed[i] : 0;

      gsl_vector_set (out, i, isfinite (off) ? sqrt (weight) * off : NO_VALUE);
    }
  for (gsize k = 0; k < work->n_priors; k++)
    {
      gsize p = work->free[work->prior[k]];
      double off = (work->theta[p] - fit->params[p].prior_mean) / fit->params[p].prior_sd;

      gsl_vector_set (out, fit->n + k, isfinite (off) ? off : NO_VALUE);
    }
  return GSL_SUCCESS;
}

/* Where nothing changes whatever is tried, GSL would not return.  Slopes that are not
 * there let it look around once, find nothing better, and stop. */
static void
keep_from_flat (gsl_matrix *slopes)
{
  for (gsize i = 0; i < slopes->size1; i++)
    for (gsize c = 0; c < slopes->size2; c++)
      if (gsl_matrix_get (slopes, i, c) != 0)
        return;
  for (gsize c = 0; c < slopes->size2; c++)
    gsl_matrix_set (slopes, c, c, 1);
}

static int
slopes_cb (const gsl_vector *inner,
           void             *data,
           gsl_matrix       *out)
{
  SteadFitWork *work = data;
  const SteadFit *fit = work->fit;
  double slopes[STEAD_FIT_MAX_PARAMS];
  double gradient[STEAD_FIT_MAX_PARAMS] = { 0 };

  take (work, inner, slopes);
  gsl_matrix_set_zero (out);
  for (gsize i = 0; i < fit->n; i++)
    {
      double weight = stead_fit_entry_weight (work, i);

      if (!(weight > 0))
        continue;
      fit->model (work->theta, i, gradient, fit->data);
      for (gsize c = 0; c < work->n_free; c++)
        {
          double slope = sqrt (weight) * gradient[work->free[c]] * slopes[c];

          gsl_matrix_set (out, i, c, isfinite (slope) ? slope : 0);
        }
    }
  for (gsize k = 0; k < work->n_priors; k++)
    gsl_matrix_set (out, fit->n + k, work->prior[k],
                    slopes[work->prior[k]] / fit->params[work->free[work->prior[k]]].prior_sd);
  keep_from_flat (out);
  return GSL_SUCCESS;
}

/* The search ---------------------------------------------------------------------------- */

static double
sum_of_squares (Solver *solver)
{
  double norm = gsl_blas_dnrm2 (gsl_multifit_nlinear_residual (solver));

  return norm * norm;
}

/* Steps until it holds still.  Where the entries lie far from the best curve, steps
 * get shorter only slowly; what they still gain is then far below what the entries
 * can tell.  GSL's own driver knows nothing of that, and cannot be stopped. */
static gboolean
search (SteadFitWork *work,
        double        tolerance,
        Solver       *solver)
{
  double squares = sum_of_squares (solver);
  int info;

  for (int step = 0; step < MAX_STEPS; step++)
    {
      double before = squares;
      int status;

      if (work->fit->stop != NULL && work->fit->stop (work->fit->stop_data))
        return FALSE;
      status = gsl_multifit_nlinear_iterate (solver);
      work->iterations++;
      squares = sum_of_squares (solver);
      /* No step makes it better: it is as near as rounding lets it come. */
      if (status == GSL_ENOPROG
          || gsl_multifit_nlinear_test (tolerance, tolerance, 0, &info, solver) == GSL_SUCCESS
          || (step >= PATIENCE && before - squares <= GAIN * before))
        return TRUE;
    }
  return FALSE;
}

static void
set_error (const SteadFitWork  *work,
           GError             **error)
{
  if (work->fit->stop != NULL && work->fit->stop (work->fit->stop_data))
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED,
                         _("Stopped before the curve was found."));
  else
    g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                         _("No curve comes near these entries. Look for entries that are wrong."));
}

gboolean
stead_fit_solve (SteadFitWork  *work,
                 double         tolerance,
                 GError       **error)
{
  gsl_multifit_nlinear_parameters how = gsl_multifit_nlinear_default_parameters ();
  gsl_multifit_nlinear_fdf rows = { .f = residuals_cb, .df = slopes_cb, .n = work->fit->n + work->n_priors,
                                    .p = work->n_free, .params = work };
  gsl_vector_view inner = gsl_vector_view_array (work->inner, work->n_free);
  g_autoptr(Solver) solver = gsl_multifit_nlinear_alloc (gsl_multifit_nlinear_trust, &how, rows.n, rows.p);

  g_return_val_if_fail (solver != NULL, FALSE);

  /* GSL copies where it starts from, so that work->inner may be written to. */
  gsl_multifit_nlinear_init (&inner.vector, &rows, solver);
  if (!search (work, tolerance, solver))
    {
      set_error (work, error);
      return FALSE;
    }
  take (work, gsl_multifit_nlinear_position (solver), NULL);
  return TRUE;
}

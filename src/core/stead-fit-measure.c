/* stead-fit-measure.c - what a fit looks like where it came to rest.
 *
 * All in the parameters themselves, not in the numbers without bounds.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_eigen.h>
#include <math.h>
#include <string.h>

/* Smallest over largest eigenvalue of the scaled matrix: below it the entries
 * cannot tell the parameters apart. */
#define WORST_CONDITION 1e-13

typedef gsl_eigen_symmv_workspace Eigen;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Eigen, gsl_eigen_symmv_free)

typedef double Square[STEAD_FIT_MAX_PARAMS][STEAD_FIT_MAX_PARAMS];

static const double *
gradient_of (const SteadFitWork *work,
             gsize               i)
{
  return work->gradient + i * work->fit->n_params;
}

/* Residuals and slopes of all entries; FALSE if one has no value. */
static gboolean
evaluate (SteadFitWork *work)
{
  const SteadFit *fit = work->fit;

  for (gsize i = 0; i < fit->n; i++)
    {
      double *gradient = work->gradient + i * fit->n_params;

      work->residual[i] = 0;
      memset (gradient, 0, fit->n_params * sizeof *gradient);
      if (fit->weights != NULL && !(fit->weights[i] > 0))
        continue;
      work->residual[i] = fit->observed[i] - fit->model (work->theta, i, gradient, fit->data);
      if (!isfinite (work->residual[i]))
        return FALSE;
      for (gsize p = 0; p < fit->n_params; p++)
        if (!isfinite (gradient[p]))
          return FALSE;
    }
  return TRUE;
}

/* Sum of weight x slope x slope, and the priors. */
static void
sum_normal (const SteadFitWork *work,
            Square              normal)
{
  const SteadFit *fit = work->fit;

  memset (normal, 0, sizeof (Square));
  for (gsize i = 0; i < fit->n; i++)
    {
      double weight = stead_fit_entry_weight (work, i);
      const double *gradient = gradient_of (work, i);

      for (gsize a = 0; a < work->n_free; a++)
        for (gsize b = 0; b <= a; b++)
          normal[a][b] += weight * gradient[work->free[a]] * gradient[work->free[b]];
    }
  for (gsize k = 0; k < work->n_priors; k++)
    {
      double sd = fit->params[work->free[work->prior[k]]].prior_sd;

      normal[work->prior[k]][work->prior[k]] += 1 / (sd * sd);
    }
}

/* By eigenvalues, scaled to a diagonal of ones, so that units do not matter. */
static gboolean
invert (const Square normal,
        gsize        n,
        Square       out)
{
  double entries[STEAD_FIT_MAX_PARAMS * STEAD_FIT_MAX_PARAMS];
  double vectors[STEAD_FIT_MAX_PARAMS * STEAD_FIT_MAX_PARAMS];
  double roots[STEAD_FIT_MAX_PARAMS];
  double scale[STEAD_FIT_MAX_PARAMS];
  gsl_matrix_view matrix = gsl_matrix_view_array (entries, n, n);
  gsl_matrix_view base = gsl_matrix_view_array (vectors, n, n);
  gsl_vector_view root = gsl_vector_view_array (roots, n);
  g_autoptr(Eigen) eigen = gsl_eigen_symmv_alloc (n);
  double least, most;

  for (gsize a = 0; a < n; a++)
    {
      if (!(normal[a][a] > 0))
        return FALSE;
      scale[a] = 1 / sqrt (normal[a][a]);
    }
  for (gsize a = 0; a < n; a++)
    for (gsize b = 0; b < n; b++)
      gsl_matrix_set (&matrix.matrix, a, b, normal[MAX (a, b)][MIN (a, b)] * scale[a] * scale[b]);
  if (gsl_eigen_symmv (&matrix.matrix, &root.vector, &base.matrix, eigen) != 0)
    return FALSE;
  least = gsl_vector_min (&root.vector);
  most = gsl_vector_max (&root.vector);
  if (!(least > WORST_CONDITION * most))
    return FALSE;
  for (gsize a = 0; a < n; a++)
    for (gsize b = 0; b < n; b++)
      {
        double sum = 0;

        for (gsize k = 0; k < n; k++)
          sum += gsl_matrix_get (&base.matrix, a, k) * gsl_matrix_get (&base.matrix, b, k) / roots[k];
        out[a][b] = sum * scale[a] * scale[b];
      }
  return TRUE;
}

/* Share that each entry has in its own expected value. */
static void
sum_leverage (SteadFitWork *work)
{
  work->told = 0;
  for (gsize i = 0; i < work->fit->n; i++)
    {
      const double *gradient = gradient_of (work, i);
      double sum = 0;

      for (gsize a = 0; a < work->n_free; a++)
        for (gsize b = 0; b < work->n_free; b++)
          sum += gradient[work->free[a]] * work->inverse[a][b] * gradient[work->free[b]];
      work->leverage[i] = sum * stead_fit_entry_weight (work, i);
      work->told += work->leverage[i];
    }
}

gboolean
stead_fit_measure (SteadFitWork  *work,
                   GError       **error)
{
  Square normal;

  if (!evaluate (work))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("No curve comes near these entries. Look for entries that are wrong."));
      return FALSE;
    }
  sum_normal (work, normal);
  if (!invert (normal, work->n_free, work->inverse))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("Many curves fit these entries alike. Add entries at other ages or days."));
      return FALSE;
    }
  sum_leverage (work);
  return TRUE;
}

void
stead_fit_covariance (const SteadFitWork *work,
                      SteadFitResult     *out)
{
  const SteadFitParam *params = work->fit->params;

  memset (out->covariance, 0, sizeof out->covariance);
  for (gsize a = 0; a < work->n_free; a++)
    for (gsize b = 0; b < work->n_free; b++)
      {
        gsize p = work->free[a], q = work->free[b];

        out->covariance[p][q] = work->inverse[a][b];
        /* What was put back errs as it did beforehand.  How it errs together with
         * what was learned stays: what the entries said about it is not in the
         * errors that are left over. */
        if (params[p].fixed && params[q].fixed)
          out->covariance[p][q] = p == q ? params[p].prior_sd * params[p].prior_sd : 0;
      }
}

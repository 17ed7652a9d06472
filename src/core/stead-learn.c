/* stead-learn.c - a figure that starts from a book and is learned from own years. */
#include "config.h"

#include "core/stead-alive-private.h"
#include "core/stead-core-error.h"
#include "core/stead-learn.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>

#define BOOK_YEARS 1          /* the book counts as one year for the mean ... */
#define BOOK_SPREAD_YEARS 4   /* ... and as four for how much years differ */
#define LEAST_RECENT 3
#define RUNS 3                /* days in a row that scatter as one day on its own */

gboolean
stead_learn (double         book,
             const double  *years,
             gsize          n,
             SteadLearned  *out,
             GError       **error)
{
  const double widest = gsl_cdf_tdist_Pinv ((1 + STEAD_BAND_LEVEL) / 2, BOOK_SPREAD_YEARS);
  double book_sd = STEAD_LEARN_BAND_FRAC * book / (widest * sqrt (1 + 1.0 / BOOK_YEARS));
  double squares = BOOK_SPREAD_YEARS * book_sd * book_sd;
  double all = BOOK_YEARS + (double) n;
  double own;

  g_return_val_if_fail (book > 0, FALSE);
  g_return_val_if_fail (years != NULL || n == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  for (gsize i = 0; i < n; i++)
    if (!(years[i] > 0 && isfinite (years[i])))
      {
        g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                             _("A year of the past has a figure that cannot be right. "
                               "It must be above 0."));
        return FALSE;
      }
  own = n > 0 ? gsl_stats_mean (years, 1, n) : book;
  for (gsize i = 0; i < n; i++)
    squares += (years[i] - own) * (years[i] - own);
  squares += BOOK_YEARS * (double) n / all * (own - book) * (own - book);
  out->df = BOOK_SPREAD_YEARS + (double) n;
  out->mean = (BOOK_YEARS * book + (double) n * own) / all;
  out->scale = sqrt (squares / out->df * (1 + 1 / all));
  out->n_years = n;
  return TRUE;
}

void
stead_learn_band (const SteadLearned *learned,
                  double              level,
                  SteadBand          *out)
{
  double half;

  g_return_if_fail (learned != NULL && out != NULL);
  g_return_if_fail (learned->df > 0 && learned->scale >= 0);
  g_return_if_fail (level > 0 && level < 1);

  half = learned->scale * gsl_cdf_tdist_Pinv ((1 + level) / 2, learned->df);
  *out = (SteadBand) { MAX (0, learned->mean - half), learned->mean, learned->mean + half };
}

/* Days until a sum is reached that grows by @mean a day and scatters by @sd times the
 * root of the days: the need is met within d days when the sum of d days is enough,
 * since no day takes warmth away. */
static double
days_to (double missing,
         double mean,
         double sd,
         double normal)
{
  double root;

  if (!(mean > 0))
    return INFINITY;
  root = (sqrt (sd * sd * normal * normal + 4 * mean * missing) - sd * normal) / (2 * mean);
  return root * root;
}

gboolean
stead_learn_days (const SteadLearned  *learned,
                  double               so_far,
                  const double        *recent,
                  gsize                n_recent,
                  double               level,
                  SteadBand           *out,
                  GError             **error)
{
  g_autoptr(SteadRng) rng = NULL;
  double draws[STEAD_BAND_DRAWS];
  double mean, sd, above, likely;

  g_return_val_if_fail (learned != NULL && out != NULL, FALSE);
  g_return_val_if_fail (learned->df > 0 && learned->scale > 0, FALSE);
  g_return_val_if_fail (so_far >= 0, FALSE);
  g_return_val_if_fail (recent != NULL && n_recent >= LEAST_RECENT, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  mean = gsl_stats_mean (recent, 1, n_recent);
  if (!(mean > 0 && isfinite (mean)))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("The last days brought no warmth to grow by, so no date can be told."));
      return FALSE;
    }
  sd = gsl_stats_sd (recent, 1, n_recent) * sqrt (RUNS);
  /* Chance that the need lies above what was reached. */
  above = gsl_cdf_tdist_Q ((so_far - learned->mean) / learned->scale, learned->df);
  rng = stead_alive_rng_new ();
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    {
      /* Evenly over what is left of the need's distribution. */
      double q = above * ((double) i + 0.5) / STEAD_BAND_DRAWS;
      double need = learned->mean + learned->scale * gsl_cdf_tdist_Qinv (q, learned->df);
      double coming = mean + gsl_ran_gaussian_ziggurat (rng, sd / sqrt ((double) n_recent));

      draws[i] = days_to (MAX (0, need - so_far), coming, sd, gsl_ran_gaussian_ziggurat (rng, 1));
    }
  stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, out);
  likely = MAX (0, learned->mean - so_far) / mean;
  /* A need that should have been met by now is met soon. */
  if (likely > out->low)
    out->likely = MIN (likely, out->high);
  return TRUE;
}

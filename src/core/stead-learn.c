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

/* The weather of the days to come. */
typedef struct
{
  const double *coming;     /* NULL: @mean each day */
  gsize         n_coming;
  double        mean;
  double        mean_sd;    /* how unsure the mean is, or what all days are off the usual year */
  double        sd;         /* of one day, as days in a row add up */
} Weather;

/* As days_to(), day by day: each brings what it usually does and @off more. */
static double
walk_to (double         missing,
         const Weather *weather,
         double         off,
         double         normal)
{
  double sum = 0, before = 0;

  if (missing <= 0)
    return 0;
  for (gsize i = 0; i < weather->n_coming; i++)
    {
      double reached;

      sum += MAX (0, weather->coming[i] + off);
      reached = sum + weather->sd * normal * sqrt ((double) i + 1);
      if (reached >= missing)
        return (double) i + CLAMP ((missing - before) / (reached - before), 0, 1);
      before = reached;
    }
  return INFINITY;
}

static double
reach (double         missing,
       const Weather *weather,
       double         off,
       double         normal)
{
  return weather->coming != NULL ? walk_to (missing, weather, off, normal)
                                 : days_to (missing, weather->mean + off, weather->sd, normal);
}

/* What the recent days were off the usual year, on the whole and each. */
static void
weather_by_year (const SteadLearnDays *days,
                 Weather              *out)
{
  double off = 0, squares = 0;

  *out = (Weather) { days->coming, days->n_coming, NAN, 0, STEAD_LEARN_DAY_SPREAD_C * sqrt (RUNS) };
  if (days->n_recent < LEAST_RECENT)
    return;
  for (gsize i = 0; i < days->n_recent; i++)
    off += (days->recent[i] - days->usual[i]) / (double) days->n_recent;
  for (gsize i = 0; i < days->n_recent; i++)
    {
      double stray = days->recent[i] - days->usual[i] - off;

      squares += stray * stray;
    }
  out->sd = sqrt (RUNS * squares / (double) (days->n_recent - 1));
  /* What so few days stray by luck is no sign of a year that is off. */
  out->mean_sd = MAX (fabs (off), out->sd / sqrt ((double) days->n_recent));
}

static gboolean
read_weather (const SteadLearnDays  *days,
              Weather               *out,
              GError               **error)
{
  double warmth = 0;

  if (days->coming != NULL)
    {
      weather_by_year (days, out);
      for (gsize i = 0; i < days->n_coming; i++)
        warmth += days->coming[i];
    }
  else
    {
      warmth = gsl_stats_mean (days->recent, 1, days->n_recent);
      *out = (Weather) { .mean = warmth, .sd = gsl_stats_sd (days->recent, 1, days->n_recent) * sqrt (RUNS) };
      out->mean_sd = out->sd / sqrt ((double) days->n_recent);
    }
  if (warmth > 0 && isfinite (warmth))
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                       _("The last days brought no warmth to grow by, so no date can be told."));
  return FALSE;
}

gboolean
stead_learn_days (const SteadLearned    *learned,
                  double                 so_far,
                  const SteadLearnDays  *days,
                  double                 level,
                  SteadBand             *out,
                  GError               **error)
{
  g_autoptr(SteadRng) rng = NULL;
  double draws[STEAD_BAND_DRAWS];
  Weather weather;
  double above, likely;

  g_return_val_if_fail (learned != NULL && days != NULL && out != NULL, FALSE);
  g_return_val_if_fail (learned->df > 0 && learned->scale > 0, FALSE);
  g_return_val_if_fail (so_far >= 0, FALSE);
  g_return_val_if_fail (days->recent != NULL || days->n_recent == 0, FALSE);
  g_return_val_if_fail (days->coming != NULL ? days->usual != NULL || days->n_recent == 0
                                             : days->n_recent >= LEAST_RECENT, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  if (!read_weather (days, &weather, error))
    return FALSE;
  /* Chance that the need lies above what was reached. */
  above = gsl_cdf_tdist_Q ((so_far - learned->mean) / learned->scale, learned->df);
  rng = stead_alive_rng_new ();
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    {
      /* Evenly over what is left of the need's distribution. */
      double q = above * ((double) i + 0.5) / STEAD_BAND_DRAWS;
      double need = learned->mean + learned->scale * gsl_cdf_tdist_Qinv (q, learned->df);
      double off = gsl_ran_gaussian_ziggurat (rng, weather.mean_sd);

      draws[i] = reach (MAX (0, need - so_far), &weather, off, gsl_ran_gaussian_ziggurat (rng, 1));
    }
  stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, out);
  likely = reach (MAX (0, learned->mean - so_far), &weather, 0, 0);
  /* A need that should have been met by now is met soon. */
  if (likely > out->low)
    out->likely = MIN (likely, out->high);
  return TRUE;
}

/* stead-lay-ahead.c - the bands of a learned laying curve.
 *
 * A world is one curve that the log allows, with its own scatter.  The same worlds
 * are drawn every time, so that a band moves only when the log does.
 */
#include "config.h"

#include "core/stead-alive-private.h"
#include "core/stead-core-error.h"
#include "core/stead-lay-fit-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_randist.h>
#include <math.h>
#include <stdlib.h>

#define TRIES 100            /* to draw a curve that hens can lay by */
#define LEAST_STEEPNESS 0.2
#define ROUNDING 1e-9        /* weeks */
#define WORTH_SORTING 10     /* ages */
#define ALL_LAY 37           /* 1 + e^-37 is 1 to the last digit */

typedef struct
{
  SteadLayCurve curve;
  double        phi;
  double        scatter;     /* of its weeks, in standard deviations */
  double        rank;        /* what to sort by */
} World;

/* Worlds ---------------------------------------------------------------------------------- */

/* Lower triangle whose square is the covariance; a direction without variance stays
 * without. */
static void
split_covariance (const SteadLayFit *fit,
                  double             out[STEAD_LAY_N_PARAMS][STEAD_LAY_N_PARAMS])
{
  for (gsize i = 0; i < STEAD_LAY_N_PARAMS; i++)
    for (gsize j = 0; j < STEAD_LAY_N_PARAMS; j++)
      {
        double rest = j <= i ? fit->covariance[i][j] : 0;

        for (gsize k = 0; k < MIN (i, j) && j <= i; k++)
          rest -= out[i][k] * out[j][k];
        if (j < i)
          out[i][j] = out[j][j] > 0 ? rest / out[j][j] : 0;
        else
          out[i][j] = j == i ? sqrt (MAX (0, rest)) : 0;
      }
}

static gboolean
is_possible (const SteadLayCurve *curve)
{
  double peak;

  if (!(curve->level_frac > 0 && curve->decline_week >= 0 && curve->steepness_week >= LEAST_STEEPNESS))
    return FALSE;
  peak = stead_lay_fit_peak_week (curve);
  return stead_lay_curve_frac (curve, curve->onset_age_weeks + peak) <= STEAD_LAY_TOP_FRAC;
}

static void
draw_curve (const SteadLayFit *fit,
            double             split[STEAD_LAY_N_PARAMS][STEAD_LAY_N_PARAMS],
            gsl_rng           *rng,
            SteadLayCurve     *out)
{
  for (int tries = 0; tries < TRIES; tries++)
    {
      double normal[STEAD_LAY_N_PARAMS], off[STEAD_LAY_N_PARAMS] = { 0 };

      for (gsize i = 0; i < STEAD_LAY_N_PARAMS; i++)
        {
          normal[i] = gsl_ran_gaussian_ziggurat (rng, 1);
          for (gsize k = 0; k <= i; k++)
            off[i] += split[i][k] * normal[k];
        }
      *out = fit->curve;
      out->level_frac += off[STEAD_LAY_LEVEL];
      out->decline_week += off[STEAD_LAY_DECLINE];
      out->steepness_week += off[STEAD_LAY_STEEPNESS];
      out->half_week += off[STEAD_LAY_HALF];
      if (is_possible (out))
        return;
    }
  *out = fit->curve;
}

static void
draw_worlds (const SteadLayFit *fit,
             gsl_rng           *rng,
             World             *worlds)
{
  double split[STEAD_LAY_N_PARAMS][STEAD_LAY_N_PARAMS] = { { 0 } };

  split_covariance (fit, split);
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    {
      draw_curve (fit, split, rng, &worlds[i].curve);
      worlds[i].phi = MAX (1, fit->phi * fit->phi_df / gsl_ran_chisq (rng, fit->phi_df));
      worlds[i].scatter = gsl_ran_gaussian_ziggurat (rng, 1);
    }
}

/* stead_lay_curve_frac(), which most of the time is spent in: well past the rise, all
 * hens lay to the last digit, and the rise need not be worked out. */
static double
rate_at (const SteadLayCurve *curve,
         double               age_weeks)
{
  double t = age_weeks - curve->onset_age_weeks;

  if (curve->steepness_week * (t - curve->half_week) < ALL_LAY)
    return stead_lay_curve_frac (curve, age_weeks);
  return CLAMP (curve->level_frac * exp (-curve->decline_week * t), 0, 1);
}

/* Rate of one week: expected, and @scatter standard deviations beside it. */
static double
rate_of_week (const World *world,
              double       age_weeks,
              double       hen_days,
              double       scatter)
{
  double rate = rate_at (&world->curve, age_weeks);

  rate += scatter * sqrt (world->phi * stead_lay_fit_variance (rate) / hen_days);
  return CLAMP (rate, 0, 1);
}

static int
compare (const void *a,
         const void *b)
{
  const World *x = a, *y = b;

  return (x->rank > y->rank) - (x->rank < y->rank);
}

/* By the rate at one age.  At other ages they are then close to in order, in which a
 * quantile is found faster; which it is does not depend on the order. */
static void
sort_worlds (World  *worlds,
             double  age_weeks,
             double  hen_days)
{
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    worlds[i].rank = rate_of_week (&worlds[i], age_weeks, hen_days, worlds[i].scatter);
  qsort (worlds, STEAD_BAND_DRAWS, sizeof *worlds, compare);
}

/* Likely by the curve; wider, if the last weeks said so. */
static void
finish_band (const SteadLayFit *fit,
             double             likely,
             double             most,
             SteadBand         *band)
{
  likely = CLAMP (likely, band->low, band->high);
  band->low = CLAMP (likely - fit->widen * (likely - band->low), 0, most);
  band->high = CLAMP (likely + fit->widen * (band->high - likely), 0, most);
  band->likely = likely;
}

/* The end of the curve --------------------------------------------------------------------- */

gsize
stead_lay_fit_weeks_left (const SteadLayFit *fit,
                          double             age_weeks)
{
  double left;

  g_return_val_if_fail (fit != NULL && isfinite (age_weeks), 0);

  left = fit->curve.onset_age_weeks + STEAD_LAY_LAST_WEEK - age_weeks;
  return left < -ROUNDING ? 0 : (gsize) floor (left + ROUNDING) + 1;
}

static gboolean
is_covered (const SteadLayFit  *fit,
            double              age_weeks,
            GError            **error)
{
  if (stead_lay_fit_weeks_left (fit, age_weeks) > 0)
    return TRUE;
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
               _("Laying curves end after %d weeks of lay, at an age of %.0f weeks. "
                 "Nothing can be said about later weeks."),
               STEAD_LAY_LAST_WEEK, fit->curve.onset_age_weeks + STEAD_LAY_LAST_WEEK);
  return FALSE;
}

/* Public ---------------------------------------------------------------------------------- */

gboolean
stead_lay_fit_bands (const SteadLayFit  *fit,
                     const double       *ages_weeks,
                     gsize               n,
                     double              hen_days,
                     double              level,
                     SteadBand          *out,
                     GError            **error)
{
  g_autoptr(SteadRng) rng = NULL;
  g_autofree World *worlds = NULL;
  double draws[STEAD_BAND_DRAWS];

  g_return_val_if_fail (fit != NULL && out != NULL, FALSE);
  g_return_val_if_fail (ages_weeks != NULL || n == 0, FALSE);
  g_return_val_if_fail (hen_days > 0, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  for (gsize i = 0; i < n; i++)
    if (!is_covered (fit, ages_weeks[i], error))
      return FALSE;
  rng = stead_alive_rng_new ();
  worlds = g_new (World, STEAD_BAND_DRAWS);
  draw_worlds (fit, rng, worlds);
  if (n >= WORTH_SORTING)
    sort_worlds (worlds, ages_weeks[n / 2], hen_days);
  for (gsize i = 0; i < n; i++)
    {
      for (gsize k = 0; k < STEAD_BAND_DRAWS; k++)
        draws[k] = rate_of_week (&worlds[k], ages_weeks[i], hen_days, worlds[k].scatter);
      stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, &out[i]);
      finish_band (fit, stead_lay_curve_frac (&fit->curve, ages_weeks[i]), 1, &out[i]);
    }
  return TRUE;
}

static SteadAlive
hens_of (const SteadLayFit *fit,
         double             hens)
{
  return (SteadAlive) { .alive = hens, .deaths = fit->deaths, .exposure = fit->hen_weeks,
                        .usual_rate = STEAD_LAY_USUAL_DEATHS_WEEK,
                        .usual_deaths = STEAD_LAY_USUAL_DEATHS };
}

/* One world's eggs, week by week into @eggs (n_weeks x draws).  Returns: their sum */
static double
lay_world (const World      *world,
           const SteadAlive *flock,
           double            age_weeks,
           gsize             n_weeks,
           gsl_rng          *rng,
           double           *eggs)
{
  double death_rate = stead_alive_draw_rate (flock, rng);
  unsigned int alive = (unsigned int) lround (flock->alive);
  double sum = 0;

  for (gsize w = 0; w < n_weeks; w++)
    {
      unsigned int left = stead_alive_draw_left (alive, death_rate, 1, rng);
      double hen_days = 7 * (alive + left) / 2.0;
      double scatter = gsl_ran_gaussian_ziggurat (rng, 1);

      eggs[w * STEAD_BAND_DRAWS] = hen_days > 0
        ? hen_days * rate_of_week (world, age_weeks + (double) w, hen_days, scatter) : 0;
      sum += eggs[w * STEAD_BAND_DRAWS];
      alive = left;
    }
  return sum;
}

gboolean
stead_lay_fit_ahead (const SteadLayFit  *fit,
                     double              hens,
                     double              age_weeks,
                     gsize               n_weeks,
                     double              level,
                     SteadLayAhead      *out_weeks,
                     SteadBand          *out_total,
                     GError            **error)
{
  g_autoptr(SteadRng) rng = NULL;
  g_autofree World *worlds = NULL;
  g_autofree double *eggs = NULL;
  double sums[STEAD_BAND_DRAWS];
  double total = 0;
  SteadAlive flock;

  g_return_val_if_fail (fit != NULL, FALSE);
  g_return_val_if_fail (hens >= 0 && hens <= 1e6 && isfinite (age_weeks), FALSE);
  g_return_val_if_fail (n_weeks <= STEAD_LAY_LAST_WEEK + 1, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  if (n_weeks > 0 && !is_covered (fit, age_weeks + (double) (n_weeks - 1), error))
    return FALSE;
  flock = hens_of (fit, hens);
  rng = stead_alive_rng_new ();
  worlds = g_new (World, STEAD_BAND_DRAWS);
  eggs = g_new (double, n_weeks * STEAD_BAND_DRAWS + 1);
  draw_worlds (fit, rng, worlds);
  for (gsize k = 0; k < STEAD_BAND_DRAWS; k++)
    sums[k] = lay_world (&worlds[k], &flock, age_weeks, n_weeks, rng, eggs + k);

  for (gsize w = 0; w < n_weeks; w++)
    {
      double age = age_weeks + (double) w;
      double alive = stead_alive_after (&flock, (double) w + 0.5);
      double likely = 7 * alive * stead_lay_curve_frac (&fit->curve, age);
      SteadLayAhead ahead = { .age_weeks = age, .hens = alive };

      stead_band_of_draws (eggs + w * STEAD_BAND_DRAWS, STEAD_BAND_DRAWS, level, &ahead.eggs);
      finish_band (fit, likely, 7 * hens, &ahead.eggs);
      total += likely;
      if (out_weeks != NULL)
        out_weeks[w] = ahead;
    }
  if (out_total != NULL)
    {
      stead_band_of_draws (sums, STEAD_BAND_DRAWS, level, out_total);
      finish_band (fit, total, 7 * hens * (double) n_weeks, out_total);
    }
  return TRUE;
}

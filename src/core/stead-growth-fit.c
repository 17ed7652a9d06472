/* stead-growth-fit.c - the growth of a cohort of fish, learned from its weighings. */
#include "config.h"

#include "core/stead-alive-private.h"
#include "core/stead-core-error.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"
#include "core/stead-fit.h"
#include "core/stead-growth-fit.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>

/* Root: cube root of the mean weight at the last weighing. */
enum { ROOT, TGC, N_PARAMS };

#define PHI_START 1.25    /* a weighing scatters a little more than its variance says ... */
#define PHI_START_DF 4    /* ... which counts as four weighings */
#define LEAST_TGC_FRAC 0.02  /* of the estimate: slower growth never gets there */

/* Learning -------------------------------------------------------------------------------- */

typedef struct
{
  double   before[STEAD_GROWTH_FIT_MAX_WEIGHINGS];  /* degree-days until the last */
  double   roots[STEAD_GROWTH_FIT_MAX_WEIGHINGS];
  double   weights[STEAD_GROWTH_FIT_MAX_WEIGHINGS];
  gboolean named[STEAD_GROWTH_FIT_MAX_WEIGHINGS];
  double   z[STEAD_GROWTH_FIT_MAX_WEIGHINGS];
} Learning;

static double
root_cb (const double *params,
         gsize         i,
         double       *gradient,
         gpointer      data)
{
  const Learning *learning = data;
  double back = learning->before[i] / 100;

  if (gradient != NULL)
    {
      gradient[ROOT] = 1;
      gradient[TGC] = -back;
    }
  return params[ROOT] - params[TGC] * back;
}

static gboolean
was_spread_measured (const SteadGrowthWeighing *weighing)
{
  return weighing->sd_g > 0 && weighing->fish >= 2;
}

static gboolean
are_usable (const SteadGrowthWeighing  *weighings,
            gsize                       n,
            GError                    **error)
{
  if (n == 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE,
                           _("Nothing was weighed yet. Enter what the fish weighed when they came."));
      return FALSE;
    }
  if (n > STEAD_GROWTH_FIT_MAX_WEIGHINGS)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("There are too many weighings of these fish to learn from."));
      return FALSE;
    }
  for (gsize i = 0; i < n; i++)
    if (!(weighings[i].fish >= 1 && weighings[i].mean_g > 0 && isfinite (weighings[i].fish)
          && isfinite (weighings[i].mean_g) && !(weighings[i].sd_g < 0) && !isinf (weighings[i].sd_g)
          && (i == 0 || (weighings[i].degree_days >= 0 && isfinite (weighings[i].degree_days)))))
      {
        g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                     _("Weighing %u has a number that cannot be right. Look through the weighings."),
                     (guint) i + 1);
        return FALSE;
      }
  return TRUE;
}

/* Spread of single weights, pooled over the weighings that measured it. */
static void
pool_spread (const SteadGrowthWeighing *weighings,
             gsize                      n,
             SteadGrowthFit            *out)
{
  double squares = STEAD_GROWTH_USUAL_CV_FISH * STEAD_GROWTH_USUAL_CV_FRAC * STEAD_GROWTH_USUAL_CV_FRAC;
  double df = STEAD_GROWTH_USUAL_CV_FISH;

  for (gsize i = 0; i < n; i++)
    {
      double cv = weighings[i].sd_g / weighings[i].mean_g;

      if (!was_spread_measured (&weighings[i]))
        continue;
      squares += (weighings[i].fish - 1) * cv * cv;
      df += weighings[i].fish - 1;
    }
  out->cv_frac = sqrt (squares / df);
  out->cv_df = df;
}

static void
prepare (const SteadGrowthWeighing *weighings,
         gsize                      n,
         double                     cv_frac,
         Learning                  *out)
{
  double before = 0;

  for (gsize i = n; i > 0; i--)
    {
      const SteadGrowthWeighing *weighing = &weighings[i - 1];
      double frac = sqrt (cv_frac * cv_frac / weighing->fish
                          + STEAD_GROWTH_WEIGHING_SD_FRAC * STEAD_GROWTH_WEIGHING_SD_FRAC);
      double root = cbrt (weighing->mean_g);
      double sd = root * frac / 3;

      out->before[i - 1] = before;
      out->roots[i - 1] = root;
      out->weights[i - 1] = 1 / (sd * sd);
      before += weighing->degree_days;
    }
}

static void
list_outliers (const Learning *learning,
               gsize           n,
               SteadGrowthFit *out)
{
  for (gsize i = 0; i < n; i++)
    {
      if (!learning->named[i])
        continue;
      if (out->n_outliers < STEAD_GROWTH_FIT_MAX_OUTLIERS)
        out->outliers[out->n_outliers] = i;
      out->n_outliers++;
    }
  out->n_used = n - out->n_outliers;
  out->last_is_far_off = learning->named[n - 1];
}

static gboolean
run (Learning        *learning,
     gsize            n,
     double           tgc_x100,
     SteadFitResult  *out,
     GError         **error)
{
  const SteadFitParam params[N_PARAMS] = {
    { .start = learning->roots[n - 1], .low = -INFINITY, .high = INFINITY },
    { .start = tgc_x100, .low = -INFINITY, .high = INFINITY, .prior_mean = tgc_x100,
      .prior_sd = STEAD_GROWTH_TGC_SD_FRAC * tgc_x100 },
  };
  const SteadFit fit = { .model = root_cb, .data = learning, .observed = learning->roots,
                         .weights = learning->weights, .n = n, .params = params, .n_params = N_PARAMS,
                         .scatter = STEAD_FIT_SCATTER_AT_LEAST, .phi_prior = PHI_START,
                         .phi_prior_df = PHI_START_DF };

  return stead_fit_run_naming (&fit, out, learning->named, learning->z, error);
}

static void
take_result (const SteadFitResult *result,
             SteadGrowthFit       *out)
{
  out->root_g13 = result->values[ROOT];
  out->mean_g = pow (MAX (0, out->root_g13), 3);
  out->tgc_x100 = result->values[TGC];
  out->tgc_sd_x100 = sqrt (result->covariance[TGC][TGC]);
  for (gsize a = 0; a < N_PARAMS; a++)
    for (gsize b = 0; b < N_PARAMS; b++)
      out->covariance[a][b] = result->covariance[a][b];
  out->phi = result->phi;
  out->phi_df = result->phi_df;
}

gboolean
stead_growth_fit (const SteadGrowthWeighing  *weighings,
                  gsize                       n,
                  double                      tgc_x100,
                  SteadGrowthFit             *out,
                  GError                    **error)
{
  g_autofree Learning *learning = NULL;
  SteadGrowthFit growth = { 0 };
  SteadFitResult result;

  g_return_val_if_fail (weighings != NULL || n == 0, FALSE);
  g_return_val_if_fail (tgc_x100 > 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  if (!are_usable (weighings, n, error))
    return FALSE;
  learning = g_new0 (Learning, 1);
  pool_spread (weighings, n, &growth);
  prepare (weighings, n, growth.cv_frac, learning);
  if (!run (learning, n, tgc_x100, &result, error))
    return FALSE;
  take_result (&result, &growth);
  list_outliers (learning, n, &growth);
  *out = growth;
  return TRUE;
}

/* Bands ----------------------------------------------------------------------------------- */

static double
cube (double root)
{
  return root > 0 ? root * root * root : 0;
}

/* The weight rises with the root, so the band of the root gives that of the weight. */
void
stead_growth_fit_weight (const SteadGrowthFit *fit,
                         double                degree_days,
                         double                degree_days_sd,
                         double                level,
                         SteadBand            *out)
{
  double sum, variance;
  SteadBand root;

  g_return_if_fail (fit != NULL && out != NULL);
  g_return_if_fail (degree_days >= 0 && degree_days_sd >= 0);
  g_return_if_fail (level > 0 && level < 1);

  sum = degree_days / 100;
  variance = fit->covariance[ROOT][ROOT] + 2 * sum * fit->covariance[ROOT][TGC]
             + sum * sum * fit->covariance[TGC][TGC]
             + pow (fit->tgc_x100 * degree_days_sd / 100, 2);
  stead_band_normal (fit->root_g13 + fit->tgc_x100 * sum, sqrt (MAX (0, variance)), level, &root);
  *out = (SteadBand) { cube (root.low), cube (root.likely), cube (root.high) };
}

typedef struct
{
  double root;
  double tgc;
} World;

static World
draw_world (const SteadGrowthFit *fit,
            gsl_rng              *rng)
{
  double root_sd = sqrt (fit->covariance[ROOT][ROOT]);
  double slope = fit->covariance[ROOT][TGC] / fit->covariance[ROOT][ROOT];
  double rest = fit->covariance[TGC][TGC] - slope * fit->covariance[ROOT][TGC];
  double off = gsl_ran_gaussian_ziggurat (rng, root_sd);

  return (World) { fit->root_g13 + off,
                   fit->tgc_x100 + slope * off + gsl_ran_gaussian_ziggurat (rng, sqrt (MAX (0, rest))) };
}

static double
need_of (const SteadGrowthFit *fit,
         const World          *world,
         double                target_root)
{
  if (world->root >= target_root)
    return 0;
  if (!(world->tgc > LEAST_TGC_FRAC * fabs (fit->tgc_x100)))
    return INFINITY;
  return 100 * (target_root - world->root) / world->tgc;
}

void
stead_growth_fit_need (const SteadGrowthFit *fit,
                       double                target_g,
                       double                level,
                       SteadBand            *out)
{
  g_autoptr(SteadRng) rng = NULL;
  const World likely = { fit->root_g13, fit->tgc_x100 };
  double draws[STEAD_BAND_DRAWS];

  g_return_if_fail (fit != NULL && out != NULL);
  g_return_if_fail (target_g > 0);
  g_return_if_fail (level > 0 && level < 1);

  rng = stead_alive_rng_new ();
  for (gsize i = 0; i < STEAD_BAND_DRAWS; i++)
    {
      World world = draw_world (fit, rng);

      draws[i] = need_of (fit, &world, cbrt (target_g));
    }
  stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, out);
  out->likely = CLAMP (need_of (fit, &likely, cbrt (target_g)), out->low, out->high);
}

/* Ahead ----------------------------------------------------------------------------------- */

typedef struct
{
  double mean_g[STEAD_BAND_DRAWS];
  double alive[STEAD_BAND_DRAWS];
  double biomass_kg[STEAD_BAND_DRAWS];
  double ready_frac[STEAD_BAND_DRAWS];
  double ready[STEAD_BAND_DRAWS];
} Draws;

/* What one world finds on each of the days. */
static void
live_through (const SteadGrowthFit *fit,
              const SteadAlive     *fish,
              const SteadGrowthDay *days,
              gsize                 n,
              double                sale_g,
              gsl_rng              *rng,
              Draws                *draws,
              gsize                 k)
{
  World world = draw_world (fit, rng);
  double cv = fit->cv_frac * sqrt (fit->cv_df / gsl_ran_chisq (rng, fit->cv_df));
  double warmth = gsl_ran_gaussian_ziggurat (rng, 1);
  double death_rate = stead_alive_draw_rate (fish, rng);
  unsigned int alive = (unsigned int) lround (fish->alive);
  double day = 0;

  for (gsize i = 0; i < n; i++)
    {
      double sum = MAX (0, days[i].degree_days + warmth * days[i].degree_days_sd);
      double mean = cube (world.root + world.tgc * sum / 100);
      double share = mean > 0 ? stead_fish_share_over (mean, cv, sale_g) : 0;

      alive = stead_alive_draw_left (alive, death_rate, days[i].days - day, rng);
      day = days[i].days;
      draws[i].mean_g[k] = mean;
      draws[i].alive[k] = alive;
      draws[i].biomass_kg[k] = alive * mean / 1000;
      draws[i].ready_frac[k] = share;
      draws[i].ready[k] = gsl_ran_binomial (rng, share, alive);
    }
}

/* Likely by what was learned, not by the middle of the draws, which jitters. */
static void
make_band (double    *draws,
           double     likely,
           double     level,
           SteadBand *out)
{
  stead_band_of_draws (draws, STEAD_BAND_DRAWS, level, out);
  out->likely = CLAMP (likely, out->low, out->high);
}

void
stead_growth_fit_ahead (const SteadGrowthFit *fit,
                        const SteadAlive     *fish,
                        const SteadGrowthDay *days,
                        gsize                 n,
                        double                sale_g,
                        double                level,
                        SteadGrowthAhead     *out)
{
  g_autoptr(SteadRng) rng = NULL;
  g_autofree Draws *draws = NULL;

  g_return_if_fail (fit != NULL && fish != NULL && out != NULL);
  g_return_if_fail (days != NULL || n == 0);
  g_return_if_fail (sale_g > 0);
  g_return_if_fail (level > 0 && level < 1);
  g_return_if_fail (fish->alive >= 0 && fish->alive <= 1e6);
  for (gsize i = 0; i < n; i++)
    g_return_if_fail (days[i].days >= (i > 0 ? days[i - 1].days : 0) && days[i].degree_days_sd >= 0);

  rng = stead_alive_rng_new ();
  draws = g_new (Draws, n);
  for (gsize k = 0; k < STEAD_BAND_DRAWS; k++)
    live_through (fit, fish, days, n, sale_g, rng, draws, k);
  for (gsize i = 0; i < n; i++)
    {
      double mean = cube (fit->root_g13 + fit->tgc_x100 * days[i].degree_days / 100);
      double alive = stead_alive_after (fish, days[i].days);
      double share = mean > 0 ? stead_fish_share_over (mean, fit->cv_frac, sale_g) : 0;

      make_band (draws[i].mean_g, mean, level, &out[i].mean_g);
      make_band (draws[i].alive, alive, level, &out[i].alive);
      make_band (draws[i].biomass_kg, alive * mean / 1000, level, &out[i].biomass_kg);
      make_band (draws[i].ready_frac, share, level, &out[i].ready_frac);
      make_band (draws[i].ready, alive * share, level, &out[i].ready);
    }
}

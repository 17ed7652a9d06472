/* stead-lay-fit.c - the laying curve of a flock, learned from its own log. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-fit.h"
#include "core/stead-lay-fit-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PASSES 3
#define LEVEL_AFTER_PEAK_WEEKS 4
#define DECLINE_AFTER_PEAK_WEEKS 10
#define BEFORE_ONSET_WEEKS 2
#define OUTLIER_TUNING 6.5  /* a week of 3.5 usual deviations is named, of 6.5 does not count */
#define PHI_START 1.5
#define PHI_START_WEEKS 4
#define RUNNING 2           /* weeks beside the band that widen it */
#define LEAST_DECLINE 0.001 /* a curve without decline has no peak */

static const double plan_sd[STEAD_LAY_N_PARAMS] = {
  STEAD_LAY_LEVEL_SD, STEAD_LAY_DECLINE_SD, STEAD_LAY_STEEPNESS_SD, STEAD_LAY_HALF_SD,
};

/* Wide, so that they only keep the search away from nonsense. */
static const struct { double low, high; } bounds[STEAD_LAY_N_PARAMS] = {
  { 0.02, 1.2 }, { 0, 0.1 }, { 0.05, 8 }, { -8, 20 },
};

typedef struct
{
  const SteadLayWeek *weeks;
  SteadLayCurve       plan;
  double             *observed;  /* (array length=n) each: rates ... */
  double             *weights;   /* ... one over their variance, 0: not used ... */
  double             *robust;    /* ... what each week counts ... */
  double             *z;         /* ... and how far off it lies */
} Learning;

/* The curve ------------------------------------------------------------------------------- */

double
stead_lay_fit_peak_week (const SteadLayCurve *curve)
{
  double decline = MAX (curve->decline_week, LEAST_DECLINE);
  double steep = curve->steepness_week;

  /* Where the rise of the one part makes up for the fall of the other. */
  return steep > 2 * decline ? curve->half_week + log ((steep - decline) / decline) / steep
                             : curve->half_week;
}

static void
curve_to_params (const SteadLayCurve *curve,
                 double              *params)
{
  params[STEAD_LAY_LEVEL] = curve->level_frac;
  params[STEAD_LAY_DECLINE] = curve->decline_week;
  params[STEAD_LAY_STEEPNESS] = curve->steepness_week;
  params[STEAD_LAY_HALF] = curve->half_week;
}

static void
params_to_curve (const double  *params,
                 SteadLayCurve *curve)
{
  curve->level_frac = params[STEAD_LAY_LEVEL];
  curve->decline_week = params[STEAD_LAY_DECLINE];
  curve->steepness_week = params[STEAD_LAY_STEEPNESS];
  curve->half_week = params[STEAD_LAY_HALF];
}

/* y = a e^(-x t) s, s = 1 / (1 + e^(-c (t - d))), and its slopes. */
static double
rate_cb (const double *params,
         gsize         i,
         double       *gradient,
         gpointer      data)
{
  const Learning *learning = data;
  double t = learning->weeks[i].age_weeks - learning->plan.onset_age_weeks;
  double since_half = t - params[STEAD_LAY_HALF];
  double fall = exp (-params[STEAD_LAY_DECLINE] * t);
  double late = exp (-params[STEAD_LAY_STEEPNESS] * since_half);
  double rise = 1 / (1 + late);
  double rate = params[STEAD_LAY_LEVEL] * fall * rise;
  double not_yet = isfinite (late) ? late * rise : 1;

  if (gradient != NULL)
    {
      gradient[STEAD_LAY_LEVEL] = fall * rise;
      gradient[STEAD_LAY_DECLINE] = -t * rate;
      gradient[STEAD_LAY_STEEPNESS] = rate * not_yet * since_half;
      gradient[STEAD_LAY_HALF] = -rate * not_yet * params[STEAD_LAY_STEEPNESS];
    }
  return rate;
}

/* The log --------------------------------------------------------------------------------- */

static double
week_of_lay (const SteadLayWeek  *week,
             const SteadLayCurve *plan)
{
  return week->age_weeks - plan->onset_age_weeks;
}

gboolean
stead_lay_fit_uses (const SteadLayWeek  *week,
                    const SteadLayCurve *plan)
{
  double t = week_of_lay (week, plan);

  return !week->left_out && week->hen_days > 0 && t >= -BEFORE_ONSET_WEEKS && t <= STEAD_LAY_LAST_WEEK;
}

static gboolean
is_week (const SteadLayWeek *week)
{
  return isfinite (week->age_weeks) && week->age_weeks >= 0 && isfinite (week->hen_days)
         && week->hen_days >= 0 && week->eggs >= 0 && week->deaths >= 0;
}

static gboolean
read_log (const SteadLayWeek   *weeks,
          gsize                 n,
          const SteadLayCurve  *plan,
          SteadLayFit          *out,
          GError              **error)
{
  double hens = 0;

  for (gsize i = 0; i < n; i++)
    {
      if (!is_week (&weeks[i]))
        {
          g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("Week %u of the log has a number that cannot be right. Look through its entries."),
                       (guint) i + 1);
          return FALSE;
        }
      if (weeks[i].left_out)
        {
          out->n_left_out++;
          continue;
        }
      out->n_beyond += week_of_lay (&weeks[i], plan) > STEAD_LAY_LAST_WEEK;
      if (stead_lay_fit_uses (&weeks[i], plan))
        {
          out->n_used++;
          out->last_age_weeks = weeks[i].age_weeks;
        }
      /* A week without an egg entry had hens too: about those of the week before. */
      if (weeks[i].days_logged > 0)
        hens = weeks[i].hen_days / weeks[i].days_logged;
      if (hens > 0)
        {
          out->deaths += (double) weeks[i].deaths;
          out->hen_weeks += hens;
        }
    }
  return TRUE;
}

/* What the log can tell by now ------------------------------------------------------------- */

static void
choose_learned (const Learning *learning,
                gsize           n,
                SteadLayFit    *out)
{
  double peak = stead_lay_fit_peak_week (&out->curve);
  double last = out->last_age_weeks - learning->plan.onset_age_weeks;
  gboolean rise = FALSE;

  for (gsize i = 0; i < n; i++)
    if (stead_lay_fit_uses (&learning->weeks[i], &learning->plan)
        && week_of_lay (&learning->weeks[i], &learning->plan) < peak)
      rise = TRUE;
  out->learned[STEAD_LAY_STEEPNESS] = out->learned[STEAD_LAY_HALF] = rise;
  out->learned[STEAD_LAY_LEVEL] = last >= peak + LEVEL_AFTER_PEAK_WEEKS;
  out->learned[STEAD_LAY_DECLINE] = last >= peak + DECLINE_AFTER_PEAK_WEEKS;
}

static gboolean
learns_any (const SteadLayFit *out)
{
  for (gsize p = 0; p < STEAD_LAY_N_PARAMS; p++)
    if (out->learned[p])
      return TRUE;
  return FALSE;
}

static void
set_planned (const SteadLayCurve *plan,
             SteadLayFit         *out)
{
  out->curve = *plan;
  for (gsize p = 0; p < STEAD_LAY_N_PARAMS; p++)
    {
      for (gsize q = 0; q < STEAD_LAY_N_PARAMS; q++)
        out->covariance[p][q] = p == q ? plan_sd[p] * plan_sd[p] : 0;
      out->learned[p] = FALSE;
    }
  out->phi = PHI_START;
  out->phi_df = PHI_START_WEEKS;
  out->widen = 1;
}

/* Passes ---------------------------------------------------------------------------------- */

static void
set_weights (const Learning      *learning,
             gsize                n,
             const SteadLayCurve *curve)
{
  for (gsize i = 0; i < n; i++)
    {
      const SteadLayWeek *week = &learning->weeks[i];
      double rate = stead_lay_curve_frac (curve, week->age_weeks);

      learning->observed[i] = week->hen_days > 0 ? (double) week->eggs / week->hen_days : 0;
      learning->weights[i] = stead_lay_fit_uses (week, &learning->plan)
                             ? week->hen_days / stead_lay_fit_variance (rate) : 0;
    }
}

static void
set_params (const Learning    *learning,
            const SteadLayFit *out,
            SteadFitParam     *params)
{
  double plan[STEAD_LAY_N_PARAMS], start[STEAD_LAY_N_PARAMS];

  curve_to_params (&learning->plan, plan);
  curve_to_params (&out->curve, start);
  for (gsize p = 0; p < STEAD_LAY_N_PARAMS; p++)
    {
      gboolean fixed = !out->learned[p];

      params[p] = (SteadFitParam) { .start = fixed ? plan[p] : start[p], .low = bounds[p].low,
                                    .high = bounds[p].high, .prior_mean = plan[p],
                                    .prior_sd = plan_sd[p], .fixed = fixed };
      if (!fixed && !(params[p].start > params[p].low && params[p].start < params[p].high))
        params[p].start = plan[p];
    }
}

static gboolean
run_pass (Learning     *learning,
          gsize         n,
          SteadLayFit  *out,
          GError      **error)
{
  SteadFitParam params[STEAD_LAY_N_PARAMS];
  SteadFitResult result;
  SteadFit fit = { .model = rate_cb, .data = learning, .observed = learning->observed,
                   .weights = learning->weights, .n = n, .params = params, .n_params = STEAD_LAY_N_PARAMS,
                   .loss = STEAD_FIT_LOSS_BISQUARE, .tuning = OUTLIER_TUNING,
                   .scatter = STEAD_FIT_SCATTER_AT_LEAST, .phi_prior = PHI_START,
                   .phi_prior_df = PHI_START_WEEKS };

  set_weights (learning, n, &out->curve);
  set_params (learning, out, params);
  if (!stead_fit_run (&fit, &result, learning->robust, learning->z, error))
    return FALSE;
  params_to_curve (result.values, &out->curve);
  for (gsize p = 0; p < STEAD_LAY_N_PARAMS; p++)
    for (gsize q = 0; q < STEAD_LAY_N_PARAMS; q++)
      out->covariance[p][q] = result.covariance[p][q];
  out->phi = result.phi;
  out->phi_df = result.phi_df;
  return TRUE;
}

static void
list_outliers (const Learning *learning,
               gsize           n,
               SteadLayFit    *out)
{
  out->n_outliers = 0;
  for (gsize i = 0; i < n; i++)
    {
      if (!(learning->weights[i] > 0 && learning->robust[i] < STEAD_FIT_OUTLIER_WEIGHT))
        continue;
      if (out->n_outliers < STEAD_LAY_MAX_OUTLIERS)
        out->outliers[out->n_outliers] = (SteadLayOutlier) {
          .week = i, .frac = learning->observed[i],
          .expected_frac = stead_lay_curve_frac (&out->curve, learning->weeks[i].age_weeks),
          .z = learning->z[i],
        };
      out->n_outliers++;
    }
}

static gboolean
learn (Learning     *learning,
       gsize         n,
       SteadLayFit  *out,
       GError      **error)
{
  choose_learned (learning, n, out);
  for (int pass = 0; pass < PASSES && learns_any (out); pass++)
    {
      if (!run_pass (learning, n, out, error))
        return FALSE;
      /* Where the peak lies is known better now. */
      if (pass == 0)
        choose_learned (learning, n, out);
    }
  if (!learns_any (out))
    {
      set_planned (&learning->plan, out);
      return TRUE;
    }
  list_outliers (learning, n, out);
  return TRUE;
}

static gboolean
fit_log (const SteadLayWeek   *weeks,
         gsize                 n,
         const SteadLayCurve  *plan,
         SteadLayFit          *out,
         double               *out_weights,
         GError              **error)
{
  g_autofree double *room = g_new0 (double, 4 * n + 1);
  Learning learning = { .weeks = weeks, .plan = *plan, .observed = room, .weights = room + n,
                        .robust = room + 2 * n, .z = room + 3 * n };
  SteadLayFit fit = { .last_age_weeks = NAN };

  set_planned (plan, &fit);
  if (!read_log (weeks, n, plan, &fit, error))
    return FALSE;
  if (fit.n_used > 0 && !learn (&learning, n, &fit, error))
    return FALSE;
  for (gsize i = 0; out_weights != NULL && i < n; i++)
    out_weights[i] = learns_any (&fit) ? learning.robust[i] : 0;
  *out = fit;
  return TRUE;
}

/* Honesty --------------------------------------------------------------------------------- */

/* Index from which on the last @hold_back weeks that are learned from stand; n if
 * there are not that many. */
static gsize
find_held (const SteadLayWeek  *weeks,
           gsize                n,
           const SteadLayCurve *plan,
           gsize                hold_back)
{
  gsize found = 0;

  for (gsize i = n; i > 0; i--)
    if (stead_lay_fit_uses (&weeks[i - 1], plan) && ++found == hold_back)
      return i - 1;
  return n;
}

/* How far a week lies from the band's middle, 1: at its edge; below 0: under it. */
static gboolean
place_in_band (const SteadLayFit   *fit,
               const SteadLayWeek  *week,
               double               level,
               double              *out,
               GError             **error)
{
  double frac = (double) week->eggs / week->hen_days;
  SteadBand band;

  if (!stead_lay_fit_bands (fit, &week->age_weeks, 1, week->hen_days, level, &band, error))
    return FALSE;
  *out = frac < band.likely ? -(band.likely - frac) / MAX (band.likely - band.low, 1e-9)
                            : (frac - band.likely) / MAX (band.high - band.likely, 1e-9);
  return TRUE;
}

/* Sets @fit->widen by what the two last weeks say. */
static gboolean
look_back (const SteadLayWeek   *weeks,
           gsize                 n,
           const SteadLayCurve  *plan,
           SteadLayFit          *fit,
           GError              **error)
{
  gsize from = find_held (weeks, n, plan, RUNNING);
  double nearest = INFINITY;
  double side = 0;
  SteadLayFit before;

  if (from == n)
    return TRUE;
  if (!fit_log (weeks, from, plan, &before, NULL, error))
    return FALSE;
  for (gsize i = from; i < n; i++)
    {
      double place;

      if (!stead_lay_fit_uses (&weeks[i], plan))
        continue;
      if (!place_in_band (&before, &weeks[i], STEAD_BAND_LEVEL, &place, error))
        return FALSE;
      if (fabs (place) <= 1 || place * side < 0)
        return TRUE;
      side = place;
      nearest = MIN (nearest, fabs (place));
    }
  fit->widen = nearest;
  return TRUE;
}

/* Public ---------------------------------------------------------------------------------- */

gboolean
stead_lay_fit (const SteadLayWeek   *weeks,
               gsize                 n,
               const SteadLayCurve  *plan,
               SteadLayFit          *out,
               double               *out_weights,
               GError              **error)
{
  SteadLayCurve usual;

  g_return_val_if_fail (weeks != NULL || n == 0, FALSE);
  g_return_val_if_fail (out != NULL, FALSE);

  stead_lay_curve_default (&usual);
  if (plan == NULL)
    plan = &usual;
  return fit_log (weeks, n, plan, out, out_weights, error)
         && look_back (weeks, n, plan, out, error);
}

gboolean
stead_lay_fit_check (const SteadLayWeek   *weeks,
                     gsize                 n,
                     const SteadLayCurve  *plan,
                     gsize                 hold_back,
                     double                level,
                     SteadLayCheck        *out,
                     GError              **error)
{
  SteadLayCurve usual;
  SteadLayFit before;
  SteadLayCheck check = { 0 };
  gsize from;

  g_return_val_if_fail (weeks != NULL || n == 0, FALSE);
  g_return_val_if_fail (hold_back > 0 && out != NULL, FALSE);
  g_return_val_if_fail (level > 0 && level < 1, FALSE);

  stead_lay_curve_default (&usual);
  if (plan == NULL)
    plan = &usual;
  from = find_held (weeks, n, plan, hold_back);
  if (!stead_lay_fit (weeks, from, plan, &before, NULL, error))
    return FALSE;
  for (gsize i = from; i < n; i++)
    {
      double place;

      if (!stead_lay_fit_uses (&weeks[i], plan))
        continue;
      if (!place_in_band (&before, &weeks[i], level, &place, error))
        return FALSE;
      check.n_weeks++;
      check.n_inside += fabs (place) <= 1;
    }
  *out = check;
  return TRUE;
}

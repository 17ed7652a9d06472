/* The laying curve learned from a flock's own log. */
#include "core/stead-core-error.h"
#include "core/stead-lay-fit.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <string.h>

#define MAX_WEEKS 120

/* A flock that is a little late, lower and faster down than the plan. */
static const SteadLayCurve truth = { .level_frac = 0.93, .decline_week = 0.006, .steepness_week = 1.1,
                                     .half_week = 2.6, .onset_age_weeks = 18 };

/* @n weeks from week @first of lay on, with eggs by chance; no @rng: without chance. */
static void
lay (const SteadLayCurve *curve,
     gsize                first,
     gsize                n,
     double               hens,
     gsl_rng             *rng,
     SteadLayWeek        *out)
{
  for (gsize i = 0; i < n; i++)
    {
      double age = curve->onset_age_weeks + (double) (first + i) + 0.5;
      double rate = stead_lay_curve_frac (curve, age);

      out[i] = (SteadLayWeek) { .age_weeks = age, .days_logged = 7, .hen_days = 7 * hens };
      out[i].eggs = rng != NULL ? (gint64) gsl_ran_binomial (rng, rate, (unsigned) (7 * hens))
                                : llround (rate * 7 * hens);
    }
}

static SteadLayFit
fit_of (const SteadLayWeek *weeks,
        gsize               n)
{
  g_autoptr(GError) error = NULL;
  SteadLayFit fit;

  g_assert_true (stead_lay_fit (weeks, n, NULL, &fit, NULL, &error));
  g_assert_no_error (error);
  return fit;
}

static double
sd_of (const SteadLayFit *fit,
       SteadLayParam      p)
{
  return sqrt (fit->covariance[p][p]);
}

/* Nothing logged: the plan, as unsure as the plan. */
static void
test_plan (void)
{
  SteadLayFit fit = fit_of (NULL, 0);
  SteadLayCurve plan;
  SteadBand band;
  double age = 30;

  stead_lay_curve_default (&plan);
  g_assert_cmpmem (&fit.curve, sizeof plan, &plan, sizeof plan);
  g_assert_cmpfloat_with_epsilon (sd_of (&fit, STEAD_LAY_LEVEL), STEAD_LAY_LEVEL_SD, 1e-12);
  g_assert_cmpuint (fit.n_used, ==, 0);
  g_assert_true (isnan (fit.last_age_weeks));
  g_assert_true (stead_lay_fit_bands (&fit, &age, 1, 210, 0.8, &band, NULL));
  g_assert_cmpfloat (band.likely, ==, stead_lay_curve_frac (&plan, 30));
  g_assert_cmpfloat (band.high - band.low, >, 2 * 0.03);
}

/* Only what the log can tell: onset and steepness first, the level from four weeks
 * after the peak, the decline from ten.  What is not learned is exactly as planned. */
static void
test_schedule (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayCurve plan;

  stead_lay_curve_default (&plan);
  lay (&plan, 0, 40, 40, NULL, weeks);
  /* The plan's peak: ln (1.296 / 0.004) / 1.3 + 2 = 6.45 weeks of lay. */
  for (gsize n = 1; n <= 40; n++)
    {
      SteadLayFit fit = fit_of (weeks, n);
      double last = (double) n - 0.5;

      g_assert_true (fit.learned[STEAD_LAY_STEEPNESS] && fit.learned[STEAD_LAY_HALF]);
      /* Where the peak lies is learned as well: give it a tenth of a week. */
      if (fabs (last - 10.45) > 0.1)
        g_assert_true (fit.learned[STEAD_LAY_LEVEL] == (last > 10.45));
      if (fabs (last - 16.45) > 0.1)
        g_assert_true (fit.learned[STEAD_LAY_DECLINE] == (last > 16.45));
      if (!fit.learned[STEAD_LAY_LEVEL])
        {
          g_assert_cmpfloat (fit.curve.level_frac, ==, plan.level_frac);
          g_assert_cmpfloat_with_epsilon (sd_of (&fit, STEAD_LAY_LEVEL), STEAD_LAY_LEVEL_SD, 1e-12);
        }
      if (!fit.learned[STEAD_LAY_DECLINE])
        g_assert_cmpfloat (fit.curve.decline_week, ==, plan.decline_week);
    }
}

/* A log that begins after the peak says nothing about the rise. */
static void
test_late_log (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayFit fit;

  lay (&truth, 20, 30, 40, NULL, weeks);
  fit = fit_of (weeks, 30);
  g_assert_false (fit.learned[STEAD_LAY_STEEPNESS] || fit.learned[STEAD_LAY_HALF]);
  g_assert_true (fit.learned[STEAD_LAY_LEVEL] && fit.learned[STEAD_LAY_DECLINE]);
  g_assert_cmpfloat (fit.curve.half_week, ==, 2);
  g_assert_cmpfloat_with_epsilon (fit.curve.level_frac, truth.level_frac, 0.03);
}

/* A very large flock without chance: the curve itself comes back. */
static void
test_recovers (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayFit fit;

  lay (&truth, 0, 60, 1e6, NULL, weeks);
  fit = fit_of (weeks, 60);
  g_assert_cmpfloat_with_epsilon (fit.curve.level_frac, truth.level_frac, 1e-4);
  g_assert_cmpfloat_with_epsilon (fit.curve.decline_week, truth.decline_week, 1e-5);
  g_assert_cmpfloat_with_epsilon (fit.curve.steepness_week, truth.steepness_week, 1e-3);
  g_assert_cmpfloat_with_epsilon (fit.curve.half_week, truth.half_week, 1e-3);
  g_assert_cmpuint (fit.n_used, ==, 60);
  g_assert_cmpuint (fit.n_outliers, ==, 0);
  g_assert_cmpfloat_with_epsilon (fit.last_age_weeks, 77.5, 1e-12);
  g_assert_cmpfloat (fit.widen, ==, 1);
}

/* Days without an entry are missing, not eggless; weeks without one are a gap. */
static void
test_gaps (void)
{
  SteadLayWeek weeks[MAX_WEEKS], thinned[MAX_WEEKS];
  SteadLayFit whole, part;
  gsize n = 0;

  lay (&truth, 0, 50, 300, NULL, weeks);
  whole = fit_of (weeks, 50);
  for (gsize i = 0; i < 50; i++)
    {
      if (i % 7 == 3)
        continue;
      thinned[n] = weeks[i];
      if (i % 5 == 1)
        {
          thinned[n].days_logged = 3;
          thinned[n].hen_days = 900;
          thinned[n].eggs = llround (900.0 * (double) weeks[i].eggs / weeks[i].hen_days);
        }
      if (i % 11 == 5)
        thinned[n] = (SteadLayWeek) { .age_weeks = weeks[i].age_weeks };
      n++;
    }
  part = fit_of (thinned, n);
  g_assert_cmpuint (part.n_used, <, n);
  g_assert_cmpfloat_with_epsilon (part.curve.level_frac, whole.curve.level_frac, 0.002);
  g_assert_cmpfloat_with_epsilon (part.curve.decline_week, whole.curve.decline_week, 0.0001);
  g_assert_cmpfloat (sd_of (&part, STEAD_LAY_LEVEL), >, sd_of (&whole, STEAD_LAY_LEVEL));
}

/* A week that is marked counts as if it were not there, deaths too. */
static void
test_left_out (void)
{
  SteadLayWeek weeks[MAX_WEEKS], without[MAX_WEEKS];
  double weights[MAX_WEEKS];
  SteadLayFit marked, missing;

  lay (&truth, 0, 40, 30, NULL, weeks);
  weeks[20].eggs = 3;
  weeks[20].deaths = 12;
  weeks[20].left_out = TRUE;
  memcpy (without, weeks, 20 * sizeof *weeks);
  memcpy (without + 20, weeks + 21, 19 * sizeof *weeks);
  g_assert_true (stead_lay_fit (weeks, 40, NULL, &marked, weights, NULL));
  missing = fit_of (without, 39);
  g_assert_cmpmem (&marked.curve, sizeof marked.curve, &missing.curve, sizeof missing.curve);
  g_assert_cmpuint (marked.n_left_out, ==, 1);
  g_assert_cmpuint (marked.n_used, ==, 39);
  g_assert_cmpfloat (weights[20], ==, 0);
  g_assert_cmpfloat (weights[21], >, 0.5);
  g_assert_cmpfloat (marked.deaths, ==, 0);
}

/* A sick week and a slip of ten times, not marked, are named and hardly move the curve. */
static void
test_odd_weeks_are_named (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  const double odd[] = { 0.5, 10, 0 };

  for (gsize o = 0; o < G_N_ELEMENTS (odd); o++)
    for (gsize at = 8; at < 40; at += 4)
      {
        SteadLayWeek weeks[MAX_WEEKS];
        SteadLayFit good, fit;
        gboolean named = FALSE;

        lay (&truth, 0, 40, 30, rng, weeks);
        good = fit_of (weeks, 40);
        weeks[at].eggs = (gint64) ((double) weeks[at].eggs * odd[o]);
        fit = fit_of (weeks, 40);
        for (gsize i = 0; i < fit.n_outliers; i++)
          if (fit.outliers[i].week == at)
            {
              named = TRUE;
              g_assert_cmpfloat_with_epsilon (fit.outliers[i].frac, (double) weeks[at].eggs / 210, 1e-12);
              g_assert_true ((fit.outliers[i].z < 0) == (odd[o] < 1));
              g_assert_cmpfloat (fabs (fit.outliers[i].z), >, 6);
            }
        g_assert_true (named);
        g_assert_cmpuint (fit.n_outliers, <=, good.n_outliers + 1);
        for (int p = 0; p < STEAD_LAY_N_PARAMS; p++)
          {
            const double *before = &good.curve.level_frac + p, *after = &fit.curve.level_frac + p;

            g_assert_cmpfloat_with_epsilon (*after, *before, 0.6 * sd_of (&good, (SteadLayParam) p));
          }
        g_assert_cmpfloat (fit.phi, <, 1.5 * good.phi);
      }
  gsl_rng_free (rng);
}

/* No curve goes past week 80 of lay: such weeks are told, and nothing is foretold there. */
static void
test_last_week (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayFit fit;
  SteadBand band = { .likely = -5 };
  const double late[] = { 60, 98.2 };
  g_autoptr(GError) error = NULL;

  lay (&truth, 0, 90, 30, NULL, weeks);
  fit = fit_of (weeks, 90);
  g_assert_cmpuint (fit.n_beyond, ==, 10);
  g_assert_cmpuint (fit.n_used, ==, 80);
  g_assert_cmpfloat_with_epsilon (fit.last_age_weeks, 18 + 79.5, 1e-12);
  g_assert_false (stead_lay_fit_bands (&fit, late, 2, 210, 0.8, &band, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (band.likely, ==, -5);
  g_clear_error (&error);
  g_assert_cmpuint (stead_lay_fit_weeks_left (&fit, 98), ==, 1);
  g_assert_cmpuint (stead_lay_fit_weeks_left (&fit, 98.01), ==, 0);
  g_assert_cmpuint (stead_lay_fit_weeks_left (&fit, 88.5), ==, 10);
  g_assert_true (stead_lay_fit_ahead (&fit, 30, 88.5, 10, 0.8, NULL, &band, &error));
  g_assert_no_error (error);
  g_assert_false (stead_lay_fit_ahead (&fit, 30, 88.5, 11, 0.8, NULL, &band, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
}

/* Two weeks running under the band make it wider; one does not. */
static void
test_widens (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayFit good, one, two;
  SteadBand before, after;
  double age = 60;

  lay (&truth, 0, 40, 60, NULL, weeks);
  good = fit_of (weeks, 40);
  weeks[39].eggs = weeks[39].eggs * 9 / 10;
  one = fit_of (weeks, 40);
  g_assert_cmpfloat (one.widen, ==, 1);
  weeks[38].eggs = weeks[38].eggs * 9 / 10;
  two = fit_of (weeks, 40);
  g_assert_cmpfloat (two.widen, >, 1.2);
  g_assert_true (stead_lay_fit_bands (&good, &age, 1, 420, 0.8, &before, NULL));
  g_assert_true (stead_lay_fit_bands (&two, &age, 1, 420, 0.8, &after, NULL));
  g_assert_cmpfloat (after.high - after.low, >, two.widen * (before.high - before.low));
  /* One over and one under are no drift. */
  weeks[39].eggs = weeks[39].eggs * 12 / 10;
  g_assert_cmpfloat (fit_of (weeks, 40).widen, ==, 1);
}

/* Coming weeks: each in its band, their sum surer than all of them low at once, and
 * fewer hens with a flock that loses some. */
static void
test_ahead (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayAhead ahead[12], mourning[12];
  SteadLayFit fit;
  SteadBand total, less;
  double lows = 0, likely = 0;

  lay (&truth, 0, 40, 30, NULL, weeks);
  fit = fit_of (weeks, 40);
  g_assert_true (stead_lay_fit_ahead (&fit, 30, 58.5, 12, 0.8, ahead, &total, NULL));
  for (gsize i = 0; i < 12; i++)
    {
      g_assert_cmpfloat_with_epsilon (ahead[i].age_weeks, 58.5 + (double) i, 1e-12);
      g_assert_true (ahead[i].eggs.low < ahead[i].eggs.likely && ahead[i].eggs.likely < ahead[i].eggs.high);
      g_assert_cmpfloat (ahead[i].eggs.high, <=, 210);
      g_assert_cmpfloat_with_epsilon (ahead[i].eggs.likely, 7 * ahead[i].hens
                                      * stead_lay_curve_frac (&fit.curve, ahead[i].age_weeks), 1e-9);
      g_assert_true (ahead[i].hens < (i > 0 ? ahead[i - 1].hens : 30));
      lows += ahead[i].eggs.low;
      likely += ahead[i].eggs.likely;
    }
  g_assert_cmpfloat_with_epsilon (total.likely, likely, 1e-6);
  g_assert_cmpfloat (total.low, >, lows);
  for (gsize i = 0; i < 40; i++)
    weeks[i].deaths = i % 4 == 0;
  fit = fit_of (weeks, 40);
  g_assert_cmpfloat (fit.deaths, ==, 10);
  g_assert_cmpfloat_with_epsilon (fit.hen_weeks, 1200, 1e-9);
  g_assert_true (stead_lay_fit_ahead (&fit, 30, 58.5, 12, 0.8, mourning, &less, NULL));
  g_assert_cmpfloat (mourning[11].hens, <, ahead[11].hens - 0.5);
  g_assert_cmpfloat (less.likely, <, total.likely);
  /* No hens, no eggs. */
  g_assert_true (stead_lay_fit_ahead (&fit, 0, 58.5, 12, 0.8, NULL, &less, NULL));
  g_assert_true (less.low == 0 && less.high == 0);
}

/* A small flock scatters more than a large one, and a rate stays a rate. */
static void
test_bands (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayFit fit;
  SteadBand few[81], many[81], again[81];
  double ages[81];

  lay (&truth, 0, 40, 30, NULL, weeks);
  fit = fit_of (weeks, 40);
  for (gsize i = 0; i < 81; i++)
    ages[i] = 18 + (double) i;
  g_assert_true (stead_lay_fit_bands (&fit, ages, 81, 21, 0.8, few, NULL));
  g_assert_true (stead_lay_fit_bands (&fit, ages, 81, 2100, 0.8, many, NULL));
  g_assert_true (stead_lay_fit_bands (&fit, ages, 81, 2100, 0.8, again, NULL));
  g_assert_cmpmem (many, sizeof many, again, sizeof again);
  for (gsize i = 0; i < 81; i++)
    {
      g_assert_true (few[i].low >= 0 && few[i].high <= 1);
      g_assert_cmpfloat (few[i].high - few[i].low, >, many[i].high - many[i].low);
      g_assert_true (many[i].low <= many[i].likely && many[i].likely <= many[i].high);
    }
  /* Farther ahead is less sure. */
  g_assert_cmpfloat (many[79].high - many[79].low, >, many[40].high - many[40].low);
}

static void
test_check (void)
{
  SteadLayWeek weeks[MAX_WEEKS];
  SteadLayCheck check;

  lay (&truth, 0, 40, 30, NULL, weeks);
  g_assert_true (stead_lay_fit_check (weeks, 40, NULL, 3, 0.8, &check, NULL));
  g_assert_cmpuint (check.n_weeks, ==, 3);
  g_assert_cmpuint (check.n_inside, ==, 3);
  weeks[38].eggs = 20;
  weeks[39].left_out = TRUE;
  g_assert_true (stead_lay_fit_check (weeks, 40, NULL, 3, 0.8, &check, NULL));
  g_assert_cmpuint (check.n_weeks, ==, 3);
  g_assert_cmpuint (check.n_inside, ==, 2);
  g_assert_true (stead_lay_fit_check (weeks, 2, NULL, 3, 0.8, &check, NULL));
  g_assert_cmpuint (check.n_weeks, ==, 0);
}

static void
test_refusals (void)
{
  SteadLayWeek weeks[MAX_WEEKS];

  for (int wrong = 0; wrong < 5; wrong++)
    {
      SteadLayFit fit = { .n_used = 55 };
      g_autoptr(GError) error = NULL;

      lay (&truth, 0, 20, 30, NULL, weeks);
      switch (wrong)
        {
        case 0: weeks[4].eggs = -1; break;
        case 1: weeks[4].hen_days = NAN; break;
        case 2: weeks[4].hen_days = -210; break;
        case 3: weeks[4].age_weeks = INFINITY; break;
        default: weeks[4].deaths = -2; break;
        }
      g_assert_false (stead_lay_fit (weeks, 20, NULL, &fit, NULL, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_nonnull (strstr (error->message, "5"));
      g_assert_cmpuint (fit.n_used, ==, 55);
    }
}

/* Whatever is logged, there is an answer or a refusal, and never a number that is none. */
static void
test_wild_logs (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsize refused = 0;

  for (int run = 0; run < 300; run++)
    {
      SteadLayWeek weeks[MAX_WEEKS];
      gsize n = gsl_rng_uniform_int (rng, 60);
      SteadLayFit fit;

      lay (&truth, gsl_rng_uniform_int (rng, 20), n, 1 + (double) gsl_rng_uniform_int (rng, 50), rng, weeks);
      for (gsize i = 0; i < n; i++)
        if (gsl_rng_uniform (rng) < 0.5)
          weeks[i].eggs = (gint64) gsl_rng_uniform_int (rng, 1000);
      if (!stead_lay_fit (weeks, n, NULL, &fit, NULL, NULL))
        {
          refused++;
          continue;
        }
      g_assert_true (isfinite (fit.phi) && fit.phi >= 1 && isfinite (fit.widen) && fit.widen >= 1);
      g_assert_true (fit.curve.level_frac > 0 && fit.curve.decline_week >= 0 && fit.curve.steepness_week > 0);
      for (int p = 0; p < STEAD_LAY_N_PARAMS; p++)
        g_assert_true (isfinite (fit.covariance[p][p]) && fit.covariance[p][p] > 0);
    }
  g_test_message ("%" G_GSIZE_FORMAT " of 300 refused", refused);
  g_assert_cmpuint (refused, <, 15);
  gsl_rng_free (rng);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/lay-fit/plan", test_plan);
  g_test_add_func ("/core/lay-fit/schedule", test_schedule);
  g_test_add_func ("/core/lay-fit/late-log", test_late_log);
  g_test_add_func ("/core/lay-fit/recovers", test_recovers);
  g_test_add_func ("/core/lay-fit/gaps", test_gaps);
  g_test_add_func ("/core/lay-fit/left-out", test_left_out);
  g_test_add_func ("/core/lay-fit/odd-weeks-are-named", test_odd_weeks_are_named);
  g_test_add_func ("/core/lay-fit/last-week", test_last_week);
  g_test_add_func ("/core/lay-fit/widens", test_widens);
  g_test_add_func ("/core/lay-fit/ahead", test_ahead);
  g_test_add_func ("/core/lay-fit/bands", test_bands);
  g_test_add_func ("/core/lay-fit/check", test_check);
  g_test_add_func ("/core/lay-fit/refusals", test_refusals);
  g_test_add_func ("/core/lay-fit/wild-logs", test_wild_logs);
  return g_test_run ();
}

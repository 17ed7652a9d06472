/* Growth of fish learned from weighings: formulas, slips, bands. */
#include "core/stead-core-error.h"
#include "core/stead-fish-growth.h"
#include "core/stead-fish-sample.h"
#include "core/stead-growth-fit.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#define TGC 0.13

/* Weighings of a cohort that grows as planned, 30 fish each. */
static gsize
planned (SteadGrowthWeighing *out,
         gsize                n,
         double               start_g,
         double               tgc_x100)
{
  double weight = start_g;

  for (gsize i = 0; i < n; i++)
    {
      double sum = i > 0 ? 700 : 0;

      weight = stead_fish_weight_g (weight, tgc_x100, sum);
      out[i] = (SteadGrowthWeighing) { 30, weight, 0.25 * weight, sum };
    }
  return n;
}

static SteadGrowthFit
fit_of (const SteadGrowthWeighing *weighings,
        gsize                      n)
{
  g_autoptr(GError) error = NULL;
  SteadGrowthFit fit;

  g_assert_true (stead_growth_fit (weighings, n, TGC, &fit, &error));
  g_assert_no_error (error);
  return fit;
}

/* Two weighings: the old coefficient, known to 20 %, and the new one, each by one over
 * its variance, carried through the cube root (the handbook's rule, by hand). */
static void
test_two_weighings (void)
{
  const SteadGrowthWeighing weighings[] = { { 40, 20, NAN, 0 }, { 30, 95, NAN, 900 } };
  SteadGrowthFit fit = fit_of (weighings, 2);
  double frac[2], new_tgc, new_variance, old_variance = pow (0.2 * TGC, 2);

  frac[0] = sqrt (0.25 * 0.25 / 40 + 0.02 * 0.02);
  frac[1] = sqrt (0.25 * 0.25 / 30 + 0.02 * 0.02);
  new_tgc = stead_fish_tgc_x100 (20, 95, 900);
  new_variance = fit.phi * pow (100.0 / 900, 2) * (pow (cbrt (20) * frac[0] / 3, 2)
                                                   + pow (cbrt (95) * frac[1] / 3, 2));
  g_assert_cmpfloat_with_epsilon (fit.tgc_x100, (new_tgc / new_variance + TGC / old_variance)
                                                / (1 / new_variance + 1 / old_variance), 1e-6);
  g_assert_cmpfloat_with_epsilon (fit.tgc_sd_x100, sqrt (1 / (1 / new_variance + 1 / old_variance)), 1e-6);
  g_assert_cmpuint (fit.n_used, ==, 2);
}

/* Stocking alone: the plan, and as unsure as the plan. */
static void
test_one_weighing (void)
{
  const SteadGrowthWeighing weighings[] = { { 200, 15, NAN, NAN } };
  SteadGrowthFit fit = fit_of (weighings, 1);
  SteadBand band;

  g_assert_cmpfloat_with_epsilon (fit.tgc_x100, TGC, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit.tgc_sd_x100, 0.2 * TGC, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit.mean_g, 15, 1e-9);
  stead_growth_fit_weight (&fit, 2000, 0, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.likely, stead_fish_weight_g (15, TGC, 2000), 1e-6);
  /* Growth of the root 2.6, its standard deviation 0.52 and nearly nothing besides. */
  g_assert_cmpfloat_with_epsilon (cbrt (band.high) - cbrt (band.likely), 1.2816 * 0.52, 0.01);
}

/* More weighings make it surer, and none alters what fits. */
static void
test_learns (void)
{
  SteadGrowthWeighing weighings[8];
  double sd = INFINITY;

  for (gsize n = 2; n <= 8; n++)
    {
      SteadGrowthFit fit = fit_of (weighings, planned (weighings, n, 20, 0.11));

      g_assert_cmpfloat (fit.tgc_sd_x100, <, sd);
      sd = fit.tgc_sd_x100;
    }
  g_assert_cmpfloat_with_epsilon (fit_of (weighings, 8).tgc_x100, 0.11, 0.0005);
}

/* A slip of ten times, or of half, anywhere but at the start where it alone stands
 * against the plan, is named and hardly moves the coefficient. */
static void
test_slip_is_named (void)
{
  SteadGrowthWeighing weighings[6];
  const double slips[] = { 10, 0.1, 0.5 };

  for (gsize s = 0; s < G_N_ELEMENTS (slips); s++)
    for (gsize i = 1; i < 6; i++)
      {
        SteadGrowthFit fit;

        planned (weighings, 6, 20, 0.12);
        weighings[i].mean_g *= slips[s];
        weighings[i].sd_g = NAN;
        fit = fit_of (weighings, 6);
        g_test_message ("x %g at %" G_GSIZE_FORMAT ": TGC %g", slips[s], i, fit.tgc_x100);
        g_assert_cmpuint (fit.n_outliers, ==, 1);
        g_assert_cmpuint (fit.outliers[0], ==, i);
        g_assert_true (fit.last_is_far_off == (i == 5));
        g_assert_cmpfloat_with_epsilon (fit.tgc_x100, 0.12, 0.003);
      }
}

/* The third weighing: only the plan says which of the three is off. */
static void
test_third_weighing_off (void)
{
  SteadGrowthWeighing weighings[3];
  SteadGrowthFit fit;

  planned (weighings, 3, 20, TGC);
  weighings[2].mean_g *= 10;
  weighings[2].sd_g = NAN;
  fit = fit_of (weighings, 3);
  g_assert_cmpuint (fit.n_outliers, ==, 1);
  g_assert_true (fit.last_is_far_off);
  g_assert_cmpfloat_with_epsilon (fit.tgc_x100, TGC, 0.003);
}

/* Single weights tell the spread; what is usual fades. */
static void
test_spread (void)
{
  SteadGrowthWeighing weighings[4];
  SteadGrowthFit fit;

  planned (weighings, 4, 20, TGC);
  for (gsize i = 0; i < 4; i++)
    weighings[i].sd_g = 0.40 * weighings[i].mean_g;
  fit = fit_of (weighings, 4);
  g_assert_cmpfloat_with_epsilon (fit.cv_frac, sqrt ((10 * 0.0625 + 4 * 29 * 0.16) / 126), 1e-9);
  for (gsize i = 0; i < 4; i++)
    weighings[i].sd_g = i % 2 == 0 ? NAN : 0;
  fit = fit_of (weighings, 4);
  g_assert_cmpfloat_with_epsilon (fit.cv_frac, 0.25, 1e-12);
}

static void
test_need (void)
{
  SteadGrowthWeighing weighings[5];
  SteadGrowthFit fit = fit_of (weighings, planned (weighings, 5, 20, TGC));
  SteadBand band;

  stead_growth_fit_need (&fit, 600, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.likely, stead_fish_degree_days_to (fit.mean_g, 600, TGC), 1);
  g_assert_true (band.low < band.likely && band.likely < band.high);
  stead_growth_fit_need (&fit, 10, 0.8, &band);
  g_assert_true (band.low == 0 && band.likely == 0 && band.high == 0);
}

/* A weighing that is off one way makes the coefficient off the same way: the root in 800
 * degree-days is root + 8 x TGC, and its variance has twice their covariance. */
static void
test_errors_add_up (void)
{
  const SteadGrowthWeighing weighings[] = { { 40, 20, NAN, 0 }, { 30, 95, NAN, 900 }, { 30, 150, NAN, 500 } };
  SteadGrowthFit fit = fit_of (weighings, 3);
  double root = fit.covariance[0][0], both = fit.covariance[0][1], tgc = fit.covariance[1][1];
  SteadBand band;

  g_assert_cmpfloat (both, >, 0.2 * sqrt (root * tgc));
  stead_growth_fit_weight (&fit, 800, 50, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (cbrt (band.high) - cbrt (band.likely),
                                  1.28155 * sqrt (root + 16 * both + 64 * tgc + pow (fit.tgc_x100 / 2, 2)), 1e-5);
}

/* The parts agree with each other, and each day is wider than the one before. */
static void
test_ahead (void)
{
  SteadGrowthWeighing weighings[5];
  SteadGrowthFit fit = fit_of (weighings, planned (weighings, 5, 20, TGC));
  const SteadAlive fish = { .alive = 180, .deaths = 4, .exposure = 180 * 100,
                            .usual_rate = STEAD_GROWTH_USUAL_DEATHS_DAY,
                            .usual_deaths = STEAD_GROWTH_USUAL_DEATHS };
  const SteadGrowthDay days[] = { { 0, 0, 0 }, { 20, 500, 10 }, { 40, 1000, 20 }, { 80, 2000, 40 } };
  SteadGrowthAhead ahead[4];
  SteadBand weight;

  stead_growth_fit_ahead (&fit, &fish, days, 4, 500, 0.8, ahead);
  for (gsize i = 0; i < 4; i++)
    {
      stead_growth_fit_weight (&fit, days[i].degree_days, days[i].degree_days_sd, 0.8, &weight);
      g_assert_cmpfloat_with_epsilon (ahead[i].mean_g.low, weight.low, 0.02 * weight.low);
      g_assert_cmpfloat_with_epsilon (ahead[i].mean_g.likely, weight.likely, 1e-9);
      g_assert_cmpfloat_with_epsilon (ahead[i].mean_g.high, weight.high, 0.02 * weight.high);
      g_assert_cmpfloat_with_epsilon (ahead[i].biomass_kg.likely,
                                      ahead[i].alive.likely * ahead[i].mean_g.likely / 1000, 0.05);
      g_assert_cmpfloat_with_epsilon (ahead[i].ready_frac.likely,
                                      stead_fish_share_over (weight.likely, fit.cv_frac, 500), 1e-9);
      g_assert_true (ahead[i].ready.high <= 180 && ahead[i].ready.low >= 0);
      if (i > 0)
        g_assert_cmpfloat (ahead[i].mean_g.high - ahead[i].mean_g.low, >,
                           ahead[i - 1].mean_g.high - ahead[i - 1].mean_g.low);
    }
  g_assert_true (ahead[0].alive.low == 180 && ahead[0].alive.high == 180);
}

/* Same weighings, same band, to the last digit. */
static void
test_repeats (void)
{
  SteadGrowthWeighing weighings[5];
  SteadGrowthFit fit = fit_of (weighings, planned (weighings, 5, 20, TGC));
  SteadBand first, second;

  stead_growth_fit_need (&fit, 600, 0.8, &first);
  stead_growth_fit_need (&fit, 600, 0.8, &second);
  g_assert_true (first.low == second.low && first.high == second.high);
}

static void
test_refusals (void)
{
  SteadGrowthWeighing weighings[3];
  static const struct { double fish, mean_g, sd_g, degree_days; } wrong[] = {
    { 0, 20, 5, 700 }, { 30, 0, 5, 700 }, { 30, NAN, 5, 700 }, { 30, 20, -1, 700 },
    { 30, 20, 5, -1 }, { 30, 20, 5, NAN }, { 30, INFINITY, 5, 700 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr(GError) error = NULL;
      SteadGrowthFit fit = { .n_used = 77 };

      planned (weighings, 3, 20, TGC);
      weighings[2] = (SteadGrowthWeighing) { wrong[i].fish, wrong[i].mean_g, wrong[i].sd_g, wrong[i].degree_days };
      g_assert_false (stead_growth_fit (weighings, 3, TGC, &fit, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_cmpuint (fit.n_used, ==, 77);
      g_clear_error (&error);
      g_assert_false (stead_growth_fit (weighings, 0, TGC, &fit, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/growth-fit/two-weighings", test_two_weighings);
  g_test_add_func ("/core/growth-fit/one-weighing", test_one_weighing);
  g_test_add_func ("/core/growth-fit/learns", test_learns);
  g_test_add_func ("/core/growth-fit/slip-is-named", test_slip_is_named);
  g_test_add_func ("/core/growth-fit/third-weighing-off", test_third_weighing_off);
  g_test_add_func ("/core/growth-fit/spread", test_spread);
  g_test_add_func ("/core/growth-fit/need", test_need);
  g_test_add_func ("/core/growth-fit/errors-add-up", test_errors_add_up);
  g_test_add_func ("/core/growth-fit/ahead", test_ahead);
  g_test_add_func ("/core/growth-fit/repeats", test_repeats);
  g_test_add_func ("/core/growth-fit/refusals", test_refusals);
  return g_test_run ();
}

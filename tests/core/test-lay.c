/* Laying curves. */
#include "core/stead-lay-models.h"
#include "core/stead-lay.h"

#include <math.h>

/* Bands of brown hybrids: from memory, no breeder's table could be read. */
static void
test_default_in_bands (void)
{
  static const struct { double age, low, high; } bands[] = {
    { 20, 0.30, 0.75 }, { 25, 0.88, 0.96 }, { 40, 0.88, 0.95 }, { 60, 0.80, 0.90 }, { 80, 0.65, 0.82 },
  };
  SteadLayCurve curve;

  stead_lay_curve_default (&curve);
  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      g_assert_cmpfloat (stead_lay_curve_frac (&curve, bands[i].age), >=, bands[i].low);
      g_assert_cmpfloat (stead_lay_curve_frac (&curve, bands[i].age), <=, bands[i].high);
    }
}

/* Without decline the integral is closed: a / c ln ((1 + e^(c (t2 - d))) / (1 + e^(c (t1 - d)))). */
static void
test_eggs_closed_form (void)
{
  SteadLayCurve curve = { .level_frac = 0.9, .decline_week = 0, .steepness_week = 1.3, .half_week = 2,
                          .onset_age_weeks = 18 };
  double closed = 7 * 0.9 / 1.3 * log ((1 + exp (1.3 * 28)) / (1 + exp (1.3 * -2)));

  g_assert_cmpfloat_with_epsilon (stead_lay_curve_eggs (&curve, 18, 48), closed, 1e-6);
  g_assert_cmpfloat (stead_lay_curve_eggs (&curve, 30, 30), ==, 0);
}

/* Grossman and Koops (2001), parameters of the abstract (derived): the sum is the
 * integral of the weekly curve, so its slope must be that curve. */
static void
test_individual (void)
{
  const SteadLayIndividual model = { 7, 0.88, 0.76, 25 };

  g_assert_cmpfloat_with_epsilon (stead_lay_individual (&model, 25), 5.740, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_lay_individual_sum (&model, 52), 289.1, 0.1);
  g_assert_cmpfloat_with_epsilon (stead_lay_individual_sum (&model, 0), 0, 1e-9);
  for (double c2 = 1; c2 < 30; c2 += 4)
    for (double t = 0.5; t < 80; t += 0.5)
      {
        const SteadLayIndividual other = { 7, 0.88, 0.76, c2 };
        double slope = (stead_lay_individual_sum (&other, t + 1e-4)
                        - stead_lay_individual_sum (&other, t - 1e-4)) / 2e-4;

        g_assert_cmpfloat_with_epsilon (slope, stead_lay_individual (&other, t), 1e-5);
      }
}

/* Grossman et al. (2000): with sharp corners it is three straight lines. */
static void
test_persistency (void)
{
  SteadLayPersistency model = { 6.5, 0.5, 6, 0.001, 20, -0.04 };

  g_assert_cmpfloat_with_epsilon (stead_lay_persistency (&model, 0.25), 0, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_lay_persistency (&model, 3.25), 3.25, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_lay_persistency (&model, 15), 6.5, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_lay_persistency (&model, 36), 6.5 - 0.4, 0.01);
  model.rounding_week = 0.5;
  g_assert_cmpfloat_with_epsilon (stead_lay_persistency (&model, 8), 6.304, 0.005);
  model.rounding_week = 0;
  g_assert_true (isnan (stead_lay_persistency (&model, 8)));
}

static void
test_other_models (void)
{
  /* Own parameters; the gamma curve peaks at b / c. */
  double peak = stead_lay_gamma (4.2, 0.22, 0.014, 0.22 / 0.014);

  g_assert_cmpfloat (peak, >, stead_lay_gamma (4.2, 0.22, 0.014, 0.22 / 0.014 - 0.5));
  g_assert_cmpfloat (peak, >, stead_lay_gamma (4.2, 0.22, 0.014, 0.22 / 0.014 + 0.5));
  g_assert_cmpfloat_with_epsilon (stead_lay_gamma (4.2, 0.22, 0.014, 10), 6.060, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_lay_gamma_root (3, 0.35, 0.03, 0.05, 10), 5.828, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_lay_decline (0.2, 0.4, 0.5, 0, 10), 94.79, 0.02);
  g_assert_cmpfloat_with_epsilon (stead_lay_compartment (100, 0.006, 1.2, 3, 2), 22.87, 0.02);
  g_assert_true (isnan (stead_lay_gamma (4.2, 0.22, 0.014, -1)));
}

/* The rate is a share whatever the parameters, and far ages do not overflow. */
static void
test_curve_is_a_share (void)
{
  SteadLayCurve curve = { 1.5, 0.001, 50, 2, 18 };

  for (double age = -1000; age < 2000; age += 13)
    {
      double rate = stead_lay_curve_frac (&curve, age);

      g_assert_true (rate >= 0 && rate <= 1);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/lay/default-in-bands", test_default_in_bands);
  g_test_add_func ("/core/lay/eggs-closed-form", test_eggs_closed_form);
  g_test_add_func ("/core/lay/individual", test_individual);
  g_test_add_func ("/core/lay/persistency", test_persistency);
  g_test_add_func ("/core/lay/other-models", test_other_models);
  g_test_add_func ("/core/lay/curve-is-a-share", test_curve_is_a_share);
  return g_test_run ();
}

/* Laying curves. */
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

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/lay/default-in-bands", test_default_in_bands);
  g_test_add_func ("/core/lay/eggs-closed-form", test_eggs_closed_form);
  return g_test_run ();
}

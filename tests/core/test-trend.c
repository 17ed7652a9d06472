/* test-trend.c - where a reading is going, against numpy on the same rows.
 *
 * Expected values: numpy 1.24.2, polyfit (days - last, values, 1, w = 1 / sds,
 * cov = "unscaled"), printed with eight digits.
 */
#include "config.h"

#include "core/stead-trend.h"

#include <math.h>

static void
test_four (void)
{
  static const double days[] = { 0, 7, 14, 21 }, values[] = { 20, 31, 38, 52 }, sds[] = { 4, 4, 4, 5 };
  SteadTrend trend;

  g_assert_true (stead_trend_fit (days, values, sds, 4, &trend));
  g_assert_cmpfloat_with_epsilon (trend.slope, 1.44461421, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.level, 50.26203209, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.slope_var, 0.07944996, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.level_var, 14.97326203, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.cov, 0.91673033, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_trend_at (&trend, 5), 57.48510313, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_trend_sd (&trend, 0), 3.86952995, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_trend_sd (&trend, 5), 5.11143956, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_trend_sd (&trend, 10), 6.42283931, 1e-8);
  g_assert_true (stead_trend_told (&trend));
  g_assert_cmpint (trend.n, ==, 4);
  g_assert_cmpfloat (trend.span_days, ==, 21);
  g_assert_cmpint (stead_trend_horizon_days (&trend), ==, 42);
}

/* Readings that scatter more than the kit: the variances are numpy's times chi-square / 2, 73.052632. */
static void
test_scatter (void)
{
  static const double days[] = { 0, 3, 5, 9 }, values[] = { 1, 9, 2, 8 }, sds[] = { 0.5, 0.5, 0.5, 0.5 };
  SteadTrend trend;

  g_assert_true (stead_trend_fit (days, values, sds, 4, &trend));
  g_assert_cmpfloat_with_epsilon (trend.slope, 0.56140351, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.slope_var, 0.42720837, 1e-8);
  g_assert_cmpfloat_with_epsilon (trend.level_var, 14.20467836, 1e-8);
  g_assert_false (stead_trend_told (&trend));   /* 0.56 a day, give or take 0.84 */
}

/* By hand: two readings give their difference, and the error of a difference. */
static void
test_two (void)
{
  static const double days[] = { 0, 4 }, values[] = { 0.5, 1.5 }, sds[] = { 0.3, 0.4 };
  SteadTrend trend;

  g_assert_true (stead_trend_fit (days, values, sds, 2, &trend));
  g_assert_cmpfloat_with_epsilon (trend.slope, 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (trend.level, 1.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (sqrt (trend.slope_var), 0.5 / 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (sqrt (trend.level_var), 0.4, 1e-12);
  g_assert_true (stead_trend_told (&trend));
  g_assert_cmpint (stead_trend_horizon_days (&trend), ==, 8);
}

static void
test_too_few (void)
{
  static const double days[] = { 3, 3 }, values[] = { 1, 2 }, sds[] = { 1, 1 };
  SteadTrend trend = { .slope = 9 };

  g_assert_false (stead_trend_fit (days, values, sds, 1, &trend));
  g_assert_false (stead_trend_fit (days, values, sds, 2, &trend));   /* both of one time */
  g_assert_cmpfloat (trend.slope, ==, 9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/trend/four", test_four);
  g_test_add_func ("/core/trend/scatter", test_scatter);
  g_test_add_func ("/core/trend/two", test_two);
  g_test_add_func ("/core/trend/too-few", test_too_few);
  return g_test_run ();
}

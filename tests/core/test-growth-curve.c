/* The growth curve of chicks, against R on an open data set, and what it refuses. */
#include "core/stead-core-error.h"
#include "core/stead-growth-curve.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define MAX_POINTS 32

/* Rows of one chick in tests/reference/rows/chick-weight.csv (chick, diet, age, weight,
 * source); returns how many. */
static gsize
read_chick (int               chick,
            SteadGrowthPoint *points)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", "rows", "chick-weight.csv", NULL);
  g_autofree char *text = NULL;
  g_auto(GStrv) lines = NULL;
  gsize n = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (gsize i = 1; lines[i] != NULL; i++)
    {
      g_auto(GStrv) cells = g_strsplit (lines[i], ",", 5);

      if (g_strv_length (cells) != 5 || atoi (cells[0]) != chick)
        continue;
      g_assert_cmpuint (n, <, MAX_POINTS);
      points[n++] = (SteadGrowthPoint) { g_ascii_strtod (cells[2], NULL), g_ascii_strtod (cells[3], NULL), 1 };
    }
  return n;
}

/* R 4.2.2 (Debian's r-base-core), nls (weight ~ SSlogis (Time, Asym, xmid, scal)) with
 * tolerance 1e-9, run on the rows of each chick: estimates, their standard errors and
 * the residual standard error.  The first is the example of R's help page on SSlogis,
 * which prints 937.03, 35.223 and 11.405. */
static const struct
{
  int    chick;
  gsize  n;
  double values[3];
  double errors[3];
  double sigma;
} fits[] = {
  { 1, 12, { 937.021, 35.2228, 11.4052 }, { 465.86, 8.3119, 0.90524 }, 2.91857 },
  { 2, 12, { 385.769, 18.7592, 8.60449 }, { 26.513, 1.1849, 0.34192 }, 2.00322 },
  { 7, 12, { 561.867, 19.642, 7.20643 }, { 58.012, 1.4658, 0.38551 }, 4.26882 },
  { 15, 8, { 69.4347, -0.956138, 3.11138 }, { 1.3937, 0.34841, 0.47255 }, 1.71524 },
  { 21, 12, { 364.678, 10.8284, 4.51743 }, { 10.24, 0.36396, 0.23706 }, 6.43455 },
  { 30, 12, { 181.141, 8.59913, 6.52001 }, { 9.4931, 0.85943, 0.61295 }, 4.23996 },
  { 35, 12, { 477.011, 13.8114, 5.44528 }, { 14.65, 0.40984, 0.18992 }, 4.26545 },
  { 40, 12, { 725.227, 22.9206, 8.17285 }, { 80.659, 1.637, 0.33781 }, 3.10837 },
};

static void
test_chicks_like_r (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (fits); i++)
    {
      SteadGrowthPoint points[MAX_POINTS];
      gsize n = read_chick (fits[i].chick, points);
      g_autoptr(GError) error = NULL;
      SteadGrowthCurve curve;

      g_test_message ("chick %d", fits[i].chick);
      g_assert_cmpuint (n, ==, fits[i].n);
      g_assert_true (stead_growth_curve_fit (points, n, &curve, &error));
      g_assert_no_error (error);
      g_assert_cmpuint (curve.n_outliers, ==, 0);
      g_assert_cmpfloat_with_epsilon (curve.asym_g, fits[i].values[0], 2e-5 * fits[i].values[0]);
      g_assert_cmpfloat_with_epsilon (curve.mid_days, fits[i].values[1], 2e-5 * fabs (fits[i].values[1]));
      g_assert_cmpfloat_with_epsilon (curve.scale_days, fits[i].values[2], 2e-5 * fits[i].values[2]);
      for (gsize k = 0; k < 3; k++)
        g_assert_cmpfloat_with_epsilon (sqrt (curve.covariance[k][k]), fits[i].errors[k],
                                        1e-4 * fits[i].errors[k]);
      g_assert_cmpfloat_with_epsilon (curve.sd_g, fits[i].sigma, 1e-5 * fits[i].sigma);
      g_assert_cmpfloat_with_epsilon (curve.df, (double) n - 3, 1e-9);
    }
}

/* Chick 1 was still speeding up on day 21: its full weight cannot be told.  Chick 21
 * leveled out. */
static void
test_tells_full (void)
{
  SteadGrowthPoint points[MAX_POINTS];
  SteadGrowthCurve curve;

  g_assert_true (stead_growth_curve_fit (points, read_chick (1, points), &curve, NULL));
  g_assert_false (curve.tells_full);
  g_assert_true (stead_growth_curve_fit (points, read_chick (21, points), &curve, NULL));
  g_assert_true (curve.tells_full);
}

/* Chick 48 weighed 170 g on day 14, between 154 and 222 g: R's fit of the other eleven
 * weighings foretells 186.57 g with a standard error of 1.344 g, and has the estimates
 * below. */
static void
test_odd_weighing_is_named (void)
{
  SteadGrowthPoint points[MAX_POINTS];
  SteadGrowthCurve curve;

  g_assert_true (stead_growth_curve_fit (points, read_chick (48, points), &curve, NULL));
  g_assert_cmpuint (curve.n_outliers, ==, 1);
  g_assert_cmpfloat (points[curve.outliers[0]].age_days, ==, 14);
  g_assert_cmpuint (curve.n_used, ==, 11);
  g_assert_cmpfloat_with_epsilon (curve.asym_g, 613.26147, 0.01);
  g_assert_cmpfloat_with_epsilon (curve.mid_days, 20.22884, 0.0002);
  g_assert_cmpfloat_with_epsilon (curve.scale_days, 7.52978, 0.0001);
  g_assert_cmpfloat_with_epsilon (curve.sd_g, 1.344, 0.001);
  g_assert_cmpfloat_with_epsilon (stead_growth_curve_weight_g (&curve, 14), 186.5735, 0.001);
}

/* A slip of the pen, ten times the weight, is named and moves nothing. */
static void
test_slip_is_named (void)
{
  SteadGrowthPoint points[MAX_POINTS];
  gsize n = read_chick (21, points);
  SteadGrowthCurve good, curve;

  for (gsize slip = 0; slip < n; slip++)
    {
      double right = points[slip].weight_g;
      g_autoptr(GError) error = NULL;

      g_assert_true (stead_growth_curve_fit (points, n, &good, NULL));
      points[slip].weight_g *= 10;
      g_assert_true (stead_growth_curve_fit (points, n, &curve, &error));
      g_assert_no_error (error);
      points[slip].weight_g = right;
      g_test_message ("slip %" G_GSIZE_FORMAT ": %g, %g, %g", slip, curve.asym_g, curve.mid_days, curve.scale_days);
      g_assert_cmpuint (curve.n_outliers, ==, 1);
      g_assert_cmpuint (curve.outliers[0], ==, slip);
      g_assert_cmpfloat_with_epsilon (curve.asym_g, good.asym_g, 2.5 * sqrt (good.covariance[0][0]));
      g_assert_cmpfloat_with_epsilon (curve.mid_days, good.mid_days, 2.5 * sqrt (good.covariance[1][1]));
    }
}

/* A mean of many animals counts as many weighings. */
static void
test_means_count (void)
{
  SteadGrowthPoint points[MAX_POINTS], twice[2 * MAX_POINTS];
  gsize n = read_chick (40, points);
  SteadGrowthCurve means, singles;

  for (gsize i = 0; i < n; i++)
    {
      twice[2 * i] = twice[2 * i + 1] = points[i];
      points[i].animals = 2;
    }
  g_assert_true (stead_growth_curve_fit (points, n, &means, NULL));
  g_assert_true (stead_growth_curve_fit (twice, 2 * n, &singles, NULL));
  g_assert_cmpfloat_with_epsilon (means.asym_g, singles.asym_g, 1e-3);
  g_assert_cmpfloat_with_epsilon (means.scale_days, singles.scale_days, 1e-5);
}

/* Of 1,000 broods that grow as the curve says, the band holds the next weighing in
 * 80 of 100. */
static void
test_band_is_honest (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  gsize inside = 0, tried = 0;

  for (int run = 0; run < 1000; run++)
    {
      SteadGrowthPoint points[12];
      SteadGrowthCurve curve, truth = { .asym_g = 300 + 300 * gsl_rng_uniform (rng),
                                        .mid_days = 10 + 5 * gsl_rng_uniform (rng), .scale_days = 5 };
      SteadBand band;
      double next = stead_growth_curve_weight_g (&truth, 25) + gsl_ran_gaussian (rng, 3);

      for (gsize i = 0; i < 12; i++)
        points[i] = (SteadGrowthPoint) {
          2.0 * (double) i, stead_growth_curve_weight_g (&truth, 2.0 * (double) i) + gsl_ran_gaussian (rng, 3), 1
        };
      if (!stead_growth_curve_fit (points, 12, &curve, NULL))
        continue;
      stead_growth_curve_band (&curve, 25, 1, 0.8, &band);
      inside += stead_band_holds (&band, next);
      tried++;
    }
  g_test_message ("%.1f %% of %" G_GSIZE_FORMAT, 100.0 * (double) inside / (double) tried, tried);
  g_assert_cmpuint (tried, >=, 995);
  g_assert_cmpfloat ((double) inside / (double) tried, >=, 0.75);
  g_assert_cmpfloat ((double) inside / (double) tried, <=, 0.85);
  gsl_rng_free (rng);
}

static void
assert_refused (const SteadGrowthPoint *points,
                gsize                   n,
                SteadCoreError          code)
{
  SteadGrowthCurve curve = { .asym_g = -7 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_growth_curve_fit (points, n, &curve, &error));
  g_assert_error (error, STEAD_CORE_ERROR, (gint) code);
  g_assert_cmpfloat (curve.asym_g, ==, -7);
}

static void
test_refusals (void)
{
  SteadGrowthPoint points[MAX_POINTS];
  gsize n = read_chick (21, points);

  assert_refused (points, 0, STEAD_CORE_ERROR_NONE);
  assert_refused (points, 3, STEAD_CORE_ERROR_NONE);
  points[5].weight_g = 0;
  assert_refused (points, n, STEAD_CORE_ERROR_RANGE);
  points[5].weight_g = NAN;
  assert_refused (points, n, STEAD_CORE_ERROR_RANGE);
  for (gsize i = 0; i < n; i++)
    points[i].weight_g = 100 - 3 * (double) i;
  assert_refused (points, n, STEAD_CORE_ERROR_NONE);
  for (gsize i = 0; i < n; i++)
    points[i].age_days = 3;
  assert_refused (points, n, STEAD_CORE_ERROR_NONE);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/growth-curve/chicks-like-r", test_chicks_like_r);
  g_test_add_func ("/core/growth-curve/tells-full", test_tells_full);
  g_test_add_func ("/core/growth-curve/odd-weighing-is-named", test_odd_weighing_is_named);
  g_test_add_func ("/core/growth-curve/slip-is-named", test_slip_is_named);
  g_test_add_func ("/core/growth-curve/means-count", test_means_count);
  g_test_add_func ("/core/growth-curve/band-is-honest", test_band_is_honest);
  g_test_add_func ("/core/growth-curve/refusals", test_refusals);
  return g_test_run ();
}

/* Bands from draws and bell curves, and animals alive. */
#include "core/stead-alive.h"
#include "core/stead-band.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_sort.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>
#include <string.h>

/* Against GSL's quantiles of sorted data, for many sizes, orders and levels. */
static void
test_draws_like_gsl (void)
{
  gsl_rng *rng = gsl_rng_alloc (gsl_rng_mt19937);
  double draws[1000], sorted[1000];

  for (gsize n = 1; n <= 1000; n += n < 12 ? 1 : 61)
    for (int kind = 0; kind < 4; kind++)
      for (double level = 0.05; level < 1; level += 0.15)
        {
          SteadBand band;

          for (gsize i = 0; i < n; i++)
            draws[i] = kind == 0 ? gsl_ran_gaussian (rng, 1) : kind == 1 ? (double) i
                       : kind == 2 ? -(double) i : floor (4 * gsl_rng_uniform (rng));
          memcpy (sorted, draws, n * sizeof *draws);
          gsl_sort (sorted, 1, n);
          stead_band_of_draws (draws, n, level, &band);
          g_assert_cmpfloat_with_epsilon (band.low, gsl_stats_quantile_from_sorted_data
                                          (sorted, 1, n, (1 - level) / 2), 1e-9);
          g_assert_cmpfloat_with_epsilon (band.likely, gsl_stats_median_from_sorted_data (sorted, 1, n), 1e-9);
          g_assert_cmpfloat_with_epsilon (band.high, gsl_stats_quantile_from_sorted_data
                                          (sorted, 1, n, (1 + level) / 2), 1e-9);
        }
  gsl_rng_free (rng);
}

/* Some worlds may never get there. */
static void
test_draws_without_end (void)
{
  double draws[] = { 3, INFINITY, 1, INFINITY, 2, INFINITY, INFINITY, 4, 5, INFINITY };
  SteadBand band;

  stead_band_of_draws (draws, 10, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 1.9, 1e-12);
  g_assert_true (isinf (band.likely) && isinf (band.high));
}

/* Table of the normal distribution: 1.2816 standard deviations hold 80 %. */
static void
test_normal (void)
{
  SteadBand band;

  stead_band_normal (10, 2, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 10 - 2 * 1.2816, 1e-4);
  g_assert_cmpfloat (band.likely, ==, 10);
  g_assert_cmpfloat_with_epsilon (band.high, 10 + 2 * 1.2816, 1e-4);
  g_assert_true (stead_band_holds (&band, band.low) && stead_band_holds (&band, band.high));
  g_assert_false (stead_band_holds (&band, 12.6) || stead_band_holds (&band, NAN));
}

/* A rate that is known for sure: the deaths are binomial, and GSL knows those. */
static void
test_alive_binomial (void)
{
  const SteadAlive flock = { .alive = 400, .usual_rate = 0.01, .usual_deaths = 1e9 };
  double survives = exp (-0.01 * 12);
  SteadBand band;

  g_assert_cmpfloat_with_epsilon (stead_alive_after (&flock, 12), 400 * survives, 1e-4);
  stead_alive_band (&flock, 12, 0.8, &band);
  /* The ends are whole numbers, and 1,000 draws tell them to about one. */
  g_assert_cmpfloat (gsl_cdf_binomial_P ((unsigned) band.low, survives, 400), <, 0.14);
  g_assert_cmpfloat (gsl_cdf_binomial_P ((unsigned) band.low, survives, 400), >, 0.07);
  g_assert_cmpfloat (gsl_cdf_binomial_P ((unsigned) band.high, survives, 400), <, 0.93);
  g_assert_cmpfloat (gsl_cdf_binomial_P ((unsigned) band.high, survives, 400), >, 0.87);
}

/* Deaths seen and usual add up; nobody dies in no time; the dead do not come back. */
static void
test_alive_learns (void)
{
  SteadAlive flock = { .alive = 30, .usual_rate = 0.002, .usual_deaths = 2 };
  SteadBand band;

  g_assert_cmpfloat_with_epsilon (stead_alive_rate (&flock), 0.002, 1e-12);
  flock.deaths = 6;
  flock.exposure = 1000;
  g_assert_cmpfloat_with_epsilon (stead_alive_rate (&flock), 8.0 / 2000, 1e-12);
  g_assert_cmpfloat (stead_alive_after (&flock, 0), ==, 30);
  stead_alive_band (&flock, 0, 0.8, &band);
  g_assert_true (band.low == 30 && band.high == 30);
  stead_alive_band (&flock, 52, 0.8, &band);
  g_assert_true (band.low < band.likely && band.likely < band.high && band.high <= 30);
  flock.alive = 0;
  stead_alive_band (&flock, 52, 0.8, &band);
  g_assert_true (band.low == 0 && band.high == 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/band/draws-like-gsl", test_draws_like_gsl);
  g_test_add_func ("/core/band/draws-without-end", test_draws_without_end);
  g_test_add_func ("/core/band/normal", test_normal);
  g_test_add_func ("/core/band/alive-binomial", test_alive_binomial);
  g_test_add_func ("/core/band/alive-learns", test_alive_learns);
  return g_test_run ();
}

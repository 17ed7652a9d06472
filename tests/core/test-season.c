/* Seasons of sale days drawn, against closed forms. */
#include "core/stead-core-error.h"
#include "core/stead-season.h"

#include <math.h>
#include <string.h>

#define DRAWS 100000

#define ONE { 1, 1, 1 }

/* Two of one batch and one of its own. */
static const SteadSeasonProduct stall[] = {
  { { 40, 72, 90 }, ONE, 450, 160, 80, 30, 0, 0, 1, 7 },
  { { 10, 24, 30 }, ONE, 250, 80, 40, 20, 0, 0, 2, 7 },
  { { 5, 18, 20 }, ONE, 325, 90, 30, 0, 0, 0, 3, 8 },
};

static SteadSeasonDraws *
draw (const SteadSeason *season,
      gsize              n_draws,
      guint32            seed)
{
  g_autoptr(GError) error = NULL;
  SteadSeasonDraws *draws = stead_season_draws_new (season, n_draws, seed, &error);

  g_assert_no_error (error);
  g_assert_true (stead_season_draws_run_all (draws, NULL, NULL, NULL));
  return draws;
}

/* Means add; variances add where luck is each one's own, standard deviations of the same
 * shape where it is shared (the reference on money, section 6). */
static void
test_closed_forms (void)
{
  for (double together = 0; together <= 1; together += 0.25)
    {
      SteadSeason season = { stall, G_N_ELEMENTS (stall), { 0.9, 1, 1.3 }, { 6000, 7000, 9000 }, 12, together };
      g_autoptr(SteadSeasonDraws) draws = draw (&season, DRAWS, 1);
      double mean = -stead_triangle_mean (&season.day_cents), got_mean, got_sd;

      for (gsize i = 0; i < G_N_ELEMENTS (stall); i++)
        mean += stead_triangle_mean (&stall[i].sold)
                * (stall[i].price_cents - stall[i].input_cents * stead_triangle_mean (&season.input) - stall[i].keep_cents
                   - stall[i].other_cents);
      stead_season_draws_moments (draws, &got_mean, &got_sd);
      g_assert_cmpfloat_with_epsilon (got_mean, 12 * mean, 4 * got_sd / sqrt (DRAWS));
    }
}

/* Two products alike: the variance of their sum is 2 v (1 + share). */
static void
test_together (void)
{
  static const SteadSeasonProduct twins[] = {
    { { 10, 20, 60 }, ONE, 100, 0, 0, 0, 0, 0, 1, 1 },
    { { 10, 20, 60 }, ONE, 100, 0, 0, 0, 0, 0, 2, 2 },
  };
  double variance = 1e4 * stead_triangle_variance (&twins[0].sold);

  for (double together = 0; together <= 1; together += 0.5)
    {
      SteadSeason season = { twins, 2, ONE, { 0 }, 1, together };
      g_autoptr(SteadSeasonDraws) draws = draw (&season, DRAWS, 5);
      double mean, sd;

      stead_season_draws_moments (draws, &mean, &sd);
      g_assert_cmpfloat_with_epsilon (mean, 2 * 100 * 30, 4 * sd / sqrt (DRAWS));
      g_assert_cmpfloat_with_epsilon (sd * sd, 2 * variance * (1 + together), 0.03 * variance);
    }
}

/* A shape that was tabled: low 2, likely 3, high 7 has 20 % at most 3, mean 4, variance 1.1667
 * (formulas read in an R manual on the triangular distribution, metRology, dtri; the row
 * money-three-03 of the reference). */
static void
test_shape (void)
{
  static const SteadSeasonProduct one = { { 2, 3, 7 }, ONE, 100, 0, 0, 0, 0, 0, 9, 9 };
  SteadSeason season = { &one, 1, ONE, { 0 }, 1, 0 };
  g_autoptr(SteadSeasonDraws) draws = draw (&season, DRAWS, 3);
  double mean, sd;
  SteadBand band;

  stead_season_draws_moments (draws, &mean, &sd);
  g_assert_cmpfloat_with_epsilon (mean, 400, 4 * sd / sqrt (DRAWS));
  g_assert_cmpfloat_with_epsilon (sd * sd / 1e4, 1.1667, 0.02);
  g_assert_cmpfloat_with_epsilon (stead_season_draws_chance_below (draws, 300), 0.2, 4 * 0.4 / sqrt (DRAWS));
  stead_season_draws_band (draws, 0.6, &band);    /* 20 % lie below */
  g_assert_cmpfloat_with_epsilon (band.low, 300, 3);
}

/* The mean of 1 / yield for a triangle: 2 / (b - a) x (b ln (b / m) / (b - m) - a ln (m / a) / (m - a)),
 * the integral of the shape over 1 / y (derived). */
static void
test_yield (void)
{
  static const SteadSeasonProduct one = { { 10, 10, 10 }, { 0.5, 1, 1.2 }, 500, 100, 60, 20, 0, 0, 4, 4 };
  SteadSeason season = { &one, 1, ONE, { 0 }, 1, 0 };
  g_autoptr(SteadSeasonDraws) draws = draw (&season, DRAWS, 8);
  double a = 0.5, m = 1, b = 1.2, mean, sd;
  double inverse = 2 / (b - a) * (b * log (b / m) / (b - m) - a * log (m / a) / (m - a));

  stead_season_draws_moments (draws, &mean, &sd);
  g_assert_cmpfloat_with_epsilon (mean, 10 * (500 - 160 * inverse - 20), 4 * sd / sqrt (DRAWS));
}

/* Products of one batch have its yield alike: what one of two hens' products costs more, the other does. */
static void
test_batch (void)
{
  SteadSeasonProduct pair[2] = {
    { { 10, 10, 10 }, { 0.5, 1, 1.5 }, 500, 100, 0, 0, 0, 0, 1, 7 },
    { { 10, 10, 10 }, { 0.5, 1, 1.5 }, 500, 100, 0, 0, 0, 0, 2, 7 },
  };
  SteadSeason season = { pair, 2, ONE, { 0 }, 1, 0 }, alone = { pair, 1, ONE, { 0 }, 1, 0 };
  g_autoptr(SteadSeasonDraws) both = draw (&season, 5000, 8), one = draw (&alone, 5000, 8), apart = NULL;
  double mean, sd, mean_one, sd_one;

  stead_season_draws_moments (both, &mean, &sd);
  stead_season_draws_moments (one, &mean_one, &sd_one);
  g_assert_cmpfloat_with_epsilon (sd, 2 * sd_one, 1e-6 * sd);
  pair[1].yield_stream = 8;
  apart = draw (&season, 5000, 8);
  stead_season_draws_moments (apart, &mean, &sd);
  g_assert_cmpfloat (sd, <, 1.6 * sd_one);
}

/* All as likely as can be: what stead_season_profit() says, whatever the luck; with steps. */
static void
test_no_ranges (void)
{
  static const SteadSeasonProduct sure[] = {
    { { 72, 72, 72 }, ONE, 450, 160, 80, 30, 2500, 40, 1, 7 },
    { { 24, 24, 24 }, ONE, 250, 80, 40, 20, 0, 0, 2, 7 },
  };
  SteadSeason season = { sure, 2, { 1.1, 1.1, 1.1 }, { 7000, 7000, 7000 }, 3, 0.5 };
  g_autoptr(SteadSeasonDraws) draws = draw (&season, 1000, 2);
  double day = 72 * (450 - 176 - 80 - 30.0) + 24 * (250 - 88 - 40 - 20.0) - 2 * 2500 - 7000;
  SteadBand band;

  g_assert_cmpfloat_with_epsilon (stead_season_profit (&season), 3 * day, 1e-6);
  stead_season_draws_band (draws, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 3 * day, 1e-6);
  g_assert_cmpfloat_with_epsilon (band.high, 3 * day, 1e-6);
  g_assert_cmpfloat (stead_season_draws_chance_below (draws, 3 * day - 1), ==, 0);
  g_assert_cmpfloat (stead_season_draws_chance_below (draws, 3 * day + 1), ==, 1);
}

/* Blocks in another order, one thread, more draws: the same luck; another seed: another. */
static void
test_same_luck (void)
{
  SteadSeason season = { stall, G_N_ELEMENTS (stall), { 0.9, 1, 1.3 }, { 6000, 7000, 9000 }, 12, 0.3 };
  g_autoptr(SteadSeasonDraws) all = draw (&season, 3000, 1), other = draw (&season, 3000, 2), parts = NULL;
  g_autoptr(GError) error = NULL;
  guint left[40], right[40], n = 0;

  parts = stead_season_draws_new (&season, 3000, 1, &error);
  for (guint block = stead_season_draws_get_n_blocks (parts); block > 0; block--)
    g_assert_true (stead_season_draws_run (parts, block - 1, 1, NULL, NULL, &error));
  g_assert_no_error (error);
  stead_season_draws_count (all, -1e5, 3e5, left, G_N_ELEMENTS (left));
  stead_season_draws_count (parts, -1e5, 3e5, right, G_N_ELEMENTS (right));
  g_assert_cmpmem (left, sizeof left, right, sizeof right);
  for (gsize i = 0; i < G_N_ELEMENTS (left); i++)
    n += left[i];
  g_assert_cmpuint (n, ==, 3000);
  stead_season_draws_count (other, -1e5, 3e5, right, G_N_ELEMENTS (right));
  g_assert_cmpint (memcmp (left, right, sizeof left), !=, 0);
}

static gboolean
stop_at_once (gpointer data)
{
  return TRUE;
}

static gboolean
stop_after (gpointer data)
{
  return g_atomic_int_get ((gint *) data) >= 3;
}

/* Progress counts each block once; a stop leaves the rest undone. */
static void
test_progress_and_stop (void)
{
  SteadSeason season = { stall, G_N_ELEMENTS (stall), { 0.9, 1, 1.3 }, { 6000, 7000, 9000 }, 12, 0.3 };
  g_autoptr(SteadSeasonDraws) draws = stead_season_draws_new (&season, 200000, 1, NULL);
  gint n = (gint) stead_season_draws_get_n_blocks (draws), done = 0;

  g_assert_cmpint (n, >, 20);
  g_assert_true (stead_season_draws_run_all (draws, NULL, NULL, &done));
  g_assert_cmpint (done, ==, n);
  done = 0;
  g_assert_false (stead_season_draws_run_all (draws, stop_after, &done, &done));
  g_assert_cmpint (done, >=, 3);
  g_assert_cmpint (done, <=, 4);       /* the other thread may have begun one */
}

static void
test_refused (void)
{
  SteadSeasonProduct product = stall[0];
  SteadSeason season = { &product, 1, ONE, { 0 }, 12, 0 };
  g_autoptr(SteadSeasonDraws) draws = stead_season_draws_new (&season, 100, 1, NULL);
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_season_draws_run (draws, 0, 1, stop_at_once, NULL, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED);
  g_clear_error (&error);
  product.sold = (SteadThreePoint) { 90, 72, 40 };    /* upside down */
  g_assert_null (stead_season_draws_new (&season, 100, 1, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_clear_error (&error);
  product.sold = (SteadThreePoint) { 1, NAN, 4 };
  g_assert_null (stead_season_draws_new (&season, 100, 1, &error));
  g_clear_error (&error);
  product = stall[0];
  product.yield.low = 0;                              /* nothing came of it */
  g_assert_null (stead_season_draws_new (&season, 100, 1, &error));
  g_clear_error (&error);
  product = stall[0];
  season.n_days = 0;
  g_assert_null (stead_season_draws_new (&season, 100, 1, &error));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/season/closed-forms", test_closed_forms);
  g_test_add_func ("/core/season/together", test_together);
  g_test_add_func ("/core/season/shape", test_shape);
  g_test_add_func ("/core/season/yield", test_yield);
  g_test_add_func ("/core/season/batch", test_batch);
  g_test_add_func ("/core/season/no-ranges", test_no_ranges);
  g_test_add_func ("/core/season/same-luck", test_same_luck);
  g_test_add_func ("/core/season/progress-and-stop", test_progress_and_stop);
  g_test_add_func ("/core/season/refused", test_refused);
  return g_test_run ();
}

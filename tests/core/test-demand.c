/* What people may ask for: shapes, lines through past days, and what past days teach. */
#include "core/stead-core-error.h"
#include "core/stead-demand-learn.h"
#include "core/stead-demand-line.h"
#include "core/stead-order.h"

#include <math.h>

/* scipy 1.10: stats.poisson cdf and ppf, and the sum of (k - q) pmf (k). */
static void
test_poisson (void)
{
  static const struct { double mean, q, cdf, missed; } table[] = {
    { 3.5, 0, 0.0301973834223185, 3.5 }, { 3.5, 2, 0.32084719886213414, 1.666085608822752 },
    { 3.5, 4, 0.7254449533096043, 0.523565475585671 }, { 20, 16, 0.22107420155444113, 4.406924532076176 },
    { 20, 20, 0.5590925842313251, 1.7767063478416996 }, { 20, 26, 0.9221132189037747, 0.2186431458575382 },
    { 400, 320, 1.9756247372252286e-05, 80.00007118655478 }, { 400, 400, 0.5132938289661275, 7.977183522012163 },
  };
  static const struct { double mean, ratio, quantity; } best[] = {
    { 3.5, 0.05, 1 }, { 3.5, 0.5, 3 }, { 3.5, 0.667, 4 }, { 3.5, 0.9, 6 }, { 3.5, 0.99, 8 },
    { 20, 0.05, 13 }, { 20, 0.667, 22 }, { 20, 0.99, 31 }, { 400, 0.05, 367 }, { 400, 0.9, 426 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SteadDemand demand = { .shape = STEAD_DEMAND_POISSON, .mean = table[i].mean };
      double q = table[i].q;

      g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&demand, q), table[i].cdf, 1e-12);
      g_assert_cmpfloat_with_epsilon (stead_demand_expected_short (&demand, q), table[i].missed, 1e-8);
      g_assert_cmpfloat_with_epsilon (stead_demand_expected_left (&demand, q), q - table[i].mean + table[i].missed,
                                      1e-8);
      /* All is asked for where more than one less is. */
      g_assert_cmpfloat_with_epsilon (stead_demand_chance_sold_out (&demand, q + 1), 1 - table[i].cdf, 1e-12);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (best); i++)
    {
      SteadOrderOnce order = { { .shape = STEAD_DEMAND_POISSON, .mean = best[i].mean }, best[i].ratio,
                               1 - best[i].ratio };

      g_assert_cmpfloat (stead_order_once_quantity (&order), ==, best[i].quantity);
    }
}

/* scipy 1.10: stats.triang cdf and ppf, and integrate.quad of (x - q) pdf (x). */
static void
test_triangle (void)
{
  static const struct { double low, likely, high, q, missed, cdf; } table[] = {
    { 10, 20, 50, 9, 17.666666666666664, 0 }, { 10, 20, 50, 18, 9.093333333333334, 0.16 },
    { 10, 20, 50, 20, 7.5, 0.25 }, { 10, 20, 50, 42, 0.14222222222222217, 0.9466666666666667 },
    { 10, 20, 50, 51, 0, 1 }, { 0, 0, 8, 1.6, 1.365333333333333, 0.36 }, { 0, 0, 8, 0, 2.666666666666667, 0 },
    { 5, 9, 9, 5.8, 1.8773333333333342, 0.04 }, { 5, 9, 9, 8.2, 0.1493333333333336, 0.64 }, { 5, 9, 9, 9, 0, 1 },
  };
  static const struct { double low, likely, high, chance, value; } quantiles[] = {
    { 10, 20, 50, 0.01, 12 }, { 10, 20, 50, 0.3, 21.017246507621124 }, { 10, 20, 50, 0.99, 46.53589838486224 },
    { 0, 0, 8, 0.6667, 3.381428792364461 }, { 5, 9, 9, 0.3, 7.190890230020664 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SteadDemand demand = { .shape = STEAD_DEMAND_TRIANGLE, .low = table[i].low, .likely = table[i].likely,
                             .high = table[i].high };

      g_assert_cmpfloat_with_epsilon (stead_demand_expected_short (&demand, table[i].q), table[i].missed, 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&demand, table[i].q), table[i].cdf, 1e-12);
      g_assert_cmpfloat_with_epsilon (stead_demand_chance_sold_out (&demand, table[i].q), 1 - table[i].cdf, 1e-12);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (quantiles); i++)
    {
      SteadOrderOnce order = { { .shape = STEAD_DEMAND_TRIANGLE, .low = quantiles[i].low,
                                 .likely = quantiles[i].likely, .high = quantiles[i].high },
                               quantiles[i].chance, 1 - quantiles[i].chance };

      g_assert_cmpfloat_with_epsilon (stead_order_once_quantity (&order), quantiles[i].value, 1e-9);
    }
}

/* scipy 1.10: stats.norm, integrate.quad of (x - q) pdf (x). */
static void
test_normal_and_discrete (void)
{
  const double values[] = { 15, 16, 17, 18 };
  const double chances[] = { 0.4, 0.2, 0.3, 0.1 };
  SteadDemand normal = { .shape = STEAD_DEMAND_NORMAL, .mean = 120, .sd = 10 };
  SteadDemand papers = { .shape = STEAD_DEMAND_DISCRETE, .values = values, .chances = chances, .n = 4 };

  g_assert_cmpfloat_with_epsilon (stead_demand_expected_short (&normal, 100), 20.0849070261683, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_demand_expected_short (&normal, 132.8155), 0.47343331932702015, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_sold_out (&normal, 132.8155), 0.1000002747507418, 1e-12);
  /* By hand: of 17, one goes without in 1 of 10; 2 and 1 are left in 4 and 2 of 10. */
  g_assert_cmpfloat_with_epsilon (stead_demand_expected_short (&papers, 17), 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_demand_expected_left (&papers, 17), 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_sold_out (&papers, 17), 0.4, 1e-12);
}

/* More left over for each more that is made, fewer that go without; nothing below 0. */
static void
test_shapes_hold (void)
{
  const SteadDemand demands[] = {
    { .shape = STEAD_DEMAND_POISSON, .mean = 7.3 }, { .shape = STEAD_DEMAND_POISSON, .mean = 900 },
    { .shape = STEAD_DEMAND_TRIANGLE, .low = 3, .likely = 3, .high = 40 },
    { .shape = STEAD_DEMAND_NORMAL, .mean = 30, .sd = 9 }, { .shape = STEAD_DEMAND_UNIFORM, .low = 2, .high = 60 },
  };
  const SteadDemand broken[] = {
    { .shape = STEAD_DEMAND_POISSON, .mean = 0 }, { .shape = STEAD_DEMAND_POISSON, .mean = NAN },
    { .shape = STEAD_DEMAND_POISSON, .mean = 1e300 }, { .shape = STEAD_DEMAND_TRIANGLE },
    { .shape = STEAD_DEMAND_TRIANGLE, .low = 5, .likely = 4, .high = 9 },
    { .shape = STEAD_DEMAND_TRIANGLE, .low = 5, .likely = NAN, .high = 9 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (demands); i++)
    for (double q = -3; q < 70; q += 0.5)
      {
        double missed = stead_demand_expected_short (&demands[i], q);
        double left = stead_demand_expected_left (&demands[i], q);

        g_assert_true (missed >= 0 && left >= 0);
        g_assert_cmpfloat (stead_demand_expected_short (&demands[i], q + 0.5), <=, missed + 1e-9);
        g_assert_cmpfloat (stead_demand_expected_left (&demands[i], q + 0.5), >=, left - 1e-9);
        g_assert_cmpfloat_with_epsilon (left - missed, q - stead_demand_mean (&demands[i]), 1e-6);
      }
  for (gsize i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      SteadOrderOnce order = { broken[i], 3, 2 };

      g_assert_true (isnan (stead_demand_chance_at_most (&broken[i], 5)));
      g_assert_true (isnan (stead_order_once_quantity (&order)));
    }
}

/* The data of R's manual page "cars", speed and stopping distance (memory); R prints for
 * lm (dist ~ speed): -17.5791, 3.9324, 15.38 on 48 degrees of freedom, 0.4155.  The bands:
 * scipy 1.10, stats.linregress and stats.t. */
static const double speed[] = {
  4, 4, 7, 7, 8, 9, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 13, 13, 14, 14, 14, 14, 15, 15,
  15, 16, 16, 17, 17, 17, 18, 18, 18, 18, 19, 19, 19, 20, 20, 20, 20, 20, 22, 23, 24, 24, 24, 24, 25,
};
static const double distance[] = {
  2, 10, 4, 22, 16, 10, 18, 26, 34, 17, 28, 14, 20, 24, 28, 26, 34, 34, 46, 26, 36, 60, 80, 20, 26,
  54, 32, 40, 32, 40, 50, 42, 56, 76, 84, 36, 46, 68, 32, 48, 52, 56, 64, 66, 54, 70, 92, 93, 120, 85,
};

static void
test_line (void)
{
  SteadDemandLine line;
  SteadBand band = { 7, 7, 7 };
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_demand_line_fit (speed, distance, 50, &line, &error));
  g_assert_cmpfloat_with_epsilon (line.intercept, -17.5791, 0.00005);
  g_assert_cmpfloat_with_epsilon (line.slope, 3.9324, 0.00005);
  g_assert_cmpfloat_with_epsilon (line.residual_sd, 15.38, 0.005);
  g_assert_cmpfloat_with_epsilon (line.slope_sd, 0.4155, 0.00005);
  g_assert_true (stead_demand_line_at (&line, 10, 0.95, &band, &error));
  g_assert_cmpfloat_with_epsilon (band.low, -9.809600742032401, 1e-6);
  g_assert_cmpfloat_with_epsilon (band.likely, 21.744992700729917, 1e-6);
  g_assert_cmpfloat_with_epsilon (band.high, 53.299586143492235, 1e-6);
  g_assert_true (stead_demand_line_at (&line, 21, 0.8, &band, &error));
  g_assert_cmpfloat_with_epsilon (band.low, 44.5925757629479, 1e-6);
  g_assert_cmpfloat_with_epsilon (band.high, 85.41040233924188, 1e-6);
  g_assert_true (stead_demand_line_told (&line, 0.95));
  /* What was never seen is not made up. */
  g_assert_false (stead_demand_line_at (&line, 25.1, 0.8, &band, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat_with_epsilon (band.low, 44.5925757629479, 1e-6);
  g_assert_false (stead_demand_line_at (&line, NAN, 0.8, &band, NULL));
}

static void
test_line_refused (void)
{
  const double same[] = { 3, 3, 3, 3 };
  const double up[] = { 1, 2, 3, 4 };
  const double scattered[] = { 5, 9, 4, 8 };
  const double holes[] = { 1, NAN, 3, 4 };
  const double huge[] = { 1, 1e300, 3, 4 };
  SteadDemandLine line = { .n = 77 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_demand_line_fit (up, up, 2, &line, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_demand_line_fit (same, up, 4, &line, NULL));
  g_assert_false (stead_demand_line_fit (holes, up, 4, &line, NULL));
  g_assert_false (stead_demand_line_fit (up, huge, 4, &line, NULL));
  g_assert_cmpuint (line.n, ==, 77);
  g_assert_true (stead_demand_line_fit (up, scattered, 4, &line, NULL));
  g_assert_false (stead_demand_line_told (&line, 0.8));
}

static void
test_learn (void)
{
  const SteadThreePoint guess = { 10, 20, 30 };
  const SteadPastDay days[] = { { 30, FALSE }, { 34, FALSE }, { 38, FALSE } };
  const SteadPastDay bad[] = { { NAN, FALSE } };
  SteadDemand demand;
  double variance;
  g_autoptr(GError) error = NULL;

  /* Without days the guess itself, mean 20 and variance 100 / 6, and its mean unsure. */
  g_assert_true (stead_demand_learn (&guess, NULL, 0, &demand, &error));
  g_assert_cmpfloat_with_epsilon (demand.mean, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (demand.sd * demand.sd, 100.0 / 6 * 1.5, 1e-9);
  /* Five days of which two are the guess: by hand, mean (2 x 20 + 102) / 5. */
  g_assert_true (stead_demand_learn (&guess, days, 3, &demand, &error));
  g_assert_cmpfloat_with_epsilon (demand.mean, 28.4, 1e-9);
  variance = (2 * (100.0 / 6 + 8.4 * 8.4) + 1.6 * 1.6 + 5.6 * 5.6 + 9.6 * 9.6) / 5;
  g_assert_cmpfloat_with_epsilon (demand.sd, sqrt (variance * 1.2), 1e-9);
  demand.mean = 77;
  g_assert_false (stead_demand_learn (&guess, bad, 1, &demand, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_demand_learn (&(SteadThreePoint) { 3, 2, 9 }, NULL, 0, &demand, NULL));
  g_assert_false (stead_demand_learn (&(SteadThreePoint) { 0, 0, 0 }, NULL, 0, &demand, NULL));
  g_assert_false (stead_demand_learn (&(SteadThreePoint) { NAN, 2, 9 }, NULL, 0, &demand, NULL));
  g_assert_cmpfloat (demand.mean, ==, 77);
}

/* Days drawn from a bell curve of 60 and 12, of which only 58 could ever be sold: more
 * than half sold out.  What was sold would teach 54; the days teach 60. */
static void
test_learn_sold_out (void)
{
  const SteadThreePoint guess = { 40, 60, 80 };
  g_autoptr(GRand) rand = g_rand_new_with_seed (5);
  SteadPastDay days[1000];
  SteadDemand taught, fooled;

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      double asked = -6;

      /* Twelve uniform numbers less six: mean 0, variance 1. */
      for (int k = 0; k < 12; k++)
        asked += g_rand_double (rand);
      asked = 60 + 12 * asked;
      days[i] = (SteadPastDay) { MAX (0, MIN (asked, 58)), asked >= 58 };
    }
  g_assert_true (stead_demand_learn (&guess, days, G_N_ELEMENTS (days), &taught, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i].sold_out = FALSE;
  g_assert_true (stead_demand_learn (&guess, days, G_N_ELEMENTS (days), &fooled, NULL));
  g_test_message ("taught %.2f and %.2f, fooled %.2f and %.2f", taught.mean, taught.sd, fooled.mean, fooled.sd);
  /* Four standard errors of a mean of which half is censored. */
  g_assert_cmpfloat_with_epsilon (taught.mean, 60, 4 * 12 * 1.3 / sqrt (1000));
  g_assert_cmpfloat_with_epsilon (taught.sd, 12, 1.5);
  g_assert_cmpfloat (fooled.mean, <, 56);
}

/* Whatever was sold, a day that sold out never lowers what is expected. */
static void
test_learn_monotone (void)
{
  const SteadThreePoint guess = { 10, 20, 30 };

  for (double sold = 0; sold < 2000; sold = 1.7 * sold + 1)
    {
      SteadPastDay day = { sold, FALSE };
      SteadDemand plain, more;

      g_assert_true (stead_demand_learn (&guess, &day, 1, &plain, NULL));
      day.sold_out = TRUE;
      g_assert_true (stead_demand_learn (&guess, &day, 1, &more, NULL));
      g_assert_cmpfloat (more.mean, >=, plain.mean - 1e-9);
      g_assert_true (isfinite (more.mean) && more.sd > 0 && isfinite (more.sd));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/demand/poisson", test_poisson);
  g_test_add_func ("/core/demand/triangle", test_triangle);
  g_test_add_func ("/core/demand/normal-and-discrete", test_normal_and_discrete);
  g_test_add_func ("/core/demand/shapes-hold", test_shapes_hold);
  g_test_add_func ("/core/demand/line", test_line);
  g_test_add_func ("/core/demand/line-refused", test_line_refused);
  g_test_add_func ("/core/demand/learn", test_learn);
  g_test_add_func ("/core/demand/learn-sold-out", test_learn_sold_out);
  g_test_add_func ("/core/demand/learn-monotone", test_learn_monotone);
  return g_test_run ();
}

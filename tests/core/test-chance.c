/* Orders, guesses and goals, against published values and against simulation. */
#include "core/stead-chance.h"
#include "core/stead-order.h"

#include <math.h>

/* Cachon and Terwiesch, chapter 12; the front page of an open inventory library
 * (both read); a newsboy question (derived). */
static void
test_order_once (void)
{
  const double values[] = { 15, 16, 17, 18 };
  const double chances[] = { 0.4, 0.2, 0.3, 0.1 };
  SteadOrderOnce normal = { { .shape = STEAD_DEMAND_NORMAL, .mean = 120, .sd = 10 }, 18, 2 };
  SteadOrderOnce papers = { { .shape = STEAD_DEMAND_DISCRETE, .values = values, .chances = chances, .n = 4 },
                            100, 100 };
  SteadOrderOnce cider = { { .shape = STEAD_DEMAND_UNIFORM, .low = 100, .high = 200 }, 60, 30 };

  g_assert_cmpfloat_with_epsilon (stead_order_once_quantity (&normal), 132.8155, 0.00005);
  g_assert_cmpfloat_with_epsilon (stead_order_once_cost_cents (&normal, 132.8155), 35.0997, 0.00005);
  g_assert_cmpfloat (stead_order_once_quantity (&papers), ==, 16);
  g_assert_cmpfloat_with_epsilon (stead_order_once_profit_cents (&papers, 16), 1520, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_order_once_quantity (&cider), 166.667, 0.001);
  /* A chance that just reaches the ratio is enough: 0.4 + 0.2 against 0.6. */
  papers.short_cents = 60;
  papers.over_cents = 40;
  g_assert_cmpfloat (stead_order_once_quantity (&papers), ==, 16);
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&normal.demand, 120), 0.5, 1e-12);
  /* Chances: half of the width, and the values up to and with the quantity. */
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&cider.demand, 150), 0.5, 1e-12);
  g_assert_cmpfloat (stead_demand_chance_at_most (&cider.demand, 90), ==, 0);
  g_assert_cmpfloat (stead_demand_chance_at_most (&cider.demand, 210), ==, 1);
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&papers.demand, 16), 0.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_demand_chance_at_most (&papers.demand, 15.9), 0.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_demand_mean (&cider.demand), 150, 1e-12);
  normal.short_cents = 0;
  normal.over_cents = 0;
  g_assert_true (isnan (stead_order_once_ratio (&normal)));
  g_assert_true (isnan (stead_order_once_quantity (&normal)));
}

/* The best quantity is best: a little more or less costs more, for every shape. */
static void
test_order_is_best (void)
{
  const double values[] = { 2, 5, 9, 14 };
  const double chances[] = { 0.25, 0.25, 0.3, 0.2 };

  for (double cost = 5; cost < 100; cost += 7)
    {
      SteadOrderOnce orders[] = {
        { { .shape = STEAD_DEMAND_NORMAL, .mean = 50, .sd = 8 }, 100 - cost, cost },
        { { .shape = STEAD_DEMAND_UNIFORM, .low = 10, .high = 60 }, 100 - cost, cost },
        { { .shape = STEAD_DEMAND_DISCRETE, .values = values, .chances = chances, .n = 4 }, 100 - cost, cost },
      };

      for (gsize i = 0; i < G_N_ELEMENTS (orders); i++)
        {
          double best = stead_order_once_quantity (&orders[i]);
          double least = stead_order_once_cost_cents (&orders[i], best);

          for (double other = 0; other < 80; other += 0.5)
            g_assert_cmpfloat (stead_order_once_cost_cents (&orders[i], other), >=, least - 1e-9);
        }
    }
}

/* Operations text, example 12.3 (read). */
static void
test_order_size (void)
{
  double best = stead_order_size (1000, 1000, 50);

  g_assert_cmpfloat_with_epsilon (best, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_order_size_cost_cents (1000, 1000, 50, best), 10000, 1e-6);
  for (double q = 10; q < 500; q += 5)
    g_assert_cmpfloat (stead_order_size_cost_cents (1000, 1000, 50, q), >=, 10000 - 1e-6);
  g_assert_true (isnan (stead_order_size (0, 1, 1)));
  g_assert_true (isnan (stead_order_size_cost_cents (1, 1, 1, 0)));
}

/* A statistics library's documentation (read); triangular variance of an R manual. */
static void
test_three_point (void)
{
  const SteadThreePoint even = { 0, 2.5, 5 };
  const SteadThreePoint guess = { 2, 3, 7 };
  const SteadThreePoint flat = { 4, 4, 4 };
  double sum = 0;

  g_assert_cmpfloat_with_epsilon (stead_triangle_mean (&even), 2.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_triangle_density (&even, 2.5), 0.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_triangle_variance (&guess), 1.1667, 0.00005);
  g_assert_cmpfloat_with_epsilon (stead_triangle_chance_at_most (&guess, 3), 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_pert_mean (&(SteadThreePoint) { 40, 52, 74 }), 53.67, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_pert_variance (&(SteadThreePoint) { 40, 52, 74 }), 32.11, 0.005);
  /* The density is the slope of the chance, and all of it is one. */
  for (double x = 1.005; x < 8; x += 0.01)
    {
      double slope = (stead_triangle_chance_at_most (&guess, x + 1e-6)
                      - stead_triangle_chance_at_most (&guess, x - 1e-6)) / 2e-6;

      g_assert_cmpfloat_with_epsilon (stead_triangle_density (&guess, x), slope, 1e-4);
      sum += 0.01 * stead_triangle_density (&guess, x);
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-4);
  g_assert_true (isnan (stead_triangle_chance_at_most (&flat, 4)));
  g_assert_true (isnan (stead_triangle_density (&flat, 4)));
  g_assert_cmpfloat (stead_triangle_chance_at_most (&guess, 1), ==, 0);
  g_assert_cmpfloat (stead_triangle_chance_at_most (&guess, 8), ==, 1);
}

static void
test_normal (void)
{
  /* Project with a mean of 21 and a variance of 4 (derived). */
  g_assert_cmpfloat_with_epsilon (stead_normal_chance_at_most (21, 2, 17), 0.0228, 0.00005);
  g_assert_cmpfloat_with_epsilon (stead_normal_quantile (21, 2, 0.95), 24.29, 0.005);
  g_assert_true (isnan (stead_normal_quantile (21, 2, 1)));
  g_assert_true (isnan (stead_normal_chance_at_most (21, 0, 1)));
}

/* Course page on the gambler's ruin (read: fair game, 30 of 100). */
static void
test_ruin (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (14);
  int reached = 0;
  double steps = 0;
  const int games = 20000;

  g_assert_cmpfloat_with_epsilon (stead_ruin_chance_reach (0.5, 30, 100), 0.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_ruin_expected_steps (0.5, 30, 100), 2100, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_ruin_chance_reach (18.0 / 38, 40, 100), 0.0018, 0.00005);
  g_assert_cmpfloat (stead_ruin_chance_reach (0.4, 0, 10), ==, 0);
  g_assert_cmpfloat_with_epsilon (stead_ruin_chance_reach (0.4, 10, 10), 1, 1e-12);
  /* Neither side overflows. */
  g_assert_cmpfloat (stead_ruin_chance_reach (0.01, 5000, 10000), >=, 0);
  g_assert_cmpfloat_with_epsilon (stead_ruin_chance_reach (0.99, 5000, 10000), 1, 1e-12);
  g_assert_true (isnan (stead_ruin_chance_reach (0, 1, 10)));
  g_assert_true (isnan (stead_ruin_chance_reach (0.5, 11, 10)));

  /* Played with a fixed seed: within four standard errors. */
  for (int game = 0; game < games; game++)
    {
      int have = 4;

      for (; have > 0 && have < 10; steps++)
        have += g_rand_double (rand) < 0.45 ? 1 : -1;
      reached += have == 10;
    }
  g_assert_cmpfloat_with_epsilon ((double) reached / games, stead_ruin_chance_reach (0.45, 4, 10),
                                  4 * 0.5 / sqrt (games));
  g_assert_cmpfloat_with_epsilon (steps / games, stead_ruin_expected_steps (0.45, 4, 10), 0.6);
}

/* Own cases of the reference; and the chance to touch the goal, walked in small
 * steps with a fixed seed. */
static void
test_goal (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (15);
  const SteadSaving goal = { 80000, 10000, 6000 };
  const int walks = 4000;
  const int parts = 100;
  int touched = 0;

  g_assert_cmpfloat_with_epsilon (stead_saving_chance_after (&goal, 8), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_saving_chance_after (&goal, 10), 0.8541, 0.0002);
  g_assert_cmpfloat_with_epsilon (stead_saving_mean_weeks (&goal), 8, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_saving_variance_weeks2 (&goal), 2.88, 1e-9);
  for (int walk = 0; walk < walks; walk++)
    {
      double sum = 0;

      for (int i = 0; i < 10 * parts && sum < goal.missing_cents; i++)
        {
          /* Twelve uniform numbers less six: mean 0, variance 1. */
          double noise = -6;

          for (int k = 0; k < 12; k++)
            noise += g_rand_double (rand);
          sum += goal.mean_cents / parts + goal.sd_cents * noise / sqrt (parts);
        }
      touched += sum >= goal.missing_cents;
    }
  /* Four standard errors, and a little for the steps between which it is not seen. */
  g_assert_cmpfloat_with_epsilon ((double) touched / walks, stead_saving_chance_ever_by (&goal, 10),
                                  4 * 0.5 / sqrt (walks) + 0.01);
  g_assert_cmpfloat (stead_saving_chance_ever_by (&goal, 10), >, stead_saving_chance_after (&goal, 10));
  g_assert_cmpfloat (stead_saving_chance_ever_by (&(SteadSaving) { 0, 1, 1 }, 1), ==, 1);
  /* A tiny spread makes a huge factor times nothing, not NaN. */
  g_assert_cmpfloat_with_epsilon (stead_saving_chance_ever_by (&(SteadSaving) { 100, 10, 0.01 }, 11), 1, 1e-9);
  g_assert_true (isnan (stead_saving_mean_weeks (&(SteadSaving) { 1, 0, 1 })));
  g_assert_true (isnan (stead_saving_chance_after (&goal, 0)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/order/once", test_order_once);
  g_test_add_func ("/core/order/is-best", test_order_is_best);
  g_test_add_func ("/core/order/size", test_order_size);
  g_test_add_func ("/core/chance/three-point", test_three_point);
  g_test_add_func ("/core/chance/normal", test_normal);
  g_test_add_func ("/core/chance/ruin", test_ruin);
  g_test_add_func ("/core/chance/goal", test_goal);
  return g_test_run ();
}

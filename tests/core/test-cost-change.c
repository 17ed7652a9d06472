/* test-cost-change.c - why one unit costs more or less than it did. */
#include "config.h"

#include <glib.h>

#include "core/stead-cost-change.h"

/* OpenStax Principles of Accounting vol. 2, section 8.2: $7 and 0.25 lb planned, $9 and 0.50 lb
 * used: price $1.00, quantity $1.75, together $2.75 more; section 8.3: $0.30, $0.80, $1.10. */
static void
test_published (void)
{
  static const double rows[][7] = { { 700, 0.25, 900, 0.5, 175, 100, 275 }, { 800, 0.1, 950, 0.2, 80, 30, 110 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SteadCostFactors before = { rows[i][0], rows[i][1], 1, 1 }, after = { rows[i][2], rows[i][3], 1, 1 };
      double cents[STEAD_N_CHANGE_KINDS];

      stead_cost_change (&before, &after, cents);
      g_assert_cmpfloat_with_epsilon (cents[STEAD_CHANGE_USE], rows[i][4], 1e-9);
      g_assert_cmpfloat_with_epsilon (cents[STEAD_CHANGE_PRICE], rows[i][5], 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_cost_factors_cents (&after) - stead_cost_factors_cents (&before), rows[i][6],
                                      1e-9);
    }
}

/* Whatever moves, the four sum to the change. */
static void
test_sum (void)
{
  for (int i = 0; i < 1000; i++)
    {
      SteadCostFactors before = { g_test_rand_double_range (0, 100), g_test_rand_double_range (0, 3),
                                  g_test_rand_double_range (0.1, 2), g_test_rand_double_range (1, 50) };
      SteadCostFactors after = { g_test_rand_double_range (0, 100), g_test_rand_double_range (0, 3),
                                 g_test_rand_double_range (0.1, 2), g_test_rand_double_range (1, 50) };
      double cents[STEAD_N_CHANGE_KINDS], sum = 0;

      stead_cost_change (&before, &after, cents);
      for (int kind = 0; kind < STEAD_N_CHANGE_KINDS; kind++)
        sum += cents[kind];
      g_assert_cmpfloat_with_epsilon (sum, stead_cost_factors_cents (&after) - stead_cost_factors_cents (&before), 1e-6);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/cost-change/published", test_published);
  g_test_add_func ("/core/cost-change/sum", test_sum);
  return g_test_run ();
}

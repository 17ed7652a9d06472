/* test-price-point.c - prices to choose between. */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "core/stead-price-point.h"

static void
test_easy (void)
{
  g_assert_cmpint (stead_price_easy_below (449, 25), ==, 425);
  g_assert_cmpint (stead_price_easy_above (449, 25), ==, 450);
  g_assert_cmpint (stead_price_easy_below (450, 25), ==, 450);
  g_assert_cmpint (stead_price_easy_above (450, 25), ==, 450);
  g_assert_cmpint (stead_price_easy_above (1, 100), ==, 100);
}

/* OpenStax Principles of Accounting vol. 2, section 3.1: $100 less $20 leaves $80; 225 units
 * bring $18,000.  At $120 they leave $100 each: 180 units bring the same. */
static void
test_same (void)
{
  g_assert_cmpfloat_with_epsilon (stead_price_same_profit_units (100, 225, 120, 20), 180, 1e-9);
  g_assert_true (isnan (stead_price_same_profit_units (100, 225, 20, 20)));
}

/* Against a search over every cent. */
static void
test_best (void)
{
  for (int i = 0; i < 200; i++)
    {
      SteadDemandLine line = { .intercept = g_test_rand_double_range (20, 200),
                               .slope = -g_test_rand_double_range (0.02, 0.3), .x_low = 300, .x_high = 700 };
      double cost = g_test_rand_double_range (50, 400), best = stead_price_best_cents (&line, cost), most = -INFINITY;

      for (int price = 300; price <= 700; price++)
        most = MAX (most, (price - cost) * MAX (0, line.intercept + line.slope * price));
      g_assert_cmpfloat (best, >=, 300);
      g_assert_cmpfloat (best, <=, 700);
      g_assert_cmpfloat ((best - cost) * MAX (0, line.intercept + line.slope * best), >=, most - 1e-6);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/price-point/easy", test_easy);
  g_test_add_func ("/core/price-point/same", test_same);
  g_test_add_func ("/core/price-point/best", test_best);
  return g_test_run ();
}

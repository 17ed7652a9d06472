/* test-batch-variance.c - plan against result, taken apart. */
#include "core/stead-batch-variance.h"

#include <math.h>

/* OpenStax Principles of Accounting vol. 2, section 8.2 (read): the material of one box, 0.25 lb at $7 by
 * standard, 0.50 lb at $9 in fact: price -1.00, quantity -1.75.  One box is made as planned. */
static void
test_material (void)
{
  SteadBatchResult planned = { .output = 1, .price_cents = 3000, .feed_kg = 0.25, .feed_cents_kg = 700 };
  SteadBatchResult actual = { .output = 1, .price_cents = 3000, .feed_kg = 0.50, .feed_cents_kg = 900 };
  SteadBatchVariance variance;

  g_assert_true (stead_batch_variance (&planned, &actual, &variance));
  g_assert_cmpfloat_with_epsilon (variance.feed_price_cents, -100, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.feed_use_cents, -175, 1e-9);
  g_assert_cmpfloat (variance.price_cents, ==, 0);
  g_assert_cmpfloat (variance.volume_cents, ==, 0);
  g_assert_cmpfloat_with_epsilon (variance.actual_cents - variance.planned_cents, -275, 1e-9);
}

/* The same section: standard 0.85 for 88,000 allowed, 0.84 for 89,000 used: +890 and -850.  The 88,000 are
 * what the actual output should have taken: half as much again as was planned. */
static void
test_allowed (void)
{
  SteadBatchResult planned = { .output = 2000, .price_cents = 8000, .feed_kg = 58666 + 2 / 3.0, .feed_cents_kg = 85 };
  SteadBatchResult actual = { .output = 3000, .price_cents = 8000, .feed_kg = 89000, .feed_cents_kg = 84 };
  SteadBatchVariance variance;

  g_assert_true (stead_batch_variance (&planned, &actual, &variance));
  g_assert_cmpfloat_with_epsilon (variance.feed_allowed_kg, 88000, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance.feed_price_cents, 89000, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance.feed_use_cents, -85000, 1e-6);
}

/* Own case, worked by hand.  Planned: 100 kg at $8, 150 kg of feed at $1, $300 besides: left $350.
 * Came: 90 kg at $9, 160 kg of feed at $1.10, $310 besides: left $324.
 * Price 1 x 90 = +90; volume -10 x (8 - 1.5) = -65; feed price -0.10 x 160 = -16; feed use
 * (135 - 160) x 1 = -25; other -10: -26 in all. */
static void
test_by_hand (void)
{
  SteadBatchResult planned = { 100, 800, 150, 100, 30000 };
  SteadBatchResult actual = { 90, 900, 160, 110, 31000 };
  SteadBatchVariance variance;

  g_assert_true (stead_batch_variance (&planned, &actual, &variance));
  g_assert_cmpfloat_with_epsilon (variance.planned_cents, 35000, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.actual_cents, 32400, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.price_cents, 9000, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.volume_cents, -6500, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.feed_price_cents, -1600, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.feed_use_cents, -2500, 1e-9);
  g_assert_cmpfloat_with_epsilon (variance.other_cents, -1000, 1e-9);
}

static void
test_adds_up (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (12);

  for (int round = 0; round < 20000; round++)
    {
      SteadBatchResult results[2];
      SteadBatchVariance variance;

      for (int i = 0; i < 2; i++)
        results[i] = (SteadBatchResult) { g_rand_double_range (rand, 0.1, 1000), g_rand_double_range (rand, 0, 5000),
                                          g_rand_double_range (rand, 0, 3000), g_rand_double_range (rand, 0, 300),
                                          g_rand_double_range (rand, 0, 1e6) };
      g_assert_true (stead_batch_variance (&results[0], &results[1], &variance));
      g_assert_cmpfloat_with_epsilon (variance.price_cents + variance.volume_cents + variance.feed_price_cents
                                      + variance.feed_use_cents + variance.other_cents,
                                      variance.actual_cents - variance.planned_cents, 1e-5);
    }
}

static void
test_nothing_planned (void)
{
  SteadBatchResult planned = { 0 }, actual = { 90, 900, 160, 110, 31000 };
  SteadBatchVariance variance = { .price_cents = 7 };

  g_assert_false (stead_batch_variance (&planned, &actual, &variance));
  planned.output = NAN;
  g_assert_false (stead_batch_variance (&planned, &actual, &variance));
  g_assert_cmpfloat (variance.price_cents, ==, 7);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/batch-variance/material", test_material);
  g_test_add_func ("/core/batch-variance/allowed", test_allowed);
  g_test_add_func ("/core/batch-variance/by-hand", test_by_hand);
  g_test_add_func ("/core/batch-variance/adds-up", test_adds_up);
  g_test_add_func ("/core/batch-variance/nothing-planned", test_nothing_planned);
  return g_test_run ();
}

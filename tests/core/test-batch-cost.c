/* test-batch-cost.c - the cost of a unit of a growing batch, and what lots carry. */
#include "core/stead-batch-cost.h"

#include <math.h>

#include "core/stead-joint-cost.h"
#include "core/stead-money.h"
#include "core/stead-process-cost.h"

/* All cost over expected output: process costing lecture notes for an accounting qualification,
 * p. 146 (read): 1,000 kg put in for 20,700, 10 % normal loss: 23 for each of 900 kg. */
static void
test_expected_output (void)
{
  SteadBatchCost cost = { .so_far_cents = 1200000, .to_come_cents = 870000, .good_base = 200, .expected_base = 700 };

  g_assert_cmpfloat_with_epsilon (stead_batch_unit_cents (&cost), 2300, 1e-9);
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 100, FALSE), ==, 230000);
}

/* Saylor Managerial Accounting, appendix 7.10, lumber (read): 250,000 over 600,000 and 200,000 feet
 * by physical quantity: 187,500 and 62,500. */
static void
test_physical (void)
{
  SteadBatchCost cost = { .so_far_cents = 25000000, .expected_base = 800000 };
  gint64 first = stead_batch_harvest_cents (&cost, 600000, FALSE);

  g_assert_cmpint (first, ==, 18750000);
  cost.good_base = 600000;
  cost.expected_base = 200000;
  cost.carried_cents = first;
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 200000, FALSE), ==, 6250000);
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 200000, TRUE), ==, 6250000);
}

/* Weighted-average equivalent units of the same module's rows: OpenStax Principles of Accounting vol. 2,
 * section 5.3: 10,179 of material over 7,500 finished and 1,200 begun units, all material in: 1.17. */
static void
test_equivalent_units (void)
{
  SteadBatchCost cost = { .so_far_cents = 1017900, .good_base = 7500, .expected_base = 1200 };
  SteadProcess process = { .completed_units = 7500, .end_units = 1200,
                           .elements[STEAD_ELEMENT_MATERIALS] = { .end_frac = 1, .added_cents = 1017900 } };
  SteadProcessFigures figures;

  g_assert_cmpfloat_with_epsilon (stead_batch_unit_cents (&cost), 117, 1e-9);
  stead_process_figures (&process, &figures);
  g_assert_cmpfloat_with_epsilon (stead_batch_unit_cents (&cost), figures.unit_cents[STEAD_ELEMENT_MATERIALS], 1e-9);
}

static void
test_edges (void)
{
  SteadBatchCost cost = { .so_far_cents = 1000.4, .to_come_cents = 500 };

  g_assert_true (isnan (stead_batch_unit_cents (&cost)));
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 0, TRUE), ==, 0);
  /* Nothing was expected: what comes is all, and cannot carry what is not spent yet. */
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 3, FALSE), ==, 1000);
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 3, TRUE), ==, 1000);
  cost.carried_cents = 1200;
  g_assert_cmpint (stead_batch_left_cents (&cost), ==, 0);
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 3, FALSE), ==, 0);
  g_assert_cmpint (stead_batch_harvest_cents (&cost, 3, TRUE), ==, 0);
}

/* Cents in = cents out + cents left, at each harvest and to the cent at the last, whatever was foreseen. */
static void
test_random_histories (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (11);

  for (int round = 0; round < 20000; round++)
    {
      SteadBatchCost cost = { 0 };
      int harvests = g_rand_int_range (rand, 1, 30);

      for (int i = 0; i < harvests; i++)
        {
          double quantity = g_rand_double_range (rand, 0.001, 50);
          gboolean is_last = i == harvests - 1;
          gint64 cents;

          cost.so_far_cents += g_rand_int_range (rand, 0, 4) == 0 ? 0 : g_rand_double_range (rand, 0, 20000);
          cost.to_come_cents = is_last ? 0 : g_rand_double_range (rand, 0, 30000);
          cost.expected_base = g_rand_double_range (rand, 0, 300);
          cents = stead_batch_harvest_cents (&cost, quantity, is_last);
          g_assert_cmpint (cents, >=, 0);
          cost.carried_cents += cents;
          cost.good_base += quantity;
          g_assert_cmpint (cost.carried_cents, <=, stead_money_round (cost.so_far_cents));
          g_assert_cmpint (cost.carried_cents + stead_batch_left_cents (&cost), ==, stead_money_round (cost.so_far_cents));
        }
      g_assert_cmpint (cost.carried_cents, ==, stead_money_round (cost.so_far_cents));
    }
}

/* With a right forecast every lot costs its share, to the cent. */
static void
test_right_forecast (void)
{
  SteadBatchCost cost = { .so_far_cents = 40000, .to_come_cents = 60000, .expected_base = 250 };

  for (int i = 0; i < 10; i++)
    {
      gint64 cents = stead_batch_harvest_cents (&cost, 25, i == 9);

      g_assert_cmpint (cents, ==, 10000);
      cost.carried_cents += cents;
      cost.good_base += 25;
      cost.expected_base -= 25;
      cost.so_far_cents += 60000.0 / 9;
      cost.to_come_cents -= 60000.0 / 9;
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/batch-cost/expected-output", test_expected_output);
  g_test_add_func ("/core/batch-cost/physical", test_physical);
  g_test_add_func ("/core/batch-cost/equivalent-units", test_equivalent_units);
  g_test_add_func ("/core/batch-cost/edges", test_edges);
  g_test_add_func ("/core/batch-cost/random-histories", test_random_histories);
  g_test_add_func ("/core/batch-cost/right-forecast", test_right_forecast);
  return g_test_run ();
}

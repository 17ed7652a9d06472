/* Joint cost, shared overhead, and choices by what they add. */
#include "core/stead-absorption.h"
#include "core/stead-choice.h"
#include "core/stead-core-error.h"
#include "core/stead-cost-line.h"
#include "core/stead-joint-cost.h"
#include "core/stead-mix.h"
#include "core/stead-overhead.h"
#include "core/stead-space.h"

#include <math.h>

/* Saylor, Managerial Accounting, appendix 7.10, lumber (read). */
static void
test_published (void)
{
  const SteadJointProduct products[] = {
    { .quantity = 600000, .split_cents = 24000000 }, { .quantity = 200000, .split_cents = 6000000 },
  };
  double shares[2];

  stead_joint_allocate (products, 2, STEAD_JOINT_PHYSICAL, 25000000, shares);
  g_assert_cmpfloat_with_epsilon (shares[0], 18750000, 1e-6);
  stead_joint_allocate (products, 2, STEAD_JOINT_SPLIT_OFF_VALUE, 25000000, shares);
  g_assert_cmpfloat_with_epsilon (shares[0], 20000000, 1e-6);
  g_assert_cmpfloat_with_epsilon (shares[1], 5000000, 1e-6);
}

/* Whatever the method, the shares are the joint cost, and the constant margin
 * gives each product the margin of all. */
static void
test_shares_sum (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (8);

  for (int round = 0; round < 1000; round++)
    {
      SteadJointProduct products[4];
      double shares[4];
      double joint = g_rand_int_range (rand, 1, 100000);
      double margin;

      for (int i = 0; i < 4; i++)
        products[i] = (SteadJointProduct) { g_rand_int_range (rand, 1, 100), g_rand_int_range (rand, 1, 100),
                                            g_rand_int_range (rand, 100, 200), g_rand_int_range (rand, 0, 50) };
      for (SteadJointMethod m = STEAD_JOINT_PHYSICAL; m <= STEAD_JOINT_CONSTANT_MARGIN; m++)
        {
          stead_joint_allocate (products, 4, m, joint, shares);
          g_assert_cmpfloat_with_epsilon (shares[0] + shares[1] + shares[2] + shares[3], joint, 1e-6);
        }
      margin = stead_joint_overall_margin (products, 4, joint);
      for (int i = 0; i < 4; i++)
        g_assert_cmpfloat_with_epsilon ((products[i].final_cents - products[i].further_cents - shares[i])
                                        / products[i].final_cents, margin, 1e-9);
    }
}

static void
test_no_basis (void)
{
  const SteadJointProduct nothing = { 0 };
  double share = 0;

  stead_joint_allocate (&nothing, 1, STEAD_JOINT_PHYSICAL, 100, &share);
  g_assert_true (isnan (share));
  g_assert_true (isnan (stead_joint_overall_margin (&nothing, 1, 100)));
}

/* Cost accounting question with answer, three chemical products (net value), and solution sheet,
 * problem 9.36 (constant margin): rows joint-03 and joint-02 of tests/reference/goods.csv. */
static void
test_split_published (void)
{
  const SteadJointProduct chemicals[] = {
    { 3200, 0, 3200 * 2.10, 3200 * 0.70 }, { 3700, 0, 3700 * 5.40, 3700 * 1.10 }, { 2000, 0, 2000 * 6.20, 2000 * 1.50 },
  };
  const SteadJointProduct problem[] = { { 0, 80000, 110000, 18000 }, { 0, 70000, 90000, 14000 }, { 0, 50000, 50000, 0 } };
  gint64 shares[3];

  g_assert_true (stead_joint_split (chemicals, 3, STEAD_JOINT_NRV, 12300, shares));
  g_assert_cmpint (shares[0], ==, 1850);
  g_assert_cmpint (shares[1], ==, 6569);
  g_assert_cmpint (shares[2], ==, 3881);
  g_assert_true (stead_joint_split (problem, 3, STEAD_JOINT_CONSTANT_MARGIN, 80000, shares));
  g_assert_cmpint (shares[0], ==, 31280);
  g_assert_cmpint (shares[1], ==, 26320);
  g_assert_cmpint (shares[2], ==, 22400);
  g_assert_true (stead_joint_split (problem, 3, STEAD_JOINT_SPLIT_OFF_VALUE, 80000, shares));
  g_assert_cmpint (shares[0], ==, 32000);
  g_assert_cmpint (shares[1], ==, 28000);
  g_assert_cmpint (shares[2], ==, 20000);
}

/* Whole cents, and never one more or less than went in, by any method. */
static void
test_split_sums (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (9);

  for (int round = 0; round < 1000; round++)
    {
      SteadJointProduct products[5];
      gint64 joint = g_rand_int_range (rand, 0, 100000), shares[5];

      for (int i = 0; i < 5; i++)
        products[i] = (SteadJointProduct) { g_rand_double_range (rand, 0.1, 100), g_rand_int_range (rand, 1, 100),
                                            g_rand_double_range (rand, 1, 200), g_rand_int_range (rand, 0, 150) };
      products[0].further_cents = 0;
      for (SteadJointMethod m = STEAD_JOINT_PHYSICAL; m <= STEAD_JOINT_CONSTANT_MARGIN; m++)
        {
          double fine[5];

          g_assert_true (stead_joint_split (products, 5, m, joint, shares));
          g_assert_cmpint (shares[0] + shares[1] + shares[2] + shares[3] + shares[4], ==, joint);
          stead_joint_allocate (products, 5, m, (double) joint, fine);
          for (int i = 0; m != STEAD_JOINT_NRV && i < 5; i++)
            g_assert_cmpfloat (ABS (fine[i] - (double) shares[i]), <, 1 + 1e-3);
        }
    }
}

static void
test_split_odd (void)
{
  const SteadJointProduct loss[] = { { 10, 0, 100, 150 }, { 10, 0, 300, 100 } };
  const SteadJointProduct nothing[] = { { 0 }, { 0 } };
  gint64 shares[2] = { -7, -7 };

  g_assert_false (stead_joint_split (nothing, 2, STEAD_JOINT_PHYSICAL, 900, shares));
  g_assert_false (stead_joint_split (nothing, 2, STEAD_JOINT_CONSTANT_MARGIN, 900, shares));
  g_assert_cmpint (shares[0], ==, -7);
  /* What costs more to finish than it brings bears nothing by its net value. */
  g_assert_true (stead_joint_split (loss, 2, STEAD_JOINT_NRV, 900, shares));
  g_assert_cmpint (shares[0], ==, 0);
  g_assert_cmpint (shares[1], ==, 900);
  g_assert_cmpfloat_with_epsilon (stead_joint_further_cents (&loss[0]), -50, 1e-9);
}

/* OpenStax vol. 2, sections 10.3 and 10.5; Saylor appendix 7.10 (read). */
static void
test_choices (void)
{
  const SteadWay as_is = { .quantity = 200000, .price_cents = 110, .cost_cents = 30 };
  const SteadWay juice = { .quantity = 100000, .price_cents = 350, .cost_cents = 60, .fixed_cents = 20000000 };
  const double make[] = { 87, 45, 36 };
  const SteadPartialBudget greens = { .added_returns_cents = 50000, .reduced_costs_cents = 12000,
                                      .added_costs_cents = 30000, .reduced_returns_cents = 8000 };

  g_assert_cmpfloat_with_epsilon (stead_way_value_cents (&as_is), 16000000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_way_value_cents (&juice), 9000000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_avoidable_cents (make, 3, 120000), 20160000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_partial_budget_cents (&greens), 24000, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_accounting_return_frac (200000, 125000, 300000), 0.25, 1e-12);
  g_assert_true (isnan (stead_accounting_return_frac (1, 0, 0)));
}

/* OpenStax vol. 2, sections 4.5, 6.1, 8.2 (read). */
static void
test_overhead (void)
{
  const double pools[] = { 100, 300 };
  const double totals[] = { 10, 0 };
  const double use[] = { 5, 1 };

  g_assert_cmpfloat_with_epsilon (stead_overhead_rate (25000000, 100000), 250, 1e-9);
  g_assert_true (isnan (stead_overhead_rate (100, 0)));
  g_assert_cmpfloat_with_epsilon (stead_overhead_over_cents (3350, 6240, 20925000), -21000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_activity_total_cents (pools, totals, use, 1), 50, 1e-9);
  g_assert_true (isnan (stead_activity_total_cents (pools, totals, use, 2)));
  g_assert_cmpfloat_with_epsilon (stead_price_variance_cents (700, 900, 0.5), -100, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_quantity_variance_cents (700, 0.25, 0.5), -175, 1e-9);
}

/* OpenStax vol. 2, section 3.4 (read): fruit baskets. */
static void
test_mix (void)
{
  const double prices[] = { 60, 100, 80, 190 };
  const double costs[] = { 25, 75, 50, 150 };
  const double units[] = { 5, 3, 2, 1 };
  SteadMix mix = { prices, costs, units, 4, 35000 };

  g_assert_cmpfloat_with_epsilon (stead_mix_price_cents (&mix), 950, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_mix_margin_cents (&mix), 350, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_mix_even_baskets (&mix, 0), 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_mix_even_baskets (&mix, 3500), 110, 1e-9);
  g_assert_cmpfloat (stead_mix_basket_units (&mix), ==, 11);
  mix.variable_cents = prices;
  g_assert_true (isnan (stead_mix_even_baskets (&mix, 0)));
  /* Section 3.2: 200,000 at 20 percent. */
  g_assert_cmpfloat_with_epsilon (stead_ratio_even_cents (0.2, 20000000, 0), 1e8, 1e-3);
  g_assert_true (isnan (stead_ratio_even_cents (0, 1, 0)));
}

/* Saylor, section 6.7 (read): made 10,000, sold 9,000. */
static void
test_absorption (void)
{
  SteadMaking making = { .made_units = 10000, .sold_units = 9000, .price_cents = 2500, .variable_make_cents = 700,
                         .variable_sell_cents = 300, .fixed_make_cents = 4000000, .fixed_sell_cents = 2000000 };
  double gap;

  g_assert_cmpfloat_with_epsilon (stead_making_profit_cents (&making, STEAD_COSTING_ABSORPTION), 7900000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_making_profit_cents (&making, STEAD_COSTING_VARIABLE), 7500000, 1e-6);
  /* They part by the change in stock times the fixed cost of a unit. */
  gap = stead_making_stock_cents (&making, STEAD_COSTING_ABSORPTION)
        - stead_making_stock_cents (&making, STEAD_COSTING_VARIABLE);
  g_assert_cmpfloat_with_epsilon (gap, 1000 * 400, 1e-6);
  making.made_units = 0;
  g_assert_true (isnan (stead_making_unit_cents (&making, STEAD_COSTING_ABSORPTION)));
}

/* OpenStax vol. 2, section 2.3; Saylor section 5.2, Table 5.4 (read). */
static void
test_cost_line (void)
{
  const double activity[] = { 3500, 3750, 3800, 3400, 5800, 5500, 2900, 3300, 3600, 5900, 5600, 5000 };
  const double costs[] = { 230000, 250000, 260000, 220000, 340000, 330000, 200000, 210000, 240000, 380000,
                           350000, 290000 };
  const double same[] = { 5, 5 };
  g_autoptr(GError) error = NULL;
  SteadCostLine line = { -1, -1 };

  g_assert_true (stead_cost_line_high_low (activity, costs, 12, &line, NULL));
  g_assert_cmpfloat_with_epsilon (line.variable_cents, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_cost_line_at (&line, 6000), 386000, 1e-6);
  g_assert_true (stead_cost_line_fit (activity, costs, 12, &line, NULL));
  g_assert_cmpfloat_with_epsilon (line.variable_cents, 53.42, 0.005);
  g_assert_cmpfloat_with_epsilon (line.fixed_cents, 43276, 0.5);
  line = (SteadCostLine) { -1, -1 };
  g_assert_false (stead_cost_line_fit (same, costs, 2, &line, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpfloat (line.variable_cents, ==, -1);
}

/* Rutgers, geranium budget (read): 1,763 over 1,100 square feet and six weeks. */
static void
test_space (void)
{
  double rate = stead_space_rate_cents (176300, 1100, 6, 1);

  g_assert_cmpfloat_with_epsilon (rate, 26.71, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_space_charge_cents (rate, 1100, 6), 176300, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_space_rate_cents (60000, 400, 48, 0.8), 3.91, 0.005);
  g_assert_true (isnan (stead_space_rate_cents (1, 400, 48, 0)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/joint-cost/published", test_published);
  g_test_add_func ("/core/joint-cost/shares-sum", test_shares_sum);
  g_test_add_func ("/core/joint-cost/no-basis", test_no_basis);
  g_test_add_func ("/core/joint-cost/split-published", test_split_published);
  g_test_add_func ("/core/joint-cost/split-sums", test_split_sums);
  g_test_add_func ("/core/joint-cost/split-odd", test_split_odd);
  g_test_add_func ("/core/choice/published", test_choices);
  g_test_add_func ("/core/overhead/published", test_overhead);
  g_test_add_func ("/core/mix/published", test_mix);
  g_test_add_func ("/core/absorption/published", test_absorption);
  g_test_add_func ("/core/cost-line/published", test_cost_line);
  g_test_add_func ("/core/space/published", test_space);
  return g_test_run ();
}

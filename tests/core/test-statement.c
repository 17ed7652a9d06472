/* Recipes, the till, and the statements of a year. */
#include "core/stead-cash.h"
#include "core/stead-recipe.h"
#include "core/stead-statement.h"

#include <math.h>

/* Bakery and Business Math, chapter 25; culinary slides; foodservice text
 * supplement, p. 597; portion control example (all read). */
static void
test_recipe (void)
{
  const double quantities[] = { 4.625, 3, 75, 3 };
  const double costs[] = { 155, 560, 37.5, 26.875 };

  g_assert_cmpfloat_with_epsilon (stead_recipe_to_buy (32, 0.78), 41.03, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_recipe_usable_cents (186, 0.75), 248, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_recipe_yield_frac (10, 20), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_recipe_total_cents (quantities, costs, 4, STEAD_LINES_ROUNDED), 5291, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_recipe_total_cents (quantities, costs, 4, STEAD_LINES_UNROUNDED),
                                  5290, 0.5);
  g_assert_cmpint (stead_recipe_portions_per_pack (40, 2.5), ==, 16);
  g_assert_cmpint (stead_recipe_packs (300, 40, 2.5), ==, 19);
  g_assert_cmpint (stead_recipe_packs (304, 40, 2.5), ==, 19);
  g_assert_cmpint (stead_recipe_packs (305, 40, 2.5), ==, 20);
  g_assert_cmpint (stead_recipe_packs (1, 2, 3), ==, -1);
  g_assert_cmpfloat_with_epsilon (stead_recipe_scale (35, 0.185, 50, 0.230), 1.776, 0.0005);
  g_assert_true (isnan (stead_recipe_scale (0, 1, 2, 1)));
  g_assert_true (isnan (stead_recipe_usable_cents (1, 0)));
  g_assert_true (isnan (stead_recipe_to_buy (1, 0)));
  g_assert_true (isnan (stead_recipe_yield_frac (1, 0)));
  /* 0.3 into tenths is three, not two. */
  g_assert_cmpint (stead_recipe_portions_per_pack (0.3, 0.1), ==, 3);
}

/* An answered exercise on a stall's week (read): short 6 on the first day. */
static void
test_till (void)
{
  g_assert_cmpint (stead_till_over_cents (151600, 30000, 122200, 0), ==, -600);
  g_assert_cmpint (stead_till_deposit_cents (33115, 5000), ==, 28115);
  /* Money paid out with a signed slip is not missing. */
  g_assert_cmpint (stead_till_over_cents (23500, 4000, 21000, 1500), ==, 0);
  /* OpenStax vol. 1, section 8.4 (read). */
  g_assert_cmpint (stead_petty_over_cents (7500, 4500, 2500), ==, -500);
  g_assert_cmpint (stead_petty_refill_cents (7500, 3000), ==, 4500);
}

/* OpenStax vol. 1, section 8.6 (read): both sides come to 92,040. */
static void
test_bank (void)
{
  SteadBankCheck check = { .bank_cents = 7704000, .in_transit_cents = 3430000, .outstanding_cents = 962000,
                           .bank_error_cents = 32000 - 1000000, .book_cents = 3276000,
                           .additions_cents = 6180000, .deductions_cents = 252000 };

  g_assert_cmpint (stead_bank_side_cents (&check), ==, 9204000);
  g_assert_cmpint (stead_book_side_cents (&check), ==, 9204000);
}

/* Article on school fundraisers; a concession stand's page (read). */
static void
test_fundraiser (void)
{
  SteadShareOut share = { 113030, 50, 450, 126, 0.5 };

  g_assert_cmpfloat (stead_fundraiser_profit_cents (1000, 500, 200, 0), ==, 300000);
  g_assert_cmpint (stead_fundraiser_items_needed (120000, 500, 200, 4500), ==, 415);
  g_assert_cmpint (stead_fundraiser_items_needed (120001, 500, 200, 4500), ==, 416);
  g_assert_cmpint (stead_fundraiser_items_needed (1, 200, 200, 0), ==, -1);
  g_assert_cmpint (stead_fundraiser_items_needed (-500, 300, 200, 0), ==, 0);
  g_assert_cmpfloat (stead_fundraiser_items_accounted (120, 14, 2), ==, 104);
  g_assert_cmpfloat (stead_fundraiser_over_cents (51000, 104, 500), ==, -1000);
  g_assert_cmpfloat_with_epsilon (stead_share_out_first_cents (&share), 51565, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_share_out_second_cents (&share), 61465, 1e-9);
}

/* OpenStax vol. 1, sections 2.3, 5.3 and 16.3; Saylor, section 17.2 (read).  The farm:
 * Pennsylvania land-grant extension educator, accrual adjustments, table 1 (read). */
static void
test_statements (void)
{
  SteadAccrual farm = { .sales = 40000000, .cash_costs = 26000000, .depreciation = 3500000 };
  SteadAccrual year = { 1200000, 750000, 90000, 140000, 30000, 10000, 20000, 45000 };
  SteadCashFlow flow = { 4340, 14400 - 4800, 4500 - 700 - 2500 - 1800 + 400, 14800 - 60000,
                         10000 + 45000 - 440 };

  g_assert_cmpfloat (stead_accrual_net_cents (&year), ==, 475000);
  g_assert_cmpfloat (stead_accrual_net_cents (&farm), ==, 10500000);
  g_assert_cmpfloat (stead_cash_flow_operating_cents (&flow), ==, 13840);
  g_assert_cmpfloat (stead_cash_flow_change_cents (&flow), ==, 23200);
  g_assert_cmpfloat (stead_worth_end_cents (0, 12500, 5800, 1450), ==, 16850);
  g_assert_cmpfloat (stead_worth_cents (18700, 1850), ==, 16850);
  g_assert_cmpfloat (stead_working_capital_cents (26540, 5400), ==, 21140);
  g_assert_cmpfloat_with_epsilon (stead_current_ratio (26540, 5400), 4.91, 0.005);
  g_assert_true (isnan (stead_current_ratio (1, 0)));
  g_assert_cmpfloat (stead_purchases_cents (250000, -12000), ==, 238000);
  g_assert_cmpfloat (stead_production_cents (343100, 184050, 232650), ==, 391700);
  g_assert_cmpfloat (stead_cash_from_accrual_cents (STEAD_ACCRUAL_REVENUE, 480000, 19000, 0, 0), ==, 461000);
  g_assert_cmpfloat (stead_cash_from_accrual_cents (STEAD_ACCRUAL_EXPENSE, 30000, 0, 0, 4000), ==, 34000);
}

/* There and back is the same line. */
static void
test_accrual_and_back (void)
{
  for (int line = STEAD_ACCRUAL_REVENUE; line <= STEAD_ACCRUAL_EXPENSE; line++)
    for (double rise = -500; rise <= 500; rise += 125)
      {
        double accrual = stead_accrual_from_cash_cents ((SteadAccrualLine) line, 7000, rise, 2 * rise, 3 * rise);

        g_assert_cmpfloat (stead_cash_from_accrual_cents ((SteadAccrualLine) line, accrual, rise, 2 * rise,
                                                          3 * rise), ==, 7000);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/recipe/published", test_recipe);
  g_test_add_func ("/core/cash/till", test_till);
  g_test_add_func ("/core/cash/bank", test_bank);
  g_test_add_func ("/core/cash/fundraiser", test_fundraiser);
  g_test_add_func ("/core/statement/published", test_statements);
  g_test_add_func ("/core/statement/accrual-and-back", test_accrual_and_back);
  return g_test_run ();
}

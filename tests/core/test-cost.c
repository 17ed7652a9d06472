/* The cost sheet and first-in first-out. */
#include "core/stead-cost.h"

/* OpenStax Principles of Accounting vol. 1, section 10.2 (read). */
static void
test_fifo (void)
{
  SteadLayer layers[] = { { 150, 315000 }, { 225, 607500 } };
  double first;
  double second;

  g_assert_cmpfloat (stead_cost_fifo (layers, 1, 120, &first), ==, 0);
  g_assert_cmpfloat (stead_cost_fifo (layers, 2, 180, &second), ==, 0);
  g_assert_cmpfloat_with_epsilon (first + second, 720000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_cost_fifo (layers, 2, 100, &first), 25, 1e-9);
  g_assert_cmpfloat_with_epsilon (first, 75 * 2700, 1e-6);
}

static void
test_sheet (void)
{
  SteadCostSheet sheet = { .made_units = 110, .good_units = 100 };

  sheet.parts[STEAD_COST_FEED] = (SteadCostPart) { .total_cents = 11055, .gift_cents = 1000 };
  sheet.parts[STEAD_COST_PACKAGING] = (SteadCostPart) { .unit_cents = 35.4 };
  sheet.parts[STEAD_COST_LABOR] = (SteadCostPart) { .total_cents = 50000 };
  stead_cost_sheet_settle (&sheet);
  g_assert_cmpint (sheet.parts[STEAD_COST_FEED].shown_cents, ==, 111);
  g_assert_cmpint (sheet.parts[STEAD_COST_PACKAGING].shown_cents, ==, 35);
  g_assert_cmpfloat_with_epsilon (sheet.parts[STEAD_COST_PACKAGING].total_cents, 3540, 1e-9);
  g_assert_cmpint (sheet.unit_cents, ==, 146);
  g_assert_cmpint (sheet.unit_labor_cents, ==, 646);
  g_assert_cmpint (sheet.unit_cash_cents, ==, 136);
  g_assert_cmpfloat_with_epsilon (sheet.loss_unit_cents, 110.55 - 11055 / 110.0, 1e-9);
}

static void
test_nothing_to_divide_by (void)
{
  SteadCostSheet sheet = { .made_units = 10, .good_units = 0, .unit_cents = 7 };

  sheet.parts[STEAD_COST_FEED].total_cents = 500;
  stead_cost_sheet_settle (&sheet);
  g_assert_cmpint (sheet.unit_cents, ==, 0);
  g_assert_cmpint (sheet.parts[STEAD_COST_FEED].shown_cents, ==, 0);
  g_assert_cmpfloat (sheet.parts[STEAD_COST_FEED].total_cents, ==, 500);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/cost/fifo", test_fifo);
  g_test_add_func ("/core/cost/sheet", test_sheet);
  g_test_add_func ("/core/cost/nothing-to-divide-by", test_nothing_to_divide_by);
  return g_test_run ();
}

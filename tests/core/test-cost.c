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

/* Layers are used oldest first, money and goods are never lost, whatever is taken. */
static void
test_fifo_keeps_all (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (4);

  for (int round = 0; round < 2000; round++)
    {
      SteadLayer layers[6];
      double quantity = 0, cents = 0, taken_cents = 0, missing = 0, taken = 0;

      for (int i = 0; i < 6; i++)
        {
          layers[i] = (SteadLayer) { g_rand_double_range (rand, 0.1, 50), g_rand_int_range (rand, 0, 9999) };
          quantity += layers[i].quantity;
          cents += layers[i].cost_cents;
        }
      for (int take = 0; take < 5; take++)
        {
          double want = g_rand_double_range (rand, 0, 80);
          double cost = -1;

          missing = stead_cost_fifo (layers, 6, want, &cost);
          taken += want - missing;
          taken_cents += cost;
          for (int i = 0; i < 6; i++)
            g_assert_cmpfloat (layers[i].quantity, >=, 0);
        }
      for (int i = 0; i < 6; i++)
        {
          quantity -= layers[i].quantity;
          cents -= layers[i].cost_cents;
        }
      g_assert_cmpfloat_with_epsilon (taken, quantity, 1e-9);
      g_assert_cmpfloat_with_epsilon (taken_cents, cents, 1e-6);
    }
}

static void
test_fifo_oldest_first (void)
{
  SteadLayer layers[] = { { 10, 100 }, { 10, 200 }, { 10, 300 } };
  double cost = 0;

  g_assert_cmpfloat (stead_cost_fifo (layers, 3, 15, &cost), ==, 0);
  g_assert_cmpfloat (cost, ==, 200);
  g_assert_cmpfloat (layers[0].quantity, ==, 0);
  g_assert_cmpfloat (layers[1].quantity, ==, 5);
  g_assert_cmpfloat (layers[1].cost_cents, ==, 100);
  g_assert_cmpfloat (layers[2].quantity, ==, 10);
}

/* The shown total is the sum of the shown lines; with no gifts, cash is the same. */
static void
test_sheet_adds_up (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (3);

  for (int round = 0; round < 2000; round++)
    {
      SteadCostSheet sheet = { .made_units = g_rand_double_range (rand, 10, 500) };
      gint64 sum = 0;

      sheet.good_units = sheet.made_units * g_rand_double_range (rand, 0.5, 1);
      for (SteadCostKind kind = 0; kind < STEAD_N_COST_KINDS; kind++)
        if (kind == STEAD_COST_PACKAGING)
          sheet.parts[kind].unit_cents = g_rand_double_range (rand, 0, 60);
        else
          sheet.parts[kind].total_cents = g_rand_double_range (rand, 0, 99999);
      stead_cost_sheet_settle (&sheet);
      for (SteadCostKind kind = 0; kind < STEAD_COST_LABOR; kind++)
        sum += sheet.parts[kind].shown_cents;
      g_assert_cmpint (sheet.unit_cents, ==, sum);
      g_assert_cmpint (sheet.unit_cash_cents, ==, sum);
      g_assert_cmpint (sheet.unit_labor_cents, ==, sum + sheet.parts[STEAD_COST_LABOR].shown_cents);
      g_assert_cmpfloat (sheet.loss_unit_cents, >=, 0);
      g_assert_cmpfloat (sheet.loss_unit_cents, <, (double) sheet.unit_cents + 4);
    }
}

/* Foodservice text supplement, p. 597 (read): four lines of an egg bake add up to
 * 52.91 as shown, though unrounded they make 52.90. */
static void
test_shown_lines_add_up (void)
{
  SteadCostSheet sheet = { .made_units = 1, .good_units = 1 };

  sheet.parts[STEAD_COST_FEED].total_cents = 4.625 * 155;
  sheet.parts[STEAD_COST_START].total_cents = 3 * 560;
  sheet.parts[STEAD_COST_BEDDING].total_cents = 75 * 37.5;
  sheet.parts[STEAD_COST_SUPPLIES].total_cents = 3 * 26.875;
  stead_cost_sheet_settle (&sheet);
  g_assert_cmpint (sheet.parts[STEAD_COST_FEED].shown_cents, ==, 717);
  g_assert_cmpint (sheet.parts[STEAD_COST_BEDDING].shown_cents, ==, 2813);
  g_assert_cmpint (sheet.unit_cents, ==, 5291);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/cost/fifo", test_fifo);
  g_test_add_func ("/core/cost/sheet", test_sheet);
  g_test_add_func ("/core/cost/nothing-to-divide-by", test_nothing_to_divide_by);
  g_test_add_func ("/core/cost/fifo-keeps-all", test_fifo_keeps_all);
  g_test_add_func ("/core/cost/fifo-oldest-first", test_fifo_oldest_first);
  g_test_add_func ("/core/cost/sheet-adds-up", test_sheet_adds_up);
  g_test_add_func ("/core/cost/shown-lines-add-up", test_shown_lines_add_up);
  return g_test_run ();
}

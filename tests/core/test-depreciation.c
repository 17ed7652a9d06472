/* Depreciation against worked examples. */
#include "core/stead-depreciation.h"

#include <math.h>

/* OpenStax Principles of Accounting vol. 1, section 11.3 (read): a printing
 * press, 58,000 with a salvage value of 10,000 and a life of five years. */
static const SteadDepreciable press = {
  .method = STEAD_DEPRECIATION_DOUBLE_DECLINING, .basis_cents = 5800000, .salvage_cents = 1000000,
  .life_years = 5, .life_units = 960000,
};

static void
test_straight_line (void)
{
  SteadDepreciable thing = press;

  thing.method = STEAD_DEPRECIATION_STRAIGHT_LINE;
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&thing, 0, 1), 960000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&thing, 4.5, 9), 480000, 1e-6);
  g_assert_cmpfloat (stead_depreciation_between (&thing, 6, 7), ==, 0);
}

static void
test_declining (void)
{
  double sum = 0;

  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&press, 0, 1), 2320000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&press, 1, 2), 1392000, 1e-6);
  for (int year = 0; year < 8; year++)
    sum += stead_depreciation_between (&press, year, year + 1);
  g_assert_cmpfloat_with_epsilon (sum, 4800000, 1e-6);
}

static void
test_units (void)
{
  SteadDepreciable thing = press;

  thing.method = STEAD_DEPRECIATION_UNITS;
  g_assert_cmpfloat_with_epsilon (stead_depreciation_unit_rate (&thing), 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_for_use (&thing, 0, 180000), 900000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_for_use (&thing, 950000, 20000), 50000, 1e-6);
}

/* The same press by double declining balance, all five years (read): 23,200,
 * 13,920, 8,352, 2,528, nothing; and the building of Saylor, Financial
 * Accounting, section 10.3 (read), whose last year takes what is left. */
static void
test_declining_published (void)
{
  static const double charges[] = { 2320000, 1392000, 835200, 252800, 0 };
  SteadDepreciable building = { .method = STEAD_DEPRECIATION_DOUBLE_DECLINING, .basis_cents = 60000000,
                                .salvage_cents = 3000000, .life_years = 5 };

  for (int year = 0; year < 5; year++)
    g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&press, year, year + 1), charges[year], 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&building, 3, 4), 5184000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&building, 4, 5), 4776000, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_depreciation_book_value (&building, 2), 21600000, 1e-6);
  /* A life typed with too many zeros takes no longer to compute. */
  building.life_years = 1e13;
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&building, 1e12, 1e12 + 1), 0, 1e-3);
  building.life_years = 5;
  /* Half of the last year carries half of what the whole of it takes. */
  g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&building, 4, 4.5), 2388000, 1e-6);
}

/* Value never rises, never passes salvage, and spans add up to their whole. */
static void
test_spans_add_up (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (10);

  for (int round = 0; round < 2000; round++)
    {
      SteadDepreciable thing = { .method = (SteadDepreciationMethod) (round % 2),
                                 .basis_cents = g_rand_int_range (rand, 1000, 1000000),
                                 .life_years = g_rand_int_range (rand, 2, 80) / 4.0 };
      double a = g_rand_double_range (rand, 0, 12);
      double b = a + g_rand_double_range (rand, 0, 12);
      double c = b + g_rand_double_range (rand, 0, 12);

      thing.salvage_cents = floor (thing.basis_cents * g_rand_double (rand));
      g_assert_cmpfloat (stead_depreciation_between (&thing, a, b), >=, -1e-9);
      g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&thing, a, b)
                                      + stead_depreciation_between (&thing, b, c),
                                      stead_depreciation_between (&thing, a, c), 1e-6);
      g_assert_cmpfloat (stead_depreciation_book_value (&thing, c), >=, thing.salvage_cents - 1e-6);
      g_assert_cmpfloat_with_epsilon (stead_depreciation_between (&thing, 0, thing.life_years),
                                      thing.basis_cents - thing.salvage_cents, 1e-6);
    }
}

/* Colorado State University Extension 3.766 (read). */
static void
test_what_is_depreciated (void)
{
  g_assert_true (stead_thing_is_depreciated (STEAD_THING_FENCE));
  g_assert_true (stead_thing_is_depreciated (STEAD_THING_BREEDING_STOCK));
  g_assert_false (stead_thing_is_depreciated (STEAD_THING_SUPPLIES));
  g_assert_false (stead_thing_is_depreciated (STEAD_THING_MARKET_STOCK));
}

static void
test_misuse (void)
{
  SteadDepreciable thing = press;

  if (g_test_subprocess ())
    {
      thing.method = STEAD_DEPRECIATION_UNITS;
      g_assert_cmpfloat (stead_depreciation_between (&thing, 0, 1), ==, 0);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*STEAD_DEPRECIATION_UNITS*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/depreciation/straight-line", test_straight_line);
  g_test_add_func ("/core/depreciation/declining", test_declining);
  g_test_add_func ("/core/depreciation/units", test_units);
  g_test_add_func ("/core/depreciation/declining-published", test_declining_published);
  g_test_add_func ("/core/depreciation/spans-add-up", test_spans_add_up);
  g_test_add_func ("/core/depreciation/what-is-depreciated", test_what_is_depreciated);
  g_test_add_func ("/core/depreciation/misuse", test_misuse);
  return g_test_run ();
}

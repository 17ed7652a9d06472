/* Depreciation against worked examples. */
#include "core/stead-depreciation.h"

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

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/depreciation/straight-line", test_straight_line);
  g_test_add_func ("/core/depreciation/declining", test_declining);
  g_test_add_func ("/core/depreciation/units", test_units);
  return g_test_run ();
}

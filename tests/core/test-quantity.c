/* Amounts: text both ways, factors, refusals. */
#include "core/stead-core-error.h"
#include "core/stead-quantity.h"

#include <locale.h>
#include <math.h>

static double
read_amount (const char     *text,
             SteadDimension  dimension)
{
  g_autoptr(GError) error = NULL;
  double base = NAN;

  g_test_message ("%s", text);
  g_assert_true (stead_quantity_parse (text, dimension, stead_unit_default (dimension, STEAD_UNITS_US),
                                       &base, NULL, &error));
  g_assert_no_error (error);
  return base;
}

/* NIST Special Publication 811 (2008), appendix B.8. */
static void
test_factors (void)
{
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("lb")->factor, 0.45359237, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("oz")->factor, 0.028349523125, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("ton")->factor, 907.18474, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("gal")->factor, 3.785411784, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("cup")->factor, 0.2365882365, 1e-10);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("floz")->factor, 0.02957353, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("tbsp")->factor, 0.01478676, 1e-8);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("tsp")->factor, 0.004928922, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_unit_by_id ("sqft")->factor, 0.09290304, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_quantity_to_base (212, stead_unit_by_id ("degF")), 100, 1e-9);
}

static void
test_parse (void)
{
  g_assert_cmpfloat_with_epsilon (read_amount ("2 lb 4 oz", STEAD_DIMENSION_MASS), 2.25 * 0.45359237, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("6.8", STEAD_DIMENSION_MASS), 6.8 * 0.45359237, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("250 g", STEAD_DIMENSION_MASS), 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("1½ cups", STEAD_DIMENSION_VOLUME), 1.5 * 0.2365882365, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("1 1/2 cups", STEAD_DIMENSION_VOLUME), 1.5 * 0.2365882365, 1e-12);
  g_assert_cmpfloat (read_amount ("3 doz", STEAD_DIMENSION_COUNT), ==, 36);
  g_assert_cmpfloat (read_amount ("3 doz 4", STEAD_DIMENSION_COUNT), ==, 40);
  g_assert_cmpfloat (read_amount ("2 docenas", STEAD_DIMENSION_COUNT), ==, 24);
  g_assert_cmpfloat_with_epsilon (read_amount ("-4 F", STEAD_DIMENSION_TEMPERATURE), -20, 1e-9);
  g_assert_cmpfloat (read_amount ("4 m2", STEAD_DIMENSION_AREA), ==, 4);
}

static void
test_refused (void)
{
  static const struct { const char *text; SteadDimension dimension; SteadCoreError code; } cases[] = {
    { "", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "nan", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "inf lb", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "3 gal", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_UNIT },
    { "3 bushels", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_UNIT },
    { "-3 lb", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_RANGE },
    { "4 oz 2 lb", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "1/0 cup", STEAD_DIMENSION_VOLUME, STEAD_CORE_ERROR_PARSE },
    { "9999999999999", STEAD_DIMENSION_COUNT, STEAD_CORE_ERROR_RANGE },
    { "1e300", STEAD_DIMENSION_COUNT, STEAD_CORE_ERROR_UNIT },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      const SteadUnit *unit = NULL;
      double base = -7;

      g_test_message ("%s", cases[i].text);
      g_assert_false (stead_quantity_parse (cases[i].text, cases[i].dimension,
                                            stead_unit_default (cases[i].dimension, STEAD_UNITS_US),
                                            &base, &unit, &error));
      g_assert_error (error, STEAD_CORE_ERROR, (int) cases[i].code);
      g_assert_cmpfloat (base, ==, -7);
      g_assert_null (unit);
    }
}

static void
test_format (void)
{
  static const struct { double value; const char *unit, *text; } cases[] = {
    { 6.8, "lb", "6.8 lb" }, { 3, "doz", "3 doz" }, { 72, "degF", "72 °F" }, { 22, "ea", "22" },
    { 1, "cup", "1 cup" }, { 1.5, "cup", "1.5 cups" }, { 0.0042, "lb", "0.0042 lb" },
    { 12345, "kg", "12,345 kg" }, { 40, "sqft", "40 sq ft" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SteadUnit *unit = stead_unit_by_id (cases[i].unit);
      g_autofree char *text = stead_quantity_format (stead_quantity_to_base (cases[i].value, unit), unit);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static void
test_mixed (void)
{
  static const struct { double value; const char *unit, *text; } cases[] = {
    { 2.25, "lb", "2 lb 4 oz" }, { 2, "lb", "2 lb" }, { 0.25, "lb", "4 oz" },
    { 15.999 / 16, "lb", "1 lb" }, { 40 / 12.0, "doz", "3 doz 4" }, { 6.25, "ft", "6 ft 3 in" },
    { 1.5, "kg", "1.5 kg" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SteadUnit *unit = stead_unit_by_id (cases[i].unit);
      g_autofree char *text = stead_quantity_format_mixed (stead_quantity_to_base (cases[i].value, unit), unit);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/quantity/factors", test_factors);
  g_test_add_func ("/core/quantity/parse", test_parse);
  g_test_add_func ("/core/quantity/refused", test_refused);
  g_test_add_func ("/core/quantity/format", test_format);
  g_test_add_func ("/core/quantity/mixed", test_mixed);
  return g_test_run ();
}

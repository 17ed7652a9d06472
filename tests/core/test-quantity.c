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

/* NIST Special Publication 811 (2008), appendix B.8 (from memory). */
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
  g_assert_cmpfloat (read_amount ("4m²", STEAD_DIMENSION_AREA), ==, 4);
  g_assert_cmpfloat_with_epsilon (read_amount ("10 sq ft", STEAD_DIMENSION_AREA), 0.9290304, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("2ft2", STEAD_DIMENSION_AREA), 2 * 0.09290304, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("6' 3\"", STEAD_DIMENSION_LENGTH), 6.25 * 0.3048, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("6 ft 3", STEAD_DIMENSION_LENGTH), 6.25 * 0.3048, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("2lb4oz", STEAD_DIMENSION_MASS), 2.25 * 0.45359237, 1e-12);
  g_assert_cmpfloat_with_epsilon (read_amount ("1,5 kg", STEAD_DIMENSION_MASS), 1.5, 1e-12);
  /* The ounce of a liquid is a fluid ounce; "c" beside a temperature is Celsius. */
  g_assert_cmpfloat_with_epsilon (read_amount ("8 oz", STEAD_DIMENSION_VOLUME), 0.2365882365, 1e-12);
  g_assert_cmpfloat (read_amount ("22 c", STEAD_DIMENSION_TEMPERATURE), ==, 22);
  g_assert_cmpfloat_with_epsilon (read_amount ("72", STEAD_DIMENSION_TEMPERATURE), 40 / 1.8, 1e-12);
}

/* Every unit by its id, its symbol, and what people write for it. */
static void
test_spellings (void)
{
  static const struct { const char *text, *id; } cases[] = {
    { "lbs", "lb" }, { "Pound", "lb" }, { "#", "lb" }, { "LB.", "lb" }, { "libras", "lb" },
    { "Ounces", "oz" }, { "onza", "oz" }, { "Gramos", "g" }, { "kilo", "kg" }, { "short tons", "ton" },
    { "dozen", "doz" }, { "DOCENA", "doz" }, { "huevos", "ea" }, { "eggs", "ea" },
    { "T", "tbsp" }, { "t", "tsp" }, { "Tbsp.", "tbsp" }, { "cucharadita", "tsp" }, { "c", "cup" },
    { "tazas", "cup" }, { "fl. oz.", "floz" }, { "fl  oz", "floz" }, { "pints", "pt" }, { "qts", "qt" },
    { "Galón", "gal" }, { "galon", "gal" }, { "litre", "l" }, { "mL", "ml" }, { "cc", "ml" },
    { "square feet", "sqft" }, { "ft²", "sqft" }, { "m²", "m2" }, { "metros cuadrados", "m2" },
    { "inches", "in" }, { "\"", "in" }, { "'", "ft" }, { "pies", "ft" }, { "Meters", "m" },
    { "°F", "degF" }, { "F", "degF" }, { "C", "degC" }, { "celsius", "degC" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SteadUnit *unit = stead_unit_from_text (cases[i].text);

      g_test_message ("%s", cases[i].text);
      g_assert_nonnull (unit);
      g_assert_cmpstr (unit->id, ==, cases[i].id);
    }
  g_assert_null (stead_unit_from_text (""));
  g_assert_null (stead_unit_from_text ("bushel"));
  g_assert_null (stead_unit_from_text ("\xff"));
  g_assert_null (stead_unit_by_id ("LB"));
  g_assert_null (stead_unit_by_id (NULL));
}

/* The lists hold each unit once, small to large, and each is found again. */
static void
test_lists (void)
{
  gsize all = 0;

  for (SteadDimension d = STEAD_DIMENSION_COUNT; d <= STEAD_DIMENSION_TEMPERATURE; d++)
    {
      gsize n = 0;
      const SteadUnit * const *units = stead_unit_list (d, &n);

      for (gsize i = 0; i < n; i++)
        {
          g_assert_cmpint (units[i]->dimension, ==, d);
          g_assert_true (stead_unit_by_id (units[i]->id) == units[i]);
          g_assert_true (stead_unit_from_text (units[i]->id) == units[i]);
          g_assert_true (stead_unit_from_text (stead_unit_symbol (units[i])) == units[i]);
          if (i > 0)
            g_assert_cmpfloat (units[i - 1]->factor, <, units[i]->factor);
        }
      all += n;
      for (SteadUnitSystem system = STEAD_UNITS_US; system <= STEAD_UNITS_METRIC; system++)
        g_assert_cmpint (stead_unit_default (d, system)->dimension, ==, d);
    }
  g_assert_cmpuint (all, ==, 24);
  g_assert_cmpstr (stead_unit_default (STEAD_DIMENSION_MASS, STEAD_UNITS_US)->id, ==, "lb");
  g_assert_cmpstr (stead_unit_default (STEAD_DIMENSION_VOLUME, STEAD_UNITS_METRIC)->id, ==, "l");
  g_assert_cmpstr (stead_unit_default (STEAD_DIMENSION_LENGTH, STEAD_UNITS_US)->id, ==, "ft");
}

static void
test_round_trip (void)
{
  static const double limits[] = { 0, 1e-9, 0.001, 1, 12345.678, 1e12 };

  for (SteadDimension d = STEAD_DIMENSION_COUNT; d <= STEAD_DIMENSION_TEMPERATURE; d++)
    {
      gsize n = 0;
      const SteadUnit * const *units = stead_unit_list (d, &n);

      for (gsize u = 0; u < n; u++)
        for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
          {
            double back = stead_quantity_from_base (stead_quantity_to_base (limits[i], units[u]), units[u]);

            g_assert_cmpfloat_with_epsilon (back, limits[i], 1e-12 * MAX (100, limits[i]));
          }
    }
}

static void
test_numbers (void)
{
  static const struct { const char *text; double value; } cases[] = {
    { "12", 12 }, { "1,234.5", 1234.5 }, { "1.234,5", 1234.5 }, { "4,5", 4.5 }, { "1/2", 0.5 },
    { "1 1/2", 1.5 }, { "1-1/2", 1.5 }, { "1½", 1.5 }, { "1 ½", 1.5 }, { "½", 0.5 }, { "⅔", 2.0 / 3 },
    { "−3", -3 }, { "- 3", -3 }, { "+3", 3 }, { "-1/2", -0.5 }, { ".5", 0.5 }, { "5.", 5 }, { ",5", 0.5 },
    { "1\u202f234", 1234 }, { "1 234 567", 1234567 }, { "1⁄4", 0.25 }, { "1 / 4", 0.25 },
    { "\u0663\u066b\u0665", NAN }, { "\u0661\u0662", 12 }, { " 7 ", 7 }, { "0.5", 0.5 }, { "007", 7 },
    { "1'234'567", 1234567 }, { "3/2", 1.5 }, { "0,500", 0.5 }, { "0", 0 },
    { "1234,567", 1234.567 }, { "1 10/16", 1.625 }, { "1 100/200", 1.5 }, { "1 234/567", 1 + 234.0 / 567 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double value = -77;
      gboolean read = stead_number_parse (cases[i].text, &value, NULL);

      g_test_message ("%s", cases[i].text);
      g_assert_cmpint (read, ==, !isnan (cases[i].value));
      g_assert_cmpfloat_with_epsilon (value, read ? cases[i].value : -77, 1e-12);
    }
}

static void
test_numbers_refused (void)
{
  static const struct { const char *text; SteadCoreError code; } cases[] = {
    { "", STEAD_CORE_ERROR_PARSE }, { "   ", STEAD_CORE_ERROR_PARSE }, { "nan", STEAD_CORE_ERROR_PARSE },
    { "inf", STEAD_CORE_ERROR_PARSE }, { "1e5", STEAD_CORE_ERROR_PARSE }, { "0x1F", STEAD_CORE_ERROR_PARSE },
    { "1/0", STEAD_CORE_ERROR_PARSE }, { "2 1/0", STEAD_CORE_ERROR_PARSE }, { "1 3/2", STEAD_CORE_ERROR_PARSE },
    { "1/2/3", STEAD_CORE_ERROR_PARSE }, { "1.5 1/2", STEAD_CORE_ERROR_PARSE }, { "1,23,4", STEAD_CORE_ERROR_PARSE },
    { "1.2.3", STEAD_CORE_ERROR_PARSE }, { "1,234,56", STEAD_CORE_ERROR_PARSE },
    { "1234,567,890", STEAD_CORE_ERROR_PARSE }, { "--3", STEAD_CORE_ERROR_PARSE },
    { "3-", STEAD_CORE_ERROR_PARSE }, { ".", STEAD_CORE_ERROR_PARSE }, { "12 34", STEAD_CORE_ERROR_PARSE },
    { "1000000000001", STEAD_CORE_ERROR_RANGE }, { "9999999999999999999999999", STEAD_CORE_ERROR_RANGE },
    { "\xff\xfe", STEAD_CORE_ERROR_PARSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      double value = -77;

      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_false (stead_number_parse (cases[i].text, &value, &error));
      g_assert_error (error, STEAD_CORE_ERROR, (int) cases[i].code);
      g_assert_cmpfloat (value, ==, -77);
    }
}

/* A message names what was typed and says what to type instead. */
static void
test_messages (void)
{
  g_autoptr(GError) wrong_kind = NULL;
  g_autoptr(GError) unknown = NULL;
  g_autoptr(GError) too_long = NULL;
  g_autofree char *longest = g_strnfill (5000, '1');
  double base;

  g_assert_false (stead_quantity_parse ("3 gal", STEAD_DIMENSION_MASS, stead_unit_by_id ("lb"), &base,
                                        NULL, &wrong_kind));
  g_assert_cmpstr (wrong_kind->message, ==,
                   "“gal” measures another kind of thing. Type a weight, such as 2 lb 4 oz or 1.5 kg.");
  g_assert_false (stead_quantity_parse ("3 bu", STEAD_DIMENSION_VOLUME, stead_unit_by_id ("gal"), &base,
                                        NULL, &unknown));
  g_assert_cmpstr (unknown->message, ==,
                   "“bu” is not a unit that is known here. Type a volume, such as 1 1/2 cups, 5 gal or 2 L.");
  g_assert_false (stead_number_parse (longest, &base, &too_long));
  g_assert_error (too_long, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE);
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
    { "900000000000 ton", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_RANGE },
    { "2 oz 3", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "2 lb 3 lb", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "70 F 2 C", STEAD_DIMENSION_TEMPERATURE, STEAD_CORE_ERROR_PARSE },
    { "lb", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "+", STEAD_DIMENSION_MASS, STEAD_CORE_ERROR_PARSE },
    { "-", STEAD_DIMENSION_TEMPERATURE, STEAD_CORE_ERROR_PARSE },
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
    { 12345, "kg", "12,345 kg" }, { 40, "sqft", "40 sq ft" }, { 250.4, "g", "250 g" },
    { 4.53, "g", "4.5 g" }, { 1, "ton", "1 ton" }, { 2, "ton", "2 tons" }, { -4, "degF", "−4 °F" },
    { 0.04, "degC", "0 °C" }, { 0, "lb", "0 lb" }, { 2.5, "doz", "2.5 doz" }, { 0.9999, "cup", "1 cup" },
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
    { 1.5, "kg", "1.5 kg" }, { 4 / 12.0, "doz", "0 doz 4" }, { 0, "lb", "0 lb" },
    { 1, "doz", "1 doz" }, { 23 / 12.0, "doz", "1 doz 11" }, { 1234 + 5 / 16.0, "lb", "1,234 lb 5 oz" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SteadUnit *unit = stead_unit_by_id (cases[i].unit);
      g_autofree char *text = stead_quantity_format_mixed (stead_quantity_to_base (cases[i].value, unit), unit);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* What is printed in two units is read as the same amount. */
static void
test_mixed_round_trip (void)
{
  static const char * const ids[] = { "lb", "doz", "ft" };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    for (int n = 0; n < 2000; n++)
      {
        const SteadUnit *unit = stead_unit_by_id (ids[i]);
        double base = n * unit->factor / (unit->dimension == STEAD_DIMENSION_MASS ? 16 : 12);
        g_autofree char *text = stead_quantity_format_mixed (base, unit);
        double back = NAN;

        g_assert_true (stead_quantity_parse (text, unit->dimension, unit, &back, NULL, NULL));
        g_assert_cmpfloat_with_epsilon (back, base, 1e-9 * MAX (1, base));
      }
}

static void
test_null (void)
{
  double base;

  if (g_test_subprocess ())
    {
      g_assert_false (stead_quantity_parse (NULL, STEAD_DIMENSION_MASS, stead_unit_by_id ("lb"), &base, NULL, NULL));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*text != NULL*");
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/quantity/factors", test_factors);
  g_test_add_func ("/core/quantity/parse", test_parse);
  g_test_add_func ("/core/quantity/spellings", test_spellings);
  g_test_add_func ("/core/quantity/lists", test_lists);
  g_test_add_func ("/core/quantity/round-trip", test_round_trip);
  g_test_add_func ("/core/quantity/numbers", test_numbers);
  g_test_add_func ("/core/quantity/numbers-refused", test_numbers_refused);
  g_test_add_func ("/core/quantity/messages", test_messages);
  g_test_add_func ("/core/quantity/refused", test_refused);
  g_test_add_func ("/core/quantity/mixed-round-trip", test_mixed_round_trip);
  g_test_add_func ("/core/quantity/null", test_null);
  g_test_add_func ("/core/quantity/format", test_format);
  g_test_add_func ("/core/quantity/mixed", test_mixed);
  return g_test_run ();
}

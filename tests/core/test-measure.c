/* test-measure.c - cups, pounds and pieces of one thing.
 *
 * Units: NIST Special Publication 811, appendix B (from memory).  Household weights:
 * USDA FoodData Central (from memory): a cup of wheat flour 125 g, of sugar 200 g, a
 * large egg without its shell 50 g.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-measure.h"

#include <math.h>
#include <string.h>

#define CUP_L (3.785411784 / 16)
#define LB 0.45359237

static const SteadMeasure flour = { "Flour", STEAD_DIMENSION_MASS, 0.125 / CUP_L, 0 };
static const SteadMeasure eggs = { "Eggs", STEAD_DIMENSION_COUNT, NAN, 0.05 };
static const SteadMeasure milk = { "Milk", STEAD_DIMENSION_VOLUME, 0, 0 };
static const SteadMeasure melons = { "Melons", STEAD_DIMENSION_COUNT, 0.6, 2 };

typedef struct
{
  const SteadMeasure *measure;
  double              amount;
  const char         *unit;
  double              base;
} Row;

static void
test_rows (void)
{
  static const Row rows[] = {
    { &flour, 1, "cup", 0.125 },
    { &flour, 4, "cup", 0.5 },
    { &flour, 1, "lb", LB },
    { &flour, 16, "oz", LB },
    { &flour, 48, "tsp", 0.125 },        /* 48 teaspoons are a cup */
    { &eggs, 1, "doz", 12 },
    { &eggs, 250, "g", 5 },
    { &milk, 16, "cup", 3.785411784 },   /* a gallon */
    { &melons, 1, "l", 0.3 },            /* through its weight: 0.6 kg of 2 kg */
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SteadUnit *unit = stead_unit_by_id (rows[i].unit);
      g_autoptr(GError) error = NULL;
      double base = NAN, back = NAN;

      g_assert_true (stead_measure_to_base (rows[i].measure, rows[i].amount, unit, &base, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (base, rows[i].base, 1e-12);
      g_assert_true (stead_measure_from_base (rows[i].measure, base, unit, &back, &error));
      g_assert_cmpfloat_with_epsilon (back, rows[i].amount, 1e-12);
    }
  g_assert_cmpfloat_with_epsilon (stead_measure_kg (&eggs, 12), 0.6, 1e-12);
  g_assert_true (isnan (stead_measure_kg (&milk, 1)));
  g_assert_cmpfloat_with_epsilon (stead_density_from (2, stead_unit_by_id ("cup"), 0.25), 0.125 / CUP_L, 1e-12);
  g_assert_true (isnan (stead_density_from (2, stead_unit_by_id ("lb"), 0.25)));
}

static void
refused (const SteadMeasure *measure,
         const char         *unit,
         const char         *words)
{
  g_autoptr(GError) error = NULL;
  double base = 7;

  g_assert_false (stead_measure_to_base (measure, 1, stead_unit_by_id (unit), &base, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT);
  g_assert_nonnull (strstr (error->message, words));
  g_assert_nonnull (strstr (error->message, measure->name));
  g_assert_cmpfloat (base, ==, 7);
}

/* What is missing is asked for by name, and never guessed. */
static void
test_asks (void)
{
  refused (&eggs, "cup", "What a cup of");
  refused (&flour, "ea", "one piece");
  refused (&milk, "lb", "What a cup of");
  refused (&milk, "ea", "What a cup of");
  refused (&flour, "ft", "does not measure");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/measure/weight-leads-from-cups-to-pieces", test_rows);
  g_test_add_func ("/core/measure/asks-for-what-is-missing", test_asks);
  return g_test_run ();
}

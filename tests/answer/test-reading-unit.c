/* test-reading-unit.c - the units of a water test: as kits name them, and what the file keeps of each.
 *
 * Standard atomic weights: N 14.007, O 15.999, H 1.008.  A German degree of hardness is 17.85 mg/L as CaCO3.
 */
#include "farm.h"

#include "answer/stead-reading-unit.h"

#include <math.h>
#include <string.h>

#define N 14.007
#define O 15.999
#define H 1.008

/* Each unit of each reading is found by its id, has a symbol, and brings a number there and back. */
static void
test_round_trip (void)
{
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      gsize n;
      const SteadReadingUnit *units = stead_reading_units ((SteadReading) i, &n);

      g_assert_cmpint ((int) (n == 0), ==, (int) (i == STEAD_READING_PH));
      for (gsize k = 0; k < n; k++)
        {
          g_assert_true (stead_reading_unit_by_id ((SteadReading) i, units[k].id, STEAD_UNITS_US) == &units[k]);
          g_assert_cmpuint (strlen (stead_reading_unit_symbol (&units[k])), >, 0);
          g_assert_cmpfloat_with_epsilon (
            stead_reading_to_unit (stead_reading_from_unit (3.5, (SteadReading) i, &units[k]), (SteadReading) i, &units[k]), 3.5,
            1e-9);
        }
      for (int k = 0; k < i; k++)
        g_assert_cmpstr (stead_reading_id ((SteadReading) i), !=, stead_reading_id ((SteadReading) k));
      /* A word of another reading's unit is none of this one's. */
      g_assert_true (stead_reading_unit_by_id ((SteadReading) i, "furlong", STEAD_UNITS_METRIC)
                     == stead_reading_unit_default ((SteadReading) i, STEAD_UNITS_METRIC));
    }
  g_assert_cmpstr (stead_reading_unit_symbol (NULL), ==, "");
  g_assert_null (stead_reading_unit_default (STEAD_READING_PH, STEAD_UNITS_US));
  g_assert_cmpfloat (stead_reading_from_unit (7.2, STEAD_READING_PH, NULL), ==, 7.2);
}

static void
assert_kept (SteadReading  reading,
             const char   *text,
             double        value,
             double        kept)
{
  const SteadReadingUnit *unit = stead_reading_unit_from_text (reading, text);

  g_assert_nonnull (unit);
  /* Weights of two places will do. */
  g_assert_cmpfloat_with_epsilon (stead_reading_from_unit (value, reading, unit), kept, 5e-4 * fabs (kept));
}

/* As it stands on kits and in the heads of tables. */
static void
test_spellings (void)
{
  assert_kept (STEAD_READING_TEMPERATURE, "°F", 77, 25);
  assert_kept (STEAD_READING_TEMPERATURE, "Celsius", 25, 25);
  assert_kept (STEAD_READING_TAN, "mg/L", 1, 1);               /* kits that do not say it mean nitrogen */
  assert_kept (STEAD_READING_TAN, "NH₃", 1, N / (N + 3 * H));
  assert_kept (STEAD_READING_TAN, "mg/L NH4", 1, N / (N + 4 * H));
  assert_kept (STEAD_READING_NITRITE, "NO2-N", 1, (N + 2 * O) / N);
  assert_kept (STEAD_READING_NITRATE, "mg/L as N", 1, (N + 3 * O) / N);
  assert_kept (STEAD_READING_NITRATE, "ppm", 40, 40);
  assert_kept (STEAD_READING_ALKALINITY, "dKH", 2, 2 * 17.85);
  assert_kept (STEAD_READING_CONDUCTIVITY, "µS/cm", 900, 900);
  assert_kept (STEAD_READING_CONDUCTIVITY, "μS/cm", 900, 900);   /* the Greek letter looks the same */
  assert_kept (STEAD_READING_CONDUCTIVITY, "mS/cm", 1.2, 1200);
  g_assert_null (stead_reading_unit_from_text (STEAD_READING_NITRATE, "bushels"));
  g_assert_null (stead_reading_unit_from_text (STEAD_READING_NITRATE, "dKH"));
}

/* As many digits as a kit can tell; of a degree of hardness two. */
static void
test_digits (void)
{
  g_assert_cmpint (stead_reading_digits (STEAD_READING_PH, NULL), ==, 2);
  g_assert_cmpint (stead_reading_digits (STEAD_READING_ALKALINITY, NULL), ==, 0);
  g_assert_cmpint (stead_reading_digits (STEAD_READING_ALKALINITY, stead_reading_unit_from_text (STEAD_READING_ALKALINITY, "dH")),
                   ==, 2);
  g_assert_cmpint (stead_reading_digits (STEAD_READING_CONDUCTIVITY,
                                         stead_reading_unit_from_text (STEAD_READING_CONDUCTIVITY, "mS/cm")), ==, 2);
  g_assert_cmpint (stead_reading_digits (STEAD_READING_CONDUCTIVITY,
                                         stead_reading_unit_from_text (STEAD_READING_CONDUCTIVITY, "uS/cm")), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/reading-unit/round-trip", test_round_trip);
  g_test_add_func ("/answer/reading-unit/spellings", test_spellings);
  g_test_add_func ("/answer/reading-unit/digits", test_digits);
  return g_test_run ();
}

/* test-water-dose.c - the dose sheets: what they start with, what they refuse, and what they warn of.
 *
 * Factors: molar masses by equivalents, 1.68 g of sodium bicarbonate for 1 g of calcium carbonate.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-water-dose-answer.h"

#include <math.h>
#include <string.h>

/* In meters and liters. */
static SteadWaterAnswer *
water_of (Farm           *farm,
          SteadWaterKind  kind,
          double          tan)
{
  g_autoptr(SteadFarm) own = stead_farm_repo_get (farm->store, NULL);
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  g_autoptr(GError) error = NULL;
  SteadWaterAnswer *answer;

  own->units = STEAD_UNITS_METRIC;
  FARM_DO (farm, stead_farm_repo_set (farm->store, own, &farm_error));
  water->name = g_strdup ("Loop");
  water->kind = kind;
  water->volume_l = 1000;
  FARM_DO (farm, stead_water_repo_save (farm->store, water, &farm_error));
  test->water_id = water->id;
  test->day = farm->today - 2;
  test->values[STEAD_READING_ALKALINITY] = 40;
  test->values[STEAD_READING_TAN] = tan;
  FARM_DO (farm, stead_water_test_repo_save (farm->store, test, &farm_error));
  answer = stead_water_answer_new (farm->store, water->id, &error);
  g_assert_no_error (error);
  return answer;
}

/* Alkalinity of the last test, up to 100; a change wants half of the most that fish and plants bear, 150 mg/L of
 * nitrate (FAO 589); without chloride read there is none. */
static void
test_start (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) water = water_of (farm, STEAD_WATER_AQUAPONIC, NAN);
  SteadDoseNumbers base, salt, change;

  stead_water_dose_start (water, STEAD_DOSE_BASE, STEAD_WATER_ALKALINITY, &base);
  g_assert_cmpfloat (base.volume_l, ==, 1000);
  g_assert_cmpfloat (base.now, ==, 40);
  g_assert_cmpfloat (base.target, ==, 100);
  g_assert_cmpint (base.day, ==, farm->today - 2);
  stead_water_dose_start (water, STEAD_DOSE_SALT, STEAD_WATER_NITRITE, &salt);
  g_assert_true (isnan (salt.now));
  g_assert_cmpfloat (salt.beside, ==, 0);
  g_assert_cmpint (salt.day, ==, STEAD_DAY_NONE);
  stead_water_dose_start (water, STEAD_DOSE_CHANGE, STEAD_WATER_NITRATE, &change);
  g_assert_cmpfloat (change.target, ==, 75);
  g_assert_cmpfloat (change.beside, ==, 0);
}

static void
assert_refused (SteadWaterDose *dose,
                GError         *error,    /* (transfer full) */
                const char     *words)
{
  g_assert_null (dose);
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
  if (farm_in_english ())
    g_assert_cmpstr (error->message, ==, words);
  g_error_free (error);
}

/* Each number that is missing or cannot be is named. */
static void
test_refused (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) water = water_of (farm, STEAD_WATER_TANK, NAN);
  SteadDoseNumbers full = { .volume_l = 1000, .now = 40, .target = 20, .beside = 5 }, one;
  GError *error = NULL;

#define REFUSE(field, bad, call, words) \
  one = full; one.field = bad; error = NULL; \
  { SteadWaterDose *dose = call; assert_refused (dose, error, words); }

  REFUSE (volume_l, 0, stead_water_dose_base (water, STEAD_BASE_KHCO3, &one, &error),
          "Enter how much water there is. It can be kept with the water or its tanks.");
  REFUSE (now, NAN, stead_water_dose_base (water, STEAD_BASE_KHCO3, &one, &error), "Enter the alkalinity that was measured.");
  REFUSE (now, NAN, stead_water_dose_salt (water, &one, &error), "Enter the nitrite that was measured.");
  REFUSE (beside, NAN, stead_water_dose_salt (water, &one, &error), "Enter the chloride that was measured, or 0.");
  REFUSE (volume_l, NAN, stead_water_dose_salt (water, &one, &error),
          "Enter how much water there is. It can be kept with the water or its tanks.");
  REFUSE (now, NAN, stead_water_dose_change (water, STEAD_WATER_NITRATE, &one, &error), "Enter the reading that was measured.");
  REFUSE (target, NAN, stead_water_dose_change (water, STEAD_WATER_NITRATE, &one, &error), "Enter the reading that you want.");
  REFUSE (beside, NAN, stead_water_dose_change (water, STEAD_WATER_NITRATE, &one, &error),
          "Enter what the water that you add has of it.");
  REFUSE (volume_l, -1, stead_water_dose_change (water, STEAD_WATER_NITRATE, &one, &error),
          "Enter how much water there is. It can be kept with the water or its tanks.");
  REFUSE (now, -3, stead_water_dose_change (water, STEAD_WATER_NITRATE, &one, &error),
          "Nitrate: no water has so much or so little. Check the number.");
}

static SteadWaterDose *
base_dose (SteadWaterAnswer *water,
           SteadBase         base,
           double            target)
{
  SteadDoseNumbers numbers = { .volume_l = 1000, .now = 40, .target = target, .beside = NAN };
  g_autoptr(GError) error = NULL;
  SteadWaterDose *dose = stead_water_dose_base (water, base, &numbers, &error);

  g_assert_no_error (error);
  return dose;
}

/* Lime burns, limestone is slow, soda harms beds, and a higher pH makes the ammonia that is there more poisonous. */
static void
test_cautions (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) beds = water_of (farm, STEAD_WATER_AQUAPONIC, 1);
  g_autoptr(SteadWaterDose) lime = base_dose (beds, STEAD_BASE_CA_OH_2, 100);
  g_autoptr(SteadWaterDose) stone = base_dose (beds, STEAD_BASE_CACO3, 100);
  g_autoptr(SteadWaterDose) soda = base_dose (beds, STEAD_BASE_NAHCO3, 100);

  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (lime->caution, "burns skin and eyes"));
  g_assert_null (strstr (lime->caution, "dissolves slowly"));
  g_assert_nonnull (strstr (stone->caution, "Dust and strong mixtures irritate"));
  g_assert_nonnull (strstr (stone->caution, "dissolves slowly"));
  g_assert_nonnull (strstr (soda->caution, "Its sodium builds up"));
  g_assert_nonnull (strstr (soda->caution, "There was ammonia in the last test"));
}

/* 10 mg/L more in 1,000 L are 10 g of calcium carbonate, 16.8 g of soda: at once.  Of a farm in liters, in grams. */
static void
test_small (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) tank = water_of (farm, STEAD_WATER_TANK, NAN);
  g_autoptr(SteadWaterDose) soda = base_dose (tank, STEAD_BASE_NAHCO3, 50);

  g_assert_cmpint (soda->parts, ==, 1);
  g_assert_cmpfloat_with_epsilon (soda->amount, 16.8, 0.05);
  g_assert_null (strstr (soda->caution, "sodium"));
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (soda->sentence, "<b>17 g</b> of sodium bicarbonate"));     /* a scale's whole grams */
      g_assert_null (strstr (soda->caution, "ammonia"));
    }
}

/* With beds salt has its price too; where the reading is as wanted nothing is changed; a tenth goes at once. */
static void
test_others (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) beds = water_of (farm, STEAD_WATER_AQUAPONIC, NAN);
  SteadDoseNumbers salt = { .volume_l = 1000, .now = 1, .beside = 0 };
  SteadDoseNumbers same = { .volume_l = 1000, .now = 100, .target = 100, .beside = 0 };
  SteadDoseNumbers tenth = { .volume_l = 1000, .now = 100, .target = 90, .beside = 0 };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadWaterDose) salted = stead_water_dose_salt (beds, &salt, &error);
  g_autoptr(SteadWaterDose) none = stead_water_dose_change (beds, STEAD_WATER_NITRATE, &same, &error);
  g_autoptr(SteadWaterDose) some = stead_water_dose_change (beds, STEAD_WATER_NITRATE, &tenth, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (none->amount, ==, 0);
  g_assert_cmpint (some->parts, ==, 1);
  g_assert_cmpfloat_with_epsilon (some->amount, 100, 1e-9);
  NUMBERS_ARE (some->sentence, 100, 10, 100, 90);
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (salted->caution, "Sodium builds up and harms plants"));
  g_assert_cmpstr (none->sentence, ==, "The reading is what you want: change nothing.");
}

#define ADD(name, test) g_test_add ("/answer/water-dose/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("start", test_start);
  ADD ("refused", test_refused);
  ADD ("cautions", test_cautions);
  ADD ("small", test_small);
  ADD ("others", test_others);
  return g_test_run ();
}

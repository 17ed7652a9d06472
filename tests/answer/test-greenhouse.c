/* test-greenhouse.c - what it costs to keep a bay warm, against sums worked out by hand.
 *
 * The house: 100 m² of cover at 4 W for a m² and °C; 200 m³ of air, 0.75 changes an
 * hour, at 0.018 Btu for a cubic foot and °F (from memory, as stead-greenhouse.h has
 * it).  Every month has 10 and 0 °C, so a house kept at 15 °C has 10 °C-days a day.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-greenhouse-answer.h"
#include "store/stead-place-repo.h"

#include <math.h>
#include <string.h>

#define BTU_J 1055.05585262
#define FOOT_M 0.3048
#define AIR_W (0.018 * BTU_J / (FOOT_M * FOOT_M * FOOT_M) * 1.8 / 3600)   /* for a m³ an hour and °C */
#define UA (100 * 4 + 200 * 0.75 * AIR_W)

static gint64
bay (Farm *farm)
{
  SteadPlaceFacts place = { .name = g_strdup ("Bay 1"), .kind = STEAD_PLACE_BAY, .area_m2 = NAN };

  FARM_DO (farm, stead_place_repo_save (farm->store, &place, &farm_error));
  g_free (place.name);
  return place.id;
}

static void
enter_house (Farm      *farm,
             gint64     place,
             SteadFuel  fuel,
             double     cents)
{
  SteadGlasshouse house = { place, 100, 4, 200, 0.75, 15, 0, fuel, 0.5, cents };

  FARM_DO (farm, stead_glasshouse_repo_save (farm->store, &house, &farm_error));
}

static void
enter_year (Farm *farm)
{
  SteadUsualYear year;

  for (int i = 0; i < 12; i++)
    {
      year.min_c[i] = i == 0 ? -5 : 0;
      year.max_c[i] = i == 0 ? 15 : 10;
    }
  FARM_DO (farm, stead_climate_repo_set_usual (farm->store, 0, &year, &farm_error));
}

static SteadGreenhouseAnswer *
ask (Farm   *farm,
     gint64  place)
{
  g_autoptr(GError) error = NULL;
  SteadGreenhouseAnswer *answer = stead_greenhouse_answer_new (farm->store, place, &error);

  g_assert_no_error (error);
  return answer;
}

static void
test_heat (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadGreenhouseAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  gint64 place = bay (farm);
  double kwh = UA * 24 * 3650 / 1000;

  enter_house (farm, place, STEAD_FUEL_ELECTRICITY, 10);
  enter_year (farm);
  answer = ask (farm, place);
  g_assert_cmpfloat_with_epsilon (answer->ua_w_c, UA, UA * 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->all.hdd_c, 3650, 1);
  g_assert_cmpfloat_with_epsilon (answer->all.heat_kwh, kwh, kwh * 1e-3);
  g_assert_cmpfloat_with_epsilon (answer->all.fuel, kwh / 0.5, kwh * 2e-3);
  g_assert_cmpfloat_with_epsilon (answer->all.cents, kwh / 0.5 * 10, kwh * 2e-2);
  g_assert_cmpfloat_with_epsilon (answer->months[1].hdd_c, 280, 1);
  /* A night of -5 °C: 20 °C of difference. */
  g_assert_cmpfloat_with_epsilon (answer->coldest_c, -5, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->loss_w, UA * 20, UA * 1e-4);
  g_assert_cmpfloat_with_epsilon (answer->heater_min_w, UA * 22, UA * 1e-4);
  g_assert_cmpfloat_with_epsilon (answer->heater_max_w, UA * 25, UA * 1e-4);
  g_assert_cmpfloat_with_epsilon (answer->fan_m3_h, 12000, 1e-6);
  g_assert_nonnull (strstr (answer->sentence, "kWh"));
  g_assert_nonnull (answer->caution);
  whys = stead_greenhouse_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 5);
  NUMBERS_ARE (farm_find_why (whys, "Fuel and what it costs")->worked, round (answer->all.heat_kwh), 1, 50,
               round (answer->all.fuel), 0.10, round (answer->all.cents) / 100);
  for (guint i = 0; i < whys->len; i++)
    g_assert_null (strstr (((const SteadWhy *) whys->pdata[i])->worked, "nan"));
}

/* 92,400 Btu in a gallon of propane: greenhouse trade paper, heat lost through vents. */
static void
test_fuel (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadGreenhouseAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  gint64 place = bay (farm);
  double gallons = UA * 24 * 3650 / 1000 / 0.5 / (92400 * BTU_J / 3.6e6);

  enter_house (farm, place, STEAD_FUEL_PROPANE, 70);
  enter_year (farm);
  answer = ask (farm, place);
  g_assert_cmpfloat_with_epsilon (answer->all.fuel / stead_greenhouse_fuel_factor (STEAD_FUEL_PROPANE, STEAD_UNITS_US),
                                  gallons, gallons * 1e-3);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "gallons (Propane)"));
  whys = stead_greenhouse_answer_whys (answer);
  /* The price is that of a gallon: 70 cents a liter. */
  NUMBERS_ARE (farm_find_why (whys, "Fuel and what it costs")->worked, round (answer->all.heat_kwh),
               round (92400 * BTU_J / 3.6e6 * 10) / 10, 50, round (gallons), 2.65, round (answer->all.cents) / 100);
}

static void
test_missing (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadGreenhouseAnswer) bare = NULL;
  g_autoptr(SteadGreenhouseAnswer) housed = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  gint64 place = bay (farm);

  bare = ask (farm, place);
  g_assert_null (bare->house);
  whys = stead_greenhouse_answer_whys (bare);
  g_assert_cmpuint (whys->len, ==, 0);
  enter_house (farm, place, STEAD_FUEL_OIL, 90);
  housed = ask (farm, place);
  g_assert_false (housed->has_year);
  g_assert_true (isnan (housed->loss_w));
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (bare->sentence, "Enter the house"));
      g_assert_nonnull (strstr (housed->sentence, "Enter the usual year"));
    }
}

#define ADD(path, func) g_test_add ("/answer/greenhouse/" path, Farm, NULL, farm_set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("heat", test_heat);
  ADD ("fuel", test_fuel);
  ADD ("missing", test_missing);
  return g_test_run ();
}

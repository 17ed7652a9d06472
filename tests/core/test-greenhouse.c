/* Air, light, feed, heat and fans of a greenhouse. */
#include "core/stead-core-error.h"
#include "core/stead-fuel.h"
#include "core/stead-greenhouse.h"
#include "core/stead-light.h"
#include "core/stead-nutrient.h"
#include "core/stead-season-heat.h"
#include "core/stead-vapor.h"
#include "core/stead-ventilation.h"

#include "weather.h"

#include <math.h>

#define GALLON_L 3.785411784
#define OUNCE_G 28.349523125
#define SQFT_M2 0.09290304
#define CUFT_M3 0.028316846592
#define UA_PER_BTU (1.8 * 1055.05585262 / 3600)

/* FAO Irrigation and Drainage Paper 56, examples 3 and 5 as restated (read); package
 * psychrolib 1.1.1, GetSatVapPres and GetTDewPointFromRelHum, another formula. */
static void
test_vapor (void)
{
  static const struct { double temp_c, kpa; } saturation[] = {
    { 15, 1.705 }, { 18, 2.064 }, { 24.5, 3.075 }, { 25, 3.168 },
    { 0, 0.6112 }, { 10, 1.2280 }, { 40, 7.3835 }, { 50, 12.3499 },
  };
  static const struct { double temp_c, frac, dew_c; } dew[] = {
    { 25, 0.70, 19.15 }, { 18, 0.90, 16.34 }, { 30, 0.50, 18.45 }, { 35, 0.40, 19.38 }, { 24, 1, 24 },
  };
  double value = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (saturation); i++)
    {
      g_assert_true (stead_vapor_saturation_kpa (saturation[i].temp_c, &value, NULL));
      g_assert_cmpfloat_with_epsilon (value, saturation[i].kpa, 0.0015 * saturation[i].kpa);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (dew); i++)
    {
      g_assert_true (stead_vapor_dew_point_c (dew[i].temp_c, dew[i].frac, &value, NULL));
      g_assert_cmpfloat_with_epsilon (value, dew[i].dew_c, 0.05);
    }
  g_assert_true (stead_vapor_saturation_mean_kpa (15, 24.5, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 2.39, 0.005);
  g_assert_true (stead_vapor_actual_kpa (18, 25, 0.54, 0.82, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 1.70, 0.005);
  g_assert_true (stead_vapor_deficit_kpa (25, 0.70, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 0.95, 0.005);
  g_assert_true (stead_vapor_deficit_kpa (25, 1, &value, NULL));
  g_assert_cmpfloat (value, ==, 0);
}

/* The dew point is where the same moisture is all that the air can hold. */
static void
test_dew_point_round_trip (void)
{
  for (double temp_c = 1; temp_c <= 50; temp_c += 3.5)
    for (double frac = 0.3; frac <= 1; frac += 0.1)
      {
        double dew_c = -1;
        double full = -1;
        double deficit = -1;
        double held = -1;

        if (!stead_vapor_dew_point_c (temp_c, frac, &dew_c, NULL))
          {
            g_assert_cmpfloat (temp_c, <, 19);
            continue;
          }
        g_assert_cmpfloat (dew_c, <=, temp_c);
        g_assert_true (stead_vapor_saturation_kpa (temp_c, &full, NULL));
        g_assert_true (stead_vapor_deficit_kpa (temp_c, frac, &deficit, NULL));
        g_assert_true (stead_vapor_saturation_kpa (dew_c, &held, NULL));
        g_assert_cmpfloat_with_epsilon (held, full - deficit, 1e-9);
      }
}

static void
test_vapor_refuses (void)
{
  static const double bad_temps[] = { -0.1, 50.1, NAN, INFINITY, -273 };
  static const double bad_fracs[] = { -0.01, 1.01, NAN };
  double value = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (bad_temps); i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_false (stead_vapor_saturation_kpa (bad_temps[i], &value, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_false (stead_vapor_deficit_kpa (bad_temps[i], 0.5, &value, NULL));
      g_assert_false (stead_vapor_dew_point_c (bad_temps[i], 0.5, &value, NULL));
      g_assert_false (stead_vapor_saturation_mean_kpa (10, bad_temps[i], &value, NULL));
      g_assert_false (stead_vapor_actual_kpa (bad_temps[i], 50, 0.5, 0.6, &value, NULL));
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bad_fracs); i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_false (stead_vapor_deficit_kpa (20, bad_fracs[i], &value, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_false (stead_vapor_actual_kpa (10, 20, bad_fracs[i], 0.5, &value, NULL));
    }
  /* Readings that are the wrong way round, and a dew point below freezing. */
  g_assert_false (stead_vapor_saturation_mean_kpa (20, 10, &value, NULL));
  g_assert_false (stead_vapor_actual_kpa (10, 20, 0.8, 0.5, &value, NULL));
  g_assert_false (stead_vapor_dew_point_c (10, 0.4, &value, NULL));
  g_assert_false (stead_vapor_dew_point_c (20, 0, &value, NULL));
  g_assert_cmpfloat (value, ==, -1);
  g_assert_true (stead_vapor_saturation_kpa (0, &value, NULL));
  g_assert_true (stead_vapor_saturation_kpa (50, &value, NULL));
  /* 122 °F is 50 °C, after the way through °C too. */
  g_assert_true (stead_vapor_saturation_kpa ((122.0 - 32) / 1.8, &value, NULL));
}

/* Usual greenhouse band (from memory): both sides of each limit. */
static void
test_air (void)
{
  g_assert_cmpint (stead_vapor_air (0), ==, STEAD_AIR_WET);
  g_assert_cmpint (stead_vapor_air (0.29), ==, STEAD_AIR_WET);
  g_assert_cmpint (stead_vapor_air (0.30), ==, STEAD_AIR_MOIST);
  g_assert_cmpint (stead_vapor_air (0.39), ==, STEAD_AIR_MOIST);
  g_assert_cmpint (stead_vapor_air (0.40), ==, STEAD_AIR_GOOD);
  g_assert_cmpint (stead_vapor_air (1.20), ==, STEAD_AIR_GOOD);
  g_assert_cmpint (stead_vapor_air (1.21), ==, STEAD_AIR_DRY);
}

/* Conversion of instantaneous to daily light (read); encyclopedia article (derived). */
static void
test_light (void)
{
  static const double sun[] = { 0, 200, 800, 1200, 800, 200 };
  static const double broken[] = { 100, NAN };

  g_assert_cmpfloat_with_epsilon (stead_light_daily_mol (1, 24), 0.0864, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_light_daily_mol (1, 1), 0.0036, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_light_daily_mol (250, 16), 14.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_light_ppfd_umol (20, 16), 347, 0.5);
  g_assert_true (isnan (stead_light_daily_mol (250, 24.1)));
  g_assert_true (isnan (stead_light_daily_mol (-1, 16)));
  g_assert_true (isnan (stead_light_ppfd_umol (20, 0)));
  /* 3,200 µmol/m²/s in steps of 2 hours: 23.04 mol. */
  g_assert_cmpfloat_with_epsilon (stead_light_daily_sum_mol (sun, G_N_ELEMENTS (sun), 2), 23.04, 1e-9);
  g_assert_true (isnan (stead_light_daily_sum_mol (sun, G_N_ELEMENTS (sun), 4.1)));
  g_assert_true (isnan (stead_light_daily_sum_mol (broken, 2, 1)));
  /* Steady light comes to the same both ways. */
  {
    const double steady[] = { 250, 250, 250, 250 };

    g_assert_cmpfloat_with_epsilon (stead_light_daily_sum_mol (steady, 4, 4), 14.4, 1e-9);
  }
  /* 40, 50 and 60 % cloths let 0.6, 0.5 and 0.4 through. */
  g_assert_cmpfloat_with_epsilon (stead_light_inside_mol (40, 1, 0.4), 24, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_light_inside_mol (40, 0.7, 0), 28, 1e-9);
  g_assert_true (isnan (stead_light_inside_mol (40, 1.1, 0)));
}

/* University of Massachusetts (13.5 and 18 oz for 100 gal at 200 ppm); Texas A&M (22
 * oz at 250 ppm; 1 oz of 15 % in 100 gal is 11.25 ppm); bag chart of an injector (18
 * oz in a gallon of stock at 1:100, 90 in five, 2.7 at 1:15): all read, printed
 * rounded, so within 2 %. */
static void
test_nutrient (void)
{
  static const struct { double ppm, frac, gal, oz; } table[] = {
    { 200, 0.20, 100, 13.5 }, { 200, 0.15, 100, 18 }, { 250, 0.15, 100, 22 },
    { 225, 0.15, 100 * 1, 20.25 }, { 200, 0.15, 100 * 5, 90 }, { 200, 0.15, 15 * 1, 2.7 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      double g = stead_nutrient_product_g (table[i].ppm, table[i].frac, table[i].gal * GALLON_L);

      g_assert_cmpfloat_with_epsilon (g / OUNCE_G, table[i].oz, 0.02 * table[i].oz);
      g_assert_cmpfloat_with_epsilon (stead_nutrient_ppm (g, table[i].frac, table[i].gal * GALLON_L),
                                      table[i].ppm, 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (stead_nutrient_ppm (OUNCE_G, 0.15, 100 * GALLON_L), 11.25, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_nutrient_stock_l (20000, 200, 1000), 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_nutrient_stock_l (200, 200, 10), 10, 1e-9);
  g_assert_true (isnan (stead_nutrient_stock_l (199, 200, 10)));
  g_assert_true (isnan (stead_nutrient_product_g (200, 0, 10)));
  g_assert_true (isnan (stead_nutrient_product_g (200, 1.1, 10)));
  g_assert_true (isnan (stead_nutrient_ppm (10, 0.2, 0)));
}

/* A greenhouse maker's how-to, 22 x 96 ft example: 186.56 and 2,419 Btu/h/°F (read),
 * 156,346 Btu/h at 60 °F of difference (derived). */
static void
test_loss (void)
{
  const SteadGreenhouseSkin skin[] = {
    { 352 * SQFT_M2, stead_cover_u_w_m2_c (STEAD_COVER_TWIN_WALL) },
    { 3456 * SQFT_M2, stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM) },
  };
  double ua = stead_greenhouse_ua_w_c (skin, G_N_ELEMENTS (skin));

  g_assert_cmpfloat_with_epsilon (stead_greenhouse_ua_w_c (skin, 1) / UA_PER_BTU, 186.56, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_greenhouse_ua_w_c (skin + 1, 1) / UA_PER_BTU, 2419, 1);
  g_assert_cmpfloat_with_epsilon (stead_greenhouse_loss_w (ua, 60 / 1.8) / STEAD_W_PER_BTU_H,
                                  156346, 0.5);
  /* The same formula in metric units (derived). */
  g_assert_cmpfloat_with_epsilon (stead_greenhouse_loss_w (150 * 4.0, 20), 12000, 1e-9);
  g_assert_cmpfloat (stead_greenhouse_loss_w (150 * 4.0, -1), ==, 0);
  /* 1 Btu/h/sq ft/°F is 5.678 W/m²/°C (memory). */
  g_assert_cmpfloat_with_epsilon (stead_cover_u_w_m2_c (STEAD_COVER_TWIN_WALL), 0.53 * 5.678, 0.001);
  /* 16,000 cubic feet, one change, 60 °F: 17,280 Btu/h (memory). */
  g_assert_cmpfloat_with_epsilon (stead_greenhouse_loss_w (stead_greenhouse_leak_ua_w_c (16000 * CUFT_M3, 1),
                                                           60 / 1.8) / STEAD_W_PER_BTU_H, 17280, 0.01);
  /* A better cover loses less. */
  g_assert_cmpfloat (stead_cover_u_w_m2_c (STEAD_COVER_TWIN_WALL), <,
                     stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM));
  g_assert_cmpfloat (stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM), <,
                     stead_cover_u_w_m2_c (STEAD_COVER_GLASS));
  g_assert_cmpfloat (stead_cover_u_w_m2_c (STEAD_COVER_GLASS), <,
                     stead_cover_u_w_m2_c (STEAD_COVER_SINGLE_FILM));
}

/* A half-round house of 6 x 10 m, worked by hand: half a drum of 94.25 m² and two
 * half circles of 14.14 m²; 141.37 m³. */
static void
test_hoop (void)
{
  g_autoptr(GError) error = NULL;
  double skin = stead_hoop_skin_m2 (6, 10);
  double ua = skin * stead_cover_u_w_m2_c (STEAD_COVER_DOUBLE_FILM)
              + stead_greenhouse_leak_ua_w_c (stead_hoop_volume_m3 (6, 10), 1);
  double heater = -1;

  g_assert_cmpfloat_with_epsilon (skin, 122.52, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_hoop_volume_m3 (6, 10), 141.37, 0.01);
  /* About 12 kW through the film and 1.2 kW by leaks at 25 °C (own example). */
  g_assert_cmpfloat_with_epsilon (stead_greenhouse_loss_w (ua, 25), 13200, 300);
  g_assert_true (stead_greenhouse_heater_w (13200, 0.25, &heater, NULL));
  g_assert_cmpfloat_with_epsilon (heater, 16500, 1e-9);
  g_assert_true (stead_greenhouse_heater_w (13200, 0.10, &heater, NULL));
  heater = -1;
  g_assert_false (stead_greenhouse_heater_w (13200, 0.09, &heater, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_greenhouse_heater_w (13200, 0.26, &heater, NULL));
  g_assert_false (stead_greenhouse_heater_w (13200, NAN, &heater, NULL));
  g_assert_cmpfloat (heater, ==, -1);
}

/* Greenhouse trade paper, heat lost through vents: 672,000 Btu at 75 % are 9.7 gal of
 * propane or 8.7 ccf of gas (read); oil 137,800 Btu a gallon (derived). */
static void
test_fuel (void)
{
  double heat_kwh = 672000 * STEAD_KWH_PER_BTU;

  g_assert_cmpfloat_with_epsilon (stead_fuel_needed (STEAD_FUEL_PROPANE, heat_kwh, 0.75) / GALLON_L,
                                  9.7, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_fuel_needed (STEAD_FUEL_NATURAL_GAS, heat_kwh, 0.75)
                                  / (100 * CUFT_M3), 8.7, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_fuel_needed (STEAD_FUEL_OIL, 2e6 * STEAD_KWH_PER_BTU, 0.8)
                                  / GALLON_L, 18.1, 0.1);
  g_assert_cmpfloat_with_epsilon (stead_fuel_needed (STEAD_FUEL_ELECTRICITY, 100, 1), 100, 1e-9);
  for (int fuel = 0; fuel < STEAD_N_FUELS; fuel++)
    {
      double amount = stead_fuel_needed (fuel, 1000, 0.8);

      g_assert_cmpfloat_with_epsilon (stead_fuel_heat_kwh (fuel, amount, 0.8), 1000, 1e-9);
      g_assert_cmpfloat_with_epsilon (stead_fuel_heat_cents (fuel, 1000, 0.8, 60), 60 * amount, 1e-9);
      g_assert_cmpstr (stead_fuel_name (fuel), !=, "");
    }
  g_assert_cmpstr (stead_fuel_id (STEAD_FUEL_OIL), ==, "fuel_oil");
  g_assert_true (isnan (stead_fuel_needed (STEAD_FUEL_OIL, 1, 0)));
  g_assert_true (isnan (stead_fuel_needed (STEAD_FUEL_OIL, 1, 1.01)));
  g_assert_true (isnan (stead_fuel_heat_kwh (STEAD_FUEL_OIL, 1, NAN)));
}

/* The how-to's house (2,605.76 Btu/h/°F) over 2,000 °F-days: 125.1 million Btu (derived). */
static void
test_season (void)
{
  g_assert_cmpfloat_with_epsilon (stead_season_heat_kwh (2605.76 * UA_PER_BTU, 2000 / 1.8)
                                  / STEAD_KWH_PER_BTU / 1e6, 125.1, 0.05);
  g_assert_cmpfloat (stead_season_base_c (16, 4), ==, 12);
}

/* Months of a typical year made of real readings, New York 2012 to 2014; the mean
 * heating degree days of the months, base 65 °F, as another program found them in
 * exact fractions (Python).  A mean month cannot know how each year strayed. */
static void
test_season_months (void)
{
  static const double real_c[12] = {
    540.2, 468.3, 396.8, 224.3, 70.8, 5.6, 0, 0, 15.6, 106.2, 339.1, 423.1,
  };
  const SteadDay first = stead_day_new (2012, 1, 1);
  const gsize n = (gsize) (stead_day_new (2015, 1, 1) - first);
  g_autofree SteadDayTemps *days = weather_read ("new-york.csv", first, n);
  SteadTypicalYear year;
  SteadHeatMonth months[12];
  SteadOwnUa ua;

  g_assert_true (stead_typical_year_from_days (first, days, n, &year, NULL));
  stead_season_heat_months (200, (65 - 32) / 1.8, &year, 2013, months);
  for (int i = 0; i < 12; i++)
    {
      g_test_message ("month %d: %.1f, real %.1f", i + 1, months[i].hdd_c, real_c[i]);
      g_assert_cmpfloat_with_epsilon (months[i].hdd_c, real_c[i], MAX (8, 0.02 * real_c[i]));
      g_assert_cmpfloat_with_epsilon (months[i].heat_kwh, 200 * 24 * months[i].hdd_c / 1000, 1e-9);
    }
  /* What went in as UA comes out of the heat again. */
  g_assert_true (stead_season_own_ua (months, 12, &ua, NULL));
  g_assert_cmpfloat_with_epsilon (ua.ua_w_c, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (ua.low_w_c, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (ua.high_w_c, 200, 1e-9);
}

static void
test_own_ua (void)
{
  const SteadHeatMonth months[] = { { 500, 2400 }, { 400, 2112 }, { 0, 100 }, { 50, 0 } };
  g_autoptr(GError) error = NULL;
  SteadOwnUa ua = { .ua_w_c = -1 };

  /* By hand: 200 and 220 W/°C; together 4,512 kWh over 900 °C-days. */
  g_assert_true (stead_season_own_ua (months, G_N_ELEMENTS (months), &ua, NULL));
  g_assert_cmpuint (ua.n_months, ==, 2);
  g_assert_cmpfloat_with_epsilon (ua.low_w_c, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (ua.high_w_c, 220, 1e-9);
  g_assert_cmpfloat_with_epsilon (ua.ua_w_c, 208.889, 0.001);
  ua.ua_w_c = -1;
  g_assert_false (stead_season_own_ua (months + 2, 2, &ua, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_season_own_ua (NULL, 0, &ua, NULL));
  g_assert_cmpfloat (ua.ua_w_c, ==, -1);
}

/* A greenhouse supplier's technical page (12 x 24 ft: 3,456 cfm; 12 x 36 ft: 5,184,
 * under a 50 % cloth 2,592) and a growers' forum (1,042 cubic feet at 1.5 changes a
 * minute: 1,563): read. */
static void
test_fans (void)
{
  const double rate = 12 * STEAD_M3_H_PER_CFM / SQFT_M2;
  g_autoptr(GError) error = NULL;
  double flow = -1;

  g_assert_true (stead_fan_flow_floor_m3_h (12 * 24 * SQFT_M2, rate, 0, &flow, NULL));
  g_assert_cmpfloat_with_epsilon (flow / STEAD_M3_H_PER_CFM, 3456, 1e-6);
  g_assert_true (stead_fan_flow_floor_m3_h (12 * 36 * SQFT_M2, rate, 0.5, &flow, NULL));
  g_assert_cmpfloat_with_epsilon (flow / STEAD_M3_H_PER_CFM, 2592, 1e-6);
  g_assert_true (stead_fan_flow_floor_m3_h (12 * 36 * SQFT_M2, rate, 0.6, &flow, NULL));
  g_assert_cmpfloat_with_epsilon (flow / STEAD_M3_H_PER_CFM, 0.4 * 5184, 1e-6);
  flow = -1;
  g_assert_false (stead_fan_flow_floor_m3_h (40, rate, 0.61, &flow, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_fan_flow_floor_m3_h (40, rate, -0.1, &flow, NULL));
  g_assert_false (stead_fan_flow_floor_m3_h (40, rate, NAN, &flow, NULL));
  g_assert_cmpfloat (flow, ==, -1);
  g_assert_cmpfloat_with_epsilon (stead_fan_flow_volume_m3_h (1042 * CUFT_M3, 1.5) / STEAD_M3_H_PER_CFM,
                                  1563, 1e-6);
  /* 3,600 m³/h are 1 m³ a second: half a m² at 2 m/s. */
  g_assert_cmpfloat_with_epsilon (stead_inlet_m2 (3600, 2), 0.5, 1e-12);
  g_assert_true (isnan (stead_inlet_m2 (3600, 0)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/vapor/published", test_vapor);
  g_test_add_func ("/core/vapor/dew-point-round-trip", test_dew_point_round_trip);
  g_test_add_func ("/core/vapor/refuses", test_vapor_refuses);
  g_test_add_func ("/core/vapor/air", test_air);
  g_test_add_func ("/core/light/published", test_light);
  g_test_add_func ("/core/nutrient/published", test_nutrient);
  g_test_add_func ("/core/greenhouse/loss", test_loss);
  g_test_add_func ("/core/greenhouse/hoop", test_hoop);
  g_test_add_func ("/core/fuel/published", test_fuel);
  g_test_add_func ("/core/season-heat/published", test_season);
  g_test_add_func ("/core/season-heat/months", test_season_months);
  g_test_add_func ("/core/season-heat/own-ua", test_own_ua);
  g_test_add_func ("/core/ventilation/published", test_fans);
  return g_test_run ();
}

/* check-greenhouse.c - the topics on a greenhouse: air, light, feed, heat and fans. */
#include "check.h"

#include "core/stead-fuel.h"
#include "core/stead-greenhouse.h"
#include "core/stead-light.h"
#include "core/stead-nutrient.h"
#include "core/stead-season-heat.h"
#include "core/stead-vapor.h"
#include "core/stead-ventilation.h"

#include <math.h>

#define TEMP "C F"

/* The checker's own: the Btu of the international table, exact. */
#define BTU_J 1055.05585262
#define W_PER_BTU_H (BTU_J / 3600)
#define J_PER_KWH 3.6e6
#define CUFT_M3 0.028316846592
#define GALLON_L 3.785411784
#define SQFT_M2 0.09290304
/* W/°C in a Btu/h/°F. */
#define UA_PER_BTU (1.8 * W_PER_BTU_H)

/* A difference of temperatures, or a sum of such, has no offset. */
static double
difference_c (CheckRow   *row,
              const char *stem)
{
  g_autofree char *c = g_strconcat (stem, "_C", NULL);
  g_autofree char *f = g_strconcat (stem, "_F", NULL);

  if (!check_has (row, c))
    return check_number (row, f) / 1.8;
  return check_has (row, f) ? check_bad_input (row, c) : check_number (row, c);
}

static double
volume_m3 (CheckRow *row)
{
  return check_base (row, "volume", "cuft m3") / 1000;
}

/* vapour pressure */

/* A day of two readings instead of one moment. */
static gboolean
is_day (CheckRow *row)
{
  return !check_has_base (row, "temp", TEMP);
}

static double
saturation (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double kpa;

  if (!stead_vapor_saturation_kpa (check_base (row, "temp", TEMP), &kpa, &error))
    return check_answer_none (row, error);
  return kpa;
}

static double
saturation_mean (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double kpa;

  if (!stead_vapor_saturation_mean_kpa (check_base (row, "tmin", TEMP),
                                        check_base (row, "tmax", TEMP), &kpa, &error))
    return check_answer_none (row, error);
  return kpa;
}

static double
deficit_now (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double kpa;

  if (!stead_vapor_deficit_kpa (check_base (row, "temp", TEMP), check_frac (row, "rh_pct"),
                                &kpa, &error))
    return check_answer_none (row, error);
  return kpa;
}

static double
actual (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double kpa;

  if (!is_day (row))
    return saturation (row) - deficit_now (row);
  if (!stead_vapor_actual_kpa (check_base (row, "tmin", TEMP), check_base (row, "tmax", TEMP),
                               check_frac (row, "rh_min_pct"), check_frac (row, "rh_max_pct"),
                               &kpa, &error))
    return check_answer_none (row, error);
  return kpa;
}

static double
deficit (CheckRow *row)
{
  return is_day (row) && check_has_base (row, "tmin", TEMP) ? saturation_mean (row) - actual (row)
                                                            : deficit_now (row);
}

static double
dew_point (CheckRow *row)
{
  g_autoptr(GError) error = NULL;
  double dew_c;

  if (!stead_vapor_dew_point_c (check_base (row, "temp", TEMP), check_frac (row, "rh_pct"),
                                &dew_c, &error))
    return check_answer_none (row, error);
  return dew_c;
}

static const CheckAsk vapor_asks[] = {
  { "es", "kPa", saturation },
  { "es_mean", "kPa", saturation_mean },
  { "ea", "kPa", actual },
  { "vpd", "kPa", deficit },
  { "dew_point", "C", dew_point },
  { NULL }
};

/* daily light */

static double
light_daily (CheckRow *row)
{
  return stead_light_daily_mol (check_number (row, "ppfd_umol_m2_s"), check_number (row, "light_h"));
}

static double
light_ppfd (CheckRow *row)
{
  return stead_light_ppfd_umol (check_number (row, "dli_mol_m2_d"), check_number (row, "light_h"));
}

static const CheckAsk light_asks[] = {
  { "dli", "mol/m2/d", light_daily },
  { "ppfd", "umol/m2/s", light_ppfd },
  { NULL }
};

/* fertiliser, dilution */

/* Liters of feed, straight or through an injector. */
static double
feed_l (CheckRow *row)
{
  double ratio;

  if (!check_has_base (row, "stock", "gal L"))
    {
      if (check_has (row, "injector_ratio"))
        check_bad_input (row, "injector_ratio");
      return check_base (row, "water", "gal L");
    }
  if (check_has_base (row, "water", "gal L"))
    return check_bad_input (row, "stock");
  ratio = check_number (row, "injector_ratio");
  if (!(ratio >= 1))
    return check_bad_input (row, "injector_ratio");
  return ratio * check_base (row, "stock", "gal L");
}

static double
product (CheckRow *row)
{
  double grams = stead_nutrient_product_g (check_number (row, "target_ppm"),
                                           check_frac (row, "nutrient_pct"), feed_l (row));

  return check_from_base (grams / 1000, "oz");
}

static double
concentration (CheckRow *row)
{
  return stead_nutrient_ppm (1000 * check_base (row, "product", "oz lb g kg"),
                             check_frac (row, "nutrient_pct"), feed_l (row));
}

static const CheckAsk fertilizer_asks[] = {
  { "product", "oz", product },
  { "concentration", "ppm", concentration },
  { NULL }
};

static double
stock (CheckRow *row)
{
  return stead_nutrient_stock_l (check_number (row, "stock_ppm"), check_number (row, "final_ppm"),
                                 check_base (row, "final", "L gal"));
}

static const CheckAsk dilution_asks[] = {
  { "stock", "L", stock },
  { NULL }
};

/* heat loss */

/* A list of U in W/m²/°C, to be freed. */
static double *
u_of (CheckRow *row,
      gsize    *n)
{
  gboolean metric = check_has (row, "u_W_m2_C");
  const double *list = check_list (row, metric ? "u_W_m2_C" : "u_btu_h_sqft_F", n);
  double *u = g_new (double, *n);

  if (metric && check_has (row, "u_btu_h_sqft_F"))
    check_bad_input (row, "u_W_m2_C");
  for (gsize i = 0; i < *n; i++)
    u[i] = list[i] * (metric ? 1 : UA_PER_BTU / SQFT_M2);
  return u;
}

static double
ua_w (CheckRow *row)
{
  gsize n = 0;
  g_autofree double *areas = check_base_list (row, "area", "sqft m2", &n);
  g_autofree double *u = u_of (row, &n);
  g_autofree SteadGreenhouseSkin *skin = g_new (SteadGreenhouseSkin, n);

  for (gsize i = 0; i < n; i++)
    skin[i] = (SteadGreenhouseSkin) { areas[i], u[i] };
  return stead_greenhouse_ua_w_c (skin, n);
}

static double
loss_ua (CheckRow *row)
{
  return ua_w (row) / UA_PER_BTU;
}

static double
loss_w (CheckRow *row)
{
  return stead_greenhouse_loss_w (ua_w (row), difference_c (row, "dt"));
}

static double
loss_btu_h (CheckRow *row)
{
  return loss_w (row) / W_PER_BTU_H;
}

static double
leak_btu_h (CheckRow *row)
{
  double ua = stead_greenhouse_leak_ua_w_c (volume_m3 (row),
                                            check_number (row, "ach"));

  return stead_greenhouse_loss_w (ua, difference_c (row, "dt")) / W_PER_BTU_H;
}

static const CheckAsk loss_asks[] = {
  { "ua", "Btu/h/F", loss_ua },
  { "conduction", "Btu/h", loss_btu_h },
  { "conduction_W", "W", loss_w },
  { "leakage", "Btu/h", leak_btu_h },
  { NULL }
};

/* fuel, season heat */

static const char * const fuels[] = { "propane", "natural_gas", "fuel_oil", NULL };

static double
heat_needed_kwh (CheckRow *row)
{
  if (!check_has (row, "heat_btu"))
    return check_number (row, "heat_btu_h") * check_number (row, "period_h") * BTU_J / J_PER_KWH;
  if (check_has (row, "heat_btu_h"))
    return check_bad_input (row, "heat_btu_h");
  return check_number (row, "heat_btu") * BTU_J / J_PER_KWH;
}

/* Liters or cubic meters. */
static double
fuel_needed (CheckRow  *row,
             SteadFuel  fuel)
{
  return stead_fuel_needed (fuel, heat_needed_kwh (row), check_frac (row, "efficiency_pct"));
}

static double
fuel_gallons (CheckRow *row)
{
  int fuel = check_word (row, "fuel", fuels, -1);

  if (fuel == STEAD_FUEL_NATURAL_GAS)
    return check_bad_input (row, "fuel");
  return fuel_needed (row, (SteadFuel) fuel) / GALLON_L;
}

static double
fuel_ccf (CheckRow *row)
{
  int fuel = check_word (row, "fuel", fuels, -1);

  if (fuel != STEAD_FUEL_NATURAL_GAS)
    return check_bad_input (row, "fuel");
  return fuel_needed (row, (SteadFuel) fuel) / (100 * CUFT_M3);
}

static double
fuel_heat (CheckRow *row)
{
  return heat_needed_kwh (row) * J_PER_KWH / BTU_J;
}

static const CheckAsk fuel_asks[] = {
  { "fuel_gal", "gal", fuel_gallons },
  { "fuel_ccf", "ccf", fuel_ccf },
  { "heat", "Btu", fuel_heat },
  { NULL }
};

static double
season_heat (CheckRow *row)
{
  double ua = check_has (row, "ua_W_C") ? check_number (row, "ua_W_C")
                                        : check_number (row, "ua_btu_h_F") * UA_PER_BTU;

  if (check_has (row, "ua_W_C") && check_has (row, "ua_btu_h_F"))
    return check_bad_input (row, "ua_W_C");
  return stead_season_heat_kwh (ua, difference_c (row, "hdd")) * J_PER_KWH / BTU_J / 1e6;
}

static const CheckAsk season_asks[] = {
  { "heat", "million Btu", season_heat },
  { NULL }
};

/* fan airflow */

static double
flow_by_floor (CheckRow *row)
{
  static const char * const shades[] = { "0", "40", "50", "60", NULL };
  g_autoptr(GError) error = NULL;
  double floor_m2 = check_base (row, "length", "ft m") * check_base (row, "width", "ft m");
  double rate = check_number (row, "cfm_per_sqft") * CUFT_M3 * 60 / SQFT_M2;
  double flow;

  check_word (row, "shade_pct", shades, 0);
  if (!stead_fan_flow_floor_m3_h (floor_m2, rate, check_frac_or (row, "shade_pct", 0), &flow, &error))
    return check_answer_none (row, error);
  return flow;
}

static double
airflow (CheckRow *row)
{
  double flow;

  if (!check_has_base (row, "volume", "cuft m3"))
    flow = flow_by_floor (row);
  else if (check_has (row, "cfm_per_sqft") || check_number_or (row, "shade_pct", 0) != 0)
    return check_bad_input (row, "volume_cuft");
  else
    flow = stead_fan_flow_volume_m3_h (volume_m3 (row),
                                       check_number (row, "air_changes_min"));
  return flow / (CUFT_M3 * 60);
}

static const CheckAsk fan_asks[] = {
  { "airflow", "cfm", airflow },
  { NULL }
};

const CheckTopic check_greenhouse_topics[] = {
  { "vapour pressure",
    "temp_C temp_F rh_pct tmin_C tmin_F tmax_C tmax_F rh_min_pct rh_max_pct", vapor_asks },
  { "daily light", "ppfd_umol_m2_s light_h dli_mol_m2_d", light_asks },
  { "fertiliser",
    "target_ppm nutrient_pct water_gal water_L stock_gal stock_L injector_ratio product_oz "
    "product_lb product_g product_kg", fertilizer_asks },
  { "dilution", "stock_ppm final_ppm final_L final_gal", dilution_asks },
  { "heat loss",
    "area_sqft area_m2 u_btu_h_sqft_F u_W_m2_C dt_F dt_C volume_cuft volume_m3 ach", loss_asks },
  { "fuel", "heat_btu efficiency_pct fuel heat_btu_h period_h", fuel_asks },
  { "season heat", "ua_btu_h_F ua_W_C hdd_F hdd_C", season_asks },
  { "fan airflow",
    "length_ft length_m width_ft width_m cfm_per_sqft volume_cuft volume_m3 air_changes_min "
    "shade_pct", fan_asks },
  { NULL }
};

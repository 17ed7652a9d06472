/* stead-crop.c - plants, room and yield of a crop. */
#include "config.h"

#include "core/stead-crop.h"
#include "core/stead-round.h"
#include "core/stead-us-units.h"

#include <math.h>

#define TON_KG (2000 * STEAD_POUND_KG)
#define ACRE_M2 (43560 * 0.09290304)

/* Readings taken in °F must meet a limit in °F after the way through °C. */
#define NEAR_C 1e-9

static double
f_to_c (double f)
{
  return (f - 32) / 1.8;
}

void
stead_crop_tomato_rule (SteadDegreeDayRule *out_rule)
{
  g_return_if_fail (out_rule != NULL);

  *out_rule = (SteadDegreeDayRule) { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };
}

void
stead_crop_density_range (SteadCropKind  kind,
                          double        *out_least,
                          double        *out_most)
{
  if (out_least != NULL)
    *out_least = kind == STEAD_CROP_KIND_LEAFY ? 20 : 2.5;
  if (out_most != NULL)
    *out_most = kind == STEAD_CROP_KIND_LEAFY ? 25 : 4;
}

double
stead_crop_plants (double area_m2,
                   double density_m2)
{
  return area_m2 * density_m2;
}

double
stead_crop_density (double row_m,
                    double plant_m)
{
  return row_m > 0 && plant_m > 0 ? 1 / (row_m * plant_m) : NAN;
}

gint64
stead_crop_bed_plants (double length_m,
                       double width_m,
                       double row_m,
                       double plant_m)
{
  double rows;
  double plants;

  g_return_val_if_fail (row_m > 0 && plant_m > 0, 0);

  rows = stead_round_down (width_m / row_m);
  plants = stead_round_down (length_m / plant_m);
  return rows > 0 && plants > 0 ? (gint64) (rows * plants) : 0;
}

double
stead_crop_area_m2 (double plants,
                    double density_m2)
{
  return density_m2 > 0 ? plants / density_m2 : NAN;
}

double
stead_crop_yield_plant_kg (double harvest_kg,
                           double plants)
{
  return plants > 0 ? harvest_kg / plants : NAN;
}

double
stead_crop_yield_m2_kg (double harvest_kg,
                        double area_m2)
{
  return area_m2 > 0 ? harvest_kg / area_m2 : NAN;
}

double
stead_crop_tons_per_acre (double yield_m2_kg)
{
  return yield_m2_kg * ACRE_M2 / TON_KG;
}

SteadFruitSet
stead_fruit_set (double day_c,
                 double night_c)
{
  if (night_c < f_to_c (55) - NEAR_C || night_c > f_to_c (75) + NEAR_C
      || day_c > f_to_c (95) + NEAR_C)
    return STEAD_FRUIT_SET_POOR;
  /* A reading that is missing is never good. */
  if (night_c >= f_to_c (60) - NEAR_C && night_c <= f_to_c (70) + NEAR_C
      && day_c <= f_to_c (90) + NEAR_C)
    return STEAD_FRUIT_SET_GOOD;
  return STEAD_FRUIT_SET_UNSURE;
}

/* stead-nutrient.c - fertilizer for a concentration, and thinning a stock. */
#include "config.h"

#include "core/stead-nutrient.h"

#include <math.h>

#define MG_PER_G 1000

double
stead_nutrient_product_g (double target_ppm,
                          double nutrient_frac,
                          double water_l)
{
  if (!(nutrient_frac > 0 && nutrient_frac <= 1))
    return NAN;
  return target_ppm * water_l / MG_PER_G / nutrient_frac;
}

double
stead_nutrient_ppm (double product_g,
                    double nutrient_frac,
                    double water_l)
{
  if (!(nutrient_frac >= 0 && nutrient_frac <= 1 && water_l > 0))
    return NAN;
  return product_g * nutrient_frac * MG_PER_G / water_l;
}

double
stead_nutrient_stock_l (double stock_ppm,
                        double final_ppm,
                        double final_l)
{
  if (!(stock_ppm > 0 && final_ppm >= 0 && stock_ppm >= final_ppm))
    return NAN;
  return final_ppm * final_l / stock_ppm;
}

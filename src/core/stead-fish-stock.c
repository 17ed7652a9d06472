/* stead-fish-stock.c - how many fish a tank holds, and what it yields. */
#include "config.h"

#include "core/stead-fish-stock.h"
#include "core/stead-flock.h"

#include <math.h>

SteadFishDensity
stead_fish_density_class (double density_kg_m3)
{
  static const double most[] = {
    [STEAD_FISH_DENSITY_SCHOOL] = STEAD_FISH_PLAN_DENSITY_KG_M3,
    [STEAD_FISH_DENSITY_AERATED] = 30,
    [STEAD_FISH_DENSITY_OXYGEN] = 120,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (most); i++)
    if (density_kg_m3 <= most[i])
      return (SteadFishDensity) i;
  return STEAD_FISH_DENSITY_BEYOND;
}

double
stead_fish_biomass_kg (double fish,
                       double mean_g)
{
  return fish * mean_g / 1000;
}

double
stead_fish_biomass_in_kg (double volume_m3,
                          double density_kg_m3)
{
  return volume_m3 * density_kg_m3;
}

double
stead_fish_density_kg_m3 (double fish,
                          double mean_g,
                          double volume_m3)
{
  return volume_m3 > 0 ? stead_fish_biomass_kg (fish, mean_g) / volume_m3 : NAN;
}

double
stead_fish_harvest_density_kg_m3 (double stocked_per_m3,
                                  double survival_frac,
                                  double harvest_g)
{
  double alive = stead_flock_survivors (stocked_per_m3, 1 - survival_frac);

  return stead_fish_biomass_kg (alive, harvest_g);
}

double
stead_fish_to_stock (double volume_m3,
                     double density_kg_m3,
                     double harvest_g,
                     double survival_frac)
{
  if (!(harvest_g > 0 && survival_frac > 0))
    return NAN;
  return 1000 * stead_fish_biomass_in_kg (volume_m3, density_kg_m3) / (harvest_g * survival_frac);
}

double
stead_fish_alive (double fish,
                  double survival_frac,
                  double days,
                  double day)
{
  if (!(fish >= 0 && survival_frac >= 0 && survival_frac <= 1 && days > 0 && day >= 0 && day <= days))
    return NAN;
  return fish * pow (survival_frac, day / days);
}

double
stead_fish_annual_yield_kg (double volume_m3,
                            double density_kg_m3,
                            double interval_weeks)
{
  if (!(interval_weeks > 0))
    return NAN;
  return stead_fish_biomass_in_kg (volume_m3, density_kg_m3) * 52 / interval_weeks;
}

/* stead-fish-stock.h - how many fish a tank holds, and what it yields.
 *
 * Sources: tank culture of tilapia, part 3 (densities); update on tilapia and
 * vegetable production in the UVI aquaponic system (harvest, yield of a year).
 */
#pragma once

#include "core/stead-us-units.h"

#include <glib.h>

G_BEGIN_DECLS

/* One pound in one US gallon, in kg/m³. */
#define STEAD_FISH_KG_M3_PER_LB_GAL (1000 * STEAD_POUND_KG / STEAD_GALLON_L)

/* What a density asks of the keeper. */
typedef enum
{
  STEAD_FISH_DENSITY_SCHOOL,   /* to 20 kg/m³; common practice, no source */
  STEAD_FISH_DENSITY_AERATED,  /* to 30: much air and practised hands */
  STEAD_FISH_DENSITY_OXYGEN,   /* to 120: only with pure oxygen */
  STEAD_FISH_DENSITY_BEYOND,
} SteadFishDensity;

/* What the program plans with in a tank without pure oxygen, kg/m³. */
#define STEAD_FISH_PLAN_DENSITY_KG_M3 20

/**
 * stead_fish_density_class: the least class that holds a density; ends belong to it
 */
SteadFishDensity stead_fish_density_class (double density_kg_m3);

/**
 * stead_fish_biomass_kg: number x mean weight
 * stead_fish_biomass_in_kg: volume x density
 */
double stead_fish_biomass_kg (double fish,
                              double mean_g);
double stead_fish_biomass_in_kg (double volume_m3,
                                 double density_kg_m3);

/**
 * stead_fish_density_kg_m3:
 * @fish: how many
 * @mean_g: mean weight of one
 * @volume_m3: water, above 0
 *
 * Returns: kg of fish in a cubic meter; NAN without water
 */
double stead_fish_density_kg_m3 (double fish,
                                 double mean_g,
                                 double volume_m3);

/**
 * stead_fish_harvest_density_kg_m3: stocked in a cubic meter x survival x weight at harvest
 */
double stead_fish_harvest_density_kg_m3 (double stocked_per_m3,
                                         double survival_frac,
                                         double harvest_g);

/**
 * stead_fish_to_stock:
 * @volume_m3: water
 * @density_kg_m3: wanted at harvest
 * @harvest_g: weight of a fish then, above 0
 * @survival_frac: share that lives until then, above 0
 *
 * Returns: fish to put in, not rounded (round down: less is kinder); NAN if
 *   nothing can be divided by
 */
double stead_fish_to_stock (double volume_m3,
                            double density_kg_m3,
                            double harvest_g,
                            double survival_frac);

/**
 * stead_fish_alive:
 * @fish: at the start
 * @survival_frac: share that lives to the end, 0 to 1
 * @days: all days, above 0
 * @day: how many of them are over, 0 to @days
 *
 * Deaths by the same share each day, as plans do; a log knows better.
 *
 * Returns: fish alive; NAN outside the ranges
 */
double stead_fish_alive (double fish,
                         double survival_frac,
                         double days,
                         double day);

/**
 * stead_fish_annual_yield_kg:
 * @volume_m3: of the tank that is harvested
 * @density_kg_m3: at harvest
 * @interval_weeks: between two harvests, above 0
 *
 * Returns: kg a year of 52 weeks; NAN without an interval
 */
double stead_fish_annual_yield_kg (double volume_m3,
                                   double density_kg_m3,
                                   double interval_weeks);

G_END_DECLS

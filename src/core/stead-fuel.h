/* stead-fuel.h - what a fuel holds, how much of it a heat needs, and what that costs.
 *
 * Heat is counted in kWh; a million Btu is 293 of them.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* kWh in a Btu of the international table. */
#define STEAD_KWH_PER_BTU (1055.05585262 / 3.6e6)

typedef enum
{
  STEAD_FUEL_PROPANE,      /* liters of liquid */
  STEAD_FUEL_NATURAL_GAS,  /* m³ */
  STEAD_FUEL_OIL,          /* liters */
  STEAD_FUEL_ELECTRICITY,  /* kWh */
} SteadFuel;

#define STEAD_N_FUELS (STEAD_FUEL_ELECTRICITY + 1)

/**
 * stead_fuel_id:
 * Returns: (transfer none): stable, for files: "fuel_oil"
 */
const char *stead_fuel_id (SteadFuel fuel);

/**
 * stead_fuel_name:
 * Returns: (transfer none): in the person's language: "Fuel oil"
 */
const char *stead_fuel_name (SteadFuel fuel);

/**
 * stead_fuel_content_kwh:
 * Worked back from an example of heat lost through vents (greenhouse trade paper):
 * propane 92,400 Btu a gallon, oil 137,800, gas 103,000 for 100 cubic feet.
 * Electricity is all heat.
 *
 * Returns: heat in one liter, m³ or kWh of it, as beside its name above
 */
double stead_fuel_content_kwh (SteadFuel fuel);

/**
 * stead_fuel_needed:
 * @fuel: which
 * @heat_kwh: heat that the house needs, 0 or more
 * @efficiency_frac: share of the fuel's heat that stays in the house, above 0 to 1
 *
 * Returns: liters, m³ or kWh of the fuel; NAN for another efficiency
 */
double stead_fuel_needed (SteadFuel fuel,
                          double    heat_kwh,
                          double    efficiency_frac);

/**
 * stead_fuel_heat_kwh:
 * @fuel: which
 * @amount: liters, m³ or kWh burned, 0 or more
 * @efficiency_frac: share of the fuel's heat that stays in the house, above 0 to 1
 *
 * Returns: heat that the house got; NAN for another efficiency
 */
double stead_fuel_heat_kwh (SteadFuel fuel,
                            double    amount,
                            double    efficiency_frac);

/**
 * stead_fuel_heat_cents:
 * @fuel: which
 * @heat_kwh: heat that the house needs
 * @efficiency_frac: share of the fuel's heat that stays in the house, above 0 to 1
 * @unit_cents: price of a liter, m³ or kWh
 *
 * To compare fuels, ask for the same heat.
 *
 * Returns: what the heat costs, unrounded; NAN for another efficiency
 */
double stead_fuel_heat_cents (SteadFuel fuel,
                              double    heat_kwh,
                              double    efficiency_frac,
                              double    unit_cents);

G_END_DECLS

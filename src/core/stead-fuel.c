/* stead-fuel.c - what a fuel holds, how much of it a heat needs, and what that costs. */
#include "config.h"

#include "core/stead-fuel.h"

#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define CCF_M3 2.8316846592

static const struct
{
  const char *id;
  const char *name;
  double      content_kwh;
} fuels[STEAD_N_FUELS] = {
  [STEAD_FUEL_PROPANE] = { "propane", NC_("fuel", "Propane"),
                           92400 * STEAD_KWH_PER_BTU / STEAD_GALLON_L },
  [STEAD_FUEL_NATURAL_GAS] = { "natural_gas", NC_("fuel", "Natural gas"),
                               103000 * STEAD_KWH_PER_BTU / CCF_M3 },
  [STEAD_FUEL_OIL] = { "fuel_oil", NC_("fuel", "Fuel oil"),
                       137800 * STEAD_KWH_PER_BTU / STEAD_GALLON_L },
  [STEAD_FUEL_ELECTRICITY] = { "electricity", NC_("fuel", "Electricity"), 1 },
};

static gboolean
is_fuel (SteadFuel fuel)
{
  return (gsize) fuel < G_N_ELEMENTS (fuels);
}

const char *
stead_fuel_id (SteadFuel fuel)
{
  g_return_val_if_fail (is_fuel (fuel), "");
  return fuels[fuel].id;
}

const char *
stead_fuel_name (SteadFuel fuel)
{
  g_return_val_if_fail (is_fuel (fuel), "");
  return g_dpgettext2 (GETTEXT_PACKAGE, "fuel", fuels[fuel].name);
}

double
stead_fuel_content_kwh (SteadFuel fuel)
{
  g_return_val_if_fail (is_fuel (fuel), NAN);
  return fuels[fuel].content_kwh;
}

static gboolean
is_efficiency (double efficiency_frac)
{
  return efficiency_frac > 0 && efficiency_frac <= 1;
}

double
stead_fuel_needed (SteadFuel fuel,
                   double    heat_kwh,
                   double    efficiency_frac)
{
  return is_efficiency (efficiency_frac)
         ? heat_kwh / (efficiency_frac * stead_fuel_content_kwh (fuel)) : NAN;
}

double
stead_fuel_heat_kwh (SteadFuel fuel,
                     double    amount,
                     double    efficiency_frac)
{
  return is_efficiency (efficiency_frac)
         ? amount * efficiency_frac * stead_fuel_content_kwh (fuel) : NAN;
}

double
stead_fuel_heat_cents (SteadFuel fuel,
                       double    heat_kwh,
                       double    efficiency_frac,
                       double    unit_cents)
{
  return stead_fuel_needed (fuel, heat_kwh, efficiency_frac) * unit_cents;
}

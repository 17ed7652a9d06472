/* stead-depreciation.c - the yearly share of a thing that lasts. */
#include "config.h"

#include "core/stead-depreciation.h"
#include "core/stead-round.h"

#include <math.h>

gboolean
stead_thing_is_depreciated (SteadThing thing)
{
  return thing != STEAD_THING_SUPPLIES && thing != STEAD_THING_MARKET_STOCK;
}

static double
straight_line_value (const SteadDepreciable *thing,
                     double                  years)
{
  double lost = thing->basis_cents - thing->salvage_cents;

  return thing->basis_cents - lost * MIN (1, years / thing->life_years);
}

/* 2 / life of what is left, each year, never below the salvage value; the last
 * year takes what is left.  A part year gets its part of that year's charge. */
static double
declining_value (const SteadDepreciable *thing,
                 double                  years)
{
  double rate = MIN (1, 2 / thing->life_years);
  double start = floor (years);
  double span = MIN (1, thing->life_years - start);
  gboolean last = start + 1 >= thing->life_years - STEAD_ROUND_NOISE;
  double value = MAX (thing->salvage_cents, thing->basis_cents * pow (1 - rate, start));
  double left = value - thing->salvage_cents;
  double charge = last ? left : MIN (left, rate * value);

  return value - charge * (years - start) / span;
}

double
stead_depreciation_book_value (const SteadDepreciable *thing,
                               double                  years)
{
  g_return_val_if_fail (thing != NULL, 0);
  g_return_val_if_fail (thing->method != STEAD_DEPRECIATION_UNITS, 0);
  g_return_val_if_fail (thing->life_years > 0, 0);
  g_return_val_if_fail (thing->salvage_cents >= 0 && thing->salvage_cents <= thing->basis_cents, 0);

  if (!(years > 0))
    return thing->basis_cents;
  if (years >= thing->life_years)
    return thing->salvage_cents;
  if (thing->method == STEAD_DEPRECIATION_STRAIGHT_LINE)
    return straight_line_value (thing, years);
  return declining_value (thing, years);
}

double
stead_depreciation_between (const SteadDepreciable *thing,
                            double                  from_years,
                            double                  to_years)
{
  g_return_val_if_fail (thing != NULL, 0);
  g_return_val_if_fail (from_years <= to_years, 0);

  return stead_depreciation_book_value (thing, from_years)
         - stead_depreciation_book_value (thing, to_years);
}

double
stead_depreciation_unit_rate (const SteadDepreciable *thing)
{
  g_return_val_if_fail (thing != NULL, 0);
  g_return_val_if_fail (thing->life_units > 0, 0);
  g_return_val_if_fail (thing->salvage_cents >= 0 && thing->salvage_cents <= thing->basis_cents, 0);

  return (thing->basis_cents - thing->salvage_cents) / thing->life_units;
}

double
stead_depreciation_for_use (const SteadDepreciable *thing,
                            double                  used_before,
                            double                  units)
{
  double from;
  double to;

  g_return_val_if_fail (thing != NULL, 0);
  g_return_val_if_fail (thing->method == STEAD_DEPRECIATION_UNITS, 0);
  g_return_val_if_fail (thing->life_units > 0, 0);
  g_return_val_if_fail (used_before >= 0 && units >= 0, 0);

  from = MIN (used_before, thing->life_units);
  to = MIN (used_before + units, thing->life_units);
  return (to - from) * stead_depreciation_unit_rate (thing);
}

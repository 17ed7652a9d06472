/* stead-sensitivity.c - how far profit moves when an input moves. */
#include "config.h"

#include "core/stead-sensitivity.h"

#include <math.h>

void
stead_cvp_changed (const SteadCvp       *base,
                   const SteadCvpChange *change,
                   SteadCvp             *out)
{
  g_return_if_fail (base != NULL && change != NULL && out != NULL);

  *out = *base;
  out->price_cents *= 1 + change->price_frac;
  out->planned_units *= 1 + change->units_frac;
  out->variable_cents += change->variable_cents;
  out->fixed_cents += change->fixed_cents;
}

double
stead_cvp_profit_change_cents (const SteadCvp       *base,
                               const SteadCvpChange *change)
{
  SteadCvp changed;

  g_return_val_if_fail (base != NULL && change != NULL, NAN);

  stead_cvp_changed (base, change, &changed);
  return stead_cvp_profit_cents (&changed, changed.planned_units)
         - stead_cvp_profit_cents (base, base->planned_units);
}

double
stead_cvp_swing_cents (const SteadCvp       *base,
                       const SteadCvpChange *change)
{
  SteadCvpChange opposite;

  g_return_val_if_fail (base != NULL && change != NULL, NAN);

  opposite = (SteadCvpChange) { -change->price_frac, -change->units_frac,
                                -change->variable_cents, -change->fixed_cents };
  return fabs (stead_cvp_profit_change_cents (base, change)
               - stead_cvp_profit_change_cents (base, &opposite));
}

double
stead_leverage (double total_margin_cents,
                double profit_cents)
{
  return profit_cents != 0 ? total_margin_cents / profit_cents : NAN;
}

/* stead-price-point.c - prices to choose between. */
#include "config.h"

#include "core/stead-price-point.h"

#include <math.h>

gint64
stead_price_easy_below (gint64 cents,
                        gint64 step_cents)
{
  g_return_val_if_fail (cents >= 0 && step_cents > 0, 0);
  return cents / step_cents * step_cents;
}

gint64
stead_price_easy_above (gint64 cents,
                        gint64 step_cents)
{
  g_return_val_if_fail (cents >= 0 && step_cents > 0, 0);
  return (cents + step_cents - 1) / step_cents * step_cents;
}

double
stead_price_same_profit_units (double price_cents,
                               double units,
                               double other_cents,
                               double unit_cents)
{
  if (!(other_cents > unit_cents))
    return NAN;
  return (price_cents - unit_cents) * units / (other_cents - unit_cents);
}

static double
earned (const SteadDemandLine *line,
        double                 price,
        double                 unit_cents)
{
  return (price - unit_cents) * MAX (0, line->intercept + line->slope * price);
}

double
stead_price_best_cents (const SteadDemandLine *line,
                        double                 unit_cents)
{
  double best, inside;

  g_return_val_if_fail (line != NULL, NAN);
  best = earned (line, line->x_high, unit_cents) >= earned (line, line->x_low, unit_cents) ? line->x_high : line->x_low;
  if (!(line->slope < 0))
    return best;
  inside = (unit_cents - line->intercept / line->slope) / 2;
  if (inside > line->x_low && inside < line->x_high && earned (line, inside, unit_cents) > earned (line, best, unit_cents))
    best = inside;
  return best;
}

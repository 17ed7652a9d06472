/* stead-absorption.c - profit with and without fixed cost in the stock. */
#include "config.h"

#include "core/stead-absorption.h"

#include <math.h>

double
stead_making_unit_cents (const SteadMaking *making,
                         SteadCosting       costing)
{
  g_return_val_if_fail (making != NULL, NAN);

  if (costing == STEAD_COSTING_VARIABLE)
    return making->variable_make_cents;
  return making->made_units > 0
         ? making->variable_make_cents + making->fixed_make_cents / making->made_units : NAN;
}

double
stead_making_profit_cents (const SteadMaking *making,
                           SteadCosting       costing)
{
  double unit = stead_making_unit_cents (making, costing);
  double profit;

  g_return_val_if_fail (making != NULL, NAN);

  profit = (making->price_cents - unit - making->variable_sell_cents) * making->sold_units
           - making->fixed_sell_cents;
  return costing == STEAD_COSTING_VARIABLE ? profit - making->fixed_make_cents : profit;
}

double
stead_making_stock_cents (const SteadMaking *making,
                          SteadCosting       costing)
{
  double unit = stead_making_unit_cents (making, costing);

  g_return_val_if_fail (making != NULL, NAN);
  return unit * (making->begin_units + making->made_units - making->sold_units);
}

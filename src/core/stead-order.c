/* stead-order.c - how much to make or to order. */
#include "config.h"

#include "core/stead-order.h"
#include "core/stead-round.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>

double
stead_demand_mean (const SteadDemand *demand)
{
  double mean = 0;

  g_return_val_if_fail (demand != NULL, NAN);

  switch (demand->shape)
    {
    case STEAD_DEMAND_UNIFORM:
      return (demand->low + demand->high) / 2;
    case STEAD_DEMAND_DISCRETE:
      for (gsize i = 0; i < demand->n; i++)
        mean += demand->values[i] * demand->chances[i];
      return mean;
    case STEAD_DEMAND_NORMAL:
    default:
      return demand->mean;
    }
}

double
stead_demand_chance_at_most (const SteadDemand *demand,
                             double             quantity)
{
  double chance = 0;

  g_return_val_if_fail (demand != NULL, NAN);

  switch (demand->shape)
    {
    case STEAD_DEMAND_UNIFORM:
      return demand->high > demand->low
             ? CLAMP ((quantity - demand->low) / (demand->high - demand->low), 0, 1) : NAN;
    case STEAD_DEMAND_DISCRETE:
      for (gsize i = 0; i < demand->n; i++)
        if (demand->values[i] <= quantity + STEAD_ROUND_NOISE)
          chance += demand->chances[i];
      return chance;
    case STEAD_DEMAND_NORMAL:
    default:
      return demand->sd > 0 ? gsl_cdf_ugaussian_P ((quantity - demand->mean) / demand->sd) : NAN;
    }
}

/* Mean of demand beyond @quantity. */
static double
expected_short (const SteadDemand *demand,
                double             quantity)
{
  double sum = 0;
  double z;
  double q;

  switch (demand->shape)
    {
    case STEAD_DEMAND_UNIFORM:
      q = CLAMP (quantity, demand->low, demand->high);
      return (demand->high - q) * (demand->high - q) / (2 * (demand->high - demand->low))
             + (q - quantity > 0 ? q - quantity : 0);
    case STEAD_DEMAND_DISCRETE:
      for (gsize i = 0; i < demand->n; i++)
        sum += demand->chances[i] * MAX (0, demand->values[i] - quantity);
      return sum;
    case STEAD_DEMAND_NORMAL:
    default:
      z = (quantity - demand->mean) / demand->sd;
      return demand->sd * (gsl_ran_ugaussian_pdf (z) - z * gsl_cdf_ugaussian_Q (z));
    }
}

double
stead_order_once_ratio (const SteadOrderOnce *order)
{
  double both;

  g_return_val_if_fail (order != NULL, NAN);
  both = order->short_cents + order->over_cents;
  return both > 0 ? order->short_cents / both : NAN;
}

double
stead_order_once_quantity (const SteadOrderOnce *order)
{
  double ratio = stead_order_once_ratio (order);
  const SteadDemand *demand = &order->demand;
  double chance = 0;

  if (!(ratio > 0 && ratio < 1))
    return NAN;
  switch (demand->shape)
    {
    case STEAD_DEMAND_UNIFORM:
      return demand->low + ratio * (demand->high - demand->low);
    case STEAD_DEMAND_DISCRETE:
      for (gsize i = 0; i < demand->n; i++)
        {
          chance += demand->chances[i];
          if (chance >= ratio - STEAD_ROUND_NOISE)
            return demand->values[i];
        }
      return NAN;
    case STEAD_DEMAND_NORMAL:
    default:
      return demand->mean + gsl_cdf_ugaussian_Pinv (ratio) * demand->sd;
    }
}

double
stead_order_once_cost_cents (const SteadOrderOnce *order,
                             double                quantity)
{
  double too_few;
  double too_many;

  g_return_val_if_fail (order != NULL, NAN);
  too_few = expected_short (&order->demand, quantity);
  /* What is left over is what was made, less what was asked for and there. */
  too_many = quantity - stead_demand_mean (&order->demand) + too_few;
  return order->short_cents * too_few + order->over_cents * too_many;
}

double
stead_order_once_profit_cents (const SteadOrderOnce *order,
                               double                quantity)
{
  g_return_val_if_fail (order != NULL, NAN);
  return order->short_cents * stead_demand_mean (&order->demand)
         - stead_order_once_cost_cents (order, quantity);
}

double
stead_order_size (double demand_year,
                  double order_cents,
                  double holding_cents)
{
  return demand_year > 0 && order_cents > 0 && holding_cents > 0
         ? sqrt (2 * demand_year * order_cents / holding_cents) : NAN;
}

double
stead_order_size_cost_cents (double demand_year,
                             double order_cents,
                             double holding_cents,
                             double quantity)
{
  return quantity > 0 ? order_cents * demand_year / quantity + holding_cents * quantity / 2 : NAN;
}

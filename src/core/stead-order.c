/* stead-order.c - how much to make or to order. */
#include "config.h"

#include "core/stead-chance.h"
#include "core/stead-order.h"
#include "core/stead-round.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <math.h>

/* Beyond this a Poisson demand is a slip of the pen. */
#define MOST_POISSON 1e6

static SteadThreePoint
guess_of (const SteadDemand *demand)
{
  return (SteadThreePoint) { demand->low, demand->likely, demand->high };
}

static gboolean
is_triangle (const SteadDemand *demand)
{
  return demand->high > demand->low && demand->likely >= demand->low && demand->likely <= demand->high;
}

static gboolean
is_poisson (const SteadDemand *demand)
{
  return demand->mean > 0 && demand->mean <= MOST_POISSON;
}

/* Chance of @count or fewer, of more; nobody is less than none. */
static double
poisson_at_most (double mean,
                 double count)
{
  if (count < 0)
    return 0;
  return count < G_MAXUINT ? gsl_cdf_poisson_P ((unsigned int) count, mean) : 1;
}

static double
poisson_more (double mean,
              double count)
{
  if (count < 0)
    return 1;
  return count < G_MAXUINT ? gsl_cdf_poisson_Q ((unsigned int) count, mean) : 0;
}

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
    case STEAD_DEMAND_TRIANGLE:
      return (demand->low + demand->likely + demand->high) / 3;
    case STEAD_DEMAND_POISSON:
    case STEAD_DEMAND_NORMAL:
    default:
      return demand->mean;
    }
}

double
stead_demand_chance_at_most (const SteadDemand *demand,
                             double             quantity)
{
  SteadThreePoint guess;
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
    case STEAD_DEMAND_POISSON:
      return is_poisson (demand) ? poisson_at_most (demand->mean, stead_round_down (quantity)) : NAN;
    case STEAD_DEMAND_TRIANGLE:
      guess = guess_of (demand);
      return is_triangle (demand) ? stead_triangle_chance_at_most (&guess, quantity) : NAN;
    case STEAD_DEMAND_NORMAL:
    default:
      return demand->sd > 0 ? gsl_cdf_ugaussian_P ((quantity - demand->mean) / demand->sd) : NAN;
    }
}

/* Integral of 1 - F from @quantity on; below the peak by way of that of F. */
static double
triangle_short (const SteadDemand *demand,
                double             quantity)
{
  double width = demand->high - demand->low;
  double over;

  if (!is_triangle (demand))
    return NAN;
  if (quantity >= demand->high)
    return 0;
  if (quantity >= demand->likely)
    return pow (demand->high - quantity, 3) / (3 * width * (demand->high - demand->likely));
  over = quantity > demand->low
         ? pow (quantity - demand->low, 3) / (3 * width * (demand->likely - demand->low)) : 0;
  return stead_demand_mean (demand) - quantity + over;
}

/* Sum of (k - q) p(k) over k above q, since k p(k) = mean p(k - 1). */
static double
poisson_short (const SteadDemand *demand,
               double             quantity)
{
  double whole = stead_round_down (quantity);

  if (!is_poisson (demand))
    return NAN;
  return MAX (0, demand->mean * poisson_more (demand->mean, whole - 1)
                 - quantity * poisson_more (demand->mean, whole));
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
    case STEAD_DEMAND_POISSON:
      return poisson_short (demand, quantity);
    case STEAD_DEMAND_TRIANGLE:
      return triangle_short (demand, quantity);
    case STEAD_DEMAND_NORMAL:
    default:
      z = (quantity - demand->mean) / demand->sd;
      return demand->sd * (gsl_ran_ugaussian_pdf (z) - z * gsl_cdf_ugaussian_Q (z));
    }
}

double
stead_demand_expected_short (const SteadDemand *demand,
                             double             quantity)
{
  g_return_val_if_fail (demand != NULL, NAN);
  return MAX (0, expected_short (demand, quantity));
}

double
stead_demand_expected_left (const SteadDemand *demand,
                            double             quantity)
{
  g_return_val_if_fail (demand != NULL, NAN);
  return MAX (0, quantity - stead_demand_mean (demand) + expected_short (demand, quantity));
}

double
stead_demand_chance_sold_out (const SteadDemand *demand,
                              double             quantity)
{
  double chance = 0;

  g_return_val_if_fail (demand != NULL, NAN);

  switch (demand->shape)
    {
    case STEAD_DEMAND_DISCRETE:
      for (gsize i = 0; i < demand->n; i++)
        if (demand->values[i] >= quantity - STEAD_ROUND_NOISE)
          chance += demand->chances[i];
      return chance;
    case STEAD_DEMAND_POISSON:
      return is_poisson (demand) ? poisson_more (demand->mean, stead_round_up (quantity) - 1) : NAN;
    default:
      return 1 - stead_demand_chance_at_most (demand, quantity);
    }
}

/* The first count that is enough with this chance: begun a little below where the bell
 * curve has it. */
static double
poisson_quantity (double mean,
                  double ratio)
{
  double sd = sqrt (mean);
  double count = MAX (0, floor (mean + sd * (gsl_cdf_ugaussian_Pinv (ratio) - 2)));

  while (count > 0 && poisson_at_most (mean, count - 1) >= ratio - STEAD_ROUND_NOISE)
    count = MAX (0, count - MAX (1, floor (sd)));
  while (poisson_at_most (mean, count) < ratio - STEAD_ROUND_NOISE)
    count++;
  return count;
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
  SteadThreePoint guess;
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
    case STEAD_DEMAND_POISSON:
      return is_poisson (demand) ? poisson_quantity (demand->mean, ratio) : NAN;
    case STEAD_DEMAND_TRIANGLE:
      guess = guess_of (demand);
      return is_triangle (demand) ? stead_triangle_quantile (&guess, ratio) : NAN;
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

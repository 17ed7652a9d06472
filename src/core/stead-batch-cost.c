/* stead-batch-cost.c - what one unit of a batch costs while the batch is still growing. */
#include "config.h"

#include "core/stead-batch-cost.h"

#include <math.h>

#include "core/stead-money.h"

double
stead_batch_unit_cents (const SteadBatchCost *cost)
{
  double output;

  g_return_val_if_fail (cost != NULL, NAN);
  output = cost->good_base + cost->expected_base;
  return output > 0 ? (cost->so_far_cents + cost->to_come_cents) / output : NAN;
}

gint64
stead_batch_left_cents (const SteadBatchCost *cost)
{
  g_return_val_if_fail (cost != NULL, 0);
  return MAX (0, stead_money_round (cost->so_far_cents) - cost->carried_cents);
}

gint64
stead_batch_harvest_cents (const SteadBatchCost *cost,
                           double                quantity,
                           gboolean              is_last)
{
  SteadBatchCost now;
  gint64 left;

  g_return_val_if_fail (cost != NULL, 0);
  g_return_val_if_fail (quantity >= 0, 0);
  if (!(quantity > 0))
    return 0;
  left = stead_batch_left_cents (cost);
  if (is_last)
    return left;
  now = *cost;
  now.expected_base = MAX (now.expected_base, quantity);
  return CLAMP (stead_money_round (stead_batch_unit_cents (&now) * quantity), 0, left);
}

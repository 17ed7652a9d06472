/* stead-sale-variance.c - why a sale day brought more or less than was planned. */
#include "config.h"

#include "core/stead-sale-variance.h"

#include <math.h>

static double
margin_of (const SteadSaleLine *line)
{
  return line->price_cents - line->cost_cents;
}

static double
all_units (const SteadSaleResult *result,
           gsize                  n)
{
  double sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += result->lines[i].units;
  return sum;
}

static double
left_cents (const SteadSaleResult *result,
            gsize                  n)
{
  double sum = -result->lost_cents - result->fixed_cents;

  for (gsize i = 0; i < n; i++)
    sum += result->lines[i].units * margin_of (&result->lines[i]);
  return sum;
}

static gboolean
can_be (const SteadSaleResult *result,
        gsize                  n)
{
  for (gsize i = 0; i < n; i++)
    if (!(result->lines[i].units >= 0))
      return FALSE;
  return isfinite (left_cents (result, n));
}

gboolean
stead_sale_variance (const SteadSaleResult *planned,
                     const SteadSaleResult *actual,
                     gsize                  n,
                     SteadSaleVariance     *out)
{
  SteadSaleVariance found = { 0 };
  double planned_units;
  double actual_units;

  g_return_val_if_fail (planned != NULL && actual != NULL && out != NULL, FALSE);
  g_return_val_if_fail ((planned->lines != NULL && actual->lines != NULL) || n == 0, FALSE);

  planned_units = all_units (planned, n);
  actual_units = all_units (actual, n);
  if (!can_be (planned, n) || !can_be (actual, n) || !(planned_units > 0))
    return FALSE;
  for (gsize i = 0; i < n; i++)
    {
      const SteadSaleLine *plan = &planned->lines[i];
      const SteadSaleLine *came = &actual->lines[i];
      double share = plan->units / planned_units;

      found.price_cents += (came->price_cents - plan->price_cents) * came->units;
      found.cost_cents += (plan->cost_cents - came->cost_cents) * came->units;
      found.quantity_cents += (actual_units - planned_units) * share * margin_of (plan);
      found.mix_cents += (came->units - actual_units * share) * margin_of (plan);
    }
  found.lost_cents = planned->lost_cents - actual->lost_cents;
  found.fixed_cents = planned->fixed_cents - actual->fixed_cents;
  found.planned_cents = left_cents (planned, n);
  found.actual_cents = left_cents (actual, n);
  *out = found;
  return TRUE;
}

/* stead-cost-change.c - why one unit costs more or less than it did. */
#include "config.h"

#include "core/stead-cost-change.h"

double
stead_cost_factors_cents (const SteadCostFactors *factors)
{
  g_return_val_if_fail (factors != NULL, 0);
  return factors->price * factors->use / factors->yield / factors->volume;
}

void
stead_cost_change (const SteadCostFactors *before,
                   const SteadCostFactors *after,
                   double                  out_cents[STEAD_N_CHANGE_KINDS])
{
  SteadCostFactors at;
  double cents;

  g_return_if_fail (before != NULL && after != NULL && out_cents != NULL);
  at = *before;
  cents = stead_cost_factors_cents (&at);
  for (int kind = 0; kind < STEAD_N_CHANGE_KINDS; kind++)
    {
      double next;

      switch ((SteadChangeKind) kind)
        {
        case STEAD_CHANGE_USE: at.use = after->use; break;
        case STEAD_CHANGE_YIELD: at.yield = after->yield; break;
        case STEAD_CHANGE_VOLUME: at.volume = after->volume; break;
        case STEAD_CHANGE_PRICE:
        default: at.price = after->price; break;
        }
      next = stead_cost_factors_cents (&at);
      out_cents[kind] = next - cents;
      cents = next;
    }
}

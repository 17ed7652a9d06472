/* stead-choice.c - choices by what they add, not by what is already spent. */
#include "config.h"

#include "core/stead-choice.h"

#include <math.h>

double
stead_way_value_cents (const SteadWay *way)
{
  g_return_val_if_fail (way != NULL, NAN);
  return way->quantity * (way->price_cents - way->cost_cents) - way->fixed_cents;
}

double
stead_avoidable_cents (const double *part_cents,
                       gsize         n,
                       double        units)
{
  double sum = 0;

  g_return_val_if_fail (part_cents != NULL || n == 0, NAN);
  for (gsize i = 0; i < n; i++)
    sum += part_cents[i];
  return sum * units;
}

double
stead_partial_budget_cents (const SteadPartialBudget *budget)
{
  g_return_val_if_fail (budget != NULL, NAN);
  return (budget->added_returns_cents + budget->reduced_costs_cents)
         - (budget->added_costs_cents + budget->reduced_returns_cents);
}

double
stead_accounting_return_frac (double returns_cents,
                              double costs_cents,
                              double investment_cents)
{
  return investment_cents > 0 ? (returns_cents - costs_cents) / investment_cents : NAN;
}

/* stead-budget.c - the budget of one enterprise, and what an hour of work returns. */
#include "config.h"

#include "core/stead-budget.h"

#include <math.h>

void
stead_budget_figures (const SteadBudget  *budget,
                      SteadBudgetFigures *out)
{
  double carried;

  g_return_if_fail (budget != NULL && out != NULL);

  out->receipts_cents = budget->receipts_cents + budget->by_product_cents;
  out->total_cost_cents = budget->variable_cents + budget->fixed_cents;
  out->above_variable_cents = out->receipts_cents - budget->variable_cents;
  out->net_cents = out->above_variable_cents - budget->fixed_cents;
  carried = out->total_cost_cents - budget->by_product_cents;
  out->unit_cost_cents = budget->output_units > 0 ? carried / budget->output_units : NAN;
  out->even_units = budget->price_cents > 0 ? carried / budget->price_cents : NAN;
}

double
stead_cost_without_labor_cents (const SteadCostViews *views)
{
  g_return_val_if_fail (views != NULL, NAN);
  return views->cash_cents + views->gift_cents;
}

double
stead_cost_full_cents (const SteadCostViews *views)
{
  g_return_val_if_fail (views != NULL, NAN);
  return stead_cost_without_labor_cents (views) + views->labor_cents;
}

double
stead_return_per_hour_cents (double net_cents,
                             double hours)
{
  return hours > 0 ? net_cents / hours : NAN;
}

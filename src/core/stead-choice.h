/* stead-choice.h - choices by what they add, not by what is already spent.
 *
 * Sources: OpenStax Principles of Accounting vol. 2, sections 10.3 and 10.5;
 * Saylor Managerial Accounting, appendix 7.10.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One way to sell: as it is, or after more work. */
typedef struct
{
  double quantity;
  double price_cents;   /* of one */
  double cost_cents;    /* own further cost of one */
  double fixed_cents;   /* further cost of the whole way */
} SteadWay;

/**
 * stead_way_value_cents:
 * Returns: quantity x (price - cost) - fixed; joint cost plays no part
 */
double stead_way_value_cents (const SteadWay *way);

/**
 * stead_avoidable_cents:
 * @part_cents: (array length=n): avoidable cost of one unit, part by part
 * @units: how many
 *
 * Returns: sum of the parts x units
 */
double stead_avoidable_cents (const double *part_cents,
                              gsize         n,
                              double        units);

/* What a change adds and takes away, for one year. */
typedef struct
{
  double added_returns_cents;
  double reduced_costs_cents;
  double added_costs_cents;
  double reduced_returns_cents;
} SteadPartialBudget;

/**
 * stead_partial_budget_cents:
 * Source: exercise of a farm management course, salad greens against beans.
 * Returns: (added returns + reduced costs) - (added costs + reduced returns)
 */
double stead_partial_budget_cents (const SteadPartialBudget *budget);

/**
 * stead_accounting_return_frac:
 * @investment_cents: first outlay, above 0
 *
 * Source: OpenStax Principles of Accounting vol. 2, section 11.2.
 *
 * Returns: (returns - costs of a year, depreciation with them) / investment; NAN without one
 */
double stead_accounting_return_frac (double returns_cents,
                                     double costs_cents,
                                     double investment_cents);

G_END_DECLS

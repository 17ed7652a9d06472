/* stead-budget.h - the budget of one enterprise, and what an hour of work returns.
 *
 * A return is named by what has NOT been charged against it: labor, management,
 * land, capital.
 * Sources: Rutgers Farm Management, Table 37, egg layers, 1996 (enterprise);
 * farm management course notes, watermelon budget (break-even of a budget); a
 * small-flock owner's published cost table (with and without labor).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* All in cents and in the unit sold. */
typedef struct
{
  double receipts_cents;      /* main product */
  double by_product_cents;    /* spent hens, manure */
  double variable_cents;
  double fixed_cents;
  double output_units;        /* of the main product */
  double price_cents;         /* of one of them */
} SteadBudget;

typedef struct
{
  double receipts_cents;           /* with by-product */
  double total_cost_cents;
  double above_variable_cents;     /* receipts - variable cost */
  double net_cents;                /* - fixed cost */
  double unit_cost_cents;          /* (total - by-product) / output; NAN without output */
  double even_units;               /* (total - by-product) / price; NAN without a price */
} SteadBudgetFigures;

void stead_budget_figures (const SteadBudget  *budget,
                           SteadBudgetFigures *out);

/* One thing's cost in three views. */
typedef struct
{
  double cash_cents;
  double gift_cents;    /* given in kind, at fair value */
  double labor_cents;   /* unpaid, at a stated rate */
} SteadCostViews;

/**
 * stead_cost_without_labor_cents: cash + gifts; the view that prices rest on,
 *   since next year may bring no gifts
 * stead_cost_full_cents: + labor
 */
double stead_cost_without_labor_cents (const SteadCostViews *views);
double stead_cost_full_cents (const SteadCostViews *views);

/**
 * stead_return_per_hour_cents:
 * @net_cents: sales less cash costs
 * @hours: unpaid hours
 *
 * Source: a jam seller's published arithmetic, 2011.
 *
 * Returns: cents an hour; NAN without hours
 */
double stead_return_per_hour_cents (double net_cents,
                                    double hours);

G_END_DECLS

/* stead-absorption.h - profit with and without fixed cost in the stock.
 *
 * Break-even rests on variable costing.  Absorption profit exceeds it when
 * stock grows and falls short of it when stock shrinks.
 * Sources: OpenStax Principles of Accounting vol. 2, section 6.5; Saylor
 * Managerial Accounting, section 6.7.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_COSTING_ABSORPTION,   /* stock carries its share of fixed making cost */
  STEAD_COSTING_VARIABLE,     /* fixed making cost is all of the period's */
} SteadCosting;

typedef struct
{
  double made_units;
  double sold_units;
  double begin_units;           /* in stock at first, at the same unit cost */
  double price_cents;
  double variable_make_cents;   /* of a unit made */
  double variable_sell_cents;   /* of a unit sold */
  double fixed_make_cents;      /* of the period */
  double fixed_sell_cents;      /* of the period */
} SteadMaking;

/**
 * stead_making_unit_cents: cost of a unit in stock; NAN for absorption without units made
 * stead_making_profit_cents: profit of the period
 * stead_making_stock_cents: value of the stock at the end
 */
double stead_making_unit_cents (const SteadMaking *making,
                                SteadCosting       costing);
double stead_making_profit_cents (const SteadMaking *making,
                                  SteadCosting       costing);
double stead_making_stock_cents (const SteadMaking *making,
                                 SteadCosting       costing);

G_END_DECLS

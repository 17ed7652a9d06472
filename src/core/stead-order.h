/* stead-order.h - how much to make or to order.
 *
 * Sources: Cachon and Terwiesch, Matching Supply with Demand, chapter 12, and
 * Snyder and Shen, Fundamentals of Supply Chain Theory (once); operations text,
 * example 12.3 (size).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_DEMAND_NORMAL,
  STEAD_DEMAND_UNIFORM,
  STEAD_DEMAND_DISCRETE,
  STEAD_DEMAND_POISSON,    /* many people, each with a small chance to ask */
  STEAD_DEMAND_TRIANGLE,   /* a guess: lowest, likeliest, highest */
} SteadDemandShape;

/* What people may ask for on one sale day. */
typedef struct
{
  SteadDemandShape shape;
  double           mean;     /* normal; not cut at zero.  Poisson: above 0 to a million */
  double           sd;       /* normal, above 0 */
  double           low;      /* uniform, triangle */
  double           high;     /* uniform, triangle: above low */
  const double    *values;   /* (array length=n): discrete, rising */
  const double    *chances;  /* (array length=n): shares that sum to 1 */
  gsize            n;
  double           likely;   /* triangle: low to high */
} SteadDemand;

/* Goods made once for one sale, and what a unit too few or too many costs. */
typedef struct
{
  SteadDemand demand;
  double      short_cents;   /* price - cost (+ goodwill) */
  double      over_cents;    /* cost - what a leftover still brings */
} SteadOrderOnce;

/**
 * stead_demand_mean: mean demand
 * stead_demand_chance_at_most: chance that @quantity is enough, 0 to 1
 */
double stead_demand_mean (const SteadDemand *demand);
double stead_demand_chance_at_most (const SteadDemand *demand,
                                    double             quantity);

/**
 * stead_demand_expected_short: mean of what is asked for beyond @quantity: people who
 *   go without
 * stead_demand_expected_left: mean of what is left over of @quantity
 * stead_demand_chance_sold_out: chance that all of @quantity, above 0, is asked for
 *
 * Closed forms; Snyder and Shen, Fundamentals of Supply Chain Theory, appendix on loss
 * functions (normal, Poisson), the rest by integrating the shape.
 *
 * Returns: 0 or more; NAN for a shape without width
 */
double stead_demand_expected_short (const SteadDemand *demand,
                                    double             quantity);
double stead_demand_expected_left (const SteadDemand *demand,
                                   double             quantity);
double stead_demand_chance_sold_out (const SteadDemand *demand,
                                     double             quantity);

/**
 * stead_order_once_ratio:
 * Returns: short / (short + over): the chance of having enough that pays best; NAN
 *   without costs
 */
double stead_order_once_ratio (const SteadOrderOnce *order);

/**
 * stead_order_once_quantity:
 * Returns: the best quantity; for discrete and Poisson demand the first value whose
 *   chance of being enough reaches the ratio; NAN for a ratio that is not between 0 and 1
 */
double stead_order_once_quantity (const SteadOrderOnce *order);

/**
 * stead_order_once_cost_cents: expected cost of units too few and too many
 * stead_order_once_profit_cents: short cost x mean demand less that cost
 */
double stead_order_once_cost_cents (const SteadOrderOnce *order,
                                    double                quantity);
double stead_order_once_profit_cents (const SteadOrderOnce *order,
                                      double                quantity);

/**
 * stead_order_size:
 * @demand_year: units used in a year
 * @order_cents: cost of placing one order
 * @holding_cents: cost of keeping one unit for a year
 *
 * The cost curve is flat: round to whole packs, never past the shelf life.
 *
 * Returns: sqrt (2 D S / H); NAN if one of them is not above 0
 */
double stead_order_size (double demand_year,
                         double order_cents,
                         double holding_cents);

/**
 * stead_order_size_cost_cents:
 * Returns: S D / q + H q / 2: ordering and holding of a year
 */
double stead_order_size_cost_cents (double demand_year,
                                    double order_cents,
                                    double holding_cents,
                                    double quantity);

G_END_DECLS

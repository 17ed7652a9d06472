/* stead-breakeven.h - cost, volume and profit of one product.
 *
 * Money is in minor units as doubles: a price may be a whole number of cents
 * while a textbook's unit cost need not be.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One product on one sale day (or over one period). */
typedef struct
{
  double price_cents;      /* money in for one unit, 0 or more */
  double variable_cents;   /* cost that each unit brings with it, 0 or more */
  double fixed_cents;      /* cost of the day, however many are sold, 0 or more */
  double step_cents;       /* each further step (a second table) adds this; 0: no steps */
  double step_units;       /* units that one step holds; 0: no steps */
  double planned_units;    /* units that the plan sells, 0 or more */
  double target_cents;     /* profit wanted */
} SteadCvp;

/* What follows from a SteadCvp.  A number that does not exist is NAN. */
typedef struct
{
  double   margin_cents;          /* price less variable cost */
  double   margin_frac;           /* of the price; NAN at a price of 0 */
  double   even_units;            /* exact crossing, where the lines meet first; NAN: never */
  gint64   even_whole_units;      /* first whole unit without loss; -1: never */
  gint64   lasting_whole_units;   /* from here on no loss, however many are sold; -1: never */
  double   even_sales_cents;
  double   profit_cents;          /* at the plan */
  double   safety_units;          /* plan less exact break-even; negative: the plan loses */
  gint64   safety_whole_units;    /* whole units that the plan can fall short without a loss;
                                     negative: units missing; 0 where safety_units is NAN */
  double   safety_frac;           /* of the plan */
  double   leverage;              /* total margin / profit at the plan; NAN at break-even */
  gint64   target_whole_units;    /* first whole unit that reaches the target; -1: never */
  double   needed_price_cents;    /* price at which the plan just reaches the target; NAN without a plan */
} SteadCvpFigures;

/**
 * stead_cvp_figures:
 * @cvp: finite, none of the costs negative
 * @out: (out): the figures
 *
 * No heap is touched: this runs at each step of a drag.
 * With steps the candidate in each step is accepted only inside that step.  A
 * step that costs as much as its units bring, or more, leaves no lasting figure:
 * past its end the loss comes back.  The safety figures tell how far the plan
 * stands above the loss next below it, or below the end of the loss that it
 * stands in.
 * Sources: OpenStax Principles of Accounting vol. 2, sections 2.2 and 3.1 to 3.5.
 */
void stead_cvp_figures (const SteadCvp  *cvp,
                        SteadCvpFigures *out);

/**
 * stead_cvp_fixed_cents: fixed cost at @units: base + step x ceil(units / step units), at least one step
 * stead_cvp_cost_cents: fixed cost at @units + variable cost
 * stead_cvp_revenue_cents: price x units
 * stead_cvp_profit_cents: revenue - cost
 */
double stead_cvp_fixed_cents (const SteadCvp *cvp,
                              double          units);
double stead_cvp_cost_cents (const SteadCvp *cvp,
                             double          units);
double stead_cvp_revenue_cents (const SteadCvp *cvp,
                                double          units);
double stead_cvp_profit_cents (const SteadCvp *cvp,
                               double          units);

/**
 * stead_cvp_even_units:
 * @cvp: the product
 * @target_cents: profit wanted, 0 for the break-even
 *
 * Returns: exact units at which the target is first reached; NAN: never
 */
double stead_cvp_even_units (const SteadCvp *cvp,
                             double          target_cents);

/**
 * stead_cvp_even_whole_units:
 * @cvp: the product
 * @target_cents: profit wanted, 0 for the break-even
 *
 * Rounded up: a text that rounds to nearest still loses a little.
 *
 * Returns: the first whole unit that reaches the target; -1: never
 */
gint64 stead_cvp_even_whole_units (const SteadCvp *cvp,
                                   double          target_cents);

/**
 * stead_cvp_lasting_whole_units:
 * @cvp: the product
 * @max_units: the last unit looked at, 0 to 1e9
 *
 * Returns: the whole unit from which on there is no loss up to @max_units; -1: none
 */
gint64 stead_cvp_lasting_whole_units (const SteadCvp *cvp,
                                      double          max_units);

/**
 * stead_pretax_cents:
 * @after_tax_cents: profit wanted after income tax
 * @tax_frac: share that the tax takes, 0 to below 1
 *
 * Source: OpenStax Principles of Accounting vol. 2, section 3.2.
 *
 * Returns: profit wanted before tax; NAN for a tax of all or more
 */
double stead_pretax_cents (double after_tax_cents,
                           double tax_frac);

/**
 * stead_cvp_crossings:
 * @cvp: the product
 * @max_units: the last unit looked at, 0 to 1e9
 *
 * Returns: how often whole units from 0 on change between loss and no loss
 */
guint stead_cvp_crossings (const SteadCvp *cvp,
                           double          max_units);

G_END_DECLS

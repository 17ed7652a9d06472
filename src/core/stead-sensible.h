/* stead-sensible.h - amounts of a recipe as a cook can measure them.
 *
 * Nobody cracks 0.37 egg.  A scaled amount is rounded to whole pieces, to the
 * parts that cups and spoons are sold in, or to what a kitchen scale shows; and
 * it says how far that is from the exact amount.  The ladder of measures and the
 * steps of weights are common practice, no source.
 */
#pragma once

#include "core/stead-quantity.h"

G_BEGIN_DECLS

typedef struct
{
  double           amount;   /* above 0, in @unit */
  const SteadUnit *unit;     /* a larger or smaller cup or spoon than asked for, if that is handier */
  double           effect;   /* rounded / exact: 1.06 is six percent too much; 1 for exact */
} SteadSensible;

/**
 * stead_sensible_amount:
 * @amount: an exact amount, above 0
 * @unit: what it is measured in
 * @out: (out): what to measure instead
 *
 * Pieces are whole and at least one.  Spoons and cups take 1/8, 1/4, 1/3, 1/2,
 * 2/3 and 3/4 where such measures are sold, halves above 8; they go to the next
 * larger one of tsp, tbsp, cup, qt, gal only where it comes out no worse.  Weights
 * and metric volumes go in steps that are at most a fiftieth of the amount, ounces in
 * tenths at the finest.
 */
void stead_sensible_amount (double           amount,
                            const SteadUnit *unit,
                            SteadSensible   *out);

/**
 * stead_sensible_format:
 * @amount: an amount
 * @unit: its unit
 *
 * Returns: (transfer full): as a recipe writes it: "1 1/2 cup", "2/3 tsp", "12"
 *   for pieces; an amount that is no such part as stead_quantity_format()
 */
char *stead_sensible_format (double           amount,
                             const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_scale_whole:
 * @pieces: that the recipe takes, above 0
 * @factor: by which it is to be scaled, above 0
 *
 * Returns: the nearest factor at which the pieces come out whole, at least one
 */
double stead_scale_whole (double pieces,
                          double factor);

/**
 * stead_scale_on_hand:
 * @need: (array length=n): what the recipe takes once, by ingredient, in one unit
 *   each; 0 for what does not count
 * @on_hand: (array length=n): of the same
 * @out_limiting: (out) (optional): the ingredient that runs out first
 *
 * Returns: how often the recipe can be made: the least of on hand / need; NAN if
 *   it needs nothing
 */
double stead_scale_on_hand (const double *need,
                            const double *on_hand,
                            gsize         n,
                            gsize        *out_limiting);

G_END_DECLS

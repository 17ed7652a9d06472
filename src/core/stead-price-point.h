/* stead-price-point.h - prices to choose between: easy to give change for, earning the
 * same, earning most.
 */
#pragma once

#include "core/stead-demand-line.h"

G_BEGIN_DECLS

/**
 * stead_price_easy_below: stead_price_easy_above:
 * @step_cents: of the coins that are at hand, above 0: 25
 *
 * The nearest price that the coin divides, at most (at least) @cents.  (Common practice, no source.)
 */
gint64 stead_price_easy_below (gint64 cents,
                               gint64 step_cents);
gint64 stead_price_easy_above (gint64 cents,
                               gint64 step_cents);

/**
 * stead_price_same_profit_units:
 * @units: sold at @price_cents
 * @other_cents: another price
 *
 * Units x (price - cost) is the same at both.  Source: OpenStax Principles of Accounting
 * vol. 2, section 3.2 (units for a target profit), with the profit at the first price as target.
 *
 * Returns: units to sell at the other price; NAN if it leaves nothing
 */
double stead_price_same_profit_units (double price_cents,
                                      double units,
                                      double other_cents,
                                      double unit_cents);

/**
 * stead_price_best_cents:
 * @line: units asked for along the price, cents
 * @unit_cents: cost of one
 *
 * The price between the lowest and the highest seen at which (price - cost) x units of the
 * line is largest: for a falling line (cost - intercept / slope) / 2, kept in that range.
 * (Any text on a straight demand line and a constant unit cost.)
 *
 * Returns: cents, unrounded
 */
double stead_price_best_cents (const SteadDemandLine *line,
                               double                 unit_cents);

G_END_DECLS

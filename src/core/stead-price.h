/* stead-price.h - cost, markup, margin, discount and sales tax.
 *
 * Markup is on cost, margin on price; people mix them up, so ask which is meant.
 * Whether a thing is taxed is state law: a setting, never a default answer.
 * Source: OpenStax Contemporary Mathematics, section 6.2.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_price_from_markup: cost x (1 + markup)
 * stead_price_from_margin: cost / (1 - margin); NAN for a margin of all or more
 * stead_price_discounted: price x (1 - discount)
 * stead_cost_from_markup: price / (1 + markup); NAN for a markup of -1 or less
 */
double stead_price_from_markup (double cost_cents,
                                double markup_frac);
double stead_price_from_margin (double cost_cents,
                                double margin_frac);
double stead_price_discounted (double price_cents,
                               double discount_frac);
double stead_cost_from_markup (double price_cents,
                               double markup_frac);

/**
 * stead_markup_frac: (price - cost) / cost; NAN without cost
 * stead_margin_frac: (price - cost) / price; NAN without a price
 * stead_margin_of_markup: k / (1 + k); NAN for -1 or less
 * stead_markup_of_margin: m / (1 - m); NAN for 1 or more
 */
double stead_markup_frac (double cost_cents,
                          double price_cents);
double stead_margin_frac (double cost_cents,
                          double price_cents);
double stead_margin_of_markup (double markup_frac);
double stead_markup_of_margin (double margin_frac);

/**
 * stead_sales_tax_cents:
 * @price_cents: without tax, whole cents
 * @tax_frac: rate, 0 to 1
 *
 * Returns: tax of one sale, rounded half away from zero
 */
gint64 stead_sales_tax_cents (gint64 price_cents,
                              double tax_frac);

/**
 * stead_net_of_tax_cents:
 * @price_cents: with tax in it
 * @tax_frac: rate, 0 or more
 *
 * Returns: price / (1 + rate), unrounded
 */
double stead_net_of_tax_cents (double price_cents,
                               double tax_frac);

G_END_DECLS

/* stead-mix.h - break-even of several products that sell in a fixed mix.
 *
 * A basket holds the units of the mix.  A mix of shares (60|30|10) gives the
 * same units as a mix of counts; another mix has another break-even.
 * Sources: OpenStax Principles of Accounting vol. 2, section 3.4; Saylor
 * Managerial Accounting, section 6.2.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  const double *price_cents;     /* of one unit, by product */
  const double *variable_cents;  /* of one unit, by product; NULL: none */
  const double *units;           /* in one basket, by product, 0 or more */
  gsize         n;               /* products */
  double        fixed_cents;     /* of the period */
} SteadMix;

/**
 * stead_mix_price_cents: what one basket brings
 * stead_mix_variable_cents: what one basket costs
 * stead_mix_margin_cents: the difference
 * stead_mix_basket_units: units in one basket
 */
double stead_mix_price_cents (const SteadMix *mix);
double stead_mix_variable_cents (const SteadMix *mix);
double stead_mix_margin_cents (const SteadMix *mix);
double stead_mix_basket_units (const SteadMix *mix);

/**
 * stead_mix_even_baskets:
 * @mix: the products
 * @target_cents: profit wanted, 0 for the break-even
 *
 * Returns: exact baskets; NAN if a basket brings no margin
 */
double stead_mix_even_baskets (const SteadMix *mix,
                               double          target_cents);

/**
 * stead_ratio_even_cents:
 * @margin_frac: margin as a share of sales
 * @fixed_cents: fixed cost
 * @target_cents: profit wanted, 0 for the break-even
 *
 * The same for a business that knows only its totals.
 * Source: OpenStax Principles of Accounting vol. 2, section 3.2.
 *
 * Returns: sales needed, cents; NAN if the share is not above 0
 */
double stead_ratio_even_cents (double margin_frac,
                               double fixed_cents,
                               double target_cents);

G_END_DECLS

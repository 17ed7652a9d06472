/* stead-sensitivity.h - how far profit moves when an input moves.
 *
 * Sources: Saylor Managerial Accounting, section 6.3 (sensitivity); OpenStax
 * Principles of Accounting vol. 2, section 3.5 (leverage).
 */
#pragma once

#include "core/stead-breakeven.h"

G_BEGIN_DECLS

/* Changes to a plan, all made together. */
typedef struct
{
  double price_frac;      /* 0.1: price up by a tenth */
  double units_frac;      /* planned units */
  double variable_cents;  /* added to the variable cost of a unit */
  double fixed_cents;     /* added to the fixed cost */
} SteadCvpChange;

/**
 * stead_cvp_changed:
 * @base: the plan
 * @change: what changes
 * @out: (out): the changed plan
 */
void stead_cvp_changed (const SteadCvp       *base,
                        const SteadCvpChange *change,
                        SteadCvp             *out);

/**
 * stead_cvp_profit_change_cents:
 * Returns: profit of the changed plan less profit of @base
 */
double stead_cvp_profit_change_cents (const SteadCvp       *base,
                                      const SteadCvpChange *change);

/**
 * stead_cvp_swing_cents:
 *
 * The length of a bar of the tornado chart.
 *
 * Returns: how far profit lies apart with @change and with its opposite
 */
double stead_cvp_swing_cents (const SteadCvp       *base,
                              const SteadCvpChange *change);

/**
 * stead_leverage:
 * @total_margin_cents: price less variable cost, times the units
 * @profit_cents: what is left after fixed cost
 *
 * A change of the volume by p percent moves profit by this degree times p; it
 * holds at this volume only.
 *
 * Returns: the degree of operating leverage; NAN at break-even
 */
double stead_leverage (double total_margin_cents,
                       double profit_cents);

G_END_DECLS

/* stead-time-value.h - money over time, by exact factors.
 *
 * Sources: OpenStax Principles of Accounting vol. 2, section 11.3; Principles of
 * Finance, section 8.2; Contemporary Mathematics, section 6.6.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double   rate_frac;         /* a year, nominal, above -1 a period */
  double   years;             /* 0 or more */
  double   periods_per_year;  /* of compounding and payments, above 0 */
  gboolean at_start;          /* payments at the start of each period, else at its end */
} SteadTerms;

/**
 * stead_growth: what 1 becomes: (1 + i)^n
 * stead_payments_growth: what 1 paid each period becomes: ((1 + i)^n - 1) / i, at
 *   the start x (1 + i); n without interest
 * stead_payments_worth: what 1 paid each period is worth now
 *
 * Returns: the factor; NAN for terms outside the above
 */
double stead_growth (const SteadTerms *terms);
double stead_payments_growth (const SteadTerms *terms);
double stead_payments_worth (const SteadTerms *terms);

/* How a payment is rounded to the cent: texts differ. */
typedef enum
{
  STEAD_PAYMENT_NEAREST,
  STEAD_PAYMENT_UP,        /* savings that must reach a goal */
} SteadPaymentRounding;

/**
 * stead_payment_round:
 * Returns: whole cents by the rule; 0 for NAN
 */
gint64 stead_payment_round (double               cents,
                            SteadPaymentRounding rounding);

/**
 * stead_simple_interest_cents:
 * Source: OpenStax Contemporary Mathematics, section 6.8.
 * Returns: amount x rate x months / 12, unrounded
 */
double stead_simple_interest_cents (double amount_cents,
                                    double rate_frac,
                                    double months);

G_END_DECLS

/* stead-time-value.c - money over time, by exact factors. */
#include "config.h"

#include "core/stead-money.h"
#include "core/stead-round.h"
#include "core/stead-time-value.h"

#include <math.h>

/* Interest of one period and the number of periods; FALSE for impossible terms. */
static gboolean
split (const SteadTerms *terms,
       double           *i,
       double           *n)
{
  *i = terms->rate_frac / terms->periods_per_year;
  *n = terms->years * terms->periods_per_year;
  return terms->periods_per_year > 0 && terms->years >= 0 && *i > -1;
}

double
stead_growth (const SteadTerms *terms)
{
  double i;
  double n;

  g_return_val_if_fail (terms != NULL, NAN);
  return split (terms, &i, &n) ? exp (n * log1p (i)) : NAN;
}

double
stead_payments_growth (const SteadTerms *terms)
{
  double i;
  double n;

  g_return_val_if_fail (terms != NULL, NAN);
  if (!split (terms, &i, &n))
    return NAN;
  if (i == 0)
    return n;
  return expm1 (n * log1p (i)) / i * (terms->at_start ? 1 + i : 1);
}

double
stead_payments_worth (const SteadTerms *terms)
{
  return stead_payments_growth (terms) / stead_growth (terms);
}

gint64
stead_payment_round (double               cents,
                     SteadPaymentRounding rounding)
{
  if (!(fabs (cents) < 9e15))
    return 0;
  return rounding == STEAD_PAYMENT_UP ? (gint64) stead_round_up (cents) : stead_money_round (cents);
}

double
stead_simple_interest_cents (double amount_cents,
                             double rate_frac,
                             double months)
{
  return amount_cents * rate_frac * months / 12;
}

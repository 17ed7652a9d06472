/* stead-loan.c - a loan paid back in equal monthly payments. */
#include "config.h"

#include "core/stead-loan.h"
#include "core/stead-money.h"

static gboolean
is_loan (const SteadLoan *loan)
{
  return loan != NULL && loan->amount_cents > 0 && loan->rate_frac >= 0 && loan->rate_frac <= 10
         && loan->payments >= 1 && loan->payments <= 1200;
}

gint64
stead_loan_payment_cents (const SteadLoan *loan)
{
  SteadTerms terms;

  g_return_val_if_fail (is_loan (loan), 0);

  terms = (SteadTerms) { .rate_frac = loan->rate_frac, .years = loan->payments / 12.0,
                         .periods_per_year = 12 };
  return stead_payment_round ((double) loan->amount_cents / stead_payments_worth (&terms),
                              loan->rounding);
}

void
stead_loan_month (const SteadLoan *loan,
                  gint32           month,
                  SteadLoanMonth  *out)
{
  gint64 payment;

  g_return_if_fail (is_loan (loan));
  g_return_if_fail (month >= 1 && month <= loan->payments);
  g_return_if_fail (out != NULL);

  payment = stead_loan_payment_cents (loan);
  *out = (SteadLoanMonth) { .balance_cents = loan->amount_cents };
  for (gint32 m = 1; m <= month; m++)
    {
      gint64 due;

      out->interest_cents = stead_money_round ((double) out->balance_cents * loan->rate_frac / 12);
      due = out->balance_cents + out->interest_cents;
      /* The last payment settles; a payment rounded up may end it a little early. */
      out->payment_cents = m == loan->payments ? due : MIN (payment, due);
      out->principal_cents = out->payment_cents - out->interest_cents;
      out->balance_cents -= out->principal_cents;
      out->interest_so_far_cents += out->interest_cents;
    }
}

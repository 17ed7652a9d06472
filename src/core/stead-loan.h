/* stead-loan.h - a loan paid back in equal monthly payments.
 *
 * Interest is rounded to the cent each month, and the last payment settles what
 * the rounding left.
 * Sources: OpenStax Principles of Finance, section 8.3; Contemporary Mathematics,
 * section 6.8, which rounds the payment up.
 */
#pragma once

#include "core/stead-time-value.h"

G_BEGIN_DECLS

typedef struct
{
  gint64               amount_cents;  /* above 0 */
  double               rate_frac;     /* a year, 0 to 10 */
  gint32               payments;      /* monthly, 1 to 1200 */
  SteadPaymentRounding rounding;
} SteadLoan;

/* One month of its schedule. */
typedef struct
{
  gint64 payment_cents;
  gint64 interest_cents;
  gint64 principal_cents;
  gint64 balance_cents;          /* after the payment */
  gint64 interest_so_far_cents;
} SteadLoanMonth;

/**
 * stead_loan_payment_cents:
 * Returns: the monthly payment: a i / (1 - (1 + i)^-n), rounded by the rule
 */
gint64 stead_loan_payment_cents (const SteadLoan *loan);

/**
 * stead_loan_month:
 * @loan: the loan
 * @month: 1 to the number of payments
 * @out: (out): that month
 */
void stead_loan_month (const SteadLoan *loan,
                       gint32           month,
                       SteadLoanMonth  *out);

G_END_DECLS

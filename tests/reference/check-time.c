/* check-time.c - the topics on money over time. */
#include "check.h"

#include "core/stead-investment.h"
#include "core/stead-loan.h"
#include "core/stead-round.h"
#include "core/stead-time-value.h"

#include <math.h>

/* money over time */

static SteadTerms
terms_of (CheckRow *row)
{
  static const char * const timings[] = { "end", "start", NULL };

  return (SteadTerms) { .rate_frac = check_frac (row, "rate_pct"), .years = check_number (row, "years"),
                        .periods_per_year = check_number_or (row, "periods_per_year", 1),
                        .at_start = check_word (row, "timing", timings, 0) == 1 };
}

static double
future_value (CheckRow *row)
{
  SteadTerms terms = terms_of (row);

  return check_cents (row, "amount_usd") * stead_growth (&terms);
}

static double
present_value (CheckRow *row)
{
  SteadTerms terms = terms_of (row);

  return check_cents (row, "amount_usd") / stead_growth (&terms);
}

static double
future_payments (CheckRow *row)
{
  SteadTerms terms = terms_of (row);

  return check_cents (row, "payment_usd") * stead_payments_growth (&terms);
}

static double
present_payments (CheckRow *row)
{
  SteadTerms terms = terms_of (row);

  return check_cents (row, "payment_usd") * stead_payments_worth (&terms);
}

static double
payment_for_goal (CheckRow             *row,
                  SteadPaymentRounding  rounding)
{
  SteadTerms terms = terms_of (row);
  double payment = check_cents (row, "goal_usd") / stead_payments_growth (&terms);

  return isfinite (payment) ? (double) stead_payment_round (payment, rounding) : NAN;
}

static double
payment_nearest (CheckRow *row)
{
  return payment_for_goal (row, STEAD_PAYMENT_NEAREST);
}

static double
payment_up (CheckRow *row)
{
  return payment_for_goal (row, STEAD_PAYMENT_UP);
}

static double
payment_from_sum (CheckRow *row)
{
  SteadTerms terms = terms_of (row);

  return check_cents (row, "amount_usd") / stead_payments_worth (&terms);
}

static const CheckAsk terms_asks[] = {
  { "future_value", "USD", future_value },
  { "present_value", "USD", present_value },
  { "future_value_payments", "USD", future_payments },
  { "present_value_payments", "USD", present_payments },
  { "payment_for_goal", "USD", payment_nearest },
  { "payment_for_goal_up", "USD", payment_up },
  { "payment_from_sum", "USD", payment_from_sum },
  { NULL }
};

/* loan */

/* FALSE, with an error on the row, for terms that are no loan. */
static gboolean
loan_of (CheckRow  *row,
         SteadLoan *loan)
{
  static const char * const roundings[] = { "nearest", "up", NULL };
  double payments = check_has (row, "payments") ? check_number (row, "payments")
                                                : 12 * check_number (row, "years");
  double amount = stead_round_half_away (check_cents (row, "amount_usd"));
  double rate = check_frac (row, "rate_pct");

  if (!(payments >= 1 && payments <= 1200) || payments != floor (payments))
    check_bad_input (row, check_has (row, "payments") ? "payments" : "years");
  else if (!(amount > 0 && amount < 1e14))
    check_bad_input (row, "amount_usd");
  else if (!(rate >= 0 && rate <= 10))
    check_bad_input (row, "rate_pct");
  else
    {
      *loan = (SteadLoan) { (gint64) amount, rate, (gint32) payments,
                            (SteadPaymentRounding) check_word (row, "payment_rounding", roundings, 0) };
      return TRUE;
    }
  return FALSE;
}

static gboolean
month_of (CheckRow       *row,
          SteadLoanMonth *out)
{
  SteadLoan loan;
  double month = check_number (row, "month");

  if (!loan_of (row, &loan))
    return FALSE;
  if (!(month >= 1 && month <= loan.payments) || month != floor (month))
    {
      check_bad_input (row, "month");
      return FALSE;
    }
  stead_loan_month (&loan, (gint32) month, out);
  return TRUE;
}

static double
loan_payment (CheckRow *row)
{
  SteadLoan loan;

  return loan_of (row, &loan) ? (double) stead_loan_payment_cents (&loan) : NAN;
}

static double
loan_interest (CheckRow *row)
{
  SteadLoanMonth month;

  return month_of (row, &month) ? (double) month.interest_cents : NAN;
}

static double
loan_principal (CheckRow *row)
{
  SteadLoanMonth month;

  return month_of (row, &month) ? (double) month.principal_cents : NAN;
}

static double
loan_balance (CheckRow *row)
{
  SteadLoanMonth month;

  return month_of (row, &month) ? (double) month.balance_cents : NAN;
}

static double
loan_total_interest (CheckRow *row)
{
  SteadLoan loan;
  SteadLoanMonth last;

  if (!loan_of (row, &loan))
    return NAN;
  stead_loan_month (&loan, loan.payments, &last);
  return (double) last.interest_so_far_cents;
}

static const CheckAsk loan_asks[] = {
  { "payment", "USD", loan_payment },
  { "interest", "USD", loan_interest },
  { "principal", "USD", loan_principal },
  { "balance", "USD", loan_balance },
  { "total_interest", "USD", loan_total_interest },
  { NULL }
};

/* simple interest */

static double
simple_interest (CheckRow *row)
{
  return stead_simple_interest_cents (check_cents (row, "amount_usd"), check_frac (row, "rate_pct"),
                                      check_number (row, "months"));
}

static const CheckAsk simple_asks[] = {
  { "interest", "USD", simple_interest },
  { NULL }
};

/* investment */

static double
net_present_value (CheckRow *row)
{
  gsize n = 0;
  const double *flows = check_cents_list (row, "flows_usd", &n);

  return stead_net_present_value (flows, n, check_frac (row, "rate_pct"));
}

static double
internal_rate (CheckRow *row)
{
  gsize n = 0;
  const double *flows = check_cents_list (row, "flows_usd", &n);
  double rates[10];
  gsize found = stead_internal_rates (flows, n, rates, G_N_ELEMENTS (rates));

  return found > 0 ? 100 * rates[check_item (row, found)] : NAN;
}

static double
payback (CheckRow *row)
{
  gsize n = 0;
  const double *flows = check_cents_list (row, "flows_usd", &n);

  return stead_payback_years (flows, n);
}

static const CheckAsk investment_asks[] = {
  { "net_present_value", "USD", net_present_value },
  { "internal_rate_pct", "%", internal_rate },
  { "payback_years", "years", payback },
  { NULL }
};

const CheckTopic check_time_topics[] = {
  { "money over time",
    "rate_pct years periods_per_year timing amount_usd payment_usd goal_usd", terms_asks },
  { "loan", "amount_usd rate_pct payments years month payment_rounding", loan_asks },
  { "simple interest", "amount_usd rate_pct months", simple_asks },
  { "investment", "flows_usd rate_pct item", investment_asks },
  { NULL }
};

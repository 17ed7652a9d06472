/* Money over time, loans and investments. */
#include "core/stead-investment.h"
#include "core/stead-loan.h"
#include "core/stead-time-value.h"

#include <math.h>

/* OpenStax Principles of Accounting vol. 2, section 11.3; Principles of Finance,
 * section 8.2; Contemporary Mathematics, section 6.6 (read). */
static void
test_published (void)
{
  SteadTerms six = { .rate_frac = 0.06, .years = 3, .periods_per_year = 1 };
  SteadTerms seven = { .rate_frac = 0.07, .years = 5, .periods_per_year = 1 };
  SteadTerms four = { .rate_frac = 0.04, .years = 5, .periods_per_year = 1, .at_start = TRUE };
  SteadTerms monthly = { .rate_frac = 0.0425, .years = 3, .periods_per_year = 12 };
  double payment = 3550000 / stead_payments_growth (&monthly);

  g_assert_cmpfloat_with_epsilon (500000 * stead_growth (&six), 595508, 0.5);
  g_assert_cmpfloat_with_epsilon (100000 * stead_payments_growth (&seven), 575074, 0.5);
  g_assert_cmpfloat_with_epsilon (300000 * stead_payments_growth (&four), 1689893, 0.5);
  g_assert_cmpint (stead_payment_round (payment, STEAD_PAYMENT_NEAREST), ==, 92632);
  g_assert_cmpint (stead_payment_round (payment, STEAD_PAYMENT_UP), ==, 92633);
  g_assert_cmpfloat_with_epsilon (stead_simple_interest_cents (1345000, 0.0675, 1), 7566, 0.5);
}

/* Payment by payment, each growing on its own, come to the same. */
static void
test_against_a_ledger (void)
{
  for (double rate = -0.05; rate < 0.2; rate += 0.025)
    for (int start = 0; start <= 1; start++)
      {
        SteadTerms terms = { .rate_frac = rate, .years = 6, .periods_per_year = 4, .at_start = start == 1 };
        double balance = 0;

        for (int period = 0; period < 24; period++)
          balance = start ? (balance + 1) * (1 + rate / 4) : balance * (1 + rate / 4) + 1;
        g_assert_cmpfloat_with_epsilon (stead_payments_growth (&terms), balance, 1e-9);
        g_assert_cmpfloat_with_epsilon (stead_payments_worth (&terms) * stead_growth (&terms), balance, 1e-9);
      }
}

static void
test_impossible_terms (void)
{
  SteadTerms terms = { .rate_frac = 0.1, .years = 1 };

  g_assert_true (isnan (stead_growth (&terms)));
  terms.periods_per_year = 1;
  terms.rate_frac = -1;
  g_assert_true (isnan (stead_payments_growth (&terms)));
  terms.rate_frac = 0;
  g_assert_cmpfloat (stead_payments_growth (&terms), ==, 1);
  g_assert_cmpint (stead_payment_round (NAN, STEAD_PAYMENT_UP), ==, 0);
}

/* OpenStax Principles of Finance, section 8.3; Contemporary Mathematics, section
 * 6.8 (read). */
static void
test_loan (void)
{
  SteadLoan tractor = { 3200000, 0.06, 36, STEAD_PAYMENT_NEAREST };
  SteadLoan car = { 2850000, 0.0399, 60, STEAD_PAYMENT_UP };
  SteadLoanMonth month;

  g_assert_cmpint (stead_loan_payment_cents (&tractor), ==, 97350);
  stead_loan_month (&tractor, 1, &month);
  g_assert_cmpint (month.interest_cents, ==, 16000);
  g_assert_cmpint (month.principal_cents, ==, 81350);
  g_assert_cmpint (month.balance_cents, ==, 3118650);
  stead_loan_month (&tractor, 2, &month);
  g_assert_cmpint (month.interest_cents, ==, 15593);
  g_assert_cmpint (stead_loan_payment_cents (&car), ==, 52475);
}

/* Whatever the loan: it ends at nothing, and what was paid is the amount and its
 * interest, to the cent. */
static void
test_loan_settles (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (16);

  for (int round = 0; round < 300; round++)
    {
      SteadLoan loan = { g_rand_int_range (rand, 1, 5000000), g_rand_double_range (rand, 0, 0.3),
                         g_rand_int_range (rand, 1, 120), (SteadPaymentRounding) (round % 2) };
      SteadLoanMonth month = { 0 };
      gint64 paid = 0;

      if (round % 10 == 0)
        loan.rate_frac = 0;
      for (gint32 m = 1; m <= loan.payments; m++)
        {
          stead_loan_month (&loan, m, &month);
          paid += month.payment_cents;
          g_assert_cmpint (month.balance_cents, >=, 0);
          g_assert_cmpint (month.payment_cents, ==, month.interest_cents + month.principal_cents);
        }
      g_assert_cmpint (month.balance_cents, ==, 0);
      g_assert_cmpint (paid, ==, loan.amount_cents + month.interest_so_far_cents);
    }
}

/* OpenStax Principles of Finance, sections 16.2 and 16.3 (read). */
static void
test_investment (void)
{
  const double flows[] = { -16000, 2000, 4000, 5000, 5000, 5000, 5000 };
  const double twice[] = { -350, 950, -620 };
  const double years[] = { -150000, 20000, 20000, 20000, 20000, 20000, 20000, 20000, 20000 };
  const double never[] = { -100, 10 };
  double rates[4];

  g_assert_cmpfloat_with_epsilon (stead_net_present_value (flows, 7, 0.09), 2835.62, 0.01);
  g_assert_cmpuint (stead_internal_rates (flows, 7, rates, 4), ==, 1);
  g_assert_cmpfloat_with_epsilon (rates[0], 0.1409, 0.00005);
  g_assert_cmpuint (stead_internal_rates (twice, 3, rates, 4), ==, 2);
  g_assert_cmpfloat_with_epsilon (rates[0], 0.0918, 0.00005);
  g_assert_cmpfloat_with_epsilon (rates[1], 0.6225, 0.00005);
  g_assert_cmpfloat_with_epsilon (stead_payback_years (years, 9), 7.5, 1e-12);
  g_assert_true (isnan (stead_payback_years (never, 2)));
  g_assert_cmpuint (stead_internal_rates (years + 1, 3, rates, 4), ==, 0);
  g_assert_true (isnan (stead_net_present_value (flows, 7, -1)));
}

/* At each rate that is found the flows are worth nothing. */
static void
test_rates_are_roots (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (17);

  for (int round = 0; round < 500; round++)
    {
      double flows[8];
      double rates[8];
      gsize n;

      flows[0] = -g_rand_int_range (rand, 100, 1000);
      for (int i = 1; i < 8; i++)
        flows[i] = g_rand_int_range (rand, -200, 400);
      n = stead_internal_rates (flows, 8, rates, 8);
      for (gsize i = 0; i < n; i++)
        {
          /* Far below 0 the last flow is multiplied up: noise grows with it. */
          double scale = pow (1 + MIN (0, rates[i]), -7) * 1000;

          g_assert_cmpfloat_with_epsilon (stead_net_present_value (flows, 8, rates[i]), 0, 1e-9 * scale);
          if (i > 0)
            g_assert_cmpfloat (rates[i], >, rates[i - 1]);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/time-value/published", test_published);
  g_test_add_func ("/core/time-value/against-a-ledger", test_against_a_ledger);
  g_test_add_func ("/core/time-value/impossible-terms", test_impossible_terms);
  g_test_add_func ("/core/loan/published", test_loan);
  g_test_add_func ("/core/loan/settles", test_loan_settles);
  g_test_add_func ("/core/investment/published", test_investment);
  g_test_add_func ("/core/investment/rates-are-roots", test_rates_are_roots);
  return g_test_run ();
}

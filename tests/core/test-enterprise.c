/* The result of an enterprise, and its shares. */
#include "core/stead-core-error.h"
#include "core/stead-enterprise.h"
#include "core/stead-statement.h"

#include <math.h>

/* A student's flock worked by hand (derived): 1,250 in, 940 out, stock 180 to 260, 45
 * written off; 670 at first, 1,015 at the end; 96 hours. */
static const SteadEnterprise flock = {
  .receipts_cents = 125000, .costs_cents = 94000, .stock = { 18000, 26000 }, .depreciation_cents = 4500,
  .worth = { 67000, 101500 }, .unpaid_min = 96 * 60,
};

static void
test_result (void)
{
  SteadEnterprise year = flock;
  SteadEnterpriseResult out;

  stead_enterprise_result (&year, &out);
  g_assert_cmpint (out.cash_net_cents, ==, 31000);
  g_assert_cmpint (out.stock_change_cents, ==, 8000);
  g_assert_cmpint (out.net_cents, ==, 34500);
  g_assert_cmpint (out.worth_change_cents, ==, 34500);
  g_assert_cmpint (out.unexplained_cents, ==, 0);
  g_assert_cmpfloat_with_epsilon (out.per_hour_cents, 359.38, 0.005);
  /* A gift of 50 that was counted but not written down, and 20 taken out. */
  year.worth.end_cents += 5000 - 2000;
  year.taken_out_cents = 2000;
  stead_enterprise_result (&year, &out);
  g_assert_cmpint (out.unexplained_cents, ==, 5000);
  year.gifts_cents = 5000;
  year.unpaid_min = 0;
  stead_enterprise_result (&year, &out);
  g_assert_cmpint (out.unexplained_cents, ==, 0);
  g_assert_true (isnan (out.per_hour_cents));
}

/* Pennsylvania land-grant extension educator, accrual adjustments, table 1 (read): 400,000
 * less 260,000, less 35,000; and in agreement with stead-statement.h, line by line. */
static void
test_against_statement (void)
{
  SteadEnterprise farm = { .receipts_cents = 40000000, .costs_cents = 26000000, .depreciation_cents = 3500000 };
  SteadEnterpriseResult out;
  g_autoptr(GRand) rand = g_rand_new_with_seed (3);

  stead_enterprise_result (&farm, &out);
  g_assert_cmpint (out.net_cents, ==, 10500000);
  for (int i = 0; i < 1000; i++)
    {
      gint64 r[10];
      SteadEnterprise year;
      SteadAccrual accrual;

      for (gsize k = 0; k < G_N_ELEMENTS (r); k++)
        r[k] = g_rand_int_range (rand, -1000000, 1000000);
      year = (SteadEnterprise) { .receipts_cents = r[0], .costs_cents = r[1], .stock = { r[2], r[3] },
                                 .owed_to_us = { r[4], r[5] }, .owed_by_us = { r[6], r[7] }, .prepaid = { r[8], r[9] },
                                 .depreciation_cents = r[0] };
      accrual = (SteadAccrual) { .sales = (double) r[0], .cash_costs = (double) r[1],
                                 .inventory_begin = (double) r[2], .inventory_end = (double) r[3],
                                 .receivable_change = (double) (r[5] - r[4]), .payable_change = (double) (r[7] - r[6]),
                                 .prepaid_change = (double) (r[9] - r[8]), .depreciation = (double) r[0] };
      stead_enterprise_result (&year, &out);
      g_assert_cmpfloat ((double) out.net_cents, ==, stead_accrual_net_cents (&accrual));
    }
}

static gint64
sum_of (const gint64 *cents,
        gsize         n)
{
  gint64 sum = 0;

  for (gsize i = 0; i < n; i++)
    sum += cents[i];
  return sum;
}

/* 100.00 in three is 33.34, 33.33, 33.33; by hours 3 to 1 it is 75 and 25 (by hand). */
static void
test_shares (void)
{
  const SteadSharer three[] = { { 60, 1, 0 }, { 60, 1, 0 }, { 60, 1, 0 } };
  const SteadSharer two[] = { { 180, 1, 0 }, { 60, 4, 2000 } };
  gint64 cents[3];
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_enterprise_share (10000, three, 3, STEAD_SHARE_EQUAL, cents, &error));
  g_assert_cmpint (cents[0], ==, 3334);
  g_assert_cmpint (cents[1], ==, 3333);
  g_assert_cmpint (cents[2], ==, 3333);
  /* 20.00 are agreed for the second; the other 80.00 by hours, and by role 1 to 4. */
  g_assert_true (stead_enterprise_share (10000, two, 2, STEAD_SHARE_BY_HOURS, cents, &error));
  g_assert_cmpint (cents[0], ==, 6000);
  g_assert_cmpint (cents[1], ==, 4000);
  g_assert_true (stead_enterprise_share (10000, two, 2, STEAD_SHARE_BY_WEIGHT, cents, &error));
  g_assert_cmpint (cents[0], ==, 1600);
  g_assert_cmpint (cents[1], ==, 8400);
  /* A loss is borne the same way. */
  g_assert_true (stead_enterprise_share (-100, three, 3, STEAD_SHARE_EQUAL, cents, &error));
  g_assert_cmpint (cents[0], ==, -34);
  g_assert_cmpint (sum_of (cents, 3), ==, -100);
}

static void
test_shares_sum (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (8);

  for (int i = 0; i < 3000; i++)
    {
      SteadSharer sharers[14];
      gint64 cents[14];
      gint64 total = g_rand_int_range (rand, -500000, 5000000);
      gsize n = (gsize) g_rand_int_range (rand, 1, 15);

      for (gsize k = 0; k < n; k++)
        sharers[k] = (SteadSharer) { g_rand_int_range (rand, 0, 5000) + (k == 0),
                                     g_rand_int_range (rand, 0, 5) + (k == 0),
                                     total > 0 ? g_rand_int_range (rand, 0, 3000) : 0 };
      for (int rule = STEAD_SHARE_EQUAL; rule <= STEAD_SHARE_BY_WEIGHT; rule++)
        if (stead_enterprise_share (total, sharers, n, (SteadShareRule) rule, cents, NULL))
          g_assert_cmpint (sum_of (cents, n), ==, total);
    }
}

static void
test_shares_refused (void)
{
  const SteadSharer nobody[] = { { 0, 0, 0 }, { 0, 0, 0 } };
  const SteadSharer greedy[] = { { 60, 1, 6000 }, { 60, 1, 5000 } };
  const SteadSharer negative[] = { { -60, 1, 0 } };
  const SteadSharer odd[] = { { 60, NAN, 0 } };
  gint64 cents[2] = { 77, 77 };
  g_autoptr(GError) error = NULL;

  g_assert_false (stead_enterprise_share (10000, nobody, 2, STEAD_SHARE_BY_HOURS, cents, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  g_assert_false (stead_enterprise_share (10000, greedy, 2, STEAD_SHARE_BY_HOURS, cents, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_enterprise_share (-10, greedy, 2, STEAD_SHARE_BY_HOURS, cents, NULL));
  g_assert_false (stead_enterprise_share (10000, negative, 1, STEAD_SHARE_BY_HOURS, cents, NULL));
  g_assert_false (stead_enterprise_share (10000, odd, 1, STEAD_SHARE_BY_WEIGHT, cents, NULL));
  g_assert_cmpint (cents[0], ==, 77);
  /* What is fixed may be all. */
  g_assert_true (stead_enterprise_share (11000, greedy, 2, STEAD_SHARE_BY_HOURS, cents, NULL));
  g_assert_cmpint (cents[1], ==, 5000);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/enterprise/result", test_result);
  g_test_add_func ("/core/enterprise/against-statement", test_against_statement);
  g_test_add_func ("/core/enterprise/shares", test_shares);
  g_test_add_func ("/core/enterprise/shares-sum", test_shares_sum);
  g_test_add_func ("/core/enterprise/shares-refused", test_shares_refused);
  return g_test_run ();
}

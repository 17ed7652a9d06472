/* Sale days and seasons drawn, against closed forms. */
#include "core/stead-core-error.h"
#include "core/stead-order.h"
#include "core/stead-outlook.h"
#include "core/stead-sale-day.h"

#include <math.h>

#define DRAWS 40000

static SteadSaleDraws *
draw_day (const SteadSalePlan *plan,
          gsize                n_draws,
          guint32              seed)
{
  g_autoptr(GError) error = NULL;
  SteadSaleDraws *draws = stead_sale_draws_new (plan, n_draws, seed, &error);

  g_assert_no_error (error);
  g_assert_true (stead_sale_draws_run (draws, 0, stead_sale_draws_get_n_blocks (draws), NULL, NULL, &error));
  g_assert_no_error (error);
  return draws;
}

static const SteadSaleProduct stall[] = {
  { { 10, 20, 50 }, 30, 450, 150, 50, 100, 11 },
  { { 0, 5, 8 }, 4, 1200, 600, -100, 0, 12 },
  { { 5, 9, 9 }, 12, 300, 100, 0, 50, 13 },
};

/* Each product as its closed form says, within four standard errors, whatever the
 * weather's share; the mean profit as the sum of them. */
static void
test_day_means (void)
{
  for (double together = 0; together <= 1; together += 0.5)
    {
      SteadSalePlan plan = { stall, G_N_ELEMENTS (stall), 2500, together };
      g_autoptr(SteadSaleDraws) draws = draw_day (&plan, DRAWS, 1);
      double profit = -2500, goodwill = 0;
      double mean, sd, lost;

      for (gsize i = 0; i < G_N_ELEMENTS (stall); i++)
        {
          const SteadSaleProduct *product = &stall[i];
          SteadDemand demand = { .shape = STEAD_DEMAND_TRIANGLE, .low = product->guess.low,
                                 .likely = product->guess.likely, .high = product->guess.high };
          double missed = stead_demand_expected_short (&demand, product->made);
          double left = stead_demand_expected_left (&demand, product->made);
          double error = 4 * sqrt (stead_triangle_variance (&product->guess) / DRAWS);
          SteadSaleFigures got;

          stead_sale_draws_product (draws, i, &got);
          g_assert_cmpfloat_with_epsilon (got.asked, stead_demand_mean (&demand), error);
          g_assert_cmpfloat_with_epsilon (got.missed, missed, error);
          g_assert_cmpfloat_with_epsilon (got.left, left, error);
          g_assert_cmpfloat_with_epsilon (got.sold + got.left, product->made, 1e-9);
          g_assert_cmpfloat_with_epsilon (got.sold_out_chance, stead_demand_chance_sold_out (&demand, product->made),
                                          4 * 0.5 / sqrt (DRAWS));
          profit += (product->made - left) * product->price_cents - product->made * product->cost_cents
                    + left * product->left_cents;
          goodwill += missed * product->lost_cents;
        }
      stead_sale_draws_moments (draws, &mean, &sd, &lost);
      g_assert_cmpfloat_with_epsilon (mean, profit, 4 * sd / sqrt (DRAWS));
      g_assert_cmpfloat_with_epsilon (lost, goodwill, 0.02 * goodwill);
    }
}

/* The best quantity of a drawn day is that of the critical ratio. */
static void
test_day_newsvendor (void)
{
  SteadOrderOnce order = { { .shape = STEAD_DEMAND_TRIANGLE, .low = 10, .likely = 20, .high = 50 }, 300, 100 };
  double best = stead_order_once_quantity (&order);
  double profits[3];

  for (int i = 0; i < 3; i++)
    {
      SteadSaleProduct product = { { 10, 20, 50 }, best + 4 * (i - 1), 450, 150, 50, 0, 3 };
      SteadSalePlan plan = { &product, 1, 0, 0 };
      g_autoptr(SteadSaleDraws) draws = draw_day (&plan, DRAWS, 7);
      double sd, lost;

      stead_sale_draws_moments (draws, &profits[i], &sd, &lost);
    }
  /* The same luck in all three: the difference is not noise. */
  g_assert_cmpfloat (profits[1], >, profits[0]);
  g_assert_cmpfloat (profits[1], >, profits[2]);
}

/* Sums of independent products add variances; all together, standard deviations. */
static void
test_day_together (void)
{
  const SteadSaleProduct two[] = { { { 10, 20, 50 }, 60, 100, 0, 0, 0, 1 }, { { 10, 20, 50 }, 60, 100, 0, 0, 0, 2 } };
  double variance = 1e4 * stead_triangle_variance (&two[0].guess);
  double sds[2];

  for (int i = 0; i < 2; i++)
    {
      SteadSalePlan plan = { two, 2, 0, i };
      g_autoptr(SteadSaleDraws) draws = draw_day (&plan, DRAWS, 3);
      double mean, lost;

      stead_sale_draws_moments (draws, &mean, &sds[i], &lost);
    }
  g_assert_cmpfloat_with_epsilon (sds[0], sqrt (2 * variance), 0.02 * sqrt (2 * variance));
  g_assert_cmpfloat_with_epsilon (sds[1], 2 * sqrt (variance), 0.02 * 2 * sqrt (variance));
}

static void
test_day_again (void)
{
  SteadSalePlan plan = { stall, 3, 2500, 0.4 };
  SteadSalePlan fewer = { stall, 2, 2500, 0.4 };
  g_autoptr(SteadSaleDraws) once = draw_day (&plan, 1777, 9);
  g_autoptr(SteadSaleDraws) other = draw_day (&plan, 1777, 10);
  g_autoptr(SteadSaleDraws) without = draw_day (&fewer, 1777, 9);
  g_autoptr(SteadSaleDraws) parts = stead_sale_draws_new (&plan, 1777, 9, NULL);
  SteadSaleFigures a, b;
  SteadBand one, two, differs;

  /* Last block first. */
  for (guint block = stead_sale_draws_get_n_blocks (parts); block-- > 0;)
    g_assert_true (stead_sale_draws_run (parts, block, 1, NULL, NULL, NULL));
  stead_sale_draws_profit (once, 0.8, &one);
  stead_sale_draws_profit (parts, 0.8, &two);
  stead_sale_draws_profit (other, 0.8, &differs);
  g_assert_cmpmem (&one, sizeof one, &two, sizeof two);
  g_assert_cmpfloat (one.low, !=, differs.low);
  g_assert_cmpfloat (one.low, <=, one.likely);
  g_assert_cmpfloat (one.likely, <=, one.high);
  stead_sale_draws_takings (once, 0.8, &two);
  g_assert_cmpfloat (two.likely, >, one.likely);
  /* A product less leaves the others as they were. */
  stead_sale_draws_product (once, 1, &a);
  stead_sale_draws_product (without, 1, &b);
  g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
}

static gboolean
stop_at_third (gpointer data)
{
  int *asked = data;

  return ++*asked == 3;
}

static void
test_day_refused (void)
{
  const double odd[] = { NAN, INFINITY, -INFINITY, -1, 1e300 };
  SteadSalePlan plan = { stall, 3, 2500, 0.4 };
  g_autoptr(SteadSaleDraws) draws = stead_sale_draws_new (&plan, 5000, 1, NULL);
  SteadSaleProduct certain = { { 5, 5, 5 }, 5, 100, 40, 0, 0, 1 };
  SteadSalePlan sure = { &certain, 1, 300, 0 };
  g_autoptr(SteadSaleDraws) dull = draw_day (&sure, 100, 1);
  SteadBand band;
  g_autoptr(GError) error = NULL;
  int asked = 0;

  g_assert_false (stead_sale_draws_run (draws, 0, 10, stop_at_third, &asked, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED);
  g_assert_cmpint (asked, ==, 3);
  /* A guess without width is a sure thing: 5 x 0.60 - 3.00 is nothing, and no loss. */
  stead_sale_draws_profit (dull, 0.8, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 0, 1e-9);
  g_assert_cmpfloat (stead_sale_draws_loss_chance (dull), ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    for (gsize field = 0; field < 6; field++)
      {
        SteadSaleProduct bad = stall[0];
        double *fields[] = { &bad.guess.low, &bad.guess.high, &bad.made, &bad.price_cents, &bad.cost_cents,
                             &bad.lost_cents };
        SteadSalePlan odd_plan = { &bad, 1, 0, 0 };

        *fields[field] = odd[i];
        g_assert_null (stead_sale_draws_new (&odd_plan, 10, 1, NULL));
      }
  plan.together = 1.1;
  g_assert_null (stead_sale_draws_new (&plan, 10, 1, NULL));
  plan.together = NAN;
  g_assert_null (stead_sale_draws_new (&plan, 10, 1, NULL));
}

/* The fund */

static SteadOutlookRun *
run_outlook (const SteadOutlook *outlook,
             gsize               n_paths,
             guint32             seed)
{
  g_autoptr(GError) error = NULL;
  SteadOutlookRun *run = stead_outlook_run_new (outlook, n_paths, seed, &error);

  g_assert_no_error (error);
  g_assert_true (stead_outlook_run_blocks (run, 0, stead_outlook_run_get_n_blocks (run), NULL, NULL, &error));
  return run;
}

static void
fill_sales (SteadOutlookEvent *events,
            gsize              n,
            double             mean_cents,
            double             sd_cents)
{
  for (gsize i = 0; i < n; i++)
    events[i] = (SteadOutlookEvent) { 20000 + 7 * (int) i, mean_cents, sd_cents, 1, TRUE, 100 + (guint32) i };
}

/* Sums of normal days: mean and spread, by themselves and all with the season. */
static void
test_fund_spread (void)
{
  SteadOutlookEvent events[12];

  fill_sales (events, 12, 10000, 3000);
  for (double together = 0; together <= 1; together += 0.5)
    {
      SteadOutlook outlook = { events, 12, 50000, 170000, together };
      g_autoptr(SteadOutlookRun) run = run_outlook (&outlook, DRAWS, 1);
      double sd = 3000 * sqrt (12 * (1 - together) + 144 * together);
      SteadBand band;

      g_assert_cmpuint (stead_outlook_run_get_n_steps (run), ==, 12);
      stead_outlook_run_fan (run, 11, 0.8, &band);
      g_assert_cmpfloat_with_epsilon (band.likely, 170000, 4 * 1.26 * sd / sqrt (DRAWS));
      /* A quantile at 0.1 has a standard error of about 1.71 sd / sqrt (n). */
      g_assert_cmpfloat_with_epsilon (band.high, 170000 + 1.2815515655 * sd, 4 * 1.71 * sd / sqrt (DRAWS));
      g_assert_cmpfloat_with_epsilon (band.low, 170000 - 1.2815515655 * sd, 4 * 1.71 * sd / sqrt (DRAWS));
      if (together == 1)
        /* A good season is good from the first day on: reached by the last or never. */
        g_assert_cmpfloat_with_epsilon (stead_outlook_run_chance_by (run, 11), 0.5, 4 * 0.5 / sqrt (DRAWS) + 0.02);
    }
}

/* Many small steps come near a walk that touches its goal: the inverse Gaussian law. */
static void
test_fund_touch (void)
{
  SteadOutlookEvent events[500];
  SteadOutlook outlook = { events, 500, 0, 50000, 0 };
  SteadSaving goal = { 50000, 5000, 15000 };
  g_autoptr(SteadOutlookRun) run = NULL;

  /* Ten weeks in 500 steps. */
  for (gsize i = 0; i < 500; i++)
    events[i] = (SteadOutlookEvent) { 20000 + (int) i, 100, 15000 / sqrt (50), 1, FALSE, (guint32) i };
  run = run_outlook (&outlook, 20000, 4);
  g_assert_cmpfloat_with_epsilon (stead_outlook_run_chance_by (run, 499), stead_saving_chance_ever_by (&goal, 10), 0.03);
  g_assert_cmpfloat (stead_outlook_run_chance_by (run, 499), >, stead_saving_chance_after (&goal, 10));
}

/* Pledges: come or do not.  Two of three of 100.00, each with 0.6: 3 x 0.36 x 0.4 + 0.216. */
static void
test_fund_pledges (void)
{
  const SteadOutlookEvent pledges[] = { { 20010, 10000, 0, 0.6, FALSE, 1 }, { 20005, 10000, 0, 0.6, FALSE, 2 },
                                        { 20005, 10000, 0, 0.6, FALSE, 3 }, { 20020, 7000, 0, 1, FALSE, 4 } };
  SteadOutlook outlook = { pledges, 4, 5000, 25000, 0.3 };
  g_autoptr(SteadOutlookRun) run = run_outlook (&outlook, DRAWS, 1);
  guint step = 99;

  g_assert_cmpuint (stead_outlook_run_get_n_steps (run), ==, 3);
  g_assert_cmpint (stead_outlook_run_get_day (run, 0), ==, 20005);
  g_assert_cmpint (stead_outlook_run_get_day (run, 2), ==, 20020);
  g_assert_cmpfloat_with_epsilon (stead_outlook_run_chance_by (run, 0), 0.36, 4 * 0.5 / sqrt (DRAWS));
  g_assert_cmpfloat_with_epsilon (stead_outlook_run_chance_by (run, 1), 0.648, 4 * 0.5 / sqrt (DRAWS));
  /* 70.00 more help nobody who has one pledge: 50 + 100 + 70 is not 250. */
  g_assert_cmpfloat (stead_outlook_run_chance_by (run, 2), ==, stead_outlook_run_chance_by (run, 1));
  g_assert_true (stead_outlook_run_find_day (run, 0.5, &step));
  g_assert_cmpuint (step, ==, 1);
  step = 99;
  g_assert_false (stead_outlook_run_find_day (run, 0.95, &step));
  g_assert_cmpuint (step, ==, 99);
}

static void
test_fund_plain (void)
{
  const SteadOutlookEvent sure[] = { { 20001, 100.1, 0, 1, FALSE, 1 }, { 20002, 200.2, 0, 1, FALSE, 2 },
                                     { 20003, -300, 0, 1, FALSE, 3 } };
  SteadOutlook outlook = { sure, 3, 0, 300.3, 0 };
  SteadOutlook there = { NULL, 0, 500, 500, 0 };
  g_autoptr(SteadOutlookRun) run = run_outlook (&outlook, 10, 1);
  g_autoptr(SteadOutlookRun) done = run_outlook (&there, 10, 1);
  SteadBand band;
  guint step = 99;

  g_assert_cmpfloat (stead_outlook_run_chance_by (run, 0), ==, 0);
  g_assert_cmpfloat (stead_outlook_run_chance_by (run, 1), ==, 1);
  /* Paid out afterwards; it had been reached. */
  g_assert_cmpfloat (stead_outlook_run_chance_by (run, 2), ==, 1);
  stead_outlook_run_fan (run, 2, 0.95, &band);
  g_assert_cmpfloat_with_epsilon (band.low, 0.3, 1e-9);
  g_assert_true (stead_outlook_run_find_day (run, 1, &step));
  g_assert_cmpuint (step, ==, 1);
  g_assert_cmpfloat (stead_outlook_run_chance_now (done), ==, 1);
  g_assert_cmpfloat (stead_outlook_run_chance_now (run), ==, 0);
  g_assert_cmpuint (stead_outlook_run_get_n_steps (done), ==, 0);
  g_assert_false (stead_outlook_run_find_day (done, 0.5, &step));
}

/* Whatever the order and the parts; and one day more leaves the rest as it was, so that
 * it can only help. */
static void
test_fund_again (void)
{
  SteadOutlookEvent events[13], turned[12];
  SteadOutlook outlook = { events, 12, 0, 115000, 0.3 };
  SteadOutlook backwards = { turned, 12, 0, 115000, 0.3 };
  SteadOutlook more = { events, 13, 0, 115000, 0.3 };
  g_autoptr(SteadOutlookRun) run = NULL;
  g_autoptr(SteadOutlookRun) other = NULL;
  g_autoptr(SteadOutlookRun) parts = NULL;
  g_autoptr(SteadOutlookRun) extra = NULL;
  SteadBand a, b;

  fill_sales (events, 12, 10000, 3000);
  events[12] = (SteadOutlookEvent) { 20010, 1, 0, 1, FALSE, 999 };
  for (gsize i = 0; i < 12; i++)
    turned[i] = events[11 - i];
  run = run_outlook (&outlook, 3333, 5);
  other = run_outlook (&backwards, 3333, 5);
  extra = run_outlook (&more, 3333, 5);
  parts = stead_outlook_run_new (&outlook, 3333, 5, NULL);
  for (guint block = stead_outlook_run_get_n_blocks (parts); block-- > 0;)
    g_assert_true (stead_outlook_run_blocks (parts, block, 1, NULL, NULL, NULL));
  for (guint step = 0; step < 12; step++)
    {
      stead_outlook_run_fan (run, step, 0.8, &a);
      stead_outlook_run_fan (other, step, 0.8, &b);
      g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
      stead_outlook_run_fan (parts, step, 0.8, &b);
      g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
    }
  /* A cent more on the tenth day: on every path one cent more at the end. */
  stead_outlook_run_fan (run, 11, 0.8, &a);
  stead_outlook_run_fan (extra, 12, 0.8, &b);
  g_assert_cmpfloat_with_epsilon (b.low - a.low, 1, 1e-6);
  g_assert_cmpfloat_with_epsilon (b.high - a.high, 1, 1e-6);
}

static gpointer
run_half (gpointer data)
{
  SteadOutlookRun *run = data;
  guint n = stead_outlook_run_get_n_blocks (run);

  g_assert_true (stead_outlook_run_blocks (run, 0, n / 2, NULL, NULL, NULL));
  return NULL;
}

/* 20,000 paths over two years of weekly sales, on two threads; the time is in the log. */
static void
test_fund_threads (void)
{
  SteadOutlookEvent events[104];
  SteadOutlook outlook = { events, 104, 0, 900000, 0.2 };
  g_autoptr(SteadOutlookRun) run = NULL;
  g_autoptr(SteadOutlookRun) alone = NULL;
  GThread *thread;
  SteadBand a, b;
  gint64 begin;
  guint n;

  fill_sales (events, 104, 10000, 3000);
  begin = g_get_monotonic_time ();
  run = stead_outlook_run_new (&outlook, 20000, 8, NULL);
  n = stead_outlook_run_get_n_blocks (run);
  thread = g_thread_new ("half", run_half, run);
  g_assert_true (stead_outlook_run_blocks (run, n / 2, n - n / 2, NULL, NULL, NULL));
  g_thread_join (thread);
  for (guint step = 0; step < 104; step += 4)
    stead_outlook_run_fan (run, step, 0.8, &a);
  g_test_message ("20,000 paths of two years, a fan of 26 days: %.0f ms",
                  (double) (g_get_monotonic_time () - begin) / 1000);
  alone = run_outlook (&outlook, 20000, 8);
  stead_outlook_run_fan (run, 103, 0.8, &a);
  stead_outlook_run_fan (alone, 103, 0.8, &b);
  g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
}

static void
test_fund_refused (void)
{
  const double odd[] = { NAN, INFINITY, -INFINITY, 1e300 };
  SteadOutlookEvent event = { 20000, 100, 10, 0.5, TRUE, 1 };
  SteadOutlook outlook = { &event, 1, 0, 1000, 0.5 };
  g_autoptr(SteadOutlookRun) run = stead_outlook_run_new (&outlook, 5000, 1, NULL);
  g_autoptr(GError) error = NULL;
  int asked = 0;

  g_assert_false (stead_outlook_run_blocks (run, 0, 10, stop_at_third, &asked, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_STOPPED);
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    for (gsize field = 0; field < 6; field++)
      {
        SteadOutlookEvent bad = event;
        SteadOutlook odd_outlook = { &bad, 1, 0, 1000, 0.5 };
        double *fields[] = { &bad.mean_cents, &bad.sd_cents, &bad.chance, &odd_outlook.start_cents,
                             &odd_outlook.goal_cents, &odd_outlook.together };

        *fields[field] = odd[i];
        g_clear_error (&error);
        g_assert_null (stead_outlook_run_new (&odd_outlook, 10, 1, &error));
        g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      }
  event.day = STEAD_DAY_NONE;
  g_assert_null (stead_outlook_run_new (&outlook, 10, 1, NULL));
}

/* The plan backwards: enough days, and one less is not enough, by the normal law. */
static void
test_fund_backwards (void)
{
  for (double together = 0; together < 0.05; together += 0.02)
    for (double surety = 0.5; surety < 1; surety += 0.15)
      {
        int n = stead_outlook_sales_needed (100000, 9000, 3000, together, surety);

        for (int k = n - 1; k <= n; k++)
          {
            double sd = 3000 * sqrt (k * (1 - together) + k * k * together);
            double chance = 1 - stead_normal_chance_at_most (9000.0 * k, sd, 100000);

            g_assert_true ((chance >= surety) == (k == n));
          }
      }
  g_assert_cmpint (stead_outlook_sales_needed (0, 9000, 3000, 0, 0.9), ==, 0);
  g_assert_cmpint (stead_outlook_sales_needed (27000, 9000, 0, 0, 0.9), ==, 3);
  g_assert_cmpint (stead_outlook_sales_needed (27000, -1, 10, 0, 0.9), ==, -1);
  g_assert_cmpint (stead_outlook_sales_needed (NAN, 1, 10, 0, 0.9), ==, -1);
  /* With the season's whole spread some seasons never get there. */
  g_assert_cmpint (stead_outlook_sales_needed (27000, 100, 100, 1, 0.9), ==, -1);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/sale-day/means", test_day_means);
  g_test_add_func ("/core/sale-day/newsvendor", test_day_newsvendor);
  g_test_add_func ("/core/sale-day/together", test_day_together);
  g_test_add_func ("/core/sale-day/again", test_day_again);
  g_test_add_func ("/core/sale-day/refused", test_day_refused);
  g_test_add_func ("/core/outlook/spread", test_fund_spread);
  g_test_add_func ("/core/outlook/touch", test_fund_touch);
  g_test_add_func ("/core/outlook/pledges", test_fund_pledges);
  g_test_add_func ("/core/outlook/plain", test_fund_plain);
  g_test_add_func ("/core/outlook/again", test_fund_again);
  g_test_add_func ("/core/outlook/threads", test_fund_threads);
  g_test_add_func ("/core/outlook/refused", test_fund_refused);
  g_test_add_func ("/core/outlook/backwards", test_fund_backwards);
  return g_test_run ();
}

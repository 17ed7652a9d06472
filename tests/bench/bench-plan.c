/* bench-plan.c - the plans that are made anew while a handle moves: the fund, a sale day,
 * a cutting plan, the best use of what is scarce.
 *
 * usage: bench-plan [RUNS]    times so many of each (default 30) and prints the median and
 *                             the slowest; exit status 1 where the fund or the best use
 *                             takes longer than its limit
 *        bench-plan --short   a test: memory must not grow; no limit of time
 */
#include "core/stead-cut.h"
#include "core/stead-outlook.h"
#include "core/stead-product-clash.h"
#include "core/stead-sale-day.h"

#include <malloc.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LONG_RUNS 30
#define SHORT_RUNS 20
#define GROWTH_BYTES 16384

/* 20,000 paths of two years with a sale day a week, and three bands a month. */
#define PATHS 20000
#define SALE_DAYS 104
#define FUND_LIMIT_MS 200

#define DAY_DRAWS 20000
#define PRODUCTS 8

#define KINDS 15

/* In parts and in whole units; and where twice as much is promised as can be kept. */
#define MIX_PRODUCTS 60
#define MIX_LIMITS 40
#define MIX_LIMIT_MS 20
/* So much of it for whole units, as while a handle moves. */
#define MIX_WHOLE_MS 12

typedef enum { FUND, DAY, CUT, MIX, CLASH, N_PARTS } Part;

static const char * const part_names[N_PARTS] = { "fund", "sale day", "cutting plan", "best use", "clash" };

static void
plan_fund (guint run)
{
  static const double levels[] = { 0.5, 0.8, 0.95 };
  SteadOutlookEvent events[SALE_DAYS];
  SteadOutlook outlook = { events, SALE_DAYS, 20000, 900000 + 100.0 * run, 0.2 };
  g_autoptr(SteadOutlookRun) paths = NULL;
  guint step;
  SteadBand band;

  for (guint i = 0; i < SALE_DAYS; i++)
    events[i] = (SteadOutlookEvent) { 20000 + 7 * (SteadDay) i, 10000, 3000, 1, TRUE, i };
  paths = stead_outlook_run_new (&outlook, PATHS, 1, NULL);
  g_assert_true (stead_outlook_run_blocks (paths, 0, stead_outlook_run_get_n_blocks (paths), NULL, NULL, NULL));
  for (guint i = 0; i < SALE_DAYS; i += 4)
    for (gsize k = 0; k < G_N_ELEMENTS (levels); k++)
      stead_outlook_run_fan (paths, i, levels[k], &band);
  g_assert_true (stead_outlook_run_find_day (paths, 0.8, &step));
}

static void
plan_day (guint run)
{
  SteadSaleProduct products[PRODUCTS];
  SteadSalePlan plan = { products, PRODUCTS, 2500, 0.3 };
  g_autoptr(SteadSaleDraws) draws = NULL;
  SteadBand band;

  for (guint i = 0; i < PRODUCTS; i++)
    products[i] = (SteadSaleProduct) { { 5 + i, 12 + i, 30 + i }, 15 + run % 10, 400, 150, 20, 50, i };
  draws = stead_sale_draws_new (&plan, DAY_DRAWS, 1, NULL);
  g_assert_true (stead_sale_draws_run (draws, 0, stead_sale_draws_get_n_blocks (draws), NULL, NULL, NULL));
  stead_sale_draws_profit (draws, 0.8, &band);
}

static void
plan_cut (guint run)
{
  const SteadCutStock stocks[] = { { 2.4384, 0 }, { 3.6576, 0 }, { 4.8768, 0 } };
  SteadCutPiece pieces[KINDS];
  g_autoptr(SteadCutPlan) plan = NULL;

  for (guint i = 0; i < KINDS; i++)
    pieces[i] = (SteadCutPiece) { 0.4 + 0.113 * i + 0.001 * (run % 7), 10 + i };
  plan = stead_cut_plan_new (pieces, KINDS, stocks, 3, 0.003, NULL);
  g_assert_nonnull (plan);
}

/* 60 products out of 30 scarce things; ten promises. */
static void
fill_mix (guint          run,
          double         promised,
          double        *margins,
          double        *uses,
          SteadMixLimit *limits)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (run);

  for (guint i = 0; i < MIX_PRODUCTS; i++)
    margins[i] = g_rand_int_range (rand, 50, 900);
  for (guint k = 0; k < MIX_LIMITS; k++)
    {
      gboolean promise = k >= MIX_LIMITS - 10;

      for (guint i = 0; i < MIX_PRODUCTS; i++)
        uses[k * MIX_PRODUCTS + i] = promise ? i == k : g_rand_int_range (rand, 0, 4) == 0 ? g_rand_int_range (rand, 1, 13) : 0;
      limits[k] = (SteadMixLimit) { uses + k * MIX_PRODUCTS, promise ? STEAD_MIX_AT_LEAST : STEAD_MIX_AT_MOST,
                                 promise ? promised : g_rand_int_range (rand, 300, 900) };
    }
  for (guint i = 0; i < MIX_PRODUCTS; i++)
    uses[i] = 1 + (i + run) % 12;      /* one thing goes into all */
}

static void
plan_mix (guint run)
{
  double margins[MIX_PRODUCTS], uses[MIX_LIMITS * MIX_PRODUCTS], wholes[MIX_PRODUCTS], best, whole;
  gboolean proven;
  SteadMixLimit limits[MIX_LIMITS];
  SteadProductPlan products[MIX_PRODUCTS];
  SteadLimitPlan plans[MIX_LIMITS];

  fill_mix (run, 1, margins, uses, limits);
  g_assert_true (stead_product_mix_solve (margins, MIX_PRODUCTS, limits, MIX_LIMITS, products, plans, &best, NULL));
  g_assert_true (stead_product_mix_solve_whole (margins, MIX_PRODUCTS, limits, MIX_LIMITS, MIX_WHOLE_MS, wholes, &whole,
                                                &proven, NULL));
  g_assert_cmpfloat (whole, <=, best + 1e-6);
}

static void
plan_clash (guint run)
{
  double margins[MIX_PRODUCTS], uses[MIX_LIMITS * MIX_PRODUCTS];
  SteadMixLimit limits[MIX_LIMITS];
  gboolean clash[MIX_LIMITS];

  fill_mix (run, 60, margins, uses, limits);
  g_assert_cmpuint (stead_product_clash_find (limits, MIX_LIMITS, MIX_PRODUCTS, clash), >, 0);
}

/* Time that the processor spent on this thread: other programs do not count. */
static double
own_ms (void)
{
  struct timespec t;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &t);
  return (double) t.tv_sec * 1e3 + (double) t.tv_nsec / 1e6;
}

static void
make_all (guint   run,
          double *ms)
{
  static void (* const plans[N_PARTS]) (guint) = { plan_fund, plan_day, plan_cut, plan_mix, plan_clash };

  for (gsize p = 0; p < N_PARTS; p++)
    {
      double began = own_ms ();

      plans[p] (run);
      ms[p] = own_ms () - began;
    }
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static int
run_benchmark (guint runs)
{
  g_autofree double *ms = g_new (double, N_PARTS * runs);
  double fund_ms = 0, mix_ms = 0;

  for (guint run = 0; run < runs; run++)
    {
      double parts[N_PARTS];

      make_all (run, parts);
      for (gsize p = 0; p < N_PARTS; p++)
        ms[p * runs + run] = parts[p];
    }
  for (gsize p = 0; p < N_PARTS; p++)
    {
      qsort (ms + p * runs, runs, sizeof *ms, compare);
      printf ("%-13s %8.1f ms median %8.1f ms slowest\n", part_names[p], ms[p * runs + runs / 2],
              ms[p * runs + runs - 1]);
    }
  fund_ms = ms[FUND * runs + runs / 2];
  mix_ms = ms[MIX * runs + runs / 2];
  return fund_ms > FUND_LIMIT_MS || mix_ms > MIX_LIMIT_MS ? EXIT_FAILURE : EXIT_SUCCESS;
}

static void
test_memory (void)
{
  double parts[N_PARTS];
  size_t before = 0;

  for (guint run = 0; run < SHORT_RUNS; run++)
    {
      /* The first turns fill what libraries keep. */
      if (run == SHORT_RUNS / 2)
        before = mallinfo2 ().uordblks;
      make_all (run, parts);
    }
  g_test_message ("grew by %" G_GINT64_FORMAT " bytes", (gint64) mallinfo2 ().uordblks - (gint64) before);
  g_assert_cmpint ((gint64) mallinfo2 ().uordblks - (gint64) before, <=, GROWTH_BYTES);
}

int
main (int   argc,
      char *argv[])
{
  if (argc < 2 || !g_str_equal (argv[1], "--short"))
    return run_benchmark (argc > 1 ? (guint) CLAMP (atoi (argv[1]), 1, 10000) : LONG_RUNS);

  argv[1] = argv[0];
  argc--;
  argv++;
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/plan/memory-holds-still", test_memory);
  return g_test_run ();
}

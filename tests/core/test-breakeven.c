/* Break-even: worked examples of open textbooks, and every answer against a
 * plain walk from unit to unit. */
#include "core/stead-breakeven.h"
#include "core/stead-sensitivity.h"

#include <malloc.h>
#include <math.h>

/* OpenStax Principles of Accounting vol. 2: sections 3.1 to 3.3, 3.5 (read). */
static const struct
{
  double price, variable, fixed, planned, target;   /* cents */
  double even, profit;
  gint64 target_whole;
} published[] = {
  { 10000, 2000, 1800000, 175, 1600000, 225, -400000, 425 },     /* 3.2 */
  { 10000, 2000, 1800000, 300, 4000000, 225, 600000, 725 },      /* 3.2 */
  { 2500, 1550, 70000, 100, 0, 70000 / 950.0, 25000, 74 },       /* 3.1 */
  { 40000, 15000, 1400000, 0, 1000000, 56, -1400000, 96 },       /* 3.2 */
  { 375, 150, 247500, 1500, 0, 1100, 90000, 1100 },              /* 3.3 */
  { 395, 145, 287500, 1500, 0, 1150, 87500, 1150 },              /* 3.3 */
  { 9000, 4000, 8500000, 2500, 1000000, 1700, 4000000, 1900 },   /* 3.5 */
};

static void
test_published (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (published); i++)
    {
      SteadCvp cvp = { .price_cents = published[i].price, .variable_cents = published[i].variable,
                       .fixed_cents = published[i].fixed, .planned_units = published[i].planned,
                       .target_cents = published[i].target };
      SteadCvpFigures figures;

      g_test_message ("case %" G_GSIZE_FORMAT, i);
      stead_cvp_figures (&cvp, &figures);
      g_assert_cmpfloat_with_epsilon (figures.even_units, published[i].even, 1e-6);
      g_assert_cmpfloat_with_epsilon (figures.profit_cents, published[i].profit, 1e-6);
      g_assert_cmpint (figures.target_whole_units, ==, published[i].target_whole);
      g_assert_cmpint (figures.lasting_whole_units, ==, figures.even_whole_units);
    }
}

/* OpenStax vol. 2, sections 3.2 and 3.5 (read): price 90, cost 40, fixed 85,000,
 * plan 2,500: safety 72,000 or 32 percent of sales. */
static void
test_safety (void)
{
  SteadCvp cvp = { .price_cents = 9000, .variable_cents = 4000, .fixed_cents = 8500000,
                   .planned_units = 2500, .target_cents = 1000000 };
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpfloat_with_epsilon (figures.margin_cents, 5000, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.margin_frac, 5.0 / 9, 1e-12);
  g_assert_cmpfloat_with_epsilon (figures.even_sales_cents, 15300000, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.safety_units * 9000, 7200000, 1e-6);
  g_assert_cmpfloat_with_epsilon (figures.safety_frac, 0.32, 1e-12);
  g_assert_cmpint (figures.safety_whole_units, ==, 800);
  g_assert_cmpfloat_with_epsilon (figures.leverage, 12500000 / 4000000.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (figures.needed_price_cents, 4000 + 9500000 / 2500.0, 1e-9);
  cvp.planned_units = 1600;
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpfloat_with_epsilon (figures.safety_units, -100, 1e-9);
  g_assert_cmpint (figures.safety_whole_units, ==, -100);
  g_assert_cmpfloat_with_epsilon (figures.leverage, 8000000 / -500000.0, 1e-9);
}

/* OpenStax vol. 2, section 2.2: shirts; machines at 2,000 that make 2,000 each. */
static void
test_steps (void)
{
  SteadCvp cvp = { .price_cents = 400, .variable_cents = 75, .fixed_cents = 400000,
                   .step_cents = 200000, .step_units = 2000, .planned_units = 300 };
  SteadCvpFigures figures;

  g_assert_cmpfloat (stead_cvp_cost_cents (&cvp, 500), ==, 637500);
  g_assert_cmpfloat (stead_cvp_cost_cents (&cvp, 2000), ==, 750000);
  g_assert_cmpfloat (stead_cvp_fixed_cents (&cvp, 2001), ==, 800000);
  g_assert_cmpfloat (stead_cvp_fixed_cents (&cvp, 0), ==, 600000);
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpint (figures.even_whole_units, ==, 1847);
  g_assert_cmpint (figures.lasting_whole_units, ==, 2462);
  g_assert_cmpuint (stead_cvp_crossings (&cvp, 4000), ==, 3);
  g_assert_cmpint (figures.safety_whole_units, ==, 300 - 1847);
  /* In the second loss the way out lies ahead, not behind. */
  cvp.planned_units = 2300;
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpfloat (figures.profit_cents, <, 0);
  g_assert_cmpint (figures.safety_whole_units, ==, 2300 - 2462);
  /* At 3.60 the first meeting, 2,105, lies outside its own step. */
  cvp.price_cents = 360;
  g_assert_cmpint (stead_cvp_even_whole_units (&cvp, 0), ==, 2808);
}

static void
test_never (void)
{
  SteadCvp cvp = { .price_cents = 300, .variable_cents = 300, .fixed_cents = 1000, .planned_units = 10 };
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  g_assert_true (isnan (figures.even_units));
  g_assert_true (isnan (figures.even_sales_cents));
  g_assert_cmpint (figures.even_whole_units, ==, -1);
  g_assert_cmpint (figures.lasting_whole_units, ==, -1);
  g_assert_cmpint (figures.target_whole_units, ==, -1);
  g_assert_true (isnan (figures.safety_units));
  g_assert_cmpint (figures.safety_whole_units, ==, 0);
  /* A margin that is only binary noise is none: 0.1 + 0.2 against 0.3. */
  cvp.price_cents = 0.3;
  cvp.variable_cents = 0.1 + 0.2;
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpfloat (figures.margin_cents, ==, 0);
  g_assert_cmpint (figures.even_whole_units, ==, -1);
  /* No price, no share of it; no plan, no price needed for it. */
  cvp = (SteadCvp) { .fixed_cents = 100 };
  stead_cvp_figures (&cvp, &figures);
  g_assert_true (isnan (figures.margin_frac));
  g_assert_true (isnan (figures.needed_price_cents));
  g_assert_true (isnan (figures.safety_frac));
  /* At break-even there is no leverage. */
  cvp = (SteadCvp) { .price_cents = 200, .fixed_cents = 2000, .planned_units = 10 };
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpfloat (figures.profit_cents, ==, 0);
  g_assert_true (isnan (figures.leverage));
}

/* A step of 2.00 a unit sold eats the whole margin: a loss forever, or none. */
static void
test_step_eats_margin (void)
{
  SteadCvp cvp = { .price_cents = 300, .variable_cents = 100, .fixed_cents = 0, .step_cents = 2000,
                   .step_units = 10, .planned_units = 10 };
  SteadCvpFigures figures;

  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpint (figures.even_whole_units, ==, 10);
  g_assert_cmpint (figures.lasting_whole_units, ==, -1);
  cvp.fixed_cents = 1;
  g_assert_cmpint (stead_cvp_even_whole_units (&cvp, 0), ==, -1);
}

/* The same questions, answered by walking from unit to unit. */
typedef struct
{
  gint64 first;
  gint64 lasting;
  guint  crossings;
  gint64 first_target;
} Walk;

static double
profit_of (const SteadCvp *cvp,
           gint64          units)
{
  double steps = cvp->step_cents > 0 && cvp->step_units > 0
                 ? MAX (1, ceil ((double) units / cvp->step_units - 1e-9)) : 0;

  return (cvp->price_cents - cvp->variable_cents) * (double) units - cvp->fixed_cents
         - cvp->step_cents * steps;
}

static Walk
walk (const SteadCvp *cvp,
      gint64          max)
{
  Walk found = { -1, 0, 0, -1 };

  for (gint64 n = 0; n <= max; n++)
    {
      gboolean loss = profit_of (cvp, n) < 0;

      if (!loss && found.first < 0)
        found.first = n;
      if (profit_of (cvp, n) >= cvp->target_cents && found.first_target < 0)
        found.first_target = n;
      if (loss)
        found.lasting = n + 1;
      if (n > 0 && loss != (profit_of (cvp, n - 1) < 0))
        found.crossings++;
    }
  if (found.lasting > max)
    found.lasting = -1;
  return found;
}

static void
test_against_a_walk (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260304);

  for (int round = 0; round < 20000; round++)
    {
      /* Halves and quarters of cents are exact in binary: no noise hides a fault. */
      SteadCvp cvp = {
        .price_cents = g_rand_int_range (rand, 1, 600),
        .variable_cents = g_rand_int_range (rand, 0, 400) / 4.0,
        .fixed_cents = g_rand_int_range (rand, 0, 5000),
        .step_cents = round % 3 != 0 ? g_rand_int_range (rand, 1, 2500) : 0,
        .step_units = round % 3 == 1 ? g_rand_int_range (rand, 1, 30)
                                     : g_rand_int_range (rand, 2, 120) / (round % 7 ? 4.0 : 64.0),
        .target_cents = g_rand_int_range (rand, -500, 3000),
      };
      gint64 max = g_rand_int_range (rand, 1, 400);
      Walk found;
      gint64 first, first_target;

      if (cvp.price_cents <= cvp.variable_cents)
        continue;
      found = walk (&cvp, max);
      first = stead_cvp_even_whole_units (&cvp, 0);
      first_target = stead_cvp_even_whole_units (&cvp, cvp.target_cents);
      g_test_message ("round %d: p %g v %g F %g s %g/%g t %g max %" G_GINT64_FORMAT, round,
                      cvp.price_cents, cvp.variable_cents, cvp.fixed_cents, cvp.step_cents,
                      cvp.step_units, cvp.target_cents, max);
      g_assert_cmpint (first <= max ? first : -1, ==, found.first);
      g_assert_cmpint (first_target <= max ? first_target : -1, ==, found.first_target);
      g_assert_cmpint (stead_cvp_lasting_whole_units (&cvp, (double) max), ==, found.lasting);
      g_assert_cmpuint (stead_cvp_crossings (&cvp, (double) max), ==, found.crossings);
    }
}

/* How far the plan may fall (or must rise), by walking away from it. */
static void
test_safety_against_a_walk (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (7);

  for (int round = 0; round < 5000; round++)
    {
      SteadCvp cvp = {
        .price_cents = g_rand_int_range (rand, 200, 600),
        .variable_cents = g_rand_int_range (rand, 0, 199),
        .fixed_cents = g_rand_int_range (rand, 0, 5000),
        .step_cents = round % 2 ? g_rand_int_range (rand, 1, 1500) : 0,
        .step_units = g_rand_int_range (rand, 1, 30),
        .planned_units = g_rand_int_range (rand, 0, 100),
      };
      gint64 plan = (gint64) cvp.planned_units;
      gint64 n = plan;
      SteadCvpFigures figures;

      stead_cvp_figures (&cvp, &figures);
      if (figures.even_whole_units < 0)
        continue;
      if (profit_of (&cvp, plan) >= 0)
        while (n > 0 && profit_of (&cvp, n - 1) >= 0)
          n--;
      else
        while (n < 100000 && profit_of (&cvp, n) < 0)
          n++;
      if (n == 100000)
        continue;
      g_test_message ("round %d", round);
      g_assert_cmpint (figures.safety_whole_units, ==, plan - n);
    }
}

/* Saylor, Managerial Accounting, section 6.3 (read): 250, 150, 50,000, 700 units. */
static void
test_sensitivity (void)
{
  SteadCvp base = { .price_cents = 25000, .variable_cents = 15000, .fixed_cents = 5000000,
                    .planned_units = 700 };
  SteadCvpChange price = { .price_frac = 0.1 };
  SteadCvpChange units = { .units_frac = -0.1 };
  SteadCvpChange both = { .fixed_cents = -1500000, .variable_cents = 1500 };
  SteadCvp changed;

  g_assert_cmpfloat_with_epsilon (stead_cvp_profit_change_cents (&base, &price), 1750000, 1e-3);
  g_assert_cmpfloat_with_epsilon (stead_cvp_profit_change_cents (&base, &units), -700000, 1e-3);
  g_assert_cmpfloat_with_epsilon (stead_cvp_profit_change_cents (&base, &both), 450000, 1e-3);
  g_assert_cmpfloat_with_epsilon (stead_cvp_swing_cents (&base, &price), 3500000, 1e-3);
  stead_cvp_changed (&base, &price, &changed);
  g_assert_cmpfloat_with_epsilon (stead_cvp_even_units (&changed, 0), 400, 1e-9);
  /* OpenStax vol. 2, section 3.5 (read): 148,000 less 63,000. */
  g_assert_cmpfloat_with_epsilon (stead_leverage (148000, 85000), 1.74, 0.005);
  g_assert_true (isnan (stead_leverage (100, 0)));
}

static void
test_pretax (void)
{
  /* OpenStax vol. 2, section 3.2 (read): 24,000 after 40 percent is 40,000. */
  g_assert_cmpfloat_with_epsilon (stead_pretax_cents (2400000, 0.4), 4000000, 1e-6);
  g_assert_true (isnan (stead_pretax_cents (100, 1)));
  g_assert_true (isnan (stead_pretax_cents (100, NAN)));
}

/* A drag step takes no memory and little time, whatever the plan. */
static void
test_no_heap (void)
{
  SteadCvp cvp = { .price_cents = 400, .variable_cents = 75, .fixed_cents = 400000,
                   .step_cents = 2000, .step_units = 7, .planned_units = 1e6 };
  SteadCvpFigures figures;
  struct mallinfo2 before = mallinfo2 ();
  struct mallinfo2 after;
  double sum = 0;

  for (int i = 0; i < 100000; i++)
    {
      cvp.price_cents = 300 + i % 200;
      stead_cvp_figures (&cvp, &figures);
      sum += figures.profit_cents;
    }
  after = mallinfo2 ();
  g_assert_cmpuint (after.uordblks, ==, before.uordblks);
  g_assert_true (isfinite (sum));
}

static void
test_null (void)
{
  SteadCvpFigures figures;

  if (g_test_subprocess ())
    {
      stead_cvp_figures (NULL, &figures);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*cvp != NULL*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/breakeven/published", test_published);
  g_test_add_func ("/core/breakeven/safety", test_safety);
  g_test_add_func ("/core/breakeven/steps", test_steps);
  g_test_add_func ("/core/breakeven/never", test_never);
  g_test_add_func ("/core/breakeven/step-eats-margin", test_step_eats_margin);
  g_test_add_func ("/core/breakeven/against-a-walk", test_against_a_walk);
  g_test_add_func ("/core/breakeven/safety-against-a-walk", test_safety_against_a_walk);
  g_test_add_func ("/core/breakeven/sensitivity", test_sensitivity);
  g_test_add_func ("/core/breakeven/pretax", test_pretax);
  g_test_add_func ("/core/breakeven/no-heap", test_no_heap);
  g_test_add_func ("/core/breakeven/null", test_null);
  return g_test_run ();
}

/* Break-even against worked examples of open textbooks. */
#include "core/stead-breakeven.h"

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

      g_test_message ("case %zu", i);
      stead_cvp_figures (&cvp, &figures);
      g_assert_cmpfloat_with_epsilon (figures.even_units, published[i].even, 1e-6);
      g_assert_cmpfloat_with_epsilon (figures.profit_cents, published[i].profit, 1e-6);
      g_assert_cmpint (figures.target_whole_units, ==, published[i].target_whole);
    }
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
  stead_cvp_figures (&cvp, &figures);
  g_assert_cmpint (figures.even_whole_units, ==, 1847);
  g_assert_cmpint (figures.lasting_whole_units, ==, 2462);
  g_assert_cmpuint (stead_cvp_crossings (&cvp, 4000), ==, 3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/breakeven/published", test_published);
  g_test_add_func ("/core/breakeven/steps", test_steps);
  return g_test_run ();
}

/* test-assumption.c - what becomes of a sale day when its assumptions change. */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "core/stead-assumption.h"

/* Saylor Managerial Accounting, section 6.3, sensitivity table: $250, $150, $50,000, 700. */
static const SteadCvp saylor = { .price_cents = 250, .variable_cents = 150, .fixed_cents = 50000, .planned_units = 700 };
static const double as_is[STEAD_N_ASSUMPTIONS] = { 250, 700, 50000, 1, 1, 0, 1, 0, 0, 1 };

static const SteadSwing *
find (const SteadSwing *swings,
      int               n,
      SteadAssumption   which)
{
  for (int i = 0; i < n; i++)
    if (swings[i].assumption == which)
      return &swings[i];
  return NULL;
}

static void
test_published (void)
{
  SteadUnitParts parts = { .input_cents = 150 };
  SteadSwing swings[STEAD_N_ASSUMPTIONS];
  int n = stead_assume_tornado (&parts, &saylor, as_is, 0.1, swings);
  const SteadSwing *price = find (swings, n, STEAD_ASSUME_PRICE);
  const SteadSwing *units = find (swings, n, STEAD_ASSUME_PLANNED);

  /* Price up by a tenth: $17,500 more; units down by a tenth: $7,000 less; bars of $35,000 and $14,000. */
  g_assert_cmpfloat_with_epsilon (price->high_cents - 20000, 17500, 1e-6);
  g_assert_cmpfloat_with_epsilon (units->low_cents - 20000, -7000, 1e-6);
  g_assert_cmpfloat_with_epsilon (price->high_cents - price->low_cents, 35000, 1e-6);
  g_assert_cmpfloat_with_epsilon (units->high_cents - units->low_cents, 14000, 1e-6);
  g_assert_cmpint (swings[0].assumption, ==, STEAD_ASSUME_PRICE);
  g_assert_null (find (swings, n, STEAD_ASSUME_UNSOLD));       /* a tenth more of nothing */
  g_assert_null (find (swings, n, STEAD_ASSUME_PACKAGING));
  for (int i = 1; i < n; i++)
    g_assert_cmpfloat (fabs (swings[i].high_cents - swings[i].low_cents), <=,
                       fabs (swings[i - 1].high_cents - swings[i - 1].low_cents));
}

/* By hand: feed 100, keep 40, birds 20, carton 30, 10 % unsold in them. */
static void
test_unit (void)
{
  SteadUnitParts parts = { 100, 40, 20, 30, 0.25, 0.1 };
  double values[STEAD_N_ASSUMPTIONS] = { 0, 0, 0, 1, 1, 0.1, 1, 0, 0, 1 };

  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 190.25, 1e-9);
  values[STEAD_ASSUME_INPUT] = 1.5;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 240.25, 1e-9);
  values[STEAD_ASSUME_YIELD] = 0.5;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 430.25, 1e-9);
  values[STEAD_ASSUME_UNSOLD] = 0.55;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 830.25, 1e-9);
  values[STEAD_ASSUME_PACKAGING] = 2;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 860.25, 1e-9);
  values[STEAD_ASSUME_YIELD] = 0;
  g_assert_true (isnan (stead_assume_unit_cents (&parts, values)));
}

/* By hand: feed 100, keep 40, birds 20, carton 30, work 60.  A fifth dies: keep 50, birds 25.  Half as
 * warm: twice the days of keep.  A quarter of the work is paid: 15. */
static void
test_deaths_warmth_and_work (void)
{
  SteadUnitParts parts = { .input_cents = 100, .shared_cents = 40, .good_cents = 20, .pack_cents = 30, .work_cents = 60 };
  double values[STEAD_N_ASSUMPTIONS] = { 0, 0, 0, 1, 1, 0, 1, 0, 0, 1 };

  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 190, 1e-9);
  values[STEAD_ASSUME_DEATHS] = 0.2;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 205, 1e-9);
  values[STEAD_ASSUME_WARMTH] = 0.5;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 255, 1e-9);
  values[STEAD_ASSUME_WORK] = 0.25;
  g_assert_cmpfloat_with_epsilon (stead_assume_unit_cents (&parts, values), 270, 1e-9);
  values[STEAD_ASSUME_DEATHS] = 1;
  g_assert_true (isnan (stead_assume_unit_cents (&parts, values)));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/assumption/published", test_published);
  g_test_add_func ("/core/assumption/unit", test_unit);
  g_test_add_func ("/core/assumption/deaths-warmth-and-work", test_deaths_warmth_and_work);
  return g_test_run ();
}

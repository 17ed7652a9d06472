/* A sale day against its plan, and rows of figures against chance. */
#include "core/stead-run-chart.h"
#include "core/stead-sale-variance.h"

#include <math.h>

static double
sum_of (const SteadSaleVariance *v)
{
  return v->price_cents + v->cost_cents + v->quantity_cents + v->mix_cents + v->lost_cents + v->fixed_cents;
}

/* By hand: 60 and 40 were planned with margins of 4 and 1; 50 and 70 came. */
static void
test_variance (void)
{
  const SteadSaleLine planned[] = { { 60, 1000, 600 }, { 40, 500, 400 } };
  const SteadSaleLine actual[] = { { 50, 900, 650 }, { 70, 500, 400 } };
  SteadSaleResult plan = { planned, 1000, 2500 };
  SteadSaleResult came = { actual, 1800, 2000 };
  SteadSaleVariance out;

  g_assert_true (stead_sale_variance (&plan, &came, 2, &out));
  g_assert_cmpfloat_with_epsilon (out.price_cents, -5000, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.cost_cents, -2500, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.quantity_cents, 5600, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.mix_cents, -6600, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.lost_cents, -800, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.fixed_cents, 500, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.planned_cents, 28000 - 3500, 1e-9);
  g_assert_cmpfloat_with_epsilon (out.actual_cents, 19500 - 3800, 1e-9);
}

/* Whatever happened, the parts are all of it. */
static void
test_variance_adds_up (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (6);

  for (int round = 0; round < 5000; round++)
    {
      SteadSaleLine planned[6], actual[6];
      SteadSaleResult plan = { planned, g_rand_double_range (rand, 0, 5000), g_rand_double_range (rand, 0, 5000) };
      SteadSaleResult came = { actual, g_rand_double_range (rand, 0, 5000), g_rand_double_range (rand, 0, 5000) };
      SteadSaleVariance out;
      gsize n = (gsize) g_rand_int_range (rand, 1, 7);

      for (gsize i = 0; i < n; i++)
        {
          planned[i] = (SteadSaleLine) { g_rand_int_range (rand, 0, 50) + (i == 0), g_rand_int_range (rand, 0, 2000),
                                         g_rand_int_range (rand, 0, 2000) };
          actual[i] = (SteadSaleLine) { g_rand_int_range (rand, 0, 50), g_rand_int_range (rand, 0, 2000),
                                        g_rand_int_range (rand, 0, 2000) };
        }
      g_assert_true (stead_sale_variance (&plan, &came, n, &out));
      g_assert_cmpfloat_with_epsilon (sum_of (&out), out.actual_cents - out.planned_cents, 1e-6);
      /* With one product there is no mix. */
      if (n == 1)
        g_assert_cmpfloat_with_epsilon (out.mix_cents, 0, 1e-9);
    }
}

static void
test_variance_refused (void)
{
  const SteadSaleLine none[] = { { 0, 1000, 600 } };
  const SteadSaleLine some[] = { { 5, 1000, 600 } };
  const SteadSaleLine odd[] = { { NAN, 1000, 600 } };
  const SteadSaleLine back[] = { { -5, 1000, 600 } };
  const SteadSaleLine huge[] = { { 1e300, 1e300, 600 } };
  SteadSaleResult plan = { some, 0, 0 };
  SteadSaleResult empty = { none, 0, 0 };
  SteadSaleVariance out = { .mix_cents = 77 };

  g_assert_false (stead_sale_variance (&empty, &plan, 1, &out));
  g_assert_false (stead_sale_variance (&plan, &(SteadSaleResult) { odd, 0, 0 }, 1, &out));
  g_assert_false (stead_sale_variance (&plan, &(SteadSaleResult) { back, 0, 0 }, 1, &out));
  g_assert_false (stead_sale_variance (&plan, &(SteadSaleResult) { huge, 0, 0 }, 1, &out));
  g_assert_false (stead_sale_variance (&plan, &(SteadSaleResult) { some, NAN, 0 }, 1, &out));
  g_assert_false (stead_sale_variance (&plan, &plan, 0, &out));
  g_assert_cmpfloat (out.mix_cents, ==, 77);
  /* Nothing sold is a result. */
  g_assert_true (stead_sale_variance (&plan, &empty, 1, &out));
  g_assert_cmpfloat_with_epsilon (out.quantity_cents, -2000, 1e-9);
}

/* Rows made by hand for the two rules. */
static void
test_run_chart (void)
{
  const double calm[] = { 3, -1, 2, -2, 1, -3, 2, -1, 1, -2 };
  const double shifted[] = { -5, -4, -5, -3, -4, 0, 2, 3, 2, 0, 3, 2, 3 };
  const double rising[] = { 5, -5, 5, -5, 1, 2, 2, 3, 4, -5, 5, -5 };
  const double nearly[] = { 5, -5, 5, -5, 1, 2, 2, 3, -5, 5, -5, 5 };
  const double few[] = { 1, 2, 3, 4, 5, 6, 7, 8, 9 };
  SteadRunChart chart;

  g_assert_true (stead_run_chart (calm, G_N_ELEMENTS (calm), &chart));
  g_assert_true (chart.can_tell && !chart.shift.found && !chart.trend.found);
  g_assert_cmpfloat_with_epsilon (chart.median, 0, 1e-12);
  /* Two points on the median do not break the six above it. */
  g_assert_true (stead_run_chart (shifted, G_N_ELEMENTS (shifted), &chart));
  g_assert_cmpfloat (chart.median, ==, 0);
  g_assert_true (chart.shift.found && chart.shift.upward);
  g_assert_cmpuint (chart.shift.first, ==, 6);
  g_assert_cmpuint (chart.shift.last, ==, 12);
  /* -5, 1, 2, 2, 3, 4 are five that rise, once the second 2 is left out. */
  g_assert_true (stead_run_chart (rising, G_N_ELEMENTS (rising), &chart));
  g_assert_true (chart.trend.found && chart.trend.upward && !chart.shift.found);
  g_assert_cmpuint (chart.trend.first, ==, 3);
  g_assert_cmpuint (chart.trend.last, ==, 8);
  g_assert_true (stead_run_chart (nearly, G_N_ELEMENTS (nearly), &chart));
  g_assert_false (chart.trend.found);
  g_assert_true (stead_run_chart (few, G_N_ELEMENTS (few), &chart));
  g_assert_false (chart.can_tell || chart.trend.found);
  chart.median = 77;
  g_assert_false (stead_run_chart ((const double[]) { 1, NAN }, 2, &chart));
  g_assert_cmpfloat (chart.median, ==, 77);
}

/* Chance alone seldom gives a shift: of 1,000 rows of twelve, fewer than one in ten. */
static void
test_run_chart_calm (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (2);
  guint shifts = 0;

  for (int round = 0; round < 1000; round++)
    {
      double values[12];
      SteadRunChart chart;

      for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
        values[i] = g_rand_double (rand);
      g_assert_true (stead_run_chart (values, G_N_ELEMENTS (values), &chart));
      shifts += chart.shift.found;
    }
  g_test_message ("%u shifts", shifts);
  g_assert_cmpuint (shifts, <, 100);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/sales/variance", test_variance);
  g_test_add_func ("/core/sales/variance-adds-up", test_variance_adds_up);
  g_test_add_func ("/core/sales/variance-refused", test_variance_refused);
  g_test_add_func ("/core/sales/run-chart", test_run_chart);
  g_test_add_func ("/core/sales/run-chart-calm", test_run_chart_calm);
  return g_test_run ();
}

/* test-bar-chart.c - the chart of named bars, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-bar-chart.h"

static const SteadBar steps[] = {
  { "Feed", "$1.46", 0, 146, STEAD_ROLE_EGG, STEAD_PATTERN_SOLID, FALSE },
  { "Pullets, spread over the whole of their lay", "$0.42", 146, 188, STEAD_ROLE_TOMATO, STEAD_PATTERN_RISING, FALSE },
  { "Of it given", "−$0.08", 188, 180, STEAD_ROLE_FISH, STEAD_PATTERN_DOTS, FALSE },
  { "One dozen costs", "$1.80", 0, 180, STEAD_ROLE_INK, STEAD_PATTERN_SOLID, TRUE },
};

static SteadBarSeries
make_series (void)
{
  return (SteadBarSeries) { steps, G_N_ELEMENTS (steps), TRUE, NAN, NULL };
}

/* Bars are as long as their money, and each begins where the last one ended. */
static void
test_lengths (void)
{
  SteadBarSeries series = make_series ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadBarLayout layout;
  double cent;

  stead_bar_chart_layout (cr, &series, &style, 700, 260, &layout);
  cent = layout.bars[3].width / 180;
  g_assert_cmpfloat_with_epsilon (layout.bars[0].width, 146 * cent, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[1].x, layout.bars[0].x + layout.bars[0].width, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[2].x, layout.bars[0].x + 180 * cent, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[2].width, 8 * cent, 1e-6);
  for (int i = 1; i < series.n; i++)
    g_assert_cmpfloat (layout.bars[i].y, >, layout.bars[i - 1].y + layout.bars[i - 1].height);
  g_assert_cmpint (stead_bar_chart_at (&series, &layout, layout.bars[2].y + 2), ==, 2);
  g_assert_cmpint (stead_bar_chart_at (&series, &layout, -1), ==, -1);
  cairo_destroy (cr);
}

/* The tornado: bars lie on both sides of the plan, also under zero. */
static void
test_base (void)
{
  const SteadBar bars[] = { { "Price", "$0", -5000, 5000, STEAD_ROLE_WATER, STEAD_PATTERN_SOLID, FALSE },
                            { "Feed", "$0", -1000, 1000, STEAD_ROLE_EGG, STEAD_PATTERN_SOLID, FALSE } };
  SteadBarSeries series = { bars, 2, FALSE, 0, "the plan: $0.00" };
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, 9, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadBarLayout layout;

  stead_bar_chart_layout (cr, &series, &style, 500, 160, &layout);
  g_assert_cmpfloat_with_epsilon (layout.bars[0].x + layout.bars[0].width / 2, layout.base_x, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[0].width, 5 * layout.bars[1].width, 1e-6);
  stead_bar_chart_paint (cr, &series, &style, &layout, 1);
  probe_assert_inside (cr, 500, 160);
  cairo_destroy (cr);
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 900, 400 }, { 480, 260 }, { 360, 220 } };
  SteadBarSeries series = make_series ();

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
      {
        SteadDrawStyle style = { scheme, i == 0 ? 24 : 12, NULL, "USD" };
        cairo_t *cr = probe_record ();
        SteadBarLayout layout;

        stead_bar_chart_layout (cr, &series, &style, sizes[i][0], sizes[i][1], &layout);
        stead_bar_chart_paint (cr, &series, &style, &layout, 0);
        probe_assert_inside (cr, sizes[i][0], sizes[i][1]);
        cairo_destroy (cr);
      }
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/bar-chart/lengths", test_lengths);
  g_test_add_func ("/draw/bar-chart/base", test_base);
  g_test_add_func ("/draw/bar-chart/inside", test_inside);
  return g_test_run ();
}

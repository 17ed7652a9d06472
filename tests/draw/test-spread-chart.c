/* test-spread-chart.c - how often each result came, checked from outside. */
#include <locale.h>
#include <math.h>

#include "draw-probe.h"
#include "draw/stead-spread-chart.h"

static const guint counts[] = { 1, 3, 10, 40, 80, 60, 20, 5 };

/* Columns of $100 from -$200 on: the first two are losses. */
static const SteadSpreadSeries series = {
  .counts = counts, .n = G_N_ELEMENTS (counts), .low = -20000, .step = 10000,
  .lines = { { 0, "nothing left", FALSE }, { 500000, "target far away", FALSE }, { 24000, "half of them: $240.00", TRUE } },
  .n_lines = 3, .x_name = "left after the season",
};

static void
test_columns (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadSpreadLayout layout;
  double each;

  stead_spread_chart_layout (cr, &series, &style, 700, 260, &layout);
  each = layout.plot.width / 8;
  for (int i = 0; i < series.n; i++)
    {
      g_assert_cmpfloat_with_epsilon (layout.columns[i].width, each, 1e-6);
      g_assert_cmpfloat_with_epsilon (layout.columns[i].height, layout.plot.height * counts[i] / 80, 1e-6);
      g_assert_cmpfloat_with_epsilon (layout.columns[i].y + layout.columns[i].height, layout.plot.y + layout.plot.height, 1e-6);
      g_assert_cmpint (layout.below[i], ==, i < 2);
      g_assert_cmpint (stead_spread_chart_at (&series, &layout, layout.columns[i].x + each / 2), ==, i);
    }
  g_assert_cmpint (stead_spread_chart_at (&series, &layout, layout.plot.x - 1), ==, -1);
  g_assert_cmpfloat_with_epsilon (layout.lines[0], layout.plot.x + 2 * each, 1e-6);
  g_assert_true (isnan (layout.lines[1]));               /* outside: left out */
  g_assert_cmpfloat_with_epsilon (layout.lines[2], layout.plot.x + 4.4 * each, 1e-6);
  g_assert_cmpfloat (layout.texts[2].y, >=, layout.texts[0].y + layout.texts[0].height);
  cairo_destroy (cr);
}

/* Lines that stand close: none goes down through the words of another. */
static void
test_uncrossed (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };

  for (int apart = 0; apart < 12; apart++)
    {
      SteadSpreadSeries close = series;
      cairo_t *cr = probe_record ();
      SteadSpreadLayout layout;

      close.n_lines = 3;
      for (int i = 0; i < 3; i++)
        close.lines[i] = (SteadSpreadLine) { series.low + series.step * (4 + 0.1 * apart * i), "wanted: $50.00", FALSE };
      stead_spread_chart_layout (cr, &close, &style, 700, 260, &layout);
      for (int i = 0; i < 3; i++)
        for (int k = 0; k < i; k++)
          g_assert_true (layout.lines[k] <= layout.texts[i].x
                         || layout.lines[k] >= layout.texts[i].x + layout.texts[i].width);
      cairo_destroy (cr);
    }
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 700, 260 }, { 420, 200 }, { 320, 200 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int print = 0; print < 2; print++)
      {
        SteadDrawStyle style = { print ? STEAD_SCHEME_PRINT : STEAD_SCHEME_DARK, print ? 9 : 16, NULL, "USD" };
        cairo_t *cr = probe_record ();
        SteadSpreadLayout layout;

        stead_spread_chart_layout (cr, &series, &style, sizes[i][0], sizes[i][1], &layout);
        stead_spread_chart_paint (cr, &series, &style, &layout);
        probe_assert_inside (cr, sizes[i][0], sizes[i][1]);
        cairo_destroy (cr);
      }
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/spread-chart/columns", test_columns);
  g_test_add_func ("/draw/spread-chart/uncrossed", test_uncrossed);
  g_test_add_func ("/draw/spread-chart/inside", test_inside);
  return g_test_run ();
}

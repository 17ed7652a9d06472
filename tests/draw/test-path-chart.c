/* test-path-chart.c - lines over a plane of two numbers, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-path-chart.h"

static const SteadPathPoint path[] = { { 0, -9600 }, { 20000, -1000 }, { 20000, -3400 }, { 40000, 8000 } };
static const SteadPathPoint mix[] = { { 0, -9600 }, { 40000, 8000 } };

static SteadPathSeries
make_series (void)
{
  SteadPathSeries series = { .n_paths = 2, .n_marks = 2, .x_name = "money taken in", .y_name = "left",
                             .x_money = TRUE, .y_money = TRUE, .zero = TRUE };

  series.paths[0] = (SteadPath) { path, 4, "one after the other", STEAD_ROLE_WATER, STEAD_LINE_SOLID };
  series.paths[1] = (SteadPath) { mix, 2, "all at once", STEAD_ROLE_SAUCE, STEAD_LINE_DASHED };
  series.marks[0] = (SteadPathMark) { 21818, 0, "break-even $218.18", TRUE, TRUE };
  series.marks[1] = (SteadPathMark) { 40000, 8000, "plan: $80.00 left", FALSE, TRUE };
  return series;
}

static void
test_places (void)
{
  SteadPathSeries series = make_series ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadPathLayout layout;
  double zero;

  stead_path_chart_layout (cr, &series, &style, 800, 360, &layout);
  zero = stead_path_chart_y (&layout, 0);
  g_assert_cmpfloat (zero, >, layout.plot.y);
  g_assert_cmpfloat (zero, <, layout.plot.y + layout.plot.height);
  g_assert_cmpfloat_with_epsilon (stead_path_chart_x (&layout, 20000), layout.plot.x + layout.plot.width / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (stead_path_chart_at (&layout, layout.plot.x + layout.plot.width / 4), 10000, 1e-6);
  g_assert_cmpfloat (layout.marks[0].width, >, 0);
  g_assert_cmpfloat (layout.marks[0].x, >=, layout.plot.x);
  g_assert_cmpfloat (layout.marks[1].x + layout.marks[1].width, <=, layout.plot.x + layout.plot.width + 1e-6);
  g_assert_false (layout.narrow);
  cairo_destroy (cr);
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 1000, 500 }, { 560, 300 }, { 360, 300 } };
  static const SteadPathPoint low[] = { { 0, -12000 }, { 40000, 2000 } }, high[] = { { 0, -6000 }, { 40000, 12000 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
      {
        SteadPathSeries series = make_series ();
        SteadDrawStyle style = { scheme, i == 0 ? 24 : 12, NULL, "USD" };
        cairo_t *cr = probe_record ();
        SteadPathLayout layout;

        series.band_low = low;
        series.band_high = high;
        series.n_band = 2;
        series.dots = path;
        series.n_dots = 4;
        stead_path_chart_layout (cr, &series, &style, sizes[i][0], sizes[i][1], &layout);
        stead_path_chart_paint (cr, &series, &style, &layout);
        probe_assert_inside (cr, sizes[i][0], sizes[i][1]);
        cairo_destroy (cr);
      }
}

/* Nothing to draw is no reason to fail. */
static void
test_empty (void)
{
  SteadPathSeries series = { .x_name = "x" };
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadPathLayout layout;

  stead_path_chart_layout (cr, &series, &style, 300, 200, &layout);
  stead_path_chart_paint (cr, &series, &style, &layout);
  probe_assert_inside (cr, 300, 200);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/path-chart/places", test_places);
  g_test_add_func ("/draw/path-chart/inside", test_inside);
  g_test_add_func ("/draw/path-chart/empty", test_empty);
  return g_test_run ();
}

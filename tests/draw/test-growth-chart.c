/* test-growth-chart.c - the growth chart, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-growth-chart.h"

static const SteadGrowthWords english = {
  .weight = "weight of a fish, lb", .expected = "expected", .today = "today", .sale = "sale weight",
  .sale_day = "80 in 100: Jun 12", .lost = "fish lost", .not_counted = "weighing not counted", .factor = 1 / 453.59237,
};

static const SteadGrowthWords spanish = {
  .weight = "peso de un pez, en libras", .expected = "crecimiento esperado", .today = "hoy",
  .sale = "peso de venta", .sale_day = "80 de cada 100: 12 de junio", .lost = "peces perdidos",
  .not_counted = "pesada que no se toma en cuenta", .factor = 1 / 453.59237,
};

#define FIRST (stead_day_new (2026, 1, 5))
#define TODAY (FIRST + 84)
#define N_STEPS 36

static SteadGrowthMark marks[5];
static SteadGrowthStep steps[N_STEPS];
static SteadGrowthLoss losses[2];

/* Grows by 12 g a week; from today on the band opens by 4 g a week to each side. */
static SteadGrowthSeries
make_series (void)
{
  for (int i = 0; i < 5; i++)
    marks[i] = (SteadGrowthMark) { .day = FIRST + 14 + 14 * i, .n = 30, .mean_g = 124 + 24 * i, .sd_g = 25 };
  marks[1].far_off = TRUE;
  marks[1].mean_g = 60;
  marks[2].left_out = TRUE;
  marks[3].sd_g = NAN;
  for (int i = 0; i < N_STEPS; i++)
    {
      double band = 4.0 * MAX (0, i - 12);

      steps[i] = (SteadGrowthStep) { FIRST + 7 * i, 100 + 12 * i - band, 100 + 12 * i, 100 + 12 * i + band };
    }
  losses[0] = (SteadGrowthLoss) { FIRST + 30, 1 };
  losses[1] = (SteadGrowthLoss) { FIRST + 50, 2 };
  return (SteadGrowthSeries) { marks, 5, steps, N_STEPS, losses, 2, FIRST, TODAY, 400, FIRST + 7 * 25,
                               FIRST + 7 * 22, FIRST + 7 * 31 };
}

static void
lay (cairo_t                 *cr,
     const SteadGrowthSeries *series,
     const SteadGrowthWords  *words,
     SteadScheme              scheme,
     double                   font_size,
     double                   width,
     double                   height,
     SteadGrowthLayout       *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_growth_chart_layout (cr, series, words, &style, width, height, out);
  stead_growth_chart_paint (cr, series, words, &style, out);
}

static double
own_x (const SteadGrowthLayout *layout,
       SteadDay                 day)
{
  return layout->plot.x + layout->plot.width * (day - FIRST) / (7.0 * (N_STEPS - 1));
}

static double
own_y (const SteadGrowthLayout *layout,
       double                   weight_g)
{
  return layout->plot.y + layout->plot.height * (1 - weight_g / layout->max_g);
}

static void
test_positions (void)
{
  SteadGrowthSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadGrowthLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  for (int i = 0; i < 5; i++)
    {
      double x = stead_growth_chart_x (&layout, marks[i].day), y = stead_growth_chart_y (&layout, marks[i].mean_g);

      g_assert_cmpfloat_with_epsilon (x, own_x (&layout, marks[i].day), 0.01);
      g_assert_cmpfloat_with_epsilon (y, own_y (&layout, marks[i].mean_g), 0.01);
      /* The middle of a dot: fish, or the card where the weighing does not count. */
      if (i != 2)
        probe_assert_role (cr, STEAD_SCHEME_LIGHT, i == 1 ? STEAD_ROLE_CARD : STEAD_ROLE_FISH, x, y);
    }
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, FIRST + 30), layout.lost_y);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, FIRST + 40), layout.lost_y);
  g_assert_cmpfloat_with_epsilon (layout.today_x, own_x (&layout, TODAY), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.sale_x, own_x (&layout, FIRST + 7 * 25), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.sale_y, own_y (&layout, 400), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.soonest_x, own_x (&layout, FIRST + 7 * 22), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.latest_x, own_x (&layout, FIRST + 7 * 31), 0.01);
  /* The sale weight: a line, and the bar of the likely days on it. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, own_x (&layout, FIRST + 20), layout.sale_y);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, own_x (&layout, FIRST + 7 * 24), layout.sale_y - 1);
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadGrowthSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadGrowthLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  g_assert_cmpint (stead_growth_chart_nearest_mark (&layout, &series, own_x (&layout, FIRST + 40)), ==, 2);
  g_assert_cmpint (stead_growth_chart_nearest_mark (&layout, &series, -1000), ==, 0);
  g_assert_cmpint (stead_growth_chart_nearest_step (&layout, &series, own_x (&layout, FIRST + 72)), ==, 10);
  g_assert_cmpint (stead_growth_chart_nearest_step (&layout, &series, 9000), ==, N_STEPS - 1);
  series.n_marks = series.n_steps = 0;
  g_assert_cmpint (stead_growth_chart_nearest_mark (&layout, &series, 100), ==, -1);
  g_assert_cmpint (stead_growth_chart_nearest_step (&layout, &series, 100), ==, -1);
  cairo_destroy (cr);
}

static void
check_whole (const SteadGrowthSeries *series,
             const SteadGrowthWords  *words,
             SteadScheme              scheme,
             double                   font_size,
             double                   width,
             double                   height)
{
  cairo_t *cr = probe_record ();
  SteadGrowthLayout layout;
  SteadBox boxes[16];
  int n = 0;

  lay (cr, series, words, scheme, font_size, width, height, &layout);
  g_test_message ("%zu marks, %zu steps, scheme %d, text %g, %g x %g", series->n_marks, series->n_steps, scheme,
                  font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  boxes[n++] = layout.weight_box;
  boxes[n++] = layout.today_box;
  boxes[n++] = layout.sale_day_box;
  boxes[n++] = layout.expected_box;
  boxes[n++] = layout.sale_box;
  boxes[n++] = layout.lost_box;
  boxes[n++] = layout.not_counted_box;
  boxes[n++] = layout.plot;
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

static void
test_whole_at_all_sizes (void)
{
  static const double widths[] = { 320, 640, 1000 };
  const SteadGrowthWords *words[] = { &english, &spanish };
  SteadGrowthSeries series = make_series ();

  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (int f = 1; f <= 2; f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          check_whole (&series, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 330));
}

static void
test_whole_with_little (void)
{
  SteadGrowthSeries none = make_series (), one = none, over = none, edge = none;

  none.n_marks = none.n_steps = none.n_losses = 0;
  none.sale_day = STEAD_DAY_NONE;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  none.sale_g = NAN;
  none.today = STEAD_DAY_NONE;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  one.n_marks = one.n_steps = 1;
  one.today = FIRST;
  check_whole (&one, &english, STEAD_SCHEME_DARK, 12, 640, 400);
  over.today = STEAD_DAY_NONE;
  over.n_steps = 12;
  over.sale_day = STEAD_DAY_NONE;
  check_whole (&over, &english, STEAD_SCHEME_PRINT, 9, 500, 300);
  /* Today on the first day, the sale day on the last. */
  edge.today = FIRST;
  edge.sale_day = edge.sale_latest = FIRST + 7 * (N_STEPS - 1);
  check_whole (&edge, &spanish, STEAD_SCHEME_LIGHT, 12, 640, 400);
  edge.sale_latest = STEAD_DAY_NONE;
  check_whole (&edge, &spanish, STEAD_SCHEME_LIGHT, 12, 640, 400);
}

/* A band that opens without end does not press the weighings flat. */
static void
test_wide_band (void)
{
  SteadGrowthSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadGrowthLayout layout;

  steps[N_STEPS - 1].high_g = 50000;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 640, 400, &layout);
  g_assert_cmpfloat (layout.max_g, <, 1000);
  probe_assert_inside (cr, 640, 400);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/growth-chart/positions", test_positions);
  g_test_add_func ("/draw/growth-chart/nearest", test_nearest);
  g_test_add_func ("/draw/growth-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/growth-chart/whole-with-little", test_whole_with_little);
  g_test_add_func ("/draw/growth-chart/wide-band", test_wide_band);
  return g_test_run ();
}

/* test-trend-chart.c - the trend chart, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-trend-chart.h"

#define DAY (stead_day_new (2026, 3, 31))

static const SteadTrendWords english = {
  .unit = "mg/L", .today = "today", .most = "most 1 mg/L, plants", .least = "least 0.5 mg/L",
  .harm_above = "harm above 1.6 mg/L", .harm_below = "harm below 0.2 mg/L", .ahead = "if it goes on so",
};

static const SteadTrendWords spanish = {
  .unit = "mg/L como NO₂", .today = "hoy", .most = "lo más para peces y plantas juntos: 1 mg/L",
  .least = "lo menos para las bacterias del filtro: 0,5 mg/L", .harm_above = "daño por encima de 1,6 mg/L",
  .harm_below = "daño por debajo de 0,2 mg/L", .ahead = "si sigue así",
};

static SteadReadingPoint points[20];
static SteadTrend line = { .level = 1.2, .slope = 0.03, .level_var = 0.01, .slope_var = 1e-4, .span_days = 20, .n = 4 };

/* Twenty tests, five days apart, but a month missing after the eighth. */
static SteadReadingSeries
make_series (void)
{
  for (int i = 0; i < 20; i++)
    {
      double value = 0.7 + 0.02 * i + 0.06 * sin (i);

      points[i] = (SteadReadingPoint) { DAY - 125 + 5 * i + (i > 7 ? 30 : 0) - 0.3, value,
                                        value > 1.05 ? STEAD_WATER_ACT : value > 1 ? STEAD_WATER_WATCH : STEAD_WATER_OK };
    }
  return (SteadReadingSeries) { .points = points, .n_points = 20, .from = DAY - 130, .to = DAY + 14, .today = DAY,
                                .gap_days = 17, .min = 0.5, .max = 1, .act_below = 0.2, .act_above = 1.6,
                                .trend = &line, .trend_day = DAY - 0.3, .ahead_days = 14 };
}

static void
lay (cairo_t                  *cr,
     const SteadReadingSeries *series,
     const SteadTrendWords    *words,
     SteadScheme               scheme,
     double                    font_size,
     double                    width,
     double                    height,
     int                       marked,
     SteadTrendLayout         *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_trend_chart_layout (cr, series, words, &style, width, height, out);
  stead_trend_chart_paint (cr, series, words, &style, out, marked);
}

static double
own_x (const SteadTrendLayout *layout,
       double                  day)
{
  return layout->plot.x + layout->plot.width * (day - layout->from) / (layout->to - layout->from);
}

static double
own_y (const SteadTrendLayout *layout,
       double                  value)
{
  return layout->plot.y + layout->plot.height * (layout->high - value) / (layout->high - layout->low);
}

static void
test_positions (void)
{
  SteadReadingSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 500);
  SteadTrendLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 500, -1, &layout);
  g_assert_cmpint (layout.from, ==, DAY - 130);
  g_assert_cmpint (layout.to, ==, DAY + 15);
  g_assert_cmpfloat (layout.low, <=, 0.5);
  g_assert_cmpfloat (layout.high, >=, 1.6);
  for (int i = 0; i < 20; i++)
    {
      SteadWaterVerdict verdict = points[i].verdict;
      double x, y;

      stead_trend_chart_point (&layout, &points[i], &x, &y);
      g_assert_cmpfloat_with_epsilon (x, own_x (&layout, points[i].day), 0.01);
      g_assert_cmpfloat_with_epsilon (y, own_y (&layout, points[i].value), 0.01);
      /* A dot, a ring with the card in it, a square. */
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, verdict == STEAD_WATER_ACT ? STEAD_ROLE_TOMATO
                                                 : verdict == STEAD_WATER_WATCH ? STEAD_ROLE_CARD : STEAD_ROLE_FISH, x, y);
    }
  g_assert_cmpfloat_with_epsilon (layout.today_x, own_x (&layout, DAY + 0.5), 0.01);
  cairo_destroy (cr);
}

/* Whether a row of pixels between two places has anything but the card. */
static gboolean
has_ink (cairo_t *cr,
         double   x0,
         double   x1,
         double   y)
{
  for (double x = x0; x < x1; x++)
    if (probe_distance (probe_pixel (cr, x, y), stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD)) > 60)
      return TRUE;
  return FALSE;
}

/* Neighbors are joined; over the missing month there is nothing. */
static void
test_gap (void)
{
  SteadReadingSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 500);
  SteadTrendLayout layout;

  series.trend = NULL;
  series.min = series.max = series.act_below = series.act_above = NAN;
  for (int i = 0; i < 20; i++)
    points[i].value = 0.75;
  points[0].value = 0.1;   /* the axis starts low, so that no hairline runs along the points */
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 500, -1, &layout);
  g_assert_true (has_ink (cr, own_x (&layout, points[2].day + 2), own_x (&layout, points[3].day - 2),
                          own_y (&layout, 0.75)));
  g_assert_false (has_ink (cr, own_x (&layout, points[7].day + 3), own_x (&layout, points[8].day - 3),
                           own_y (&layout, 0.75)));
  cairo_destroy (cr);
}

/* Outside the limits the ground has a pattern: pixels along a line differ, not only their hue. */
static void
test_zones_have_patterns (void)
{
  SteadReadingSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 500);
  SteadTrendLayout layout;
  const double values[] = { 1.43, 0.81, 1.65 };   /* beside the hairlines */
  int shades[3];

  series.trend = NULL;
  series.n_points = 1;   /* the ground, and one point at the left */
  points[0].value = 1.4;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 500, -1, &layout);
  for (int i = 0; i < 3; i++)
    {
      guint32 first = 0;

      shades[i] = 0;
      for (double x = layout.plot.x + 200; x < layout.plot.x + 240; x++)
        {
          guint32 pixel = probe_pixel (cr, x, own_y (&layout, values[i]));

          if (x <= layout.plot.x + 200)
            first = pixel;
          shades[i] = MAX (shades[i], probe_distance (pixel, first));
        }
    }
  g_assert_cmpint (shades[0], >, 10);      /* watch */
  g_assert_cmpint (shades[1], ==, 0);      /* within the limits: plain */
  g_assert_cmpint (shades[2], >, 10);      /* harm */
  cairo_destroy (cr);
}

/* An end of the limits far above all readings does not press them flat; its name has an arrow. */
static void
test_far_end (void)
{
  SteadReadingSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadTrendLayout layout;

  series.trend = NULL;
  series.max = 400;
  series.min = series.act_below = series.act_above = NAN;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 500, -1, &layout);
  g_assert_cmpfloat (layout.high, <, 2);
  g_assert_cmpint (layout.n_keys, ==, 1);
  g_assert_cmpint (layout.arrows[0], ==, 1);
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 320, 300, -1, &layout);
  g_assert_cmpint (layout.n_keys, ==, 0);   /* a narrow chart names only what is in it */
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadReadingSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadTrendLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 500, 3, &layout);
  g_assert_cmpint (stead_trend_chart_nearest (&layout, &series, own_x (&layout, points[6].day + 1)), ==, 6);
  g_assert_cmpint (stead_trend_chart_nearest (&layout, &series, -1000), ==, 0);
  g_assert_cmpint (stead_trend_chart_nearest (&layout, &series, 9000), ==, 19);
  series.n_points = 0;
  g_assert_cmpint (stead_trend_chart_nearest (&layout, &series, 100), ==, -1);
  cairo_destroy (cr);
}

static void
check_whole (const SteadReadingSeries *series,
             const SteadTrendWords    *words,
             SteadScheme               scheme,
             double                    font_size,
             double                    width,
             double                    height)
{
  cairo_t *cr = probe_record ();
  SteadTrendLayout layout;
  SteadBox boxes[STEAD_MAX_KEYS + 3];
  int n = 0;

  lay (cr, series, words, scheme, font_size, width, height, 7 < (int) series->n_points ? 7 : -1, &layout);
  g_test_message ("%zu points, scheme %d, text %g, %g x %g", series->n_points, scheme, font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  for (gsize i = 0; i < series->n_points; i++)
    {
      g_assert_cmpfloat (series->points[i].value, >=, layout.low);
      g_assert_cmpfloat (series->points[i].value, <=, layout.high);
    }
  boxes[n++] = layout.today_box;
  boxes[n++] = layout.unit_box;
  boxes[n++] = layout.plot;
  for (int i = 0; i < layout.n_keys; i++)
    boxes[n++] = layout.keys[i].box;
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

static void
test_whole_at_all_sizes (void)
{
  static const double widths[] = { 320, 640, 1000 };
  const SteadTrendWords *words[] = { &english, &spanish };
  SteadReadingSeries series = make_series ();

  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (int f = 1; f <= 2; f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          check_whole (&series, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 330));
}

static void
test_whole_with_little (void)
{
  SteadReadingSeries none = make_series (), one = none, bare = none, zero = none;

  none.n_points = 0;
  none.trend = NULL;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  none.min = none.max = none.act_below = none.act_above = NAN;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  one.n_points = 1;
  one.trend = NULL;
  check_whole (&one, &english, STEAD_SCHEME_DARK, 12, 640, 400);
  bare.min = bare.max = bare.act_below = bare.act_above = NAN;
  check_whole (&bare, &english, STEAD_SCHEME_PRINT, 9, 640, 400);
  for (int i = 0; i < 20; i++)
    points[i].value = 0;
  zero.trend = NULL;
  check_whole (&zero, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/trend-chart/positions", test_positions);
  g_test_add_func ("/draw/trend-chart/gap", test_gap);
  g_test_add_func ("/draw/trend-chart/zones-have-patterns", test_zones_have_patterns);
  g_test_add_func ("/draw/trend-chart/far-end", test_far_end);
  g_test_add_func ("/draw/trend-chart/nearest", test_nearest);
  g_test_add_func ("/draw/trend-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/trend-chart/whole-with-little", test_whole_with_little);
  return g_test_run ();
}

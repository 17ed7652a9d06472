/* test-cooling-chart.c - the cooling chart, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-cooling-chart.h"

static const SteadCoolingWords english = {
  .unit = "°F in the middle of the pot", .expected = "expected", .too_warm = "too warm", .now = "now",
  .act = "act by 11:22 AM", .marks = { "70 °F by 12:00 PM", "41 °F by 4:00 PM" },
};

static const SteadCoolingWords spanish = {
  .unit = "°C en el centro de la olla", .celsius = TRUE, .expected = "lo que se espera", .too_warm = "demasiado caliente",
  .now = "ahora", .act = "actuar antes de las 11:22", .marks = { "21.1 °C (70 °F) a las 12:00", "5 °C (41 °F) a las 16:00" },
};

#define N_READINGS 5
#define N_STEPS 26
#define END 375.0

static SteadCoolingReading readings[N_READINGS];
static SteadCoolingStep steps[N_STEPS];

/* From 135 °F at 10:00 by one degree in two minutes, then flat at 40; from now on the band opens. */
static SteadCoolingSeries
make_series (void)
{
  for (int i = 0; i < N_READINGS; i++)
    readings[i] = (SteadCoolingReading) { 15 * i, 135 - 7.5 * i, i == 2 };
  for (int i = 0; i < N_STEPS; i++)
    {
      double minute = 15.0 * i, likely = MAX (40, 135 - minute / 2), band = 0.05 * MAX (0, minute - 60);

      steps[i] = (SteadCoolingStep) { minute, likely - band, likely, likely + band };
    }
  return (SteadCoolingSeries) {
    .readings = readings, .n_readings = N_READINGS, .steps = steps, .n_steps = N_STEPS,
    .marks = { { 70, 120, STEAD_COOLING_MARK_OPEN }, { 41, 360, STEAD_COOLING_MARK_OPEN } }, .n_marks = 2,
    .now_min = 66, .act_min = 82, .end_min = END, .first_of_day = 600,
  };
}

static void
lay (cairo_t                  *cr,
     const SteadCoolingSeries *series,
     const SteadCoolingWords  *words,
     SteadScheme               scheme,
     double                    font_size,
     double                    width,
     double                    height,
     SteadCoolingLayout       *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_cooling_chart_layout (cr, series, words, &style, width, height, out);
  stead_cooling_chart_paint (cr, series, words, &style, out);
}

static double
own_x (const SteadCoolingLayout *layout,
       double                    minute)
{
  return layout->plot.x + layout->plot.width * minute / END;
}

static double
own_y (const SteadCoolingLayout *layout,
       double                    temp_f)
{
  return layout->plot.y + layout->plot.height * (layout->high_f - temp_f) / (layout->high_f - layout->low_f);
}

static void
test_positions (void)
{
  SteadCoolingSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadCoolingLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  for (int i = 0; i < N_READINGS; i++)
    {
      double x = stead_cooling_chart_x (&layout, &series, readings[i].minute);
      double y = stead_cooling_chart_y (&layout, readings[i].temp_f);

      g_assert_cmpfloat_with_epsilon (x, own_x (&layout, readings[i].minute), 0.01);
      g_assert_cmpfloat_with_epsilon (y, own_y (&layout, readings[i].temp_f), 0.01);
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_FISH, x, y);
    }
  /* The corner of each mark; under it the pot may be. */
  for (int i = 0; i < 2; i++)
    {
      g_assert_cmpfloat_with_epsilon (layout.due_x[i], own_x (&layout, series.marks[i].due_min), 0.01);
      g_assert_cmpfloat_with_epsilon (layout.due_y[i], own_y (&layout, series.marks[i].temp_f), 0.01);
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, layout.due_x[i], layout.due_y[i]);
    }
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, 200), own_y (&layout, 70));
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, 100), own_y (&layout, 125));
  g_assert_cmpfloat_with_epsilon (layout.now_x, own_x (&layout, 66), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.act_x, own_x (&layout, 82), 0.01);
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadCoolingSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadCoolingLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  g_assert_cmpint (stead_cooling_chart_nearest (&layout, &series, own_x (&layout, 32)), ==, 2);
  g_assert_cmpint (stead_cooling_chart_nearest (&layout, &series, -1000), ==, 0);
  series.n_readings = 0;
  g_assert_cmpint (stead_cooling_chart_nearest (&layout, &series, 100), ==, -1);
  cairo_destroy (cr);
}

static void
check_whole (const SteadCoolingSeries *series,
             const SteadCoolingWords  *words,
             SteadScheme               scheme,
             double                    font_size,
             double                    width,
             double                    height)
{
  cairo_t *cr = probe_record ();
  SteadCoolingLayout layout;
  SteadBox boxes[8 + STEAD_MAX_KEYS];
  int n = 0;

  lay (cr, series, words, scheme, font_size, width, height, &layout);
  g_test_message ("%zu readings, %zu steps, scheme %d, text %g, %g x %g", series->n_readings, series->n_steps, scheme,
                  font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  boxes[n++] = layout.unit_box;
  boxes[n++] = layout.now_box;
  boxes[n++] = layout.act_box;
  boxes[n++] = layout.mark_box[0];
  boxes[n++] = layout.mark_box[1];
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
  const SteadCoolingWords *words[] = { &english, &spanish };
  SteadCoolingSeries series = make_series ();

  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (int f = 1; f <= 2; f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          check_whole (&series, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 330));
}

static void
test_whole_with_little (void)
{
  SteadCoolingSeries none = make_series (), one = none, over = none, cold = none;
  SteadCoolingReading frost = { 0, 30, FALSE };

  none.n_readings = none.n_steps = 0;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  one.n_readings = 1;
  one.n_steps = 0;
  one.now_min = 0;
  one.act_min = NAN;
  check_whole (&one, &english, STEAD_SCHEME_DARK, 12, 640, 400);
  over.now_min = NAN;
  over.act_min = NAN;
  check_whole (&over, &spanish, STEAD_SCHEME_PRINT, 9, 500, 300);
  /* One mark only, a reading below it, late in the evening. */
  cold.readings = &frost;
  cold.n_readings = 1;
  cold.n_steps = 0;
  cold.marks[0] = (SteadCoolingDue) { 41, 240, STEAD_COOLING_MARK_MET };
  cold.n_marks = 1;
  cold.end_min = 255;
  cold.first_of_day = 23 * 60;
  cold.now_min = cold.act_min = 255;
  check_whole (&cold, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cooling-chart/positions", test_positions);
  g_test_add_func ("/draw/cooling-chart/nearest", test_nearest);
  g_test_add_func ("/draw/cooling-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/cooling-chart/whole-with-little", test_whole_with_little);
  return g_test_run ();
}

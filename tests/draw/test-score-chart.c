/* test-score-chart.c - scores of practices over time, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-score-chart.h"

#define EVENT 20060

static const SteadScorePoint rising[] = { { 20000, 0.5, FALSE }, { 20020, 0.7, FALSE }, { EVENT, 0.9, TRUE } };
static const SteadScorePoint single[] = { { 20010, 0.0, FALSE } };
static const SteadScorePoint full[] = { { 20005, 1.0, FALSE }, { 20040, 1.0, FALSE } };

static void
lay (cairo_t                *cr,
     const SteadScoreSeries *series,
     SteadScheme             scheme,
     double                  font_size,
     double                  width,
     double                  height,
     SteadScoreLayout       *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_score_chart_layout (cr, series, &style, width, height, out);
  stead_score_chart_paint (cr, series, &style, out);
}

/* A score stands at its share of the height and at its day. */
static void
test_points (void)
{
  const SteadScoreLine lines[] = { { "Placing", rising, 3 } };
  SteadScoreSeries series = { lines, 1, EVENT, "% of the points", "the event" };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 700, 260);
  SteadScoreLayout layout;

  lay (cr, &series, STEAD_SCHEME_LIGHT, 12, 700, 260, &layout);
  for (gsize i = 0; i < G_N_ELEMENTS (rising); i++)
    {
      double x, y;

      stead_score_chart_point (&layout, &rising[i], &x, &y);
      g_assert_cmpfloat_with_epsilon (y, layout.plot.y + layout.plot.height * (1 - rising[i].frac), 0.01);
      g_assert_cmpfloat_with_epsilon (x, layout.plot.x + layout.plot.width * (rising[i].day - 20000) / 60.0, 0.01);
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, x, y);
    }
  g_assert_cmpfloat (layout.event_box.width, >, 0);
  cairo_destroy (cr);
}

static void
check_whole (const SteadScoreSeries *series,
             double                  font_size,
             double                  width)
{
  cairo_t *cr = probe_record ();
  SteadScoreLayout layout;
  SteadBox boxes[STEAD_SCORE_MOST_LINES + 2];
  int n = 0;

  g_test_message ("%d lines, text %g, width %g", series->n, font_size, width);
  lay (cr, series, STEAD_SCHEME_LIGHT, font_size, width, 240, &layout);
  probe_assert_inside (cr, width, 240);
  boxes[n++] = layout.unit_box;
  boxes[n++] = layout.event_box;
  for (int i = 0; i < series->n; i++)
    boxes[n++] = layout.keys[i].box;
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

/* Nothing is cut off or lies on another, whatever the number of lines, size and text. */
static void
test_whole (void)
{
  static const double widths[] = { 260, 380, 900 };
  const SteadScoreLine lines[STEAD_SCORE_MOST_LINES] = {
    { "Placing, Maya R.", rising, 3 }, { "Placing, Devon K.", full, 2 }, { "Written test", single, 1 },
    { "Speech", full, 2 }, { "Eggs, inside and outside", single, 1 }, { "The team", rising, 3 },
  };

  for (int n = 1; n <= STEAD_SCORE_MOST_LINES; n++)
    for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
      for (int f = 1; f <= 2; f++)
        {
          SteadScoreSeries series = { lines, n, n % 2 == 0 ? EVENT : STEAD_DAY_NONE, "% of the points", "the event" };

          check_whole (&series, 12 * f, widths[w]);
        }
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/score-chart/points", test_points);
  g_test_add_func ("/draw/score-chart/whole", test_whole);
  return g_test_run ();
}

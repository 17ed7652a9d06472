/* test-run-plot.c - over and short by sale day, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-run-plot.h"

static void
lay (cairo_t            *cr,
     const SteadRunPlot *plot,
     double              font_size,
     double              width,
     double              height,
     SteadRunLayout     *out)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, font_size, NULL, "USD" };

  stead_run_plot_layout (cr, plot, "middle $0.00", &style, width, height, out);
  stead_run_plot_paint (cr, plot, "middle $0.00", &style, out);
}

/* Points stand at the height of their sums, and over and short have inks of their own. */
static void
test_points (void)
{
  static const SteadDay days[] = { 20000, 20030, 20060, 20090 };
  static const double cents[] = { 0, 150, -200, 50 };
  SteadRunPlot plot = { .days = days, .cents = cents, .n = 4 };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 700, 220);
  SteadRunLayout layout;

  g_assert_true (stead_run_chart (cents, 4, &plot.run));
  lay (cr, &plot, 12, 700, 220, &layout);
  g_assert_cmpfloat (layout.low_cents, <, -200);
  g_assert_cmpfloat (layout.high_cents, >, 150);
  for (int i = 1; i < 4; i++)
    {
      double x = layout.plot.x + layout.plot.width * (i + 0.5) / 4;
      double y = layout.plot.y
                 + layout.plot.height * (layout.high_cents - cents[i]) / (layout.high_cents - layout.low_cents);

      probe_assert_role (cr, STEAD_SCHEME_LIGHT, cents[i] < 0 ? STEAD_ROLE_TOMATO : STEAD_ROLE_WATER, x, y);
      g_assert_cmpfloat (layout.sum_boxes[i].width, >, 0);
      g_assert_cmpfloat (layout.day_boxes[i].width, >, 0);
    }
  g_assert_cmpfloat (layout.sum_boxes[0].width, ==, 0);
  cairo_destroy (cr);
}

static void
check_whole (const SteadRunPlot *plot,
             double              font_size,
             double              width)
{
  cairo_t *cr = probe_record ();
  SteadRunLayout layout;
  SteadBox boxes[2 * STEAD_RUN_MOST_NAMES + 1];
  int n = 0;

  lay (cr, plot, font_size, width, 190, &layout);
  g_test_message ("%zu counts, text %g, width %g", plot->n, font_size, width);
  probe_assert_inside (cr, width, 190);
  boxes[n++] = layout.median_box;
  for (int i = 0; i < STEAD_RUN_MOST_NAMES; i++)
    {
      boxes[n++] = layout.sum_boxes[i];
      boxes[n++] = layout.day_boxes[i];
    }
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

/* Nothing is cut off or lies on another, whatever the number, size and text. */
static void
test_whole (void)
{
  static const gsize counts[] = { 1, 2, 12, 60 };
  static const double widths[] = { 320, 640, 1000 };
  SteadDay days[60];
  double cents[60];

  for (int i = 0; i < 60; i++)
    {
      days[i] = 19000 + 14 * i;
      cents[i] = i % 4 == 0 ? 0 : (i * 37 % 500) - 250;
    }
  for (gsize c = 0; c < G_N_ELEMENTS (counts); c++)
    for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
      for (int f = 1; f <= 2; f++)
        {
          SteadRunPlot plot = { .days = days, .cents = cents, .n = counts[c] };

          g_assert_true (stead_run_chart (cents, counts[c], &plot.run));
          check_whole (&plot, 12 * f, widths[w]);
        }
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/run-plot/points", test_points);
  g_test_add_func ("/draw/run-plot/whole", test_whole);
  return g_test_run ();
}

/* test-price-history-chart.c - the steps of a price, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-price-history-chart.h"

static const SteadPriceHistoryWords words = { "costs $2.41 now" };

static void
lay (cairo_t                 *cr,
     const SteadPriceHistory *history,
     double                   font_size,
     double                   width,
     double                   height,
     SteadPriceHistoryLayout *out)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, font_size, NULL, "USD" };

  stead_price_history_chart_layout (cr, history, &words, &style, width, height, out);
  stead_price_history_chart_paint (cr, history, &words, &style, out);
}

static void
test_steps (void)
{
  static const SteadDay days[] = { 20000, 20100, 20200 };
  static const gint64 cents[] = { 350, 400, 450 };
  SteadPriceHistory history = { days, cents, 3, 20250, 241 };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 700, 200);
  SteadPriceHistoryLayout layout;
  const SteadBox *plot = &layout.plot;

  lay (cr, &history, 12, 700, 200, &layout);
  for (int day = 20010; day < 20250; day += 20)
    {
      double price = day < 20100 ? 350 : day < 20200 ? 400 : 450;
      double x = plot->x + plot->width * (day - 20000) / 250;

      if (day % 100 == 0)
        continue;
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, x,
                         plot->y + plot->height * (1 - price / layout.max_cents));
    }
  for (int i = 0; i < 3; i++)
    {
      g_assert_cmpfloat (layout.price_boxes[i].width, >, 0);
      g_assert_cmpfloat (layout.day_boxes[i].width, >, 0);
    }
  cairo_destroy (cr);
}

static void
check_whole (const SteadPriceHistory *history,
             double                   font_size,
             double                   width,
             double                   height)
{
  cairo_t *cr = probe_record ();
  SteadPriceHistoryLayout layout;
  SteadBox boxes[2 * STEAD_PRICE_MAX_NAMES + 1];
  int n = 0;

  lay (cr, history, font_size, width, height, &layout);
  g_test_message ("%zu prices, text %g, %g x %g", history->n, font_size, width, height);
  probe_assert_inside (cr, width, height);
  boxes[n++] = layout.cost_box;
  for (int i = 0; i < STEAD_PRICE_MAX_NAMES; i++)
    {
      boxes[n++] = layout.price_boxes[i];
      boxes[n++] = layout.day_boxes[i];
    }
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

static void
test_whole (void)
{
  static const int counts[] = { 0, 1, 2, 12, 60 };
  static const double widths[] = { 320, 640, 1000 };
  SteadDay days[60];
  gint64 cents[60];

  for (int i = 0; i < 60; i++)
    {
      days[i] = 19000 + i * 9 + i % 3;
      cents[i] = i % 7 == 6 ? 0 : 300 + i * 37 % 200;
    }
  for (gsize c = 0; c < G_N_ELEMENTS (counts); c++)
    for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
      for (int f = 1; f <= 2; f++)
        check_whole (&(SteadPriceHistory) { days, cents, (gsize) counts[c], 19600, c % 2 ? 241 : -1 },
                     12 * f, widths[w], 160);
  /* Set today, and set ahead of today. */
  check_whole (&(SteadPriceHistory) { days, cents, 3, days[2], 241 }, 12, 640, 160);
  check_whole (&(SteadPriceHistory) { days, cents, 3, days[0], 241 }, 12, 640, 160);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/price-history/steps", test_steps);
  g_test_add_func ("/draw/price-history/whole", test_whole);
  return g_test_run ();
}

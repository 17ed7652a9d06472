/* test-share-chart.c - one sum cut in several ways, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-share-chart.h"

static const SteadShareSeries series = {
  .parts = { { "Tomatoes, first", STEAD_ROLE_TOMATO, STEAD_PATTERN_SOLID },
             { "Tomatoes, second, for a sauce that is cooked in the school's kitchen", STEAD_ROLE_SAUCE, STEAD_PATTERN_RISING },
             { "Waste", STEAD_ROLE_SHELL, STEAD_PATTERN_DOTS } },
  .n_parts = 3,
  .ways = { { "Physical share", { "$40.00", "$9.99", "$0.01" }, { 4000, 999, 1 }, FALSE },
            { "Net realizable value", { "$28.06", "$21.94", "$0.00" }, { 2806, 2194, 0 }, TRUE } },
  .n_ways = 2,
};

/* Each bar is as long as the other, and its parts as long as their money. */
static void
test_lengths (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadShareLayout layout;
  double cent;

  stead_share_chart_layout (cr, &series, &style, 700, 200, &layout);
  cent = layout.bars[0][0].width / 4000;
  g_assert_cmpfloat_with_epsilon (layout.bars[0][1].width, 999 * cent, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[1][0].width, 2806 * cent, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[1][1].x, layout.bars[1][0].x + 2806 * cent, 1e-6);
  g_assert_cmpfloat_with_epsilon (layout.bars[1][2].width, 0, 1e-6);
  g_assert_cmpfloat (layout.texts[0][0].width, >, 0);
  g_assert_cmpfloat (layout.texts[0][2].width, ==, 0);   /* no room on a cent */
  g_assert_cmpint (stead_share_chart_at (&series, &layout, layout.bars[1][0].y + 1), ==, 1);
  g_assert_cmpint (stead_share_chart_at (&series, &layout, 1), ==, -1);
  cairo_destroy (cr);
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 700, 200 }, { 420, 180 }, { 300, 150 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int print = 0; print < 2; print++)
      {
        SteadDrawStyle style = { print ? STEAD_SCHEME_PRINT : STEAD_SCHEME_DARK, print ? 9 : 20, NULL, "USD" };
        cairo_t *cr = probe_record ();
        SteadShareLayout layout;

        stead_share_chart_layout (cr, &series, &style, sizes[i][0], sizes[i][1], &layout);
        stead_share_chart_paint (cr, &series, &style, &layout);
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
  g_test_add_func ("/draw/share-chart/lengths", test_lengths);
  g_test_add_func ("/draw/share-chart/inside", test_inside);
  return g_test_run ();
}

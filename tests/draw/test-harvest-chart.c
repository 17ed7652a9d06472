/* test-harvest-chart.c - the harvest chart, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-harvest-chart.h"

static const SteadHarvestWords english = {
  .amount = "lb a week", .picked = "picked", .lost = "thrown out", .expected = "expected, with its band",
  .today = "today", .ripe = "first pick: May 12", .factor = 1 / 0.45359237,
};

static const SteadHarvestWords spanish = {
  .amount = "libras por semana", .picked = "cosechado", .lost = "tirado al cosechar",
  .expected = "esperado, con su margen de lo posible", .today = "hoy", .ripe = "primera cosecha: 12 de mayo",
  .factor = 1 / 0.45359237,
};

#define N_WEEKS 16
#define N_OVER 8
#define FIRST (stead_day_new (2026, 5, 11))

static SteadPickWeek weeks[N_WEEKS];

/* Eight weeks of picking, and eight to come; nothing was picked in the third. */
static SteadHarvestSeries
make_series (void)
{
  for (int i = 0; i < N_WEEKS; i++)
    weeks[i] = (SteadPickWeek) { FIRST + 7 * i, i < N_OVER && i != 2 ? 2 + i : 0, i == 4 ? 2 : 0,
                                 i < N_OVER ? NAN : 4, i < N_OVER ? NAN : 6, i < N_OVER ? NAN : 9 };
  return (SteadHarvestSeries) { weeks, N_WEEKS, FIRST + 7 * N_OVER - 1, FIRST + 1, FIRST + 1, FIRST + 1 };
}

static void
lay (cairo_t                  *cr,
     const SteadHarvestSeries *series,
     const SteadHarvestWords  *words,
     SteadScheme               scheme,
     double                    font_size,
     double                    width,
     double                    height,
     int                       marked,
     SteadHarvestLayout       *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_harvest_chart_layout (cr, series, words, &style, width, height, out);
  stead_harvest_chart_paint (cr, series, words, &style, out, marked);
}

static double
own_x (const SteadHarvestLayout *layout,
       double                    week)
{
  return layout->plot.x + layout->plot.width * week / N_WEEKS;
}

static double
own_y (const SteadHarvestLayout *layout,
       double                    kg)
{
  return layout->plot.y + layout->plot.height * (1 - kg / layout->max_kg);
}

static void
test_positions (void)
{
  SteadHarvestSeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadHarvestLayout layout;
  SteadBox bar;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  for (int i = 0; i < N_WEEKS; i++)
    {
      double x = own_x (&layout, i + 0.5);

      g_assert_cmpint (stead_harvest_chart_bar (&layout, &weeks[i], &bar), ==, i < N_OVER && i != 2);
      g_assert_cmpfloat_with_epsilon (bar.x + bar.width / 2, x, 0.01);
      if (i >= N_OVER)
        continue;
      g_assert_cmpfloat_with_epsilon (bar.y, own_y (&layout, weeks[i].picked_kg), 0.01);
      g_assert_cmpfloat_with_epsilon (bar.y + bar.height, layout.plot.y + layout.plot.height, 0.01);
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, i == 2 ? STEAD_ROLE_CARD : STEAD_ROLE_CROP, x, own_y (&layout, 1));
    }
  /* Between two bars lies the card. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, 6), own_y (&layout, 1));
  /* The line over a week ahead ends at its band. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, 10.5), own_y (&layout, 9.4));
  g_assert_cmpint (probe_distance (probe_pixel (cr, own_x (&layout, 10.5), own_y (&layout, 8)),
                                   stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD)), >, 60);
  g_assert_cmpfloat_with_epsilon (layout.today_x, own_x (&layout, N_OVER - 1.0 / 7), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.ripe_x, own_x (&layout, 1.0 / 7), 0.01);
  cairo_destroy (cr);
}

/* What was thrown out stands on what was picked. */
static void
test_lost (void)
{
  SteadHarvestSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadHarvestLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  g_assert_true (layout.has_lost);
  g_assert_cmpint (layout.n_keys, ==, 3);
  weeks[4].lost_kg = 0;
  weeks[7].lost_kg = 20;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  g_assert_cmpfloat (layout.max_kg, >=, 29);
  weeks[7].lost_kg = 0;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  g_assert_false (layout.has_lost);
  g_assert_cmpint (layout.n_keys, ==, 2);
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadHarvestSeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadHarvestLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, 3, &layout);
  g_assert_cmpint (stead_harvest_chart_nearest (&layout, &series, own_x (&layout, 12.1)), ==, 12);
  g_assert_cmpint (stead_harvest_chart_nearest (&layout, &series, own_x (&layout, 11.9)), ==, 11);
  g_assert_cmpint (stead_harvest_chart_nearest (&layout, &series, -1000), ==, 0);
  g_assert_cmpint (stead_harvest_chart_nearest (&layout, &series, 9000), ==, N_WEEKS - 1);
  series.n_weeks = 0;
  g_assert_cmpint (stead_harvest_chart_nearest (&layout, &series, 100), ==, -1);
  cairo_destroy (cr);
}

static void
check_whole (const SteadHarvestSeries *series,
             const SteadHarvestWords  *words,
             SteadScheme               scheme,
             double                    font_size,
             double                    width,
             double                    height)
{
  cairo_t *cr = probe_record ();
  SteadHarvestLayout layout;
  SteadBox boxes[8];
  int n = 0;

  lay (cr, series, words, scheme, font_size, width, height, 7 < (int) series->n_weeks ? 7 : -1, &layout);
  g_test_message ("%zu weeks, scheme %d, text %g, %g x %g", series->n_weeks, scheme, font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  boxes[n++] = layout.amount_box;
  boxes[n++] = layout.today_box;
  boxes[n++] = layout.ripe_box;
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
  const SteadHarvestWords *words[] = { &english, &spanish };
  SteadHarvestSeries series = make_series ();

  series.ripe_early = FIRST - 10;
  series.ripe_late = STEAD_DAY_NONE;
  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (int f = 1; f <= 2; f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          check_whole (&series, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 330));
}

static void
test_whole_with_little (void)
{
  SteadHarvestSeries none = make_series (), one = none;

  none.n_weeks = 0;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  none.today = none.first_ripe = none.ripe_early = none.ripe_late = STEAD_DAY_NONE;
  check_whole (&none, &english, STEAD_SCHEME_DARK, 12, 640, 400);
  one.n_weeks = 1;
  check_whole (&one, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/harvest-chart/positions", test_positions);
  g_test_add_func ("/draw/harvest-chart/lost", test_lost);
  g_test_add_func ("/draw/harvest-chart/nearest", test_nearest);
  g_test_add_func ("/draw/harvest-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/harvest-chart/whole-with-little", test_whole_with_little);
  return g_test_run ();
}

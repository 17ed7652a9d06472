/* test-lay-chart.c - the laying chart, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-lay-chart.h"

static const SteadLayWords english = {
  .rate = "eggs per 100 hens a day", .axis = "age of the flock, weeks", .expected = "expected", .today = "today",
  .lost = "hens lost", .feed = "feed, lb a hen a day", .left_out = "left out", .far_off = "far off",
  .forecast = "forecast 70%", .band_high = "8 times in 10 under 79%", .band_low = "and over 60%",
  .band = "8 times in 10: 60 to 79%", .feed_factor = 1 / 0.45359237,
};

static const SteadLayWords spanish = {
  .rate = "huevos por cada 100 gallinas y día", .axis = "edad de la parvada en semanas de vida",
  .expected = "producción esperada", .today = "hoy", .lost = "gallinas perdidas",
  .feed = "alimento, libras por gallina y día", .left_out = "no se toma en cuenta",
  .far_off = "muy lejos de la curva", .forecast = "pronóstico del 70 %",
  .band_high = "8 de cada 10 veces, menos del 79 %", .band_low = "y más del 60 %",
  .band = "8 de cada 10 veces: del 60 al 79 %", .feed_factor = 1 / 0.45359237,
};

#define N_WEEKS 30
#define N_CURVE 60

static SteadLayWeek weeks[N_WEEKS];
static double ages[N_CURVE], fracs[N_CURVE];

static SteadLaySeries
make_series (void)
{
  for (int i = 0; i < N_WEEKS; i++)
    weeks[i] = (SteadLayWeek) { .age_weeks = 18.5 + i, .days_logged = 7, .hen_days = 200,
                                .eggs = i < 4 ? 20 + 35 * i : 170 - i, .feed_kg = 20 + i % 3,
                                .deaths = i == 9 || i == 20, .left_out = i == 15 };
  weeks[5].days_logged = 0;     /* nobody counted */
  weeks[5].hen_days = 0;
  for (int i = 0; i < N_CURVE; i++)
    {
      ages[i] = 18 + i;
      fracs[i] = i < 5 ? i * 0.18 : 0.92 - i * 0.004;
    }
  return (SteadLaySeries) { weeks, N_WEEKS, ages, fracs, N_CURVE, 48 };
}

#define N_AHEAD 30

static double ahead_ages[N_AHEAD];
static SteadBand ahead[N_AHEAD];
static const SteadLayNote notes[] = {
  { 15, 15, FALSE, "Frozen waterer in the north house, left out of the fit" },
  { 22, 22, TRUE, "week of Nov 2, far off" },
};

/* From today, at week 48, to the end of the curve at 77. */
static void
add_forecast (SteadLaySeries *series)
{
  weeks[22].eggs = 60;
  for (int i = 0; i < N_AHEAD; i++)
    {
      ahead_ages[i] = 48 + i;
      ahead[i] = (SteadBand) { 0.76 - i * 0.006, 0.8 - i * 0.004, 0.84 - i * 0.002 };
    }
  series->ahead_age = ahead_ages;
  series->ahead_frac = ahead;
  series->n_ahead = N_AHEAD;
  series->notes = notes;
  series->n_notes = G_N_ELEMENTS (notes);
}

static void
lay (cairo_t              *cr,
     const SteadLaySeries *series,
     const SteadLayWords  *words,
     SteadScheme           scheme,
     double                font_size,
     double                width,
     double                height,
     int                   marked,
     SteadLayLayout       *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };

  stead_lay_chart_layout (cr, series, words, &style, width, height, out);
  stead_lay_chart_paint (cr, series, words, &style, out, marked);
}

static double
own_x (const SteadLayLayout *layout,
       double                age)
{
  return layout->plot.x + layout->plot.width * (age - layout->min_age) / (layout->max_age - layout->min_age);
}

static double
own_y (const SteadLayLayout *layout,
       double                frac)
{
  return layout->plot.y + layout->plot.height * (1 - frac / layout->max_frac);
}

static void
test_positions (void)
{
  SteadLaySeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadLayLayout layout;
  double x, y;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  g_assert_cmpfloat (layout.max_frac, ==, 1);
  g_assert_cmpfloat (layout.min_age, ==, 18);
  for (int i = 0; i < N_WEEKS; i++)
    {
      if (i == 5)
        {
          g_assert_false (stead_lay_chart_point (&layout, &weeks[i], &x, &y));
          continue;
        }
      g_assert_true (stead_lay_chart_point (&layout, &weeks[i], &x, &y));
      g_assert_cmpfloat_with_epsilon (x, own_x (&layout, 18.5 + i), 0.01);
      g_assert_cmpfloat_with_epsilon (y, own_y (&layout, (double) weeks[i].eggs / 200), 0.01);
      /* The middle of a dot: egg, or the card where the week is left out. */
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, i == 15 ? STEAD_ROLE_CARD : STEAD_ROLE_EGG, x, y);
    }
  /* A cross where hens were lost, none in the week beside. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, 27.5), layout.lost_y);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, 30.5), layout.lost_y);
  g_assert_cmpfloat_with_epsilon (layout.today_x, own_x (&layout, 48), 0.01);
  cairo_destroy (cr);
}

static void
test_every_dot_has_an_outline (void)
{
  SteadLaySeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadLayLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  for (int i = 6; i < N_WEEKS; i++)
    {
      gboolean ink = FALSE;
      double x, y;

      g_assert_true (stead_lay_chart_point (&layout, &weeks[i], &x, &y));
      for (double r = 0; r < layout.point_radius + 2; r += 0.5)
        ink |= probe_distance (probe_pixel (cr, x, y - r), stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_INK)) < 90;
      g_assert_true (ink);
    }
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadLaySeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadLayLayout layout;

  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, 3, &layout);
  g_assert_cmpint (stead_lay_chart_nearest (&layout, &series, own_x (&layout, 30.6)), ==, 12);
  g_assert_cmpint (stead_lay_chart_nearest (&layout, &series, -1000), ==, 0);
  g_assert_cmpint (stead_lay_chart_nearest (&layout, &series, 9000), ==, N_WEEKS - 1);
  /* A week without a count is stepped over. */
  g_assert_cmpint (stead_lay_chart_nearest (&layout, &series, own_x (&layout, 23.6)), ==, 6);
  series.n_weeks = 0;
  g_assert_cmpint (stead_lay_chart_nearest (&layout, &series, 100), ==, -1);
  cairo_destroy (cr);
}

static void
check_whole (const SteadLaySeries *series,
             const SteadLayWords  *words,
             SteadScheme           scheme,
             double                font_size,
             double                width,
             double                height)
{
  cairo_t *cr = probe_record ();
  SteadLayLayout layout;
  SteadBox boxes[24];
  int n = 0;

  lay (cr, series, words, scheme, font_size, width, height, 7 < (int) series->n_weeks ? 7 : -1, &layout);
  g_test_message ("%zu weeks, scheme %d, text %g, %g x %g", series->n_weeks, scheme, font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  boxes[n++] = layout.rate_box;
  boxes[n++] = layout.today_box;
  boxes[n++] = layout.axis_box;
  boxes[n++] = layout.expected_box;
  boxes[n++] = layout.lost_box;
  boxes[n++] = layout.feed_box;
  boxes[n++] = layout.left_out_box;
  boxes[n++] = layout.far_off_box;
  boxes[n++] = layout.forecast_box;
  boxes[n++] = layout.band_high_box;
  boxes[n++] = layout.band_low_box;
  boxes[n++] = layout.band_box;
  boxes[n++] = layout.plot;
  boxes[n++] = layout.feed_plot;
  probe_assert_apart (boxes, n);
  cairo_destroy (cr);
}

static void
test_whole_at_all_sizes (void)
{
  static const double widths[] = { 320, 420, 640, 1000 };
  const SteadLayWords *words[] = { &english, &spanish };
  SteadLaySeries series = make_series (), learned = make_series ();

  add_forecast (&learned);
  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (int f = 1; f <= 2; f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          {
            check_whole (&series, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 330));
            check_whole (&learned, words[l], (SteadScheme) scheme, 12 * f, widths[w], MAX (widths[w] * 0.6, 340));
          }
}

/* The band lies where its numbers say, over the hatch the line ahead. */
static void
test_band (void)
{
  SteadLaySeries series = make_series ();
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560), *bare = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadLayLayout layout, without;
  double x;
  int inside = 0;

  lay (bare, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &without);
  g_assert_cmpfloat (without.band_high_box.width, ==, 0);
  add_forecast (&series);
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, -1, &layout);
  x = own_x (&layout, 70.2);
  for (double frac = ahead[22].low + 0.01; frac < ahead[22].high - 0.01; frac += 0.004)
    inside += probe_distance (probe_pixel (cr, x, own_y (&layout, frac)),
                              stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD)) > 8;
  g_assert_cmpint (inside, >, 25);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, x, own_y (&layout, ahead[22].low - 0.03));
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, x, own_y (&layout, ahead[22].high + 0.03));
  /* Its names stand from top to bottom as what they name. */
  g_assert_cmpfloat (layout.band_high_box.y, <, layout.forecast_box.y);
  g_assert_cmpfloat (layout.forecast_box.y, <, layout.band_low_box.y);
  g_assert_cmpfloat_with_epsilon (stead_lay_chart_age (&layout, own_x (&layout, 60)), 60, 1e-9);
  cairo_destroy (cr);
  cairo_destroy (bare);
}

/* The words stand in the plot, clear of every point and of each other. */
static void
test_notes (void)
{
  static const double widths[] = { 420, 640, 1000 };
  SteadLaySeries series = make_series ();

  add_forecast (&series);
  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    {
      cairo_t *cr = probe_record ();
      SteadLayLayout layout;
      SteadBox boxes[N_WEEKS + 2];
      int n = 0;

      lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, widths[w], MAX (widths[w] * 0.6, 330), -1, &layout);
      g_assert_cmpint (layout.n_notes, ==, 2);
      for (int i = 0; i < layout.n_notes; i++)
        {
          const SteadBox *box = &layout.note_boxes[i];

          g_assert_cmpfloat (box->x, >=, layout.plot.x);
          g_assert_cmpfloat (box->y, >=, layout.plot.y);
          g_assert_cmpfloat (box->x + box->width, <=, layout.plot.x + layout.plot.width + 0.01);
          g_assert_cmpfloat (box->y + box->height, <=, layout.plot.y + layout.plot.height + 0.01);
          boxes[n++] = *box;
        }
      probe_assert_apart (boxes, n);
      for (int i = 0; i < N_WEEKS; i++)
        {
          double x, y;

          if (!stead_lay_chart_point (&layout, &weeks[i], &x, &y))
            continue;
          for (int k = 0; k < layout.n_notes; k++)
            g_assert_false (x > layout.note_boxes[k].x && x < layout.note_boxes[k].x + layout.note_boxes[k].width
                            && y > layout.note_boxes[k].y && y < layout.note_boxes[k].y + layout.note_boxes[k].height);
        }
      cairo_destroy (cr);
    }
}

static void
test_whole_with_little (void)
{
  SteadLaySeries none = make_series (), one = none, bare = none;

  none.n_weeks = 0;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  none.n_curve = 0;
  none.today_age_weeks = NAN;
  check_whole (&none, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  one.n_weeks = 1;
  one.n_curve = 0;
  one.today_age_weeks = 18.5;
  check_whole (&one, &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
  for (int i = 0; i < N_WEEKS; i++)
    weeks[i].feed_kg = 0;
  check_whole (&bare, &english, STEAD_SCHEME_DARK, 12, 640, 400);
}

/* More than an egg a hen, from a missed collection: the axis grows, nothing is cut. */
static void
test_more_than_all (void)
{
  SteadLaySeries series = make_series ();
  cairo_t *cr = probe_record ();
  SteadLayLayout layout;
  double x, y;

  weeks[10].eggs = 230;
  lay (cr, &series, &english, STEAD_SCHEME_LIGHT, 12, 640, 400, -1, &layout);
  g_assert_cmpfloat_with_epsilon (layout.max_frac, 1.2, 1e-9);
  g_assert_true (stead_lay_chart_point (&layout, &weeks[10], &x, &y));
  g_assert_cmpfloat (y, >, layout.plot.y);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/lay-chart/positions", test_positions);
  g_test_add_func ("/draw/lay-chart/every-dot-has-an-outline", test_every_dot_has_an_outline);
  g_test_add_func ("/draw/lay-chart/nearest", test_nearest);
  g_test_add_func ("/draw/lay-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/lay-chart/band", test_band);
  g_test_add_func ("/draw/lay-chart/notes", test_notes);
  g_test_add_func ("/draw/lay-chart/whole-with-little", test_whole_with_little);
  g_test_add_func ("/draw/lay-chart/more-than-all", test_more_than_all);
  return g_test_run ();
}

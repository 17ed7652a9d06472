/* test-draw.c - round steps, patterns, and text that keeps a bounded store. */
#include <locale.h>
#include <malloc.h>

#include "draw-probe.h"

static void
test_ticks_are_round (void)
{
  static const struct { double low, high; int most; gboolean whole; } cases[] = {
    { 0, 1, 6, FALSE }, { 0, 120, 7, TRUE }, { 0, 60000, 7, TRUE }, { 18, 72, 12, TRUE }, { 0, 3, 10, TRUE },
    { 0, 9e15, 7, TRUE }, { 0, 0.27, 4, FALSE }, { -30, 70, 5, TRUE }, { 0.1, 0.9, 8, FALSE },
    { 99.5, 100.5, 2, FALSE }, { 0, 7, 2, TRUE }, { 1e-6, 2e-6, 5, FALSE }, { 0, 100, 3, TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadTicks ticks = stead_ticks (cases[i].low, cases[i].high, cases[i].most, cases[i].whole);
      double mantissa = ticks.step / pow (10, floor (log10 (ticks.step) + 1e-9));
      double slack = (cases[i].high - cases[i].low) * 1e-9;

      g_test_message ("%g to %g by %d: first %g step %g n %d", cases[i].low, cases[i].high, cases[i].most,
                      ticks.first, ticks.step, ticks.n);
      g_assert_cmpint (ticks.n, >=, 1);
      g_assert_cmpint (ticks.n, <=, cases[i].most);
      g_assert_cmpfloat (ticks.first, >=, cases[i].low - slack);
      g_assert_cmpfloat (ticks.last, <=, cases[i].high + slack);
      g_assert_cmpfloat_with_epsilon (ticks.last, ticks.first + (ticks.n - 1) * ticks.step, slack);
      /* No tick is missing at either end. */
      g_assert_cmpfloat (ticks.first - ticks.step, <, cases[i].low + slack);
      g_assert_cmpfloat (ticks.last + ticks.step, >, cases[i].high - slack);
      g_assert_true (fabs (mantissa - 1) < 1e-6 || fabs (mantissa - 2) < 1e-6
                     || fabs (mantissa - 2.5) < 1e-6 || fabs (mantissa - 5) < 1e-6);
      g_assert_cmpfloat_with_epsilon (ticks.first / ticks.step, round (ticks.first / ticks.step), 1e-6);
      if (cases[i].whole)
        g_assert_cmpfloat_with_epsilon (ticks.step, round (ticks.step), 1e-9 * ticks.step);
    }
}

static void
test_ticks_of_no_range (void)
{
  const double values[][2] = { { 5, 5 }, { 5, 4 }, { 0, INFINITY }, { NAN, 1 }, { 0, NAN } };

  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    g_assert_cmpint (stead_ticks (values[i][0], values[i][1], 5, FALSE).n, ==, 1);
}

static void
test_text_box_holds_ink (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  static const SteadAlign aligns[] = { STEAD_ALIGN_LEFT, STEAD_ALIGN_CENTER, STEAD_ALIGN_RIGHT };

  for (gsize i = 0; i < G_N_ELEMENTS (aligns); i++)
    {
      cairo_t *cr = probe_record ();
      SteadBox box = stead_text_paint (cr, &style, STEAD_ROLE_INK, "break-even 46 dozen", 1, TRUE,
                                       aligns[i], 100, 50);
      double x, y, w, h, measured_w, measured_h;

      cairo_recording_surface_ink_extents (cairo_get_target (cr), &x, &y, &w, &h);
      g_assert_cmpfloat (x, >=, box.x - 1);
      g_assert_cmpfloat (x + w, <=, box.x + box.width + 1);
      g_assert_cmpfloat (y, >=, box.y - 1);
      g_assert_cmpfloat (y + h, <=, box.y + box.height + 1);
      g_assert_cmpfloat (w, >, box.width * 0.9);
      g_assert_cmpfloat_with_epsilon (box.y + box.height / 2, 50, 0.01);
      g_assert_cmpfloat_with_epsilon (box.x + (i == 0 ? 0 : i == 1 ? box.width / 2 : box.width), 100, 0.01);
      stead_text_measure (cr, &style, "break-even 46 dozen", 1, TRUE, &measured_w, &measured_h);
      g_assert_cmpfloat_with_epsilon (measured_w, box.width, 0.01);
      g_assert_cmpfloat_with_epsilon (measured_h, box.height, 0.01);
      cairo_destroy (cr);
    }
}

static void
test_text_breaks (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  double one_w, one_h, w, h;

  stead_text_measure (cr, &style, "costos fijos del puesto", 1, FALSE, &one_w, &one_h);
  stead_text_measure_block (cr, &style, "costos fijos del puesto", 1, FALSE, one_w / 2, &w, &h);
  g_assert_cmpfloat (w, <=, one_w / 2);
  g_assert_cmpfloat (h, >=, 2 * one_h - 1);
  stead_text_measure_block (cr, &style, "puntodeequilibriosinespacios", 1, FALSE, one_w / 3, &w, &h);
  g_assert_cmpfloat (w, <=, one_w / 3);
  cairo_destroy (cr);
}

static void
test_figures_are_tabular (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  double ones, nines, h;

  stead_text_measure (cr, &style, "$1,111.11", 1, FALSE, &ones, &h);
  stead_text_measure (cr, &style, "$9,999.99", 1, FALSE, &nines, &h);
  g_assert_cmpfloat_with_epsilon (ones, nines, 0.01);
  cairo_destroy (cr);
}

static void
paint_numbers (cairo_t *cr,
               int      from,
               int      to)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };

  for (int i = from; i < to; i++)
    {
      g_autofree char *text = g_strdup_printf ("break-even %d dozen", i);

      stead_text_paint (cr, &style, STEAD_ROLE_INK, text, 1, FALSE, STEAD_ALIGN_LEFT, 5, 10);
    }
}

static void
test_text_keeps_little (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 200, 20);
  gsize before, after;

  paint_numbers (cr, 0, 2000);
  before = mallinfo2 ().uordblks;
  paint_numbers (cr, 2000, 12000);
  after = mallinfo2 ().uordblks;
  g_test_message ("%zu bytes before, %zu after 10,000 more texts", before, after);
  /* Kept without bound, each text would hold several hundred bytes: some megabytes. */
  g_assert_cmpuint (after, <, before + 200000);
  cairo_destroy (cr);
}

static void
test_pattern_stays_in_its_path (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };

  for (int pattern = STEAD_PATTERN_SOLID; pattern <= STEAD_PATTERN_LINES; pattern++)
    {
      cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 100, 100);
      int marked = 0;

      cairo_rectangle (cr, 20, 20, 60, 60);
      stead_fill_pattern (cr, &style, STEAD_ROLE_TOMATO, (SteadPattern) pattern, FALSE);
      for (int y = 0; y < 100; y++)
        for (int x = 0; x < 100; x++)
          {
            gboolean in = x >= 20 && x < 80 && y >= 20 && y < 80;
            guint32 pixel = probe_pixel (cr, x, y);

            if (!in)
              g_assert_cmphex (pixel, ==, 0xffffff);
            else
              marked += probe_distance (pixel, stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO)) > 30;
          }
      if (pattern == STEAD_PATTERN_SOLID)
        g_assert_cmpint (marked, ==, 0);
      else
        g_assert_cmpint (marked, >, 150);
      cairo_destroy (cr);
    }
}

/* The loss and the gain differ by the slant of their hatch: a step along the slant
 * leaves the picture as it is, a step across it does not. */
static void
test_hatches_slant_apart (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  static const SteadPattern patterns[] = { STEAD_PATTERN_RISING, STEAD_PATTERN_FALLING };

  for (int i = 0; i < 2; i++)
    {
      cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 100, 100);
      int slant = i == 0 ? -1 : 1, along = 0, across = 0;

      cairo_rectangle (cr, 0, 0, 100, 100);
      stead_fill_area (cr, &style, STEAD_ROLE_WATER, patterns[i]);
      for (int y = 20; y < 80; y++)
        for (int x = 20; x < 80; x++)
          {
            along += probe_distance (probe_pixel (cr, x, y), probe_pixel (cr, x + 2, y + 2 * slant));
            across += probe_distance (probe_pixel (cr, x, y), probe_pixel (cr, x + 2, y - 2 * slant));
          }
      g_assert_cmpint (across, >, 4 * along + 1000);
      cairo_destroy (cr);
    }
}

/* On the screen a hatch comes from a tile: it repeats without a seam, at each gap of 9
 * pixels, far beyond one tile, and nothing of it leaves the shape. */
static void
test_hatch_has_no_seam (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  static const SteadPattern patterns[] = { STEAD_PATTERN_RISING, STEAD_PATTERN_FALLING };

  for (int i = 0; i < 2; i++)
    {
      cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 420, 300);
      guint32 ground = probe_pixel (cr, 0, 0);
      int marked = 0;

      cairo_rectangle (cr, 10, 10, 400, 280);
      stead_fill_area (cr, &style, STEAD_ROLE_WATER, patterns[i]);
      for (int y = 12; y < 270; y++)
        for (int x = 12; x < 390; x++)
          {
            g_assert_cmpint (probe_distance (probe_pixel (cr, x, y), probe_pixel (cr, x + 9, y)), <=, 3);
            g_assert_cmpint (probe_distance (probe_pixel (cr, x, y), probe_pixel (cr, x, y + 9)), <=, 3);
            marked += probe_distance (probe_pixel (cr, x, y), ground) > 30;
          }
      g_assert_cmpint (marked, >, 270 * 380 / 20);
      for (int x = 0; x < 420; x++)
        {
          g_assert_cmpuint (probe_pixel (cr, x, 9), ==, ground);
          g_assert_cmpuint (probe_pixel (cr, x, 290), ==, ground);
        }
      cairo_destroy (cr);
    }
}

static void
test_style_gives_way (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 24, NULL, "USD" };

  g_assert_cmpfloat (stead_draw_style_fit (&style, 1200, 800).font_size, ==, 24);
  g_assert_cmpfloat (stead_draw_style_fit (&style, 320, 200).font_size, >=, 24 * 0.6 - 1e-9);
  g_assert_cmpfloat (stead_draw_style_fit (&style, 320, 200).font_size, <, 24);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/ticks/are-round-and-complete", test_ticks_are_round);
  g_test_add_func ("/draw/ticks/of-no-range", test_ticks_of_no_range);
  g_test_add_func ("/draw/text/box-holds-ink", test_text_box_holds_ink);
  g_test_add_func ("/draw/text/breaks-at-width", test_text_breaks);
  g_test_add_func ("/draw/text/figures-are-tabular", test_figures_are_tabular);
  g_test_add_func ("/draw/text/keeps-little", test_text_keeps_little);
  g_test_add_func ("/draw/pattern/stays-in-its-path", test_pattern_stays_in_its_path);
  g_test_add_func ("/draw/pattern/hatches-slant-apart", test_hatches_slant_apart);
  g_test_add_func ("/draw/pattern/hatch-has-no-seam", test_hatch_has_no_seam);
  g_test_add_func ("/draw/style/gives-way-in-a-small-box", test_style_gives_way);
  return g_test_run ();
}

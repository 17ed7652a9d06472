/* test-small-columns.c - one small column for each of many, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-small-columns.h"

static void
lay (cairo_t                 *cr,
     const SteadSmallColumns *columns,
     double                   font_size,
     double                   width,
     double                   height,
     SteadSmallColumnsLayout *out)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, font_size, NULL, NULL };

  stead_small_columns_layout (cr, columns, &style, width, height, out);
  stead_small_columns_paint (cr, columns, &style, out);
}

/* Half the value is half the height; none has no ink; the pointer finds each. */
static void
test_heights (void)
{
  static const double values[] = { 10, 0, 5, 20 };
  SteadSmallColumns columns = { values, 4, 0, STEAD_ROLE_WATER, STEAD_PATTERN_SOLID, "most 20" };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 200, 80);
  SteadSmallColumnsLayout layout;

  lay (cr, &columns, 12, 200, 80, &layout);
  for (int i = 0; i < 4; i++)
    {
      SteadBox box = stead_small_columns_box (&columns, &layout, i);

      g_assert_cmpfloat_with_epsilon (box.height, layout.plot.height * values[i] / 20, 1e-9);
      g_assert_cmpint (stead_small_columns_at (&columns, &layout, box.x + box.width / 2), ==, i);
      if (values[i] > 0)
        probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, box.x + box.width / 2, box.y + box.height / 2);
    }
  g_assert_cmpint (stead_small_columns_at (&columns, &layout, 0), ==, -1);
  g_assert_cmpint (stead_small_columns_at (&columns, &layout, 199), ==, -1);
  cairo_destroy (cr);
}

/* What all could reach is the measure, even if nobody does. */
static void
test_full (void)
{
  static const double values[] = { 4, 8 };
  SteadSmallColumns columns = { values, 2, 16, STEAD_ROLE_FISH, STEAD_PATTERN_RISING, NULL };
  cairo_t *cr = probe_record ();
  SteadSmallColumnsLayout layout;

  lay (cr, &columns, 12, 100, 60, &layout);
  g_assert_cmpfloat (stead_small_columns_box (&columns, &layout, 1).height, ==, layout.plot.height / 2);
  cairo_destroy (cr);
}

/* A class of any size stays inside. */
static void
test_whole (void)
{
  static const int counts[] = { 1, 14, 150 };
  double values[150];

  for (int i = 0; i < 150; i++)
    values[i] = i % 7;
  for (gsize c = 0; c < G_N_ELEMENTS (counts); c++)
    for (int f = 1; f <= 2; f++)
      {
        SteadSmallColumns columns = { values, counts[c], 0, STEAD_ROLE_WATER, STEAD_PATTERN_SOLID, "most 6 h" };
        cairo_t *cr = probe_record ();
        SteadSmallColumnsLayout layout;

        lay (cr, &columns, 12 * f, 240, 60, &layout);
        probe_assert_inside (cr, 240, 60);
        cairo_destroy (cr);
      }
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/small-columns/heights", test_heights);
  g_test_add_func ("/draw/small-columns/full", test_full);
  g_test_add_func ("/draw/small-columns/whole", test_whole);
  return g_test_run ();
}

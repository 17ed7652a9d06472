/* test-pick.c - a crop's total as the pickings change it, and the table of known crops. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "core/stead-crop-kind.h"
#include "core/stead-pick.h"

/* Worked by hand from the posterior of a gamma distributed rate: shape a = 25 of 100 kg. */
static void
test_factor (void)
{
  static const struct { double expected, picked, factor, half; } rows[] = {
    { 0, 0, 1, 0.30 },                     /* nothing picked yet */
    { 75, 75, 1, 0.15 },                   /* 0.30 x sqrt (25 / 100) */
    { 75, 125, 1.5, 0.15 },                /* (25 + 125) / (25 + 75) */
    { 75, 0, 0.25, 0.15 },
    { 25, 0, 0.5, 0.30 * M_SQRT1_2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SteadBand band;

      stead_pick_factor (100, rows[i].expected, rows[i].picked, &band);
      g_assert_cmpfloat_with_epsilon (band.likely, rows[i].factor, 1e-12);
      g_assert_cmpfloat_with_epsilon (band.low, rows[i].factor * (1 - rows[i].half), 1e-12);
      g_assert_cmpfloat_with_epsilon (band.high, rows[i].factor * (1 + rows[i].half), 1e-12);
    }
}

/* Tomatoes as the sources have them: base 50 and upper 86 °F (Iowa State University,
 * Agronomy 541 lesson 2b), 1,000 to 1,800 °F-days to ripe (weather report, Rochester),
 * 20 to 25 lb a plant and year of two crops (Oregon greenhouse tomato questions). */
static void
test_tomato (void)
{
  const SteadCropDefaults *tomato = stead_crop_defaults ("tomato");

  g_assert_nonnull (tomato);
  g_assert_true (tomato->has_source);
  g_assert_cmpfloat_with_epsilon (tomato->base_c, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (tomato->upper_c, 30, 1e-9);
  g_assert_cmpfloat (tomato->ripe_need * 1.8, >=, 1000);
  g_assert_cmpfloat (tomato->ripe_need * 1.8, <=, 1800);
  g_assert_cmpfloat (tomato->yield_kg / 0.45359237, >=, 10);
  g_assert_cmpfloat (tomato->yield_kg / 0.45359237, <=, 12.5);
}

static void
test_known (void)
{
  gsize n;
  const SteadCropDefaults *crops = stead_crop_known (&n);

  for (gsize i = 0; i < n; i++)
    {
      g_assert_true (stead_crop_defaults (crops[i].id) == &crops[i]);
      g_assert_cmpuint (strlen (stead_crop_word (crops[i].id)), >=, strlen (crops[i].id));
      g_assert_cmpfloat (crops[i].base_c, <, crops[i].upper_c);
      g_assert_cmpfloat (crops[i].ripe_need, >, 0);
      g_assert_cmpfloat (crops[i].yield_kg, >, 0);
      g_assert_cmpfloat (crops[i].pick_weeks, >, 0);
      g_assert_cmpfloat (crops[i].density_m2, >, 0);
    }
  g_assert_null (stead_crop_defaults ("okra"));
  g_assert_null (stead_crop_defaults (NULL));
  g_assert_cmpstr (stead_crop_word ("okra"), ==, "okra");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/pick/factor", test_factor);
  g_test_add_func ("/core/pick/tomato", test_tomato);
  g_test_add_func ("/core/pick/known", test_known);
  return g_test_run ();
}

/* Eggs, hatching, the hen house, and what is assumed about them. */
#include "core/stead-core-error.h"
#include "core/stead-egg.h"
#include "core/stead-hatch.h"
#include "core/stead-hen-house.h"
#include "core/stead-husbandry.h"
#include "core/stead-lay.h"

#include <math.h>

#define SQFT_M2 0.09290304
#define POUND_KG 0.45359237

/* Pennsylvania Code, title 7, section 87.42(a) (read); grams of an egg from a
 * table of egg sizes (read). */
static void
test_classes (void)
{
  static const struct { SteadEggClass class; double dozen_oz, case_lb, mean_g; } table[] = {
    { STEAD_EGG_CLASS_JUMBO, 30, 56, 70.9 }, { STEAD_EGG_CLASS_EXTRA_LARGE, 27, 50.5, 63.8 },
    { STEAD_EGG_CLASS_LARGE, 24, 45, 56.7 }, { STEAD_EGG_CLASS_MEDIUM, 21, 39.5, 49.6 },
    { STEAD_EGG_CLASS_SMALL, 18, 34, 42.5 }, { STEAD_EGG_CLASS_PEEWEE, 15, 28, 35.4 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SteadEggClass class = STEAD_EGG_CLASS_PEEWEE;

      g_assert_cmpfloat (stead_egg_class_dozen_oz (table[i].class), ==, table[i].dozen_oz);
      g_assert_cmpfloat (stead_egg_class_case_lb (table[i].class, 30), ==, table[i].case_lb);
      g_assert_cmpfloat_with_epsilon (stead_egg_class_mean_g (table[i].class), table[i].mean_g, 0.1);
      g_assert_true (stead_egg_class_of_dozen (table[i].dozen_oz, &class, NULL));
      g_assert_cmpint (class, ==, table[i].class);
    }
  g_assert_cmpfloat (stead_egg_class_case_lb (STEAD_EGG_CLASS_LARGE, 15), ==, 22.5);
  g_assert_cmpfloat (stead_egg_class_case_lb (STEAD_EGG_CLASS_JUMBO, 15), ==, 28);
  g_assert_cmpfloat (stead_egg_class_single_oz (STEAD_EGG_CLASS_LARGE), ==, 23);
  g_assert_true (isnan (stead_egg_class_single_oz (STEAD_EGG_CLASS_PEEWEE)));
  g_assert_cmpstr (stead_egg_class_id (STEAD_EGG_CLASS_EXTRA_LARGE), ==, "extra_large");
  g_assert_cmpstr (stead_egg_class_name (STEAD_EGG_CLASS_EXTRA_LARGE), ==, "Extra large");
}

/* Egg quality article with the simplified formula (derived); grades from the
 * encyclopedia article on the Haugh unit (read). */
static void
test_haugh (void)
{
  g_autoptr(GError) error = NULL;
  double units = -1;

  g_assert_true (stead_haugh_units (58, 7, &units, NULL));
  g_assert_cmpfloat_with_epsilon (units, 84.1, 0.4);
  g_assert_true (stead_haugh_units (65, 3, &units, NULL));
  g_assert_cmpfloat_with_epsilon (units, 41.6, 0.4);
  units = -1;
  g_assert_false (stead_haugh_units (1000, 1, &units, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_haugh_units (NAN, 7, &units, NULL));
  g_assert_false (stead_haugh_units (60, 0, &units, NULL));
  g_assert_cmpfloat (units, ==, -1);
  /* The same two eggs the other way: a Haugh unit is a tenth of a millimeter and more. */
  g_assert_cmpfloat_with_epsilon (stead_haugh_albumen_mm (58, 84.1), 7, 0.07);
  g_assert_cmpfloat_with_epsilon (stead_haugh_albumen_mm (65, 41.6), 3, 0.03);
  g_assert_true (isnan (stead_haugh_albumen_mm (0, 72)));
  g_assert_true (isnan (stead_haugh_albumen_mm (NAN, 72)));
  g_assert_cmpint (stead_haugh_grade (72), ==, STEAD_EGG_GRADE_AA);
  g_assert_cmpint (stead_haugh_grade (71), ==, STEAD_EGG_GRADE_A);
  g_assert_cmpint (stead_haugh_grade (60), ==, STEAD_EGG_GRADE_A);
  g_assert_cmpint (stead_haugh_grade (59.9), ==, STEAD_EGG_GRADE_B);
}

/* Brown hybrids: from memory, wide bands. */
static void
test_default_weight (void)
{
  double before = 0;

  g_assert_cmpfloat (stead_egg_weight_default_g (22), >=, 48);
  g_assert_cmpfloat (stead_egg_weight_default_g (22), <=, 56);
  g_assert_cmpfloat (stead_egg_weight_default_g (30), >=, 59);
  g_assert_cmpfloat (stead_egg_weight_default_g (30), <=, 63);
  g_assert_cmpfloat (stead_egg_weight_default_g (60), >=, 62);
  g_assert_cmpfloat (stead_egg_weight_default_g (60), <=, 67);
  for (double age = 18; age < 100; age++)
    {
      g_assert_cmpfloat (stead_egg_weight_default_g (age), >=, before);
      before = stead_egg_weight_default_g (age);
    }
  /* A trial of brown hens (read): 97.5 percent of 64.4 g. */
  g_assert_cmpfloat_with_epsilon (stead_egg_mass_g (0.975, 64.4), 62.8, 0.05);
}

/* Extension text on incubating, table of lengths (read). */
static void
test_hatch (void)
{
  double least, most;
  g_autoptr(GError) error = NULL;
  double temp = -99;

  stead_hatch_days (STEAD_HATCH_CHICKEN, &least, &most);
  g_assert_cmpfloat (least, ==, 21);
  g_assert_cmpfloat (most, ==, 21);
  stead_hatch_days (STEAD_HATCH_MUSCOVY_DUCK, &least, NULL);
  g_assert_cmpfloat (least, ==, 33);
  g_assert_cmpfloat (stead_hatch_set_before_chicken_days (STEAD_HATCH_DUCK), ==, 7);
  g_assert_cmpfloat (stead_hatch_set_before_chicken_days (STEAD_HATCH_JAPANESE_QUAIL), ==, -3.5);
  /* Calculating Agriculture, table 12.4 (read): 95 °F, then 90. */
  g_assert_true (stead_brooder_temperature_c (1, &temp, NULL));
  g_assert_cmpfloat_with_epsilon (temp, 35, 1e-9);
  g_assert_true (stead_brooder_temperature_c (2, &temp, NULL));
  g_assert_cmpfloat_with_epsilon (temp * 1.8 + 32, 90, 1e-9);
  temp = -99;
  g_assert_false (stead_brooder_temperature_c (0, &temp, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_brooder_temperature_c (9, &temp, NULL));
  g_assert_cmpfloat (temp, ==, -99);
}

/* County extension column and extension answer 257347 (derived from their rules);
 * Calculating Agriculture, p. 12-8 (read). */
static void
test_house (void)
{
  g_autoptr(GError) error = NULL;
  double kg = -1;

  g_assert_cmpfloat_with_epsilon (stead_hen_floor_least_m2 (24), 36 * SQFT_M2, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_hen_floor_usual_m2 (24), 48 * SQFT_M2, 1e-12);
  g_assert_cmpint (stead_hen_nest_boxes (24, 5), ==, 5);
  g_assert_cmpint (stead_hen_nest_boxes (25, 5), ==, 5);
  g_assert_cmpint (stead_hen_troughs (1600, 2 * 0.0254, 38 * 0.0254), ==, 85);
  g_assert_cmpfloat_with_epsilon (stead_hen_water_least_l (100), 5 * 3.785411784, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_hen_feed_kg (100), 25 * POUND_KG, 1e-9);
  g_assert_true (stead_pullet_feed_kg (100, 16, &kg, NULL));
  g_assert_cmpfloat_with_epsilon (kg, 1300 * POUND_KG, 1e-9);
  g_assert_true (stead_pullet_feed_kg (24, 6, &kg, NULL));
  g_assert_cmpfloat_with_epsilon (kg, 48 * POUND_KG, 1e-9);
  kg = -1;
  g_assert_false (stead_pullet_feed_kg (24, 10, &kg, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (kg, ==, -1);
}

/* Ranges of handbooks (see tests/reference/hens.csv for each source). */
static void
test_defaults (void)
{
  static const struct { SteadHusbandryDefault which; double low, high; } ranges[] = {
    { STEAD_DEFAULT_LAY_ONSET_AGE, 18, 22 }, { STEAD_DEFAULT_LAY_ONSET_TO_PEAK, 6, 8 },
    { STEAD_DEFAULT_LAY_PEAK, 85, 95 }, { STEAD_DEFAULT_LAY_AFTER_YEAR, 60, 82 },
    { STEAD_DEFAULT_LAY_DECLINE, 0.3, 1.5 }, { STEAD_DEFAULT_LAYER_FEED, 105, 125 },
    { STEAD_DEFAULT_LAYER_FEED_PER_DOZEN, 3 * POUND_KG, 4.5 * POUND_KG },
    { STEAD_DEFAULT_HEN_WATER, 200, 500 }, { STEAD_DEFAULT_HEN_LIGHT, 14, 16 },
    { STEAD_DEFAULT_HEN_FLOOR, 1.5 * SQFT_M2, 4 * SQFT_M2 }, { STEAD_DEFAULT_HENS_PER_BOX, 4, 5 },
    { STEAD_DEFAULT_LAYING_DUCK_EGGS, 250, 332 }, { STEAD_DEFAULT_EGG_SHELL, 10, 12.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (ranges); i++)
    {
      g_assert_cmpfloat (stead_husbandry_default (ranges[i].which), >=, ranges[i].low);
      g_assert_cmpfloat (stead_husbandry_default (ranges[i].which), <=, ranges[i].high);
    }
}

/* What is said of the default curve is true of it. */
static void
test_defaults_follow_the_curve (void)
{
  SteadLayCurve curve;
  double best_age = 0;
  double best = 0;
  double later;

  stead_lay_curve_default (&curve);
  for (double age = 18; age < 80; age += 0.01)
    if (stead_lay_curve_frac (&curve, age) > best)
      {
        best_age = age;
        best = stead_lay_curve_frac (&curve, age);
      }
  later = stead_lay_curve_frac (&curve, curve.onset_age_weeks + 52);
  g_assert_cmpfloat_with_epsilon (stead_husbandry_default (STEAD_DEFAULT_LAY_ONSET_TO_PEAK),
                                  best_age - curve.onset_age_weeks, 0.02);
  g_assert_cmpfloat_with_epsilon (stead_husbandry_default (STEAD_DEFAULT_LAY_PEAK), 100 * best, 1e-4);
  g_assert_cmpfloat_with_epsilon (stead_husbandry_default (STEAD_DEFAULT_LAY_AFTER_YEAR), 100 * later, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_husbandry_default (STEAD_DEFAULT_LAY_DECLINE),
                                  100 * (best - later) / (curve.onset_age_weeks + 52 - best_age), 1e-3);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/egg/classes", test_classes);
  g_test_add_func ("/core/egg/haugh", test_haugh);
  g_test_add_func ("/core/egg/default-weight", test_default_weight);
  g_test_add_func ("/core/hatch/published", test_hatch);
  g_test_add_func ("/core/hen-house/published", test_house);
  g_test_add_func ("/core/husbandry/defaults-in-range", test_defaults);
  g_test_add_func ("/core/husbandry/defaults-follow-the-curve", test_defaults_follow_the_curve);
  return g_test_run ();
}

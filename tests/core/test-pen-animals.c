/* Sheep, goats, and eggs in a recipe. */
#include "core/stead-core-error.h"
#include "core/stead-egg-kitchen.h"
#include "core/stead-husbandry.h"
#include "core/stead-pen-animals.h"

#include <math.h>

#define POUND_KG 0.45359237
#define GALLON_L 3.785411784

/* South Dakota extension column on sheep water, table after NRC 2007 (read). */
static void
test_ewe_water (void)
{
  static const struct { double lb; SteadEweStage stage; double least, most; } table[] = {
    { 130, STEAD_EWE_MAINTENANCE, 0.60, 0.82 }, { 160, STEAD_EWE_MAINTENANCE, 0.70, 0.96 },
    { 200, STEAD_EWE_MAINTENANCE, 0.83, 1.13 }, { 130, STEAD_EWE_PREGNANT, 1.21, 1.63 },
    { 160, STEAD_EWE_PREGNANT, 1.41, 1.90 }, { 200, STEAD_EWE_PREGNANT, 1.67, 2.25 },
    { 130, STEAD_EWE_LACTATING, NAN, 2.02 }, { 160, STEAD_EWE_LACTATING, NAN, 2.36 },
    { 200, STEAD_EWE_LACTATING, NAN, 2.79 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      double least = -1;
      double most = -1;

      g_assert_true (stead_ewe_water_l (table[i].lb * POUND_KG, table[i].stage, &least, &most, NULL));
      g_assert_cmpfloat_with_epsilon (most / GALLON_L, table[i].most, 1e-9);
      g_assert_cmpint (isnan (least), ==, isnan (table[i].least));
      if (!isnan (least))
        g_assert_cmpfloat_with_epsilon (least / GALLON_L, table[i].least, 1e-9);
    }
}

static void
test_ewe_between (void)
{
  g_autoptr(GError) error = NULL;
  double most = -1;
  double before = 0;

  /* Halfway from 130 to 160 and from 160 to 200. */
  g_assert_true (stead_ewe_water_l (145 * POUND_KG, STEAD_EWE_PREGNANT, NULL, &most, NULL));
  g_assert_cmpfloat_with_epsilon (most / GALLON_L, (1.63 + 1.90) / 2, 1e-9);
  g_assert_true (stead_ewe_water_l (180 * POUND_KG, STEAD_EWE_PREGNANT, NULL, &most, NULL));
  g_assert_cmpfloat_with_epsilon (most / GALLON_L, (1.90 + 2.25) / 2, 1e-9);
  for (double lb = 130; lb <= 200; lb += 5)
    {
      g_assert_true (stead_ewe_water_l (lb * POUND_KG, STEAD_EWE_LACTATING, NULL, &most, NULL));
      g_assert_cmpfloat (most, >, before);
      before = most;
    }
  most = -1;
  g_assert_false (stead_ewe_water_l (129 * POUND_KG, STEAD_EWE_PREGNANT, NULL, &most, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_ewe_water_l (201 * POUND_KG, STEAD_EWE_PREGNANT, NULL, &most, NULL));
  g_assert_false (stead_ewe_water_l (NAN, STEAD_EWE_PREGNANT, NULL, &most, NULL));
  g_assert_cmpfloat (most, ==, -1);
}

/* Show animal water chart, goats and sheep: 60 to 115 lb, 2 to 3 gallons (read). */
static void
test_goat_water (void)
{
  g_autoptr(GError) error = NULL;
  double liters = -1;

  for (double lb = 60; lb <= 115; lb += 5)
    {
      g_assert_true (stead_goat_water_l (lb * POUND_KG, &liters, NULL));
      g_assert_cmpfloat (liters / GALLON_L, >=, 2);
      g_assert_cmpfloat (liters / GALLON_L, <=, 3);
    }
  liters = -1;
  g_assert_false (stead_goat_water_l (59 * POUND_KG, &liters, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_goat_water_l (116 * POUND_KG, &liters, NULL));
  g_assert_cmpfloat (liters, ==, -1);
}

/* University of Illinois Extension Ag Update 2004: 770 lb a ewe of 175 lb for six
 * months (read); the rest derived. */
static void
test_hay (void)
{
  g_assert_cmpfloat_with_epsilon (stead_hay_each_kg (175 * POUND_KG, 0.024, 182) / POUND_KG, 770, 7.7);
  g_assert_cmpfloat_with_epsilon (stead_hay_kg (6, 770, 0), 4620, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_hay_kg (6, stead_hay_each_kg (150, 0.03, 180), 0), 4860, 1e-9);
  /* A tenth of what is bought is lost, so nine tenths are what they eat. */
  g_assert_cmpfloat_with_epsilon (stead_hay_kg (6, 770, 0.10) * 0.9, 4620, 1e-9);
  g_assert_true (isnan (stead_hay_kg (6, 770, 1)));
  g_assert_true (isnan (stead_hay_kg (6, 770, -0.1)));
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_EWE_HAY), >=, 2);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_EWE_HAY), <=, 4);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_PEN_SHELTER), >=, 15 * 0.09290304);
  g_assert_cmpfloat (stead_husbandry_default (STEAD_DEFAULT_PEN_SHELTER), <=, 25 * 0.09290304);
}

/* Iowa State University Extension, All about eggs, substitution chart (read). */
static void
test_substitute (void)
{
  static const SteadEggClass classes[] = {
    STEAD_EGG_CLASS_LARGE, STEAD_EGG_CLASS_JUMBO, STEAD_EGG_CLASS_EXTRA_LARGE,
    STEAD_EGG_CLASS_MEDIUM, STEAD_EGG_CLASS_SMALL,
  };
  static const int chart[STEAD_EGG_CHART_MOST][G_N_ELEMENTS (classes)] = {
    { 1, 1, 1, 1, 1 }, { 2, 2, 2, 2, 3 }, { 3, 2, 3, 3, 4 },
    { 4, 3, 4, 5, 5 }, { 5, 4, 4, 6, 6 }, { 6, 5, 5, 7, 8 },
  };
  g_autoptr(GError) error = NULL;
  int eggs = -1;

  for (int large = 1; large <= STEAD_EGG_CHART_MOST; large++)
    for (gsize i = 0; i < G_N_ELEMENTS (classes); i++)
      {
        g_assert_true (stead_egg_substitute (large, classes[i], &eggs, NULL));
        g_assert_cmpint (eggs, ==, chart[large - 1][i]);
      }
  eggs = -1;
  g_assert_false (stead_egg_substitute (0, STEAD_EGG_CLASS_MEDIUM, &eggs, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_false (stead_egg_substitute (7, STEAD_EGG_CLASS_MEDIUM, &eggs, NULL));
  g_assert_false (stead_egg_substitute (3, STEAD_EGG_CLASS_PEEWEE, &eggs, NULL));
  g_assert_cmpint (eggs, ==, -1);
}

/* Weight of a large egg without shell, breakdown; kitchen conversion chart (read). */
static void
test_liquid (void)
{
  g_assert_cmpfloat_with_epsilon (STEAD_EGG_LARGE_LIQUID_G / 28.349523125, 1.76, 0.01);
  g_assert_cmpfloat_with_epsilon (stead_egg_per_cups (1), 4.86, 0.005);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/pen-animals/ewe-water", test_ewe_water);
  g_test_add_func ("/core/pen-animals/ewe-between", test_ewe_between);
  g_test_add_func ("/core/pen-animals/goat-water", test_goat_water);
  g_test_add_func ("/core/pen-animals/hay", test_hay);
  g_test_add_func ("/core/egg-kitchen/substitute", test_substitute);
  g_test_add_func ("/core/egg-kitchen/liquid", test_liquid);
  return g_test_run ();
}

/* test-nutrient.c - doses of fertilizer, against published ones. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-nutrient-answer.h"

#include <math.h>
#include <string.h>

#define GALLON_L 3.785411784
#define OUNCE_G 28.349523125

/* How to mix a concentrate for an injector, example 1 (husbandry hu-331, derived): a stock
 * of 20,000 thinned to 200 in 1,000 L takes 10 L: 1:100.  Here a label of 1:100 that adds
 * 200 µS/cm to pure water. */
static void
test_thin (void)
{
  SteadStockNumbers numbers = { 1000, 0, 200, 100, 200 };
  g_autoptr(SteadNutrientDose) dose = stead_nutrient_thin (&numbers, STEAD_UNITS_METRIC, NULL);
  g_autoptr(SteadNutrientDose) half = NULL, gallons = NULL;

  g_assert_nonnull (dose);
  g_assert_cmpfloat_with_epsilon (dose->amount, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (dose->parts, 100, 1e-9);
  NUMBERS_ARE (dose->sentence, 10, 100, 200);
  NUMBERS_ARE (dose->why->worked, 1000, 200, 0, 100, 200, 10);
  g_assert_nonnull (dose->caution);

  /* Half of the rise takes half of the stock. */
  numbers.now_us = 100;
  half = stead_nutrient_thin (&numbers, STEAD_UNITS_METRIC, NULL);
  g_assert_cmpfloat_with_epsilon (half->amount, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (half->parts, 200, 1e-9);

  /* 50 gallons at 1:100 take half a gallon: 1.89 L, 64 fl oz. */
  numbers = (SteadStockNumbers) { 50 * GALLON_L, 300, 2100, 100, 1800 };
  gallons = stead_nutrient_thin (&numbers, STEAD_UNITS_US, NULL);
  g_assert_cmpfloat_with_epsilon (gallons->amount, GALLON_L / 2, 1e-9);
  NUMBERS_ARE (gallons->sentence, 1.89, 64, 100, 2100);
}

static void
assert_refused (const SteadStockNumbers *numbers)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_nutrient_thin (numbers, STEAD_UNITS_US, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
}

static void
test_thin_refused (void)
{
  const SteadStockNumbers wrong[] = {
    { NAN, 300, 2000, 100, 1800 }, { 0, 300, 2000, 100, 1800 }, { 100, NAN, 2000, 100, 1800 },
    { 100, 300, NAN, 100, 1800 }, { 100, -1, 2000, 100, 1800 }, { 100, 300, 2000000, 100, 1800 },
    { 100, 300, 2000, NAN, 1800 }, { 100, 300, 2000, 0, 1800 }, { 100, 300, 2000, 100, 0 },
    { 100, 300, 2000, 100, NAN },
    { 100, 300, 20000, 1, 1800 },      /* weaker than what is wanted */
  };
  const SteadStockNumbers strong = { 100, 2000, 2000, 100, 1800 };
  g_autoptr(SteadNutrientDose) none = stead_nutrient_thin (&strong, STEAD_UNITS_US, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_test_message ("row %zu", i);
      assert_refused (&wrong[i]);
    }
  g_assert_true (none->amount == 0 && isnan (none->parts));
}

/* University of Massachusetts, Fertilizer calculations for greenhouse crops, introduction
 * (hu-322, hu-323, read), and How to mix a concentrate for an injector, bag chart and
 * examples 1 and 2 (hu-326 to hu-329, read): ounces. */
static void
test_weigh (void)
{
  static const struct
  {
    SteadBagNumbers numbers;
    double          oz;
  } table[] = {
    { { 200, 0.20, 100 * GALLON_L, 1 }, 13.5 },
    { { 200, 0.15, 100 * GALLON_L, 1 }, 18 },
    { { 200, 0.15, GALLON_L, 100 }, 18 },
    { { 225, 0.15, GALLON_L, 100 }, 20.25 },
    { { 200, 0.15, 5 * GALLON_L, 100 }, 90 },
    { { 200, 0.15, GALLON_L, 15 }, 2.7 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_autoptr(SteadNutrientDose) dose = stead_nutrient_weigh (&table[i].numbers, STEAD_UNITS_US, NULL);

      g_test_message ("row %zu", i);
      g_assert_cmpfloat_with_epsilon (dose->amount / OUNCE_G, table[i].oz, 0.02 * table[i].oz);
      g_assert_nonnull (dose->caution);
    }
}

static void
test_weigh_words (void)
{
  const SteadBagNumbers plain = { 200, 0.20, 100, 1 }, injected = { 200, 0.20, 10, 100 };
  g_autoptr(SteadNutrientDose) straight = stead_nutrient_weigh (&plain, STEAD_UNITS_METRIC, NULL);
  g_autoptr(SteadNutrientDose) stock = stead_nutrient_weigh (&injected, STEAD_UNITS_METRIC, NULL);

  /* 200 mg/L × 100 L ÷ 0.20 = 100 g; of 10 L behind 1:100 ten times as much. */
  NUMBERS_ARE (straight->sentence, 100, 200);
  NUMBERS_ARE (stock->sentence, 1, 1, 100, 200);
  NUMBERS_ARE (straight->why->worked, 200, 100, 1, 1000, 20, 100);
}

static void
test_weigh_refused (void)
{
  const SteadBagNumbers wrong[] = {
    { NAN, 0.2, 100, 1 }, { 0, 0.2, 100, 1 }, { 200, 0, 100, 1 }, { 200, 1.2, 100, 1 }, { 200, NAN, 100, 1 },
    { 200, 0.2, 0, 1 }, { 200, 0.2, NAN, 1 }, { 200, 0.2, 100, 0.5 }, { 200, 0.2, 100, NAN }, { 20000, 0.2, 100, 1 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr(GError) error = NULL;

      g_test_message ("row %zu", i);
      g_assert_null (stead_nutrient_weigh (&wrong[i], STEAD_UNITS_US, &error));
      g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_INPUT);
    }
}

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/nutrient/thin", test_thin);
  g_test_add_func ("/answer/nutrient/thin-refused", test_thin_refused);
  g_test_add_func ("/answer/nutrient/weigh", test_weigh);
  g_test_add_func ("/answer/nutrient/weigh-words", test_weigh_words);
  g_test_add_func ("/answer/nutrient/weigh-refused", test_weigh_refused);
  return g_test_run ();
}

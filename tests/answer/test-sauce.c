/* test-sauce.c - what kind of food a sauce is, and what the tables say of its jars.
 *
 * Kinds: 21 CFR 114.3 and FDA Food Code 2022, §1-201.10(B).  Times, headspace, acid and
 * pounds: USDA Complete Guide to Home Canning, Guide 3 (Standard Tomato Sauce, Table 1
 * and Quantity; acidification; Spaghetti Sauce without Meat, Tables 1 and 2).
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-limits.h"
#include "answer/stead-sauce-answer.h"

#include <math.h>
#include <string.h>

#define FOOT_M 0.3048
#define LB 0.45359237

typedef struct
{
  SteadKept     kept;
  gboolean      sealed, acid_added, tomato;
  double        ph, aw;
  SteadFoodKind kind;
} Row;

static void
test_kinds (void)
{
  static const Row rows[] = {
    { STEAD_KEPT_COLD, FALSE, FALSE, TRUE, NAN, NAN, STEAD_FOOD_COLD },
    { STEAD_KEPT_COLD, TRUE, TRUE, TRUE, 4.9, NAN, STEAD_FOOD_COLD },
    { STEAD_KEPT_HOT, FALSE, FALSE, FALSE, NAN, NAN, STEAD_FOOD_HOT },
    { STEAD_KEPT_FROZEN, TRUE, FALSE, FALSE, NAN, NAN, STEAD_FOOD_FROZEN },
    /* Acid added, and 4.6 or lower: acidified; not rounded. */
    { STEAD_KEPT_ROOM, TRUE, TRUE, FALSE, 4.6, NAN, STEAD_FOOD_ACIDIFIED },
    { STEAD_KEPT_ROOM, TRUE, TRUE, TRUE, 4.1, NAN, STEAD_FOOD_ACIDIFIED },
    { STEAD_KEPT_ROOM, TRUE, TRUE, FALSE, 4.61, NAN, STEAD_FOOD_NOT_SEALED },
    /* Tomatoes without added acid are not low-acid below 4.7; other food at 4.6. */
    { STEAD_KEPT_ROOM, TRUE, FALSE, TRUE, 4.65, NAN, STEAD_FOOD_ACID },
    { STEAD_KEPT_ROOM, TRUE, FALSE, TRUE, 4.7, NAN, STEAD_FOOD_NOT_SEALED },
    { STEAD_KEPT_ROOM, TRUE, FALSE, FALSE, 4.65, NAN, STEAD_FOOD_NOT_SEALED },
    { STEAD_KEPT_ROOM, TRUE, FALSE, FALSE, 3.5, NAN, STEAD_FOOD_ACID },
    { STEAD_KEPT_ROOM, TRUE, TRUE, FALSE, NAN, NAN, STEAD_FOOD_UNKNOWN },
    /* The rule holds above a water activity of 0.85. */
    { STEAD_KEPT_ROOM, TRUE, FALSE, FALSE, NAN, 0.85, STEAD_FOOD_DRY },
    /* Open, table B: a pH below 4.2 alone is enough, as is a water activity below 0.88. */
    { STEAD_KEPT_ROOM, FALSE, FALSE, FALSE, 4.0, NAN, STEAD_FOOD_SHELF },
    { STEAD_KEPT_ROOM, FALSE, FALSE, FALSE, 5.5, 0.95, STEAD_FOOD_HOLD },
  };
  const SteadFarm farm = { .units = STEAD_UNITS_US };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
      g_autoptr(SteadSauceAnswer) answer = NULL;

      recipe->kept = rows[i].kept;
      recipe->sealed = rows[i].sealed;
      recipe->acid_added = rows[i].acid_added;
      recipe->tomato = rows[i].tomato;
      recipe->ph = rows[i].ph;
      recipe->aw = rows[i].aw;
      answer = stead_sauce_answer_new (recipe, &farm);
      g_test_message ("row %u", (guint) i);
      g_assert_cmpint (answer->kind, ==, rows[i].kind);
      g_assert_nonnull (answer->sentence);
      /* Without a published process there is no time. */
      g_assert_true (isnan (answer->process_min));
    }
}

typedef struct
{
  const char *jar;
  double      feet, minutes;
} Time;

static SteadSauceAnswer *
tomato_sauce (const char *process,
              const char *jar,
              double      feet)
{
  const SteadFarm farm = { .units = STEAD_UNITS_US, .elevation_m = feet * FOOT_M };
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();

  recipe->kept = STEAD_KEPT_ROOM;
  recipe->sealed = recipe->tomato = recipe->acid_added = TRUE;
  recipe->ph = 4.2;
  recipe->ph_on = 20000;
  recipe->jar = g_strdup (jar);
  recipe->process = g_strdup (process);
  return stead_sauce_answer_new (recipe, &farm);
}

static gboolean
says (const SteadSauceAnswer *answer,
      const char             *words)
{
  for (guint i = 0; i < answer->notes->len; i++)
    if (strstr (answer->notes->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_times (void)
{
  static const Time times[] = {
    { "pint", 500, 35 }, { "pint", 2000, 40 }, { "pint", 6000, 45 }, { "pint", 6500, 50 },
    { "quart", 500, 40 }, { "quart", 3000, 45 }, { "quart", 3500, 50 }, { "quart", 9000, 55 },
  };
  g_autoptr(SteadSauceAnswer) odd = tomato_sauce ("grandmother's sauce", "pint", 500);
  g_autoptr(SteadSauceAnswer) spaghetti = tomato_sauce ("spaghetti_sauce_without_meat", "pint", 3000);

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      g_autoptr(SteadSauceAnswer) answer = tomato_sauce ("standard_tomato_sauce", times[i].jar, times[i].feet);
      double jars = g_str_equal (times[i].jar, "pint") ? 2 : 1;

      g_assert_cmpfloat (answer->process_min, ==, times[i].minutes);
      g_assert_cmpfloat (answer->headspace_in, ==, 0.25);
      g_assert_cmpfloat_with_epsilon (answer->tomatoes_kg, 5 * LB / jars, 1e-9);
      g_assert_cmpfloat_with_epsilon (answer->tomatoes_thick_kg, 6.5 * LB / jars, 1e-9);
      if (farm_in_english ())
        {
          g_assert_true (says (answer, "not for sale"));
          g_assert_true (says (answer, "process authority must approve"));
          g_assert_true (says (answer, jars == 2 ? "1 tbsp of bottled lemon juice" : "2 tbsp of bottled lemon juice"));
        }
    }
  /* No table, no time: it is said. */
  g_assert_true (isnan (odd->process_min));
  g_assert_true (isnan (spaghetti->process_min));
  if (!farm_in_english ())
    return;
  g_assert_true (says (odd, "No published time fits"));
  g_assert_true (says (spaghetti, "20 minutes at 12 pounds on a dial gauge, or 15 on a weighted gauge"));
}

static void
test_limits (void)
{
  const SteadLimit *egg = stead_limit_table_by_id (stead_limits_get (), "cook-egg-held-155");
  g_autofree char *text = stead_limits_text (egg);
  g_autofree char *source = stead_limits_source (egg);

  NUMBERS_ARE (text, 155, 17);
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, "at least 155 °F for 17 s");
  g_assert_cmpstr (source, ==, "FDA Food Code 2022, §3-401.11(A)(2)");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/sauce/acidity-and-water-decide", test_kinds);
  g_test_add_func ("/answer/sauce/times-are-published-or-there-are-none", test_times);
  g_test_add_func ("/answer/sauce/limits-come-with-their-source", test_limits);
  return g_test_run ();
}

/* test-recipe.c - what a recipe costs, holds and lacks.
 *
 * The egg bake for 50 of the foodservice study text (supplement, p. 597): lines of
 * $7.17, $16.80, $28.13 and $0.81, $52.91 in all, $1.06 a portion.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-measures.h"
#include "answer/stead-question.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-recipe-list.h"
#include "answer/stead-words.h"

#include <math.h>
#include <string.h>

#define LB 0.45359237
#define GALLON_L 3.785411784

typedef struct
{
  Farm   farm;
  gint64 spinach, cheese, eggs, milk, bake, recipe;
} Kitchen;

static gint64
new_item (Kitchen       *kitchen,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit,
          const char    *allergens)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN,
                     .allergens = (char *) allergens };

  FARM_DO (&kitchen->farm, stead_item_repo_save (kitchen->farm.store, &item, &farm_error));
  return item.id;
}

static void
add_part (SteadRecipe *recipe,
          gint64       item_id,
          double       amount,
          const char  *unit)
{
  SteadRecipePart *part = stead_recipe_part_new ();

  part->item_id = item_id;
  part->amount = amount;
  part->unit = stead_unit_by_id (unit);
  g_ptr_array_add (recipe->parts, part);
}

static void
set_up (Kitchen       *kitchen,
        gconstpointer  data)
{
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();

  farm_set_up (&kitchen->farm, data);
  kitchen->spinach = new_item (kitchen, "Spinach", STEAD_ITEM_INGREDIENT, "lb", NULL);
  kitchen->cheese = new_item (kitchen, "Cheese", STEAD_ITEM_INGREDIENT, "lb", "milk");
  kitchen->eggs = new_item (kitchen, "Fresh eggs", STEAD_ITEM_PRODUCE, "ea", "egg");
  kitchen->milk = new_item (kitchen, "Milk", STEAD_ITEM_INGREDIENT, "gal", "Milk ; egg");
  kitchen->bake = new_item (kitchen, "Egg bake", STEAD_ITEM_PRODUCE, "ea", NULL);
  recipe->name = g_strdup ("Egg bake for 50");
  recipe->item_id = kitchen->bake;
  recipe->yield_base = 50;
  recipe->minutes = 90;
  add_part (recipe, kitchen->spinach, 4.625, "lb");
  add_part (recipe, kitchen->cheese, 3, "lb");
  add_part (recipe, kitchen->eggs, 75, "ea");
  add_part (recipe, kitchen->milk, 3, "cup");
  FARM_DO (&kitchen->farm, stead_recipe_repo_save (kitchen->farm.store, recipe, &farm_error));
  kitchen->recipe = recipe->id;
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_tear_down (&kitchen->farm, data);
}

/* As the text prices them: $1.55 and $5.60 a pound, $4.50 a dozen, $4.30 a gallon. */
static void
buy (Kitchen *kitchen)
{
  Farm *farm = &kitchen->farm;

  farm_buy (farm, farm->today - 3, kitchen->spinach, 10 * LB, 1550, FALSE);
  farm_buy (farm, farm->today - 3, kitchen->cheese, 10 * LB, 5600, FALSE);
  farm_buy (farm, farm->today - 2, kitchen->eggs, 120, 4500, FALSE);
  farm_buy (farm, farm->today - 1, kitchen->milk, GALLON_L, 430, FALSE);
}

static void
test_cost (Kitchen       *kitchen,
           gconstpointer  data)
{
  static const gint64 cents[] = { 717, 1680, 2813, 81 };
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  g_autofree char *plain = NULL;

  buy (kitchen);
  answer = stead_recipe_answer_new (kitchen->farm.store, kitchen->recipe, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (answer->lines->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpint (((SteadRecipeLine *) answer->lines->pdata[i])->cents, ==, cents[i]);
  g_assert_cmpint (answer->cents, ==, 5291);
  g_assert_cmpfloat_with_epsilon (answer->unit_cents, 106, 0.5);
  g_assert_true (answer->all_priced);
  g_assert_cmpstr (answer->dearest->name, ==, "Fresh eggs");
  g_assert_true (isnan (answer->price_cents));
  plain = stead_words_plain (answer->sentence);
  /* 28.13 of 52.91 are 53 percent. */
  NUMBERS_ARE (plain, 1.06, 28.13, 50, 53, 90);
  if (farm_in_english ())
    g_assert_cmpstr (plain, ==, "One “Egg bake” costs $1.06 at today's prices. The dearest ingredient is Fresh eggs: "
                                "$28.13 for 50, which is 53% of it. It takes 90 minutes of work.");
}

/* The lines, their sum and one portion, as worked out above; eggs are there for 80 of 50. */
static void
test_whys (Kitchen       *kitchen,
           gconstpointer  data)
{
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  buy (kitchen);
  answer = stead_recipe_answer_new (kitchen->farm.store, kitchen->recipe, 0, NULL);
  whys = stead_recipe_answer_whys (answer);
  /* It has no price yet, so an hour of work has none. */
  g_assert_cmpuint (whys->len, ==, 2);
  g_assert_nonnull (strstr (((SteadWhy *) whys->pdata[0])->worked, "$7.17 + $16.80 + $28.13 + $0.81 = $52.91"));
  g_assert_nonnull (strstr (((SteadWhy *) whys->pdata[0])->worked, "$52.91 ÷ 50 = $1.06"));
  /* 120 of 75 eggs. */
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 160, 50, 80);
}

/* Twice as many want 150 eggs; 120 are there, and make 80. */
static void
test_stock (Kitchen       *kitchen,
            gconstpointer  data)
{
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *plain = NULL;
  const char *needs;

  buy (kitchen);
  answer = stead_recipe_answer_new (kitchen->farm.store, kitchen->recipe, 100, NULL);
  whys = stead_recipe_answer_stock_whys (answer);
  g_assert_cmpuint (whys->len, ==, 2);
  needs = farm_find_why (whys, "What is needed, and what is missing")->worked;
  g_assert_true (g_str_has_prefix (needs, "100 ÷ 50 = 2\n"));
  if (farm_in_english ())
    g_assert_nonnull (strstr (needs, "\nFresh eggs: 150 needed, 120 on hand"));
  /* 120 of 150 eggs. */
  NUMBERS_ARE (farm_find_why (whys, "How much can be made")->worked, 80, 100, 80);
  g_assert_cmpfloat_with_epsilon (answer->factor, 2, 1e-12);
  g_assert_cmpfloat (answer->makes_base, ==, 80);
  g_assert_cmpstr (answer->limiting->name, ==, "Fresh eggs");
  g_assert_cmpfloat (answer->limiting->missing_base, ==, 30);
  plain = stead_words_plain (answer->stock_text);
  NUMBERS_ARE (plain, 100, 30, 80);
  if (farm_in_english ())
    g_assert_cmpstr (plain, ==, "For 100 the store room lacks 30 Fresh eggs. What is there makes 80; the first to run out "
                                "is Fresh eggs.");
}

/* No 1.5 egg: one portion asks for two, and the nearest whole recipe is said. */
static void
test_whole (Kitchen       *kitchen,
            gconstpointer  data)
{
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  const SteadRecipeLine *line;

  buy (kitchen);
  answer = stead_recipe_answer_new (kitchen->farm.store, kitchen->recipe, 1, NULL);
  line = answer->lines->pdata[2];
  g_assert_cmpstr (line->amount, ==, "2");
  g_assert_cmpfloat_with_epsilon (line->effect, 2 / 1.5, 1e-9);
  NUMBERS_ARE (line->rounding, 2, 1.5);
  g_assert_cmpfloat_with_epsilon (answer->whole_factor, 2.0 / 75, 1e-12);
  /* 3 cups / 50 are 0.96 tablespoons. */
  line = answer->lines->pdata[3];
  if (farm_in_english ())
    g_assert_cmpstr (line->amount, ==, "1 tbsp");
}

static void
test_allergens (Kitchen       *kitchen,
                gconstpointer  data)
{
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  g_autoptr(SteadRecipe) plate = stead_recipe_new ();
  gint64 bread = new_item (kitchen, "Bread", STEAD_ITEM_INGREDIENT, "lb", "wheat");

  /* The plate takes a bake out of the store room: what went into that counts. */
  plate->name = g_strdup ("Plate");
  plate->item_id = new_item (kitchen, "Plate", STEAD_ITEM_PRODUCE, "ea", NULL);
  plate->yield_base = 1;
  add_part (plate, kitchen->bake, 1, "ea");
  add_part (plate, bread, 2, "oz");
  FARM_DO (&kitchen->farm, stead_recipe_repo_save (kitchen->farm.store, plate, &farm_error));
  answer = stead_recipe_answer_new (kitchen->farm.store, plate->id, 0, NULL);
  g_assert_cmpuint (answer->allergens->len, ==, 3);
  g_assert_cmpstr (answer->allergens->pdata[0], ==, "egg");
  g_assert_cmpstr (answer->allergens->pdata[1], ==, "milk");
  g_assert_cmpstr (answer->allergens->pdata[2], ==, "wheat");
  g_assert_false (answer->all_priced);
  g_assert_null (answer->dearest);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (answer->allergen_text, ==, "Contains egg, milk and wheat.");
  g_assert_nonnull (strstr (answer->caution, "not written down for: Spinach."));
  g_assert_nonnull (strstr (answer->caution, "No price is known yet for: Egg bake and Bread."));
  g_assert_nonnull (strstr (answer->stock_text, "there is not enough Egg bake"));
}

static void
test_question (Kitchen       *kitchen,
               gconstpointer  data)
{
  g_autofree char *sentence = NULL;
  g_autoptr(JsonNode) figures = NULL;
  g_autoptr(GError) error = NULL;
  JsonObject *object;

  buy (kitchen);
  g_assert_true (stead_question_ask (kitchen->farm.store, "recipe", "egg bake FOR 50", &sentence, &figures, &error));
  g_assert_no_error (error);
  object = json_node_get_object (figures);
  g_assert_cmpint (json_object_get_int_member (object, "cost_cents"), ==, 5291);
  g_assert_cmpstr (json_object_get_string_member (object, "dearest"), ==, "Fresh eggs");
  g_assert_false (stead_question_ask (kitchen->farm.store, "recipe", "Stew", &sentence, &figures, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_UNKNOWN);
}

/* The list and the answer tell one figure; what has no price says so. */
static void
test_list (Kitchen       *kitchen,
           gconstpointer  data)
{
  g_autoptr(GPtrArray) before = stead_recipe_list_new (kitchen->farm.store, FALSE, NULL);
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(SteadRecipeAnswer) answer = NULL;
  const SteadRecipeCost *cost = before->pdata[0];

  g_assert_cmpuint (before->len, ==, 1);
  g_assert_cmpstr (cost->cost, ==, "–");
  g_assert_false (cost->all_priced);
  buy (kitchen);
  list = stead_recipe_list_new (kitchen->farm.store, FALSE, NULL);
  answer = stead_recipe_answer_new (kitchen->farm.store, kitchen->recipe, 0, NULL);
  cost = list->pdata[0];
  g_assert_cmpstr (cost->cost, ==, "$1.06");
  g_assert_true (cost->all_priced);
  g_assert_cmpfloat_with_epsilon (cost->unit_cents, answer->unit_cents, 1e-9);
  g_assert_cmpstr (cost->recipe->name, ==, "Egg bake for 50");
}

static void
test_measures (void)
{
  g_autoptr(SteadFoodMeasure) flour = stead_measures_find (" Flour ");
  g_autoptr(SteadFoodMeasure) harina = stead_measures_find ("Harina");
  g_autoptr(SteadFoodMeasure) pears = stead_measures_find ("pears");

  /* A cup is a sixteenth of a gallon; flour 125 g (USDA FoodData Central, from memory). */
  g_assert_cmpfloat_with_epsilon (flour->density_kg_l, 0.125 * 16 / GALLON_L, 1e-9);
  g_assert_cmpfloat (flour->density_kg_l, ==, harina->density_kg_l);
  g_assert_nonnull (strstr (flour->density_source, "USDA FoodData Central"));
  g_assert_true (isnan (flour->piece_kg) && flour->piece_source == NULL);
  /* Bakery and Business Math, chapter 25. */
  g_assert_cmpfloat (pears->yield_frac, ==, 0.78);
  g_assert_nonnull (strstr (pears->yield_source, "Bakery and Business Math"));
  g_assert_null (stead_measures_find ("Layer feed"));
}

#define CASE(name, function) g_test_add ("/answer/recipe/" name, Kitchen, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("costs-what-the-study-text-works-out", test_cost);
  CASE ("shows-how-it-comes-about", test_whys);
  CASE ("says-what-is-missing-and-what-runs-out", test_stock);
  CASE ("scales-to-whole-eggs-and-spoons", test_whole);
  CASE ("gathers-allergens-through-recipes", test_allergens);
  CASE ("is-listed-with-its-cost", test_list);
  CASE ("is-asked-by-name", test_question);
  g_test_add_func ("/answer/recipe/offers-common-measures-with-their-source", test_measures);
  return g_test_run ();
}

/* test-cost-kitchen.c - what one unit costs of what the kitchen makes.
 *
 * The egg bake for 50 of the foodservice study text (supplement, p. 597): lines of
 * $7.17, $16.80, $28.13 and $0.81, $52.91 in all, $1.06 a portion.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-cost-answer.h"
#include "core/stead-money.h"
#include "store/stead-kitchen-repo.h"

#include <math.h>
#include <string.h>

#define LB 0.45359237
#define GALLON_L 3.785411784

typedef struct
{
  Farm   farm;
  gint64 spinach, cheese, eggs, milk, bake, recipe, product;
} Kitchen;

static gint64
new_item (Kitchen       *kitchen,
          const char    *name,
          SteadItemKind  kind,
          const char    *unit)
{
  SteadItem item = { .name = (char *) name, .kind = kind, .unit = stead_unit_by_id (unit), .reorder_base = NAN };

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
  g_autoptr(SteadProduct) product = stead_product_new ();
  Farm *farm = &kitchen->farm;

  farm_set_up (farm, data);
  kitchen->spinach = new_item (kitchen, "Spinach", STEAD_ITEM_INGREDIENT, "lb");
  kitchen->cheese = new_item (kitchen, "Cheese", STEAD_ITEM_INGREDIENT, "lb");
  kitchen->eggs = new_item (kitchen, "Fresh eggs", STEAD_ITEM_PRODUCE, "ea");
  kitchen->milk = new_item (kitchen, "Milk", STEAD_ITEM_INGREDIENT, "gal");
  kitchen->bake = new_item (kitchen, "Egg bake", STEAD_ITEM_PRODUCE, "ea");
  recipe->name = g_strdup ("Egg bake for 50");
  recipe->item_id = kitchen->bake;
  recipe->yield_base = 50;
  recipe->minutes = 90;
  add_part (recipe, kitchen->spinach, 4.625, "lb");
  add_part (recipe, kitchen->cheese, 3, "lb");
  add_part (recipe, kitchen->eggs, 75, "ea");
  add_part (recipe, kitchen->milk, 3, "cup");
  FARM_DO (farm, stead_recipe_repo_save (farm->store, recipe, &farm_error));
  kitchen->recipe = recipe->id;
  product->name = g_strdup ("Egg bake, piece");
  product->pack = STEAD_PACK_PIECE;
  product->base_per_unit = 1;
  product->item_id = kitchen->bake;
  product->planned_units = 40;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  kitchen->product = product->id;
  farm_buy (farm, farm->today - 3, kitchen->spinach, 10 * LB, 1550, FALSE);
  farm_buy (farm, farm->today - 3, kitchen->cheese, 10 * LB, 5600, FALSE);
  farm_buy (farm, farm->today - 3, kitchen->eggs, 120, 4500, FALSE);
  farm_buy (farm, farm->today - 3, kitchen->milk, GALLON_L, 430, FALSE);
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  farm_tear_down (&kitchen->farm, data);
}

static SteadCostAnswer *
ask (Kitchen *kitchen)
{
  g_autoptr(GError) error = NULL;
  SteadCostAnswer *answer = stead_cost_answer_new (kitchen->farm.store, kitchen->product, STEAD_PERIOD_12_WEEKS, &error);

  g_assert_no_error (error);
  return answer;
}

/* The entries of each part sum to the part, and the Why's last number is the shown one. */
static void
assert_sums (Kitchen               *kitchen,
             const SteadCostAnswer *answer)
{
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(GPtrArray) entries = stead_cost_answer_entries (kitchen->farm.store, answer, kind, &error);
      gint64 sum = 0;

      g_assert_no_error (error);
      for (guint i = 0; i < entries->len; i++)
        sum += ((const SteadCostEntry *) entries->pdata[i])->cents;
      g_assert_cmpint (sum, ==, stead_money_round (answer->sheet.parts[kind].total_cents));
      g_assert_true ((answer->whys[kind] != NULL) == (answer->sheet.parts[kind].total_cents > 0));
    }
}

static void
test_recipe (Kitchen       *kitchen,
             gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = ask (kitchen);
  g_autofree char *plain = stead_words_plain (answer->sentence);

  g_assert_cmpint (answer->kitchen->basis, ==, STEAD_KITCHEN_RECIPE);
  g_assert_cmpfloat (answer->sheet.parts[STEAD_COST_START].total_cents, ==, 5291);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 106);
  g_assert_cmpstr (stead_cost_answer_source (answer), ==, "Egg bake for 50");
  assert_sums (kitchen, answer);
  NUMBERS_ARE (plain, 1.06, 1.06);
  if (farm_in_english ())
    g_assert_cmpstr (plain, ==, "One piece costs us $1.06. The largest part is the ingredients, $1.06. "
                                "None was made in these days: this is the recipe at today's prices.");
}

static void
cook (Kitchen *kitchen,
      double   good,
      double   lost)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  gint64 id = 0;

  FARM_DO (farm, stead_kitchen_repo_plan (farm->store, kitchen->recipe, 50, farm->today, NULL, 0, &id, &farm_error));
  FARM_DO (farm, stead_kitchen_repo_take_proposed (farm->store, id, farm->today, 0, &farm_error));
  harvest->batch_id = id;
  harvest->day = farm->today;
  harvest->item_id = kitchen->bake;
  harvest->quantity_base = good;
  harvest->lost_base = lost;
  harvest->reason = lost > 0 ? g_strdup ("burnt") : NULL;
  FARM_DO (farm, stead_kitchen_repo_finish (farm->store, harvest, &farm_error));
}

/* Two pans are burnt: the good ones carry them.  5291 / 48 = 110.2. */
static void
test_cooked (Kitchen       *kitchen,
             gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  g_autofree char *plain = NULL;

  cook (kitchen, 48, 2);
  answer = ask (kitchen);
  g_assert_cmpint (answer->kitchen->basis, ==, STEAD_KITCHEN_COOKED);
  g_assert_cmpuint (answer->kitchen->runs->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (answer->sheet.parts[STEAD_COST_START].total_cents, 5291, 2);
  g_assert_cmpfloat (answer->sheet.made_units, ==, 50);
  g_assert_cmpfloat (answer->sheet.good_units, ==, 48);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 110);
  assert_sums (kitchen, answer);
  plain = stead_words_plain (answer->sentence);
  NUMBERS_ARE (plain, 1.10, 1.10, 1, 48);
}

/* What no recipe makes is sold as it came: $4.50 for a dozen eggs. */
static void
test_store (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autoptr(SteadCostAnswer) answer = NULL;

  product->name = g_strdup ("Bought eggs");
  product->item_id = kitchen->eggs;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  answer = stead_cost_answer_new (farm->store, product->id, STEAD_PERIOD_12_WEEKS, NULL);
  g_assert_cmpint (answer->kitchen->basis, ==, STEAD_KITCHEN_STORE);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 450);
  assert_sums (kitchen, answer);
}

/* A price that is not known is named, not counted as nothing. */
static void
test_missing (Kitchen       *kitchen,
              gconstpointer  data)
{
  Farm *farm = &kitchen->farm;
  g_autoptr(SteadRecipe) recipe = stead_recipe_repo_get (farm->store, kitchen->recipe, NULL);
  g_autoptr(SteadCostAnswer) answer = NULL;

  add_part (recipe, new_item (kitchen, "Nutmeg", STEAD_ITEM_INGREDIENT, "oz"), 1, "oz");
  FARM_DO (farm, stead_recipe_repo_save (farm->store, recipe, &farm_error));
  answer = ask (kitchen);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 106);
  g_assert_nonnull (answer->caution);
  g_assert_nonnull (strstr (answer->caution, "Nutmeg"));
}

#define CASE(name, func) \
  g_test_add ("/answer/cost-kitchen/" name, Kitchen, NULL, set_up, func, tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("recipe", test_recipe);
  CASE ("cooked", test_cooked);
  CASE ("store", test_store);
  CASE ("missing", test_missing);
  return g_test_run ();
}

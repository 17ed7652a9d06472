/* test-recipe-repo.c - recipes, what they come to, and what cannot be one. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-recipe-repo.h"

/* Kilograms and liters of the NIST definitions (Special Publication 811, appendix B). */
#define CUP_L (3.785411784 / 16)

typedef struct
{
  Farm        *farm;
  gint64       spinach, eggs, milk, bake;
  SteadRecipe *recipe;   /* the egg bake for 50 of the study text */
} Kitchen;

static SteadRecipePart *
add_part (SteadRecipe *recipe,
          gint64       item_id,
          gint64       sub_id,
          double       amount,
          const char  *unit)
{
  SteadRecipePart *part = stead_recipe_part_new ();

  part->item_id = item_id;
  part->sub_id = sub_id;
  part->amount = amount;
  part->unit = stead_unit_by_id (unit);
  g_ptr_array_add (recipe->parts, part);
  return part;
}

static SteadRecipeStep *
add_step (SteadRecipe *recipe,
          const char  *text)
{
  SteadRecipeStep *step = stead_recipe_step_new ();

  step->text = g_strdup (text);
  g_ptr_array_add (recipe->steps, step);
  return step;
}

static SteadRecipe *
new_recipe (const char *name,
            gint64      item_id,
            double      yield_base)
{
  SteadRecipe *recipe = stead_recipe_new ();

  recipe->name = g_strdup (name);
  recipe->item_id = item_id;
  recipe->yield_base = yield_base;
  return recipe;
}

static void
set_up (Kitchen       *kitchen,
        gconstpointer  data)
{
  Farm *farm = kitchen->farm = farm_new ();

  kitchen->spinach = farm_item (farm, "Spinach", STEAD_ITEM_INGREDIENT, "lb");
  kitchen->eggs = farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea");
  kitchen->milk = farm_item (farm, "Milk", STEAD_ITEM_INGREDIENT, "gal");
  kitchen->bake = farm_item (farm, "Egg bake", STEAD_ITEM_PRODUCE, "ea");
  kitchen->recipe = new_recipe ("Egg bake", kitchen->bake, 50);
  add_part (kitchen->recipe, kitchen->spinach, 0, 4.625, "lb");
  add_part (kitchen->recipe, kitchen->eggs, 0, 75, "ea");
  add_part (kitchen->recipe, kitchen->milk, 0, 3, "cup");
}

static void
tear_down (Kitchen       *kitchen,
           gconstpointer  data)
{
  stead_recipe_free (kitchen->recipe);
  farm_free (kitchen->farm);
}

static void
test_round_trip (Kitchen       *kitchen,
                 gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  SteadRecipe *recipe = kitchen->recipe;
  SteadRecipePart *part = recipe->parts->pdata[0];
  SteadRecipeStep *step = add_step (recipe, " Bake to 155 °F. ");
  g_autoptr(SteadRecipe) read = NULL;
  g_autoptr(GPtrArray) list = NULL;
  g_autoptr(GError) error = NULL;

  part->note = g_strdup (" washed ");
  part->yield_frac = 0.75;
  part->ready = FALSE;
  step->minutes = 45;
  step->step = g_strdup ("cook");
  step->food = g_strdup ("raw_egg");
  step->least_c = 70;
  step->hold_s = 15;
  recipe->minutes = 90;
  recipe->equipment = g_strdup ("Two pans");
  recipe->kept = STEAD_KEPT_HOT;
  recipe->ph = 6.4;
  recipe->ph_on = TODAY;
  recipe->aw = 0.98;
  recipe->tomato = TRUE;
  recipe->authority = g_strdup ("State process office, 12-345");
  recipe->authority_on = TODAY - 5;
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  read = stead_recipe_repo_get (farm->store, recipe->id, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (read->name, ==, "Egg bake");
  g_assert_cmpstr (read->item_name, ==, "Egg bake");
  g_assert_cmpfloat (read->yield_base, ==, 50);
  g_assert_cmpfloat (read->minutes, ==, 90);
  g_assert_cmpint (read->kept, ==, STEAD_KEPT_HOT);
  g_assert_cmpfloat (read->ph, ==, 6.4);
  g_assert_cmpint (read->ph_on, ==, TODAY);
  g_assert_cmpfloat (read->aw, ==, 0.98);
  g_assert_true (read->tomato && !read->sealed && !read->acid_added);
  g_assert_cmpint (read->authority_on, ==, TODAY - 5);
  g_assert_cmpuint (read->parts->len, ==, 3);
  part = read->parts->pdata[0];
  g_assert_cmpstr (part->name, ==, "Spinach");
  g_assert_cmpstr (part->note, ==, "washed");
  g_assert_cmpfloat (part->yield_frac, ==, 0.75);
  g_assert_false (part->ready);
  part = read->parts->pdata[2];
  g_assert_cmpstr (part->unit->id, ==, "cup");
  g_assert_true (isnan (part->yield_frac));
  step = read->steps->pdata[0];
  g_assert_cmpstr (step->text, ==, "Bake to 155 °F.");
  g_assert_cmpstr (step->food, ==, "raw_egg");
  g_assert_cmpfloat (step->least_c, ==, 70);
  g_assert_true (isnan (step->most_c));
  /* Parts are replaced, not added to. */
  g_ptr_array_set_size (read->parts, 1);
  g_ptr_array_set_size (read->steps, 0);
  ACT (farm, stead_recipe_repo_save (farm->store, read, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM recipe_part"), ==, 1);
  g_assert_cmpint (fixture_number (farm->store, "SELECT count (*) FROM recipe_step"), ==, 0);
  read->retired_on = TODAY;
  ACT (farm, stead_recipe_repo_save (farm->store, read, err));
  list = stead_recipe_repo_list (farm->store, FALSE, &error);
  g_assert_cmpuint (list->len, ==, 0);
  ACT (farm, stead_recipe_repo_delete (farm->store, recipe->id, err));
  farm_assert_undo (farm);
}

static double
need_of (Kitchen *kitchen,
         gint64   recipe_id,
         double   factor,
         guint    at)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (kitchen->farm->store, recipe_id, factor, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (needs->len, >, at);
  return ((const SteadRecipeNeed *) needs->pdata[at])->need_base;
}

/* Yield = usable / bought; buy = need / yield.  Pears of Bakery and Business Math,
 * chapter 25: 32 oz ready at a yield of 78 % are 41.03 oz bought. */
/* What nobody changed is no step to undo; a part less and a step more are one. */
static void
test_unread (Kitchen       *kitchen,
             gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autoptr(SteadRecipe) read = NULL;
  gint64 first;

  add_step (kitchen->recipe, "Wash the spinach.");
  ACT (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err));
  first = fixture_number (farm->store, "SELECT min (id) FROM recipe_part");
  read = stead_recipe_repo_get (farm->store, kitchen->recipe->id, NULL);
  ACT_FOR_NOTHING (farm, stead_recipe_repo_save (farm->store, read, err));
  g_ptr_array_remove_index (read->parts, 0);
  add_step (read, "Bake it.");
  ACT (farm, stead_recipe_repo_save (farm->store, read, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT min (id) FROM recipe_part"), ==, first);
  g_clear_pointer (&read, stead_recipe_free);
  read = stead_recipe_repo_get (farm->store, kitchen->recipe->id, NULL);
  g_assert_cmpuint (read->parts->len, ==, 2);
  g_assert_cmpint (((SteadRecipePart *) read->parts->pdata[0])->item_id, ==, kitchen->eggs);
  g_assert_cmpuint (read->steps->len, ==, 2);
  g_assert_cmpstr (((SteadRecipeStep *) read->steps->pdata[1])->text, ==, "Bake it.");
  farm_assert_undo (farm);
}

static void
test_needs (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 pears = farm_item (farm, "Pears", STEAD_ITEM_INGREDIENT, "lb");
  SteadRecipePart *part = add_part (kitchen->recipe, pears, 0, 32, "oz");
  gint64 id;

  part->yield_frac = 0.78;
  ACT (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err));
  id = kitchen->recipe->id;
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, id, 1, 0), 4.625 * LB, 1e-9);
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, id, 2, 1), 150, 1e-9);
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, id, 1, 2), 3 * CUP_L, 1e-9);
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, id, 1, 3) / LB * 16, 41.03, 0.005);
  part->ready = FALSE;
  ACT (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err));
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, id, 1, 3) / LB * 16, 32, 1e-9);
}

/* A recipe inside a recipe inside a recipe: a quarter of a half. */
static void
test_inside (Kitchen       *kitchen,
             gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  gint64 sauce_item = farm_item (farm, "Sauce", STEAD_ITEM_PRODUCE, "qt");
  g_autoptr(SteadRecipe) sauce = new_recipe ("Sauce", sauce_item, 8 * CUP_L);
  g_autoptr(SteadRecipe) plate = new_recipe ("Plate", farm_item (farm, "Plate", STEAD_ITEM_PRODUCE, "ea"), 1);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) inside = NULL;
  double minutes;

  /* Eight cups of sauce take half of an egg bake's fifty, which took 75 eggs. */
  kitchen->recipe->minutes = 60;
  ACT (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err));
  sauce->minutes = 20;
  add_part (sauce, 0, kitchen->recipe->id, 25, "ea");
  ACT (farm, stead_recipe_repo_save (farm->store, sauce, err));
  add_part (plate, 0, sauce->id, 2, "cup");
  add_part (plate, kitchen->eggs, 0, 1, "ea");
  ACT (farm, stead_recipe_repo_save (farm->store, plate, err));
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, plate->id, 1, 1), 75.0 / 2 / 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, plate->id, 1, 3), 1, 1e-9);
  g_assert_true (stead_recipe_repo_minutes (farm->store, plate->id, 4, &minutes, &error));
  g_assert_cmpfloat_with_epsilon (minutes, 20 + 30, 1e-9);
  inside = stead_recipe_repo_inside (farm->store, plate->id, &error);
  g_assert_cmpuint (inside->len, ==, 3);
  g_assert_cmpint (((SteadRecipe *) inside->pdata[0])->id, ==, plate->id);
  g_assert_cmpint (((SteadRecipe *) inside->pdata[2])->id, ==, kitchen->recipe->id);
  /* Closing the ring from the far end is refused, and the way is named. */
  add_part (kitchen->recipe, 0, plate->id, 1, "ea");
  INVALID (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err), "Plate → Sauce → Egg bake");
  g_ptr_array_set_size (kitchen->recipe->parts, 3);
  add_part (kitchen->recipe, 0, kitchen->recipe->id, 1, "ea");
  INVALID (farm, stead_recipe_repo_save (farm->store, kitchen->recipe, err), "contain itself");
  INVALID (farm, stead_recipe_repo_delete (farm->store, sauce->id, err), "ingredient of 1 recipe");
  INVALID (farm, stead_item_repo_delete (farm->store, sauce_item, err), "1 recipe");
}

static void
test_refusals (Kitchen       *kitchen,
               gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  SteadRecipe *recipe = kitchen->recipe;
  gint64 flour = farm_item (farm, "Flour", STEAD_ITEM_INGREDIENT, "lb");
  g_autoptr(SteadItem) item = NULL;
  SteadRecipePart *part;

#define BAD(words) INVALID (farm, stead_recipe_repo_save (farm->store, recipe, err), words)
  recipe->yield_base = 0;
  BAD ("above zero");
  recipe->yield_base = NAN;
  BAD ("above zero");
  recipe->yield_base = 50;
  recipe->item_id = 0;
  BAD ("Choose what the recipe makes");
  recipe->item_id = kitchen->milk;
  BAD ("is bought");
  recipe->item_id = kitchen->bake;
  recipe->ph = 4.2;
  BAD ("day on which the pH");
  recipe->ph = 15;
  BAD ("between 0 and 14");
  recipe->ph = NAN;
  recipe->minutes = -1;
  BAD ("minutes of work");
  recipe->minutes = 0;
  part = recipe->parts->pdata[0];
  part->amount = 0;
  BAD ("Spinach");
  part->amount = 1;
  part->yield_frac = 0;
  BAD ("trimming");
  part->yield_frac = NAN;
  /* Cups of what is kept by weight ask for the weight of a cup. */
  part = add_part (recipe, flour, 0, 2, "cup");
  BAD ("What a cup of “Flour” weighs");
  part->unit = stead_unit_by_id ("ea");
  BAD ("one piece of “Flour”");
  part->unit = stead_unit_by_id ("ft");
  BAD ("does not measure");
  part->unit = stead_unit_by_id ("cup");
  item = stead_item_repo_get (farm->store, flour, NULL);
  item->density_kg_l = 0.125 / CUP_L;
  item->measure_source = g_strdup ("weighed in class");
  ACT (farm, stead_item_repo_save (farm->store, item, err));
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
  g_assert_cmpfloat_with_epsilon (need_of (kitchen, recipe->id, 1, 3), 0.25, 1e-9);
  g_ptr_array_set_size (recipe->parts, 0);
  BAD ("at least one ingredient");
  add_part (recipe, kitchen->eggs, 0, 1, "ea");
  add_step (recipe, "  ");
  BAD ("each step");
#undef BAD
}

#define SLIP(place, wrong, words) \
  G_STMT_START { \
    typeof (place) was = place; \
    place = (wrong); \
    INVALID (farm, stead_recipe_repo_save (farm->store, recipe, err), words); \
    place = was; \
  } G_STMT_END

/* What lies just outside of what can be; each is told by its own sentence. */
static void
test_slips (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  SteadRecipe *recipe = kitchen->recipe;
  SteadRecipePart *part = recipe->parts->pdata[0];
  SteadRecipeStep *step = add_step (recipe, "Bake to 165 °F");

  SLIP (recipe->minutes, 14401, "minutes of work");
  SLIP (recipe->minutes, NAN, "minutes of work");
  SLIP (recipe->yield_base, 1e10, "how much the recipe makes");
  SLIP (recipe->ph, -0.1, "between 0 and 14");
  SLIP (recipe->aw, 1.1, "water activity");
  SLIP (recipe->aw, -0.1, "water activity");
  SLIP (recipe->authority, (char *) "Extension office", "day on which the process");
  SLIP (part->amount, 1e10, "how much of");
  SLIP (part->yield_frac, 1.1, "trimming");
  SLIP (part->sub_id, 4711, "what each ingredient is");
  SLIP (part->item_id, 0, "what each ingredient is");
  SLIP (step->minutes, -1, "ten days");
  SLIP (step->minutes, 14401, "ten days");
  SLIP (step->least_c, -61, "temperatures of the step “Bake to 165 °F”");
  SLIP (step->least_c, 301, "temperatures of the step");
  SLIP (step->most_c, -61, "temperatures of the step");
  SLIP (step->most_c, 301, "temperatures of the step");
  SLIP (step->hold_s, -1, "how long the temperature");
  SLIP (step->hold_s, 14400 * 60.0 + 1, "how long the temperature");
  step->least_c = 80;
  SLIP (step->most_c, 74, "temperatures of the step");
  step->least_c = 74;
  step->most_c = 74;
  step->hold_s = 15;
  ACT (farm, stead_recipe_repo_save (farm->store, recipe, err));
}

/* What the item bears is kept, and what makes no sense is refused. */
static void
test_item (Kitchen       *kitchen,
           gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autoptr(SteadItem) item = stead_item_repo_get (farm->store, kitchen->eggs, NULL);
  g_autoptr(SteadItem) again = NULL;

  g_assert_true (isnan (item->density_kg_l) && isnan (item->piece_kg));
  g_assert_cmpfloat (item->yield_frac, ==, 1);
  item->piece_kg = 0.05;
  item->yield_frac = 0.88;
  item->food = g_strdup ("raw_shell_eggs");
  item->label_name = g_strdup ("Whole eggs");
  ACT (farm, stead_item_repo_save (farm->store, item, err));
  again = stead_item_repo_get (farm->store, kitchen->eggs, NULL);
  g_assert_cmpfloat (again->piece_kg, ==, 0.05);
  g_assert_cmpfloat (again->yield_frac, ==, 0.88);
  g_assert_cmpstr (again->food, ==, "raw_shell_eggs");
  g_assert_cmpstr (again->label_name, ==, "Whole eggs");
  again->density_kg_l = 90;
  INVALID (farm, stead_item_repo_save (farm->store, again, err), "for its size");
  again->density_kg_l = NAN;
  again->yield_frac = 1.2;
  INVALID (farm, stead_item_repo_save (farm->store, again, err), "trimming");
  again->yield_frac = 1;
  again->piece_kg = -1;
  INVALID (farm, stead_item_repo_save (farm->store, again, err), "weight of a piece");
}

/* Sold as a product: $6.00 for a pack of four is $1.50 for one, from its first day on. */
static void
test_price (Kitchen       *kitchen,
            gconstpointer  data)
{
  Farm *farm = kitchen->farm;
  g_autofree char *sql = g_strdup_printf (
    "INSERT INTO product (id, name, pack, base_per_unit, unsold_frac, pack_minutes, planned_units, target_cents, item_id)"
    " VALUES (900, 'Bakes', 'pack', 4, 0, 0, 0, 0, %" G_GINT64_FORMAT ");"
    "INSERT INTO price (product_id, from_day, cents) VALUES (900, %d, 600)", kitchen->bake, TODAY);
  double cents = 0;

  g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), sql, NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_true (stead_recipe_repo_price (farm->store, kitchen->bake, TODAY, &cents, NULL));
  g_assert_cmpfloat (cents, ==, 150);
  g_assert_true (stead_recipe_repo_price (farm->store, kitchen->bake, TODAY - 1, &cents, NULL));
  g_assert_true (isnan (cents));
}

#define CASE(name, function) g_test_add ("/store/recipe/" name, Kitchen, NULL, set_up, function, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  CASE ("is-read-as-it-was-saved", test_round_trip);
  CASE ("saved-unread-is-no-step", test_unread);
  CASE ("needs-what-is-ready-divided-by-the-yield", test_needs);
  CASE ("opens-recipes-inside-and-refuses-rings", test_inside);
  CASE ("refuses-what-cannot-be-cooked", test_refusals);
  CASE ("slips", test_slips);
  CASE ("items-know-their-measures", test_item);
  CASE ("finds-what-it-is-sold-for", test_price);
  return g_test_run ();
}

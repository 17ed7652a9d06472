/* test-label.c - the words of a label against the texts of the law, on lots made by hand.
 *
 * Egg statement: 21 CFR 101.17(h)(1).  Ingredients heaviest first: 101.4(a)(1).  Weight of
 * a pound or more in ounces and pounds: 101.7(m).  Letters of the net quantity: 101.7(i).
 * Ounce and pound: NIST Handbook 44, appendix C.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-label-answer.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-kitchen-repo.h"

#include <math.h>
#include <string.h>

#define LB 0.45359237

typedef struct
{
  Farm   farm;
  gint64 eggs, egg_lot;
  gint64 sauce, sauce_lot;
} Shelf;

static gint64
add_item (Shelf           *shelf,
          const SteadItem *like)
{
  SteadItem item = *like;

  item.reorder_base = NAN;
  FARM_DO (&shelf->farm, stead_item_repo_save (shelf->farm.store, &item, &farm_error));
  return item.id;
}

static void
add_part (SteadRecipe *recipe,
          gint64       item,
          double       amount,
          const char  *unit)
{
  SteadRecipePart *part = stead_recipe_part_new ();

  part->item_id = item;
  part->amount = amount;
  part->unit = stead_unit_by_id (unit);
  part->ready = TRUE;
  g_ptr_array_add (recipe->parts, part);
}

static void
add_product (Shelf      *shelf,
             const char *name,
             gint64      item,
             double      base,
             gint64      cents)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup (name);
  product->pack = STEAD_PACK_PACK;
  product->base_per_unit = base;
  product->item_id = item;
  FARM_DO (&shelf->farm, stead_product_repo_save (shelf->farm.store, product, &farm_error));
  FARM_DO (&shelf->farm, stead_product_repo_set_price (shelf->farm.store, product->id, shelf->farm.today - 1, cents, NULL,
                                                       &farm_error));
}

static gint64
pack_eggs (Shelf *shelf)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = shelf->farm.flock;
  harvest->day = shelf->farm.today - 2;
  harvest->item_id = shelf->eggs;
  harvest->quantity_base = 60;
  harvest->best_by = shelf->farm.today + 26;
  FARM_DO (&shelf->farm, stead_harvest_repo_save (shelf->farm.store, harvest, &farm_error));
  return harvest->lot_id;
}

/* 4 kg of tomatoes, 300 g of cheese, 2 onions of 150 g, 50 g of salt: 3 kg of sauce. */
static gint64
cook_sauce (Shelf *shelf)
{
  gint64 tomatoes = add_item (shelf, &(SteadItem) { .name = (char *) "Tomatoes", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("kg") });
  gint64 cheese = add_item (shelf, &(SteadItem) { .name = (char *) "Cheddar", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("kg"),
                                                  .label_name = (char *) "cheese (milk, salt, enzymes)", .allergens = (char *) "Milk" });
  gint64 onions = add_item (shelf, &(SteadItem) { .name = (char *) "Onions", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("ea"), .piece_kg = 0.2 });
  gint64 salt = add_item (shelf, &(SteadItem) { .name = (char *) "Salt", .kind = STEAD_ITEM_INGREDIENT, .unit = stead_unit_by_id ("kg") });
  gint64 jar = add_item (shelf, &(SteadItem) { .name = (char *) "Jar", .kind = STEAD_ITEM_PACKAGING, .unit = stead_unit_by_id ("ea") });
  const gint64 all[] = { tomatoes, cheese, onions, salt, jar };
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  gint64 batch = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    farm_buy (&shelf->farm, shelf->farm.today - 5, all[i], 20, 1000, FALSE);
  recipe->name = g_strdup ("Tomato sauce");
  recipe->item_id = shelf->sauce;
  recipe->yield_base = 3;
  recipe->kept = STEAD_KEPT_COLD;
  add_part (recipe, salt, 50, "g");
  add_part (recipe, cheese, 300, "g");
  add_part (recipe, onions, 2, "ea");
  add_part (recipe, tomatoes, 4, "kg");
  add_part (recipe, jar, 6, "ea");
  FARM_DO (&shelf->farm, stead_recipe_repo_save (shelf->farm.store, recipe, &farm_error));
  FARM_DO (&shelf->farm, stead_kitchen_repo_plan (shelf->farm.store, recipe->id, 3, shelf->farm.today, NULL, 0, &batch, &farm_error));
  FARM_DO (&shelf->farm, stead_kitchen_repo_take_proposed (shelf->farm.store, batch, shelf->farm.today, 0, &farm_error));
  harvest->batch_id = batch;
  harvest->day = shelf->farm.today;
  harvest->quantity_base = 3;
  FARM_DO (&shelf->farm, stead_kitchen_repo_finish (shelf->farm.store, harvest, &farm_error));
  return harvest->lot_id;
}

static void
set_up (Shelf         *shelf,
        gconstpointer  data)
{
  g_autoptr(SteadFarm) farm = NULL;

  farm_set_up (&shelf->farm, data);
  farm = stead_farm_repo_get (shelf->farm.store, NULL);
  farm->address = g_strdup ("12 Shore Road");
  FARM_DO (&shelf->farm, stead_farm_repo_set (shelf->farm.store, farm, &farm_error));
  shelf->eggs = add_item (shelf, &(SteadItem) { .name = (char *) "Brown eggs", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("ea"),
                                                .food = (char *) "raw_shell_eggs", .allergens = (char *) "Eggs" });
  shelf->sauce = add_item (shelf, &(SteadItem) { .name = (char *) "Tomato sauce", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("lb") });
  shelf->egg_lot = pack_eggs (shelf);
  shelf->sauce_lot = cook_sauce (shelf);
}

static void
tear_down (Shelf         *shelf,
           gconstpointer  data)
{
  farm_tear_down (&shelf->farm, data);
}

static SteadLabelAnswer *
ask (Shelf          *shelf,
     gint64          lot,
     SteadLabelKind  kind,
     double          panel)
{
  g_autoptr(GError) error = NULL;
  SteadLabelAnswer *answer = stead_label_answer_new (shelf->farm.store, lot, kind, panel, &error);

  g_assert_no_error (error);
  return answer;
}

static char *
english_day (SteadDay day)
{
  int year, month, mday;

  stead_day_split (day, &year, &month, &mday);
  return g_strdup_printf ("%.3s %d, %d", "JanFebMarAprMayJunJulAugSepOctNovDec" + 3 * (month - 1), mday, year);
}

/* The words of a label are English, and so are its days, whatever the language of the program. */
static void
assert_days (const SteadLabelAnswer *label)
{
  g_autofree char *packed = english_day (label->lot->day);
  g_autofree char *best = english_day (label->lot->best_by);
  g_autofree char *expected = g_strdup_printf ("Packed %s.\nBest by %s.", packed, best);

  g_assert_cmpstr (label->dates, ==, expected);
}

static void
test_eggs (Shelf         *shelf,
           gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) label = NULL;

  add_product (shelf, "A dozen", shelf->eggs, 12, 450);
  label = ask (shelf, shelf->egg_lot, STEAD_LABEL_CARTON, 45);
  g_assert_cmpstr (label->name, ==, "Brown eggs");
  g_assert_cmpstr (label->net, ==, "12 eggs");
  g_assert_cmpstr (label->safe, ==, "SAFE HANDLING INSTRUCTIONS: To prevent illness from bacteria: keep eggs refrigerated, "
                   "cook eggs until yolks are firm, and cook foods containing eggs thoroughly.");
  g_assert_cmpuint (label->safe_bold, ==, strlen ("SAFE HANDLING INSTRUCTIONS"));
  g_assert_cmpstr (label->keep, ==, "Keep refrigerated.");
  g_assert_cmpstr (label->contains, ==, "Contains: eggs.");
  g_assert_cmpstr (label->farm, ==, "Test farm, 12 Shore Road");
  g_assert_null (label->ingredients);
  g_assert_cmpuint (label->missing->len, ==, 0);
  assert_days (label);
}

static void
test_one (Shelf         *shelf,
          gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) label = NULL;

  add_product (shelf, "One to taste", shelf->eggs, 1, 50);
  label = ask (shelf, shelf->egg_lot, STEAD_LABEL_CARTON, 45);
  g_assert_cmpstr (label->net, ==, "1 egg");
}

static void
test_sauce (Shelf         *shelf,
            gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) label = NULL;

  add_product (shelf, "A jar", shelf->sauce, 1.5 * LB, 600);
  label = ask (shelf, shelf->sauce_lot, STEAD_LABEL_JAR, 20);
  /* 4,000 g, 2 × 200 g, 300 g, 50 g; the jars are not eaten. */
  g_assert_cmpstr (label->ingredients, ==, "Ingredients: tomatoes, onions, cheese (milk, salt, enzymes), salt.");
  g_assert_cmpstr (label->contains, ==, "Contains: milk.");
  /* 1.5 lb = 24 oz = 680.39 g */
  g_assert_cmpstr (label->net, ==, "Net Wt. 24 oz (1 lb 8 oz) 680\302\240g");
  g_assert_cmpstr (label->keep, ==, "Keep refrigerated.");
  g_assert_null (label->safe);
}

/* Letters of the net quantity, in inches, by the area of the main panel in square inches. */
static void
test_letters (Shelf         *shelf,
              gconstpointer  data)
{
  static const double rows[][2] = { { 5, 0.0625 }, { 5.1, 0.125 }, { 25, 0.125 }, { 25.1, 0.1875 }, { 100, 0.1875 },
                                    { 100.1, 0.25 }, { 400, 0.25 }, { 400.1, 0.5 } };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr(SteadLabelAnswer) label = ask (shelf, shelf->egg_lot, STEAD_LABEL_CARTON, rows[i][0]);

      g_assert_cmpfloat (label->net_letter_in, ==, rows[i][1]);
      g_assert_cmpfloat (label->letter_in, ==, 0.0625);
    }
}

/* What is not known is told, and nothing stands in its place. */
static void
test_missing (Shelf         *shelf,
              gconstpointer  data)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (shelf->farm.store, NULL);
  g_autoptr(SteadLabelAnswer) label = NULL;

  g_clear_pointer (&farm->address, g_free);
  FARM_DO (&shelf->farm, stead_farm_repo_set (shelf->farm.store, farm, &farm_error));
  label = ask (shelf, shelf->sauce_lot, STEAD_LABEL_JAR, 0);
  g_assert_null (label->net);
  g_assert_cmpstr (label->farm, ==, "Test farm");
  /* No product, no address, no best-by day. */
  g_assert_cmpuint (label->missing->len, ==, 3);
  if (farm_in_english ())
    g_assert_nonnull (strstr (label->sentence, "<b>3 things are missing</b>"));
}

static void
test_shelf (Shelf         *shelf,
            gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) bare = ask (shelf, shelf->egg_lot, STEAD_LABEL_SHELF, 0);
  g_autoptr(SteadLabelAnswer) label = NULL;

  g_assert_null (bare->price);
  g_assert_cmpuint (bare->missing->len, ==, 2);
  add_product (shelf, "A dozen", shelf->eggs, 12, 450);
  label = ask (shelf, shelf->egg_lot, STEAD_LABEL_SHELF, 0);
  g_assert_cmpstr (label->name, ==, "A dozen");
  if (farm_in_english ())
    g_assert_cmpstr (label->price, ==, "$4.50");
  g_assert_null (label->safe);
  g_assert_cmpuint (label->missing->len, ==, 0);
}

static void
test_kind_for (Shelf         *shelf,
               gconstpointer  data)
{
  SteadLot eggs = { .item_id = shelf->eggs }, sauce = { .item_id = shelf->sauce };
  SteadLabelKind kind;

  g_assert_true (stead_label_kind_for (shelf->farm.store, &eggs, &kind, NULL));
  g_assert_cmpint (kind, ==, STEAD_LABEL_CARTON);
  g_assert_true (stead_label_kind_for (shelf->farm.store, &sauce, &kind, NULL));
  g_assert_cmpint (kind, ==, STEAD_LABEL_TRAY);
}

/* Each kind has a name of its own. */
static void
test_names (void)
{
  for (int i = 0; i < STEAD_N_LABEL_KINDS; i++)
    for (int k = 0; k < i; k++)
      g_assert_cmpstr (stead_label_kind_name ((SteadLabelKind) i), !=, stead_label_kind_name ((SteadLabelKind) k));
  if (farm_in_english ())
    g_assert_cmpstr (stead_label_kind_name (STEAD_LABEL_CARTON), ==, "Egg carton");
}

static void
keep_recipe (Shelf     *shelf,
             SteadKept  kept)
{
  g_autoptr(GPtrArray) recipes = stead_recipe_repo_list (shelf->farm.store, FALSE, NULL);
  g_autoptr(SteadRecipe) recipe = NULL;

  g_assert_cmpuint (recipes->len, ==, 1);
  recipe = stead_recipe_repo_get (shelf->farm.store, ((SteadRecipe *) recipes->pdata[0])->id, NULL);
  recipe->kept = kept;
  FARM_DO (&shelf->farm, stead_recipe_repo_save (shelf->farm.store, recipe, &farm_error));
}

/* What is frozen says so; what stands in the room asks for nothing.  English, as the law has it. */
static void
test_keep (Shelf         *shelf,
           gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) frozen = NULL, room = NULL;

  keep_recipe (shelf, STEAD_KEPT_FROZEN);
  frozen = ask (shelf, shelf->sauce_lot, STEAD_LABEL_JAR, 20);
  g_assert_cmpstr (frozen->keep, ==, "Keep frozen.");
  keep_recipe (shelf, STEAD_KEPT_ROOM);
  room = ask (shelf, shelf->sauce_lot, STEAD_LABEL_JAR, 20);
  g_assert_null (room->keep);
}

/* What is poured is told in fluid ounces and milliliters, and goes into a jar: a US pint, 16 fl oz, is 473 mL
 * (NIST Handbook 44, appendix C: a US fluid ounce is 29.5735 mL). */
static void
test_fluid (Shelf         *shelf,
            gconstpointer  data)
{
  gint64 juice = add_item (shelf, &(SteadItem) { .name = (char *) "Juice", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("l") });
  g_autoptr(GPtrArray) lots = NULL;
  g_autoptr(SteadLabelAnswer) label = NULL;
  SteadLabelKind kind;

  add_product (shelf, "Juice", juice, 16 * 0.0295735295625, 300);
  farm_buy (&shelf->farm, shelf->farm.today, juice, 5, 1000, FALSE);
  lots = stead_lot_repo_list (shelf->farm.store, TRUE, NULL);
  for (guint i = 0; i < lots->len; i++)
    if (((const SteadLot *) lots->pdata[i])->item_id == juice)
      {
        label = ask (shelf, ((const SteadLot *) lots->pdata[i])->id, STEAD_LABEL_JAR, 20);
        g_assert_true (stead_label_kind_for (shelf->farm.store, lots->pdata[i], &kind, NULL));
      }
  g_assert_nonnull (label);
  g_assert_cmpint (kind, ==, STEAD_LABEL_JAR);
  g_assert_nonnull (strstr (label->net, "fl oz"));
  g_assert_nonnull (strstr (label->net, "473"));
}

/* The same figures, worked out.  1.5 lb = 680.39 g = 24 oz; letters by 21 CFR 101.7(i); 4,000 g, 400 g, 300 g and 50 g are
 * 8.82, 0.88, 0.66 and 0.11 lb. */
static void
test_whys (Shelf         *shelf,
           gconstpointer  data)
{
  g_autoptr(SteadLabelAnswer) label = NULL;

  add_product (shelf, "A jar", shelf->sauce, 1.5 * LB, 600);
  label = ask (shelf, shelf->sauce_lot, STEAD_LABEL_JAR, 20);
  NUMBERS_ARE (farm_find_why (label->whys, "Net quantity")->worked, 680.39, 28.3495, 24, 24, 1, 8, 680);
  g_assert_true (g_str_has_suffix (farm_find_why (label->whys, "Net quantity")->worked, label->net));
  NUMBERS_ARE (farm_find_why (label->whys, "How high the letters are")->worked, 5, 0.0625, 25, 0.125, 100, 0.1875, 400, 0.25,
               400, 0.5, 20, 0.125);
  NUMBERS_ARE (farm_find_why (label->whys, "Order of the ingredients")->worked, 8.82, 0.88, 0.66, 0.11);
  g_assert_cmpuint (label->whys->len, ==, 3);
}

/* The eggs were packed two days ago and keep 28 days: that is their best-by day; with 21 it was entered. */
static void
test_why_days (Shelf         *shelf,
               gconstpointer  data)
{
  const int lives[] = { 28, 21 };

  for (gsize i = 0; i < G_N_ELEMENTS (lives); i++)
    {
      g_autoptr(SteadItem) item = stead_item_repo_get (shelf->farm.store, shelf->eggs, NULL);
      g_autoptr(SteadLabelAnswer) label = NULL;
      g_autofree char *best = stead_day_format (shelf->farm.today + 26, STEAD_DAY_STYLE_MEDIUM);
      const char *worked;

      item->shelf_life_days = lives[i];
      FARM_DO (&shelf->farm, stead_item_repo_save (shelf->farm.store, item, &farm_error));
      label = ask (shelf, shelf->egg_lot, STEAD_LABEL_CARTON, 45);
      worked = farm_find_why (label->whys, "Best-by day")->worked;
      g_assert_true (g_str_has_suffix (worked, best));
      g_assert_cmpint (strstr (worked, "28") != NULL, ==, lives[i] == 28);
    }
}

/* Two columns of five: 10 on a page; 3 used up and 18 more are 21: three pages. */
static void
test_why_pages (Shelf         *shelf,
                gconstpointer  data)
{
  g_autoptr(SteadWhy) why = stead_label_sheet_why (stead_label_sheet_find ("letter-2x5"), 3, 18);

  NUMBERS_ARE (why->worked, 2, 5, 10, 3, 18, 10, 3);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, function) g_test_add ("/answer/label/" name, Shelf, NULL, set_up, function, tear_down)
  ADD ("eggs", test_eggs);
  ADD ("one-is-one", test_one);
  ADD ("sauce", test_sauce);
  ADD ("letters", test_letters);
  ADD ("missing", test_missing);
  ADD ("shelf", test_shelf);
  ADD ("kind-for", test_kind_for);
  ADD ("keep", test_keep);
  ADD ("fluid", test_fluid);
  ADD ("whys", test_whys);
  ADD ("why-days", test_why_days);
  ADD ("why-pages", test_why_pages);
#undef ADD
  g_test_add_func ("/answer/label/names", test_names);
  return g_test_run ();
}

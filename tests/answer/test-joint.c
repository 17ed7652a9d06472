/* test-joint.c - one cost shared by what comes of it, against published sums and sums by hand. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-batch-answer.h"
#include "answer/stead-joint-answer.h"
#include "core/stead-money.h"
#include "store/stead-crop-repo.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-recipe-repo.h"

#include <math.h>
#include <string.h>

static SteadJointAnswer *
ask (Farm   *farm,
     gint64  batch)
{
  g_autoptr(GError) error = NULL;
  SteadJointAnswer *answer = stead_joint_answer_new (farm->store, batch, &error);

  g_assert_no_error (error);
  return answer;
}

static SteadJointPart *
part (const SteadJointAnswer *answer,
      const char             *id)
{
  for (guint i = 0; i < answer->parts->len; i++)
    if (strcmp (((SteadJointPart *) answer->parts->pdata[i])->id, id) == 0)
      return answer->parts->pdata[i];
  g_assert_not_reached ();
}

static void
assert_whole (const SteadJointAnswer *answer)
{
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    {
      gint64 sum = 0;

      for (guint i = 0; i < answer->parts->len; i++)
        sum += ((SteadJointPart *) answer->parts->pdata[i])->share_cents[method];
      g_assert_cmpint (sum, ==, answer->usable[method] ? answer->joint_cents : 0);
    }
}

/* Saylor, Managerial Accounting, appendix 7.10, lumber: rows joint-01 of tests/reference/goods.csv. */
static void
test_published (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadJointAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const double eggs[] = { 600000, 1, 40, 0, 0 }, hens[] = { 200000, 1, 30, 0, 0 };

  farm_log (farm);
  farm_stock (farm);
  answer = ask (farm, farm->flock);
  answer->joint_cents = 25000000;
  memcpy (part (answer, "eggs")->value, eggs, sizeof eggs);
  memcpy (part (answer, "hens")->value, hens, sizeof hens);
  stead_joint_answer_settle (answer);
  assert_whole (answer);
  g_assert_cmpint (part (answer, "eggs")->share_cents[STEAD_JOINT_PHYSICAL], ==, 18750000);
  g_assert_cmpint (part (answer, "eggs")->share_cents[STEAD_JOINT_SPLIT_OFF_VALUE], ==, 20000000);
  g_assert_cmpint (part (answer, "hens")->share_cents[STEAD_JOINT_SPLIT_OFF_VALUE], ==, 5000000);
  NUMBERS_ARE (answer->sentence, 250000, 200000, 50000, 250000);
  g_assert_null (answer->advice);
  whys = stead_joint_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
}

/* Solution sheet, problem 9.38: rows joint-02 of tests/reference/goods.csv, here the first two of its
 * products and the third with what it brings as it comes: $110,000 - $80,000 - $18,000 of work. */
static void
test_further (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadJointAnswer) answer = NULL;
  const double eggs[] = { 1, 1, 8000000, 11000000, 1800000 }, hens[] = { 1, 1, 7000000, 7500000, 1400000 };

  farm_log (farm);
  farm_stock (farm);
  answer = ask (farm, farm->flock);
  memcpy (part (answer, "eggs")->value, eggs, sizeof eggs);
  memcpy (part (answer, "hens")->value, hens, sizeof hens);
  for (SteadJointMethod method = 0; method < STEAD_N_JOINT_METHODS; method++)
    {
      answer->method = method;
      stead_joint_answer_settle (answer);
      g_assert_cmpfloat_with_epsilon (part (answer, "eggs")->more_cents, 1200000, 1e-6);
      g_assert_cmpfloat_with_epsilon (part (answer, "hens")->more_cents, -900000, 1e-6);
      NUMBERS_ARE (answer->advice, 12000, 9000);
      if (farm_in_english ())
        {
          g_assert_nonnull (strstr (answer->advice, "it pays"));
          g_assert_nonnull (strstr (answer->advice, "it does not pay"));
        }
    }
}

/* All that went and will go into the flock, without the worth of the birds taken off; and what the log
 * tells of eggs and birds. */
static void
test_flock (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadJointAnswer) answer = NULL;
  g_autoptr(SteadBatchAnswer) batch = NULL;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GError) error = NULL;

  farm_log (farm);
  farm_stock (farm);
  answer = ask (farm, farm->flock);
  batch = stead_batch_answer_new (farm->store, farm->flock, &error);
  g_assert_no_error (error);
  flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  g_assert_cmpint (answer->joint_cents, ==,
                   stead_money_round (batch->money.cost.so_far_cents + batch->money.cost.to_come_cents
                                      + (double) flock->salvage_cents));
  g_assert_cmpfloat (part (answer, "hens")->log[STEAD_JOINT_QUANTITY], ==, 10);
  g_assert_cmpfloat (part (answer, "eggs")->log[STEAD_JOINT_SPLIT], ==, 450);
  g_assert_false (answer->usable[STEAD_JOINT_PHYSICAL]);   /* nobody has weighed a hen */
  g_assert_true (answer->usable[STEAD_JOINT_NRV]);
  assert_whole (answer);
  part (answer, "hens")->value[STEAD_JOINT_WEIGHT] = 1.8;
  stead_joint_answer_settle (answer);
  g_assert_true (answer->usable[STEAD_JOINT_PHYSICAL]);
  assert_whole (answer);
}

/* What a person put in is kept, and only that. */
static void
test_kept (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadJointAnswer) answer = NULL, again = NULL;
  g_autoptr(SteadJointPlan) plan = NULL, none = NULL;

  farm_log (farm);
  farm_stock (farm);
  answer = ask (farm, farm->flock);
  answer->method = STEAD_JOINT_PHYSICAL;
  part (answer, "hens")->value[STEAD_JOINT_WEIGHT] = 1.8;
  plan = stead_joint_answer_plan (answer);
  g_assert_cmpuint (plan->figures->len, ==, 1);
  FARM_DO (farm, stead_joint_repo_save (farm->store, farm->flock, plan, &farm_error));
  again = ask (farm, farm->flock);
  g_assert_cmpint (again->method, ==, STEAD_JOINT_PHYSICAL);
  g_assert_cmpfloat (part (again, "hens")->value[STEAD_JOINT_WEIGHT], ==, 1.8);
  g_assert_cmpfloat (part (again, "hens")->log[STEAD_JOINT_WEIGHT], ==, 0);
  stead_joint_answer_reset (again);
  none = stead_joint_answer_plan (again);
  g_assert_cmpuint (none->figures->len, ==, 0);
}

/* --- a crop by its grades --------------------------------------------------------------- */

static gint64
new_item (Farm          *farm,
          const char    *name,
          const char    *unit)
{
  SteadItem item = { .name = (char *) name, .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id (unit), .reorder_base = NAN };

  FARM_DO (farm, stead_item_repo_save (farm->store, &item, &farm_error));
  return item.id;
}

static void
pick (Farm       *farm,
      gint64      crop,
      gint64      item,
      int         day,
      double      kg,
      const char *grade,
      double      lost,
      gboolean    is_last)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  harvest->batch_id = crop;
  harvest->item_id = item;
  harvest->day = farm->today - day;
  harvest->quantity_base = kg;
  harvest->grade = g_strdup (grade);
  harvest->lost_base = lost;
  harvest->reason = lost > 0 ? g_strdup ("split") : NULL;
  harvest->is_last = is_last;
  harvest->cost_cents = 100;
  FARM_DO (farm, stead_harvest_repo_save (farm->store, harvest, &farm_error));
}

static void
sell (Farm       *farm,
      const char *name,
      SteadPack   pack,
      double      base,
      gint64      batch,
      gint64      item,
      gint64      cents,
      gint64      packaging)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup (name);
  product->pack = pack;
  product->base_per_unit = base;
  product->batch_id = batch;
  product->item_id = item;
  product->planned_units = 10;
  if (packaging != 0)
    g_array_append_val (product->parts, ((SteadProductPart) { packaging, 1 }));
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  FARM_DO (farm, stead_product_repo_set_price (farm->store, product->id, farm->today - 50, cents, NULL, &farm_error));
}

/* One kilogram makes two jars. */
static void
add_sauce (Farm   *farm,
           gint64  tomatoes)
{
  gint64 jars = new_item (farm, "Sauce", "ea");
  g_autoptr(SteadRecipe) recipe = stead_recipe_new ();
  SteadRecipePart *one = stead_recipe_part_new ();

  recipe->name = g_strdup ("Sauce");
  recipe->item_id = jars;
  recipe->yield_base = 2;
  one->item_id = tomatoes;
  one->amount = 1;
  one->unit = stead_unit_by_id ("kg");
  g_ptr_array_add (recipe->parts, one);
  FARM_DO (farm, stead_recipe_repo_save (farm->store, recipe, &farm_error));
  sell (farm, "Jar of sauce", STEAD_PACK_JAR, 1, 0, jars, 500, farm->carton);
}

/* By hand: $50 of plants gave 80 kg to eat fresh at $3 and 20 kg of seconds; 5 kg were thrown away.  A
 * kilogram makes two jars at $5, with a carton of $0.31 each. */
static void
test_crop (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  g_autoptr(SteadJointAnswer) answer = NULL;
  SteadJointPart *first, *second;
  gint64 tomatoes = new_item (farm, "Tomatoes", "kg");
  double unit;

  farm_stock (farm);
  crop->batch.name = g_strdup ("Bed 1");
  crop->batch.started_on = farm->today - 100;
  crop->set_out_on = farm->today - 100;
  crop->plants = 20;
  crop->cost_cents = 5000;
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error));
  pick (farm, crop->batch.id, tomatoes, 20, 30, "First", 5, FALSE);
  pick (farm, crop->batch.id, tomatoes, 19, 20, "second", 0, FALSE);
  pick (farm, crop->batch.id, tomatoes, 18, 50, "first", 0, TRUE);
  sell (farm, "Fresh tomatoes", STEAD_PACK_KILOGRAM, 1, crop->batch.id, 0, 300, 0);
  add_sauce (farm, tomatoes);
  answer = ask (farm, crop->batch.id);
  g_assert_cmpint (answer->joint_cents, ==, 5000);
  g_assert_cmpuint (answer->parts->len, ==, 3);
  first = part (answer, "grade-first");
  second = part (answer, "grade-second");
  unit = first->base_per_unit;
  g_assert_true (answer->parts->pdata[0] == first);
  g_assert_cmpfloat_with_epsilon (first->value[STEAD_JOINT_QUANTITY] * unit, 80, 1e-9);
  g_assert_cmpfloat_with_epsilon (second->value[STEAD_JOINT_QUANTITY] * unit, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (part (answer, "waste")->value[STEAD_JOINT_QUANTITY] * unit, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->value[STEAD_JOINT_SPLIT] / unit, 300, 1e-9);
  g_assert_cmpstr (second->made, ==, "Jar of sauce");
  g_assert_cmpfloat_with_epsilon (second->value[STEAD_JOINT_FINAL] / unit, 1000, 1e-9);
  g_assert_cmpfloat_with_epsilon (second->value[STEAD_JOINT_FURTHER] / unit, 62, 1.01);   /* whole cents a jar */
  second->value[STEAD_JOINT_FURTHER] = 62 * unit;
  stead_joint_answer_settle (answer);
  assert_whole (answer);
  g_assert_cmpint (part (answer, "waste")->share_cents[STEAD_JOINT_PHYSICAL], ==, 0);
  g_assert_cmpint (first->share_cents[STEAD_JOINT_PHYSICAL], ==, 4000);
  g_assert_cmpint (first->share_cents[STEAD_JOINT_SPLIT_OFF_VALUE], ==, 5000);
  g_assert_cmpint (first->share_cents[STEAD_JOINT_NRV], ==, 2806);    /* 50 x 240 / (240 + 187.60) */
  g_assert_cmpint (second->share_cents[STEAD_JOINT_NRV], ==, 2194);
  g_assert_cmpfloat_with_epsilon (second->more_cents, 18760, 1e-6);
  NUMBERS_ARE (answer->sentence, 50, 28.06, 21.94, 50, 1);
  g_assert_cmpfloat_with_epsilon (stead_joint_unit_cents (first, STEAD_JOINT_PHYSICAL) / unit, 50, 1e-9);
}

/* One grade alone shares nothing. */
static void
test_one_thing (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  g_autoptr(GError) error = NULL;

  crop->batch.name = g_strdup ("Bed 1");
  crop->batch.started_on = farm->today - 100;
  crop->set_out_on = farm->today - 100;
  crop->plants = 20;
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error));
  pick (farm, crop->batch.id, new_item (farm, "Tomatoes", "kg"), 20, 30, NULL, 0, FALSE);
  g_assert_null (stead_joint_answer_new (farm->store, crop->batch.id, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
}

static void
make_ducks (Farm *farm)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);

  flock->species = STEAD_SPECIES_DUCK;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
}

/* What an egg of a duck weighs nobody knows here: nothing is shared by weight until somebody says. */
static void
test_ducks (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadJointAnswer) answer = NULL;

  farm_log (farm);
  farm_stock (farm);
  make_ducks (farm);
  answer = ask (farm, farm->flock);
  g_assert_cmpfloat (part (answer, "eggs")->log[STEAD_JOINT_WEIGHT], ==, 0);
  g_assert_false (answer->usable[STEAD_JOINT_PHYSICAL]);
  if (farm_in_english ())
    g_assert_cmpstr (part (answer, "hens")->name, ==, "Birds at the end");
}

static gint64
new_bed (Farm *farm)
{
  g_autoptr(SteadCrop) crop = stead_crop_new ();

  crop->batch.name = g_strdup ("Bed 1");
  crop->batch.started_on = farm->today - 100;
  crop->set_out_on = farm->today - 100;
  crop->plants = 20;
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error));
  return crop->batch.id;
}

/* A day on which all was thrown away adds no grade; with one grade and waste there is still nothing to share. */
static void
test_thrown_away (Farm          *farm,
                  gconstpointer  data)
{
  gint64 bed = new_bed (farm), tomatoes = new_item (farm, "Tomatoes", "kg");
  g_autoptr(GError) error = NULL;

  pick (farm, bed, tomatoes, 20, 30, "First", 0, FALSE);
  pick (farm, bed, tomatoes, 19, 0, "second", 4, FALSE);
  g_assert_null (stead_joint_answer_new (farm->store, bed, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  if (farm_in_english ())
    g_assert_true (g_str_has_prefix (error->message, "Only one thing comes of “Bed 1” so far"));
}

/* Grades that are counted, as many of one as of the other; a product without a price gives no value to share by. */
static void
test_counted (Farm          *farm,
              gconstpointer  data)
{
  gint64 bed = new_bed (farm), heads = new_item (farm, "Lettuce", "ea");
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autoptr(SteadJointAnswer) answer = NULL;

  pick (farm, bed, heads, 20, 12, "small", 0, FALSE);
  pick (farm, bed, heads, 19, 12, "big", 0, TRUE);
  product->name = g_strdup ("Lettuce");
  product->pack = STEAD_PACK_PIECE;
  product->base_per_unit = 1;
  product->batch_id = bed;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  answer = ask (farm, bed);
  g_assert_cmpuint (answer->parts->len, ==, 2);
  g_assert_cmpstr (((SteadJointPart *) answer->parts->pdata[0])->id, ==, "grade-big");     /* alike: by their names */
  g_assert_cmpfloat (part (answer, "grade-small")->value[STEAD_JOINT_QUANTITY], ==, 12);
  g_assert_cmpfloat (part (answer, "grade-big")->value[STEAD_JOINT_SPLIT], ==, 0);
  g_assert_false (answer->usable[STEAD_JOINT_SPLIT_OFF_VALUE]);
  g_assert_nonnull (answer->caution);
}

#define ADD(name, test) g_test_add ("/answer/joint/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("published", test_published);
  ADD ("further", test_further);
  ADD ("flock", test_flock);
  ADD ("kept", test_kept);
  ADD ("crop", test_crop);
  ADD ("one-thing", test_one_thing);
  ADD ("ducks", test_ducks);
  ADD ("thrown-away", test_thrown_away);
  ADD ("counted", test_counted);
  return g_test_run ();
}

/* test-harvest.c - what a harvest will make, as it is typed: its lot, its cost, and what is in doubt.
 *
 * The pond: 200 fish for $50, 90 kg of feed for $75 and then $90 a bag of 50 kg: 50 x 1.50 + 40 x 1.80 = $147.
 */
#include "numbers.h"
#include "pond.h"

#include "answer/stead-harvest-answer.h"
#include "answer/stead-words.h"
#include "store/stead-crop-repo.h"

#include <math.h>
#include <string.h>

static SteadHarvestAnswer *
ask (Pond *pond)
{
  g_autoptr(GError) error = NULL;
  SteadHarvestAnswer *answer = stead_harvest_answer_new (pond->farm.store, pond->fish, 0, &error);

  g_assert_no_error (error);
  return answer;
}

static SteadHarvest *
typed (Pond   *pond,
       double  kg,
       double  lost_kg)
{
  SteadHarvest *harvest = stead_harvest_new ();

  harvest->batch_id = pond->fish;
  harvest->item_id = pond->dressed;
  harvest->day = pond->farm.today;
  harvest->quantity_base = kg;
  harvest->lost_base = lost_kg;
  return harvest;
}

static void
set (Pond               *pond,
     SteadHarvestAnswer *answer,
     const SteadHarvest *harvest)
{
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_harvest_answer_set (answer, pond->farm.store, harvest, &error));
  g_assert_no_error (error);
}

/* The last of the fish carries all that is left: $197 on 20 kg, $9.85 each. */
static void
test_last (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadHarvestAnswer) answer = NULL;
  g_autoptr(SteadHarvest) harvest = typed (pond, 20, 0);
  g_autofree char *plain = NULL;
  gint64 cents = 0;

  pond_feed (pond);
  answer = ask (pond);
  harvest->is_last = TRUE;
  harvest->best_by = pond->farm.today + 3;
  set (pond, answer, harvest);
  g_assert_cmpint (answer->cost_cents, ==, 19700);
  g_assert_true (stead_harvest_cost (pond->farm.store, harvest, &cents, NULL));
  g_assert_cmpint (cents, ==, 19700);
  plain = stead_words_plain (answer->sentence);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (plain, "gets the last 20 kg, and with it all that is left of the cost, $197.00: $9.85 for 1 kg."));
      g_assert_true (g_str_has_suffix (plain, "Best by Apr 3, 2026."));
    }
}

/* An item that keeps for seven days tells the lot's day, unless another one was typed. */
static void
test_best_by (Pond          *pond,
              gconstpointer  data)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (pond->farm.store, pond->dressed, NULL);
  g_autoptr(SteadHarvestAnswer) answer = ask (pond);
  g_autoptr(SteadHarvest) harvest = typed (pond, 5, 0);

  item->shelf_life_days = 7;
  FARM_DO (&pond->farm, stead_item_repo_save (pond->farm.store, item, &farm_error));
  set (pond, answer, harvest);
  g_assert_cmpint (answer->best_by, ==, pond->farm.today + 7);
  harvest->best_by = pond->farm.today + 2;
  set (pond, answer, harvest);
  g_assert_cmpint (answer->best_by, ==, pond->farm.today + 2);
}

/* Nothing good makes no lot and carries nothing. */
static void
test_nothing_good (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadHarvestAnswer) answer = ask (pond);
  g_autoptr(SteadHarvest) lost = typed (pond, 0, 5), empty = typed (pond, 0, 0);

  set (pond, answer, lost);
  g_assert_cmpint (answer->cost_cents, ==, 0);
  if (farm_in_english ())
    g_assert_cmpstr (answer->sentence, ==, "Nothing good came of it: no lot is made.");
  set (pond, answer, empty);
  g_assert_true (answer->sentence == NULL || *answer->sentence == '\0');
}

/* So far $197, and 30 days of 1 kg at $1.80 to come: ($197 + $54) ÷ 60 kg × 20 kg = $83.67, $4.18 for 1 kg.  The item
 * keeps for seven days: March 31 + 7 = April 7. */
static void
test_whys (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (pond->farm.store, pond->dressed, NULL);
  g_autoptr(SteadHarvestAnswer) answer = NULL;
  g_autoptr(SteadHarvest) some = typed (pond, 20, 0), none = typed (pond, 0, 5);
  g_autoptr(GPtrArray) whys = NULL, nothing = NULL, other_day = NULL;

  item->shelf_life_days = 7;
  FARM_DO (&pond->farm, stead_item_repo_save (pond->farm.store, item, &farm_error));
  pond_feed (pond);
  answer = ask (pond);
  set (pond, answer, some);
  g_assert_cmpint (answer->cost_cents, ==, 8367);
  g_assert_cmpint (answer->each_cents, ==, 418);
  whys = stead_harvest_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
  NUMBERS_ARE (farm_find_why (whys, "What the lot carries")->worked, 197, 54, 60, 20, 83.67);
  NUMBERS_ARE (farm_find_why (whys, "Cost of one")->worked, 83.67, 20, 4.18, 1);
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 50, 147, 197);
  g_assert_cmpint (answer->best_by, ==, stead_day_new (2026, 4, 7));
  if (farm_in_english ())
    g_assert_cmpstr (farm_find_why (whys, "Best by")->worked, ==, "Mar 31, 2026 + 7 days = Apr 7, 2026");
  some->best_by = pond->farm.today + 2;
  set (pond, answer, some);
  other_day = stead_harvest_answer_whys (answer);
  g_assert_cmpuint (other_day->len, ==, 3);
  set (pond, answer, none);
  nothing = stead_harvest_answer_whys (answer);
  g_assert_cmpuint (nothing->len, ==, 0);
}

/* 80 kg where 60 were expected: $251 ÷ 80 kg × 80 kg, but $197 is all that went in.  The last lot after one that
 * carries $65 takes $197 − $65 = $132. */
static void
test_why_no_more (Pond          *pond,
                  gconstpointer  data)
{
  g_autoptr(SteadHarvestAnswer) answer = NULL, after = NULL;
  g_autoptr(SteadHarvest) much = typed (pond, 80, 0), last = typed (pond, 20, 0);
  g_autoptr(GPtrArray) whys = NULL, rest = NULL;

  pond_feed (pond);
  answer = ask (pond);
  set (pond, answer, much);
  whys = stead_harvest_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "What the lot carries")->worked, 197, 54, 80, 80, 251, 197, 0, 197);
  pond_harvest (pond, pond->farm.today - 1, 10, 30, 6500, FALSE);
  after = ask (pond);
  last->is_last = TRUE;
  set (pond, after, last);
  g_assert_cmpint (after->cost_cents, ==, 13200);
  rest = stead_harvest_answer_whys (after);
  NUMBERS_ARE (farm_find_why (rest, "What the lot carries")->worked, 197, 65, 132);
  NUMBERS_ARE (farm_find_why (rest, "Cost of one")->worked, 132, 20, 6.6, 1);
}

/* With all fish of the plan in it the lot takes all that went in so far. */
static void
test_more_than_planned (Pond          *pond,
                        gconstpointer  data)
{
  g_autoptr(SteadHarvestAnswer) answer = NULL;
  g_autoptr(SteadHarvest) much = typed (pond, 80, 0);

  pond_feed (pond);
  answer = ask (pond);
  set (pond, answer, much);
  g_assert_cmpint (answer->cost_cents, ==, 19700);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->caution, "All that went in so far is in this lot"));
}

/* Heads of lettuce are counted, and nobody planned how many: what is still to come is not known, until the last of
 * them is cut. */
static void
test_no_plan (Pond          *pond,
              gconstpointer  data)
{
  Farm *farm = &pond->farm;
  g_autoptr(SteadCrop) crop = stead_crop_new ();
  SteadItem heads = { .name = (char *) "Lettuce", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("ea"),
                      .reorder_base = NAN };
  g_autoptr(SteadHarvest) first = typed (pond, 2, 0), some = typed (pond, 3, 0);
  g_autoptr(SteadHarvestAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;

  crop->batch.name = g_strdup ("Bed 1");
  crop->batch.started_on = crop->set_out_on = farm->today - 60;
  crop->plants = 10;
  crop->cost_cents = 5000;
  FARM_DO (farm, stead_crop_repo_save (farm->store, crop, &farm_error)
                 && stead_item_repo_save (farm->store, &heads, &farm_error));
  first->batch_id = some->batch_id = crop->batch.id;
  first->item_id = some->item_id = heads.id;
  first->cost_cents = 1000;
  FARM_DO (farm, stead_harvest_repo_save (farm->store, first, &farm_error));
  answer = stead_harvest_answer_new (farm->store, crop->batch.id, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->alive, ==, -1);
  set (pond, answer, some);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->caution, "Neither a plan nor a forecast says how much is still to come"));
  some->is_last = TRUE;
  set (pond, answer, some);
  g_assert_true (answer->caution == NULL || *answer->caution == '\0');
  g_assert_cmpint (answer->cost_cents, ==, 4000);     /* $50 less the $10 that the first two carry */
}

/* What the undo menu calls it, with and without an item. */
static void
test_name (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (pond->farm.store, pond->dressed, NULL);
  g_autoptr(SteadHarvest) harvest = typed (pond, 20, 0);
  g_autofree char *with = stead_harvest_name (harvest, item, "Catfish 1");
  g_autofree char *without = stead_harvest_name (harvest, NULL, "Catfish 1");

  if (!farm_in_english ())
    return;
  g_assert_cmpstr (with, ==, "harvest of 20 kg of Catfish, dressed on Mar 31");
  g_assert_cmpstr (without, ==, "harvest of “Catfish 1” on Mar 31");
}

#define ADD(name, test) g_test_add ("/answer/harvest/" name, Pond, NULL, pond_set_up, test, pond_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("last", test_last);
  ADD ("best-by", test_best_by);
  ADD ("nothing-good", test_nothing_good);
  ADD ("whys", test_whys);
  ADD ("why-no-more", test_why_no_more);
  ADD ("more-than-planned", test_more_than_planned);
  ADD ("no-plan", test_no_plan);
  ADD ("name", test_name);
  return g_test_run ();
}

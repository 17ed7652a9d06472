/* test-batch-cost.c - the cost of one kilogram of fish, of hens raised here, worked out by hand. */
#include "numbers.h"
#include "pond.h"

#include <math.h>
#include <string.h>

#include "answer/stead-answer-error.h"
#include "answer/stead-cost-answer.h"
#include "answer/stead-price-answer.h"
#include "core/stead-money.h"

static SteadCostAnswer *
ask (Pond *pond)
{
  g_autoptr(GError) error = NULL;
  SteadCostAnswer *answer = stead_cost_answer_new (pond->farm.store, pond->product, STEAD_PERIOD_12_WEEKS, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static double
total (const SteadCostAnswer *answer,
       SteadCostKind          kind)
{
  return answer->sheet.parts[kind].total_cents;
}

static void
assert_entries (Pond                  *pond,
                const SteadCostAnswer *answer)
{
  for (SteadCostKind kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      g_autoptr(GError) error = NULL;
      g_autoptr(GPtrArray) entries = stead_cost_answer_entries (pond->farm.store, answer, kind, &error);
      gint64 sum = 0;

      g_assert_no_error (error);
      for (guint i = 0; i < entries->len; i++)
        sum += ((SteadCostEntry *) entries->pdata[i])->cents;
      g_assert_cmpint (sum, ==, stead_money_round (total (answer, kind)));
    }
}

/* The last line of a Why, worked again with the numbers as they are printed. */
static void
assert_whys (const SteadCostAnswer *answer)
{
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      const SteadWhy *why = answer->whys[kind];
      g_autoptr(GArray) numbers = NULL;

      g_assert_true ((why != NULL) == (total (answer, (SteadCostKind) kind) > 0));
      if (why == NULL)
        continue;
      numbers = numbers_in (strrchr (why->worked, '\n'));
      g_assert_cmpuint (numbers->len, ==, 3);
      g_assert_cmpint (stead_money_round (g_array_index (numbers, double, 0) / g_array_index (numbers, double, 1) * 100),
                       ==, answer->sheet.parts[kind].shown_cents);
    }
}

/* So far 50 kg at $1.50 and 40 kg at $1.80: $147; of the plan's 30 days, 1 kg a day as in the last four weeks
 * ($1.80): $54 to come.  Fish $50.  60 kg: feed $3.35, fish $0.83: $4.18. */
static void
test_before_harvest (Pond          *pond,
                     gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  pond_feed (pond);
  answer = ask (pond);
  g_assert_null (answer->flock);
  g_assert_cmpstr (answer->batch->name, ==, "Catfish 1");
  g_assert_cmpint (answer->period, ==, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpint (answer->from, ==, stead_day_new (2026, 1, 1));
  g_assert_cmpint (answer->money->days_left, ==, 30);
  g_assert_cmpint (answer->money->feed_basis, ==, STEAD_TO_COME_LATE);
  g_assert_cmpfloat_with_epsilon (answer->money->so_far[STEAD_COST_FEED], 14700, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->money->to_come[STEAD_COST_FEED], 5400, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_FEED), 20100, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_START), 5000, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->sheet.good_units, 60, 1e-9);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 335 + 83);
  g_assert_cmpfloat_with_epsilon (stead_batch_unit_cents (&answer->money->cost), 25100 / 60.0, 1e-9);
  /* $4.18, of it feed $3.35; so far $197, to come $54, 60 kg. */
  NUMBERS_ARE (answer->sentence, 4.18, 3.35, 197, 54, 60);
  assert_entries (pond, answer);
  assert_whys (answer);
  if (farm_in_english ())
    {
      g_assert_cmpstr (answer->labels[STEAD_COST_START], ==, "Fingerlings");
      g_assert_cmpstr (answer->labels[STEAD_COST_ASSETS], ==, "Equipment");
      g_assert_nonnull (strstr (answer->sentence, "One kilogram"));
      g_assert_nonnull (strstr (answer->caution, "the plan's"));
    }
}

/* The plan's feed: 130 kg, of which 40 are left, at the next bag's $1.80. */
static void
test_planned_feed (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  SteadBatchPlan plan;

  pond_feed (pond);
  g_assert_true (stead_batch_repo_plan (pond->farm.store, pond->fish, &plan, NULL));
  plan.feed_kg = 130;
  plan.other_cents = 3000;
  FARM_DO (&pond->farm, stead_batch_repo_set_plan (pond->farm.store, pond->fish, &plan, &farm_error));
  answer = ask (pond);
  g_assert_cmpint (answer->money->feed_basis, ==, STEAD_TO_COME_PLAN);
  g_assert_cmpfloat_with_epsilon (answer->money->feed_to_come_kg, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->money->to_come[STEAD_COST_FEED], 7200, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_SUPPLIES), 3000, 1e-6);
  assert_entries (pond, answer);
  assert_whys (answer);
}

/* All 80 kg of the plan are eaten, and more, with 30 days to go: they eat as of late, 1 kg at $1.80. */
static void
test_plan_used_up (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  SteadBatchPlan plan;

  pond_feed (pond);
  g_assert_true (stead_batch_repo_plan (pond->farm.store, pond->fish, &plan, NULL));
  plan.feed_kg = 80;
  FARM_DO (&pond->farm, stead_batch_repo_set_plan (pond->farm.store, pond->fish, &plan, &farm_error));
  answer = ask (pond);
  g_assert_cmpint (answer->money->feed_basis, ==, STEAD_TO_COME_LATE);
  g_assert_cmpfloat_with_epsilon (answer->money->to_come[STEAD_COST_FEED], 5400, 1e-6);
}

/* Twenty of the sixty are out; work at $10 an hour: 12 min on 90 + 30 days are $240. */
static void
test_half_way (Pond          *pond,
               gconstpointer  data)
{
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (pond->farm.store, NULL);
  g_autoptr(SteadCostAnswer) answer = NULL;

  facts->labor_cents_hour = 1000;
  FARM_DO (&pond->farm, stead_farm_repo_set (pond->farm.store, facts, &farm_error));
  pond_feed (pond);
  pond_harvest (pond, pond->farm.today - 5, 20, 40, 7000, FALSE);
  answer = ask (pond);
  g_assert_cmpfloat_with_epsilon (answer->money->cost.good_base, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->money->cost.expected_base, 40, 1e-9);
  g_assert_cmpint (answer->money->cost.carried_cents, ==, 7000);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 335 + 83);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_LABOR), 24000, 1e-6);
  g_assert_cmpint (answer->sheet.unit_labor_cents, ==, 418 + 400);
  NUMBERS_ARE (answer->sentence, 4.18, 3.35, 10, 8.18, 197, 20, 54, 40);
  assert_entries (pond, answer);
  assert_whys (answer);
}

/* Over: what it cost, over what came.  $147 + $50 over 55 kg. */
static void
test_over (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  pond_feed (pond);
  pond_harvest (pond, pond->farm.today - 5, 20, 40, 7000, FALSE);
  pond_harvest (pond, pond->farm.today, 35, 100, 12700, TRUE);
  answer = ask (pond);
  g_assert_cmpint (answer->money->outlook.basis, ==, STEAD_OUTLOOK_OVER);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_FEED), 14700, 1e-6);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 267 + 91);
  g_assert_null (answer->caution);
  NUMBERS_ARE (answer->sentence, 3.58, 2.67, 197, 55);
}

static void
add_deaths (Pond *pond,
            int   n)
{
  SteadFishEntry entry = { .fish_id = pond->fish, .day = pond->farm.today, .feed_kg = NAN, .deaths = n, .water_c = NAN };

  FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
}

/* Fish without a plan and without a forecast count at the weight that they are meant to be sold at, alive:
 * 200 of 0.5 kg.  When all are dead nothing is known to come, and it says so. */
static void
test_nothing_planned (Pond          *pond,
                      gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFish) fish = stead_fish_repo_get (pond->farm.store, pond->fish, NULL);
  g_autoptr(SteadCostAnswer) hoped = NULL;
  g_autoptr(SteadCostAnswer) some = NULL;

  pond_plan (pond, NAN, STEAD_DAY_NONE);
  fish->sale_g = 500;
  FARM_DO (&pond->farm, stead_fish_repo_save (pond->farm.store, fish, &farm_error));
  hoped = ask (pond);
  g_assert_true (hoped->money->outlook.is_live);
  g_assert_cmpfloat_with_epsilon (hoped->money->cost.expected_base, 100, 1e-9);
  g_assert_cmpint (hoped->sheet.unit_cents, ==, 50);
  g_assert_nonnull (hoped->caution);
  pond_feed (pond);
  pond_harvest (pond, pond->farm.today, 20, 40, 7000, FALSE);
  add_deaths (pond, 160);
  some = ask (pond);
  g_assert_cmpint (some->money->outlook.basis, ==, STEAD_OUTLOOK_NONE);
  g_assert_cmpint (some->sheet.unit_cents, ==, 735 + 250);
  g_assert_nonnull (some->caution);
  g_assert_null (stead_cost_answer_new (pond->farm.store, 99, STEAD_PERIOD_12_WEEKS, &error));
}

static void
test_nothing_left (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(GError) error = NULL;

  pond_plan (pond, NAN, STEAD_DAY_NONE);
  add_deaths (pond, 200);
  g_assert_null (stead_cost_answer_new (pond->farm.store, pond->product, STEAD_PERIOD_12_WEEKS, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
}

/* A pound: 0.45359237 kg (NIST Special Publication 811, appendix B); a tenth of it unsold. */
static void
test_by_the_pound (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadProduct) product = stead_product_repo_get (pond->farm.store, pond->product, NULL);
  g_autoptr(SteadCostAnswer) answer = NULL;
  g_autoptr(SteadPriceAnswer) price = NULL;

  product->pack = STEAD_PACK_POUND;
  product->base_per_unit = 0.45359237;
  product->unsold_frac = 0.1;
  product->planned_units = 40;
  FARM_DO (&pond->farm, stead_product_repo_save (pond->farm.store, product, &farm_error));
  pond_feed (pond);
  answer = ask (pond);
  /* 60 kg are 132.28 lb; 119.05 of them sold: 201 / 119.05 + 50 / 119.05 */
  g_assert_cmpfloat_with_epsilon (answer->sheet.good_units, 60 / 0.45359237 * 0.9, 1e-9);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 169 + 42);
  assert_whys (answer);
  price = stead_price_answer_new (pond->farm.store, pond->product, STEAD_PERIOD_4_WEEKS, NULL);
  g_assert_nonnull (price);
  g_assert_cmpfloat (price->plan.variable_cents, ==, 211);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "One pound costs us"));
}

/* A third of what went in swam away with the fish that moved. */
static void
test_moved_out (Pond          *pond,
                gconstpointer  data)
{
  g_autoptr(SteadFish) other = stead_fish_new ();
  SteadFishMove move = { .day = pond->farm.today, .n = 60, .mean_g = 200, .cost_cents = 4925 };
  g_autoptr(SteadCostAnswer) answer = NULL;

  pond_feed (pond);
  g_free (other->species);
  other->species = g_strdup ("tilapia");
  other->batch.name = g_strdup ("Catfish 2");
  other->batch.place_id = pond_tank (pond, "Tank 2");
  other->batch.started_on = pond->farm.today;
  other->stocked_g = 200;
  FARM_DO (&pond->farm, stead_fish_repo_save (pond->farm.store, other, &farm_error));
  move.from_id = pond->fish;
  move.to_id = other->batch.id;
  FARM_DO (&pond->farm, stead_fish_repo_save_move (pond->farm.store, &move, &farm_error));
  answer = ask (pond);
  /* $197 went in, $49.25 went along: a quarter. */
  g_assert_cmpfloat_with_epsilon (answer->money->kept_frac, 0.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->money->cost.so_far_cents, 19700 - 4925, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_START), 3750, 1e-6);
  assert_entries (pond, answer);
  assert_whys (answer);
  {
    g_auto(SteadBatchMoney) money = { 0 };

    g_assert_true (stead_batch_money_read (pond->farm.store, answer->farm, other->batch.id, &money, NULL));
    g_assert_cmpfloat_with_epsilon (money.so_far[STEAD_COST_START], 4925, 1e-6);
  }
}

static void
test_wait (Pond          *pond,
           gconstpointer  data)
{
  SteadTreatment treatment = { .batch_id = pond->fish, .day = pond->farm.today - 3, .last_day = pond->farm.today,
                               .wait_until = pond->farm.today + 21, .what = (char *) "Antibiotic feed",
                               .ordered_by = (char *) "Dr. Vale" };
  g_autoptr(SteadCostAnswer) answer = NULL;

  pond_feed (pond);
  FARM_DO (&pond->farm, stead_treatment_repo_save (pond->farm.store, &treatment, &farm_error));
  answer = ask (pond);
  g_assert_cmpint (answer->wait_until, ==, pond->farm.today + 21);
  g_assert_true (g_str_has_prefix (answer->caution, "“Catfish 1”"));
}

/* Thirty chicks for $60 ate 40 kg of $1.20 before they laid; two died.  What is left at the end is worth $28:
 * ($60 + $48 - $28) over 28 x 100 eggs is 2.857 cents an egg. */
static void
test_reared (Pond          *pond,
             gconstpointer  data)
{
  Farm *farm = &pond->farm;
  g_autoptr(SteadFlock) flock = stead_flock_new ();
  g_autoptr(SteadProduct) product = stead_product_repo_get (farm->store, farm->product, NULL);
  g_autoptr(SteadCostAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  SteadFlockEntry entry = { .feed_kg = 20, .eggs = STEAD_COUNT_NONE };
  SteadDay hatched = farm->today - 200;

  farm_buy (farm, hatched, farm->feed, 100, 12000, FALSE);
  flock->name = g_strdup ("Pullets");
  flock->housed_on = flock->hatched_on = hatched;
  flock->birds = 30;
  flock->birds_cost_cents = 6000;
  flock->salvage_cents = 2800;
  flock->eggs_expected = 100;
  flock->reared = TRUE;
  flock->lay_began_on = farm->today - 50;
  flock->feed_item_id = farm->feed;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  entry.flock_id = flock->id;
  for (int i = 0; i < 2; i++)
    {
      entry.id = 0;
      entry.day = hatched + 50 * (i + 1);
      entry.deaths = 1;
      FARM_DO (farm, stead_flock_repo_save_entry (farm->store, &entry, &farm_error));
    }
  entry = (SteadFlockEntry) { .flock_id = flock->id, .day = farm->today - 10, .eggs = 24, .feed_kg = 10 };
  product->batch_id = flock->id;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  /* Before the first egg there is nothing to divide by, and the message says what is going on. */
  g_assert_null (stead_cost_answer_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
  FARM_DO (farm, stead_flock_repo_save_entry (farm->store, &entry, &farm_error));
  answer = stead_cost_answer_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, NULL);
  g_assert_nonnull (answer);
  g_assert_cmpint (answer->from, ==, farm->today - 50);
  /* Only the feed since then is feed; that of the chicks is in the hens. */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_FEED), 1200, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_START), 24 * (6000 + 4800 - 2800) / 2800.0, 1e-6);
  {
    g_autoptr(GArray) numbers = numbers_in (answer->whys[STEAD_COST_START]->worked);

    /* Chicks, feed, other, all; then all, worth, hens, eggs of each, eggs, charge. */
    g_assert_cmpfloat (g_array_index (numbers, double, 0), ==, 60);
    g_assert_cmpfloat (g_array_index (numbers, double, 1), ==, 48);
    g_assert_cmpfloat (g_array_index (numbers, double, 3), ==, 108);
    g_assert_cmpfloat (g_array_index (numbers, double, 5), ==, 28);
    g_assert_cmpfloat (g_array_index (numbers, double, 6), ==, 28);
  }
}

#define ADD(name, func) g_test_add ("/answer/batch-cost/" name, Pond, NULL, pond_set_up, func, pond_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("before-harvest", test_before_harvest);
  ADD ("planned-feed", test_planned_feed);
  ADD ("plan-used-up", test_plan_used_up);
  ADD ("half-way", test_half_way);
  ADD ("over", test_over);
  ADD ("nothing-planned", test_nothing_planned);
  ADD ("nothing-left", test_nothing_left);
  ADD ("by-the-pound", test_by_the_pound);
  ADD ("moved-out", test_moved_out);
  ADD ("wait", test_wait);
  ADD ("reared", test_reared);
  return g_test_run ();
}

/* test-batch.c - plan beside actual, the review of a batch, and what a harvest carries. */
#include "numbers.h"
#include "pond.h"

#include <math.h>
#include <string.h>

#include "answer/stead-batch-answer.h"
#include "answer/stead-harvest-answer.h"
#include "core/stead-money.h"

static SteadBatchAnswer *
ask (Pond *pond)
{
  g_autoptr(GError) error = NULL;
  SteadBatchAnswer *answer = stead_batch_answer_new (pond->farm.store, pond->fish, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

/* $8.00 a kilogram: planned, and on file from the first day. */
static void
plan_all (Pond *pond)
{
  SteadBatchPlan plan = { .output_base = 60, .price_cents = 800, .feed_kg = 100, .feed_cents_kg = 150,
                          .other_cents = 1000, .care_minutes_day = 12, .lost_frac = 0.05,
                          .ends_on = stead_day_new (2026, 4, 30) };

  FARM_DO (&pond->farm, stead_batch_repo_set_plan (pond->farm.store, pond->fish, &plan, &farm_error));
  FARM_DO (&pond->farm, stead_product_repo_set_price (pond->farm.store, pond->product, stead_day_new (2026, 1, 1), 800,
                                                      NULL, &farm_error));
}

static void
add_deaths (Pond       *pond,
            int         days_ago,
            int         n,
            const char *reason)
{
  SteadFishEntry entry = { .fish_id = pond->fish, .day = pond->farm.today - days_ago, .feed_kg = NAN, .deaths = n,
                           .water_c = NAN, .reason = (char *) reason };

  FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
}

static const SteadBatchRow *
row (const SteadBatchAnswer *answer,
     const char             *what)
{
  for (guint i = 0; i < answer->rows->len; i++)
    if (g_str_equal (((SteadBatchRow *) answer->rows->pdata[i])->what, what))
      return answer->rows->pdata[i];
  g_error ("There is no row “%s”.", what);
}

/* --- under way -------------------------------------------------------------------- */

/* So far $147 of feed and $50 of fish; 10 kg of feed are left of the plan's 100, at $1.80: $18; others $10 by plan.
 * 60 kg at $8 bring $480: $480 - $147 - $18 - $50 - $10 = $255.  Planned: $480 - $150 - $50 - $10 = $270. */
static void
test_under_way (Pond          *pond,
                gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;

  pond_feed (pond);
  plan_all (pond);
  answer = ask (pond);
  g_assert_false (answer->is_over);
  g_assert_true (answer->has_plan);
  g_assert_true (answer->has_variance);
  g_assert_cmpint (answer->pack, ==, STEAD_PACK_POUND);
  g_assert_cmpfloat_with_epsilon (answer->variance.planned_cents, 27000, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.actual_cents, 25500, 1e-6);
  g_assert_cmpuint (answer->review->len, ==, 0);
  /* 60 kg are 132.277 lb. */
  NUMBERS_ARE (answer->sentence, 1, 197, 28, 132, 30, 2026, 255, 15);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (row (answer, "Fish harvested")->planned, ==, "132 pounds");
  g_assert_cmpstr (row (answer, "Fish harvested")->actual, ==, "0 pounds");
  g_assert_cmpstr (row (answer, "Fish harvested")->end, ==, "132 pounds");
  g_assert_cmpstr (row (answer, "Left over")->planned, ==, "$270.00");
  g_assert_cmpstr (row (answer, "Left over")->end, ==, "$255.00");
  g_assert_cmpint (row (answer, "Left over")->tone, ==, STEAD_TONE_POOR);
  g_assert_cmpstr (row (answer, "Cost of feed")->end, ==, "$165.00");
  g_assert_cmpstr (row (answer, "End")->end, ==, "Apr 30, 2026");
  g_assert_cmpstr (row (answer, "Work, unpaid")->planned, ==, "24 hours");
  g_assert_cmpstr (row (answer, "Work, unpaid")->actual, ==, "18 hours");
  g_assert_cmpstr (stead_batch_answer_end_title (answer), ==, "Expected at the end");
}

/* The figures of the case above, each worked out. */
static void
test_whys (Pond          *pond,
           gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  pond_feed (pond);
  plan_all (pond);
  add_deaths (pond, 3, 4, "Power failed");
  answer = ask (pond);
  whys = stead_batch_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 147, 50, 197);
  NUMBERS_ARE (farm_find_why (whys, "What will finish it")->worked, 18, 10, 28, 30, 22.05);
  NUMBERS_ARE (farm_find_why (whys, "Price of the feed")->worked, 147, 198.42, 0.74);
  NUMBERS_ARE (farm_find_why (whys, "What comes of it is worth")->worked, 132, 3.63, 480);
  NUMBERS_ARE (farm_find_why (whys, "Left over")->worked, 480, 225, 255);
  NUMBERS_ARE (farm_find_why (whys, "Cost of one")->worked, 197, 28, 132, 1.70);
  NUMBERS_ARE (farm_find_why (whys, "Work, unpaid")->worked, 12, 120, 60, 24);
  NUMBERS_ARE (farm_find_why (whys, "Lost of all")->worked, 4, 200, 2);
  g_assert_true (whys->len == 9 && g_str_equal (((SteadWhy *) whys->pdata[8])->worked, answer->why->worked));
}

/* Of hens, what they are worth at the end comes off. */
static void
test_whys_of_hens (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  double sum;

  farm_stock (farm);
  farm_log (farm);
  answer = stead_batch_answer_new (farm->store, farm->flock, NULL);
  whys = stead_batch_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 111.20, 140, 251.20);
  sum = 251.20 + (double) stead_money_round (answer->money.cost.to_come_cents + 2000) / 100 - 20;
  NUMBERS_ARE (farm_find_why (whys, "Cost of one")->worked, 251.20, sum - 231.20, 20,
               round ((answer->money.good_base + answer->money.cost.expected_base) / 12),
               round (100 * sum / (answer->money.good_base + answer->money.cost.expected_base) * 12) / 100);
}

/* Without a plan there is nothing to hold it against; all fish are dead, so nothing is to come. */
static void
test_no_plan (Pond          *pond,
              gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadBatchAnswer) answer = NULL;

  pond_plan (pond, NAN, STEAD_DAY_NONE);
  add_deaths (pond, 3, 200, "Power failed");
  answer = ask (pond);
  g_assert_false (answer->has_plan);
  g_assert_false (answer->has_variance);
  g_assert_cmpint (answer->money.outlook.basis, ==, STEAD_OUTLOOK_NONE);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->sentence, 1, 50);
  /* Nothing came and nothing will: the $50 of fish are lost. */
  whys = stead_batch_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Left over")->worked, 0, 50, -50);
  NUMBERS_ARE (farm_find_why (whys, "Lost of all")->worked, 200, 200, 100);
  for (guint i = 0; i < answer->rows->len; i++)
    g_assert_null (((SteadBatchRow *) answer->rows->pdata[i])->end);
}

/* --- over --------------------------------------------------------------------------- */

/* 55 kg came: 20 at $8 and 35 at $9, $475; feed 90 kg for $147 ($1.6333); other costs none ($50 of fish).
 * Planned $270, came $475 - $147 - $50 = $278: +$8.
 *   price   (8.63636 - 8) x 55 = +35;  volume -5 x (8 - 100/60 x 1.5) = -27.50
 *   feed price (1.5 - 1.63333) x 90 = -12;  use (100/60 x 55 - 90) x 1.5 = +2.50;  other +10. */
static SteadBatchAnswer *
end_it (Pond *pond)
{
  pond_feed (pond);
  plan_all (pond);
  add_deaths (pond, 40, 9, "Low oxygen");
  add_deaths (pond, 20, 3, NULL);
  add_deaths (pond, 10, 4, "low oxygen ");
  pond_harvest (pond, pond->farm.today - 5, 20, 40, 7000, FALSE);
  FARM_DO (&pond->farm, stead_product_repo_set_price (pond->farm.store, pond->product, pond->farm.today - 2, 900, NULL,
                                                      &farm_error));
  pond_harvest (pond, pond->farm.today, 35, 144, 12700, TRUE);
  return ask (pond);
}

static void
test_variance (Pond          *pond,
               gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = end_it (pond);
  const SteadBatchVariance *variance = &answer->variance;

  g_assert_true (answer->is_over);
  g_assert_cmpfloat_with_epsilon (variance->planned_cents, 27000, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->actual_cents, 27800, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->price_cents, 3500, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->volume_cents, -2750, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->feed_price_cents, -1200, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->feed_use_cents, 250, 1e-6);
  g_assert_cmpfloat_with_epsilon (variance->other_cents, 1000, 1e-6);
  g_assert_cmpint (answer->lost, ==, 16);
  g_assert_cmpint (answer->started, ==, 200);
  g_assert_cmpuint (answer->losses->len, ==, 2);
}

static void
test_review (Pond          *pond,
             gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = end_it (pond);
  g_autoptr(GString) all = g_string_new (NULL);

  /* $197 for 121.254 lb: $1.62 a pound. */
  NUMBERS_ARE (answer->sentence, 1, 197, 121, 1.62, 278, 8);
  g_assert_cmpuint (answer->review->len, ==, 10);
  NUMBERS_ARE (answer->review->pdata[0], 1, 132, 30, 2026, 121);
  NUMBERS_ARE (answer->review->pdata[1], 270, 278, 8);
  NUMBERS_ARE (answer->review->pdata[2], 0.29, 35);
  NUMBERS_ARE (answer->review->pdata[3], 11, -27.5);
  NUMBERS_ARE (answer->review->pdata[4], -12);
  /* 91.667 kg should it have taken, 202.09 lb; it took 1.667 kg less, 3.67 lb. */
  NUMBERS_ARE (answer->review->pdata[5], 3.67, 202.09, 2.5);
  NUMBERS_ARE (answer->review->pdata[6], 10);
  NUMBERS_ARE (answer->review->pdata[7], 16, 200, 8, 5, 13, 3);
  /* Of 200 fish 10 were to be lost: 6 more, each at $197 / 190. */
  NUMBERS_ARE (answer->review->pdata[8], 6, 6.22);
  /* 90 kg over 55 kg. */
  NUMBERS_ARE (answer->review->pdata[9], 1.64);
  for (guint i = 0; i < answer->review->len; i++)
    g_string_append_printf (all, "%s\n", (char *) answer->review->pdata[i]);
  g_test_message ("%s", all->str);
  g_assert_nonnull (answer->why);
  NUMBERS_ARE (answer->why->worked, 35, -27.5, -12, 2.5, 10, 8);
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (all->str, "Low oxygen: 13"));
  g_assert_cmpstr (row (answer, "End")->end, ==, "30 days earlier");
  g_assert_cmpstr (row (answer, "Left over")->end, ==, "+$8.00");
  g_assert_cmpint (row (answer, "Left over")->tone, ==, STEAD_TONE_GOOD);
  g_assert_cmpint (row (answer, "Fish harvested")->tone, ==, STEAD_TONE_POOR);
  g_assert_cmpint (row (answer, "Cost of feed")->tone, ==, STEAD_TONE_GOOD);
  g_assert_cmpstr (stead_batch_answer_end_title (answer), ==, "Difference");
}

/* Over, and nothing was planned: what came is told, and that no plan says what was meant. */
static void
test_over_without_plan (Pond          *pond,
                        gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;

  pond_feed (pond);
  pond_plan (pond, NAN, STEAD_DAY_NONE);
  pond_harvest (pond, pond->farm.today, 55, 200, 19700, TRUE);
  answer = ask (pond);
  g_assert_true (answer->is_over);
  g_assert_false (answer->has_variance);
  g_assert_null (answer->why);
  g_assert_cmpuint (answer->review->len, ==, 2);
  NUMBERS_ARE (answer->review->pdata[0], 1, 121);
  NUMBERS_ARE (answer->review->pdata[1], 200);
}

/* A plan that only tells the output explains by volume alone. */
static void
test_thin_plan (Pond          *pond,
                gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;

  pond_feed (pond);
  FARM_DO (&pond->farm, stead_product_repo_set_price (pond->farm.store, pond->product, stead_day_new (2026, 1, 1), 800,
                                                      NULL, &farm_error));
  pond_harvest (pond, pond->farm.today, 55, 144, 12700, TRUE);
  answer = ask (pond);
  g_assert_true (answer->has_variance);
  g_assert_cmpfloat_with_epsilon (answer->variance.price_cents, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.feed_use_cents, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.other_cents, 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->variance.volume_cents, -5 * (800 - 14700 / 55.0), 1e-6);
}

/* Of a flock: 711 good eggs; $4.50 a dozen from the first price on. */
static void
test_flock (Pond          *pond,
            gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadBatchAnswer) answer = NULL;

  farm_stock (&pond->farm);
  farm_log (&pond->farm);
  answer = stead_batch_answer_new (pond->farm.store, pond->farm.flock, &error);
  g_assert_no_error (error);
  g_assert_cmpint (answer->pack, ==, STEAD_PACK_DOZEN);
  g_assert_cmpfloat_with_epsilon (answer->money.good_base, 711, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->price_cents, 450 / 12.0, 1e-9);
  /* 10 hens were to lay 300 each: 2,280 are left, 711 of 720 good as so far; 28 days gave 224. */
  g_assert_cmpfloat_with_epsilon (answer->money.outlook.expected_base, 2280 * 711 / 720.0, 1e-6);
  g_assert_cmpint (answer->money.outlook.ends_on, ==, pond->farm.today + 285);
  /* So far: birds $140, feed $111.20.  To come: 285 kg, as of late at $1.28; the old hens' $20 comes off. */
  g_assert_cmpfloat_with_epsilon (answer->money.cost.so_far_cents, 14000 + 11120, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->money.cost.to_come_cents, 285 * 128 - 2000, 1e-6);
}

/* A price that changes within a flock's days values the eggs of each span. */
static void
test_flock_prices (Pond          *pond,
                   gconstpointer  data)
{
  g_autoptr(SteadBatchAnswer) answer = NULL;

  farm_stock (&pond->farm);
  farm_log (&pond->farm);
  FARM_DO (&pond->farm, stead_product_repo_set_price (pond->farm.store, pond->farm.product, stead_day_new (2026, 3, 2), 600,
                                                      NULL, &farm_error));
  answer = stead_batch_answer_new (pond->farm.store, pond->farm.flock, NULL);
  /* Sixty days of 480 eggs, 6 cracked, at $4.50; thirty of 240, 3 cracked, at $6. */
  g_assert_cmpfloat_with_epsilon (answer->price_cents, (474 * 450 + 237 * 600) / 12.0 / 711, 1e-9);
}

/* --- harvests ------------------------------------------------------------------------ */

static SteadHarvestAnswer *
look (Pond               *pond,
      gint64              id,
      const SteadHarvest *harvest)
{
  g_autoptr(GError) error = NULL;
  SteadHarvestAnswer *answer = stead_harvest_answer_new (pond->farm.store, pond->fish, id, &error);

  g_assert_no_error (error);
  g_assert_true (stead_harvest_answer_set (answer, pond->farm.store, harvest, &error));
  g_assert_no_error (error);
  return answer;
}

/* ($197 + $54) over 60 kg is $4.18: 20 kg carry $83.67. */
static void
test_harvest (Pond          *pond,
              gconstpointer  data)
{
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autoptr(SteadHarvestAnswer) answer = NULL;
  g_autoptr(SteadHarvestAnswer) again = NULL;
  g_autoptr(SteadHarvestAnswer) last = NULL;
  gint64 id;

  pond_feed (pond);
  harvest->day = pond->farm.today;
  harvest->item_id = pond->dressed;
  harvest->quantity_base = 20;
  harvest->pieces = 40;
  answer = look (pond, 0, harvest);
  g_assert_cmpint (answer->cost_cents, ==, 8367);
  g_assert_cmpint (answer->alive, ==, 200);
  g_assert_cmpint (answer->last_item_id, ==, 0);
  g_assert_cmpstr (answer->lot_code, ==, "W26090-1");
  g_assert_cmpint (answer->best_by, ==, STEAD_DAY_NONE);
  NUMBERS_ARE (answer->sentence, 26090, 1, 20, 83.67, 4.18, 1);
  g_assert_null (answer->caution);
  /* Saved, and looked at again for a change: it proposes the same. */
  id = pond_harvest (pond, pond->farm.today, 20, 40, answer->cost_cents, FALSE);
  again = look (pond, id, harvest);
  g_assert_cmpint (again->cost_cents, ==, 8367);
  g_assert_cmpstr (again->lot_code, ==, "W26090-1");
  g_assert_cmpint (again->last_item_id, ==, pond->dressed);
  /* The last one takes all that went in and is not out. */
  harvest->is_last = TRUE;
  last = look (pond, 0, harvest);
  g_assert_cmpint (last->cost_cents, ==, 19700 - 8367);
  g_assert_cmpstr (last->lot_code, ==, "W26090-2");
}

static void
test_harvest_waits (Pond          *pond,
                    gconstpointer  data)
{
  SteadTreatment treatment = { .batch_id = pond->fish, .day = pond->farm.today - 9, .last_day = pond->farm.today - 6,
                               .wait_until = pond->farm.today - 2, .what = (char *) "Antibiotic feed",
                               .ordered_by = (char *) "Dr. Vale" };
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autoptr(SteadHarvestAnswer) answer = NULL;

  FARM_DO (&pond->farm, stead_treatment_repo_save (pond->farm.store, &treatment, &farm_error));
  harvest->day = pond->farm.today - 2;
  harvest->quantity_base = 20;
  harvest->item_id = pond->dressed;
  answer = look (pond, 0, harvest);
  g_assert_cmpint (answer->wait_until, ==, pond->farm.today - 2);
  g_assert_nonnull (answer->caution);
  harvest->day = pond->farm.today - 1;
  g_assert_true (stead_harvest_answer_set (answer, pond->farm.store, harvest, NULL));
  g_assert_cmpint (answer->wait_until, ==, STEAD_DAY_NONE);
}

/* Whatever is fed, harvested and planned: what lots carry is what went in, to the cent, at the last. */
static void
test_cost_in_is_cost_out (Pond          *pond,
                          gconstpointer  data)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (5);
  SteadDay day = stead_day_new (2026, 1, 1);
  gint64 left = 200;

  for (int i = 0; i < 12; i++)
    {
      SteadFishEntry entry = { .fish_id = pond->fish, .day = day, .water_c = NAN,
                               .feed_kg = g_rand_double_range (rand, 0.1, 1.3) };
      g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
      g_autoptr(SteadHarvestAnswer) answer = NULL;

      FARM_DO (&pond->farm, stead_fish_repo_save_entry (pond->farm.store, &entry, &farm_error));
      pond_plan (pond, g_rand_double_range (rand, 5, 200), pond->farm.today + g_rand_int_range (rand, 0, 90));
      harvest->batch_id = pond->fish;
      harvest->item_id = pond->dressed;
      harvest->day = day;
      harvest->quantity_base = g_rand_double_range (rand, 0.5, 12);
      harvest->pieces = i == 11 ? left : 10;
      harvest->is_last = i == 11;
      answer = look (pond, 0, harvest);
      harvest->cost_cents = answer->cost_cents;
      FARM_DO (&pond->farm, stead_harvest_repo_save (pond->farm.store, harvest, &farm_error));
      left -= harvest->pieces;
      day += g_rand_int_range (rand, 1, 8);
    }
  {
    g_autoptr(SteadBatchAnswer) answer = ask (pond);

    g_assert_true (answer->is_over);
    g_assert_cmpint (answer->money.harvested.cost_cents, ==, stead_money_round (answer->money.cost.so_far_cents));
    g_assert_cmpint (stead_batch_left_cents (&answer->money.cost), ==, 0);
  }
}

#define ADD(name, func) g_test_add ("/answer/batch/" name, Pond, NULL, pond_set_up, func, pond_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("under-way", test_under_way);
  ADD ("whys", test_whys);
  g_test_add ("/answer/batch/whys-of-hens", Farm, NULL, farm_set_up, test_whys_of_hens, farm_tear_down);
  ADD ("no-plan", test_no_plan);
  ADD ("variance", test_variance);
  ADD ("review", test_review);
  ADD ("over-without-plan", test_over_without_plan);
  ADD ("thin-plan", test_thin_plan);
  ADD ("flock", test_flock);
  ADD ("flock-prices", test_flock_prices);
  ADD ("harvest", test_harvest);
  ADD ("harvest-waits", test_harvest_waits);
  ADD ("cost-in-is-cost-out", test_cost_in_is_cost_out);
  return g_test_run ();
}

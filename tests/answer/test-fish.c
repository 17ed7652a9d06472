/* test-fish.c - how the fish are doing, against published examples and sums by hand.
 *
 * Today is 2026-03-31.  Growth: the example of the fish farmers' calculations page (SGR,
 * TGC): 50 g grow to 120 g in 45 days at 27 °C, which is a coefficient of 0.1027 x 100,
 * and to 500 g in 108 days more (reference rows hu-108 and hu-109).
 */
#include "numbers.h"
#include "shoal.h"

#include "answer/stead-batch-outlook.h"
#include "answer/stead-fish-answer.h"
#include "core/stead-fish-sample.h"
#include "core/stead-growth-fit.h"
#include "store/stead-harvest-repo.h"

#include <math.h>
#include <string.h>

static SteadFishAnswer *
ask (Shoal   *shoal,
     gint64  fish)
{
  g_autoptr(GError) error = NULL;
  SteadFishAnswer *answer = stead_fish_answer_new (shoal->farm.store, fish, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static void
assert_says (const char *text,
             const char *words)
{
  if (!farm_in_english ())
    return;
  if (text == NULL || strstr (text, words) == NULL)
    g_error ("“%s” does not say “%s”", text, words);
}

/* --- growth ------------------------------------------------------------------------------ */

static void
test_growth_as_published (Shoal          *shoal,
                          gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->alive, ==, 100);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 120, 0.5);
  g_assert_cmpfloat_with_epsilon (answer->biomass_kg, 12, 0.05);
  g_assert_cmpint (answer->sale_day, >=, shoal->farm.today + 107);
  g_assert_cmpint (answer->sale_day, <=, shoal->farm.today + 109);
  g_assert_cmpint (answer->sale_soonest, <, answer->sale_day);
  g_assert_cmpint (answer->sale_latest, >, answer->sale_day);
  g_assert_cmpfloat (answer->mean_g.low, <, 120);
  g_assert_cmpfloat (answer->mean_g.high, >, 120);
  g_assert_cmpfloat_with_epsilon (answer->water_c, 27, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->ahead_c, 27, 1e-9);
  g_assert_null (answer->no_sale);
}

/* A day without a reading is no cold day: every ninth day tells the same. */
static void
test_gaps (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 9);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 120, 0.5);
}

/* What the weighings say is core's business: the answer hands it the right numbers. */
static void
test_weighings_are_learned (Shoal          *shoal,
                            gconstpointer  data)
{
  const SteadGrowthWeighing weighings[] = {
    { 30, 50, NAN, 0 }, { 20, 70, NAN, 20 * 27 }, { 25, 85, NAN, 15 * 27 },
  };
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GError) error = NULL;
  SteadGrowthFit fit;
  SteadBand mean;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 25, 20, 70);
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 10, 25, 85);
  g_assert_true (stead_growth_fit (weighings, 3, 0.1027, &fit, &error));
  stead_growth_fit_weight (&fit, 10 * 27, 0, STEAD_BAND_LEVEL, &mean);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->tgc_x100, fit.tgc_x100, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, mean.likely, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.high, mean.high, 1e-6);
  g_assert_cmpfloat (answer->tgc_x100, <, 0.1027);
  g_assert_cmpuint (answer->n_learned, ==, 2);
  g_assert_cmpint (answer->last_weighed, ==, shoal->farm.today - 10);
  g_assert_cmpuint (answer->series.n_marks, ==, 2);
}

static void
test_left_out (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GPtrArray) list = NULL;
  SteadWeighing *slip;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 25, 20, 800);
  list = stead_weighing_repo_list (shoal->farm.store, shoal->fish, NULL);
  slip = list->pdata[0];
  slip->left_out = TRUE;
  FARM_DO (&shoal->farm, stead_weighing_repo_save (shoal->farm.store, slip, &farm_error));
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 120, 0.5);
  g_assert_true (answer->series.marks[0].left_out);
}

/* Four weighings on the curve and one that is half of it: it is named, and does not count. */
static void
test_far_off (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  for (int i = 1; i <= 5; i++)
    {
      double mean = pow (cbrt (50) + 0.1027 / 100 * 27 * 8 * i, 3);

      shoal_weigh (shoal, shoal->fish, shoal->farm.today - 45 + 8 * i, 30, i == 3 ? mean / 2 : mean);
    }
  answer = ask (shoal, shoal->fish);
  g_assert_true (answer->series.marks[2].far_off);
  g_assert_false (answer->series.marks[3].far_off);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 120, 3);
  assert_says (answer->caution, "The weighing of Mar 10, 2026 lies far off");
}

/* 100 of 120 g get 50 of 60 g: the mean falls to 100 g and grows on from there. */
static void
test_fish_that_come (Shoal          *shoal,
                     gconstpointer  data)
{
  gint64 small = shoal_group (shoal, "Small ones", shoal_tank (shoal, "Tank B", 1000), 50, 60, 1);
  SteadFishMove move = { .day = shoal->farm.today, .from_id = small, .to_id = shoal->fish, .n = 50, .mean_g = 60,
                         .cost_cents = 4000 };
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(SteadFishAnswer) emptied = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  FARM_DO (&shoal->farm, stead_fish_repo_save_move (shoal->farm.store, &move, &farm_error));
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->alive, ==, 150);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 100, 0.5);
  g_assert_cmpint (answer->cost_in_cents, ==, 14000);
  emptied = ask (shoal, small);
  g_assert_cmpint (emptied->alive, ==, 0);
  g_assert_cmpint (emptied->cost_in_cents, ==, 6000);
  assert_says (emptied->sentence, "No fish of this group is left");
}

/* --- where nothing is foretold ------------------------------------------------------------- */

static void
test_no_temperature (Shoal          *shoal,
                     gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask (shoal, shoal->fish);

  g_assert_cmpint (answer->sale_day, ==, STEAD_DAY_NONE);
  g_assert_cmpuint (answer->series.n_steps, >, 0);
  g_assert_cmpint (answer->series.steps[answer->series.n_steps - 1].day, ==, shoal->farm.today);
  assert_says (answer->sentence, "Enter the temperature of the water: without it no growth can be foretold");
  assert_says (answer->sentence, "to see how much to feed");
}

static void
test_old_temperature (Shoal          *shoal,
                      gconstpointer  data)
{
  gint64 old = shoal_group (shoal, "Old", shoal->tank, 10, 50, 100);
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_enter (shoal, (SteadFishEntry) { .fish_id = old, .day = shoal->farm.today - 61, .feed_kg = NAN, .water_c = 27 });
  answer = ask (shoal, old);
  assert_says (answer->no_sale, "more than two months ago");
  shoal_enter (shoal, (SteadFishEntry) { .fish_id = old, .day = shoal->farm.today - 40, .feed_kg = NAN, .water_c = 27 });
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, old);
  g_assert_null (answer->no_sale);
  g_assert_cmpint (answer->sale_day, !=, STEAD_DAY_NONE);
}

static void
test_too_cold (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 13, 45, 1);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->sale_day, ==, STEAD_DAY_NONE);
  assert_says (answer->no_sale, "At 55.4 °F these fish hardly grow");
  assert_says (answer->caution, "Water of 55.4 °F is too cold");
  g_assert_false (answer->has_rate);
}

static void
sell_heavy (SteadFish *group)
{
  group->sale_g = 1200;
}

/* The table of tilapia ends at 900 g: no line is drawn beyond, and no day named. */
static void
test_beyond_the_table (Shoal          *shoal,
                       gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, sell_heavy);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->sale_day, ==, STEAD_DAY_NONE);
  g_assert_cmpfloat (answer->series.steps[answer->series.n_steps - 1].likely_g, <=, 900);
  assert_says (answer->no_sale, "ends at 1.98 lb");
}

static void
call_perch (SteadFish *group)
{
  g_free (group->species);
  group->species = g_strdup ("yellow perch");
}

/* Of a fish that the program does not know it only tells what was weighed here. */
static void
test_own_word (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_change (shoal, call_perch);
  shoal_warm (shoal, shoal->fish, 20, 45, 1);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpstr (answer->species_name, ==, "yellow perch");
  g_assert_false (answer->has_rate);
  assert_says (answer->no_rate, "no feeding table for this fish");
  assert_says (answer->no_sale, "no growth table for this fish");
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 25, 20, 70);
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 5, 20, 95);
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->sale_day, !=, STEAD_DAY_NONE);
}

/* --- feed, tank, ratios ----------------------------------------------------------------------- */

/* 100 fish of 100 g in warm water: SRAC 282, table 1, feeds 3.5 percent there. */
static void
test_feed (Shoal          *shoal,
           gconstpointer  data)
{
  gint64 fish = shoal_group (shoal, "Hundreds", shoal_tank (shoal, "Tank B", 1000), 100, 100, 0);
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, fish, 27, 0, 1);
  farm_buy (&shoal->farm, shoal->farm.today, shoal->pellets, 10, 2000, FALSE);
  answer = ask (shoal, fish);
  g_assert_true (answer->has_rate);
  g_assert_cmpfloat_with_epsilon (answer->feed_kg, 10 * 0.035, 0.001);
  g_assert_cmpint (answer->feed_on, ==, shoal->farm.today);
  g_assert_cmpfloat_with_epsilon (answer->feed_on_hand_kg, 10, 1e-9);
  g_assert_true (isnan (answer->feed_days));
  shoal_enter (shoal, (SteadFishEntry) { .fish_id = fish, .day = shoal->farm.today, .feed_kg = 0.35, .water_c = NAN });
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, fish);
  g_assert_true (answer->feeds_today);
  g_assert_cmpint (answer->feed_on, ==, shoal->farm.today + 1);
  /* 0.35 kg in fourteen days. */
  g_assert_cmpfloat_with_epsilon (answer->feed_days, 9.65 / (0.35 / 14), 1e-6);
}

static void
call_catfish (SteadFish *group)
{
  g_free (group->species);
  group->species = g_strdup ("channel_catfish");
}

/* At 60 °F channel catfish get 1 percent every other day (reference rows hu-122, hu-123). */
static void
test_winter_feed (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_change (shoal, call_catfish);
  shoal_warm (shoal, shoal->fish, (60 - 32) / 1.8, 45, 1);
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 1, .feed_kg = 0.05, .water_c = NAN });
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->feed_kg, answer->biomass_kg * 0.01, 1e-9);
  g_assert_cmpint (answer->feed_on, ==, shoal->farm.today + 1);
}

/* 190 fish of 140 g in 1.5 m³ are 17.7 kg/m³ (reference row hu-136); another group adds to it. */
static void
test_density (Shoal          *shoal,
              gconstpointer  data)
{
  gint64 tank = shoal_tank (shoal, "Tank C", 1500);
  gint64 fish = shoal_group (shoal, "Counted", tank, 190, 140, 0);
  g_autoptr(SteadFishAnswer) answer = ask (shoal, fish);

  g_assert_cmpfloat_with_epsilon (answer->density_kg_m3, 17.7, 0.1);
  g_assert_cmpint (answer->density_class, ==, STEAD_FISH_DENSITY_SCHOOL);
  shoal_group (shoal, "Others", tank, 100, 300, 0);
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, fish);
  g_assert_cmpfloat_with_epsilon (answer->density_kg_m3, (26.6 + 30) / 1.5, 0.1);
  g_assert_cmpint (answer->density_class, ==, STEAD_FISH_DENSITY_OXYGEN);
  assert_says (answer->caution, "only with pure oxygen");
}

/* 100 fish of 50 g ate 12 kg and weighed 110 g; two died at 80 g: 12 / (98 x 0.11 - 5 + 0.16). */
static void
test_ratios (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  SteadDay half = shoal->farm.today - 22;
  double dead_g;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  for (int i = 0; i < 40; i++)
    shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 44 + i, .feed_kg = 0.3, .water_c = NAN });
  shoal_enter (shoal, (SteadFishEntry) { .day = half, .feed_kg = NAN, .water_c = NAN, .deaths = 1, .culled = 1 });
  shoal_weigh (shoal, shoal->fish, shoal->farm.today - 4, 30, 110);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->survival_frac, 0.98, 1e-9);
  dead_g = pow ((cbrt (answer->mean_g.likely) - answer->tgc_x100 / 100 * 27 * 22), 3);
  g_assert_cmpfloat_with_epsilon (
    answer->fcr,
    12 / (98 * pow (cbrt (answer->mean_g.likely) - answer->tgc_x100 / 100 * 27 * 4, 3) / 1000 - 5 + 2 * dead_g / 1000),
    0.01);
  g_assert_cmpfloat (answer->fcr, >, 1.9);
  g_assert_cmpfloat (answer->fcr, <, 2.4);
  g_assert_cmpuint (answer->weeks->len, ==, 7);
  g_assert_cmpint (g_array_index (answer->weeks, SteadFishWeek, 3).deaths, ==, 2);
  g_assert_cmpint (g_array_index (answer->weeks, SteadFishWeek, 3).alive, ==, 98);
  g_assert_cmpfloat_with_epsilon (g_array_index (answer->weeks, SteadFishWeek, 1).feed_kg, 2.1, 1e-9);
  g_assert_true (isnan (g_array_index (answer->weeks, SteadFishWeek, 6).feed_kg));
  g_assert_cmpfloat (g_array_index (answer->weeks, SteadFishWeek, 6).water_c, ==, 27);
}

/* 500 g and 30 cm: 1.85; 120 g and 18.5 cm: 1.90 (reference rows hu-127, hu-128). */
static void
test_condition (Shoal          *shoal,
                gconstpointer  data)
{
  static const SteadWeighed single[] = { { 500, 30 }, { 120, 18.5 }, { 90, NAN } };
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  g_autoptr(SteadFishAnswer) answer = NULL;

  weighing->batch_id = shoal->fish;
  weighing->day = shoal->farm.today;
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_vals (weighing->single, single, 3);
  FARM_DO (&shoal->farm, stead_weighing_repo_save (shoal->farm.store, weighing, &farm_error));
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->condition, (1.85 + 1.90) / 2, 0.01);
  /* Of two of the three the length was taken. */
  NUMBERS_ARE (answer->condition_worked, 2, 31, 2026, round (100 * answer->condition) / 100);
}

/* --- the harvest ------------------------------------------------------------------------------- */

static void
spread_out (SteadFish *group)
{
  group->spread_frac = 0.2;
  group->sale_frac = 0.8;
  group->purge_days = 4;
}

static void
test_harvest (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  double needed;
  int days;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, spread_out);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpfloat_with_epsilon (answer->cv_frac, 0.2, 1e-9);
  /* The mean at which 80 in 100 of lognormal weights have 500 g, and the days until then. */
  needed = stead_fish_mean_for_share_g (0.2, 500, 0.8);
  days = (int) ceil ((cbrt (needed) - cbrt (120)) / (0.1027 / 100 * 27));
  g_assert_cmpint (ABS (answer->sale_day - (shoal->farm.today + days)), <=, 1);
  g_assert_cmpint (answer->purge_day, ==, answer->sale_day - 4);
  g_assert_cmpfloat (answer->harvest_fish.likely, <, 100);
  g_assert_cmpfloat (answer->harvest_fish.likely, >, 80);
  g_assert_cmpfloat_with_epsilon (answer->harvest_kg.likely, answer->harvest_fish.likely * needed / 1000, 0.6);
  /* 3.8 percent goes in the purge, and 51.0 percent is left headed, skinned and gutted
   * (Clement and Lovell, Aquaculture 119, reference row hu-274). */
  g_assert_cmpfloat_with_epsilon (answer->purged_kg, answer->harvest_kg.likely * 0.962, 1e-6);
  g_assert_cmpuint (answer->dressed->len, ==, 3);
  g_assert_cmpint (g_array_index (answer->dressed, SteadFishDressed, 0).cut, ==, STEAD_FISH_CUT_HEADED);
  g_assert_cmpfloat_with_epsilon (g_array_index (answer->dressed, SteadFishDressed, 0).kg, answer->purged_kg * 0.51, 1e-6);
}

static void
purge (SteadFish *group)
{
  group->purge_from = stead_day_new (2026, 3, 30);
  group->purge_days = 4;
}

static void
test_purge (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, purge);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->purged_on, ==, stead_day_new (2026, 4, 3));
  g_assert_cmpint (answer->feed_on, ==, STEAD_DAY_NONE);
  assert_says (answer->sentence, "purged without feed since Mar 30 and can be harvested from <b>Apr 3</b> on");
}

static void
set_ready (SteadFish *group)
{
  group->sale_g = 100;
}

static void
test_ready (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, set_ready);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->sale_day, ==, shoal->farm.today);
  g_assert_cmpfloat (answer->share_ready, >, 0.99);
  assert_says (answer->sentence, "<b>50 in 100</b> have 3.5 oz or more: they can be sold.");
}

/* --- cautions ------------------------------------------------------------------------------------ */

/* A fifth a year of 100 fish is 0.43 in a week; three have a chance of 1 in 100. */
static void
test_losses (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 2, .feed_kg = NAN, .water_c = NAN, .deaths = 1 });
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 10, .feed_kg = NAN, .water_c = NAN, .deaths = 5 });
  answer = ask (shoal, shoal->fish);
  g_assert_null (answer->caution);
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 6, .feed_kg = NAN, .water_c = NAN, .deaths = 2 });
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, shoal->fish);
  assert_says (answer->caution, "3 fish were lost in 7 days, more than is usual. Test the water first");
  assert_says (answer->caution, "veterinarian");
}

static void
test_refused (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 2, .feed_kg = 0.1, .water_c = NAN, .refused = TRUE });
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 1, .feed_kg = 0.1, .water_c = NAN, .refused = TRUE });
  answer = ask (shoal, shoal->fish);
  assert_says (answer->caution, "They left their feed twice");
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today, .feed_kg = 0.1, .water_c = NAN });
  g_clear_pointer (&answer, stead_fish_answer_free);
  answer = ask (shoal, shoal->fish);
  g_assert_null (answer->caution);
}

static void
test_treated (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  SteadTreatment treatment = { .batch_id = shoal->fish, .day = shoal->farm.today - 3, .last_day = shoal->farm.today - 1,
                               .wait_until = shoal->farm.today + 20, .what = g_strdup ("bath"),
                               .ordered_by = g_strdup ("Dr. Moss") };

  FARM_DO (&shoal->farm, stead_treatment_repo_save (shoal->farm.store, &treatment, &farm_error));
  g_free (treatment.what);
  g_free (treatment.ordered_by);
  answer = ask (shoal, shoal->fish);
  assert_says (answer->caution, "none may be sold or eaten up to and including Apr 20, 2026");
}

/* --- words ------------------------------------------------------------------------------------------ */

/* All of the sentence's numbers are figures of the answer, in both languages. */
static void
test_sentence (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  const double lb = 0.45359237;
  int dates[3][3];
  SteadDay days[3];

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  farm_buy (&shoal->farm, shoal->farm.today, shoal->pellets, 10, 2000, FALSE);
  for (int i = 1; i <= 14; i++)
    shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - i, .feed_kg = 0.25, .water_c = NAN });
  shoal_weigh (shoal, shoal->fish, shoal->farm.today, 30, 120);
  answer = ask (shoal, shoal->fish);
  days[0] = answer->sale_day;
  days[1] = answer->sale_soonest;
  days[2] = answer->sale_latest;
  for (int i = 0; i < 3; i++)
    stead_day_split (days[i], &dates[i][0], &dates[i][1], &dates[i][2]);
  g_assert_cmpfloat_with_epsilon (answer->mean_g.likely, 120, 1);
  NUMBERS_ARE (answer->sentence, 100, round (answer->mean_g.likely / 1000 / (lb / 16) * 10) / 10,
               round (answer->biomass_kg / lb * 100) / 100, 80.6, 50, 100, 1.1, dates[0][2], dates[0][0], dates[1][2],
               dates[2][2], round (answer->feed_kg / lb * 100) / 100, floor (answer->feed_days));
}

static void
test_words (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  if (!farm_in_english ())
    return;
  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  answer = ask (shoal, shoal->fish);
  assert_says (answer->sentence, "100 fish should weigh about <b>4.2 oz</b> each, 26.45 lb in all; none was weighed here yet.");
  /* (cbrt (500) - cbrt (50)) / (0.1027 / 100 x 27) = 153.4 days from the first, 108.4 from now. */
  assert_says (answer->sentence, "At 80.6 °F, 50 in 100 reach 1.1 lb about <b>Jul 18, 2026</b> (");
  assert_says (answer->sentence, "No feed is on hand.");
}

static void
end_now (SteadFish *group)
{
  group->batch.ended_on = stead_day_new (2026, 3, 31);
}

static void
test_ended (Shoal          *shoal,
            gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, end_now);
  answer = ask (shoal, shoal->fish);
  g_assert_cmpint (answer->series.today, ==, STEAD_DAY_NONE);
  g_assert_cmpint (answer->sale_day, ==, STEAD_DAY_NONE);
  g_assert_null (answer->caution);
  assert_says (answer->sentence, "This group ended on Mar 31, 2026. It gave <b>0 lb</b>, 0 fish out of 100 fish.");
}

static double
pounds (double kg)
{
  return round (kg / 0.45359237 * 100) / 100;
}

static void
test_whys (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  shoal_change (shoal, spread_out);
  answer = ask (shoal, shoal->fish);
  whys = stead_fish_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 11);
  for (guint i = 0; i < whys->len; i++)
    {
      const SteadWhy *why = whys->pdata[i];

      g_assert_true (g_utf8_validate (why->worked, -1, NULL));
      g_assert_cmpstr (why->source, !=, "");
    }
  NUMBERS_ARE (farm_find_why (whys, "Fish alive")->worked, 100, 100);
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 100, 100);
  NUMBERS_ARE (farm_find_why (whys, "Spread of single fish")->worked, round (100 * answer->group->spread_frac),
               round (100 * answer->cv_frac), round (answer->mean_g.likely / 28.349523 * 10) / 10,
               round (answer->mean_g.likely * answer->cv_frac / 28.349523 * 100) / 100);
}

/* What came, went and was eaten, and what it made of them; and what the harvest will weigh. */
static void
test_whys_of_numbers (Shoal          *shoal,
                      gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const char *harvest;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  farm_buy (&shoal->farm, shoal->farm.today - 45, shoal->pellets, 25, 5000, FALSE);
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 20, .feed_kg = 1.5, .deaths = 4, .water_c = NAN });
  shoal_enter (shoal, (SteadFishEntry) { .day = shoal->farm.today - 10, .feed_kg = NAN, .culled = 3, .water_c = NAN });
  shoal_weigh (shoal, shoal->fish, shoal->farm.today, 30, 120);
  answer = ask (shoal, shoal->fish);
  whys = stead_fish_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Fish alive")->worked, 100, 4, 3, 93);
  g_assert_cmpint (answer->alive, ==, 93);
  /* 1.5 of 25 kg that cost $50, and the fish at $100 */
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 3, 100, 103);
  g_assert_true (g_str_has_suffix (farm_find_why (whys, "Feed on hand")->worked, " 51.81 lb = 51.81 lb"));
  NUMBERS_ARE (farm_find_why (whys, "Feed for the weight they gained")->worked, 31, 2026, pounds (1.5),
               pounds (answer->fcr_end_kg), pounds (5), pounds (answer->fcr_dead_kg), round (100 * answer->fcr) / 100);
  g_assert_cmpfloat_with_epsilon (answer->fcr, 1.5 / (answer->fcr_end_kg - 5 + answer->fcr_dead_kg), 1e-9);
  harvest = farm_find_why (whys, "What the harvest will give")->worked;
  g_assert_cmpuint (answer->dressed->len, >, 0);
  for (guint i = 0; i < answer->dressed->len; i++)
    {
      const SteadFishDressed *dressed = &g_array_index (answer->dressed, SteadFishDressed, i);
      g_autofree char *kg = stead_quantity_format (dressed->kg, stead_unit_by_id ("lb"));

      g_assert_nonnull (strstr (harvest, kg));
    }
}

static void
test_entry_names (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (shoal->farm.store, NULL);
  SteadFishEntry entry = { .day = stead_day_new (2026, 3, 3), .feed_kg = 0.5, .water_c = 25, .deaths = 3 };
  static const char * const expected[] = { "Feed, 1.1 lb, on Mar 3", "3 fish lost on Mar 3", "Water of 77 °F on Mar 3",
                                           "Feed left on Mar 3", "Note on Mar 3" };

  if (!farm_in_english ())
    return;
  for (int i = 0; i < 5; i++)
    {
      g_autofree char *name = NULL;

      entry.feed_kg = i == 0 ? 0.5 : NAN;
      entry.deaths = i <= 1 ? 3 : 0;
      entry.water_c = i <= 2 ? 25 : NAN;
      entry.refused = i <= 3;
      name = stead_fish_entry_name (&entry, farm);
      g_assert_cmpstr (name, ==, expected[i]);
    }
}

#define TEST(path, func) g_test_add ("/answer/fish/" path, Shoal, NULL, shoal_set_up, func, shoal_tear_down)

/* --- what the batch is expected to give ---------------------------------------------------- */

static void
read_outlook (Shoal              *shoal,
              SteadBatchOutlook  *out)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (shoal->farm.store, shoal->fish, NULL);
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_batch_outlook_read (shoal->farm.store, batch, out, &error));
  g_assert_no_error (error);
}

/* Ten fish of 1.2 kg alive gave 0.612 kg: 51.0 percent, as headed, skinned and gutted catfish
 * do (Clement and Lovell, Aquaculture 119, reference row hu-274). */
static void
harvest_ten (Shoal *shoal)
{
  SteadItem item = { .name = (char *) "Tilapia, dressed", .kind = STEAD_ITEM_PRODUCE, .unit = stead_unit_by_id ("kg"),
                     .reorder_base = NAN };
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();

  FARM_DO (&shoal->farm, stead_item_repo_save (shoal->farm.store, &item, &farm_error));
  harvest->batch_id = shoal->fish;
  harvest->item_id = item.id;
  harvest->day = shoal->farm.today;
  harvest->quantity_base = 0.612;
  harvest->live_kg = 1.2;
  harvest->pieces = 10;
  FARM_DO (&shoal->farm, stead_harvest_repo_save (shoal->farm.store, harvest, &farm_error));
}

static void
test_outlook (Shoal          *shoal,
              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(SteadFishAnswer) fewer = NULL;
  SteadBatchOutlook outlook;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  answer = ask (shoal, shoal->fish);
  read_outlook (shoal, &outlook);
  g_assert_cmpint (outlook.basis, ==, STEAD_OUTLOOK_FORECAST);
  g_assert_true (outlook.is_live);
  g_assert_cmpint (outlook.ends_on, ==, answer->sale_day);
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, answer->harvest_kg.likely, 1e-9);
  g_assert_cmpfloat (outlook.low_base, <, outlook.expected_base);
  g_assert_cmpfloat (outlook.high_base, >, outlook.expected_base);
  harvest_ten (shoal);
  fewer = ask (shoal, shoal->fish);
  read_outlook (shoal, &outlook);
  g_assert_cmpint (fewer->alive, ==, 90);
  g_assert_false (outlook.is_live);
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, fewer->harvest_kg.likely * 0.51, 1e-9);
  g_assert_cmpfloat_with_epsilon (outlook.high_base, fewer->harvest_kg.high * 0.51, 1e-9);
}

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  TEST ("growth-as-published", test_growth_as_published);
  TEST ("gaps-are-no-cold", test_gaps);
  TEST ("weighings-are-learned", test_weighings_are_learned);
  TEST ("left-out-is-not-learned", test_left_out);
  TEST ("far-off-is-named", test_far_off);
  TEST ("fish-that-come-change-the-mean", test_fish_that_come);
  TEST ("none-without-temperature", test_no_temperature);
  TEST ("none-with-old-temperature", test_old_temperature);
  TEST ("none-where-too-cold", test_too_cold);
  TEST ("none-beyond-the-table", test_beyond_the_table);
  TEST ("fish-by-the-farms-own-word", test_own_word);
  TEST ("feed-by-table", test_feed);
  TEST ("feed-in-winter", test_winter_feed);
  TEST ("density", test_density);
  TEST ("ratios", test_ratios);
  TEST ("condition", test_condition);
  TEST ("harvest", test_harvest);
  TEST ("purge", test_purge);
  TEST ("outlook", test_outlook);
  TEST ("ready", test_ready);
  TEST ("caution/losses", test_losses);
  TEST ("caution/feed-refused", test_refused);
  TEST ("caution/treated", test_treated);
  TEST ("sentence-bears-the-figures", test_sentence);
  TEST ("words", test_words);
  TEST ("ended", test_ended);
  TEST ("whys", test_whys);
  TEST ("whys-of-numbers", test_whys_of_numbers);
  TEST ("entry-names", test_entry_names);
  return g_test_run ();
}

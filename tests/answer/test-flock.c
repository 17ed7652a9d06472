/* test-flock.c - how the flock is doing, against sums and the curve worked out anew. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-flock-answer.h"

#include <math.h>
#include <string.h>

static SteadFlockAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadFlockAnswer *answer = stead_flock_answer_new (farm->store, farm->flock, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static void
change_flock (Farm *farm,
              void (*change) (SteadFlock *flock))
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, NULL);

  change (flock);
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
}

static void
set_curve (SteadFlock *flock)
{
  flock->curve = (SteadLayCurve) { .level_frac = 0.97, .decline_week = 0.005, .steepness_week = 1.3, .half_week = 2,
                                   .onset_age_weeks = 18 };
}

static void
set_up (Farm          *farm,
        gconstpointer  data)
{
  farm_set_up (farm, data);
  change_flock (farm, set_curve);
}

/* That curve at an age in weeks, written out. */
static double
curve_at (double age)
{
  double t = age - 18;

  return 0.97 * exp (-0.005 * t) / (1 + exp (-1.3 * (t - 2)));
}

/* The log, but with other numbers of eggs on its last days, oldest first. */
static void
log_ending (Farm      *farm,
            const int *eggs,
            int        n)
{
  SteadDay first = stead_day_new (2026, 1, 1);

  for (SteadDay day = first; day < farm->today; day++)
    {
      int at = day - (farm->today - n);

      farm_entry (farm, day, at >= 0 ? eggs[at] : 8, 0, 1, 0);
    }
}

static void
test_figures (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  double middle = (30 * 7 + 89 - 3.5) / 7;    /* hatched 30 weeks before 1 January; today is day 89 */

  farm_stock (farm);
  farm_log (farm);
  answer = ask (farm);
  g_assert_cmpint (answer->alive, ==, 10);
  g_assert_cmpfloat_with_epsilon (answer->age_weeks, 30 + 89 / 7.0, 1e-9);
  g_assert_cmpint (answer->week.eggs, ==, 56);
  g_assert_cmpint (answer->week.days_logged, ==, 7);
  g_assert_cmpint (answer->so_far.eggs, ==, 720);
  g_assert_cmpint (answer->recent.eggs, ==, 84 * 8);
  g_assert_cmpfloat_with_epsilon (answer->week_frac, 0.8, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->expected_frac, curve_at (middle), 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->feed_per_dozen_kg, 84.0 / (84 * 8 / 12.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->feed_on_hand_kg, 10, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->feed_days, 10, 1e-6);
  /* birds $140.00, feed 50 at $1.20 and 40 at $1.28 */
  g_assert_cmpint (answer->cost_in_cents, ==, 14000 + 6000 + 5120);
  /* ten hens for a week at about the same rate */
  g_assert_cmpfloat_with_epsilon (answer->next_dozens, 10 * 7 * curve_at (answer->age_weeks + 0.5) / 12, 0.01);
  g_assert_null (answer->caution);
}

static void
test_sentence (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  double gap;

  farm_stock (farm);
  farm_log (farm);
  answer = ask (farm);
  gap = round (100 * answer->expected_frac) - 80;
  g_assert_cmpfloat (gap, >, 0);
  NUMBERS_ARE (answer->sentence, 10, 80, 100, gap, 10);
}

static void
test_series (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  gint64 eggs = 0;

  farm_log (farm);
  answer = ask (farm);
  g_assert_cmpuint (answer->series.n_weeks, ==, answer->weeks->len);
  for (gsize i = 0; i < answer->series.n_weeks; i++)
    eggs += answer->series.weeks[i].eggs;
  g_assert_cmpint (eggs, ==, 720);
  g_assert_cmpuint (answer->series.n_curve, >, 50);
  for (gsize i = 0; i < answer->series.n_curve; i++)
    {
      g_assert_cmpfloat_with_epsilon (answer->series.curve_frac[i], curve_at (answer->series.curve_age[i]), 1e-9);
      if (i > 0)
        g_assert_cmpfloat (answer->series.curve_age[i], >, answer->series.curve_age[i - 1]);
    }
  g_assert_cmpfloat (answer->series.curve_age[answer->series.n_curve - 1], >, answer->age_weeks);
}

/* --- clearly few eggs ------------------------------------------------------------- */

/* The chance of @k eggs or fewer of ten hens that lay at @p: summed, not asked of a library. */
static double
chance_of_at_most (int    k,
                   double p)
{
  double sum = 0;

  for (int i = 0; i <= k; i++)
    {
      double ways = 1;

      for (int j = 0; j < i; j++)
        ways = ways * (10 - j) / (j + 1);
      sum += ways * pow (p, i) * pow (1 - p, 10 - i);
    }
  return sum;
}

/* The most eggs of ten hens that are clearly few at today's age. */
static int
few_eggs (const Farm *farm)
{
  double p = curve_at (30 + 88 / 7.0);
  int k = 0;

  while (chance_of_at_most (k + 1, p) < 0.025)
    k++;
  g_assert_cmpfloat (chance_of_at_most (k, p), <, 0.025);
  return k;
}

static void
test_two_low_days (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  int few = few_eggs (farm);
  const int eggs[] = { few, few };

  log_ending (farm, eggs, 2);
  answer = ask (farm);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->caution, 2);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->caution, "water and feed"));
      g_assert_nonnull (strstr (answer->caution, "veterinarian"));
    }
}

/* One egg more on either day is within what chance does. */
static void
test_just_not_low (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  int few = few_eggs (farm);
  const int eggs[] = { few, few + 1 };

  log_ending (farm, eggs, 2);
  answer = ask (farm);
  g_assert_null (answer->caution);
}

static void
test_three_of_seven (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  static const int eggs[] = { 8, 1, 8, 1, 8, 1, 8 };

  log_ending (farm, eggs, 7);
  answer = ask (farm);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->caution, 3, 7);
}

/* A day marked as not to learn from has its reason told already. */
static void
test_left_out (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  static const int eggs[] = { 1, 1 };
  g_autoptr(GPtrArray) entries = NULL;

  log_ending (farm, eggs, 2);
  entries = stead_flock_repo_entries (farm->store, farm->flock, farm->today - 1, farm->today - 1, NULL);
  ((SteadFlockEntry *) entries->pdata[0])->left_out = TRUE;
  FARM_DO (farm, stead_flock_repo_save_entry (farm->store, entries->pdata[0], &farm_error));
  answer = ask (farm);
  g_assert_null (answer->caution);
}

/* --- other states ------------------------------------------------------------------ */

static void
test_nothing_yet (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = ask (farm);

  g_assert_true (isnan (answer->week_frac));
  g_assert_true (isnan (answer->feed_days));
  g_assert_true (isnan (answer->feed_per_dozen_kg));
  NUMBERS_ARE (answer->sentence, 10);
}

static void
make_chicks (SteadFlock *flock)
{
  flock->hatched_on = flock->housed_on - 7;
}

static void
test_too_young (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  change_flock (farm, make_chicks);
  stead_store_set_today (farm->store, stead_day_new (2026, 1, 10));
  answer = ask (farm);
  /* 7 + 9 days are two whole weeks; the first eggs come at 18 */
  NUMBERS_ARE (answer->sentence, 10, 2, 18);
}

static void
test_gap (Farm          *farm,
          gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  farm_entry (farm, stead_day_new (2026, 2, 1), 8, 0, NAN, 0);
  answer = ask (farm);
  g_assert_true (isnan (answer->week_frac));
  g_assert_cmpint (answer->so_far.eggs, ==, 8);
  g_assert_null (strstr (answer->sentence, "<b>"));
}

static void
end_in_march (SteadFlock *flock)
{
  flock->ended_on = stead_day_new (2026, 3, 31);
}

static void
test_ended (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  farm_log (farm);
  change_flock (farm, end_in_march);
  stead_store_set_today (farm->store, stead_day_new (2026, 6, 1));
  answer = ask (farm);
  g_assert_cmpfloat (answer->next_dozens, ==, 0);
  g_assert_null (answer->caution);
  NUMBERS_ARE (answer->sentence, 31, 2026, 720, 10);
  stead_store_set_today (farm->store, farm->today);
}

/* Losses of today are off at once. */
static void
test_losses (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  farm_entry (farm, farm->today - 1, 8, 0, NAN, 2);
  farm_entry (farm, farm->today, STEAD_COUNT_NONE, 0, NAN, 1);
  answer = ask (farm);
  g_assert_cmpint (answer->alive, ==, 7);
}

static void
test_no_feed (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 20, 2400, FALSE);
  farm_log (farm);
  answer = ask (farm);
  g_assert_cmpfloat_with_epsilon (answer->feed_on_hand_kg, 0, 1e-6);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->sentence, "No feed is on hand."));
}

static void
test_whys (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  const SteadWhy *why;

  farm_stock (farm);
  farm_log (farm);
  answer = ask (farm);
  whys = stead_flock_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 4);
  why = whys->pdata[0];
  NUMBERS_ARE (why->worked, 56, 70, 80);
  why = whys->pdata[1];
  NUMBERS_ARE (why->worked, 0.97, 0.005, 1.3, 2, 18, round (1000 * answer->expected_frac) / 10);
  why = whys->pdata[2];
  /* 84 kg are 185.19 lb; 672 eggs are 56 dozen; 3.31 lb a dozen */
  NUMBERS_ARE (why->worked, 185.19, 672, 12, 3.31);
  why = whys->pdata[3];
  NUMBERS_ARE (why->worked, 22.05, 2.20, 10);
}

static void
test_entry_names (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, NULL);
  SteadDay day = stead_day_new (2026, 3, 3);
  SteadFlockEntry eggs = { .day = day, .eggs = 22, .feed_kg = NAN };
  SteadFlockEntry feed = { .day = day, .eggs = STEAD_COUNT_NONE, .feed_kg = 6.8 * 0.45359237 };
  SteadFlockEntry lost = { .day = day, .eggs = STEAD_COUNT_NONE, .feed_kg = NAN, .deaths = 1 };
  SteadFlockEntry note = { .day = day, .eggs = STEAD_COUNT_NONE, .feed_kg = NAN };
  g_autofree char *of_eggs = stead_flock_answer_entry_name (&eggs, facts);
  g_autofree char *of_feed = stead_flock_answer_entry_name (&feed, facts);
  g_autofree char *of_lost = stead_flock_answer_entry_name (&lost, facts);
  g_autofree char *of_note = stead_flock_answer_entry_name (&note, facts);

  NUMBERS_ARE (of_eggs, 22, 3);
  NUMBERS_ARE (of_feed, 6.8, 3);
  NUMBERS_ARE (of_lost, 1, 3);
  NUMBERS_ARE (of_note, 3);
  if (farm_in_english ())
    g_assert_cmpstr (of_eggs, ==, "22 eggs on Mar 3");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/flock/" name, Farm, NULL, set_up, test, farm_tear_down)
  ADD ("figures", test_figures);
  ADD ("sentence", test_sentence);
  ADD ("series", test_series);
  ADD ("two-low-days", test_two_low_days);
  ADD ("just-not-low", test_just_not_low);
  ADD ("three-of-seven", test_three_of_seven);
  ADD ("left-out", test_left_out);
  ADD ("nothing-yet", test_nothing_yet);
  ADD ("too-young", test_too_young);
  ADD ("gap", test_gap);
  ADD ("ended", test_ended);
  ADD ("losses", test_losses);
  ADD ("no-feed", test_no_feed);
  ADD ("whys", test_whys);
  ADD ("entry-names", test_entry_names);
#undef ADD
  return g_test_run ();
}

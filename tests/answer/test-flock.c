/* test-flock.c - how the flock is doing, against sums and the curve worked out anew. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-batch-outlook.h"
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

static void
make_pullets (SteadFlock *flock)
{
  flock->hatched_on = flock->housed_on - 7 * 20;
}

static void
set_up_pullets (Farm *farm)
{
  change_flock (farm, make_pullets);
}

static void
make_old (SteadFlock *flock)
{
  flock->hatched_on = flock->housed_on - 7 * 90;
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
  /* The log has taught the rate of eight in ten; the hens of a week get fewer, not more. */
  g_assert_true (answer->is_learned);
  g_assert_cmpfloat (answer->next_dozens, <, 56 / 12.0);
  g_assert_cmpfloat_with_epsilon (answer->next_dozens, 56 / 12.0, 0.05 * 56 / 12.0);
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
  g_assert_cmpuint (answer->expect_weeks, ==, 8);
  /* 31 March and eight weeks; ten days of feed */
  NUMBERS_ARE (answer->sentence, 10, 80, 100, gap, round (answer->expect_eggs.low / 12),
               round (answer->expect_eggs.high / 12), 26, 10);
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
      g_assert_cmpfloat_with_epsilon (answer->series.curve_frac[i],
                                      stead_lay_curve_frac (&answer->fit.curve, answer->series.curve_age[i]), 1e-9);
      if (i > 0)
        g_assert_cmpfloat (answer->series.curve_age[i], >, answer->series.curve_age[i - 1]);
    }
  g_assert_cmpfloat (answer->series.curve_age[answer->series.n_curve - 1], >, answer->age_weeks);
}

/* --- the forecast ----------------------------------------------------------------- */

/* Against core, on weeks that the test sums up itself; today's entry is not learned from. */
static void
test_forecast (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  SteadLayCurve plan = { 0.97, 0.005, 1.3, 2, 18 };
  SteadLayWeek weeks[13];
  SteadLayAhead ahead[8];
  SteadLayFit fit;

  farm_log (farm);
  for (int i = 0; i < 13; i++)
    {
      int days = i < 12 ? 7 : 5;

      weeks[i] = (SteadLayWeek) { .first_day = stead_day_new (2026, 1, 1) + 7 * i, .age_weeks = 30 + i + 0.5,
                                  .days_logged = days, .hen_days = 10 * days, .eggs = 8 * days };
    }
  g_assert_true (stead_lay_fit (weeks, 13, &plan, &fit, NULL, NULL));
  g_assert_true (stead_lay_fit_ahead (&fit, 10, 30 + 89 / 7.0 + 0.5, 8, 0.8, ahead, NULL, NULL));
  answer = ask (farm);
  g_assert_true (answer->has_forecast);
  g_assert_cmpfloat_with_epsilon (answer->fit.curve.level_frac, fit.curve.level_frac, 1e-9);
  for (guint i = 0; i < 8; i++)
    {
      const SteadLayAhead *week = &g_array_index (answer->ahead, SteadLayAhead, i);

      g_assert_cmpfloat_with_epsilon (week->age_weeks, ahead[i].age_weeks, 1e-9);
      g_assert_cmpfloat_with_epsilon (week->eggs.low, ahead[i].eggs.low, 1);
      g_assert_cmpfloat_with_epsilon (week->eggs.high, ahead[i].eggs.high, 1);
      g_assert_cmpfloat (answer->expect_eggs.low, <=, week->eggs.low);
      g_assert_cmpfloat (answer->expect_eggs.high, >=, week->eggs.high);
    }
  /* As far as the curve is good for: 80 weeks of lay, from 18 weeks of age on. */
  g_assert_cmpuint (answer->ahead->len, ==, (guint) floor (98 - (30 + 89 / 7.0 + 0.5)) + 1);
  g_assert_null (answer->fit_note);
}

/* The band of the chart starts today, goes to the end of the curve, and has the curve in it. */
static void
test_band (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  const SteadLaySeries *series;

  farm_log (farm);
  answer = ask (farm);
  series = &answer->series;
  g_assert_cmpuint (series->n_ahead, >, 20);
  g_assert_cmpfloat (series->ahead_age[0], ==, answer->age_weeks);
  g_assert_cmpfloat (series->ahead_age[series->n_ahead - 1], ==, series->curve_age[series->n_curve - 1]);
  for (gsize i = 0; i < series->n_ahead; i++)
    {
      g_assert_cmpfloat (series->ahead_frac[i].low, <, series->ahead_frac[i].likely);
      g_assert_cmpfloat (series->ahead_frac[i].high, >, series->ahead_frac[i].likely);
      g_assert_cmpfloat_with_epsilon (series->ahead_frac[i].likely,
                                      stead_lay_curve_frac (&answer->fit.curve, series->ahead_age[i]), 1e-9);
    }
}

/* Ten weeks to the planned end: what the band of all of them says, less the cracked. */
static void
test_outlook (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (farm->store, farm->flock, NULL);
  SteadBatchOutlook outlook;
  SteadBatchPlan plan;
  SteadBand eggs;
  double likely = 0, low = 0;

  farm_log (farm);
  stead_batch_plan_init (&plan);
  plan.ends_on = farm->today + 69;
  FARM_DO (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, &farm_error));
  answer = ask (farm);
  g_assert_true (stead_flock_answer_until (answer, plan.ends_on, &eggs));
  for (guint i = 0; i < 10; i++)
    {
      likely += g_array_index (answer->ahead, SteadLayAhead, i).eggs.likely;
      low += g_array_index (answer->ahead, SteadLayAhead, i).eggs.low;
    }
  g_assert_cmpfloat_with_epsilon (eggs.likely, likely, 0.02 * likely);
  /* Weeks do not all turn out low together. */
  g_assert_cmpfloat (eggs.low, >, low);
  g_assert_true (stead_batch_outlook_read (farm->store, batch, &outlook, NULL));
  g_assert_cmpint (outlook.basis, ==, STEAD_OUTLOOK_FORECAST);
  g_assert_cmpint (outlook.ends_on, ==, plan.ends_on);
  /* Nine of 720 were cracked. */
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, eggs.likely * (1 - 9 / 720.0), 1e-6);
  g_assert_cmpfloat_with_epsilon (outlook.low_base, eggs.low * (1 - 9 / 720.0), 1e-6);
  g_assert_cmpfloat (outlook.high_base, >, outlook.expected_base);
  g_assert_false (stead_flock_answer_until (answer, farm->today - 1, &eggs));
}

/* Past the last age of the curve: as many a day as in the last weeks, 8, less the cracked. */
static void
test_outlook_past_the_curve (Farm          *farm,
                             gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (farm->store, farm->flock, NULL);
  SteadBatchOutlook outlook;
  SteadBatchPlan plan;
  SteadBand eggs;

  farm_log (farm);
  stead_batch_plan_init (&plan);
  plan.ends_on = farm->today + 700;
  FARM_DO (farm, stead_batch_repo_set_plan (farm->store, farm->flock, &plan, &farm_error));
  answer = ask (farm);
  g_assert_false (stead_flock_answer_until (answer, plan.ends_on, &eggs));
  g_assert_true (stead_batch_outlook_read (farm->store, batch, &outlook, NULL));
  g_assert_cmpint (outlook.ends_on, ==, plan.ends_on);
  g_assert_cmpfloat_with_epsilon (outlook.expected_base, 8 * 700 * (1 - 9 / 720.0), 1e-6);
  g_assert_true (isnan (outlook.low_base));
}

static void
test_short_log (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  set_up_pullets (farm);
  for (SteadDay day = stead_day_new (2026, 1, 1); day < stead_day_new (2026, 1, 11); day++)
    farm_entry (farm, day, 5, 0, NAN, 0);
  stead_store_set_today (farm->store, stead_day_new (2026, 1, 11));
  answer = ask (farm);
  g_assert_true (answer->has_forecast);
  g_assert_false (answer->is_learned);
  g_assert_cmpfloat (answer->fit.curve.level_frac, ==, 0.97);
  if (farm_in_english () && answer->expect_weeks > 1)
    g_assert_nonnull (strstr (answer->sentence, "by the usual curve"));
}

/* One week so bad that it is no chance, one marked as left out: both are named. */
static void
test_named_weeks (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  SteadDay first = stead_day_new (2026, 1, 1), left_out = first + 28, bad = first + 56;
  g_autoptr(GPtrArray) entries = NULL;
  SteadFlockEntry *entry;
  gboolean found[2] = { FALSE, FALSE };

  for (SteadDay day = first; day < farm->today; day++)
    farm_entry (farm, day, day >= bad && day < bad + 7 ? 1 : day >= left_out && day < left_out + 7 ? 4 : 8, 0, 1, 0);
  entries = stead_flock_repo_entries (farm->store, farm->flock, left_out + 2, left_out + 2, NULL);
  entry = entries->pdata[0];
  entry->left_out = TRUE;
  g_free (entry->note);
  entry->note = g_strdup ("Frozen waterer");
  FARM_DO (farm, stead_flock_repo_save_entry (farm->store, entry, &farm_error));
  answer = ask (farm);
  for (gsize i = 0; i < answer->series.n_notes; i++)
    {
      const SteadLayNote *note = &answer->series.notes[i];

      found[0] |= !note->far_off && note->first == 4 && note->last == 4 && strstr (note->text, "Frozen waterer") != NULL;
      found[1] |= note->far_off && note->first == 8 && note->last == 8;
    }
  g_assert_true (found[0]);
  g_assert_true (found[1]);
  /* 29 January and 26 February */
  NUMBERS_ARE (answer->fit_note, 29, 26);
  /* The bad weeks have not pulled the curve down: the fit is that of eight in ten. */
  g_assert_cmpfloat_with_epsilon (answer->next_dozens, 56 / 12.0, 0.06 * 56 / 12.0);
}

/* Past the range of the curve nothing is drawn. */
static void
test_too_old (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  change_flock (farm, make_old);
  farm_log (farm);
  answer = ask (farm);
  g_assert_false (answer->has_forecast);
  g_assert_cmpuint (answer->series.n_ahead, ==, 0);
  g_assert_cmpfloat (answer->next_dozens, ==, 0);
  NUMBERS_ARE (answer->sentence, 10, 80, 100, 80);
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

/* The most eggs of ten hens that are clearly few: their log has taught eight a day. */
static int
few_eggs (void)
{
  double p = 0.8;
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
  int few = few_eggs ();
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
  int few = few_eggs ();
  const int eggs[] = { few, few + 1 };

  log_ending (farm, eggs, 2);
  answer = ask (farm);
  g_assert_null (answer->caution);
}

static void
test_three_of_seven (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_auto(GStrv) lines = NULL;
  g_autoptr(SteadFlockAnswer) answer = NULL;
  static const int eggs[] = { 8, 1, 8, 1, 8, 1, 8 };

  log_ending (farm, eggs, 7);
  answer = ask (farm);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->caution, 3, 7);
  whys = stead_flock_answer_whys (answer);
  lines = g_strsplit (farm_find_why (whys, "Days with clearly fewer eggs")->worked, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 3);
  for (int i = 0; i < 3; i++)
    {
      const SteadFlockLowDay *low = &answer->low.days[i];

      g_assert_cmpint (low->day, ==, farm->today - 6 + 2 * i);
      g_assert_cmpfloat (low->least, <, low->likely);
      g_assert_cmpfloat (low->least, >, 1);   /* an egg is below it */
      NUMBERS_ARE (lines[i], 25 + 2 * i, 1, 10, round (10 * low->likely) / 10, round (10 * low->least) / 10);
    }
}

/* A flock that always laid fewer than its breed is not warned of each day. */
static void
test_low_is_its_own_rate (Farm          *farm,
                          gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;

  for (SteadDay day = stead_day_new (2026, 1, 1); day < farm->today; day++)
    farm_entry (farm, day, 5, 0, 1, 0);
  answer = ask (farm);
  g_assert_null (answer->caution);
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
  NUMBERS_ARE (answer->sentence, 10, round (answer->expect_eggs.low / 12), round (answer->expect_eggs.high / 12), 26);
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
  /* Nothing but what is to be expected. */
  NUMBERS_ARE (answer->sentence, round (answer->expect_eggs.low / 12), round (answer->expect_eggs.high / 12), 26);
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
  const SteadLayAhead *week;

  farm_stock (farm);
  farm_log (farm);
  answer = ask (farm);
  whys = stead_flock_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 9);
  NUMBERS_ARE (farm_find_why (whys, "Hens alive")->worked, 10, 0, 10);
  NUMBERS_ARE (farm_find_why (whys, "Dozens collected")->worked, 720, 12, 60);
  NUMBERS_ARE (farm_find_why (whys, "Eggs for each 100 hens a day")->worked, 56, 70, 80);
  NUMBERS_ARE (farm_find_why (whys, "What is expected at this age")->worked, 0.97, 0.005, 1.3, 2, 18,
               round (1000 * answer->expected_frac) / 10);
  week = &g_array_index (answer->ahead, SteadLayAhead, 0);
  NUMBERS_ARE (farm_find_why (whys, "Dozens to expect in 7 days")->worked, round (10 * week->hens) / 10, 7,
               round (1000 * week->eggs.likely / 7 / week->hens) / 10, 12, round (10 * answer->next_dozens) / 10, 8, 10,
               rint (week->eggs.low / 12), rint (week->eggs.high / 12));
  /* 84 kg are 185.19 lb; 672 eggs are 56 dozen; 3.31 lb a dozen */
  NUMBERS_ARE (farm_find_why (whys, "Feed for one dozen eggs")->worked, 185.19, 672, 12, 3.31);
  g_assert_true (g_str_has_suffix (farm_find_why (whys, "Feed on hand")->worked, " = 22.05 lb"));
  NUMBERS_ARE (farm_find_why (whys, "How long the feed lasts")->worked, 22.05, 2.20, 10);
  /* 90 kg: 50 for $60, then 40 of the 50 for $64; the birds $140 */
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 111.20, 140, 251.20);
  g_assert_cmpint (answer->cost_in_cents, ==, 25120);
}

/* A hen that died, one of the feed bought in two lots, and none eaten yet. */
static void
test_whys_of_few (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 20, 2400, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 2), farm->feed, 30, 3600, FALSE);
  farm_entry (farm, farm->today - 1, 8, 0, NAN, 1);
  answer = ask (farm);
  whys = stead_flock_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "Hens alive")->worked, 10, 1, 9);
  NUMBERS_ARE (farm_find_why (whys, "Cost in, so far")->worked, 140, 140);
  g_assert_nonnull (strstr (farm_find_why (whys, "Feed on hand")->worked, " 44.09 lb + "));
  g_assert_true (g_str_has_suffix (farm_find_why (whys, "Feed on hand")->worked, " 66.14 lb = 110.23 lb"));
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
  ADD ("forecast", test_forecast);
  ADD ("band", test_band);
  ADD ("outlook", test_outlook);
  ADD ("outlook-past-the-curve", test_outlook_past_the_curve);
  ADD ("short-log", test_short_log);
  ADD ("named-weeks", test_named_weeks);
  ADD ("too-old", test_too_old);
  ADD ("two-low-days", test_two_low_days);
  ADD ("just-not-low", test_just_not_low);
  ADD ("three-of-seven", test_three_of_seven);
  ADD ("low-is-its-own-rate", test_low_is_its_own_rate);
  ADD ("left-out", test_left_out);
  ADD ("nothing-yet", test_nothing_yet);
  ADD ("too-young", test_too_young);
  ADD ("gap", test_gap);
  ADD ("ended", test_ended);
  ADD ("losses", test_losses);
  ADD ("no-feed", test_no_feed);
  ADD ("whys", test_whys);
  ADD ("whys-of-few", test_whys_of_few);
  ADD ("entry-names", test_entry_names);
#undef ADD
  return g_test_run ();
}

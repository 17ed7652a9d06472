/* test-lay-text.c - a flock's weeks in words: what the chart says to who points at it. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-lay-text.h"

#include <math.h>
#include <string.h>

static SteadFlockAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadFlockAnswer *answer = stead_flock_answer_new (farm->store, farm->flock, &error);

  g_assert_no_error (error);
  return answer;
}

static void
set_up (Farm          *farm,
        gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = NULL;

  farm_set_up (farm, data);
  flock = stead_flock_repo_get (farm->store, farm->flock, NULL);
  flock->curve = (SteadLayCurve) { .level_frac = 0.97, .decline_week = 0.005, .steepness_week = 1.3, .half_week = 2,
                                   .onset_age_weeks = 18 };
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
}

/* Ten hens, housed on Jan 1 at 30 weeks: 8 eggs a day are 80 from 100 birds, 56 in a week.  In the second
 * week one dies; in the third nobody counts eggs. */
static void
test_weeks (Farm          *farm,
            gconstpointer  data)
{
  SteadDay first = stead_day_new (2026, 1, 1);
  g_autoptr(SteadFlockAnswer) answer = NULL;
  g_autofree char *plain = NULL, *loss = NULL, *none = NULL;

  for (int i = 0; i < 21; i++)
    farm_entry (farm, first + i, i < 14 ? 8 : STEAD_COUNT_NONE, 0, 1, i == 9 ? 1 : 0);
  stead_store_set_today (farm->store, first + 21);
  answer = ask (farm);
  plain = stead_lay_text_week (answer, 0);
  loss = stead_lay_text_week (answer, 1);
  none = stead_lay_text_week (answer, 2);
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (plain, ==, "Week of Jan 1, 2026, 30 weeks old: 80 eggs a day from 100 birds, 56 eggs in all.");
  g_assert_true (g_str_has_prefix (loss, "Week of Jan 8, 2026, 31 weeks old: "));
  g_assert_true (g_str_has_suffix (loss, ", 56 eggs in all. Lost: 1 hen."));
  g_assert_cmpstr (none, ==, "Week of Jan 15, 2026, 32 weeks old: no eggs were logged.");
}

/* The first coming week begins today, at 30 weeks and 89 days: 42 whole weeks. */
static void
test_ahead (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadFlockAnswer) answer = NULL;
  const SteadLayAhead *week;
  g_autofree char *first = NULL;

  farm_log (farm);
  answer = ask (farm);
  week = &g_array_index (answer->ahead, SteadLayAhead, 0);
  g_assert_cmpint (stead_lay_text_ahead_day (answer, week), ==, farm->today);
  first = stead_lay_text_ahead (answer, answer->age_weeks + 0.5);
  /* The day, the age, what to expect in dozens or eggs, and of how many times. */
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (first, "Week of Mar 31, 2026, 43 weeks old: expect "));
      g_assert_true (g_str_has_suffix (first, ", 8 times in 10."));
    }
  g_assert_null (stead_lay_text_ahead (answer, answer->age_weeks - 1));
  g_assert_null (stead_lay_text_ahead (answer, answer->age_weeks + 1000));
}

/* At the end of the chart: the line, and the band in one text and in two. */
static void
test_ends (Farm          *farm,
           gconstpointer  data)
{
  g_auto(SteadLayEnds) usual = { 0 }, learned = { 0 };
  g_autoptr(SteadFlockAnswer) before = NULL, after = NULL;
  const SteadBand *end;
  double low, likely, high;

  before = ask (farm);
  g_assert_true (before->has_forecast && !before->is_learned);
  stead_lay_text_ends (before, &usual);
  farm_log (farm);
  after = ask (farm);
  g_assert_true (after->is_learned);
  stead_lay_text_ends (after, &learned);
  end = &after->series.ahead_frac[after->series.n_ahead - 1];
  low = rint (end->low * 100);
  likely = rint (end->likely * 100);
  high = rint (end->high * 100);
  NUMBERS_ARE (learned.forecast, likely);
  NUMBERS_ARE (learned.band_high, 8, 10, high);
  NUMBERS_ARE (learned.band_low, low);
  NUMBERS_ARE (learned.band, 8, 10, low, high);
  if (farm_in_english ())
    {
      g_assert_true (g_str_has_prefix (usual.forecast, "expected "));
      g_assert_true (g_str_has_prefix (learned.forecast, "forecast "));
    }
}

/* A flock that is gone has no weeks to come. */
static void
test_over (Farm          *farm,
           gconstpointer  data)
{
  g_auto(SteadLayEnds) ends = { 0 };
  g_autoptr(SteadFlockAnswer) answer = NULL;

  farm_log (farm);
  FARM_DO (farm, stead_batch_repo_end (farm->store, farm->flock, farm->today, &farm_error));
  stead_store_set_today (farm->store, farm->today + 1);
  answer = ask (farm);
  g_assert_false (answer->has_forecast);
  g_assert_null (stead_lay_text_ahead (answer, answer->age_weeks + 0.5));
  stead_lay_text_ends (answer, &ends);
  g_assert_true (ends.forecast == NULL && ends.band_high == NULL && ends.band_low == NULL && ends.band == NULL);
}

#define ADD(name, test) g_test_add ("/answer/lay-text/" name, Farm, NULL, set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("weeks", test_weeks);
  ADD ("ahead", test_ahead);
  ADD ("ends", test_ends);
  ADD ("over", test_over);
  return g_test_run ();
}

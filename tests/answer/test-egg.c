/* test-egg.c - grading and freshness against sums and the formula written out. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-egg-answer.h"

#include <math.h>
#include <string.h>

static SteadEggAnswer *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadEggAnswer *answer = stead_egg_answer_new (farm->store, farm->flock, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static void
grade (Farm     *farm,
       SteadDay  day,
       int       large,
       int       medium,
       int       checked)
{
  SteadEggGrading grading = { .flock_id = farm->flock, .day = day, .checked = checked };

  grading.counts[STEAD_EGG_CLASS_LARGE] = large;
  grading.counts[STEAD_EGG_CLASS_MEDIUM] = medium;
  FARM_DO (farm, stead_egg_repo_save_grading (farm->store, &grading, &farm_error));
}

static void
break_out (Farm     *farm,
           SteadDay  day,
           double    egg_g,
           double    albumen_mm,
           double    egg_c)
{
  SteadEggSample sample = { .flock_id = farm->flock, .day = day, .egg_g = egg_g, .albumen_mm = albumen_mm,
                            .egg_c = egg_c };

  FARM_DO (farm, stead_egg_repo_save_sample (farm->store, &sample, &farm_error));
}

static double
haugh (double egg_g,
       double albumen_mm)
{
  return 100 * log10 (albumen_mm - 1.7 * pow (egg_g, 0.37) + 7.57);
}

static void
test_nothing (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadEggAnswer) answer = ask (farm);

  g_assert_cmpint (answer->now.graded, ==, 0);
  g_assert_true (isnan (answer->now.haugh));
  g_assert_true (isnan (answer->shares[STEAD_EGG_CLASS_LARGE]));
  g_assert_null (answer->advice);
  g_assert_nonnull (answer->caution);
}

/* Today is March 31: the last four weeks begin on March 4. */
static void
test_shares (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadEggAnswer) answer = NULL;

  grade (farm, farm->today, 60, 20, 0);
  grade (farm, farm->today - 27, 10, 10, 4);
  grade (farm, farm->today - 28, 0, 50, 0);
  answer = ask (farm);
  g_assert_cmpint (answer->now.graded, ==, 100);
  g_assert_cmpint (answer->now.checked, ==, 4);
  g_assert_cmpint (answer->before.graded, ==, 50);
  g_assert_cmpfloat_with_epsilon (answer->shares[STEAD_EGG_CLASS_LARGE], 0.7, 1e-12);
  g_assert_cmpfloat_with_epsilon (answer->shares[STEAD_EGG_CLASS_MEDIUM], 0.3, 1e-12);
  g_assert_cmpuint (answer->gradings->len, ==, 3);
  NUMBERS_ARE (answer->sentence, 104, 70, 4);
  g_assert_null (answer->advice);    /* 4 in 104 */
}

static void
test_many_cracked (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadEggAnswer) answer = NULL;

  grade (farm, farm->today, 90, 4, 6);
  answer = ask (farm);
  g_assert_nonnull (answer->advice);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->advice, "cracked shells"));
}

static void
test_haugh (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadEggAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  double mean = (haugh (60, 7) + haugh (62, 6.5)) / 2, before = haugh (60, 8.5);

  break_out (farm, farm->today, 60, 7, 10);
  break_out (farm, farm->today - 10, 62, 6.5, NAN);
  break_out (farm, farm->today - 40, 60, 8.5, 10);
  answer = ask (farm);
  g_assert_cmpuint (answer->now.n_samples, ==, 2);
  g_assert_cmpfloat_with_epsilon (answer->now.haugh, mean, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->before.haugh, before, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->now.egg_g, 61, 1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (answer->haughs, double, 0), haugh (60, 7), 1e-9);
  NUMBERS_ARE (answer->sentence, round (mean), round (before - mean));
  g_assert_null (answer->advice);
  whys = stead_egg_answer_whys (answer);
  g_assert_cmpuint (whys->len, ==, 2);
  NUMBERS_ARE (((SteadWhy *) whys->pdata[1])->worked, 100, 10, 7, 1.7, 60, 0.37, 7.57, round (10 * haugh (60, 7)) / 10);
}

/* Eggs at room temperature, with whites that ran thin. */
static void
test_thin_and_warm (Farm          *farm,
                    gconstpointer  data)
{
  g_autoptr(SteadEggAnswer) answer = NULL;

  g_assert_cmpfloat (haugh (60, 3.5), <, 60);
  break_out (farm, farm->today, 60, 3.5, 25);
  answer = ask (farm);
  g_assert_cmpuint (answer->now.n_warm_or_cold, ==, 1);
  g_assert_nonnull (answer->advice);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->advice, "whites are thin"));
      g_assert_nonnull (strstr (answer->advice, "45 and 60"));
      g_assert_nonnull (strstr (answer->sentence, "grade B"));
    }
}

static void
test_live_text (Farm          *farm,
                gconstpointer  data)
{
  g_autofree char *text = stead_egg_haugh_text (60, 7);
  g_autofree char *nothing = stead_egg_haugh_text (NAN, 7);
  g_autofree char *wrong = stead_egg_haugh_text (200, 0.1);

  NUMBERS_ARE (text, round (10 * haugh (60, 7)) / 10);
  g_assert_nonnull (nothing);
  g_assert_nonnull (wrong);
  g_assert_cmpstr (wrong, !=, nothing);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/egg/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  ADD ("nothing", test_nothing);
  ADD ("shares", test_shares);
  ADD ("many-cracked", test_many_cracked);
  ADD ("haugh", test_haugh);
  ADD ("thin-and-warm", test_thin_and_warm);
  ADD ("live-text", test_live_text);
#undef ADD
  return g_test_run ();
}

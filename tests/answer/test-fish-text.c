/* test-fish-text.c - weights in fields, weeks to come, and words of samples, against sums by hand.
 *
 * Growth: the example of the fish farmers' calculations page (SGR, TGC; reference rows hu-108
 * and hu-109), as in test-fish.c.  An ounce is 28.349523125 g (NIST SP 811, appendix B).
 */
#include "numbers.h"
#include "shoal.h"

#include "answer/stead-fish-text.h"

#include <math.h>
#include <string.h>

static SteadFishAnswer *
ask (Shoal *shoal)
{
  g_autoptr(GError) error = NULL;
  SteadFishAnswer *answer = stead_fish_answer_new (shoal->farm.store, shoal->fish, &error);

  g_assert_no_error (error);
  return answer;
}

static void
test_range (Shoal          *shoal,
            gconstpointer  data)
{
  const SteadUnit *g = stead_unit_by_id ("g");
  SteadBand sure = { 120, 120, 120 }, unsure = { 110, 120, 131 }, none = { NAN, NAN, NAN };
  g_autofree char *one = stead_fish_text_range (&sure, g);
  g_autofree char *two = stead_fish_text_range (&unsure, g);

  g_assert_cmpstr (one, ==, "120 g");
  if (farm_in_english ())
    g_assert_cmpstr (two, ==, "110 g to 131 g");
  g_assert_null (stead_fish_text_range (&none, g));
}

/* 120 g today at 27 °C and 0.1027: after n days (120^(1/3) + 0.001027 x 27 n)^3.  The rounded
 * coefficient misses the 120 g by up to 0.5 g, and between two points a week apart a straight
 * line lies less than 0.2 % above the curve. */
static void
test_weeks_ahead (Shoal          *shoal,
                  gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = NULL;
  g_autoptr(GArray) weeks = NULL, few = NULL;
  SteadDay last;

  shoal_warm (shoal, shoal->fish, 27, 45, 1);
  answer = ask (shoal);
  weeks = stead_fish_answer_weeks_ahead (answer, 12);
  few = stead_fish_answer_weeks_ahead (answer, 3);
  g_assert_cmpuint (weeks->len, ==, 12);
  g_assert_cmpuint (few->len, ==, 3);
  last = g_array_index (answer->weeks, SteadFishWeek, answer->weeks->len - 1).first_day;
  for (guint i = 0; i < weeks->len; i++)
    {
      const SteadFishWeekAhead *week = &g_array_index (weeks, SteadFishWeekAhead, i);
      double days = week->first_day + 6 - shoal->farm.today;
      double grown = pow (cbrt (120) + 0.1027 / 100 * 27 * days, 3);

      g_assert_cmpint (week->first_day, ==, last + 7 * (SteadDay) (i + 1));
      g_assert_cmpfloat_with_epsilon (week->mean_g.likely, grown, 0.007 * grown);
      g_assert_cmpfloat (week->mean_g.low, <, week->mean_g.likely);
      g_assert_cmpfloat (week->mean_g.high, >, week->mean_g.likely);
    }
}

static void
test_no_weeks_without_warmth (Shoal          *shoal,
                              gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask (shoal);
  g_autoptr(GArray) weeks = stead_fish_answer_weeks_ahead (answer, 12);

  g_assert_cmpuint (weeks->len, ==, 0);
}

/* 100 fish cost $100 and no feed yet: 25 of them carry $25 along, all of them all of it. */
static void
test_share_of_cost (Shoal          *shoal,
                    gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask (shoal);

  g_assert_cmpint (answer->cost_in_cents, ==, 10000);
  g_assert_cmpint (stead_fish_share_cents (answer, 25), ==, 2500);
  g_assert_cmpint (stead_fish_share_cents (answer, 1), ==, 100);
  g_assert_cmpint (stead_fish_share_cents (answer, 100), ==, 10000);
  g_assert_cmpint (stead_fish_share_cents (answer, 0), ==, 0);
}

/* Two fish, 100 g and 140 g, of 20 cm: mean 120 g; sd 28.28 g, 24 %; K = 100 x 100 / 20³ = 1.25 and
 * 100 x 140 / 20³ = 1.75, mean 1.5. */
static void
test_sample (Shoal          *shoal,
             gconstpointer  data)
{
  g_autoptr(SteadWeighing) weighing = stead_weighing_new ();
  const SteadWeighed two[] = { { 100, 20 }, { 140, 20 } };
  g_autofree char *text = NULL, *nothing = stead_fish_text_sample (weighing, STEAD_UNITS_METRIC);

  g_assert_cmpstr (nothing, ==, "");
  weighing->single = g_array_new (FALSE, FALSE, sizeof (SteadWeighed));
  g_array_append_vals (weighing->single, two, 2);
  stead_weighing_take_single (weighing);
  text = stead_fish_text_sample (weighing, STEAD_UNITS_METRIC);
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, "2 fish, 120 g each in the mean. Spread: 24 %. Condition factor: 1.5.");
  NUMBERS_ARE (text, 2, 120, 24, 1.5);
}

/* Metric: grams and centimeters, as the water comes in degrees Celsius. */
static SteadFishAnswer *
ask_metric (Shoal *shoal)
{
  SteadFishAnswer *answer = ask (shoal);

  answer->farm->units = STEAD_UNITS_METRIC;
  return answer;
}

static void
assert_text (char       *text,     /* (transfer full) */
             const char *words)
{
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, words);
  g_free (text);
}

/* A deviation of 30 g among fish of 120 g is a quarter. */
static void
test_mark (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask_metric (shoal);
  SteadGrowthMark mark = { .day = stead_day_new (2026, 3, 3), .n = 20, .mean_g = 120, .sd_g = 30 };

  assert_text (stead_fish_text_mark (answer, &mark),
               "Mar 3, 2026: 20 fish weighed, 120 g each in the mean. Spread: 25 %.");
  mark.sd_g = NAN;
  mark.far_off = TRUE;
  assert_text (stead_fish_text_mark (answer, &mark), "Mar 3, 2026: 20 fish weighed, 120 g each in the mean. "
                                                     "It lies far off the others and counts little.");
  mark.left_out = TRUE;
  assert_text (stead_fish_text_mark (answer, &mark),
               "Mar 3, 2026: 20 fish weighed, 120 g each in the mean. It is left out.");
}

/* Up to today it is what was learned, from today on what is expected. */
static void
test_step (Shoal          *shoal,
           gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask_metric (shoal);
  SteadGrowthStep step = { .day = shoal->farm.today - 1, .low_g = 140, .likely_g = 150, .high_g = 161 };

  answer->series.today = shoal->farm.today;
  assert_text (stead_fish_text_step (answer, &step), "Mar 30, 2026: about 150 g a fish, by what was learned.");
  step.day = shoal->farm.today;
  assert_text (stead_fish_text_step (answer, &step),
               "Mar 31, 2026: about 150 g a fish expected, 140 g to 161 g in 8 of 10 cases.");
  answer->series.today = STEAD_DAY_NONE;     /* over */
  assert_text (stead_fish_text_step (answer, &step), "Mar 31, 2026: about 150 g a fish, by what was learned.");
}

static void
test_sale_day (Shoal          *shoal,
               gconstpointer  data)
{
  g_autoptr(SteadFishAnswer) answer = ask_metric (shoal);

  answer->sale_day = STEAD_DAY_NONE;
  g_assert_null (stead_fish_text_sale_day (answer));
  answer->sale_day = stead_day_new (2026, 6, 12);
  answer->group->sale_frac = 0.8;
  assert_text (stead_fish_text_sale_day (answer), "80 in 100: Jun 12");
}

/* What the undo menu calls them. */
static void
test_names (Shoal          *shoal,
            gconstpointer  data)
{
  SteadWeighing weighing = { .n = 20, .day = stead_day_new (2026, 3, 3) };
  SteadFishMove move = { .n = 1, .day = stead_day_new (2026, 3, 4) };

  assert_text (stead_fish_weighing_name (&weighing), "Weighing of 20 fish on Mar 3");
  assert_text (stead_fish_move_name (&move), "1 fish moved on Mar 4");
}

/* The figures of core, in the farm's units: warmth, and the weight of sale; with their source. */
static void
test_kinds (Shoal          *shoal,
            gconstpointer  data)
{
  for (int i = 0; i < STEAD_N_FISH_SPECIES; i++)
    {
      const SteadFishKind *kind = stead_fish_kind ((SteadFishSpecies) i);
      g_autofree char *c = stead_fish_kind_words ((SteadFishSpecies) i, STEAD_UNITS_METRIC);
      g_autofree char *f = stead_fish_kind_words ((SteadFishSpecies) i, STEAD_UNITS_US);
      g_autoptr(GArray) in_c = numbers_in (c), in_f = numbers_in (f);
      const double temps[] = { kind->best_min_c, kind->best_max_c, kind->growth_min_c };

      for (guint k = 0; k < G_N_ELEMENTS (temps); k++)
        {
          g_assert_cmpfloat_with_epsilon (g_array_index (in_c, double, k), temps[k], 0.0501);
          g_assert_cmpfloat_with_epsilon (g_array_index (in_f, double, k), temps[k] * 1.8 + 32, 0.0501);
        }
      g_assert_cmpfloat_with_epsilon (g_array_index (in_c, double, 3) * (kind->market_g < 1000 ? 1 : 1000), kind->market_g, 6);
      g_assert_nonnull (strstr (c, stead_source_title (kind->temperature_source)));
    }
  g_assert_cmpstr (stead_fish_length_unit (STEAD_UNITS_METRIC)->id, ==, "cm");
  g_assert_cmpstr (stead_fish_length_unit (STEAD_UNITS_US)->id, ==, "in");
}

#define TEST(path, func) g_test_add ("/answer/fish-text/" path, Shoal, NULL, shoal_set_up, func, shoal_tear_down)

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  TEST ("range", test_range);
  TEST ("weeks-ahead", test_weeks_ahead);
  TEST ("no-weeks-without-warmth", test_no_weeks_without_warmth);
  TEST ("share-of-cost", test_share_of_cost);
  TEST ("sample", test_sample);
  TEST ("mark", test_mark);
  TEST ("step", test_step);
  TEST ("sale-day", test_sale_day);
  TEST ("names", test_names);
  TEST ("kinds", test_kinds);
  return g_test_run ();
}

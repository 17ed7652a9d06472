/* test-how-sure.c - seasons out of ranges, against figures of other answers and closed forms. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-how-sure-answer.h"
#include "answer/stead-price-answer.h"
#include "store/stead-scenario-repo.h"

#include <math.h>
#include <string.h>

static SteadHowSure *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadHowSure *answer = stead_how_sure_new (farm->store, STEAD_PERIOD_12_WEEKS, &error);

  g_assert_no_error (error);
  return answer;
}

static SteadRange *
range (const SteadHowSure *answer,
       SteadRangeKind      kind)
{
  for (guint i = 0; i < answer->ranges->len; i++)
    if (((SteadRange *) answer->ranges->pdata[i])->kind == kind)
      return answer->ranges->pdata[i];
  g_assert_not_reached ();
}

/* A farm with a price, a plan, and days of sale. */
static void
fill (Farm *farm)
{
  farm_log (farm);
  farm_stock (farm);
}

static void
sell (Farm   *farm,
      double  units,
      int     days_ago)
{
  SteadPriceTrial trial = { .day = farm->today - days_ago, .price_cents = 450, .units = units };

  FARM_DO (farm, stead_price_trial_repo_add (farm->store, farm->product, &trial, &farm_error));
}

/* Everything as likely as can be is what the price answer says of a day with so many sold, twelve times. */
static void
test_likely (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadHowSure) answer = NULL;
  g_autoptr(SteadPriceAnswer) price = NULL;
  SteadCvp cvp;

  fill (farm);
  sell (farm, 40, 30);
  sell (farm, 55, 20);
  sell (farm, 47, 10);
  answer = ask (farm);
  price = stead_price_answer_new (farm->store, farm->product, STEAD_PERIOD_12_WEEKS, NULL);
  g_assert_true (answer->solved);
  g_assert_cmpfloat (range (answer, STEAD_RANGE_SOLD)->value.low, ==, 40);
  g_assert_cmpfloat (range (answer, STEAD_RANGE_SOLD)->value.likely, ==, 47);
  g_assert_cmpfloat (range (answer, STEAD_RANGE_SOLD)->value.high, ==, 55);
  cvp = price->plan;
  cvp.planned_units = 47;
  g_assert_cmpfloat_with_epsilon (answer->likely_cents, 12 * stead_cvp_profit_cents (&cvp, 47), 1);
}

/* One range alone: the mean and the chance of its triangle (core/stead-chance.h, held against published ones). */
static void
test_one_range (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadHowSure) answer = NULL;
  double per_cent, zero, chance;
  SteadRange *day;

  fill (farm);
  answer = ask (farm);
  for (guint i = 0; i < answer->ranges->len; i++)
    {
      SteadRange *one = answer->ranges->pdata[i];

      one->value.low = one->value.high = one->value.likely;
    }
  day = range (answer, STEAD_RANGE_DAY);
  day->value = (SteadThreePoint) { 0, 5000, 40000 };
  stead_how_sure_settle (answer);
  per_cent = -answer->n_days;
  zero = day->value.likely - answer->likely_cents / per_cent;    /* costs of a day that leave nothing */
  chance = 1 - stead_triangle_chance_at_most (&day->value, zero);
  g_assert_cmpfloat (chance, >, 0.05);
  g_assert_cmpfloat (chance, <, 0.95);
  g_assert_cmpfloat_with_epsilon (answer->loss_frac, chance, 4 * 0.5 / sqrt (STEAD_HOW_SURE_DRAWS));
  g_assert_cmpfloat_with_epsilon (answer->mean_cents,
                                  answer->likely_cents + per_cent * (stead_triangle_mean (&day->value) - 5000),
                                  4 * answer->sd_cents / sqrt (STEAD_HOW_SURE_DRAWS));
  g_assert_cmpfloat_with_epsilon (day->low_cents - day->high_cents, 40000 * answer->n_days, 1e-6);
}

/* A million seasons lie seven times as near to the closed form as twenty thousand do. */
static void
test_many (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadHowSure) answer = NULL;
  g_autoptr(SteadSeasonDraws) draws = NULL;
  SteadRange *day;

  fill (farm);
  answer = ask (farm);
  for (guint i = 0; i < answer->ranges->len; i++)
    {
      SteadRange *one = answer->ranges->pdata[i];

      one->value.low = one->value.high = one->value.likely;
    }
  day = range (answer, STEAD_RANGE_DAY);
  day->value = (SteadThreePoint) { 0, 5000, 40000 };
  stead_how_sure_settle (answer);
  g_assert_cmpuint (answer->n_draws, ==, STEAD_HOW_SURE_DRAWS);
  draws = stead_how_sure_many_new (answer);
  g_assert_true (stead_season_draws_run_all (draws, NULL, NULL, NULL));
  stead_how_sure_take_many (answer, draws);
  g_assert_cmpuint (answer->n_draws, ==, STEAD_HOW_SURE_MANY_DRAWS);
  g_assert_cmpfloat_with_epsilon (answer->mean_cents,
                                  answer->likely_cents - answer->n_days * (stead_triangle_mean (&day->value) - 5000),
                                  4 * answer->sd_cents / sqrt (STEAD_HOW_SURE_MANY_DRAWS));
}

/* The columns hold every season, and zero parts two of them. */
static void
test_columns (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadHowSure) answer = NULL;
  double zero;
  guint n = 0;

  fill (farm);
  answer = ask (farm);
  for (guint i = 0; i < answer->n_bins; i++)
    n += answer->counts[i];
  g_assert_cmpuint (n, ==, STEAD_HOW_SURE_DRAWS);
  g_assert_cmpuint (answer->n_bins, <=, STEAD_HOW_SURE_MOST_BINS);
  zero = -answer->low / answer->step;
  g_assert_cmpfloat_with_epsilon (zero, round (zero), 1e-6);
}

static void
test_words (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadHowSure) answer = NULL;
  SteadRange *input;

  fill (farm);
  answer = ask (farm);
  if (farm_in_english ())
    {
      g_autofree char *plain = stead_words_plain (answer->sentence);
      const double among[] = { 12, 8, 10, 1, round (answer->band.low) / 100, round (answer->band.high) / 100,
                               round (answer->band.likely) / 100, round (answer->loss_frac * 100), 99 };

      numbers_assert_among (plain, among, G_N_ELEMENTS (among));
    }
  input = range (answer, STEAD_RANGE_INPUT);
  input->value.low = 1.5;                    /* upside down */
  stead_how_sure_settle (answer);
  g_assert_false (answer->solved);
  g_assert_nonnull (strstr (answer->sentence, input->name));
  g_assert_null (answer->advice);
  stead_how_sure_reset (answer);
  g_assert_true (answer->solved);
  g_assert_cmpfloat (input->value.low, ==, input->farm.low);
}

/* A drawn chance is never none and never sure. */
static void
test_chance (Farm          *farm,
             gconstpointer  data)
{
  g_autofree char *none = stead_how_sure_chance (0), *little = stead_how_sure_chance (0.004);
  g_autofree char *some = stead_how_sure_chance (0.06), *all = stead_how_sure_chance (1);

  g_assert_cmpstr (none, ==, little);
  g_assert_nonnull (strchr (none, '1'));
  g_assert_nonnull (strchr (some, '6'));
  g_assert_nonnull (strstr (all, "99"));
}

/* The same farm, the same seasons. */
static void
test_same (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadHowSure) a = NULL, b = NULL;

  fill (farm);
  a = ask (farm);
  b = ask (farm);
  g_assert_cmpmem (a->counts, sizeof a->counts, b->counts, sizeof b->counts);
  g_assert_cmpstr (a->sentence, ==, b->sentence);
}

#define ADD(name, test) g_test_add ("/answer/how-sure/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("likely", test_likely);
  ADD ("one-range", test_one_range);
  ADD ("many", test_many);
  ADD ("columns", test_columns);
  ADD ("words", test_words);
  ADD ("chance", test_chance);
  ADD ("same", test_same);
  return g_test_run ();
}

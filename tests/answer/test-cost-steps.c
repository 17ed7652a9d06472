/* test-cost-steps.c - what changed since the month before, on the test farm: ten hens that
 * laid eight eggs a day and ate 1 kg. */
#include "farm.h"
#include "numbers.h"
#include "pond.h"

#include "answer/stead-cost-steps.h"

#include <math.h>
#include <string.h>

static SteadCostSteps *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadCostSteps *self = stead_cost_steps_new (farm->store, farm->product, STEAD_PERIOD_12_WEEKS, &error);

  g_assert_no_error (error);
  return self;
}

/* The effects sum to what the two sheets differ by, to the cent and before rounding. */
static void
assert_sums (const SteadCostSteps *self)
{
  gint64 shown = 0;
  double exact = 0, parts = 0;

  for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
    shown += self->shown[k];
  g_assert_cmpint (shown, ==, self->now->sheet.unit_cents - self->before->sheet.unit_cents);
  for (guint i = 0; i < self->moves->len; i++)
    for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
      exact += g_array_index (self->moves, SteadCostMove, i).cents[k];
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    parts += self->now->sheet.parts[kind].unit_cents - self->before->sheet.parts[kind].unit_cents;
  g_assert_cmpfloat_with_epsilon (exact, parts, 0.3);
}

/* The second bag is dearer: $64 for 50 kg after $60: only prices move. */
static void
test_price (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadCostSteps) self = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 62, 7440, FALSE);   /* 120 c/kg until March 3 */
  farm_buy (farm, stead_day_new (2026, 1, 2), farm->feed, 60, 9600, FALSE);   /* then 160 c/kg */
  farm_log (farm);
  self = ask (farm);
  assert_sums (self);
  g_assert_cmpint (self->shown[STEAD_CHANGE_USE], ==, 0);
  g_assert_cmpint (self->shown[STEAD_CHANGE_PRICE], >, 0);
  /* The next egg eats at 160. */
  g_assert_cmpfloat (self->next_cents, >, (double) self->cost->sheet.unit_cents);
  whys = stead_cost_steps_whys (self);
  NUMBERS_ARE (farm_find_why (whys, "Why it costs more or less than in the four weeks before")->worked,
               (double) self->before->sheet.unit_cents / 100, (double) self->shown[STEAD_CHANGE_PRICE] / 100,
               (double) self->now->sheet.unit_cents / 100);
  /* Of the 84 kg of 12 weeks 56 were fed at 120 c, up to March 3; at 160 c each would cost 40 c more. */
  NUMBERS_ARE (farm_find_why (whys, "What the next one costs")->worked, (double) self->cost->sheet.unit_cents / 100,
               round (self->next_more_cents) / 100, round (10 * self->cost->sheet.good_units) / 10, round (self->next_cents) / 100);
  g_assert_cmpfloat_with_epsilon (self->next_more_cents, 56 * 40, 1e-6);
}

/* Fewer eggs of the same feed: output. */
static void
test_yield (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostSteps) self = NULL;
  g_autofree char *plain = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 200, 24000, FALSE);
  for (int i = 55; i >= 0; i--)
    farm_entry (farm, farm->today - i, i >= 28 ? 8 : 6, 0, 1, 0);
  self = ask (farm);
  assert_sums (self);
  /* Feed: 120 c a day over 8/12 and 6/12 dozen: 180 and 240. */
  g_assert_cmpint (self->shown[STEAD_CHANGE_YIELD], >=, 60);
  g_assert_cmpint (self->shown[STEAD_CHANGE_PRICE], ==, 0);
  plain = stead_words_plain (self->change);
  {
    g_autoptr(GArray) numbers = numbers_in (plain);

    g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 0),
                                    (double) (self->now->sheet.unit_cents - self->before->sheet.unit_cents) / 100, 1e-9);
  }
}

static void
test_young (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostSteps) self = NULL;

  farm_stock (farm);
  for (int i = 20; i >= 0; i--)
    farm_entry (farm, farm->today - i, 8, 0, 1, 0);
  self = ask (farm);
  g_assert_null (self->before);
  g_assert_nonnull (self->change);
}

/* Eight eggs in place of six of the same feed: 180 c of feed a dozen, no longer 240. */
static void
test_less (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCostSteps) self = NULL;
  g_autofree char *plain = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 200, 24000, FALSE);
  for (int i = 55; i >= 0; i--)
    farm_entry (farm, farm->today - i, i >= 28 ? 6 : 8, 0, 1, 0);
  self = ask (farm);
  assert_sums (self);
  g_assert_cmpint (self->shown[STEAD_CHANGE_YIELD], <=, -60);
  plain = stead_words_plain (self->change);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (plain, " less than in the four before: "));
      g_assert_nonnull (strstr (plain, "What changed most: “Output”, "));
    }
}

/* Two months alike: nothing changed, and no part is told to have. */
static void
test_same (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCostSteps) self = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 200, 24000, FALSE);
  for (int i = 55; i >= 0; i--)
    farm_entry (farm, farm->today - i, 8, 0, 1, 0);
  self = ask (farm);
  g_assert_cmpint (self->now->sheet.unit_cents, ==, self->before->sheet.unit_cents);
  g_assert_cmpuint (self->moves->len, ==, 0);
  if (farm_in_english ())
    g_assert_nonnull (strstr (self->change, "as much as in the four before."));
}

/* 28 days of eight eggs are 56 / 3 dozen.  10 kg of grain at 150 c came to the feed of the last four weeks
 * alone: 1500 x 3 / 56 c a dozen; two bales at $5 were strewn in the four before: 1000 x 3 / 56. */
static void
test_only_in_one_month (Farm          *farm,
                        gconstpointer  data)
{
  SteadItem grain = { .name = (char *) "Grain", .kind = STEAD_ITEM_FEED, .unit = stead_unit_by_id ("kg"), .reorder_base = NAN };
  g_autoptr(SteadCostSteps) self = NULL;
  const SteadCostPart *now, *before;

  FARM_DO (farm, stead_item_repo_save (farm->store, &grain, &farm_error));
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 100, 12000, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 1), grain.id, 100, 15000, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->straw, 10, 5000, FALSE);
  for (int i = 55; i >= 0; i--)
    farm_entry (farm, farm->today - i, 8, 0, 1, 0);
  FARM_DO (farm, stead_lot_repo_use (farm->store, grain.id, farm->flock, farm->today - 10, 10, 0, &farm_error)
                 && stead_lot_repo_use (farm->store, farm->straw, farm->flock, farm->today - 40, 2, 0, &farm_error));
  self = ask (farm);
  assert_sums (self);
  now = self->now->sheet.parts;
  before = self->before->sheet.parts;
  g_assert_cmpfloat_with_epsilon (now[STEAD_COST_FEED].unit_cents - before[STEAD_COST_FEED].unit_cents, 1500 * 3 / 56.0, 0.01);
  g_assert_cmpfloat_with_epsilon (before[STEAD_COST_BEDDING].unit_cents, 1000 * 3 / 56.0, 0.01);
  g_assert_cmpfloat (now[STEAD_COST_BEDDING].unit_cents, ==, 0);
}

/* Fish are reckoned over all their time: there is no month before. */
static void
test_fish (void)
{
  Pond pond;
  g_autoptr(SteadCostSteps) self = NULL;
  g_autoptr(GError) error = NULL;

  pond_set_up (&pond, NULL);
  pond_feed (&pond);
  pond_harvest (&pond, pond.farm.today, 10, 20, 1000, FALSE);
  self = stead_cost_steps_new (pond.farm.store, pond.product, STEAD_PERIOD_WHOLE_BATCH, &error);
  g_assert_no_error (error);
  g_assert_true (isnan (self->next_cents));
  g_assert_null (self->before);
  if (farm_in_english ())
    g_assert_cmpstr (self->change, ==, "Its cost is worked out over the whole batch, so there is no month to compare with.");
  pond_tear_down (&pond, NULL);
}

/* Each kind of change has a name and a meaning of its own. */
static void
test_names (void)
{
  for (int i = 0; i < STEAD_N_CHANGE_KINDS; i++)
    for (int k = 0; k < i; k++)
      {
        g_assert_cmpstr (stead_change_name ((SteadChangeKind) i), !=, stead_change_name ((SteadChangeKind) k));
        g_assert_cmpstr (stead_change_about ((SteadChangeKind) i), !=, stead_change_about ((SteadChangeKind) k));
      }
}

#define CASE(name, func) \
  g_test_add ("/answer/cost-steps/" name, Farm, NULL, farm_set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("price", test_price);
  CASE ("yield", test_yield);
  CASE ("young", test_young);
  CASE ("less", test_less);
  CASE ("same", test_same);
  CASE ("only-in-one-month", test_only_in_one_month);
  g_test_add_func ("/answer/cost-steps/fish", test_fish);
  g_test_add_func ("/answer/cost-steps/names", test_names);
  return g_test_run ();
}

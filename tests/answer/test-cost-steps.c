/* test-cost-steps.c - what changed since the month before, on the test farm: ten hens that
 * laid eight eggs a day and ate 1 kg. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-cost-steps.h"

#include <math.h>

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
  return g_test_run ();
}

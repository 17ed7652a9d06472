/* test-price-choice.c - markup and margin, easy change, bundle, pairs of price and number. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-price-choice.h"

#include <math.h>

static SteadPriceChoice *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadPriceChoice *self = stead_price_choice_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error);

  g_assert_no_error (error);
  return self;
}

static void
set_up (Farm          *farm,
        gconstpointer  data)
{
  farm_set_up (farm, data);
  farm_stock (farm);
  farm_log (farm);
}

static void
add_trial (Farm     *farm,
           gint64    cents,
           double    units)
{
  g_autoptr(SteadPriceTrial) trial = g_new0 (SteadPriceTrial, 1);

  trial->day = farm->today - 10;
  trial->price_cents = cents;
  trial->units = units;
  FARM_DO (farm, stead_price_trial_repo_add (farm->store, farm->product, trial, &farm_error));
}

/* OpenStax Contemporary Mathematics, section 6.2: markup is on cost, margin on price. */
static void
test_markup (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadPriceChoice) self = ask (farm);
  double cost = (double) self->price->cost->sheet.unit_cents;

  self->try_cents = cost * 2;
  stead_price_choice_settle (self);
  g_assert_cmpfloat_with_epsilon (self->markup_frac, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (self->margin_frac, 0.5, 1e-9);
  self->try_cents = 449;
  stead_price_choice_settle (self);
  g_assert_cmpint (self->easy_below, ==, 425);
  g_assert_cmpint (self->easy_above, ==, 450);
  self->try_cents = 450;
  self->bundle_units = 2;
  self->bundle_off = 0.1;
  stead_price_choice_settle (self);
  g_assert_cmpfloat (self->bundle_cents, ==, 800);    /* $8.10, down to a whole quarter */
}

/* Points on a line: 120 at $4.00, 110 at $4.50, 100 at $5.00: 20 fewer for each dollar. */
static void
test_line (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadPriceChoice) none = ask (farm), self = NULL;
  g_autoptr(GPtrArray) whys = NULL;

  g_assert_false (none->has_line);
  NUMBERS_ARE (none->advice, 3);
  add_trial (farm, 400, 120);
  add_trial (farm, 450, 110);
  add_trial (farm, 500, 100);
  add_trial (farm, 450, 110.5);
  self = ask (farm);
  g_assert_true (self->has_line);
  g_assert_cmpfloat_with_epsilon (self->line.slope, -0.2, 0.001);
  g_assert_cmpfloat (self->best_cents, ==, 500);      /* (cost + 1000) / 2 lies beyond what was seen */
  g_assert_cmpfloat (self->most_cents, ==, 400);
  whys = stead_price_choice_whys (self);
  g_assert_cmpuint (whys->len, ==, 2);
}

static void
test_same (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadPriceChoice) self = ask (farm);

  self->other_cents = self->unit_cents;
  stead_price_choice_settle (self);
  g_assert_true (isnan (self->same_units));
  g_assert_nonnull (self->same_text);
}

#define CASE(name, func) \
  g_test_add ("/answer/price-choice/" name, Farm, NULL, set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("markup", test_markup);
  CASE ("line", test_line);
  CASE ("same", test_same);
  return g_test_run ();
}

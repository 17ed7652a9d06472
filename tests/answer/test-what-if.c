/* test-what-if.c - assumptions turned on the test farm: ten hens, eight eggs a day. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-what-if-answer.h"

#include <math.h>

static SteadWhatIf *
ask (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadWhatIf *self = stead_what_if_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error);

  g_assert_no_error (error);
  return self;
}

static void
set_up (Farm          *farm,
        gconstpointer  data)
{
  g_autoptr(SteadProduct) product = NULL;

  farm_set_up (farm, data);
  farm_stock (farm);
  farm_log (farm);
  product = stead_product_repo_get (farm->store, farm->product, NULL);
  product->planned_units = 40;
  product->unsold_frac = 0.1;
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
}

/* Untouched, it says what the price answer says. */
static void
test_as_it_is (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);

  g_assert_false (stead_what_if_is_turned (self));
  g_assert_cmpfloat_with_epsilon (self->cvp.variable_cents, (double) self->price->cost->sheet.unit_cents, 1e-9);
  g_assert_cmpfloat_with_epsilon (self->figures.profit_cents, self->price->figures.profit_cents, 1e-6);
}

/* Feed at twice its price adds its own line once more; half the eggs double feed and keep. */
static void
test_turned (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);
  const SteadCostPart *parts = self->price->cost->sheet.parts;
  double before = self->cvp.variable_cents;
  g_autofree char *plain = NULL;

  self->values[STEAD_ASSUME_INPUT] = 2;
  stead_what_if_settle (self);
  g_assert_cmpfloat_with_epsilon (self->cvp.variable_cents - before, parts[STEAD_COST_FEED].unit_cents, 1e-6);
  g_assert_cmpfloat_with_epsilon (self->figures.profit_cents - self->plan_cents, -40 * parts[STEAD_COST_FEED].unit_cents,
                                  1e-6);
  plain = stead_words_plain (self->sentence);
  {
    g_autoptr(GArray) numbers = numbers_in (plain);

    g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 0), self->cvp.variable_cents / 100, 0.00501);
    g_assert_cmpfloat_with_epsilon (g_array_index (numbers, double, 1), fabs (self->figures.profit_cents) / 100, 0.00501);
  }
  stead_what_if_reset (self);
  self->values[STEAD_ASSUME_YIELD] = 0.5;
  stead_what_if_settle (self);
  g_assert_cmpfloat_with_epsilon (self->cvp.variable_cents - before, self->parts.input_cents + self->parts.shared_cents,
                                  1e-6);
}

static void
test_scenario (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);
  g_autoptr(SteadWhatIf) again = NULL;
  g_autoptr(SteadScenario) scenario = NULL;
  SteadCvpFigures figures;
  SteadCvp cvp;

  self->values[STEAD_ASSUME_PRICE] = 500;
  self->values[STEAD_ASSUME_INPUT] = 1.2;
  stead_what_if_settle (self);
  scenario = stead_what_if_scenario (self, "Dear feed");
  g_assert_cmpuint (scenario->values->len, ==, 2);
  FARM_DO (farm, stead_scenario_repo_save (farm->store, farm->product, scenario, &farm_error));
  again = ask (farm);
  g_assert_cmpuint (again->scenarios->len, ==, 1);
  stead_what_if_figures (again, again->scenarios->pdata[0], &cvp, &figures);
  g_assert_cmpfloat_with_epsilon (figures.profit_cents, self->figures.profit_cents, 1e-6);
  stead_what_if_apply (again, again->scenarios->pdata[0]);
  g_assert_cmpfloat_with_epsilon (again->cvp.price_cents, 500, 1e-9);
  g_assert_true (stead_what_if_is_turned (again));
  stead_what_if_apply (again, NULL);
  g_assert_false (stead_what_if_is_turned (again));
}

/* The table of two agrees with turning both handles. */
static void
test_two_way (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);
  g_autoptr(GPtrArray) whys = NULL;
  double profit = stead_what_if_profit (self, STEAD_ASSUME_PRICE, 475, STEAD_ASSUME_PLANNED, 50);

  self->values[STEAD_ASSUME_PRICE] = 475;
  self->values[STEAD_ASSUME_PLANNED] = 50;
  stead_what_if_settle (self);
  g_assert_cmpfloat_with_epsilon (profit, self->figures.profit_cents, 1e-6);
  g_assert_cmpint (self->swings[0].assumption, ==, STEAD_ASSUME_PRICE);
  g_assert_cmpint (stead_what_if_n (self), ==, STEAD_ASSUME_WARMTH);      /* hens do not grow by the warmth */
  for (int i = 0; i < self->n_swings; i++)
    g_assert_cmpint (self->swings[i].assumption, !=, STEAD_ASSUME_WARMTH);
  whys = stead_what_if_whys (self);
  g_assert_cmpuint (whys->len, ==, 2);
}

#define CASE(name, func) \
  g_test_add ("/answer/what-if/" name, Farm, NULL, set_up, func, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  CASE ("as-it-is", test_as_it_is);
  CASE ("turned", test_turned);
  CASE ("scenario", test_scenario);
  CASE ("two-way", test_two_way);
  return g_test_run ();
}

/* test-what-if.c - assumptions turned on the test farm: ten hens, eight eggs a day. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-what-if-answer.h"

#include <math.h>
#include <string.h>

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

static void
assert_range (const SteadWhatIf *self,
              SteadAssumption    which,
              double             low,
              double             high,
              double             step)
{
  double l, h, s;

  stead_what_if_range (self, which, &l, &h, &s);
  g_assert_cmpfloat_with_epsilon (l, low, 1e-9);
  g_assert_cmpfloat_with_epsilon (h, high, 1e-9);
  g_assert_cmpfloat_with_epsilon (s, step, 1e-9);
}

/* Three times the price of $4.50 in steps of five cents, three times the 40 planned; the day's costs of $20
 * may rise to $100.  Half as much or twice of what is bought and laid. */
static void
test_ranges (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);

  g_assert_cmpfloat (self->farm[STEAD_ASSUME_FIXED], ==, 2000);
  assert_range (self, STEAD_ASSUME_PRICE, 0, 1350, 5);
  assert_range (self, STEAD_ASSUME_PLANNED, 0, 120, 1);
  assert_range (self, STEAD_ASSUME_FIXED, 0, 10000, 100);
  assert_range (self, STEAD_ASSUME_INPUT, 0.5, 2, 0.01);
  assert_range (self, STEAD_ASSUME_YIELD, 0.5, 2, 0.01);
  assert_range (self, STEAD_ASSUME_PACKAGING, 0.5, 2, 0.01);
  assert_range (self, STEAD_ASSUME_UNSOLD, 0, 0.9, 0.01);
  assert_range (self, STEAD_ASSUME_WORK, 0, 1, 0.05);
  assert_range (self, STEAD_ASSUME_DEATHS, 0, 0.5, 0.01);
}

/* Where nothing is planned yet there is room for ten; a currency without cents moves by its coin. */
static void
test_other_ranges (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);

  self->farm[STEAD_ASSUME_PLANNED] = 1;
  assert_range (self, STEAD_ASSUME_PLANNED, 0, 10, 1);
  g_free (self->price->cost->farm->currency);
  self->price->cost->farm->currency = g_strdup ("JPY");
  assert_range (self, STEAD_ASSUME_PRICE, 0, 1350, 1);
  assert_range (self, STEAD_ASSUME_FIXED, 0, 6000, 1);
}

/* 10 °C a day count: five degrees either way are half of it, and growth counts no more than 1.4 times. */
static void
test_warmth (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);
  g_autofree char *f = NULL, *c = NULL, *same = NULL;

  self->warm_c = 10;
  self->warm_most = 1.4;
  assert_range (self, STEAD_ASSUME_WARMTH, 0.5, 1.4, 1 / 1.8 / 10);
  f = stead_what_if_text (self, STEAD_ASSUME_WARMTH, 0.8);      /* 2 °C less are 3.6 °F */
  g_assert_cmpstr (f, ==, "−3.6 °F");
  self->price->cost->farm->units = STEAD_UNITS_METRIC;
  assert_range (self, STEAD_ASSUME_WARMTH, 0.5, 1.4, 0.05);
  c = stead_what_if_text (self, STEAD_ASSUME_WARMTH, 1.2);
  g_assert_cmpstr (c, ==, "+2 °C");
  same = stead_what_if_text (self, STEAD_ASSUME_WARMTH, 1.004);
  if (farm_in_english ())
    g_assert_cmpstr (same, ==, "as it is");
}

static void
assert_text (const SteadWhatIf *self,
             SteadAssumption    which,
             double             value,
             const char        *words)
{
  g_autofree char *text = stead_what_if_text (self, which, value);

  if (farm_in_english ())
    g_assert_cmpstr (text, ==, words);
}

static void
test_texts (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);

  assert_text (self, STEAD_ASSUME_PRICE, 475, "$4.75");
  assert_text (self, STEAD_ASSUME_PLANNED, 40.4, "40 dozen");
  assert_text (self, STEAD_ASSUME_UNSOLD, 0.125, "12.5%");
  assert_text (self, STEAD_ASSUME_WORK, 0.5, "50%");
  assert_text (self, STEAD_ASSUME_INPUT, 1.1, "+10%");
  assert_text (self, STEAD_ASSUME_YIELD, 0.95, "−5%");
  assert_text (self, STEAD_ASSUME_PACKAGING, 1.0004, "as it is");
  if (!farm_in_english ())
    return;
  g_assert_cmpstr (stead_what_if_name (self, STEAD_ASSUME_YIELD), ==, "Eggs laid");
  g_assert_cmpstr (stead_what_if_name (self, STEAD_ASSUME_WORK), ==, "Helper hours that are paid");
  g_assert_cmpstr (stead_what_if_name (self, STEAD_ASSUME_DEATHS), ==, "Deaths beyond the log");
}

/* Below cost each sale adds to the loss; without costs of the day no sale has to cover any. */
static void
test_sentences (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadWhatIf) self = ask (farm);

  self->values[STEAD_ASSUME_PRICE] = 1;
  stead_what_if_settle (self);
  if (farm_in_english ())
    g_assert_nonnull (strstr (self->sentence, "and no number of sales covers it."));
  /* $1.00 more for the day, 2.5 c more for each of 40: as much as before. */
  stead_what_if_reset (self);
  self->values[STEAD_ASSUME_FIXED] += 100;
  self->values[STEAD_ASSUME_PRICE] += 2.5;
  stead_what_if_settle (self);
  g_assert_cmpfloat_with_epsilon (self->figures.profit_cents, self->plan_cents, 0.4);
  if (farm_in_english ())
    g_assert_nonnull (strstr (self->sentence, "That is as much as the farm's own figures give."));
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
  CASE ("ranges", test_ranges);
  CASE ("other-ranges", test_other_ranges);
  CASE ("warmth", test_warmth);
  CASE ("texts", test_texts);
  CASE ("sentences", test_sentences);
  return g_test_run ();
}

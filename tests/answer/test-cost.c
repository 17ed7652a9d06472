/* test-cost.c - the cost of one unit against figures worked out by hand. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-cost-answer.h"
#include "core/stead-money.h"

#include <math.h>
#include <string.h>

static SteadCostAnswer *
ask (Farm        *farm,
     SteadPeriod  period)
{
  g_autoptr(GError) error = NULL;
  SteadCostAnswer *answer = stead_cost_answer_new (farm->store, farm->product, period, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static void
ask_in_vain (Farm        *farm,
             SteadPeriod  period)
{
  g_autoptr(GError) error = NULL;

  g_assert_null (stead_cost_answer_new (farm->store, farm->product, period, &error));
  g_assert_error (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING);
}

static double
total (const SteadCostAnswer *answer,
       SteadCostKind          kind)
{
  return answer->sheet.parts[kind].total_cents;
}

static gint64
shown (const SteadCostAnswer *answer,
       SteadCostKind          kind)
{
  return answer->sheet.parts[kind].shown_cents;
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
change_product (Farm *farm,
                void (*change) (SteadProduct *product))
{
  g_autoptr(SteadProduct) product = stead_product_repo_get (farm->store, farm->product, NULL);

  change (product);
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
}

static void
set_labor (Farm   *farm,
           gint64  cents)
{
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, NULL);

  facts->labor_cents_hour = cents;
  FARM_DO (farm, stead_farm_repo_set (farm->store, facts, &farm_error));
}

static gint64
add_coop (Farm                    *farm,
          SteadDepreciationMethod  method,
          SteadDay                 bought_on,
          gboolean                 gift)
{
  g_autoptr(SteadAsset) asset = stead_asset_new ();
  SteadAssetShare share = { farm->flock, 0.5 };

  g_free (asset->name);
  asset->name = g_strdup ("Coop");
  asset->bought_on = bought_on;
  asset->cost_cents = 70000;
  asset->extra_cents = 5000;
  asset->salvage_cents = 2000;
  asset->method = method;
  asset->life_years = 8;
  asset->life_units = method == STEAD_DEPRECIATION_UNITS ? 100 : 0;
  asset->is_gift = gift;
  asset->gone_on = STEAD_DAY_NONE;
  g_array_append_val (asset->shares, share);
  FARM_DO (farm, stead_asset_repo_save (farm->store, asset, &farm_error));
  return asset->id;
}

/* --- the parts --------------------------------------------------------------- */

static void
test_parts (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  farm_log (farm);
  FARM_DO (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, stead_day_new (2026, 2, 2), 4, 0,
                                     &farm_error));
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpint (answer->totals.eggs, ==, 720);
  g_assert_cmpint (answer->totals.cracked, ==, 9);
  g_assert_cmpfloat_with_epsilon (answer->sheet.made_units, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->sheet.good_units, 711 / 12.0, 1e-9);
  /* 90 kg: 50 at $1.20 and 40 at $1.28 */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_FEED), 6000 + 5120, 1e-6);
  /* ($140 - $20) / 10 hens / 300 eggs = 4 cents an egg, 720 eggs */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_START), 2880, 1e-6);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_BEDDING), 2000, 1e-6);
  /* 111.20 / 59.25 = 1.8768; 28.80 / 59.25 = 0.4861; 20.00 / 59.25 = 0.3376; carton 0.31 */
  g_assert_cmpint (shown (answer, STEAD_COST_FEED), ==, 188);
  g_assert_cmpint (shown (answer, STEAD_COST_START), ==, 49);
  g_assert_cmpint (shown (answer, STEAD_COST_BEDDING), ==, 34);
  g_assert_cmpint (shown (answer, STEAD_COST_PACKAGING), ==, 31);
  g_assert_cmpint (shown (answer, STEAD_COST_LABOR), ==, 0);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 188 + 49 + 34 + 31);
  g_assert_cmpint (answer->sheet.unit_cash_cents, ==, 302);
  g_assert_null (answer->caution);
  NUMBERS_ARE (answer->sentence, 3.02, 1.88);
  g_assert_cmpstr (answer->labels[STEAD_COST_PACKAGING], ==, "Carton");
}

static void
test_periods (Farm          *farm,
              gconstpointer  data)
{
  static const struct { SteadPeriod period; int eggs; int cracked; } spans[] = {
    { STEAD_PERIOD_WHOLE_BATCH, 720, 9 },
    { STEAD_PERIOD_12_WEEKS, 84 * 8, 9 },    /* 7 January on: each tenth day but none before */
    { STEAD_PERIOD_4_WEEKS, 28 * 8, 3 },     /* 4 March on: 11, 21, 31 March */
    { STEAD_PERIOD_SCHOOL_YEAR, 720, 9 },    /* from August, but not before the flock came */
  };

  farm_stock (farm);
  farm_log (farm);
  for (gsize i = 0; i < G_N_ELEMENTS (spans); i++)
    {
      g_autoptr(SteadCostAnswer) answer = ask (farm, spans[i].period);
      SteadPeriod back;

      g_assert_cmpint (answer->totals.eggs, ==, spans[i].eggs);
      g_assert_cmpint (answer->totals.cracked, ==, spans[i].cracked);
      g_assert_cmpint (answer->to, ==, farm->today);
      g_assert_true (stead_period_from_id (stead_period_id (spans[i].period), &back));
      g_assert_cmpint (back, ==, spans[i].period);
    }
}

static void
leave_a_tenth (SteadProduct *product)
{
  product->unsold_frac = 0.1;
}

static void
test_loss (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  farm_log (farm);
  change_product (farm, leave_a_tenth);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  /* 711 / 12 x 0.9 = 53.325 sold of 60 made */
  g_assert_cmpfloat_with_epsilon (answer->sheet.good_units, 53.325, 1e-9);
  g_assert_cmpint (shown (answer, STEAD_COST_FEED), ==, 209);   /* 111.20 / 53.325 = 2.0853 */
  /* the good ones carry (60 - 53.325) / 60 of feed and birds: (2.0853 + 0.5401) x 0.11125 = 0.2921 */
  g_assert_cmpfloat_with_epsilon (answer->sheet.loss_unit_cents, 29.21, 0.01);
}

static void
test_labor (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) with = NULL;
  g_autoptr(SteadCostAnswer) without = NULL;

  farm_stock (farm);
  farm_log (farm);
  without = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  set_labor (farm, 900);
  with = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  /* 10 minutes x 90 days at $9.00 an hour: $135.00 / 59.25 = 2.2785 */
  g_assert_cmpfloat_with_epsilon (total (with, STEAD_COST_LABOR), 13500, 1e-6);
  g_assert_cmpint (shown (with, STEAD_COST_LABOR), ==, 228);
  g_assert_cmpint (with->sheet.unit_cents, ==, without->sheet.unit_cents);
  g_assert_cmpint (with->sheet.unit_labor_cents, ==, with->sheet.unit_cents + 228);
  NUMBERS_ARE (with->sentence, 2.68, 1.88, 9.00, 4.96);
}

static void
give_birds (SteadFlock *flock)
{
  flock->birds_are_gift = TRUE;
}

/* What was given is in the cost, at its fair value, and out of the cash. */
static void
test_gifts (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 100, 12000, TRUE);
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->carton, 100, 3100, TRUE);
  change_flock (farm, give_birds);
  farm_log (farm);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpint (shown (answer, STEAD_COST_FEED), ==, 182);   /* 108.00 / 59.25 = 1.8228 */
  g_assert_cmpint (answer->sheet.unit_cents, ==, 182 + 49 + 31);
  g_assert_cmpint (answer->sheet.unit_cash_cents, ==, 0);
}

static void
test_straight_line (Farm          *farm,
                    gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  farm_log (farm);
  add_coop (farm, STEAD_DEPRECIATION_STRAIGHT_LINE, stead_day_new (2025, 1, 1), FALSE);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  /* (750 - 20) / 8 x 90 / 365 x half = 11.25 */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_ASSETS), 1125, 1e-6);
  g_assert_cmpint (shown (answer, STEAD_COST_ASSETS), ==, 19);
}

/* Bought in the middle: only the days in use count. */
static void
test_bought_late (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  farm_log (farm);
  add_coop (farm, STEAD_DEPRECIATION_STRAIGHT_LINE, farm->today - 9, TRUE);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_ASSETS), 73000 / 8.0 * 10 / 365 / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (answer->sheet.parts[STEAD_COST_ASSETS].gift_cents,
                                  total (answer, STEAD_COST_ASSETS), 1e-6);
}

static void
test_declining (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  farm_log (farm);
  add_coop (farm, STEAD_DEPRECIATION_DOUBLE_DECLINING, stead_day_new (2026, 1, 1), FALSE);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  /* first year 750 x 2 / 8 = 187.50; 90 of 365 days, half of it */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_ASSETS), 18750 * 90 / 365.0 / 2, 1e-6);
}

static void
test_by_use (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  gint64 id;

  farm_stock (farm);
  farm_log (farm);
  id = add_coop (farm, STEAD_DEPRECIATION_UNITS, stead_day_new (2026, 1, 1), FALSE);
  FARM_DO (farm, stead_asset_repo_add_use (farm->store, id, farm->flock, stead_day_new (2026, 2, 1), 3, &farm_error));
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  /* 730 / 100 uses x 3 */
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_ASSETS), 2190, 1e-6);
}

static void
expect_little (SteadFlock *flock)
{
  flock->eggs_expected = 60;
}

/* Ten hens were expected to lay 600; the last 120 of 720 carry nothing. */
static void
test_birds_never_above_their_price (Farm          *farm,
                                    gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) whole = NULL;
  g_autoptr(SteadCostAnswer) late = NULL;

  farm_stock (farm);
  farm_log (farm);
  change_flock (farm, expect_little);
  whole = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  late = ask (farm, STEAD_PERIOD_4_WEEKS);
  g_assert_cmpfloat_with_epsilon (total (whole, STEAD_COST_START), 12000, 1e-6);
  /* 62 days x 8 = 496 before; 104 eggs still carry 20 cents each */
  g_assert_cmpfloat_with_epsilon (total (late, STEAD_COST_START), 2080, 1e-6);
}

/* --- several products of one flock ------------------------------------------------ */

static void
test_shared_flock (Farm          *farm,
                   gconstpointer  data)
{
  g_autoptr(SteadProduct) trays = stead_product_new ();
  g_autoptr(SteadCostAnswer) dozen = NULL;
  g_autoptr(SteadCostAnswer) tray = NULL;
  g_autoptr(GError) error = NULL;

  farm_stock (farm);
  farm_log (farm);
  g_free (trays->name);
  trays->name = g_strdup ("Trays");
  trays->pack = STEAD_PACK_TRAY;
  trays->base_per_unit = 30;
  trays->batch_id = farm->flock;
  FARM_DO (farm, stead_product_repo_save (farm->store, trays, &farm_error));
  dozen = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  tray = stead_cost_answer_new (farm->store, trays->id, STEAD_PERIOD_WHOLE_BATCH, &error);
  g_assert_no_error (error);
  /* an egg carries the same feed in either */
  g_assert_cmpfloat_with_epsilon (dozen->sheet.parts[STEAD_COST_FEED].unit_cents / 12,
                                  tray->sheet.parts[STEAD_COST_FEED].unit_cents / 30, 1e-9);
  g_assert_null (tray->whys[STEAD_COST_PACKAGING]);
}

/* --- what is missing ---------------------------------------------------------------- */

static void
forget_flock (SteadProduct *product)
{
  product->batch_id = 0;
}

static void
test_missing (Farm          *farm,
              gconstpointer  data)
{
  ask_in_vain (farm, STEAD_PERIOD_12_WEEKS);
  farm_entry (farm, farm->today, 2, 2, NAN, 0);
  ask_in_vain (farm, STEAD_PERIOD_12_WEEKS);
  farm_entry (farm, farm->today, 1, 0, NAN, 0);
  stead_cost_answer_free (ask (farm, STEAD_PERIOD_12_WEEKS));
  change_product (farm, forget_flock);
  ask_in_vain (farm, STEAD_PERIOD_12_WEEKS);
}

/* Nothing was ever bought: told, and not guessed. */
static void
test_no_prices (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_log (farm);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpfloat (total (answer, STEAD_COST_FEED), ==, 0);
  g_assert_cmpint (answer->sheet.unit_cents, ==, 49);
  NUMBERS_ARE (strrchr (answer->total_why->worked, '\n'), 0.49);   /* said once: "0.49 = 0.49" is no sum */
  g_assert_nonnull (answer->caution);
  g_assert_nonnull (strstr (answer->caution, "Layer feed"));
  g_assert_nonnull (strstr (answer->caution, "Carton"));
  NUMBERS_ARE (answer->caution, 90);
}

/* 20 of 90 kg are on no receipt: they count at the nearest price, and it is said. */
static void
test_uncovered (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_buy (farm, stead_day_new (2026, 1, 1), farm->feed, 70, 8400, FALSE);
  farm_buy (farm, stead_day_new (2026, 1, 1), farm->carton, 100, 3100, FALSE);
  farm_log (farm);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_cmpfloat_with_epsilon (total (answer, STEAD_COST_FEED), 8400 + 2400, 1e-6);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->caution, 20);
}

static void
test_gaps_in_the_log (Farm          *farm,
                      gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;

  farm_stock (farm);
  for (int i = 0; i < 28; i += 2)
    farm_entry (farm, farm->today - i, 8, 0, 1, 0);
  answer = ask (farm, STEAD_PERIOD_4_WEEKS);
  g_assert_nonnull (answer->caution);
  NUMBERS_ARE (answer->caution, 14, 28);
}

/* --- what always holds ------------------------------------------------------------------ */

static void
make_everything (Farm *farm)
{
  farm_stock (farm);
  farm_buy (farm, stead_day_new (2026, 2, 10), farm->feed, 7.77, 999, TRUE);
  farm_log (farm);
  set_labor (farm, 925);
  add_coop (farm, STEAD_DEPRECIATION_STRAIGHT_LINE, stead_day_new (2025, 6, 6), FALSE);
  change_product (farm, leave_a_tenth);
  FARM_DO (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, stead_day_new (2026, 3, 12), 3, 0,
                                     &farm_error));
  farm_entry (farm, farm->today, STEAD_COUNT_NONE, 0, 19.3, 0);
}

static void
test_sums_hold (Farm          *farm,
                gconstpointer  data)
{
  make_everything (farm);
  for (SteadPeriod period = 0; period < STEAD_N_PERIODS; period++)
    {
      g_autoptr(SteadCostAnswer) answer = ask (farm, period);
      gint64 lines = 0;

      for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
        {
          g_autoptr(GError) error = NULL;
          g_autoptr(GPtrArray) entries = stead_cost_answer_entries (farm->store, answer, kind, &error);
          gint64 sum = 0;

          g_assert_no_error (error);
          for (guint i = 0; i < entries->len; i++)
            sum += ((const SteadCostEntry *) entries->pdata[i])->cents;
          g_assert_cmpint (sum, ==, stead_money_round (total (answer, kind)));
          lines += kind != STEAD_COST_LABOR ? shown (answer, kind) : 0;
        }
      g_assert_cmpint (lines, ==, answer->sheet.unit_cents);
    }
}

/* The last line of a Why, worked again with the numbers as they are printed. */
static void
assert_worked (const SteadWhy *why,
               gint64          shown_cents)
{
  const char *last = strrchr (why->worked, '\n');
  g_autoptr(GArray) numbers = numbers_in (last != NULL ? last : why->worked);
  const double *n = (const double *) (gpointer) numbers->data;
  gboolean divides = strstr (last != NULL ? last : why->worked, "÷") != NULL;
  gboolean times = strstr (last != NULL ? last : why->worked, "×") != NULL;
  double result = n[0];

  g_assert_cmpuint (numbers->len, >=, 3);   /* "0.31 = 0.31" would explain nothing */
  for (guint i = 1; i + 1 < numbers->len; i++)
    result = !divides ? result + n[i] : times && i > 1 ? result * n[i] : result / n[i];
  g_assert_cmpint (stead_money_round (result * 100), ==, shown_cents);
  g_assert_cmpint (stead_money_round (n[numbers->len - 1] * 100), ==, shown_cents);
  g_assert_cmpstr (why->title, !=, "");
  g_assert_cmpstr (why->formula, !=, "");
  g_assert_cmpstr (why->source, !=, "");
}

static void
test_whys_can_be_redone (Farm          *farm,
                         gconstpointer  data)
{
  make_everything (farm);
  for (SteadPeriod period = 0; period < STEAD_N_PERIODS; period++)
    {
      g_autoptr(SteadCostAnswer) answer = ask (farm, period);
      g_autoptr(GArray) numbers = NULL;
      double sum = 0;

      for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
        {
          g_assert_true ((answer->whys[kind] != NULL) == (total (answer, kind) > 0));
          if (answer->whys[kind] != NULL)
            assert_worked (answer->whys[kind], shown (answer, kind));
        }
      numbers = numbers_in (strrchr (answer->total_why->worked, '\n') + 1);
      for (guint i = 0; i + 1 < numbers->len; i++)
        sum += g_array_index (numbers, double, i);
      g_assert_cmpint (stead_money_round (sum * 100), ==, answer->sheet.unit_cents);
    }
}

/* Packaging is worked from what a lot cost and held: one thing in one line, several
 * with a sum below. */
static void
test_packaging_worked (Farm          *farm,
                       gconstpointer  data)
{
  g_autoptr(SteadProduct) product = stead_product_repo_get (farm->store, farm->product, NULL);
  SteadProductPart straw = { farm->straw, 0.02 };
  g_autoptr(SteadCostAnswer) one = NULL;
  g_autoptr(SteadCostAnswer) two = NULL;
  g_auto(GStrv) lines = NULL;

  farm_stock (farm);
  farm_log (farm);
  one = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  g_assert_nonnull (strstr (one->total_why->worked, " + "));
  g_assert_null (strchr (one->whys[STEAD_COST_PACKAGING]->worked, '\n'));
  NUMBERS_ARE (one->whys[STEAD_COST_PACKAGING]->worked, 31, 100, 1, 0.31);
  g_array_append_val (product->parts, straw);
  FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
  two = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  lines = g_strsplit (two->whys[STEAD_COST_PACKAGING]->worked, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 3);
  NUMBERS_ARE (lines[0], 31, 100, 1, 0.31);
  NUMBERS_ARE (lines[1], 50, 10, 0.02, 0.10);   /* $50 / 10 bales x 0.02 */
  NUMBERS_ARE (lines[2], 0.31, 0.10, 0.41);
}

/* The digits of the last line grow until the printed numbers give the printed cents. */
static void
test_digits_suffice (Farm          *farm,
                     gconstpointer  data)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (45);

  farm_stock (farm);
  farm_log (farm);
  for (int i = 0; i < 60; i++)
    {
      g_autoptr(SteadCostAnswer) answer = NULL;
      g_autoptr(SteadProduct) product = stead_product_repo_get (farm->store, farm->product, NULL);

      product->unsold_frac = g_rand_int_range (rand, 0, 300) / 1000.0;
      product->base_per_unit = g_rand_int_range (rand, 1, 500);   /* down to a unit and a half */
      FARM_DO (farm, stead_product_repo_save (farm->store, product, &farm_error));
      answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
      assert_worked (answer->whys[STEAD_COST_FEED], shown (answer, STEAD_COST_FEED));
      assert_worked (answer->whys[STEAD_COST_START], shown (answer, STEAD_COST_START));
    }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
#define ADD(name, test) g_test_add ("/answer/cost/" name, Farm, NULL, farm_set_up, test, farm_tear_down)
  ADD ("parts", test_parts);
  ADD ("periods", test_periods);
  ADD ("loss", test_loss);
  ADD ("labor", test_labor);
  ADD ("gifts", test_gifts);
  ADD ("straight-line", test_straight_line);
  ADD ("bought-late", test_bought_late);
  ADD ("declining", test_declining);
  ADD ("by-use", test_by_use);
  ADD ("birds-never-above-their-price", test_birds_never_above_their_price);
  ADD ("shared-flock", test_shared_flock);
  ADD ("missing", test_missing);
  ADD ("no-prices", test_no_prices);
  ADD ("uncovered", test_uncovered);
  ADD ("gaps-in-the-log", test_gaps_in_the_log);
  ADD ("sums-hold", test_sums_hold);
  ADD ("whys-can-be-redone", test_whys_can_be_redone);
  ADD ("packaging-worked", test_packaging_worked);
  ADD ("digits-suffice", test_digits_suffice);
#undef ADD
  return g_test_run ();
}

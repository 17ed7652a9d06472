/* test-overhead.c - the share of the farm's overhead in the cost of one unit. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-cost-answer.h"
#include "core/stead-money.h"
#include "store/stead-overhead-repo.h"
#include "store/stead-place-repo.h"

static SteadCostAnswer *
ask (Farm              *farm,
     SteadOverheadBase  base,
     gint64             cents,
     double             planned)
{
  const SteadOverhead overhead = { base, cents, planned };
  g_autoptr(GError) error = NULL;
  SteadCostAnswer *answer;

  FARM_DO (farm, stead_overhead_repo_set (farm->store, &overhead, &farm_error));
  answer = stead_cost_answer_new (farm->store, farm->product, STEAD_PERIOD_WHOLE_BATCH, &error);
  g_assert_no_error (error);
  return answer;
}

/* OpenStax Principles of Accounting vol. 2, section 4.4: $250,000 over 100,000 hours is $2.50 for an
 * hour (row overhead-01 of tests/reference/goods.csv); the flock takes 10 minutes a day over 90 days, and
 * a dozen its minutes of packing. */
static void
test_hours (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(SteadCostAnswer) plain = NULL, answer = NULL;
  g_autoptr(GPtrArray) entries = NULL;
  g_autoptr(GError) error = NULL;
  const SteadCostPart *part;
  double hours;

  farm_log (farm);
  farm_stock (farm);
  flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  flock->care_minutes_day = 10;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  plain = ask (farm, STEAD_OVERHEAD_NONE, 0, 0);
  g_assert_cmpfloat (plain->sheet.parts[STEAD_COST_OVERHEAD].total_cents, ==, 0);
  answer = ask (farm, STEAD_OVERHEAD_HOURS, 25000000, 100000);
  part = &answer->sheet.parts[STEAD_COST_OVERHEAD];
  hours = 90 * 10 / 60.0 + answer->product->pack_minutes * answer->sheet.good_units / 60;
  g_assert_cmpfloat_with_epsilon (part->total_cents, 250 * hours, 1e-6);
  g_assert_cmpint (part->shown_cents, ==, stead_money_round (250 * hours / answer->sheet.good_units));
  g_assert_cmpint (answer->sheet.unit_cents, ==, plain->sheet.unit_cents + part->shown_cents);
  g_assert_nonnull (answer->whys[STEAD_COST_OVERHEAD]);
  g_assert_nonnull (answer->labels[STEAD_COST_OVERHEAD]);
  entries = stead_cost_answer_entries (farm->store, answer, STEAD_COST_OVERHEAD, &error);
  g_assert_cmpuint (entries->len, ==, 1);
  g_assert_cmpint (((SteadCostEntry *) entries->pdata[0])->cents, ==, stead_money_round (part->total_cents));
}

/* By hand: a tenth of all other cost, packaging and unpaid work aside. */
static void
test_money (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  double other = 0;

  farm_log (farm);
  farm_stock (farm);
  answer = ask (farm, STEAD_OVERHEAD_MONEY, 10000, 100000);
  for (SteadCostKind kind = 0; kind < STEAD_COST_OVERHEAD; kind++)
    other += answer->sheet.parts[kind].total_cents;
  g_assert_cmpfloat (other, >, 0);
  g_assert_cmpfloat_with_epsilon (answer->sheet.parts[STEAD_COST_OVERHEAD].total_cents, other / 10, 1e-6);
}

/* Rutgers, geranium budget: $1,763 over 1,100 square feet and six weeks is 26.7 cents for a square foot and
 * week; a coop of 100 square feet over 90 days.  Without a place there is nothing to go by, and it is said. */
static void
test_space (Farm          *farm,
            gconstpointer  data)
{
  const double sqft = 0.3048 * 0.3048;
  g_autoptr(SteadCostAnswer) none = NULL, answer = NULL;
  g_autoptr(SteadFlock) flock = NULL;
  g_autoptr(GError) error = NULL;
  SteadPlaceFacts coop = { 0, (char *) "Coop", STEAD_PLACE_COOP, 100 * sqft };

  farm_log (farm);
  farm_stock (farm);
  none = ask (farm, STEAD_OVERHEAD_SPACE, 176300, 1100 * sqft * 6);
  g_assert_cmpfloat (none->sheet.parts[STEAD_COST_OVERHEAD].total_cents, ==, 0);
  g_assert_nonnull (none->caution);
  FARM_DO (farm, stead_place_repo_save (farm->store, &coop, &farm_error));
  flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  flock->place_id = coop.id;
  FARM_DO (farm, stead_flock_repo_save (farm->store, flock, &farm_error));
  answer = ask (farm, STEAD_OVERHEAD_SPACE, 176300, 1100 * sqft * 6);
  g_assert_cmpfloat_with_epsilon (answer->sheet.parts[STEAD_COST_OVERHEAD].total_cents, 26.71 * 100 * 90 / 7.0, 10);
}

#define ADD(name, test) g_test_add ("/answer/overhead/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("hours", test_hours);
  ADD ("money", test_money);
  ADD ("space", test_space);
  return g_test_run ();
}

/* test-cost.c - the cost of one unit against figures worked out by hand. */
#include "farm.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-cost-answer.h"

#include <locale.h>
#include <math.h>

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
test_parts (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadCostAnswer) answer = NULL;
  const SteadCostSheet *sheet;

  farm_stock (farm);
  farm_log (farm);
  answer = ask (farm, STEAD_PERIOD_WHOLE_BATCH);
  sheet = &answer->sheet;
  g_test_message ("%s | %s", answer->sentence, answer->caution);
  for (int k = 0; k < STEAD_N_COST_KINDS; k++)
    if (answer->whys[k] != NULL)
      g_test_message ("%s\n%s\n%s\n%s", answer->whys[k]->title, answer->whys[k]->formula, answer->whys[k]->worked, answer->whys[k]->source);
  g_test_message ("%s\n%s", answer->total_why->worked, answer->sentence);
  g_assert_cmpint (answer->totals.eggs, ==, 720);
  g_assert_cmpint (answer->totals.cracked, ==, 9);
  /* 90 kg: 50 at $1.20 and 40 at $1.28 */
  g_assert_cmpfloat_with_epsilon (sheet->parts[STEAD_COST_FEED].total_cents, 6000 + 5120, 1e-6);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/answer/cost/parts", Farm, NULL, farm_set_up, test_parts, farm_tear_down);
  return g_test_run ();
}

/* test-run-line.c - one step of a recipe, with its limits, before and after it was read.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2): eggs that are held, 155 °F for 17 s; §3-501.16(A)(1): 135 °F;
 * 21 CFR 114.80(a)(1): an equilibrium pH of 4.6 or below.
 */
#include "farm.h"

#include "answer/stead-kitchen-private.h"

#include <math.h>
#include <string.h>

#define F(f) (((f) - 32) / 1.8)

static SteadRunLine *
line_of (const char      *step,
         const char      *food,
         double           least_f,
         double           most_f,
         double           hold_s,
         SteadUnitSystem  units)
{
  const SteadRecipeStep recipe = { .text = (char *) "Stir", .minutes = NAN, .step = (char *) step, .food = (char *) food,
                                   .least_c = F (least_f), .most_c = F (most_f), .hold_s = hold_s };

  return stead_run_line_of_recipe (&recipe, 3, units);
}

static void
assert_own (double           least_f,
            double           most_f,
            double           hold_s,
            SteadUnitSystem  units,
            const char      *words)
{
  SteadRunLine *line = line_of (NULL, NULL, least_f, most_f, hold_s, units);

  g_assert_cmpint (line->number, ==, 3);
  g_assert_null (line->limit);
  g_assert_cmpstr (line->measure, ==, "food_temp");
  g_assert_cmpint (line->verdict, ==, STEAD_RUN_OPEN);
  if (farm_in_english ())
    g_assert_cmpstr (line->own, ==, words);
  stead_run_line_free (line);
}

/* What only the recipe asks for is measured too: from, to, between; for seconds, or for minutes. */
static void
test_own (void)
{
  assert_own (150, NAN, NAN, STEAD_UNITS_US, "at least 150 °F");
  assert_own (NAN, 41, NAN, STEAD_UNITS_US, "at most 41 °F");
  assert_own (120, 130, NAN, STEAD_UNITS_US, "120 °F to 130 °F");
  assert_own (150, NAN, 90, STEAD_UNITS_US, "at least 150 °F for 90 s");
  assert_own (120, 130, 150, STEAD_UNITS_US, "120 °F to 130 °F for 2.5 min");
  assert_own (140, NAN, 120, STEAD_UNITS_METRIC, "at least 60 °C for 2 min");
}

/* A step of the tables has their limit; one of neither has nothing to measure. */
static void
test_tables (void)
{
  SteadRunLine *hot = line_of ("hold_hot", NULL, NAN, NAN, NAN, STEAD_UNITS_US);
  SteadRunLine *plain = line_of (NULL, NULL, NAN, NAN, NAN, STEAD_UNITS_US);

  if (farm_in_english ())
    g_assert_cmpstr (hot->limit, ==, "at least 135 °F");
  g_assert_nonnull (strstr (hot->source, "§3-501.16(A)(1)"));
  g_assert_null (hot->own);
  g_assert_null (plain->measure);
  g_assert_null (plain->own);
  g_assert_cmpint (plain->verdict, ==, STEAD_RUN_NO_LIMIT);
  stead_run_line_free (hot);
  stead_run_line_free (plain);
}

/* A reading of a step. */
static void
assert_read (const char      *step_word,
             const char      *food,
             double           own_least_f,
             const char      *kind,
             double           value,
             double           held_s,
             SteadUnitSystem  units,
             SteadRunVerdict  verdict,
             const char      *words)
{
  const SteadKitchenStep step = { .id = 7, .text = (char *) "Cook", .step = (char *) step_word, .food = (char *) food,
                                  .minutes = NAN, .least_c = F (own_least_f), .most_c = NAN, .hold_s = NAN,
                                  .started_at = STEAD_TIME_NONE, .done_at = STEAD_TIME_NONE };
  SteadShown other = { .id = 2, .step_id = 8, .kind = (char *) kind, .value = 0 };
  SteadShown wrong = { .id = 3, .step_id = 7, .kind = (char *) kind, .value = 0, .corrected = TRUE };
  SteadShown shown = { .id = 1, .step_id = 7, .kind = (char *) kind, .value = value, .held_s = held_s };
  g_autoptr(GPtrArray) readings = g_ptr_array_new ();
  SteadRunLine *line;

  /* Neither one of another step nor one that was corrected counts. */
  g_ptr_array_add (readings, &shown);
  g_ptr_array_add (readings, &other);
  g_ptr_array_add (readings, &wrong);
  line = stead_kitchen_run_line (&step, 1, readings, units);
  g_assert_true (line->shown == &shown);
  g_assert_cmpint (line->verdict, ==, verdict);
  if (farm_in_english ())
    g_assert_cmpstr (line->verdict_text, ==, words);
  stead_run_line_free (line);
}

static void
test_readings (void)
{
  assert_read ("cook", "raw_egg", NAN, "food_temp", F (155), 17, STEAD_UNITS_US, STEAD_RUN_MET, "met");
  assert_read ("cook", "raw_egg", NAN, "food_temp", F (155), 10, STEAD_UNITS_US, STEAD_RUN_NOT_MET, "not met: held too short");
  assert_read ("cook", "raw_egg", NAN, "food_temp", F (155), NAN, STEAD_UNITS_US, STEAD_RUN_IF_HELD,
               "met, if it was held so long");
  assert_read ("hold_hot", NULL, NAN, "food_temp", F (131), NAN, STEAD_UNITS_US, STEAD_RUN_NOT_MET, "not met: 4 °F off");
  assert_read ("hold_hot", NULL, NAN, "food_temp", F (126), NAN, STEAD_UNITS_METRIC, STEAD_RUN_NOT_MET, "not met: 5 °C off");
  assert_read (NULL, NULL, 150, "food_temp", F (148), NAN, STEAD_UNITS_US, STEAD_RUN_NOT_MET, "not met: 2 °F off");
  assert_read ("ph", NULL, NAN, "ph", 4.8, NAN, STEAD_UNITS_US, STEAD_RUN_NOT_MET, "not met: 0.2 pH off");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/run-line/own", test_own);
  g_test_add_func ("/answer/run-line/tables", test_tables);
  g_test_add_func ("/answer/run-line/readings", test_readings);
  return g_test_run ();
}

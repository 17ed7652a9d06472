/* test-check-verdict.c - a judged reading in words: met, not met, not known yet, or asked about.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2): eggs that are held, 155 °F for 17 seconds, 158 °F at once;
 * §3-501.14(A): 70 °F within 2 h, 41 °F within 6 h; §3-501.16(A)(1): 135 °F; §4-203.11(A): a thermometer in °F is
 * right within 2 °F; §4-501.114(A): chlorine of 25 mg/L works from 120 °F on, of 100 mg/L from 55 °F; (B)(3): iodine
 * of 12.5 to 25 mg/L at pH 5 or less from 68 °F on.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-check-verdict.h"

#include <math.h>
#include <string.h>

#define NOW ((gint64) 20000 * 86400 + 10 * 3600)

typedef struct
{
  Farm                  farm;
  SteadCheckPlanAnswer *plan;
} Check;

/* Eggs broken ahead and held hot, a sauce that is cooled and heated again; thermometers in °F alone. */
static void
set_up (Check         *check,
        gconstpointer  data)
{
  static const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_COOKED, "breakfast bowls", "raw_egg" }, { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" },
    { STEAD_CHECK_KEY_EGG_USE, "breakfast bowls", "pooled_or_held" },
    { STEAD_CHECK_KEY_COOKED, "tomato sauce", "plant_food" }, { STEAD_CHECK_KEY_HELD, "tomato sauce", "cold" },
    { STEAD_CHECK_KEY_AHEAD, "tomato sauce", "reheated" }, { STEAD_CHECK_KEY_THERMOMETER, NULL, "F_only" },
    { STEAD_CHECK_KEY_SANITIZER, NULL, "chlorine" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                                  .day = STEAD_DAY_NONE, .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;

  farm_set_up (&check->farm, NULL);
  check->plan = stead_check_plan_answer_new (check->farm.store, &order, &error);
  g_assert_no_error (error);
}

static void
tear_down (Check         *check,
           gconstpointer  data)
{
  stead_check_plan_answer_free (check->plan);
  farm_tear_down (&check->farm, NULL);
}

static const SteadCheckLine *
line_of (Check              *check,
         SteadCheckLineKind  kind)
{
  for (guint i = 0; i < check->plan->plan->lines->len; i++)
    if (((const SteadCheckLine *) check->plan->plan->lines->pdata[i])->kind == kind)
      return check->plan->plan->lines->pdata[i];
  g_error ("no line of kind %d", (int) kind);
}

#pragma GCC diagnostic ignored "-Woverride-init"

#define READING(temp_f, ...) (&(SteadCheckReading) { .shown = { temp_f, "F", 0, 0, NAN }, .at = NOW, .now = NOW, \
                               .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN, .since_good_h = NAN, __VA_ARGS__ })

static SteadCheckVerdict *
judge (Check                   *check,
       const SteadCheckLine    *line,
       const SteadCheckReading *reading)
{
  g_autoptr(GError) error = NULL;
  SteadCheckVerdict *verdict = stead_check_verdict_new (check->plan, line, reading, &error);

  g_assert_no_error (error);
  return verdict;
}

static void
assert_says (Check                   *check,
             const SteadCheckLine    *line,
             const SteadCheckReading *reading,
             SteadCheckOutcome        outcome,
             const char              *words)
{
  g_autoptr(SteadCheckVerdict) verdict = judge (check, line, reading);

  g_assert_cmpint (verdict->judged.outcome, ==, outcome);
  if (farm_in_english ())
    g_assert_cmpstr (verdict->sentence, ==, words);
}

static void
test_hot (Check         *check,
          gconstpointer  data)
{
  const SteadCheckLine *cook = line_of (check, STEAD_CHECK_LINE_COOK), *hot = line_of (check, STEAD_CHECK_LINE_HOLD_HOT);
  SteadCheckReading sure = *READING (140);

  assert_says (check, cook, READING (155), STEAD_CHECK_IF_HELD,
               "Hot enough, if it stays so for 17 seconds. The limit is at least 155 °F for 17 seconds.");
  sure.shown.error = 2;
  assert_says (check, hot, &sure, STEAD_CHECK_MET,
               "Met by 5 °F, more than the 2 °F that the instrument may be off. The limit is at least 135 °F.");
  assert_says (check, hot, READING (140), STEAD_CHECK_MET, "Met by 5 °F. The limit is at least 135 °F.");
}

/* Of a farm in degrees Celsius 5 °F are 2.78 °C. */
static void
test_celsius (Check         *check,
              gconstpointer  data)
{
  g_autoptr(SteadCheckVerdict) verdict = NULL;

  check->plan->farm->units = STEAD_UNITS_METRIC;
  verdict = judge (check, line_of (check, STEAD_CHECK_LINE_HOLD_HOT), READING (140));
  g_assert_nonnull (strstr (verdict->sentence, "2.78 °C"));
}

/* A pot: nothing missed; missed at 2 h; cold at last, but two hours late; and nobody knows since when. */
static void
test_cooling (Check         *check,
              gconstpointer  data)
{
  const SteadCheckLine *cool = line_of (check, STEAD_CHECK_LINE_COOL);

  assert_says (check, cool, READING (100, .elapsed_h = 1), STEAD_CHECK_OPEN, "Still cooling: nothing is missed yet.");
  assert_says (check, cool, READING (80, .elapsed_h = 2.5), STEAD_CHECK_NOT_MET,
               "Not met: 10 °F above it. The limit is at most 70 °F within 2 hours.");
  assert_says (check, cool, READING (41, .elapsed_h = 8), STEAD_CHECK_NOT_MET,
               "Not met: it got there 2 hours too late. The limit is at most 41 °F within 6 hours.");
  assert_says (check, cool, READING (41), STEAD_CHECK_NOT_MET,
               "Not met: nobody knows how long it took. The limit is at most 41 °F within 6 hours.");
}

/* The recipe asks for 170 °F, and for thirty seconds of it. */
static void
test_own (Check         *check,
          gconstpointer  data)
{
  SteadCheckLine own = *line_of (check, STEAD_CHECK_LINE_COOK);
  SteadCheckReading brief = *READING (171);

  own.own_least_c = (170 - 32) / 1.8;
  assert_says (check, &own, READING (166), STEAD_CHECK_NOT_MET,
               "The limit of the code is met, but the recipe's own is not: 4 °F are missing.");
  own.own_hold_s = 30;
  brief.shown.time_s = 20;
  assert_says (check, &own, &brief, STEAD_CHECK_NOT_MET,
               "The limit of the code is met, but the recipe's own is not: it was held 10 seconds too short.");
}

static void
test_thermometer (Check         *check,
                  gconstpointer  data)
{
  const SteadCheckLine *ice = line_of (check, STEAD_CHECK_LINE_THERMOMETER_ICE);

  assert_says (check, ice, READING (32), STEAD_CHECK_MET, "The thermometer shows what it should; it may be 2 °F off.");
  assert_says (check, ice, READING (33), STEAD_CHECK_MET, "The thermometer is 1 °F off; it may be 2 °F off.");
  assert_says (check, ice, READING (28), STEAD_CHECK_NOT_MET, "The thermometer is 4 °F off, and may be only 2 °F off.");
}

/* All that is wrong is said, for what is made anew has to be right in each. */
static void
test_sanitizer (Check         *check,
                gconstpointer  data)
{
  const SteadCheckLine *line = line_of (check, STEAD_CHECK_LINE_SANITIZER);
  const SteadSolution good = { "chlorine", 100, 7, 75, NAN }, weak = { "chlorine", 10, 7, 75, NAN },
                      all = { "iodine", 40, 6, 50, NAN };

  assert_says (check, line, READING (NAN, .solution = &good), STEAD_CHECK_MET, "The sanitizer is as it must be.");
  assert_says (check, line, READING (NAN, .solution = &weak), STEAD_CHECK_NOT_MET,
               "The sanitizer is too weak.");
  assert_says (check, line, READING (NAN, .solution = &all), STEAD_CHECK_NOT_MET,
               "The sanitizer is too strong. The pH of the sanitizer is too high for it to work. "
               "The water of the sanitizer is too cold.");
}

static void
assert_asked (Check                   *check,
              const SteadCheckReading *reading,
              const char              *words)
{
  g_autoptr(SteadCheckVerdict) verdict = judge (check, line_of (check, STEAD_CHECK_LINE_COOK), reading);

  g_assert_cmpstr (verdict->question, ==, verdict->sentence);
  g_assert_null (verdict->correction);
  if (farm_in_english ())
    g_assert_cmpstr (verdict->question, ==, words);
}

/* What cannot be is asked about, and judged only once it is confirmed. */
static void
test_odd (Check         *check,
          gconstpointer  data)
{
  g_autoptr(SteadCheckVerdict) confirmed = NULL;

  assert_asked (check, READING (158, .at = NOW + 1), "The time lies ahead of now. When was it read?");
  assert_asked (check, READING (158, .began = NOW + 60, .now = NOW + 120),
                "The time lies before the step began. When was it read?");
  assert_asked (check, READING (2000), "Nothing here can be so hot or cold. What did the thermometer show?");
  confirmed = judge (check, line_of (check, STEAD_CHECK_LINE_COOK), READING (2000, .confirmed = TRUE));
  g_assert_null (confirmed->question);
  g_assert_cmpint (confirmed->judged.outcome, ==, STEAD_CHECK_MET);
}

/* Each row of data/limits/correct.csv has words; those that discard all say to throw it away. */
static void
test_corrections (Check         *check,
                  gconstpointer  data)
{
  guint n = 0;

  for (guint i = 0; i < stead_limit_table_get_n_rows (check->plan->table); i++)
    {
      const SteadLimit *row = stead_limit_table_get_row (check->plan->table, i);
      g_autofree char *text = NULL;

      if (!g_str_equal (row->process, "correct"))
        continue;
      n++;
      text = stead_check_correction_text (row);
      g_assert_cmpuint (strlen (text), >, 10);
      if (farm_in_english () && g_strcmp0 (row->word, "discard") == 0)
        g_assert_true (g_str_has_prefix (text, "Throw it away"));
    }
  g_assert_cmpuint (n, ==, 23);     /* of the file */
}

#define ADD(name, test) g_test_add ("/answer/check-verdict/" name, Check, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("hot", test_hot);
  ADD ("celsius", test_celsius);
  ADD ("cooling", test_cooling);
  ADD ("own", test_own);
  ADD ("thermometer", test_thermometer);
  ADD ("sanitizer", test_sanitizer);
  ADD ("odd", test_odd);
  ADD ("corrections", test_corrections);
  return g_test_run ();
}

/* test-cooling.c - the forecast of a pot, and single readings in words.
 *
 * Rule: FDA Food Code 2022, §3-501.14(A): 70 °F within 2 h of 135 °F, 41 °F within 6 h.
 * Pots are made here by Newton's law, so their truth is known.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-check-verdict.h"
#include "answer/stead-cooling-answer.h"
#include "answer/stead-words.h"

#include <math.h>
#include <string.h>

/* 2026-03-31 10:00 UTC */
#define TEN G_GINT64_CONSTANT (1774951200)

#define MOST 12

typedef struct
{
  SteadPotReading readings[MOST];
  SteadPot        pot;
} Made;

/* A pot from 135 °F on, read each quarter of an hour. */
static void
make_pot (Made   *made,
          double  rate,
          double  air_f,
          gsize   n)
{
  for (gsize i = 0; i < n; i++)
    {
      double minute = 15.0 * (double) i;
      double temp_f = air_f + (135 - air_f) * exp (-rate * minute);

      made->readings[i] = (SteadPotReading) { TEN + (gint64) (minute * 60), (floor (temp_f * 10 + 0.5) / 10 - 32) / 1.8, FALSE };
    }
  made->pot = (SteadPot) { .readings = made->readings, .n_readings = n, .now = made->readings[n - 1].at,
                           .air_low_c = NAN, .air_high_c = NAN, .units = STEAD_UNITS_US };
}

static SteadCoolingAnswer *
ask (const Made *made)
{
  g_autoptr(GError) error = NULL;
  SteadCoolingAnswer *answer = stead_cooling_answer_new (&made->pot, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  g_assert_nonnull (answer->sentence);
  g_assert_nonnull (strstr (answer->source, "§3-501.14"));
  g_test_message ("%s %s", answer->sentence, answer->action != NULL ? answer->action : "-");
  return answer;
}

static const SteadWhy *
why_of (const SteadCoolingAnswer *answer,
        const char               *title)
{
  for (guint i = 0; i < answer->whys->len; i++)
    if (g_str_equal (((SteadWhy *) answer->whys->pdata[i])->title, title))
      return answer->whys->pdata[i];
  return NULL;
}

/* By hand, with Newton's law through the last reading: T = 38 + 97 e^(-0.0075 45) = 107.2 °F, and
 * ln ((107.2 - 38) / (70 - 38)) / 0.0075 = 103 min.  The air is known to a tenth of a degree, so the
 * middle curve has its rate, within what the readings tell. */
static void
test_whys (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) answer = NULL;
  const SteadWhy *mark;
  const char *equals;

  if (!farm_in_english ())
    return;
  make_pot (&made, 0.0075, 38, 4);
  made.pot.air_low_c = (37.9 - 32) / 1.8;
  made.pot.air_high_c = (38.1 - 32) / 1.8;
  made.pot.step_c = 0.1 / 1.8;
  answer = ask (&made);
  for (guint i = 0; i < answer->whys->len; i++)
    g_test_message ("%s: %s", ((SteadWhy *) answer->whys->pdata[i])->title, ((SteadWhy *) answer->whys->pdata[i])->worked);
  g_assert_nonnull (why_of (answer, "The curve"));
  g_assert_nonnull (why_of (answer, "The band"));
  g_assert_nonnull (strstr (why_of (answer, "When each mark is due")->worked, "70 °F: 10:00 AM + 2 hours = 12:00 PM"));
  g_assert_nonnull (strstr (why_of (answer, "When each mark is due")->worked, "41 °F: 10:00 AM + 6 hours = 4:00 PM"));
  NUMBERS_ARE (why_of (answer, "The band")->worked, 0.1, 12, 0.5, 0.5);
  mark = why_of (answer, "When it will be at 70 °F");
  g_assert_nonnull (strstr (mark->worked, "107.2 °F − 38 °F"));
  equals = strstr (mark->worked, "= ");
  g_assert_nonnull (equals);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (equals + 2, NULL), log (69.2 / 32) / 0.0075, 3);
  g_assert_nonnull (why_of (answer, "What is enough, and until when"));
}

/* Before three readings only the times that the rule sets are known; before any, nothing. */
static void
test_whys_early (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) answer = NULL;

  make_pot (&made, 0.0075, 38, 2);
  answer = ask (&made);
  g_assert_cmpuint (answer->whys->len, ==, 1);
  g_clear_pointer (&answer, stead_cooling_answer_free);
  made.pot.n_readings = 0;
  answer = ask (&made);
  g_assert_cmpuint (answer->whys->len, ==, 0);
}

/* At 38 °F with k = 0.02: 70 °F after 55 min, 41 °F after 174 min. */
static void
test_on_track (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) unsure = NULL;
  g_autoptr(SteadCoolingAnswer) answer = NULL;
  double at_70 = log ((135.0 - 38) / (70 - 38)) / 0.02;

  make_pot (&made, 0.02, 38, 4);
  /* In any cooler it may be too warm for 41 °F; in one that was measured it is not. */
  unsure = ask (&made);
  made.pot.air_low_c = (36 - 32) / 1.8;
  made.pot.air_high_c = (40 - 32) / 1.8;
  answer = ask (&made);
  g_assert_cmpfloat (unsure->chance, <, answer->chance);
  g_assert_cmpint (answer->state, ==, STEAD_POT_ON_TRACK);
  g_assert_true (answer->has_fit && answer->clock_known);
  g_assert_cmpfloat (answer->arrivals[0].low, <=, at_70);
  g_assert_cmpfloat (answer->arrivals[0].high, >=, at_70);
  g_assert_cmpfloat (answer->chance, >, 0.9);
  g_assert_null (answer->action);
  g_assert_cmpuint (answer->series.n_steps, >, 10);
  g_assert_cmpfloat (answer->series.marks[0].due_min, ==, 120);
  g_assert_cmpfloat (answer->series.marks[1].due_min, ==, 360);
  if (farm_in_english ())
    {
      g_assert_nonnull (strstr (answer->sentence, "due by 12:00 PM"));
      g_assert_nonnull (strstr (answer->sentence, "due by 4:00 PM"));
      g_assert_nonnull (strstr (answer->sentence, "70 °F"));
      g_assert_cmpstr (answer->names.marks[1], ==, "41 °F by 4:00 PM");
    }
}

/* A deep pot: at k = 0.008 it would be at 70 °F only after 139 minutes. */
static void
test_act (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) answer = NULL;
  const SteadPotAction *best;

  make_pot (&made, 0.008, 38, 4);
  answer = ask (&made);
  g_assert_cmpint (answer->state, ==, STEAD_POT_ACT);
  best = &g_array_index (answer->actions, SteadPotAction, answer->best);
  g_assert_cmpfloat (best->plan.chance, >=, 0.9);
  /* The mildest that is enough: none before it is. */
  for (int i = 0; i < answer->best; i++)
    g_assert_cmpfloat (g_array_index (answer->actions, SteadPotAction, i).plan.chance, <, 0.9);
  g_assert_cmpfloat (best->plan.latest_min, >=, answer->series.now_min);
  g_assert_cmpfloat (best->plan.latest_min, <, 120);
  g_assert_cmpfloat (answer->series.act_min, ==, best->plan.latest_min);
  g_assert_nonnull (answer->action);
  if (farm_in_english ())
    g_assert_nonnull (strstr (answer->action, stead_cooling_action_name (best->id)));
}

static void
test_too_late (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) answer = NULL;

  make_pot (&made, 0.0015, 38, 8);
  answer = ask (&made);
  g_assert_cmpint (answer->state, ==, STEAD_POT_TOO_LATE);
  g_assert_cmpint (answer->best, >=, 0);
  g_assert_nonnull (answer->action);
  g_assert_true (isnan (answer->series.act_min));
}

/* 125 °F after 105 minutes: nothing brings it to 70 °F in the last quarter of an hour, but it may be
 * heated once more and cooled anew (School food and nutrition two-stage cooling log). */
static void
test_hopeless (void)
{
  Made made;
  g_autoptr(SteadCoolingAnswer) first = NULL, again = NULL;

  make_pot (&made, 0.001, 38, 8);
  first = ask (&made);
  g_assert_cmpint (first->state, ==, STEAD_POT_TOO_LATE);
  g_assert_nonnull (first->correction);
  g_assert_cmpstr (first->correction->id, ==, "correct-cool-again");
  made.pot.reheated = TRUE;
  again = ask (&made);
  g_assert_cmpint (again->state, ==, STEAD_POT_TOO_LATE);
  g_assert_null (again->correction);
}

/* At the mark, and a tenth of a degree over it, at two hours sharp. */
static void
test_marks (void)
{
  static const struct { double temp_f, hours; SteadPotState state; const char *correction; } cases[] = {
    { 70, 2, STEAD_POT_WAITING, NULL },
    { 70.1, 2, STEAD_POT_FAILED, "correct-cool-again" },
    { 70.1, 2.01, STEAD_POT_FAILED, "correct-cool-late-1" },
    { 60, 2.5, STEAD_POT_FAILED, NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadPotReading readings[] = {
        { TEN, (135 - 32) / 1.8, FALSE },
        { TEN + (gint64) (cases[i].hours * 3600), (cases[i].temp_f - 32) / 1.8, FALSE },
      };
      Made made = { .pot = { .readings = readings, .n_readings = 2, .now = readings[1].at, .air_low_c = NAN,
                             .air_high_c = NAN } };
      g_autoptr(SteadCoolingAnswer) answer = ask (&made);

      g_test_message ("case %u: %s", (guint) i, answer->sentence);
      g_assert_cmpint (answer->state, ==, cases[i].state);
      if (cases[i].correction != NULL)
        g_assert_cmpstr (answer->correction->id, ==, cases[i].correction);
    }
}

/* No reading, one that is still hot, a time that ran out unseen, readings out of order. */
static void
test_odd_pots (void)
{
  SteadPotReading readings[] = { { TEN, 80, FALSE }, { TEN + 600, 55, FALSE }, { TEN + 1200, 50, FALSE } };
  Made made = { .pot = { .readings = readings, .n_readings = 0, .now = TEN, .air_low_c = NAN, .air_high_c = NAN } };
  g_autoptr(SteadCoolingAnswer) none = ask (&made);
  g_autoptr(SteadCoolingAnswer) hot = NULL;
  g_autoptr(SteadCoolingAnswer) unseen = NULL;
  g_autoptr(GError) error = NULL;

  g_assert_cmpint (none->state, ==, STEAD_POT_WAITING);
  made.pot.n_readings = 1;
  hot = ask (&made);
  g_assert_cmpint (hot->state, ==, STEAD_POT_WAITING);
  made.pot.n_readings = 3;
  made.pot.now = TEN + 5 * 3600;
  unseen = ask (&made);
  g_assert_cmpint (unseen->state, ==, STEAD_POT_LOOK);
  /* A clock that was set back. */
  readings[2].at = TEN + 60;
  g_assert_null (stead_cooling_answer_new (&made.pot, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  readings[2].at = TEN + 6 * 3600;
  g_assert_null (stead_cooling_answer_new (&made.pot, &error));
  g_assert_nonnull (error);
}

/* --- verdicts ---------------------------------------------------------------------- */

static const SteadCheckLine *
line_of (const SteadCheckPlanAnswer *answer,
         SteadCheckLineKind          kind)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (((const SteadCheckSaid *) answer->lines->pdata[i])->line->kind == kind)
      return ((const SteadCheckSaid *) answer->lines->pdata[i])->line;
  g_assert_not_reached ();
}

static void
test_verdicts (Farm          *farm,
               gconstpointer  data)
{
  static const struct
  {
    SteadCheckLineKind kind; double value, error, hold; SteadCheckOutcome outcome; double said; const char *english;
  } cases[] = {
    { STEAD_CHECK_LINE_COOK, 160, 0, 0, STEAD_CHECK_MET, 2, "Met by 2 °F. The limit is at least 158 °F." },
    { STEAD_CHECK_LINE_COOK, 155, 0, 10, STEAD_CHECK_NOT_MET, 7,
      "Not met: hot enough, but held 7 seconds too short. The limit is at least 155 °F for 17 seconds." },
    { STEAD_CHECK_LINE_COOK, 140, 0, NAN, STEAD_CHECK_NOT_MET, 5,
      "Not met: 5 °F below it. The limit is at least 145 °F for 3 minutes." },
    { STEAD_CHECK_LINE_HOLD_HOT, 136, 2, NAN, STEAD_CHECK_WITHIN_ERROR, 1, NULL },
    { STEAD_CHECK_LINE_HOLD_HOT, 135, 0, NAN, STEAD_CHECK_MET, 135, "Met, just at the limit: at least 135 °F." },
    { STEAD_CHECK_LINE_EGGS_COLD, 48, 0, NAN, STEAD_CHECK_NOT_MET, 3,
      "Not met: 3 °F above it. The limit is at most 45 °F." },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "scrambled eggs", .day = STEAD_DAY_NONE };
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (farm->store, &order, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckReading reading = { .shown = { cases[i].value, "F", cases[i].error, 0, cases[i].hold }, .at = TEN, .now = TEN,
                                    .began = STEAD_CHECK_NO_TIME, .elapsed_h = NAN, .since_good_h = NAN };
      g_autoptr(SteadCheckVerdict) verdict = stead_check_verdict_new (plan, line_of (plan, cases[i].kind), &reading, NULL);

      g_test_message ("%s", verdict->sentence);
      g_assert_cmpint (verdict->judged.outcome, ==, cases[i].outcome);
      if (farm_in_english () && cases[i].english != NULL)
        g_assert_cmpstr (verdict->sentence, ==, cases[i].english);
      g_assert_true ((cases[i].outcome == STEAD_CHECK_NOT_MET) == (verdict->correction != NULL));
    }
  {
    SteadCheckReading typed = { .shown = { 212, "C", 0, 0, NAN }, .at = TEN, .now = TEN, .began = STEAD_CHECK_NO_TIME,
                                .elapsed_h = NAN, .since_good_h = NAN };
    g_autoptr(SteadCheckVerdict) asked = stead_check_verdict_new (plan, line_of (plan, STEAD_CHECK_LINE_COOK), &typed, NULL);

    g_assert_nonnull (asked->question);
    g_assert_nonnull (strstr (asked->as_typed, "212 °C"));
    g_assert_nonnull (strstr (asked->otherwise, "212 °F"));
  }
}

int
main (int   argc,
      char *argv[])
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/cooling/on-track", test_on_track);
  g_test_add_func ("/answer/cooling/whys", test_whys);
  g_test_add_func ("/answer/cooling/whys-early", test_whys_early);
  g_test_add_func ("/answer/cooling/act", test_act);
  g_test_add_func ("/answer/cooling/too-late", test_too_late);
  g_test_add_func ("/answer/cooling/hopeless", test_hopeless);
  g_test_add_func ("/answer/cooling/marks", test_marks);
  g_test_add_func ("/answer/cooling/odd-pots", test_odd_pots);
  g_test_add ("/answer/cooling/verdicts", Farm, NULL, farm_set_up, test_verdicts, farm_tear_down);
  return g_test_run ();
}

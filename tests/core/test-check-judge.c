/* One reading against one line: at the limit, a step under and over it, in both scales; odd
 * readings are asked about; each failure has its correction.
 *
 * Limits: FDA Food Code 2022, §3-401.11, §3-403.11, §3-501.14, §3-501.16, §4-203.11 (read).
 */
#include "limit-tables.h"

#include "core/stead-check-judge.h"

#include <math.h>

#define STEP(step, food) { step, food, NAN, NAN, NAN }

static const SteadCheckStep steps[] = {
  STEP ("cook", "raw_egg"), STEP ("cool", NULL), STEP ("reheat", NULL), { "hold_hot", NULL, (150 - 32) / 1.8, NAN, NAN },
};

typedef struct
{
  SteadLimitTable *table;
  SteadCheckPlan  *plan;
} Made;

static void
set_up (Made          *made,
        gconstpointer  data)
{
  static const char * const parts[] = { "raw_shell_eggs", NULL };
  const SteadCheckFood food = { .name = "Bowls", .form = STEAD_CHECK_FORM_DISH, .recipe = TRUE, .steps = steps,
                                .n_steps = data != NULL ? 3 : 4, .parts = parts, .kept = STEAD_CHECK_KEPT_HOT,
                                .ph = NAN, .aw = NAN };
  const SteadCheckCase given = { &food, 1, NULL, 0, 20000, NULL, NULL };

  made->table = limit_tables ();
  made->plan = stead_check_plan_new (made->table, &given);
}

static void
tear_down (Made          *made,
           gconstpointer  data)
{
  stead_check_plan_free (made->plan);
  stead_limit_table_free (made->table);
}

static const SteadCheckLine *
line_of (const Made         *made,
         SteadCheckLineKind  kind)
{
  for (guint i = 0; i < made->plan->lines->len; i++)
    if (((const SteadCheckLine *) made->plan->lines->pdata[i])->kind == kind)
      return made->plan->lines->pdata[i];
  g_assert_not_reached ();
}

static SteadCheckReading
reading_of (double      value,
            const char *unit)
{
  return (SteadCheckReading) { .shown = { value, unit, 0, 0, NAN }, .at = 1000, .now = 1000, .began = STEAD_CHECK_NO_TIME,
                               .elapsed_h = NAN, .since_good_h = NAN };
}

static SteadCheckJudgement
judge (const Made               *made,
       SteadCheckLineKind        kind,
       const SteadCheckReading  *reading)
{
  SteadCheckJudgement out;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_check_judge (made->table, line_of (made, kind), reading, &out, &error));
  g_assert_no_error (error);
  return out;
}

static void
test_at_the_limit (Made          *made,
                   gconstpointer  data)
{
  static const struct
  {
    SteadCheckLineKind kind; double value; const char *unit; double hold; SteadCheckOutcome outcome;
  } cases[] = {
    { STEAD_CHECK_LINE_COOK, 155, "F", 17, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_COOK, 155, "F", 16, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_COOK, 154.9, "F", 17, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_COOK, 154.9, "F", 60, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_COOK, 155, "F", NAN, STEAD_CHECK_IF_HELD },
    { STEAD_CHECK_LINE_COOK, 158, "F", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_COOK, 157.9, "F", NAN, STEAD_CHECK_IF_HELD },
    { STEAD_CHECK_LINE_COOK, 70, "C", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_COOK, 69.9, "C", NAN, STEAD_CHECK_IF_HELD },
    { STEAD_CHECK_LINE_COOK, 144.9, "F", 600, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_HOLD_HOT, 135, "F", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_HOLD_HOT, 134.9, "F", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_HOLD_HOT, 57.3, "C", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_HOLD_HOT, 57.2, "C", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_HOLD_COLD, 41, "F", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_HOLD_COLD, 41.1, "F", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_HOLD_COLD, 5, "C", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_HOLD_COLD, 5.1, "C", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_EGGS_COLD, 45, "F", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_EGGS_COLD, 45.1, "F", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_REHEAT, 165, "F", 15, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_REHEAT, 164.9, "F", 60, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_REHEAT_TIME, 2, "h", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_REHEAT_TIME, 2.01, "h", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, 33.8, "F", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, 33.9, "F", NAN, STEAD_CHECK_NOT_MET },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, -1, "C", NAN, STEAD_CHECK_MET },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, -1.1, "C", NAN, STEAD_CHECK_NOT_MET },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckReading reading = reading_of (cases[i].value, cases[i].unit);
      SteadCheckJudgement out;

      reading.shown.time_s = cases[i].hold;
      out = judge (made, cases[i].kind, &reading);
      g_test_message ("case %u", (guint) i);
      g_assert_cmpint (out.odd, ==, STEAD_CHECK_ODD_NO);
      g_assert_cmpint (out.outcome, ==, cases[i].outcome);
      g_assert_true ((out.outcome == STEAD_CHECK_NOT_MET) == (out.correction != NULL));
    }
}

/* The row of the shortest hold that is hot enough: at 156 °F 17 s, not 60. */
static void
test_shortest_hold (Made          *made,
                    gconstpointer  data)
{
  SteadCheckReading reading = reading_of (156, "F");
  SteadCheckJudgement out = judge (made, STEAD_CHECK_LINE_COOK, &reading);

  g_assert_cmpfloat (out.hold_s, ==, 17);
  g_assert_cmpstr (out.row->id, ==, "cook-egg-held-155");
  reading.shown.value = 152;
  out = judge (made, STEAD_CHECK_LINE_COOK, &reading);
  g_assert_cmpfloat (out.hold_s, ==, 60);
}

static void
test_error (Made          *made,
            gconstpointer  data)
{
  SteadCheckReading reading = reading_of (136, "F");
  SteadCheckJudgement out;

  reading.shown.error = 2;
  reading.shown.step = 1;
  out = judge (made, STEAD_CHECK_LINE_HOLD_HOT, &reading);
  g_assert_cmpint (out.outcome, ==, STEAD_CHECK_WITHIN_ERROR);
  g_assert_cmpfloat (out.doubt, ==, 2.5);
  reading.shown.value = 137.5;
  g_assert_cmpint (judge (made, STEAD_CHECK_LINE_HOLD_HOT, &reading).outcome, ==, STEAD_CHECK_MET);
}

/* A recipe that asks for 150 °F: 135 °F meets the table, not the recipe. */
static void
test_own (Made          *made,
          gconstpointer  data)
{
  SteadCheckReading reading = reading_of (149.9, "F");
  SteadCheckJudgement out = judge (made, STEAD_CHECK_LINE_HOLD_HOT, &reading);

  g_assert_cmpint (out.outcome, ==, STEAD_CHECK_NOT_MET);
  g_assert_true (out.own);
  reading.shown.value = 150;
  g_assert_cmpint (judge (made, STEAD_CHECK_LINE_HOLD_HOT, &reading).outcome, ==, STEAD_CHECK_MET);
}

static void
test_odd (Made          *made,
          gconstpointer  data)
{
  static const struct { SteadCheckLineKind kind; double value; const char *unit; SteadCheckOdd odd; } cases[] = {
    { STEAD_CHECK_LINE_COOK, 212, "C", STEAD_CHECK_ODD_SCALE },
    { STEAD_CHECK_LINE_COOK, 74, "F", STEAD_CHECK_ODD_SCALE },
    { STEAD_CHECK_LINE_COOK, 120, "F", STEAD_CHECK_ODD_NO },
    { STEAD_CHECK_LINE_COOK, 900, "F", STEAD_CHECK_ODD_IMPOSSIBLE },
    { STEAD_CHECK_LINE_HOLD_COLD, 38, "C", STEAD_CHECK_ODD_SCALE },
    { STEAD_CHECK_LINE_HOLD_COLD, 12, "C", STEAD_CHECK_ODD_NO },
    { STEAD_CHECK_LINE_HOLD_COLD, 3, "F", STEAD_CHECK_ODD_NO },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, 0, "F", STEAD_CHECK_ODD_SCALE },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, 32, "C", STEAD_CHECK_ODD_SCALE },
    { STEAD_CHECK_LINE_THERMOMETER_BOIL, 99, "F", STEAD_CHECK_ODD_SCALE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckReading reading = reading_of (cases[i].value, cases[i].unit);

      g_test_message ("case %u", (guint) i);
      g_assert_cmpint (judge (made, cases[i].kind, &reading).odd, ==, cases[i].odd);
      /* Confirmed, it is judged as typed. */
      reading.confirmed = TRUE;
      g_assert_cmpint (judge (made, cases[i].kind, &reading).odd, ==, STEAD_CHECK_ODD_NO);
    }
  {
    SteadCheckReading reading = reading_of (160, "F");

    reading.at = reading.now + 1;
    g_assert_cmpint (judge (made, STEAD_CHECK_LINE_COOK, &reading).odd, ==, STEAD_CHECK_ODD_FUTURE);
    reading.at = 1000;
    reading.began = 1001;
    g_assert_cmpint (judge (made, STEAD_CHECK_LINE_COOK, &reading).odd, ==, STEAD_CHECK_ODD_BEFORE);
  }
}

/* 70 °F within 2 h, 41 °F within 6 h of 135 °F. */
static void
test_cooling (Made          *made,
              gconstpointer  data)
{
  static const struct { double hours, temp; SteadCheckOutcome outcome; const char *action; gboolean reheated; } cases[] = {
    { 1, 90, STEAD_CHECK_OPEN, NULL, FALSE },
    { 2, 70, STEAD_CHECK_OPEN, NULL, FALSE },
    { 2, 71, STEAD_CHECK_OPEN, NULL, FALSE },
    { 2.01, 70.1, STEAD_CHECK_NOT_MET, "discard", FALSE },
    { 3, 55, STEAD_CHECK_OPEN, NULL, FALSE },
    { 6, 41, STEAD_CHECK_MET, NULL, FALSE },
    { 6, 42, STEAD_CHECK_OPEN, NULL, FALSE },
    { 6.01, 41.1, STEAD_CHECK_NOT_MET, "discard", FALSE },
    { 2, 41, STEAD_CHECK_MET, NULL, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckReading reading = reading_of (cases[i].temp, "F");
      SteadCheckJudgement out;

      reading.elapsed_h = cases[i].hours;
      out = judge (made, STEAD_CHECK_LINE_COOL, &reading);
      g_test_message ("case %u", (guint) i);
      g_assert_cmpint (out.outcome, ==, cases[i].outcome);
      if (cases[i].action != NULL)
        g_assert_cmpstr (out.correction->word, ==, cases[i].action);
    }
}

/* Section 20 of the reference: what to do when; what is not known is thrown away. */
static void
test_corrections (Made          *made,
                  gconstpointer  data)
{
  static const struct { SteadCheckLineKind kind; double value, since, elapsed; const char *word; } cases[] = {
    { STEAD_CHECK_LINE_COOK, 150.5, NAN, NAN, "keep_cooking" },
    { STEAD_CHECK_LINE_HOLD_HOT, 130, 2, NAN, "reheat" },
    { STEAD_CHECK_LINE_HOLD_HOT, 130, 2.1, NAN, "discard" },
    { STEAD_CHECK_LINE_HOLD_HOT, 130, 4.1, NAN, "discard" },
    { STEAD_CHECK_LINE_HOLD_HOT, 130, NAN, NAN, "discard" },
    { STEAD_CHECK_LINE_HOLD_COLD, 44, 1, NAN, "chill" },
    { STEAD_CHECK_LINE_HOLD_COLD, 44, NAN, NAN, "discard" },
    { STEAD_CHECK_LINE_REHEAT, 150, NAN, 1, "keep_cooking" },
    { STEAD_CHECK_LINE_REHEAT, 150, NAN, 2.1, "discard" },
    { STEAD_CHECK_LINE_REHEAT, 150, NAN, NAN, "discard" },
    { STEAD_CHECK_LINE_EGGS_COLD, 50, NAN, NAN, "hold_lot" },
    { STEAD_CHECK_LINE_THERMOMETER_ICE, 36, NAN, NAN, "recalibrate" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SteadCheckReading reading = reading_of (cases[i].value, "F");
      SteadCheckJudgement out;

      reading.shown.time_s = 1;
      reading.since_good_h = cases[i].since;
      reading.elapsed_h = cases[i].elapsed;
      out = judge (made, cases[i].kind, &reading);
      g_test_message ("case %u", (guint) i);
      g_assert_nonnull (out.correction);
      g_assert_cmpstr (out.correction->word, ==, cases[i].word);
      g_assert_cmpint (out.holds_lot, ==, cases[i].kind != STEAD_CHECK_LINE_THERMOMETER_ICE);
    }
}

/* Every line that can fail has something to do. */
static void
test_every_line_has_a_correction (Made          *made,
                                  gconstpointer  data)
{
  for (guint i = 0; i < made->plan->lines->len; i++)
    {
      const SteadCheckLine *line = made->plan->lines->pdata[i];
      const SteadLimit *row = stead_check_correction (made->table, line, NULL);

      g_assert_nonnull (row);
      g_assert_nonnull (row->word);
    }
}

static void
test_sanitizer (Made          *made,
                gconstpointer  data)
{
  SteadSolution solution = { "chlorine", 50, 8, 75, NAN };
  SteadCheckReading reading = reading_of (0, NULL);

  reading.solution = &solution;
  g_assert_cmpint (judge (made, STEAD_CHECK_LINE_SANITIZER, &reading).outcome, ==, STEAD_CHECK_MET);
  solution.temp_f = 74.9;
  g_assert_cmpint (judge (made, STEAD_CHECK_LINE_SANITIZER, &reading).faults, ==, STEAD_SOLUTION_COLD);
}

static void
test_wrong_unit (Made          *made,
                 gconstpointer  data)
{
  SteadCheckReading reading = reading_of (7, "pH");
  g_autoptr(GError) error = NULL;
  SteadCheckJudgement out;

  g_assert_false (stead_check_judge (made->table, line_of (made, STEAD_CHECK_LINE_COOK), &reading, &out, &error));
  g_assert_nonnull (error);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, data, func) g_test_add ("/core/check-judge/" name, Made, data, set_up, func, tear_down)
  ADD ("at-the-limit", "plain", test_at_the_limit);
  ADD ("shortest-hold", "plain", test_shortest_hold);
  ADD ("error", "plain", test_error);
  ADD ("own", NULL, test_own);
  ADD ("odd", "plain", test_odd);
  ADD ("cooling", "plain", test_cooling);
  ADD ("corrections", "plain", test_corrections);
  ADD ("every-line-has-a-correction", "plain", test_every_line_has_a_correction);
  ADD ("sanitizer", "plain", test_sanitizer);
  ADD ("wrong-unit", "plain", test_wrong_unit);
  return g_test_run ();
}

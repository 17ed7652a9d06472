/* The table of limits: every row at its limit and beside it, the doubt of the
 * thermometer, local rules, and texts that are no table. */
#include "limit-tables.h"

#include "core/stead-core-error.h"

#include <math.h>
#include <string.h>

static SteadLimitReading
reading_of (double      value,
            const char *unit,
            double      time_s)
{
  return (SteadLimitReading) { value, unit, 0, 0, time_s };
}

static SteadLimitVerdict
judge (const SteadLimit *limit,
       double            value,
       const char       *unit,
       double            time_s)
{
  const SteadLimitReading reading = reading_of (value, unit, time_s);
  g_autoptr(GError) error = NULL;
  SteadJudgement judgement;

  g_assert_true (stead_limit_judge (limit, &reading, &judgement, &error));
  g_assert_no_error (error);
  return judgement.verdict;
}

static gboolean
compares (const SteadLimit *limit)
{
  return limit->direction != STEAD_LIMIT_IS;
}

/* A time that the row is content with. */
static double
good_time (const SteadLimit *limit)
{
  return limit->has_time ? limit->time_s : NAN;
}

/* What a row says of values a step below, at, and a step above its limit. */
static void
expect_side (const SteadLimit *limit,
             int               side,
             SteadLimitVerdict verdict)
{
  gboolean met;

  switch (limit->direction)
    {
    case STEAD_LIMIT_AT_LEAST: met = side >= 0; break;
    case STEAD_LIMIT_AT_MOST: met = side <= 0; break;
    case STEAD_LIMIT_ABOVE: met = side > 0; break;
    case STEAD_LIMIT_BELOW: met = side < 0; break;
    default: g_assert_not_reached ();
    }
  g_assert_cmpint (verdict, ==, met ? STEAD_LIMIT_MET : STEAD_LIMIT_NOT_MET);
}

/* Every row that compares, in its own unit: at the limit, a thousandth under and
 * over, and a tenth of a degree for temperatures. */
static void
test_every_row (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  guint judged = 0;

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *limit = stead_limit_table_get_row (table, i);
      double step = g_str_equal (limit->unit, "F") ? 0.1 : 0.001;

      if (!compares (limit))
        continue;
      g_test_message ("%s", limit->id);
      for (int side = -1; side <= 1; side++)
        expect_side (limit, side, judge (limit, limit->value + side * step, limit->unit, good_time (limit)));
      judged++;
    }
  g_assert_cmpuint (judged, >, 200);
}

/* Every temperature row, in tenths of °C round the limit.  The other side of the
 * comparison is whole numbers: 50 x °F is 9 x (tenths of °C) + 1600. */
static void
test_every_row_in_celsius (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  guint at_limit = 0;

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *limit = stead_limit_table_get_row (table, i);
      int middle;

      if (!compares (limit) || !g_str_equal (limit->unit, "F"))
        continue;
      g_test_message ("%s", limit->id);
      middle = (int) lround ((limit->value - 32) / 1.8 * 10);
      for (int tenths = middle - 2; tenths <= middle + 2; tenths++)
        {
          long left = 9L * tenths + 1600;
          long right = lround (limit->value * 10) * 5;
          g_autofree char *typed = g_strdup_printf ("%s%d.%d", tenths < 0 ? "-" : "", abs (tenths) / 10,
                                                    abs (tenths) % 10);

          expect_side (limit, (left > right) - (left < right),
                       judge (limit, g_ascii_strtod (typed, NULL), "C", good_time (limit)));
          at_limit += left == right;
        }
    }
  /* 41 °F is 5 °C: some rows can be met exactly. */
  g_assert_cmpuint (at_limit, >, 10);
}

/* Every hold and every deadline: at it, and a second short or long. */
static void
test_every_time (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  guint judged = 0;

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *limit = stead_limit_table_get_row (table, i);
      int wrong_way = limit->time_direction == STEAD_LIMIT_AT_LEAST ? -1 : 1;

      if (!compares (limit) || !limit->has_time)
        continue;
      g_test_message ("%s", limit->id);
      g_assert_cmpint (judge (limit, limit->value, limit->unit, limit->time_s), ==, STEAD_LIMIT_MET);
      g_assert_cmpint (judge (limit, limit->value, limit->unit, limit->time_s - wrong_way), ==, STEAD_LIMIT_MET);
      if (limit->time_s == 0)
        {
          g_assert_cmpint (judge (limit, limit->value, limit->unit, NAN), ==, STEAD_LIMIT_MET);
          continue;
        }
      g_assert_cmpint (judge (limit, limit->value, limit->unit, limit->time_s + wrong_way), ==, STEAD_LIMIT_NOT_MET);
      g_assert_cmpint (judge (limit, limit->value, limit->unit, NAN), ==, STEAD_LIMIT_NOT_MET);
      judged++;
    }
  g_assert_cmpuint (judged, >, 60);
}

/* No row lacks a citation; what has none says so in the agreed words. */
static void
test_citations (void)
{
  static const char * const statuses[] = { "read", "derived", "memory", "practice", NULL };
  static const char * const hazards[] = {
    "salmonella", "pathogen_survival", "pathogen_growth", "listeria_growth", "spore_growth", "toxin", "botulism",
    "parasites", "contamination", "allergens", "ill_worker", "susceptible_eater", "false_reading", "spoilage",
    "misleading_label", NULL,
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  g_assert_cmpuint (stead_limit_table_get_n_rows (table), >, 400);
  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *limit = stead_limit_table_get_row (table, i);
      gboolean no_source = g_str_equal (limit->source, "common practice, no source");

      g_test_message ("%s", limit->id);
      g_assert_cmpuint (strlen (limit->source), >, 5);
      g_assert_cmpstr (limit->where, !=, "");
      g_assert_true (g_strv_contains (statuses, limit->status));
      g_assert_true (g_strv_contains (hazards, limit->hazard));
      g_assert_cmpint (no_source, ==, g_str_equal (limit->status, "practice"));
      g_assert_true (g_str_equal (limit->version, "undated")
                     || (strlen (limit->version) == 4 && g_ascii_isdigit (*limit->version)));
      g_assert_null (limit->replaces);
      /* The Food Code is cited by section. */
      if (g_str_equal (limit->source, "FDA Food Code"))
        g_assert_true (g_str_has_prefix (limit->where, "§"));
    }
}

/* A hotter step never asks for a longer hold. */
static void
test_steps_fall (void)
{
  static const char * const keys[][2] = {
    { "cook", "whole_roast" }, { "cook", "fish_comminuted" }, { "cook", "meat_ground" },
    { "lethality_table", "fsis_meat_6_5_log" }, { "lethality_table", "fsis_meat_7_log" },
    { "lethality_table", "fsis_chicken_7_log_12pct_fat" }, { "lethality_table", "fsis_turkey_7_log_12pct_fat" },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  for (gsize k = 0; k < G_N_ELEMENTS (keys); k++)
    {
      g_autoptr(GPtrArray) rows = stead_limit_table_list (table, keys[k][0], keys[k][1], "food_temp", NULL);

      g_assert_cmpuint (rows->len, >=, 4);
      for (guint i = 1; i < rows->len; i++)
        {
          const SteadLimit *cooler = rows->pdata[i - 1];
          const SteadLimit *hotter = rows->pdata[i];

          g_test_message ("%s", hotter->id);
          g_assert_cmpfloat (hotter->value, >, cooler->value);
          g_assert_cmpfloat (hotter->time_s, <=, cooler->time_s);
        }
    }
}

/* The roast chart and the meat table are 112 min x 10^((130 - T)/10) within one
 * printed unit: whole minutes from 4 min on, whole seconds below; 158 °F is
 * printed as instantaneous.  (FSIS Cooking Guideline, Table 2, as the reference
 * reads it.)  This holds the cells that were not read to something. */
static void
test_formula (void)
{
  static const char * const keys[][2] = { { "cook", "whole_roast" }, { "lethality_table", "fsis_meat_6_5_log" } };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  for (gsize k = 0; k < G_N_ELEMENTS (keys); k++)
    {
      g_autoptr(GPtrArray) rows = stead_limit_table_list (table, keys[k][0], keys[k][1], "food_temp", NULL);

      for (guint i = 0; i < rows->len; i++)
        {
          const SteadLimit *row = rows->pdata[i];
          double formula_s = 112 * 60 * pow (10, (130 - row->value) / 10);

          g_test_message ("%s", row->id);
          if (row->value < 158)
            g_assert_cmpfloat_with_epsilon (row->time_s, formula_s, row->time_s >= 240 ? 60 : 1);
          else
            g_assert_cmpfloat (row->time_s, ==, 0);
        }
    }
}

/* Seven tenths take 7/6.5 of the time of six and a half, within two printed units. */
static void
test_seven_log (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GPtrArray) seven = stead_limit_table_list (table, "lethality_table", "fsis_meat_7_log", NULL, NULL);

  for (guint i = 0; i < seven->len; i++)
    {
      const SteadLimit *row = seven->pdata[i];
      const SteadLimit *less = stead_limit_table_step (table, "lethality_table", "fsis_meat_6_5_log", "food_temp",
                                                       NULL, row->value, NULL);

      g_test_message ("%s", row->id);
      g_assert_cmpfloat (less->value, ==, row->value);
      g_assert_cmpfloat (row->time_s, >=, less->time_s);
      g_assert_cmpfloat_with_epsilon (row->time_s, less->time_s * 7 / 6.5, row->time_s >= 240 ? 120 : 2);
    }
}

/* FDA Food Code 2022, §3-501.16: 135 °F is met by 135.0 and not by 134.9; the code
 * prints 57 °C, which is 134.6 °F. */
static void
test_doubt (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  const SteadLimit *hot = stead_limit_table_by_id (table, "hold-hot-135");
  const SteadLimit *cold = stead_limit_table_by_id (table, "hold-cold-41");
  static const struct { double value; const char *unit; double error, step; SteadLimitVerdict verdict; } cases[] = {
    { 135.0, "F", 0, 0, STEAD_LIMIT_MET },
    { 135.0, "F", 2, 0, STEAD_LIMIT_WITHIN_ERROR },
    { 136.9, "F", 2, 0, STEAD_LIMIT_WITHIN_ERROR },
    { 137.0, "F", 2, 0, STEAD_LIMIT_MET },
    { 137.0, "F", 2, 0.2, STEAD_LIMIT_WITHIN_ERROR },
    { 137.1, "F", 2, 0.2, STEAD_LIMIT_MET },
    { 135.0, "F", 0, 1, STEAD_LIMIT_WITHIN_ERROR },
    /* The error never helps. */
    { 134.9, "F", 2, 0, STEAD_LIMIT_NOT_MET },
    { 57, "C", 0, 0, STEAD_LIMIT_NOT_MET },
    { 57.2, "C", 0, 0, STEAD_LIMIT_NOT_MET },
    { 57.3, "C", 0, 0, STEAD_LIMIT_MET },
    /* 58.3 °C is 136.94 °F, 1 °C of error is 1.8 °F. */
    { 58.3, "C", 1, 0, STEAD_LIMIT_MET },
    { 58.2, "C", 1, 0, STEAD_LIMIT_WITHIN_ERROR },
    { NAN, "F", 0, 0, STEAD_LIMIT_NOT_MET },
  };
  SteadJudgement judgement;
  g_autoptr(GError) error = NULL;
  SteadLimitReading reading;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      reading = (SteadLimitReading) { cases[i].value, cases[i].unit, cases[i].error, cases[i].step, NAN };
      g_test_message ("%g %s", cases[i].value, cases[i].unit);
      g_assert_true (stead_limit_judge (hot, &reading, &judgement, NULL));
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
    }
  reading = (SteadLimitReading) { 4.5, "C", 1, 0.1, NAN };
  g_assert_true (stead_limit_judge (cold, &reading, &judgement, NULL));
  g_assert_cmpfloat_with_epsilon (judgement.value, 40.1, 1e-9);
  g_assert_cmpfloat_with_epsilon (judgement.margin, 0.9, 1e-9);
  g_assert_cmpfloat_with_epsilon (judgement.doubt, 1.89, 1e-9);
  g_assert_cmpint (judgement.verdict, ==, STEAD_LIMIT_WITHIN_ERROR);

  reading.unit = "pH";
  judgement.value = -1;
  g_assert_false (stead_limit_judge (cold, &reading, &judgement, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_UNIT);
  g_assert_cmpfloat (judgement.value, ==, -1);
}

/* °F that are whole °C come out exactly; what lies beside them does not. */
static void
test_celsius (void)
{
  for (int c = -50; c <= 200; c += 5)
    g_assert_cmpfloat (stead_fahrenheit_from_celsius (c), ==, 9 * c / 5 + 32);
  /* A reading in °F that was kept in °C is at its limit again. */
  for (int f = -40; f <= 400; f++)
    g_assert_cmpint (stead_limit_compare (stead_fahrenheit_from_celsius ((f - 32) / 1.8), f), ==, 0);
  g_assert_cmpfloat (stead_fahrenheit_from_celsius (4.999999999), <, 41);
  g_assert_cmpfloat (stead_fahrenheit_from_celsius (5.000000001), >, 41);
  g_assert_cmpint (stead_limit_compare (0.1 + 0.2, 0.3), ==, 0);
  g_assert_cmpint (stead_limit_compare (134.999, 135), <, 0);
  g_assert_cmpint (stead_limit_compare (4.6000001, 4.6), >, 0);
}

/* Sliding pairs: any of them is enough, the step that was reached is named. */
static void
test_pairs (void)
{
  static const struct { double temp, hold; const char *decides; SteadLimitVerdict verdict; } cases[] = {
    { 155, 17, "cook-egg-held-155", STEAD_LIMIT_MET },
    { 155, 16, "cook-egg-held-155", STEAD_LIMIT_NOT_MET },
    { 155, 60, "cook-egg-held-150", STEAD_LIMIT_MET },
    { 152, 60, "cook-egg-held-150", STEAD_LIMIT_MET },
    { 152, 40, "cook-egg-held-150", STEAD_LIMIT_NOT_MET },
    { 144.9, 600, "cook-egg-held-145", STEAD_LIMIT_NOT_MET },
    { 158, 0, "cook-egg-held-158", STEAD_LIMIT_MET },
    { 145, 180, "cook-egg-held-145", STEAD_LIMIT_MET },
  };
  const SteadLimitFact facts[] = { { "use", "pooled_or_held", 0 }, { NULL } };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  const SteadLimit *decides = NULL;
  SteadJudgement judgement;
  SteadLimitReading reading;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      reading = reading_of (cases[i].temp, "F", cases[i].hold);
      g_assert_true (stead_limit_table_judge (table, "cook", "raw_egg", "food_temp", facts, &reading,
                                              &judgement, &decides, NULL));
      g_test_message ("%g for %g s by %s", cases[i].temp, cases[i].hold, decides->id);
      g_assert_cmpstr (decides->id, ==, cases[i].decides);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
    }
  /* The long hold at a low step is beyond the error, the short one at a high step is not. */
  reading = (SteadLimitReading) { 156, "F", 2, 0, 200 };
  g_assert_true (stead_limit_table_judge (table, "cook", "raw_egg", "food_temp", facts, &reading,
                                          &judgement, &decides, NULL));
  g_assert_cmpint (judgement.verdict, ==, STEAD_LIMIT_MET);
  reading.time_s = 20;
  g_assert_true (stead_limit_table_judge (table, "cook", "raw_egg", "food_temp", facts, &reading,
                                          &judgement, &decides, NULL));
  g_assert_cmpint (judgement.verdict, ==, STEAD_LIMIT_WITHIN_ERROR);
  g_assert_cmpstr (decides->id, ==, "cook-egg-held-155");
}

/* Wisconsin ATCP 75 (read): 15 s in the text of 2013, at 165 °F for poultry too. */
static void
test_editions (void)
{
  const SteadLimitFact facts[] = { { "use", "pooled_or_held", 0 }, { NULL } };
  const SteadLimitFact old[] = { { "use", "pooled_or_held", 0 }, { "edition", NULL, 2013 }, { NULL } };
  g_autoptr(SteadLimitTable) table = limit_tables ();

  g_assert_cmpfloat (stead_limit_table_step (table, "cook", "raw_egg", "food_temp", facts, 155, NULL)->time_s, ==, 17);
  g_assert_cmpfloat (stead_limit_table_step (table, "cook", "raw_egg", "food_temp", old, 155, NULL)->time_s, ==, 15);
  g_assert_cmpfloat (stead_limit_table_find (table, "cook", "poultry", NULL, NULL, NULL)->time_s, ==, 0);
  stead_limit_table_set_edition (table, 2013);
  g_assert_cmpfloat (stead_limit_table_step (table, "cook", "raw_egg", "food_temp", facts, 155, NULL)->time_s, ==, 15);
  g_assert_cmpfloat (stead_limit_table_find (table, "cook", "poultry", NULL, NULL, NULL)->time_s, ==, 15);
  g_assert_cmpfloat (stead_limit_table_find (table, "hands", "sink", "water_temp", NULL, NULL)->value, ==, 100);
  stead_limit_table_set_edition (table, 2017);
  g_assert_cmpfloat (stead_limit_table_step (table, "cook", "raw_egg", "food_temp", facts, 155, NULL)->time_s, ==, 17);
}

/* What is missing is named; what is not there is refused. */
static void
test_lookup (void)
{
  const SteadLimitFact jar[] = { { "jar", "pint", 0 }, { NULL } };
  const SteadLimitFact high[] = { { "jar", "pint", 0 }, { "altitude_ft", NULL, 3001 }, { NULL } };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;

  g_assert_cmpfloat (stead_limit_table_find (table, "can_boiling_water", "standard_tomato_sauce", NULL, high,
                                             NULL)->value, ==, 45);
  g_assert_null (stead_limit_table_find (table, "can_boiling_water", "standard_tomato_sauce", NULL, jar, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_nonnull (strstr (error->message, "altitude ft"));
  g_clear_error (&error);
  g_assert_null (stead_limit_table_find (table, "can_boiling_water", "spaghetti_sauce_without_meat", NULL, high,
                                         &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_nonnull (strstr (error->message, "spaghetti"));
  g_clear_error (&error);
  g_assert_null (stead_limit_table_step (table, "cook", "whole_roast", "food_temp", NULL, 129.9, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpfloat (stead_limit_table_lowest (table, "cook", "whole_roast", "food_temp", NULL, NULL)->value, ==, 130);
  g_assert_null (stead_limit_table_by_id (table, "cook-dragon"));
  g_assert_cmpfloat (stead_limit_value_in (stead_limit_table_by_id (table, "time-4h"), "min"), ==, 240);
  g_assert_cmpfloat_with_epsilon (stead_limit_value_in (stead_limit_table_by_id (table, "hold-cold-41"), "C"), 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_limit_value_in (stead_limit_table_by_id (table, "thermometer-food-c"), "Fdiff"),
                                  1.8, 1e-12);
  g_assert_true (isnan (stead_limit_value_in (stead_limit_table_by_id (table, "hold-cold-41"), "s")));
}

/* Local rules */

static gboolean
add_local (SteadLimitTable  *table,
           const char       *id,
           double            value,
           double            time_s,
           GError          **error)
{
  const SteadLimitLocal local = { id, value, time_s, "County code", "§ 12.4", "2025" };

  return stead_limit_table_add_local (table, &local, error);
}

static void
test_local (void)
{
  static const struct { const char *id; double value, time_s; gboolean taken; } cases[] = {
    { "hold-hot-135", 140, NAN, TRUE },      /* texts before 2005 had 140 °F */
    { "hold-hot-135", 138, NAN, TRUE },      /* corrected: still stricter than the shipped one */
    { "hold-hot-135", 134.9, NAN, FALSE },
    { "hold-cold-41", 40, NAN, TRUE },
    { "hold-cold-41", 41, NAN, TRUE },       /* the same, by a local source */
    { "hold-cold-41", 45, NAN, FALSE },
    { "cook-poultry-165", 165, 15, TRUE },
    { "cook-fish-145", NAN, 14, FALSE },
    { "cook-fish-145", 150, 14, FALSE },
    { "cool-total", NAN, 5 * 3600, TRUE },
    { "cool-total", NAN, 7 * 3600, FALSE },
    { "tcs-a-acid", NAN, NAN, FALSE },       /* a word */
    { "yield-bushel", 60, NAN, FALSE },      /* no limit */
    { "hold-cold-41", NAN, 60, FALSE },      /* it has no time */
    { "hold-cold-41", -HUGE_VAL, NAN, FALSE },
    { "cook-dragon", 500, NAN, FALSE },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  guint rows = stead_limit_table_get_n_rows (table);
  const SteadLimit *hot;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;

      g_test_message ("%s %g", cases[i].id, cases[i].value);
      g_assert_cmpint (add_local (table, cases[i].id, cases[i].value, cases[i].time_s, &error), ==, cases[i].taken);
      g_assert_cmpint (error == NULL, ==, cases[i].taken);
    }
  g_assert_cmpuint (stead_limit_table_get_n_rows (table), ==, rows);
  hot = stead_limit_table_find (table, "hold_hot", "tcs", "food_temp", NULL, NULL);
  g_assert_cmpfloat (hot->value, ==, 138);
  g_assert_cmpstr (hot->source, ==, "County code");
  g_assert_cmpstr (hot->where, ==, "§ 12.4");
  g_assert_cmpstr (hot->status, ==, "local");
  g_assert_cmpstr (hot->replaces, ==, "FDA Food Code §3-501.16(A)(1)");
  g_assert_cmpint (judge (hot, 137.9, "F", NAN), ==, STEAD_LIMIT_NOT_MET);
}

/* A local rule in one table leaves the one that it was made over as it is. */
static void
test_over (void)
{
  g_autoptr(SteadLimitTable) base = limit_tables ();
  g_autoptr(SteadLimitTable) over = stead_limit_table_new_over (base);
  g_autoptr(GError) error = NULL;

  g_assert_cmpuint (stead_limit_table_get_n_rows (over), ==, stead_limit_table_get_n_rows (base));
  g_assert_true (add_local (over, "hold-cold-41", 40, NAN, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (stead_limit_table_by_id (over, "hold-cold-41")->value, ==, 40);
  g_assert_cmpfloat (stead_limit_table_by_id (base, "hold-cold-41")->value, ==, 41);
  g_assert_cmpfloat (stead_limit_table_find (base, "hold_cold", "tcs", "food_temp", NULL, NULL)->value, ==, 41);
}

/* The message says what is looser than what, and by which source. */
static void
test_local_reason (void)
{
  const SteadLimitLocal nameless = { "hold-hot-135", 140, NAN, "", "§ 1", NULL };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;

  g_assert_false (add_local (table, "hold-hot-135", 130, NAN, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "130 °F"));
  g_assert_nonnull (strstr (error->message, "135 °F of FDA Food Code §3-501.16(A)(1)"));
  g_clear_error (&error);
  g_assert_false (stead_limit_table_add_local (table, &nameless, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpfloat (stead_limit_table_by_id (table, "hold-hot-135")->value, ==, 135);
}

/* Texts */

#define HEADER "id,process,subject,when,measure,direction,limit,unit,time_direction,time,time_unit," \
               "hazard,source,where,version,status,note\n"
#define GOOD "a,cook,egg,,food_temp,at_least,145,F,at_least,15,s,salmonella,Code,§1,2022,read,\n"

static void
test_texts (void)
{
  static const struct { const char *text, *says; } cases[] = {
    { "", "id" },
    { "id,process\n", "subject" },
    { HEADER "a,cook,egg\n", "when" },
    { HEADER ",cook,egg,,food_temp,at_least,145,F,,,,salmonella,Code,§1,2022,read,\n", "id" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,,,,salmonella,,§1,2022,read,\n", "source" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,,,,salmonella,Code,,2022,read,\n", "where" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,,,,salmonella,Code,§1,,read,\n", "version" },
    { HEADER "a,cook,egg,,food_temp,over,145,F,,,,salmonella,Code,§1,2022,read,\n", "direction" },
    { HEADER "a,cook,egg,,food_temp,at_least,hot,F,,,,salmonella,Code,§1,2022,read,\n", "limit" },
    { HEADER "a,cook,egg,,food_temp,at_least,1e3,F,,,,salmonella,Code,§1,2022,read,\n", "limit" },
    { HEADER "a,cook,egg,,food_temp,at_least,hot,word,,,,salmonella,Code,§1,2022,read,\n", "limit" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,at_least,15,,salmonella,Code,§1,2022,read,\n", "time" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,above,15,s,salmonella,Code,§1,2022,read,\n", "time" },
    { HEADER "a,cook,egg,,food_temp,at_least,145,F,at_least,,s,salmonella,Code,§1,2022,read,\n", "time" },
    { HEADER "a,cook,egg,jar,food_temp,at_least,145,F,,,,salmonella,Code,§1,2022,read,\n", "when" },
    { HEADER "a,cook,egg,ph<low,food_temp,at_least,145,F,,,,salmonella,Code,§1,2022,read,\n", "when" },
    { HEADER GOOD GOOD, "twice" },
    { HEADER GOOD "\"open,cook\n", "after row 2" },
  };
  g_autoptr(SteadLimitTable) table = stead_limit_table_new ();
  g_autoptr(GBytes) good = g_bytes_new_static (HEADER GOOD, strlen (HEADER GOOD));
  g_autoptr(GError) error = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GBytes) csv = g_bytes_new_static (cases[i].text, strlen (cases[i].text));
      g_autoptr(GError) why = NULL;

      g_assert_false (stead_limit_table_add_csv (table, "sheet", csv, &why));
      g_test_message ("%s", why->message);
      g_assert_error (why, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE);
      g_assert_nonnull (strstr (why->message, "sheet"));
      g_assert_nonnull (strstr (why->message, cases[i].says));
      g_assert_cmpuint (stead_limit_table_get_n_rows (table), ==, 0);
    }
  g_assert_true (stead_limit_table_add_csv (table, "sheet", good, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (stead_limit_table_get_n_rows (table), ==, 1);
  /* A second sheet may not use the id again. */
  g_assert_false (stead_limit_table_add_csv (table, "other", good, &error));
  g_assert_cmpuint (stead_limit_table_get_n_rows (table), ==, 1);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/limit/every-row", test_every_row);
  g_test_add_func ("/core/limit/every-row-in-celsius", test_every_row_in_celsius);
  g_test_add_func ("/core/limit/every-time", test_every_time);
  g_test_add_func ("/core/limit/citations", test_citations);
  g_test_add_func ("/core/limit/steps-fall", test_steps_fall);
  g_test_add_func ("/core/limit/formula", test_formula);
  g_test_add_func ("/core/limit/seven-log", test_seven_log);
  g_test_add_func ("/core/limit/doubt", test_doubt);
  g_test_add_func ("/core/limit/celsius", test_celsius);
  g_test_add_func ("/core/limit/pairs", test_pairs);
  g_test_add_func ("/core/limit/editions", test_editions);
  g_test_add_func ("/core/limit/lookup", test_lookup);
  g_test_add_func ("/core/limit/local", test_local);
  g_test_add_func ("/core/limit/over", test_over);
  g_test_add_func ("/core/limit/local-reason", test_local_reason);
  g_test_add_func ("/core/limit/texts", test_texts);
  return g_test_run ();
}

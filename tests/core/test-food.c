/* Food safety beside the limits: the clock, the kind of food, sanitizers, labels
 * and the list of checks.  Published figures stand in tests/reference/food-*.csv;
 * here is what such rows cannot ask. */
#include "limit-tables.h"

#include "core/stead-checklist.h"
#include "core/stead-core-error.h"
#include "core/stead-food-kind.h"
#include "core/stead-food-label.h"
#include "core/stead-food-time.h"
#include "core/stead-sanitizer.h"

#include <math.h>

/* FDA Food Code 2022, §3-403.11 (read). */
static void
test_reheat (void)
{
  static const struct { const char *food; gboolean microwave; double temp, hold, hours; SteadReheatVerdict verdict; } cases[] = {
    { "cooked_on_site", FALSE, 165, 15, 2, STEAD_REHEAT_PASS },
    { "cooked_on_site", FALSE, 165, 14, 1.9, STEAD_REHEAT_GO_ON },
    { "cooked_on_site", FALSE, 164.9, 60, 1, STEAD_REHEAT_GO_ON },
    { "cooked_on_site", FALSE, 165, 15, 2.01, STEAD_REHEAT_DISCARD },
    { "commercial_package", FALSE, 135, NAN, 2, STEAD_REHEAT_PASS },
    { "commercial_package", TRUE, 135, NAN, 1, STEAD_REHEAT_GO_ON },
    { "cooked_on_site", FALSE, 170, 20, NAN, STEAD_REHEAT_DISCARD },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  SteadReheatVerdict verdict = STEAD_REHEAT_PASS;
  SteadLimitReading reading = { 165, "F", 0, 0, 15 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      reading = (SteadLimitReading) { cases[i].temp, "F", 0, 0, cases[i].hold };
      g_assert_true (stead_reheat_judge (table, cases[i].food, cases[i].microwave, &reading, cases[i].hours,
                                         &verdict, NULL));
      g_assert_cmpint (verdict, ==, cases[i].verdict);
    }
  g_assert_false (stead_reheat_judge (table, "stone", FALSE, &reading, 1, &verdict, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
}

/* FDA Food Code 2022, §3-501.19 (read). */
static void
test_time_control (void)
{
  static const struct { SteadTimeControl food; SteadTimeVerdict verdict; } cases[] = {
    { { "tcs", 4, FALSE, TRUE, 41, NAN, 4 }, STEAD_TIME_CONTROL_PASS },
    { { "tcs", 4, FALSE, TRUE, 135, NAN, 4 }, STEAD_TIME_CONTROL_PASS },
    { { "tcs", 4, FALSE, TRUE, 41.1, NAN, 1 }, STEAD_TIME_CONTROL_NOT_ALLOWED },
    { { "tcs", 4, FALSE, TRUE, 134.9, NAN, 1 }, STEAD_TIME_CONTROL_NOT_ALLOWED },
    { { "tcs", 4, FALSE, TRUE, 40, 90, 4 }, STEAD_TIME_CONTROL_PASS },
    { { "tcs", 4, FALSE, TRUE, 40, NAN, 4.01 }, STEAD_TIME_CONTROL_DISCARD },
    { { "tcs", 4, FALSE, FALSE, 40, NAN, 1 }, STEAD_TIME_CONTROL_DISCARD },
    { { "tcs", 6, FALSE, TRUE, 135, NAN, 1 }, STEAD_TIME_CONTROL_NOT_ALLOWED },
    { { "tcs", 6, FALSE, TRUE, 41, 70, 6 }, STEAD_TIME_CONTROL_PASS },
    { { "tcs", 6, FALSE, TRUE, 41, 70.1, 1 }, STEAD_TIME_CONTROL_DISCARD },
    { { "cut_produce_or_opened_sealed", 4, FALSE, TRUE, 70, 70, 4 }, STEAD_TIME_CONTROL_PASS },
    { { "cut_produce_or_opened_sealed", 4, FALSE, TRUE, 70, 71, 1 }, STEAD_TIME_CONTROL_DISCARD },
    { { "raw_eggs", 4, FALSE, TRUE, 41, NAN, 1 }, STEAD_TIME_CONTROL_PASS },
    { { "raw_eggs", 4, TRUE, TRUE, 41, NAN, 1 }, STEAD_TIME_CONTROL_NOT_ALLOWED },
  };
  const SteadTimeControl odd = { "tcs", 5, FALSE, TRUE, 41, NAN, 1 };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  SteadTimeVerdict verdict = STEAD_TIME_CONTROL_PASS;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_true (stead_time_control_judge (table, &cases[i].food, &verdict, NULL));
      g_assert_cmpint (verdict, ==, cases[i].verdict);
    }
  g_assert_false (stead_time_control_judge (table, &odd, &verdict, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  /* Before 2022 cut produce had no allowance of its own. */
  stead_limit_table_set_edition (table, 2017);
  g_assert_true (stead_time_control_judge (table, &cases[10].food, &verdict, NULL));
  g_assert_cmpint (verdict, ==, STEAD_TIME_CONTROL_NOT_ALLOWED);
}

#define NO_DAY STEAD_DAY_NONE

/* FDA Food Code 2022, §3-501.17 (read): the day made is day 1, the last is day 7. */
static void
test_date_marks (void)
{
  const SteadDay first = stead_day_new (2024, 10, 1);
  const SteadDay mixture[] = { first + 3, first };
  const struct { SteadFoodDays days; SteadDay last; } cases[] = {
    { { &first, 1, NO_DAY, NO_DAY, NO_DAY, NO_DAY }, first + 6 },
    { { mixture, 2, NO_DAY, NO_DAY, NO_DAY, NO_DAY }, first + 6 },
    { { mixture, 1, first, NO_DAY, NO_DAY, NO_DAY }, first + 6 },
    { { NULL, 0, first, first + 4, NO_DAY, NO_DAY }, first + 4 },
    { { NULL, 0, first, first + 30, NO_DAY, NO_DAY }, first + 6 },
    /* Three days used, thawed a month later as day 4. */
    { { &first, 1, NO_DAY, NO_DAY, first + 2, first + 31 }, first + 34 },
    /* All seven used before it froze: none is left on the day of thawing. */
    { { &first, 1, NO_DAY, NO_DAY, first + 6, first + 31 }, first + 30 },
  };
  const SteadFoodDays wrong[] = {
    { NULL, 0, NO_DAY, first, NO_DAY, NO_DAY },
    { &first, 1, NO_DAY, NO_DAY, first + 2, NO_DAY },
    { &first, 1, NO_DAY, NO_DAY, NO_DAY, first + 2 },
    { &first, 1, NO_DAY, NO_DAY, first - 1, first + 2 },
    { &first, 1, NO_DAY, NO_DAY, first + 2, first + 2 },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadDay last = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_true (stead_date_mark (table, &cases[i].days, &last, NULL));
      g_assert_cmpint (last, ==, cases[i].last);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_false (stead_date_mark (table, &wrong[i], &last, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
    }
  g_assert_false (stead_date_mark_needed (table, 24));
  g_assert_true (stead_date_mark_needed (table, 24.1));
  g_assert_true (stead_date_mark_in_order (table, 24, 41, FALSE));
  g_assert_false (stead_date_mark_in_order (table, 25, 41, FALSE));
  g_assert_true (stead_date_mark_in_order (table, 168, 41, TRUE));
  g_assert_false (stead_date_mark_in_order (table, 169, 41, TRUE));
  g_assert_false (stead_date_mark_in_order (table, 48, 41.1, TRUE));
}

/* FDA Food Code 2022, §3-501.13, §3-402.11 (read). */
static void
test_thaw_and_freeze (void)
{
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  gboolean good = FALSE;
  double hours = -1;

  g_assert_true (stead_thaw_in_order (table, "running_water", "raw_animal", 70, FALSE, &good, NULL));
  g_assert_true (good);
  g_assert_true (stead_thaw_in_order (table, "running_water", "raw_animal", 70.1, FALSE, &good, NULL));
  g_assert_false (good);
  g_assert_true (stead_thaw_in_order (table, "running_water", "raw_animal", NAN, FALSE, &good, NULL));
  g_assert_false (good);
  g_assert_true (stead_thaw_in_order (table, "refrigeration", "vacuum_packed_fish", NAN, FALSE, &good, NULL));
  g_assert_false (good);
  g_assert_true (stead_thaw_in_order (table, "refrigeration", "vacuum_packed_fish", NAN, TRUE, &good, NULL));
  g_assert_true (good);
  g_assert_false (stead_thaw_in_order (table, "counter", "raw_animal", NAN, TRUE, &good, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  /* A chest freezer at 0 °F never qualifies. */
  g_assert_false (stead_fish_freezing_h (table, 0, 0, &hours, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpfloat (hours, ==, -1);
  g_assert_true (stead_fish_freezing_h (table, -31, -10, &hours, NULL));
  g_assert_cmpfloat (hours, ==, 24);
  g_assert_true (stead_fish_freezing_h (table, -20, -31, &hours, NULL));
  g_assert_cmpfloat (hours, ==, 168);
}

/* FDA Food Code 2022, §1-201.10(B), tables A and B (read): the corners of each
 * cell, and what is not measured. */
static void
test_kinds (void)
{
  static const struct { gboolean a; double aw, ph; SteadTcsClass class; } cases[] = {
    { TRUE, 0.92, 9, STEAD_TCS_NO }, { TRUE, 0.921, 5.6, STEAD_TCS_NO }, { TRUE, 0.921, 5.601, STEAD_TCS_ASSESS },
    { TRUE, 0.95, 5.6, STEAD_TCS_NO }, { TRUE, 0.951, 4.6, STEAD_TCS_NO }, { TRUE, 0.951, 4.601, STEAD_TCS_ASSESS },
    { FALSE, 0.879, 9, STEAD_TCS_NO }, { FALSE, 0.88, 5.0, STEAD_TCS_NO }, { FALSE, 0.88, 5.01, STEAD_TCS_ASSESS },
    { FALSE, 0.901, 4.6, STEAD_TCS_NO }, { FALSE, 0.901, 4.61, STEAD_TCS_ASSESS },
    { FALSE, 0.921, 4.19, STEAD_TCS_NO }, { FALSE, 0.921, 4.2, STEAD_TCS_ASSESS },
    /* One measurement can be enough. */
    { TRUE, NAN, 4.6, STEAD_TCS_NO }, { TRUE, 0.9, NAN, STEAD_TCS_NO }, { FALSE, NAN, 4.1, STEAD_TCS_NO },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  SteadTcsClass class = STEAD_TCS_NO;
  SteadAcidFood unknown = { FALSE, TRUE, FALSE, NAN, NAN };
  SteadAcidKind kind = STEAD_ACID_ACIDIFIED;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("aw %g, pH %g", cases[i].aw, cases[i].ph);
      g_assert_true (stead_tcs_class (table, cases[i].a, cases[i].aw, cases[i].ph, &class, NULL));
      g_assert_cmpint (class, ==, cases[i].class);
    }
  g_assert_false (stead_tcs_class (table, TRUE, NAN, 5, &class, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_clear_error (&error);
  g_assert_false (stead_acid_kind (table, &unknown, &kind, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  unknown.aw = 0.85;
  g_assert_true (stead_acid_kind (table, &unknown, &kind, NULL));
  g_assert_cmpint (kind, ==, STEAD_ACID_OUTSIDE);
  unknown = (SteadAcidFood) { FALSE, TRUE, FALSE, 4.61, NAN };
  g_assert_true (stead_acid_kind (table, &unknown, &kind, NULL));
  g_assert_cmpint (kind, ==, STEAD_ACID_LOW_ACID);
  g_assert_true (stead_acid_ph_in_order (table, 4.6));
  g_assert_false (stead_acid_ph_in_order (table, 4.601));
  g_assert_false (stead_acid_ph_in_order (table, NAN));
}

/* FDA Food Code 2022, §4-501.114 (read). */
static void
test_sanitizer (void)
{
  static const struct { SteadSolution solution; int faults; } cases[] = {
    { { "chlorine", 50, 8, 75, NAN }, STEAD_SOLUTION_GOOD },
    { { "chlorine", 50, 8, 74.9, NAN }, STEAD_SOLUTION_COLD },
    { { "chlorine", 50, 8.1, 75, NAN }, STEAD_SOLUTION_COLD },
    { { "chlorine", 24, 7, 130, NAN }, STEAD_SOLUTION_WEAK },
    { { "chlorine", 100, 10.1, 130, NAN }, STEAD_SOLUTION_PH },
    { { "chlorine", 20, 11, 130, NAN }, STEAD_SOLUTION_WEAK | STEAD_SOLUTION_PH },
    { { "iodine", 25, 5, 68, NAN }, STEAD_SOLUTION_GOOD },
    { { "iodine", 25.1, 5.1, 67, NAN }, STEAD_SOLUTION_STRONG | STEAD_SOLUTION_PH | STEAD_SOLUTION_COLD },
    { { "quat", NAN, NAN, 75, NAN }, STEAD_SOLUTION_GOOD },
    { { "quat", NAN, NAN, 74, 501 }, STEAD_SOLUTION_COLD | STEAD_SOLUTION_HARD },
  };
  const SteadSolution unmeasured[] = { { "chlorine", NAN, 8, 75, NAN }, { "chlorine", 50, NAN, 75, NAN },
                                       { "iodine", 20, 5, NAN, NAN }, { "soap", 50, 8, 75, NAN } };
  const SteadSolution warm = { "chlorine", NAN, 9, 100, NAN };
  const SteadSolution cold = { "chlorine", NAN, 9, 50, NAN };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  SteadSolutionFaults faults;
  double mgl = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("case %" G_GSIZE_FORMAT, i);
      g_assert_true (stead_sanitizer_judge (table, &cases[i].solution, &faults, NULL));
      g_assert_cmpint (faults, ==, cases[i].faults);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (unmeasured); i++)
    {
      g_autoptr(GError) error = NULL;

      g_assert_false (stead_sanitizer_judge (table, &unmeasured[i], &faults, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
    }
  g_assert_true (stead_sanitizer_least_strength_mgl (table, &warm, &mgl, NULL));
  g_assert_cmpfloat (mgl, ==, 50);
  g_assert_false (stead_sanitizer_least_strength_mgl (table, &cold, &mgl, NULL));
  /* The spoonful and back. */
  g_assert_cmpfloat_with_epsilon (stead_bleach_l (0.0525, stead_bleach_mgl (0.0525, 0.015, 3.8), 3.8), 0.015, 1e-12);
  g_assert_true (isnan (stead_bleach_mgl (0.05, 1, 0)));
}

/* FDA Food Code 2022, §4-203.11 (read): 2 °F, or 1 °C where both are shown. */
static void
test_thermometer (void)
{
  static const struct { SteadThermometer which; double reading; gboolean good; } cases[] = {
    { { "F_only", "food" }, 34, TRUE }, { { "F_only", "food" }, 34.1, FALSE }, { { "F_only", "food" }, 30, TRUE },
    { { "dual", "food" }, 33.8, TRUE }, { { "dual", "food" }, 33.9, FALSE }, { { "dual", "food" }, 30.2, TRUE },
    { { "F_only", "air_or_water" }, 35, TRUE }, { { "C_only", "air_or_water" }, 34.8, FALSE },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  double off = 0;
  gboolean good = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_true (stead_thermometer_judge (table, &cases[i].which, cases[i].reading, stead_ice_point_f (table),
                                              &off, &good, NULL));
      g_assert_cmpint (good, ==, cases[i].good);
      g_assert_cmpfloat_with_epsilon (off, cases[i].reading - 32, 1e-12);
    }
  /* 203 °F at 5,000 ft (read): the same thermometer in boiling water there. */
  g_assert_true (stead_thermometer_judge (table, &cases[0].which, 205, stead_boiling_point_f (table, 5000), NULL,
                                          &good, NULL));
  g_assert_true (good);
  g_assert_true (stead_thermometer_judge (table, &cases[0].which, 212, stead_boiling_point_f (table, 5000), NULL,
                                          &good, NULL));
  g_assert_false (good);
}

/* 21 CFR 101.105(m), edition of 2015 (read): "Net Wt. 24 oz (1 lb 8 oz)". */
static void
test_label (void)
{
  static const struct { double oz; gboolean fluid; const char *text; } cases[] = {
    { 24, FALSE, "Net Wt. 24 oz (1 lb 8 oz)" }, { 12, FALSE, "Net Wt. 12 oz" }, { 16, FALSE, "Net Wt. 16 oz (1 lb)" },
    { 15.99, FALSE, "Net Wt. 15.99 oz" }, { 63.5, FALSE, "Net Wt. 63.5 oz (3 lb 15.5 oz)" },
    { 0, FALSE, NULL }, { 64, FALSE, NULL }, { -1, FALSE, NULL }, { NAN, FALSE, NULL },
    { 32, TRUE, "Net 32 fl oz (1 qt)" }, { 52, TRUE, "Net 52 fl oz (1 qt 1 pt 4 oz)" }, { 8, TRUE, "Net 8 fl oz" },
    { 16, TRUE, "Net 16 fl oz (1 pt)" }, { 127, TRUE, "Net 127 fl oz (3 qt 1 pt 15 oz)" }, { 128, TRUE, NULL },
  };
  const double weights[] = { 8, 800, 40, 90, 40, 60 };
  const gsize order[] = { 1, 3, 5, 2, 4, 0 };
  gsize got[G_N_ELEMENTS (weights)];

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      g_autofree char *text = cases[i].fluid ? stead_net_fluid_text (cases[i].oz, &error)
                                             : stead_net_weight_text (cases[i].oz, &error);

      g_assert_cmpstr (text, ==, cases[i].text);
      g_assert_cmpint (error != NULL, ==, cases[i].text == NULL);
    }
  stead_ingredient_order (weights, G_N_ELEMENTS (weights), got);
  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    g_assert_cmpuint (got[i], ==, order[i]);
}

/* Food Code overview for local boards of health (read): none, one, two or more. */
static void
test_processes (void)
{
  const SteadStep cold[] = { STEAD_STEP_RECEIVE, STEAD_STEP_PREPARE, STEAD_STEP_COLD_HOLD, STEAD_STEP_SERVE };
  const SteadStep day[] = { STEAD_STEP_COOK, STEAD_STEP_HOT_HOLD, STEAD_STEP_SERVE };
  const SteadStep more[] = { STEAD_STEP_COOK, STEAD_STEP_COOL, STEAD_STEP_REHEAT, STEAD_STEP_COOL };
  /* Cooking what is hot is no second trip; warming what came cooked is no cooking. */
  const SteadStep twice[] = { STEAD_STEP_COOK, STEAD_STEP_COOK, STEAD_STEP_SERVE };
  const SteadStep bought[] = { STEAD_STEP_RECEIVE, STEAD_STEP_REHEAT, STEAD_STEP_SERVE };
  SteadStep step;

  g_assert_cmpint (stead_process_kind (cold, G_N_ELEMENTS (cold)), ==, STEAD_PROCESS_NO_COOK);
  g_assert_cmpint (stead_process_kind (day, G_N_ELEMENTS (day)), ==, STEAD_PROCESS_SAME_DAY);
  g_assert_cmpint (stead_process_kind (more, G_N_ELEMENTS (more)), ==, STEAD_PROCESS_COMPLEX);
  g_assert_cmpuint (stead_process_trips (more, G_N_ELEMENTS (more)), ==, 4);
  g_assert_cmpuint (stead_process_trips (twice, G_N_ELEMENTS (twice)), ==, 1);
  g_assert_cmpuint (stead_process_trips (bought, G_N_ELEMENTS (bought)), ==, 0);
  g_assert_cmpuint (stead_process_trips (NULL, 0), ==, 0);
  for (int i = 0; i < STEAD_N_STEPS; i++)
    {
      g_assert_true (stead_step_by_id (stead_step_id ((SteadStep) i), &step));
      g_assert_cmpint (step, ==, i);
    }
  g_assert_false (stead_step_by_id ("dance", &step));
}

static gboolean
lists (const GArray *items,
       const char   *id,
       gsize         place)
{
  for (guint i = 0; i < items->len; i++)
    {
      const SteadChecklistItem *item = &g_array_index (items, SteadChecklistItem, i);

      if (g_str_equal (item->limit->id, id) && item->place == place)
        return TRUE;
    }
  return FALSE;
}

/* Scrambled eggs that are cooled and reheated: the limits of each step, in order. */
static void
test_checklist (void)
{
  const SteadStep steps[] = { STEAD_STEP_RECEIVE, STEAD_STEP_PREPARE, STEAD_STEP_COOK, STEAD_STEP_COOL,
                              STEAD_STEP_REHEAT, STEAD_STEP_HOT_HOLD, STEAD_STEP_SERVE };
  const SteadLimitFact facts[] = { { "use", "pooled_or_held", 0 }, { "rule", "food_code", 0 },
                                   { "purpose", "hot_holding", 0 }, { NULL } };
  const SteadChecklistFood eggs = { "raw_shell_eggs", "raw_egg", "tcs", "cooked_on_site", facts };
  const SteadChecklistFood nothing = { NULL };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GArray) items = stead_checklist_new (table, steps, G_N_ELEMENTS (steps), &eggs);
  g_autoptr(GArray) none = stead_checklist_new (table, steps, 3, &nothing);

  g_assert_true (lists (items, "receive-eggs-45", 0));
  g_assert_true (lists (items, "cook-egg-held-155", 2));
  g_assert_true (lists (items, "cook-egg-held-145", 2));
  g_assert_true (lists (items, "cool-stage-1", 3));
  g_assert_true (lists (items, "cool-total", 3));
  g_assert_true (lists (items, "reheat-own-165", 4));
  g_assert_true (lists (items, "reheat-time-2h", 4));
  g_assert_true (lists (items, "hold-hot-135", 5));
  g_assert_false (lists (items, "cook-egg-order-145", 2));
  g_assert_false (lists (items, "cook-egg-held-155-2013", 2));
  g_assert_false (lists (items, "cool-stage-2-additional", 3));
  g_assert_cmpuint (none->len, ==, 0);
  for (guint i = 1; i < items->len; i++)
    g_assert_cmpuint (g_array_index (items, SteadChecklistItem, i).place, >=,
                      g_array_index (items, SteadChecklistItem, i - 1).place);
}

/* USDA Complete Guide to Home Canning (read): bands include their upper end. */
static void
test_jars (void)
{
  static const struct { double ft, minutes; } bands[] = {
    { 0, 35 }, { 1000, 35 }, { 1000.1, 40 }, { 3000, 40 }, { 3001, 45 }, { 6000, 45 }, { 6001, 50 },
  };
  g_autoptr(SteadLimitTable) table = limit_tables ();
  g_autoptr(GError) error = NULL;
  double minutes = -1, psi = -1, amount = 0;
  const char *unit = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      g_assert_true (stead_jar_process_min (table, "standard_tomato_sauce", "pint", bands[i].ft, &minutes, NULL));
      g_assert_cmpfloat (minutes, ==, bands[i].minutes);
    }
  /* No time is published for quarts of ketchup, nor a pressure above 8,000 ft. */
  minutes = -1;
  g_assert_false (stead_jar_process_min (table, "tomato_ketchup", "quart", 0, &minutes, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_false (stead_jar_pressure (table, "spaghetti_sauce_without_meat", "pint", "dial", 8001, &minutes, &psi, NULL));
  g_assert_cmpfloat (minutes, ==, -1);
  g_assert_cmpfloat (psi, ==, -1);
  g_assert_true (stead_jar_acid (table, "citric_acid", "pint", 3, &amount, &unit, NULL));
  g_assert_cmpfloat_with_epsilon (amount, 0.75, 1e-12);
  g_assert_cmpstr (unit, ==, "tsp");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/food/reheat", test_reheat);
  g_test_add_func ("/core/food/time-control", test_time_control);
  g_test_add_func ("/core/food/date-marks", test_date_marks);
  g_test_add_func ("/core/food/thaw-and-freeze", test_thaw_and_freeze);
  g_test_add_func ("/core/food/kinds", test_kinds);
  g_test_add_func ("/core/food/sanitizer", test_sanitizer);
  g_test_add_func ("/core/food/thermometer", test_thermometer);
  g_test_add_func ("/core/food/label", test_label);
  g_test_add_func ("/core/food/processes", test_processes);
  g_test_add_func ("/core/food/checklist", test_checklist);
  g_test_add_func ("/core/food/jars", test_jars);
  return g_test_run ();
}

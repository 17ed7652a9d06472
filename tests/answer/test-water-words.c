/* test-water-words.c - what is said of a reading, of its limits and of where it goes.
 *
 * The limits are rows of core/stead-water-limit.c, each with its source; a farm in meters and degrees Celsius.
 */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-reading-unit.h"
#include "answer/stead-water-answer.h"

#include <math.h>
#include <string.h>

#define FISH (STEAD_WATER_WARM_FISH | STEAD_WATER_CHANNEL_CATFISH | STEAD_WATER_BACTERIA)

static SteadWaterLine
judge (SteadWaterSharers        sharers,
       SteadWaterMeasure        measure,
       double                   value,
       const SteadWaterContext *beside)
{
  SteadWaterLine line = { .measure = measure, .value = value };

  stead_water_judge (sharers, measure, value, beside, &line.judgement);
  return line;
}

static void
assert_said (char       *text,      /* (transfer full) */
             const char *words)
{
  if (farm_in_english ())
    g_assert_cmpstr (text, ==, words);
  else
    g_assert_cmpuint (strlen (text), >, 0);
  g_free (text);
}

/* The words begin so; then comes the source. */
static void
assert_begins (char       *text,    /* (transfer full) */
               const char *words)
{
  if (farm_in_english () && !g_str_has_prefix (text, words))
    g_error ("“%s” does not begin with “%s”", text, words);
  g_free (text);
}

/* FAO 589: nitrite below 1 mg/L; warm-water fish from 6 to 8.5 of pH; oxygen of the bacteria from 4 on. */
static void
test_sentences (void)
{
  static const struct
  {
    SteadWaterSharers sharers;
    SteadWaterMeasure measure;
    double            value;
    const char       *words, *brief, *verdict;
  } rows[] = {
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 7, "pH is 7, between the limits of warm-water fish, 6 and 8.5 (",
      "Within the limits known here.", "inside its limits" },
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 9.2, "pH is 9.2. Harm to warm-water fish begins above 9 (",
      "Act: above 9 harm to warm-water fish begins.", "act" },
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 4.9, "pH is 4.9. Harm to warm-water fish begins below 5 (",
      "Act: below 5 harm to warm-water fish begins.", "act" },
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 5.5, "pH is 5.5. For warm-water fish the limit is 6 at least (",
      "Watch: the least for warm-water fish is 6.", "watch" },
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 8.7, "pH is 8.7. For warm-water fish the limit is 8.5 at most (",
      "Watch: the most for warm-water fish is 8.5.", "watch" },
    { STEAD_WATER_WARM_FISH, STEAD_WATER_PH, 15, "", "", "cannot be" },
    { STEAD_WATER_PLANTS, STEAD_WATER_OXYGEN, 3, "Oxygen is 3 mg/L. For plants it should be above 3 mg/L (",
      "Watch: the least for plants is 3 mg/L.", "watch" },
    { STEAD_WATER_PLANTS, STEAD_WATER_TAN, 30, "Total ammonia is 30 mg/L. For plants it should be below 30 mg/L (",
      "Watch: the most for plants is 30 mg/L.", "watch" },
    { STEAD_WATER_PLANTS, STEAD_WATER_TAN, 2, "Total ammonia is 2 mg/L, not above the limit of plants, 30 mg/L (",
      "Within the limits known here.", "inside its limits" },
    { STEAD_WATER_BACTERIA, STEAD_WATER_OXYGEN, 9, "Oxygen is 9 mg/L, not below the limit of the bacteria of the filter, "
      "4 mg/L (", "Within the limits known here.", "inside its limits" },
    { STEAD_WATER_PLANTS, STEAD_WATER_HARDNESS, 80, "Hardness is 80 mg/L. No limit for it is known here.",
      "No limit for it is known here.", "no limit known" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SteadWaterLine line = judge (rows[i].sharers, rows[i].measure, rows[i].value, NULL);

      assert_begins (stead_water_line_sentence (&line, STEAD_UNITS_METRIC), rows[i].words);
      assert_begins (stead_water_line_short (&line, STEAD_UNITS_METRIC), rows[i].brief);
      assert_said (g_strdup (stead_water_verdict_word (&line)), rows[i].verdict);
    }
}

/* What was not read has no verdict, and says what it would take. */
static void
test_missing (void)
{
  SteadWaterLine ammonia = judge (FISH, STEAD_WATER_NH3N, NAN, NULL);
  SteadWaterLine share = judge (FISH, STEAD_WATER_OXYGEN_SHARE, NAN, NULL);
  SteadWaterLine nitrite = judge (FISH, STEAD_WATER_NITRITE, NAN, NULL);
  g_autofree char *nothing = stead_water_line_short (&nitrite, STEAD_UNITS_METRIC);

  assert_said (stead_water_line_sentence (&ammonia, STEAD_UNITS_METRIC),
               "Un-ionized ammonia can be worked out when total ammonia, pH and temperature are read in one test.");
  assert_said (stead_water_line_sentence (&share, STEAD_UNITS_METRIC),
               "Oxygen saturation can be worked out when oxygen and temperature are read in one test.");
  assert_said (stead_water_line_sentence (&nitrite, STEAD_UNITS_METRIC), "Nitrite was not measured.");
  assert_said (g_strdup (stead_water_verdict_word (&nitrite)), "not measured");
  g_assert_cmpstr (nothing, ==, "");
}

/* SRAC 462: ten parts of chloride to one of nitrite. */
static void
test_chloride (void)
{
  const SteadWaterContext beside = { NAN, NAN, 5 };
  SteadWaterLine watch = judge (FISH, STEAD_WATER_NITRITE, 0.6, &beside);

  g_assert_true (watch.judgement.chloride_short);
  assert_said (stead_water_line_short (&watch, STEAD_UNITS_METRIC), "Watch: too little chloride beside it.");
  watch.judgement.verdict = STEAD_WATER_ACT;
  assert_said (stead_water_line_short (&watch, STEAD_UNITS_METRIC), "Act: too little chloride beside it.");
}

/* Each action says something of its own; none says nothing. */
static void
test_steps (void)
{
  g_assert_null (stead_water_action_steps (STEAD_WATER_ACTION_NONE));
  for (int i = STEAD_WATER_ACTION_TEST_AGAIN; i <= STEAD_WATER_ACTION_CHLORIDE_LOW; i++)
    {
      g_assert_nonnull (stead_water_action_steps ((SteadWaterAction) i));
      for (int k = STEAD_WATER_ACTION_TEST_AGAIN; k < i; k++)
        g_assert_cmpstr (stead_water_action_steps ((SteadWaterAction) i), !=, stead_water_action_steps ((SteadWaterAction) k));
    }
}

static void
test_scene (void)
{
  const SteadWaterScene cold = { .sharers = STEAD_WATER_COLD_FISH | STEAD_WATER_FRY, .planted = FALSE };
  const SteadWaterScene empty = { .sharers = STEAD_WATER_WARM_FISH, .assumed = TRUE };
  const SteadWaterScene trout = { .sharers = STEAD_WATER_COLD_FISH | STEAD_WATER_RAINBOW_TROUT };

  assert_said (stead_water_scene_sentence (&cold), "Judged for cold-water fish and young fish.");
  assert_said (stead_water_scene_sentence (&empty), "Judged for warm-water fish. No fish are entered in this water.");
  assert_said (stead_water_scene_sentence (&trout), "Judged for rainbow trout.");
}

/* --- of a farm ------------------------------------------------------------------------------- */

static gint64
make_water (Farm           *farm,
            SteadWaterKind  kind)
{
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadFarm) own = stead_farm_repo_get (farm->store, NULL);

  own->units = STEAD_UNITS_METRIC;
  FARM_DO (farm, stead_farm_repo_set (farm->store, own, &farm_error));
  water->name = g_strdup ("Loop");
  water->kind = kind;
  water->volume_l = 3000;
  FARM_DO (farm, stead_water_repo_save (farm->store, water, &farm_error));
  return water->id;
}

/* A test three days ago, of warmth and pH alone. */
static SteadWaterAnswer *
tested (Farm           *farm,
        SteadWaterKind  kind)
{
  gint64 water = make_water (farm, kind);
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  g_autoptr(GError) error = NULL;
  SteadWaterAnswer *answer;

  test->water_id = water;
  test->day = farm->today - 3;
  test->values[STEAD_READING_TEMPERATURE] = 25;
  test->values[STEAD_READING_PH] = 7;
  test->action = g_strdup ("Cleaned the filter.");
  FARM_DO (farm, stead_water_test_repo_save (farm->store, test, &farm_error));
  answer = stead_water_answer_new (farm->store, water, &error);
  g_assert_no_error (error);
  return answer;
}

/* An invisible joiner stands behind each slash, so that no line breaks there. */
#define PER "/\xE2\x81\xA0"

static void
test_ends (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_AQUAPONIC);
  SteadWaterEnds ends = { 0 };

  if (!farm_in_english ())
    return;
  stead_water_answer_ends (answer, STEAD_WATER_OXYGEN_SHARE, &ends);
  g_assert_cmpstr (ends.unit, ==, "%");
  g_assert_cmpstr (ends.most, ==, "most 110%, warm-water fish");
  g_assert_cmpstr (ends.least, ==, "least 60%, warm-water fish");
  g_assert_cmpstr (ends.harm_above, ==, "harm above 125%, warm-water fish");
  g_assert_cmpstr (ends.harm_below, ==, "harm below 40%, warm-water fish");
  stead_water_ends_clear (&ends);
  /* Of nitrate aquaponics wants some and bears 150; where harm begins nobody says. */
  stead_water_answer_ends (answer, STEAD_WATER_NITRATE, &ends);
  g_assert_cmpstr (ends.most, ==, "most 150 mg" PER "L, fish and plants together");
  g_assert_cmpstr (ends.least, ==, "least 5 mg" PER "L, fish and plants together");
  g_assert_null (ends.harm_above);
  g_assert_null (ends.harm_below);
  stead_water_ends_clear (&ends);
  /* What is worked out of total ammonia is told in its unit. */
  stead_water_answer_ends (answer, STEAD_WATER_NH3N, &ends);
  g_assert_cmpstr (ends.unit, ==, stead_reading_unit_symbol (stead_reading_unit_default (STEAD_READING_TAN,
                                                                                         STEAD_UNITS_METRIC)));
  g_assert_cmpstr (ends.harm_above, ==, "harm above 0.05 mg" PER "L, warm-water fish");
  stead_water_ends_clear (&ends);
  g_assert_null (ends.unit);
}

/* One point under the pointer: a share of 75 in the chart is 75 %, and what was done that day stands behind. */
static void
test_points (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_TANK);
  SteadReadingPoint share = { .day = farm->today - 2, .value = 75, .verdict = STEAD_WATER_OK };
  SteadReadingPoint warmth = { .day = farm->today - 3, .value = 25, .verdict = STEAD_WATER_OK };

  assert_begins (stead_water_answer_point_text (answer, STEAD_WATER_OXYGEN_SHARE, &share),
                 "Mar 29, 2026: Oxygen saturation is 75%, between the limits of warm-water fish, 60% and 110% (");
  if (farm_in_english ())
    {
      g_autofree char *text = stead_water_answer_point_text (answer, STEAD_WATER_TEMPERATURE, &warmth);

      g_assert_true (g_str_has_prefix (text, "Mar 28, 2026: Temperature is 25 °C, between the limits of warm-water fish, "
                                             "22 °C and 32 °C ("));
      g_assert_true (g_str_has_suffix (text, "Cleaned the filter."));
    }
}

static void
set_trend (SteadWaterAnswer  *answer,
           SteadWaterMeasure  measure,
           double             slope)
{
  answer->trends[measure] = (SteadWaterTrend) { .fitted = TRUE, .told = TRUE, .line = { .slope = slope, .n = 4 } };
}

/* In the unit of each: degrees of the farm, percent, none, what the meter shows. */
static void
test_trends (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_TANK);

  set_trend (answer, STEAD_WATER_TEMPERATURE, 0.5);
  set_trend (answer, STEAD_WATER_PH, -0.25);
  set_trend (answer, STEAD_WATER_OXYGEN_SHARE, -0.05);
  set_trend (answer, STEAD_WATER_CONDUCTIVITY, 12);
  set_trend (answer, STEAD_WATER_NITRITE, 0.025);
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_TEMPERATURE),
               "Temperature rises by 0.5 °C a day, give or take 0 °C, by the last 4 tests.");
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_PH),
               "pH falls by 0.25 a day, give or take 0, by the last 4 tests.");
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_OXYGEN_SHARE),
               "Oxygen saturation falls by 5% a day, give or take 0%, by the last 4 tests.");
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_CONDUCTIVITY),
               "Conductivity rises by 12 µS/cm a day, give or take 0 µS/cm, by the last 4 tests.");
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_NITRITE),
               "Nitrite rises by 0.025 mg/L a day, give or take 0 mg/L, by the last 4 tests.");
  answer->farm->units = STEAD_UNITS_US;     /* half a kelvin is 0.9 °F */
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_TEMPERATURE),
               "Temperature rises by 0.9 °F a day, give or take 0 °F, by the last 4 tests.");
  answer->trends[STEAD_WATER_PH].told = FALSE;
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_PH),
               "pH: up or down cannot be told from 4 tests.");
  g_assert_null (stead_water_answer_trend_sentence (answer, STEAD_WATER_NITRATE));
}

/* FAO 589 has nitrite of warm-water fish below 1; harm from 5 on is our own. */
static void
test_meets (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_TANK);
  SteadWaterTrend *trend = &answer->trends[STEAD_WATER_NITRITE];

  set_trend (answer, STEAD_WATER_NITRITE, 0.1);
  trend->meets = TRUE;
  trend->there = judge (STEAD_WATER_WARM_FISH, STEAD_WATER_NITRITE, 1, NULL).judgement;
  trend->met_on = stead_day_new (2026, 4, 10);
  trend->met_early = stead_day_new (2026, 4, 5);
  trend->met_late = stead_day_new (2026, 4, 20);
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_NITRITE),
               "Nitrite rises by 0.1 mg/L a day, give or take 0 mg/L, by the last 4 tests. If it goes on so, it meets the "
               "limit of 1 mg/L for warm-water fish about Apr 10, 8 times in 10 between Apr 5 and Apr 20.");
  trend->met_late = STEAD_DAY_NONE;
  trend->there = judge (STEAD_WATER_WARM_FISH, STEAD_WATER_NITRITE, 5.1, NULL).judgement;
  assert_said (stead_water_answer_trend_sentence (answer, STEAD_WATER_NITRITE),
               "Nitrite rises by 0.1 mg/L a day, give or take 0 mg/L, by the last 4 tests. If it goes on so, it meets the "
               "limit of 5 mg/L for warm-water fish about Apr 10; perhaps as soon as Apr 5, perhaps much later.");
}

static void
test_due (Farm          *farm,
          gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_TANK);

  answer->due_on = answer->today;
  assert_said (stead_water_answer_due_sentence (answer), "A test is due <b>today</b>.");
  answer->due_on = answer->today - 3;
  assert_said (stead_water_answer_due_sentence (answer), "The next test is <b>3 days late</b>.");
  answer->due_on = answer->today + 1;
  assert_said (stead_water_answer_due_sentence (answer), "The next test is due on Wednesday, April 1.");
  answer->due_on = STEAD_DAY_NONE;
  answer->water->ended_on = stead_day_new (2026, 3, 3);
  assert_said (stead_water_answer_due_sentence (answer), "This water was in use until Mar 3, 2026.");
}

/* Without fish nothing is said of feed; without feed that is said; plants have beds, a bare tank nitrate. */
static void
test_budget (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = tested (farm, STEAD_WATER_TANK);
  SteadWaterBudget *budget = &answer->budget;
  g_autofree char *beds = NULL, *bare = NULL;

  g_assert_null (stead_water_answer_budget_sentence (answer));
  budget->days = 7;
  budget->feed_kg_day = 0;
  assert_said (stead_water_answer_budget_sentence (answer),
               "No feed is entered for the fish in this water in the last seven days.");
  budget->feed_kg_day = 2;
  budget->tan_g_day = 60;
  budget->alkalinity_g_day = 430;
  budget->nitrate_mgl_day = 3.5;
  bare = stead_water_answer_budget_sentence (answer);
  NUMBERS_ARE (bare, 2, 60, 430, 3.5);
  answer->scene.planted = TRUE;
  budget->bed_min_m2 = 20;
  budget->bed_max_m2 = 40;
  budget->bed_m2 = 30;
  beds = stead_water_answer_budget_sentence (answer);
  NUMBERS_ARE (beds, 2, 60, 430, 20, 40, 30);
}

/* Plants alone ask for conductivity, and warn of chemicals, not of sick fish. */
static void
test_plants (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) plants = tested (farm, STEAD_WATER_HYDROPONIC);
  g_autofree char *name = stead_water_answer_test_name (plants->last, "Loop");

  g_assert_nonnull (strstr (plants->sentence, stead_reading_name (STEAD_READING_CONDUCTIVITY)));
  g_assert_null (strstr (plants->sentence, stead_reading_name (STEAD_READING_NITRITE)));
  if (farm_in_english ())
    g_assert_cmpstr (name, ==, "water test of Loop on Mar 28");
}

#define ADD(name, test) g_test_add ("/answer/water-words/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add_func ("/answer/water-words/sentences", test_sentences);
  g_test_add_func ("/answer/water-words/missing", test_missing);
  g_test_add_func ("/answer/water-words/chloride", test_chloride);
  g_test_add_func ("/answer/water-words/steps", test_steps);
  g_test_add_func ("/answer/water-words/scene", test_scene);
  ADD ("ends", test_ends);
  ADD ("points", test_points);
  ADD ("trends", test_trends);
  ADD ("meets", test_meets);
  ADD ("due", test_due);
  ADD ("budget", test_budget);
  ADD ("plants", test_plants);
  return g_test_run ();
}

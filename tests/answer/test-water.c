/* test-water.c - how a water is doing, against printed tables and sums by hand. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-due-answer.h"
#include "answer/stead-water-answer.h"
#include "answer/stead-water-dose-answer.h"
#include "answer/stead-reading-unit.h"
#include "store/stead-fish-repo.h"

#include <math.h>
#include <string.h>

#define FT2 0.09290304   /* a square foot in square meters (NIST Special Publication 811, appendix B) */

/* --- a water ------------------------------------------------------------------- */

static gint64
make_water (Farm           *farm,
            SteadWaterKind  kind,
            double          volume_l)
{
  g_autoptr(SteadWater) water = stead_water_new ();

  water->name = g_strdup ("Loop");
  water->kind = kind;
  water->volume_l = volume_l;
  FARM_DO (farm, stead_water_repo_save (farm->store, water, &farm_error));
  return water->id;
}

/* A group of fish in a tank of the water; its feed has 32 parts of protein in 100. */
static gint64
make_fish (Farm       *farm,
           gint64      water,
           const char *species,
           double      mean_g)
{
  g_autoptr(SteadTank) tank = stead_tank_new ();
  g_autoptr(SteadFish) fish = stead_fish_new ();

  tank->name = g_strdup_printf ("Tank of %s", species);
  tank->diameter_m = 2;
  tank->depth_m = 1;
  tank->water_id = water;
  FARM_DO (farm, stead_tank_repo_save (farm->store, tank, &farm_error));
  fish->batch.name = g_strdup_printf ("Group of %s", species);
  fish->batch.started_on = farm->today - 60;
  fish->batch.place_id = tank->place_id;
  g_free (fish->species);
  fish->species = g_strdup (species);
  fish->stocked = 200;
  fish->stocked_g = mean_g;
  fish->protein_frac = 0.32;
  FARM_DO (farm, stead_fish_repo_save (farm->store, fish, &farm_error));
  return fish->batch.id;
}

/* Readings by name; what is not said is a gap. */
typedef struct
{
  int    ago;
  double temp_c, ph, tan, nitrite, nitrate, oxygen, alkalinity, chloride;
} Sheet;

#define SHEET(...) (&(Sheet) { .temp_c = NAN, .ph = NAN, .tan = NAN, .nitrite = NAN, .nitrate = NAN, .oxygen = NAN, \
                               .alkalinity = NAN, .chloride = NAN, __VA_ARGS__ })

#pragma GCC diagnostic ignored "-Woverride-init"

static void
make_test (Farm        *farm,
           gint64       water,
           const Sheet *sheet)
{
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();

  test->water_id = water;
  test->day = farm->today - sheet->ago;
  test->values[STEAD_READING_TEMPERATURE] = sheet->temp_c;
  test->values[STEAD_READING_PH] = sheet->ph;
  test->values[STEAD_READING_TAN] = sheet->tan;
  test->values[STEAD_READING_NITRITE] = sheet->nitrite;
  test->values[STEAD_READING_NITRATE] = sheet->nitrate;
  test->values[STEAD_READING_OXYGEN] = sheet->oxygen;
  test->values[STEAD_READING_ALKALINITY] = sheet->alkalinity;
  test->values[STEAD_READING_CHLORIDE] = sheet->chloride;
  FARM_DO (farm, stead_water_test_repo_save (farm->store, test, &farm_error));
}

static SteadWaterAnswer *
ask (Farm   *farm,
     gint64  water)
{
  g_autoptr(GError) error = NULL;
  SteadWaterAnswer *answer = stead_water_answer_new (farm->store, water, &error);

  g_assert_no_error (error);
  g_assert_nonnull (answer);
  return answer;
}

static SteadWaterVerdict
verdict (const SteadWaterAnswer *answer,
         SteadWaterMeasure       measure)
{
  return answer->lines[measure].judgement.verdict;
}

/* --- who shares it --------------------------------------------------------------- */

static void
test_sharers (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) empty = NULL;
  g_autoptr(SteadWaterAnswer) stocked = NULL;
  g_autoptr(SteadWaterAnswer) mixed = NULL;
  g_autofree char *words = NULL;
  gint64 water = make_water (farm, STEAD_WATER_AQUAPONIC, 5000);

  empty = ask (farm, water);
  g_assert_true (empty->scene.assumed);
  g_assert_cmpint (empty->scene.sharers, ==, STEAD_WATER_WARM_FISH | STEAD_WATER_PLANTS | STEAD_WATER_BACTERIA);
  make_fish (farm, water, "channel_catfish", 40);
  stocked = ask (farm, water);
  g_assert_false (stocked->scene.assumed);
  g_assert_cmpint (stocked->scene.sharers, ==, STEAD_WATER_WARM_FISH | STEAD_WATER_CHANNEL_CATFISH
                                                | STEAD_WATER_PLANTS | STEAD_WATER_BACTERIA);
  make_fish (farm, water, "perch", 0.2);
  mixed = ask (farm, water);
  g_assert_cmpstr (mixed->scene.unknown_species, ==, "perch");
  words = stead_water_scene_sentence (&mixed->scene);
  g_assert_nonnull (strstr (words, "perch"));
}

static void
test_hydroponic (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = ask (farm, make_water (farm, STEAD_WATER_HYDROPONIC, 500));

  g_assert_cmpint (answer->scene.sharers, ==, STEAD_WATER_PLANTS);
  g_assert_false (answer->scene.assumed);
}

/* --- the last test ------------------------------------------------------------------ */

/* The poisonous share at 28 °C and pH 8.4 is 0.1495 (University of Florida FA16, table 1); fresh water of
 * 28 °C at the sea holds 7.83 mg/L (EN 25814, oxygen saturation). */
static void
test_worked_out (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_fish (farm, water, "channel_catfish", 40);
  make_test (farm, water, SHEET (.temp_c = 28, .ph = 8.4, .tan = 1, .nitrite = 0.2, .oxygen = 6, .chloride = 100));
  answer = ask (farm, water);
  g_assert_cmpfloat_with_epsilon (answer->lines[STEAD_WATER_NH3N].value, 0.1495, 0.0002);
  g_assert_cmpfloat_with_epsilon (answer->lines[STEAD_WATER_OXYGEN_SHARE].value, 6 / 7.83, 0.003);
  g_assert_cmpint (verdict (answer, STEAD_WATER_NH3N), ==, STEAD_WATER_ACT);      /* above 0.05 */
  g_assert_cmpint (verdict (answer, STEAD_WATER_TAN), ==, STEAD_WATER_OK);        /* below 3 */
  g_assert_cmpint (verdict (answer, STEAD_WATER_NITRITE), ==, STEAD_WATER_OK);
  g_assert_cmpint (verdict (answer, STEAD_WATER_NITRATE), ==, STEAD_WATER_UNKNOWN);
  g_assert_true (isnan (answer->lines[STEAD_WATER_NITRATE].value));
  g_assert_cmpint (answer->n_act, ==, 1);
  g_assert_cmpint (answer->n_watch, ==, 0);
}

static void
set_height (Farm   *farm,
            double  elevation_m)
{
  g_autoptr(SteadFarm) facts = stead_farm_repo_get (farm->store, NULL);

  facts->elevation_m = elevation_m;
  FARM_DO (farm, stead_farm_repo_set (farm->store, facts, &farm_error));
}

/* High up water holds less: at 1,800 m the air presses with 81.8 kPa (FAO 56, table 2.1), so the same
 * reading is a larger share, by about 101.3 / 81.8. */
static void
test_elevation (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) low = NULL;
  g_autoptr(SteadWaterAnswer) high = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_test (farm, water, SHEET (.temp_c = 20, .oxygen = 5));
  set_height (farm, 0);
  low = ask (farm, water);
  set_height (farm, 1800);
  high = ask (farm, water);
  g_assert_cmpfloat_with_epsilon (low->lines[STEAD_WATER_OXYGEN_SHARE].value, 5 / 9.09, 0.002);   /* EN 25814 */
  g_assert_cmpfloat_with_epsilon (high->lines[STEAD_WATER_OXYGEN_SHARE].value
                                  / low->lines[STEAD_WATER_OXYGEN_SHARE].value, 101.3 / 81.8, 0.015);
}

/* Un-ionized ammonia needs all three readings of one test; an older pH is no help. */
static void
test_gaps (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_test (farm, water, SHEET (.ago = 2, .temp_c = 28, .ph = 8.4));
  make_test (farm, water, SHEET (.tan = 1, .oxygen = 5.5));
  answer = ask (farm, water);
  g_assert_true (isnan (answer->lines[STEAD_WATER_NH3N].value));
  g_assert_true (isnan (answer->lines[STEAD_WATER_OXYGEN_SHARE].value));
  g_assert_cmpint (verdict (answer, STEAD_WATER_NH3N), ==, STEAD_WATER_UNKNOWN);
  for (int i = 0; i < STEAD_N_READINGS; i++)
    {
      gboolean missing = i == STEAD_READING_TEMPERATURE || i == STEAD_READING_PH || i == STEAD_READING_NITRITE;

      if (missing)
        g_assert_nonnull (strstr (answer->sentence, stead_reading_name ((SteadReading) i)));
    }
}

/* Chloride of an earlier test counts for nitrite: 1 mg/L wants 10 of it (SRAC 462). */
static void
test_chloride (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) enough = NULL;
  g_autoptr(SteadWaterAnswer) little = NULL;
  g_autofree char *words = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_test (farm, water, SHEET (.ago = 9, .chloride = 9));
  make_test (farm, water, SHEET (.ago = 1, .nitrite = 0.9));
  enough = ask (farm, water);
  g_assert_cmpint (verdict (enough, STEAD_WATER_NITRITE), ==, STEAD_WATER_OK);
  make_test (farm, water, SHEET (.nitrite = 0.92));
  little = ask (farm, water);
  g_assert_cmpint (verdict (little, STEAD_WATER_NITRITE), ==, STEAD_WATER_WATCH);
  g_assert_true (little->lines[STEAD_WATER_NITRITE].judgement.chloride_short);
  words = stead_water_line_sentence (&little->lines[STEAD_WATER_NITRITE], STEAD_UNITS_US);
  NUMBERS_ARE (words, 0.92, 10, 1, 9, 462);
}

/* --- words -------------------------------------------------------------------------- */

/* A reading, its limit, whose it is and the source; then what to do first. */
static void
test_sentence (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autofree char *line = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_fish (farm, water, "channel_catfish", 40);
  make_test (farm, water, SHEET (.temp_c = 28, .ph = 8.4, .tan = 1, .nitrite = 0.2, .oxygen = 6, .chloride = 100));
  answer = ask (farm, water);
  line = stead_water_line_sentence (&answer->lines[STEAD_WATER_NH3N], STEAD_UNITS_US);
  NUMBERS_ARE (line, round (answer->lines[STEAD_WATER_NH3N].value * 1000) / 1000, 0.05, 16, 1);   /* FA16, table 1 */
  g_assert_nonnull (strstr (answer->sentence, line));
  g_assert_cmpstr (answer->todo, ==, stead_water_action_steps (STEAD_WATER_ACTION_AMMONIA));
  g_assert_nonnull (answer->caution);
  if (!farm_in_english ())
    return;
  g_assert_nonnull (strstr (answer->sentence, "1 reading calls for action"));
  g_assert_nonnull (strstr (line, "University of Florida FA16"));
  g_assert_nonnull (strstr (line, "warm-water fish"));
}

/* Under the field of ammonia its poisonous part is judged too, and the graver verdict counts. */
static void
test_typing (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = ask (farm, make_water (farm, STEAD_WATER_TANK, 3000));
  g_autoptr(SteadWaterTest) typed = stead_water_test_new ();
  SteadWaterLine lines[STEAD_N_WATER_MEASURES];
  SteadWaterVerdict seen;
  g_autofree char *alone = NULL, *both = NULL, *empty = NULL;

  typed->values[STEAD_READING_TAN] = 1;
  stead_water_judge_test (&answer->scene, typed, lines);
  alone = stead_water_reading_short (lines, STEAD_READING_TAN, STEAD_UNITS_US, &seen);
  g_assert_cmpint (seen, ==, STEAD_WATER_OK);
  typed->values[STEAD_READING_TEMPERATURE] = 28;
  typed->values[STEAD_READING_PH] = 8.4;
  stead_water_judge_test (&answer->scene, typed, lines);
  both = stead_water_reading_short (lines, STEAD_READING_TAN, STEAD_UNITS_US, &seen);
  g_assert_cmpint (seen, ==, STEAD_WATER_ACT);
  NUMBERS_ARE (both, round (lines[STEAD_WATER_NH3N].value * 1000) / 1000, 0.05);
  empty = stead_water_reading_short (lines, STEAD_READING_NITRITE, STEAD_UNITS_US, &seen);
  g_assert_cmpstr (empty, ==, "");
}

/* No words of ours call a number safe, whatever was read. */
static void
test_never_safe (Farm          *farm,
                 gconstpointer  data)
{
  static const double tries[] = { 0, 0.01, 0.5, 1, 3, 5, 7, 8.5, 10, 13, 25, 40, 100, 400, 3000 };
  g_autoptr(SteadWaterAnswer) answer = ask (farm, make_water (farm, STEAD_WATER_AQUAPONIC, 3000));

  for (int measure = 0; measure < STEAD_N_WATER_MEASURES; measure++)
    for (gsize i = 0; i < G_N_ELEMENTS (tries); i++)
      {
        SteadWaterLine line = { .measure = (SteadWaterMeasure) measure, .value = tries[i] };
        g_autofree char *sentence = NULL;
        g_autofree char *brief = NULL;

        stead_water_judge (answer->scene.sharers, line.measure, line.value, NULL, &line.judgement);
        sentence = stead_water_line_sentence (&line, STEAD_UNITS_METRIC);
        brief = stead_water_line_short (&line, STEAD_UNITS_METRIC);
        g_assert_cmpuint (strlen (sentence), >, 20);
        for (int part = 0; part < 2; part++)
          {
            g_autofree char *lower = g_utf8_strdown (part == 0 ? sentence : brief, -1);

            g_assert_null (strstr (lower, "safe"));
            g_assert_null (strstr (lower, "segur"));
          }
        /* What passes a limit says what to do. */
        if (line.judgement.verdict == STEAD_WATER_ACT || line.judgement.verdict == STEAD_WATER_WATCH)
          g_assert_nonnull (stead_water_action_steps (line.judgement.action));
      }
}

static void
test_due (Farm          *farm,
          gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) none = NULL;
  g_autoptr(SteadWaterAnswer) late = NULL;
  g_autoptr(SteadWaterAnswer) ahead = NULL;
  g_autofree char *words = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  none = ask (farm, water);
  g_assert_null (none->last);
  g_assert_cmpint (none->due_on, ==, farm->today);
  make_test (farm, water, SHEET (.ago = 10, .ph = 7.5));
  late = ask (farm, water);
  g_assert_cmpint (late->due_on, ==, farm->today - 3);   /* weekly */
  words = stead_water_answer_due_sentence (late);
  NUMBERS_ARE (words, 3);
  make_test (farm, water, SHEET (.ago = 2, .ph = 7.5));
  ahead = ask (farm, water);
  g_assert_cmpint (ahead->due_on, ==, farm->today + 5);
  if (farm_in_english ())
    g_assert_nonnull (strstr (ahead->sentence, "inside the limits"));
}

/* What was done stands by its day, oldest first, and with the reading of that day. */
static void
test_done (Farm          *farm,
           gconstpointer  data)
{
  static const char * const acts[] = { "Spare pump on.", NULL, "Half feed." };
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autofree char *all = NULL, *last = NULL, *point = NULL;
  const SteadReadingPoint at = { .day = farm->today - 3, .value = 7 };

  for (int i = 0; i < 3; i++)
    {
      g_autoptr(SteadWaterTest) test = stead_water_test_new ();

      test->water_id = water;
      test->day = farm->today - 3 + i;
      test->values[STEAD_READING_PH] = 7;
      test->action = g_strdup (acts[i]);
      FARM_DO (farm, stead_water_test_repo_save (farm->store, test, &farm_error));
    }
  answer = ask (farm, water);
  all = stead_water_answer_done_text (answer, farm->today - 30, 5);
  last = stead_water_answer_done_text (answer, farm->today - 30, 1);
  point = stead_water_answer_point_text (answer, STEAD_WATER_PH, &at);
  g_assert_true (g_str_has_suffix (last, ": Half feed.") && strchr (last, '\n') == NULL);
  g_assert_nonnull (strstr (all, ": Spare pump on.\n"));
  g_assert_true (g_str_has_suffix (all, last));
  g_assert_true (g_str_has_suffix (point, " Spare pump on."));
  g_assert_null (stead_water_answer_done_text (answer, farm->today, 5));
}

/* --- trends --------------------------------------------------------------------------- */

/* What a line through two readings says so many days on, and its variance, written out. */
static double
line_at (double v1, double v2, double span, double ahead)
{
  return v2 + (v2 - v1) / span * ahead;
}

static double
sd_at (double sd1, double sd2, double span, double ahead)
{
  return hypot (sd2 * (1 + ahead / span), sd1 * ahead / span);
}

static int
first_below (double limit, double band)
{
  for (int t = 1; t <= 28; t++)
    if (line_at (90, 62, 14, t) + band * sd_at (8, 8, 14, t) < limit - 1e-9)
      return t;
  return -1;
}

/* Alkalinity falls from 90 to 62 in 14 days, read to 8 mg/L; FAO's practice keeps 50. */
static double
mday_of (SteadDay day)
{
  int mday;

  stead_day_split (day, NULL, NULL, &mday);
  return mday;
}

static void
test_trend (Farm          *farm,
            gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autofree char *words = NULL;
  const SteadWaterTrend *trend;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_test (farm, water, SHEET (.ago = 15, .alkalinity = 90));
  make_test (farm, water, SHEET (.ago = 1, .alkalinity = 62));
  answer = ask (farm, water);
  trend = &answer->trends[STEAD_WATER_ALKALINITY];
  g_assert_true (trend->told);
  g_assert_cmpfloat_with_epsilon (trend->line.slope, -2, 1e-9);
  g_assert_true (trend->meets);
  g_assert_cmpint (trend->met_on, ==, farm->today - 1 + 7);    /* 50 on the sixth day, below it on the seventh */
  g_assert_cmpint (trend->met_early, ==, farm->today - 1 + first_below (50, -1.28155));
  g_assert_cmpint (trend->met_late, ==, farm->today - 1 + first_below (50, 1.28155));
  g_assert_cmpint (trend->met_early, <, trend->met_on);
  g_assert_cmpint (trend->met_late, >, trend->met_on);
  whys = stead_water_answer_whys (answer);
  words = stead_water_answer_trend_sentence (answer, STEAD_WATER_ALKALINITY);
  g_assert_cmpstr (farm_find_why (whys, "Where the measures are going")->worked, ==, words);
  NUMBERS_ARE (farm_find_why (whys, "When the next test is due")->worked, 30, answer->water->test_days,
               mday_of (answer->due_on));
  g_assert_nonnull (strstr (answer->sentence, words));
  if (farm_in_english ())
    g_assert_nonnull (strstr (words, "falls by 2 mg/L a day"));
}

static void
test_no_trend (Farm          *farm,
               gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) one = NULL;
  g_autoptr(SteadWaterAnswer) two = NULL;
  g_autofree char *words = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  make_test (farm, water, SHEET (.ago = 7, .nitrate = 50));
  one = ask (farm, water);
  g_assert_false (one->trends[STEAD_WATER_NITRATE].fitted);
  g_assert_null (stead_water_answer_trend_sentence (one, STEAD_WATER_NITRATE));
  make_test (farm, water, SHEET (.nitrate = 55));   /* one color of the kit apart */
  two = ask (farm, water);
  g_assert_true (two->trends[STEAD_WATER_NITRATE].fitted);
  g_assert_false (two->trends[STEAD_WATER_NITRATE].told);
  words = stead_water_answer_trend_sentence (two, STEAD_WATER_NITRATE);
  NUMBERS_ARE (words, 2);
}

static void
test_series (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autoptr(GArray) points = NULL;
  SteadReadingSeries series;
  gint64 water = make_water (farm, STEAD_WATER_AQUAPONIC, 3000);

  make_test (farm, water, SHEET (.ago = 20, .ph = 7, .temp_c = 20));
  make_test (farm, water, SHEET (.ago = 10, .temp_c = 25));
  make_test (farm, water, SHEET (.ago = 1, .ph = 5.9, .temp_c = 30));
  answer = ask (farm, water);
  points = stead_water_answer_series (answer, STEAD_WATER_PH, farm->today - 30, &series);
  g_assert_cmpuint (series.n_points, ==, 2);   /* a gap is no point */
  g_assert_cmpfloat (series.points[1].value, ==, 5.9);
  g_assert_cmpint (series.points[0].verdict, ==, STEAD_WATER_OK);
  g_assert_cmpint (series.points[1].verdict, ==, STEAD_WATER_ACT);
  g_assert_cmpfloat (series.min, ==, 6.4);
  g_assert_cmpfloat (series.max, ==, 7.4);
  g_assert_cmpfloat (series.act_below, ==, 6);
  g_array_unref (points);
  points = stead_water_answer_series (answer, STEAD_WATER_TEMPERATURE, farm->today - 15, &series);
  g_assert_cmpuint (series.n_points, ==, 2);
  g_assert_cmpfloat_with_epsilon (series.points[0].value, 77, 1e-9);   /* 25 °C, as the farm reads it */
  g_assert_cmpfloat_with_epsilon (series.max, 86, 1e-9);               /* 30 °C, fish and plants together */
}

/* --- feed ------------------------------------------------------------------------------ */

/* By hand: 1 kg of 32 % protein gives 1000 x 0.32 x 0.092 g of N, which uses 7.14 g each; SRAC 282 gives a
 * filter 0.02 to 0.10 g a square foot, FAO 589 fruiting beds 50 to 80 g of feed a square meter. */
static void
test_budget (Farm          *farm,
             gconstpointer  data)
{
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autofree char *words = NULL;
  gint64 water = make_water (farm, STEAD_WATER_AQUAPONIC, 5000);
  gint64 fish = make_fish (farm, water, "channel_catfish", 500);
  const double tan = 1000 * 0.32 * 0.092;

  for (int ago = 1; ago <= 8; ago++)
    {
      SteadFishEntry entry = { .fish_id = fish, .day = farm->today - ago, .feed_kg = ago == 8 ? 5 : 1, .water_c = NAN };

      FARM_DO (farm, stead_fish_repo_save_entry (farm->store, &entry, &farm_error));
    }
  answer = ask (farm, water);
  g_assert_cmpfloat_with_epsilon (answer->budget.feed_kg_day, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->budget.tan_g_day, tan, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->budget.alkalinity_g_day, 7.14 * tan, 0.05);
  g_assert_cmpfloat_with_epsilon (answer->budget.filter_min_m2, tan / (0.10 / FT2), 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->budget.filter_max_m2, tan / (0.02 / FT2), 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->budget.bed_min_m2, 12.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer->budget.bed_max_m2, 20, 1e-9);
  g_assert_false (answer->budget.protein_assumed);
  whys = stead_water_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "What the feed does to the water")->worked, 1000, 32, 0.092, 29.4, 29.4, 7.14, 210, 27.4, 137);
  /* 12.5 and 20 m² in square feet, as the sentence rounds them */
  NUMBERS_ARE (farm_find_why (whys, "Bed that the fish feed supports")->worked, 1000, 80, 50, 135, 215);
  words = stead_water_answer_budget_sentence (answer);
  g_assert_nonnull (words);
}

/* --- doses ------------------------------------------------------------------------------- */

/* Liters x mg/L / 1000 x 1.68 g of sodium bicarbonate for a gram of calcium carbonate (molar masses by
 * equivalents: 84.01 / 50.04). */
/* A tank of 2 m by 1 m holds 3,142 L; all of the 29.44 g become nitrate in it. */
static void
test_volume_why (Farm          *farm,
                 gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  gint64 water = make_water (farm, STEAD_WATER_TANK, NAN);
  gint64 fish = make_fish (farm, water, "channel_catfish", 500);
  SteadFishEntry entry = { .fish_id = fish, .day = farm->today - 1, .feed_kg = 7, .water_c = NAN };

  FARM_DO (farm, stead_fish_repo_save_entry (farm->store, &entry, &farm_error));
  answer = ask (farm, water);
  whys = stead_water_answer_whys (answer);
  NUMBERS_ARE (farm_find_why (whys, "How much water it holds")->worked, 829.92, 829.92, 830);
  NUMBERS_ARE (farm_find_why (whys, "How fast nitrate rises without plants")->worked, 29.4, 4.425, 1000, 3142, 41.5);
}

static void
test_dose_base (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = ask (farm, make_water (farm, STEAD_WATER_TANK, 1000));
  g_autoptr(SteadWaterDose) dose = NULL;
  g_autoptr(SteadWaterDose) none = NULL;
  g_autoptr(GError) error = NULL;
  SteadDoseNumbers numbers = { .volume_l = 1000, .now = 40, .target = 100, .beside = NAN };

  dose = stead_water_dose_base (answer, STEAD_BASE_NAHCO3, &numbers, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (dose->amount, 60 * 1.68, 0.1);
  g_assert_cmpint (dose->parts, ==, 2);
  NUMBERS_ARE (dose->sentence, 101, 3.6, 264, 100, 2, 50, 1.8, 0.3);
  g_assert_nonnull (dose->caution);
  numbers.now = 120;
  none = stead_water_dose_base (answer, STEAD_BASE_NAHCO3, &numbers, &error);
  g_assert_cmpfloat (none->amount, ==, 0);
  numbers.volume_l = NAN;
  g_assert_null (stead_water_dose_base (answer, STEAD_BASE_NAHCO3, &numbers, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  numbers.volume_l = 1000;
  numbers.target = 9000;
  g_assert_null (stead_water_dose_base (answer, STEAD_BASE_NAHCO3, &numbers, &error));
  g_assert_nonnull (error);
}

/* (10 x nitrite - chloride) x m3 / 0.607 (SRAC 462; chloride is 35.45 of 58.44 in salt). */
static void
test_dose_salt (Farm          *farm,
                gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = NULL;
  g_autoptr(SteadWaterDose) dose = NULL;
  g_autoptr(SteadWaterDose) none = NULL;
  g_autoptr(GError) error = NULL;
  SteadDoseNumbers numbers;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 2000);

  make_test (farm, water, SHEET (.ago = 1, .nitrite = 3, .chloride = 12));
  make_test (farm, water, SHEET (.ph = 7.5));
  answer = ask (farm, water);
  stead_water_dose_start (answer, STEAD_DOSE_SALT, STEAD_WATER_NITRITE, &numbers);
  g_assert_cmpfloat (numbers.now, ==, 3);
  g_assert_cmpfloat (numbers.beside, ==, 12);
  g_assert_cmpfloat (numbers.volume_l, ==, 2000);
  g_assert_cmpint (numbers.day, ==, farm->today - 1);
  dose = stead_water_dose_salt (answer, &numbers, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (dose->amount, (10 * 3 - 12) * 2 / 0.607, 0.1);
  numbers.beside = 31;
  none = stead_water_dose_salt (answer, &numbers, &error);
  g_assert_cmpfloat (none->amount, ==, 0);
}

/* Half of the nitrate goes with half of the water; a quarter at once is three changes (0.75^3 = 0.42). */
static void
test_dose_change (Farm          *farm,
                  gconstpointer  data)
{
  g_autoptr(SteadWaterAnswer) answer = ask (farm, make_water (farm, STEAD_WATER_TANK, 1000));
  g_autoptr(SteadWaterDose) dose = NULL;
  g_autoptr(GError) error = NULL;
  SteadDoseNumbers numbers = { .volume_l = 1000, .now = 200, .target = 100, .beside = 0 };

  dose = stead_water_dose_change (answer, STEAD_WATER_NITRATE, &numbers, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (dose->frac, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (dose->amount, 500, 1e-9);
  g_assert_cmpint (dose->parts, ==, 3);
  numbers.beside = 150;
  g_assert_null (stead_water_dose_change (answer, STEAD_WATER_NITRATE, &numbers, &error));
  g_assert_nonnull (error);
}

/* --- Today ------------------------------------------------------------------------------ */

/* The first line that leads to a water, of a kind; NULL if there is none. */
static const SteadDue *
find_due (const SteadDueAnswer *answer,
          SteadDueKind          kind,
          gint64                water)
{
  for (guint i = 0; i < answer->dues->len; i++)
    {
      const SteadDue *due = answer->dues->pdata[i];

      if (due->kind == kind && due->target == STEAD_TARGET_WATER && due->id == water)
        return due;
    }
  return NULL;
}

static SteadDueAnswer *
dues (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  SteadDueAnswer *answer = stead_due_answer_new (farm->store, &error);

  g_assert_no_error (error);
  return answer;
}

static void
test_dues (Farm          *farm,
           gconstpointer  data)
{
  g_autoptr(SteadDueAnswer) none = NULL, fresh = NULL, late = NULL, bad = NULL;
  const SteadDue *due;
  gint64 water = make_water (farm, STEAD_WATER_TANK, 3000);

  none = dues (farm);
  g_assert_nonnull (find_due (none, STEAD_DUE_TASK, water));
  make_test (farm, water, SHEET (.ago = 8, .ph = 7.5));
  late = dues (farm);
  due = find_due (late, STEAD_DUE_TASK, water);
  g_assert_nonnull (due);
  NUMBERS_ARE (due->detail, 8);
  make_test (farm, water, SHEET (.ago = 6, .ph = 7.5));
  fresh = dues (farm);
  g_assert_null (find_due (fresh, STEAD_DUE_TASK, water));
  g_assert_null (find_due (fresh, STEAD_DUE_WARNING, water));
  make_test (farm, water, SHEET (.ph = 9.4));
  bad = dues (farm);
  due = find_due (bad, STEAD_DUE_WARNING, water);
  g_assert_nonnull (due);
  g_assert_cmpstr (due->detail, ==, stead_water_action_steps (STEAD_WATER_ACTION_PH_HIGH));
  g_assert_nonnull (find_due (bad, STEAD_DUE_DONE, water));
  g_assert_null (find_due (bad, STEAD_DUE_TASK, water));
}

/* --- units ------------------------------------------------------------------------------- */

/* By atomic weights N 14.007, O 15.999, H 1.008: NO3 / N = 62.004 / 14.007 = 4.427, NO2 / N = 3.285,
 * N / NH3 = 0.8225; a German degree is 17.85 mg/L of CaCO3 (from memory). */
static const struct { SteadReading reading; const char *text; double value, kept; } unit_rows[] = {
  { STEAD_READING_TEMPERATURE, "°F", 77, 25 }, { STEAD_READING_TEMPERATURE, "C", 25, 25 },
  { STEAD_READING_NITRATE, "NO3-N", 10, 44.27 }, { STEAD_READING_NITRATE, "mg/L as NO₃", 10, 10 },
  { STEAD_READING_NITRITE, "mg/L N", 1, 3.285 }, { STEAD_READING_NITRITE, "ppm", 1, 1 },
  { STEAD_READING_TAN, "mg/L", 1, 1 }, { STEAD_READING_TAN, "NH3", 1, 0.8225 },
  { STEAD_READING_ALKALINITY, "dKH", 4, 71.4 }, { STEAD_READING_HARDNESS, "°dH", 1, 17.85 },
  { STEAD_READING_CONDUCTIVITY, "mS/cm", 1.2, 1200 }, { STEAD_READING_CONDUCTIVITY, "µS/cm", 850, 850 },
};

static void
test_units (Farm          *farm,
            gconstpointer  data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (unit_rows); i++)
    {
      const SteadReadingUnit *unit = stead_reading_unit_from_text (unit_rows[i].reading, unit_rows[i].text);
      double kept;

      g_test_message ("%s", unit_rows[i].text);
      g_assert_nonnull (unit);
      kept = stead_reading_from_unit (unit_rows[i].value, unit_rows[i].reading, unit);
      g_assert_cmpfloat_with_epsilon (kept, unit_rows[i].kept, 0.002 * unit_rows[i].kept);
      g_assert_cmpfloat_with_epsilon (stead_reading_to_unit (kept, unit_rows[i].reading, unit), unit_rows[i].value, 1e-9);
      g_assert_true (stead_reading_unit_by_id (unit_rows[i].reading, unit->id, STEAD_UNITS_US) == unit);
    }
  g_assert_null (stead_reading_unit_from_text (STEAD_READING_OXYGEN, "°F"));
  g_assert_null (stead_reading_unit_from_text (STEAD_READING_PH, "mg/L"));
  g_assert_null (stead_reading_unit_default (STEAD_READING_PH, STEAD_UNITS_US));
  g_assert_cmpstr (stead_reading_unit_by_id (STEAD_READING_TEMPERATURE, "nonsense", STEAD_UNITS_METRIC)->id, ==, "degC");
}

#define ADD(name, call) g_test_add ("/answer/water/" name, Farm, NULL, farm_set_up, call, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("sharers", test_sharers);
  ADD ("hydroponic", test_hydroponic);
  ADD ("worked-out", test_worked_out);
  ADD ("elevation", test_elevation);
  ADD ("gaps", test_gaps);
  ADD ("chloride", test_chloride);
  ADD ("sentence", test_sentence);
  ADD ("typing", test_typing);
  ADD ("never-safe", test_never_safe);
  ADD ("due", test_due);
  ADD ("what-was-done", test_done);
  ADD ("trend", test_trend);
  ADD ("no-trend", test_no_trend);
  ADD ("series", test_series);
  ADD ("budget", test_budget);
  ADD ("volume-why", test_volume_why);
  ADD ("dose-base", test_dose_base);
  ADD ("dose-salt", test_dose_salt);
  ADD ("dose-change", test_dose_change);
  ADD ("dues", test_dues);
  ADD ("units", test_units);
  return g_test_run ();
}

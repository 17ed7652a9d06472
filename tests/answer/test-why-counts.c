/* test-why-counts.c - what is counted or weighed against a rule is worked out with numbers that are in the file. */
#include "config.h"

#include <math.h>
#include <sqlite3.h>
#include <string.h>

#include "answer/stead-instruments-answer.h"
#include "answer/stead-skill-answer.h"
#include "answer/stead-tank-text.h"
#include "answer/stead-trace-answer.h"
#include "store/stead-farm-repo.h"

#include "demo.h"
#include "farm.h"

/* --- reading the file and the words ------------------------------------------------------ */

typedef void (*EachFunc) (const Demo *demo, sqlite3_stmt *row);

/* How many rows there are. */
static guint
each (const Demo *demo,
      const char *sql,
      EachFunc    func)
{
  g_autofree char *path = g_build_filename (demo->folder, "demo.steading", NULL);
  sqlite3 *db = NULL;
  sqlite3_stmt *stmt = NULL;
  guint n = 0;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  for (; sqlite3_step (stmt) == SQLITE_ROW; n++)
    func (demo, stmt);
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  return n;
}

/* The numbers of @text, in their order, each with its sign before it: "24 − 1.5 = 22.5" is 24, -1.5, 22.5. */
static GArray *
numbers_in (const char *text)
{
  g_autoptr(GRegex) regex = g_regex_new ("(− |−)?([0-9][0-9,]*(?:\\.[0-9]+)?)", 0, 0, NULL);
  g_autoptr(GMatchInfo) match = NULL;
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (double));

  for (g_regex_match (regex, text, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *sign = g_match_info_fetch (match, 1), *digits = g_match_info_fetch (match, 2);
      g_auto(GStrv) parts = g_strsplit (digits, ",", -1);
      g_autofree char *plain = g_strjoinv ("", parts);
      double number = g_ascii_strtod (plain, NULL) * (sign[0] != '\0' ? -1 : 1);

      g_array_append_val (numbers, number);
    }
  return numbers;
}

static double
at (const GArray *numbers,
    guint         i)
{
  g_assert_cmpuint (i, <, numbers->len);
  return g_array_index (numbers, double, i);
}

/* --- where water boils --------------------------------------------------------------------- */

static void
set_farm (const Demo      *demo,
          double           elevation_m,
          SteadUnitSystem  units)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (demo->store, &error);

  g_assert_no_error (error);
  farm->elevation_m = elevation_m;
  farm->units = units;
  FARM_DO (demo, stead_farm_repo_set (demo->store, farm, &farm_error));
}

static char *
boiling (const Demo *demo)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadInstrumentsAnswer) answer = stead_instruments_answer_new (demo->store, &error);
  g_autoptr(GPtrArray) whys = NULL;

  g_assert_no_error (error);
  whys = stead_instruments_answer_whys (answer);
  return g_strdup (farm_find_why (whys, "Where water boils here")->worked);
}

/* 203 °F at 5,000 ft, which is 1,524 m: tests/reference/food-clean.csv, fs-therm-006 and fx-clean-01. */
static void
test_boiling (Demo          *demo,
              gconstpointer  data)
{
  g_autofree char *us = NULL, *metric = NULL;

  set_farm (demo, 1524, STEAD_UNITS_US);
  us = boiling (demo);
  g_assert_cmpstr (us, ==, "212 °F − 1.8 °F × 5,000 ft ÷ 1,000 ft = 203 °F");
  set_farm (demo, 1524, STEAD_UNITS_METRIC);
  metric = boiling (demo);
  g_assert_true (g_str_has_prefix (metric, "1,524 m ÷ 0.3048 = 5,000 ft\n"));
  g_assert_true (g_str_has_suffix (metric, "= 95 °C (203 °F)"));
}

/* What each showed less what it must show is what is said. */
static void
test_off (Demo          *demo,
          gconstpointer  data)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadInstrumentsAnswer) answer = stead_instruments_answer_new (demo->store, &error);
  g_autoptr(GPtrArray) whys = NULL;
  g_auto(GStrv) lines = NULL;

  g_assert_no_error (error);
  whys = stead_instruments_answer_whys (answer);
  lines = g_strsplit (farm_find_why (whys, "How far off a thermometer is")->worked, "\n", -1);
  g_assert_nonnull (lines[0]);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      const char *sum = strstr (lines[i], ": ");
      g_autoptr(GArray) numbers = NULL;

      g_assert_nonnull (sum);
      numbers = numbers_in (sum);
      g_assert_cmpuint (numbers->len, ==, 3);
      g_assert_true (at (numbers, 1) == -32 || at (numbers, 1) < -190);   /* melting ice, or water that boils */
      g_assert_cmpfloat_with_epsilon (at (numbers, 0) + at (numbers, 1), at (numbers, 2), 1e-9);
    }
}

/* --- skills ----------------------------------------------------------------------------------- */

/* Columns: a person, skills tried, skills that go alone at least once. */
static void
check_skills (const Demo   *demo,
              sqlite3_stmt *row)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadSkillAnswer) answer = stead_skill_answer_new (demo->store, sqlite3_column_int64 (row, 0), &error);
  g_autoptr(GPtrArray) whys = NULL;
  g_auto(GStrv) lines = NULL;
  double wanted[] = { sqlite3_column_double (row, 1), sqlite3_column_double (row, 2) };

  g_assert_no_error (error);
  whys = stead_skill_answer_whys (answer);
  lines = g_strsplit (farm_find_why (whys, "How the skills are counted")->worked, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, wanted[1] > 0 ? 2 : 1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autoptr(GArray) numbers = numbers_in (lines[i]);
      double sum = 0;

      for (guint k = 0; k + 1 < numbers->len; k++)
        sum += at (numbers, k);
      g_assert_cmpfloat (sum, ==, wanted[i]);
      g_assert_cmpfloat (at (numbers, numbers->len - 1), ==, wanted[i]);
    }
}

static void
test_skills (Demo          *demo,
             gconstpointer  data)
{
  g_assert_cmpuint (each (demo, "SELECT person_id, COUNT(*), SUM(best >= 3) FROM (SELECT person_id, skill_id, MAX(level) AS best "
                          "FROM skill_try GROUP BY person_id, skill_id) GROUP BY person_id", check_skills), >, 1);
}

/* --- a lot ------------------------------------------------------------------------------------- */

/* Columns: a lot in pieces, its code, what the counts and moves of the file leave of it. */
static void
check_lot (const Demo   *demo,
           sqlite3_stmt *row)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadTraceAnswer) answer = stead_trace_answer_new (demo->store, sqlite3_column_int64 (row, 0), &error);
  g_autofree char *head = g_strdup_printf (", %s: ", (const char *) sqlite3_column_text (row, 1));
  g_autoptr(GPtrArray) whys = NULL;
  g_autoptr(GArray) numbers = NULL;
  g_auto(GStrv) lines = NULL;
  const char *sum = NULL;
  double left = 0;

  g_assert_no_error (error);
  whys = stead_trace_answer_whys (answer);
  lines = g_strsplit (farm_find_why (whys, "What is left of each lot")->worked, "\n", -1);
  for (guint i = 0; lines[i] != NULL && sum == NULL; i++)
    sum = strstr (lines[i], head);
  g_assert_nonnull (sum);
  numbers = numbers_in (sum + strlen (head));
  for (guint i = 0; i + 1 < numbers->len; i++)
    left += at (numbers, i);
  g_assert_cmpfloat_with_epsilon (left, at (numbers, numbers->len - 1), 1e-9);
  g_assert_cmpfloat_with_epsilon (left, sqlite3_column_double (row, 2), 1e-9);
}

/* What the movements of the file leave, summed by SQL. */
static void
test_lots (Demo          *demo,
           gconstpointer  data)
{
  g_assert_cmpuint (each (demo, "SELECT l.id, l.code, SUM(m.quantity_base) FROM lot l JOIN item i ON i.id = l.item_id "
                          "JOIN movement m ON m.lot_id = l.id WHERE i.unit = 'ea' GROUP BY l.id", check_lot), >, 50);
}

/* --- a tank ------------------------------------------------------------------------------------ */

static void
assert_worked (const SteadTank *tank,
               SteadUnitSystem  units,
               const char      *title,
               const char      *worked)
{
  g_autoptr(GPtrArray) whys = stead_tank_text_whys (tank, units);

  g_assert_cmpstr (farm_find_why (whys, title)->worked, ==, worked);
}

/* 30 × 12 × 20 cm hold 7.2 L and 20 cm across by 20 cm hold 6.28 L: MSD Veterinary Manual, formulae to calculate tank volumes
 * (read).  7,800 L at 100 L a minute take 78 minutes: tests/reference/fish.csv, hu-137 (read).  The cone and the feet
 * by hand (derived): π × 1 × (1 + 0.6 ÷ 3) m³; π × 25 × 3 ft³ of 7.4805 gal. */
static void
test_tank (void)
{
  const SteadTank box = { .shape = STEAD_TANK_BOX, .length_m = 0.30, .width_m = 0.12, .depth_m = 0.20, .flow_l_min = NAN };
  const SteadTank round = { .shape = STEAD_TANK_ROUND, .diameter_m = 0.20, .depth_m = 0.20, .flow_l_min = NAN };
  const SteadTank cone = { .shape = STEAD_TANK_CONE, .diameter_m = 2, .depth_m = 1, .cone_m = 0.6, .flow_l_min = NAN };
  const SteadTank feet = { .shape = STEAD_TANK_ROUND, .diameter_m = 3.048, .depth_m = 0.9144, .flow_l_min = NAN };
  const SteadTank known = { .shape = STEAD_TANK_OTHER, .volume_l = 7800, .flow_l_min = 100 };
  const SteadTank empty = { .shape = STEAD_TANK_ROUND, .diameter_m = NAN, .depth_m = 1, .flow_l_min = NAN };

  assert_worked (&box, STEAD_UNITS_METRIC, "What the tank holds", "0.3 m × 0.12 m × 0.2 m × 1,000 L = 7.2 L");
  assert_worked (&round, STEAD_UNITS_METRIC, "What the tank holds", "π × (0.2 m ÷ 2)² × 0.2 m × 1,000 L = 6.28 L");
  assert_worked (&cone, STEAD_UNITS_METRIC, "What the tank holds", "π × (2 m ÷ 2)² × (1 m + 0.6 m ÷ 3) × 1,000 L = 3,770 L");
  assert_worked (&feet, STEAD_UNITS_US, "What the tank holds", "π × (10 ft ÷ 2)² × 3 ft × 7.48 gal = 1,763 gal");
  assert_worked (&known, STEAD_UNITS_METRIC, "How fast the water is changed", "7,800 L ÷ 100 L = 78 min");
  assert_worked (&empty, STEAD_UNITS_METRIC, "What the tank holds", "Enter the measures, and what it holds is shown here.");
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/why-counts/boiling", Demo, NULL, demo_set_up, test_boiling, demo_tear_down);
  g_test_add ("/answer/why-counts/off", Demo, NULL, demo_set_up, test_off, demo_tear_down);
  g_test_add ("/answer/why-counts/skills", Demo, NULL, demo_set_up, test_skills, demo_tear_down);
  g_test_add ("/answer/why-counts/lots", Demo, NULL, demo_set_up, test_lots, demo_tear_down);
  g_test_add_func ("/answer/why-counts/tank", test_tank);
  return g_test_run ();
}

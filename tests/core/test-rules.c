/* The tables of rules, and what is decided by them: tools by age, codes of standards. */
#include "core/stead-core-error.h"
#include "core/stead-record.h"
#include "core/stead-work-rules.h"

#include <math.h>
#include <string.h>

/* The shipped tables, read from $STEAD_DATA/rules. */
static SteadLimitTable *
rule_tables (void)
{
  static const char * const names[] = { "build", "work", "records" };
  SteadLimitTable *table = stead_limit_table_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *file = g_strconcat (names[i], ".csv", NULL);
      g_autofree char *path = g_build_filename (g_getenv ("STEAD_DATA"), "rules", file, NULL);
      g_autoptr(GBytes) bytes = NULL;
      g_autoptr(GError) error = NULL;
      char *text = NULL;
      gsize length = 0;

      g_assert_true (g_file_get_contents (path, &text, &length, &error));
      g_assert_no_error (error);
      bytes = g_bytes_new_take (text, length);
      g_assert_true (stead_limit_table_add_csv (table, names[i], bytes, &error));
      g_assert_no_error (error);
    }
  return table;
}

/* No row lacks a citation; what has none says so in the agreed words. */
static void
test_citations (void)
{
  static const char * const statuses[] = { "read", "derived", "memory", "practice", NULL };
  static const char * const processes[] = { "space", "fence", "fill", "lumber", "roof", "hoop", "permit", "dig", "age",
                                            "hours", "value", "record", "event", "privacy", "standards", NULL };
  static const char * const hazards[] = { "crowding", "escape", "buried_line", "injury", "law", "false_record",
                                          "privacy", "planning", NULL };
  g_autoptr(SteadLimitTable) table = rule_tables ();

  g_assert_cmpuint (stead_limit_table_get_n_rows (table), >, 200);
  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *rule = stead_limit_table_get_row (table, i);

      g_test_message ("%s", rule->id);
      g_assert_cmpuint (strlen (rule->source), >, 5);
      g_assert_true (g_strv_contains (statuses, rule->status));
      g_assert_true (g_strv_contains (processes, rule->process));
      g_assert_true (g_strv_contains (hazards, rule->hazard));
      g_assert_cmpint (g_str_equal (rule->source, "common practice, no source"), ==,
                       g_str_equal (rule->status, "practice"));
      g_assert_true (g_str_equal (rule->version, "undated")
                     || (strlen (rule->version) == 4 && g_ascii_isdigit (*rule->version)));
      /* Words that a limit is named by say which way it points. */
      if (g_str_has_prefix (rule->measure, "min_") && !g_str_has_suffix (rule->id, "-high"))
        g_assert_cmpint (rule->direction, ==, STEAD_LIMIT_AT_LEAST);
      if (g_str_has_prefix (rule->measure, "max_"))
        g_assert_cmpint (rule->direction, ==, STEAD_LIMIT_AT_MOST);
    }
}

/* The end of the range that @rule begins; NULL if it begins none. */
static const SteadLimit *
other_end (const SteadLimitTable *table,
           const SteadLimit      *rule)
{
  g_autoptr(GString) id = g_string_new (rule->id);

  if (!g_str_has_suffix (id->str, "-low"))
    return NULL;
  g_string_truncate (id, id->len - strlen ("-low"));
  g_string_append (id, "-high");
  return stead_limit_table_by_id (table, id->str);
}

/* A range rises, and the program's own figure lies in it. */
static void
test_ranges (void)
{
  g_autoptr(SteadLimitTable) table = rule_tables ();
  guint ranges = 0, own = 0;

  for (guint i = 0; i < stead_limit_table_get_n_rows (table); i++)
    {
      const SteadLimit *low = stead_limit_table_get_row (table, i);
      const SteadLimit *high = other_end (table, low);
      g_autofree char *id = g_strndup (low->id, strlen (low->id) - MIN (strlen (low->id), strlen ("-low")));
      const SteadLimit *figure = stead_limit_table_by_id (table, id);

      if (high == NULL)
        continue;
      g_test_message ("%s", low->id);
      g_assert_cmpfloat (low->value, <, high->value);
      g_assert_cmpstr (low->measure, ==, high->measure);
      g_assert_cmpstr (low->when, ==, high->when);
      ranges++;
      if (figure == NULL)
        continue;
      g_assert_cmpfloat (figure->value, >=, low->value);
      g_assert_cmpfloat (figure->value, <=, high->value);
      own++;
    }
  g_assert_cmpuint (ranges, >=, 25);
  g_assert_cmpuint (own, >=, 15);
}

static SteadToolFlag
flag_of (const SteadLimitTable *table,
         SteadWorkKind          kind,
         const char            *task,
         double                 age_y,
         double                 size,
         gboolean               exemption)
{
  SteadToolUse use = { kind, task, age_y, size, size, exemption };
  SteadToolFlag flag = 99;
  g_autoptr(GError) error = NULL;

  g_assert_true (stead_tool_judge (table, &use, NULL, &flag, &error));
  g_assert_no_error (error);
  return flag;
}

/* 29 CFR 570.71 and the list of hazardous occupations (read). */
static void
test_tools (void)
{
  g_autoptr(SteadLimitTable) table = rule_tables ();
  SteadToolUse saw = { STEAD_WORK_BUILDING, "power_circular_saw", 17, NAN, NAN, FALSE };
  const SteadLimit *row = NULL;
  SteadToolFlag flag;

  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "power_post_hole_digger", 15, NAN, FALSE), ==, STEAD_TOOL_BLOCK);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "power_post_hole_digger", 15, NAN, TRUE), ==,
                   STEAD_TOOL_ALLOW_SUPERVISED);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "power_post_hole_digger", 16, NAN, FALSE), ==, STEAD_TOOL_ALLOW);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "set_posts_by_hand", 13, NAN, FALSE), ==,
                   STEAD_TOOL_ALLOW_SUPERVISED);
  /* Over 20 ft, over 20 hp; what is not said is taken at its worst. */
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "ladder_or_scaffold", 15, 20, FALSE), ==,
                   STEAD_TOOL_ALLOW_SUPERVISED);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "ladder_or_scaffold", 15, 21, FALSE), ==, STEAD_TOOL_BLOCK);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "ladder_or_scaffold", 15, NAN, FALSE), ==, STEAD_TOOL_BLOCK);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "tractor", 15, 20, FALSE), ==, STEAD_TOOL_ALLOW_SUPERVISED);
  g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, "tractor", 15, NAN, FALSE), ==, STEAD_TOOL_BLOCK);
  /* Building: the stricter list, which lets learners in from 16 on. */
  g_assert_cmpint (flag_of (table, STEAD_WORK_BUILDING, "power_circular_saw", 15, NAN, TRUE), ==, STEAD_TOOL_BLOCK);
  g_assert_cmpint (flag_of (table, STEAD_WORK_BUILDING, "power_circular_saw", 16, NAN, TRUE), ==,
                   STEAD_TOOL_ALLOW_SUPERVISED);
  g_assert_cmpint (flag_of (table, STEAD_WORK_BUILDING, "power_circular_saw", 18, NAN, FALSE), ==, STEAD_TOOL_ALLOW);
  g_assert_cmpint (flag_of (table, STEAD_WORK_BUILDING, "trencher", 15, NAN, FALSE), ==, STEAD_TOOL_BLOCK);
  g_assert_true (stead_tool_judge (table, &saw, &row, &flag, NULL));
  g_assert_cmpint (flag, ==, STEAD_TOOL_BLOCK);
  g_assert_cmpfloat (row->value, ==, 18);
}

/* Nobody is freer for being younger, nor for being in building instead of farm work. */
static void
test_tools_monotone (void)
{
  static const char * const tasks[] = { "power_circular_saw", "tractor", "ladder_or_scaffold", "trencher",
                                        "hand_post_hole_digger", "pen_with_breeding_bull" };
  g_autoptr(SteadLimitTable) table = rule_tables ();

  for (gsize t = 0; t < G_N_ELEMENTS (tasks); t++)
    for (int exemption = 0; exemption < 2; exemption++)
      for (int age = 1; age < 25; age++)
        {
          SteadToolFlag here = flag_of (table, STEAD_WORK_FARM, tasks[t], age, NAN, exemption);

          g_assert_cmpint (flag_of (table, STEAD_WORK_FARM, tasks[t], age - 1, NAN, exemption), >=, here);
          g_assert_cmpint (flag_of (table, STEAD_WORK_BUILDING, tasks[t], age, NAN, exemption), >=, here);
        }
}

static void
test_tools_refused (void)
{
  g_autoptr(SteadLimitTable) table = rule_tables ();
  const SteadToolUse bad[] = {
    { STEAD_WORK_FARM, "rocket", 15, NAN, NAN, FALSE }, { STEAD_WORK_NON_FARM, "trencher", 15, NAN, NAN, FALSE },
    { STEAD_WORK_FARM, "trencher", NAN, NAN, NAN, FALSE }, { STEAD_WORK_FARM, "trencher", -1, NAN, NAN, FALSE },
    { STEAD_WORK_FARM, "tractor", 15, NAN, -1, FALSE }, { STEAD_WORK_FARM, "", 15, NAN, NAN, FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr(GError) error = NULL;
      SteadToolFlag flag = 99;

      g_assert_false (stead_tool_judge (table, &bad[i], NULL, &flag, &error));
      g_assert_nonnull (error);
      g_assert_cmpint (flag, ==, 99);
    }
}

/* A teacher-test correlation table and the edition of 2009, p. 29 (read). */
static void
test_standards (void)
{
  static const char * const wrong[] = { "", "AS", "A.01", "ASDF.01", "AS.9.1", "AS.01.", "AS.01.02.03", "as.01",
                                        "AS.01.02.03.d", "AS.01.02.03.a.", "AS.01.02.a", "AS.01 ", "AS.0a",
                                        "AS.01.02.03.04.a" };

  g_assert_cmpint (stead_standard_level ("PS.02"), ==, STEAD_STANDARD_STANDARD);
  g_assert_cmpint (stead_standard_level ("CRP.12"), ==, STEAD_STANDARD_STANDARD);
  g_assert_cmpint (stead_standard_level ("PS.02.01"), ==, STEAD_STANDARD_INDICATOR);
  g_assert_cmpint (stead_standard_level ("AS.04.01.02.a"), ==, STEAD_STANDARD_MEASUREMENT);
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    g_assert_cmpint (stead_standard_level (wrong[i]), ==, STEAD_STANDARD_NONE);
}

/* State rules of two events (read): 35 and 65; 400 for the team and 4 times 250. */
static void
test_points (void)
{
  const double plan[] = { 35, 65 };
  const double team[] = { 400 };
  const double odd[] = { 400, NAN };

  g_assert_cmpfloat (stead_event_points (plan, 2, 0, 0), ==, 100);
  g_assert_cmpfloat (stead_event_points (team, 1, 4, 250), ==, 1400);
  g_assert_true (isnan (stead_event_points (odd, 2, 0, 0)));
  g_assert_true (isnan (stead_event_points (team, 1, -1, 250)));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/rules/citations", test_citations);
  g_test_add_func ("/core/rules/ranges", test_ranges);
  g_test_add_func ("/core/rules/tools", test_tools);
  g_test_add_func ("/core/rules/tools-monotone", test_tools_monotone);
  g_test_add_func ("/core/rules/tools-refused", test_tools_refused);
  g_test_add_func ("/core/rules/standards", test_standards);
  g_test_add_func ("/core/rules/points", test_points);
  return g_test_run ();
}

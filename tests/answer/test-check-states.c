/* test-check-states.c - how each line of a checklist stands, what stops a food, and a list made anew.
 *
 * Limits: FDA Food Code 2022, §3-401.11(A)(2): eggs broken ahead, 155 °F for 17 seconds, 158 °F at once;
 * §3-501.16(A)(1): 135 °F; §3-501.14(A): 70 °F within 2 h; §3-801.11: no raw eggs broken ahead for those at risk.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "answer/stead-check-answer.h"
#include "answer/stead-check-list.h"
#include "farm.h"

#define EIGHT(farm) ((gint64) (farm)->today * 86400 + 8 * 3600)

/* Breakfast bowls of eggs broken ahead, held hot, for whom @eaters says; and a sauce that is cooled. */
static SteadCheckPlanAnswer *
plan_of (Farm                     *farm,
         const SteadCheckAnswered *answers,
         gsize                     n,
         SteadCheckOrder          *order)
{
  g_autoptr(GError) error = NULL;
  SteadCheckPlanAnswer *plan;

  *order = (SteadCheckOrder) { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce",
                               .day = farm->today, .answers = answers, .n_answers = n };
  plan = stead_check_plan_answer_new (farm->store, order, &error);
  g_assert_no_error (error);
  return plan;
}

static const SteadCheckAnswered at_risk[] = {
  { STEAD_CHECK_KEY_EATERS, NULL, "hsp" },
  { STEAD_CHECK_KEY_COOKED, "breakfast bowls", "raw_egg" }, { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" },
  { STEAD_CHECK_KEY_EGG_USE, "breakfast bowls", "pooled_or_held" },
  { STEAD_CHECK_KEY_PASTEURIZED, "breakfast bowls", "no" },
  { STEAD_CHECK_KEY_COOKED, "tomato sauce", "plant_food" }, { STEAD_CHECK_KEY_HELD, "tomato sauce", "cold" },
  { STEAD_CHECK_KEY_AHEAD, "tomato sauce", "reheated" },
};

static gint64
keep (Farm                 *farm,
      SteadCheckPlanAnswer *plan,
      SteadCheckOrder      *order)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckList) list = stead_check_list_from_plan (farm->store, plan, order, NULL, &error);

  g_assert_no_error (error);
  FARM_DO (farm, stead_check_repo_save (farm->store, list, &farm_error));
  return list->id;
}

/* The list for nobody at risk. */
static gint64
keep_list (Farm *farm)
{
  SteadCheckOrder order;
  g_autoptr(SteadCheckPlanAnswer) plan = plan_of (farm, at_risk + 1, G_N_ELEMENTS (at_risk) - 1, &order);

  return keep (farm, plan, &order);
}

static SteadCheckAnswer *
ask (Farm   *farm,
     gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckAnswer *answer = stead_check_answer_new (farm->store, id, &error);

  g_assert_no_error (error);
  return answer;
}

static const SteadCheckedLine *
line_of (const SteadCheckAnswer *answer,
         const char             *topic)
{
  for (guint i = 0; i < answer->lines->len; i++)
    if (g_str_equal (((const SteadCheckedLine *) answer->lines->pdata[i])->line->topic, topic))
      return answer->lines->pdata[i];
  g_error ("no line of %s", topic);
}

static gint64
line_id (Farm       *farm,
         gint64      id,
         const char *topic)
{
  g_autoptr(SteadCheckAnswer) answer = ask (farm, id);

  return line_of (answer, topic)->line->id;
}

static gint64
read_f (Farm   *farm,
        gint64  line,
        gint64  pot,
        gint64  at,
        double  temp_f)
{
  SteadShown shown = { .line_id = line, .pot_id = pot, .at = at, .value = (temp_f - 32) / 1.8, .scale = 'F', .held_s = NAN };

  FARM_DO (farm, stead_shown_repo_add (farm->store, &shown, &farm_error));
  g_free (shown.kind);
  return shown.id;
}

static void
do_about (Farm       *farm,
          gint64      reading,
          gint64      at,
          const char *text)
{
  SteadDone act = { .reading_id = reading, .at = at, .text = (char *) text };

  FARM_DO (farm, stead_done_repo_add (farm->store, &act, &farm_error));
}

static void
assert_state (Farm              *farm,
              gint64             id,
              const char        *topic,
              SteadCheckedState  state,
              const char        *words)
{
  g_autoptr(SteadCheckAnswer) answer = ask (farm, id);
  const SteadCheckedLine *line = line_of (answer, topic);

  g_assert_cmpint (line->state, ==, state);
  if (farm_in_english ())
    g_assert_cmpstr (line->state_text, ==, words);
}

/* --- lines ------------------------------------------------------------------------------------- */

static void
test_lines (Farm          *farm,
            gconstpointer  data)
{
  gint64 id = keep_list (farm), cook = line_id (farm, id, "cook"), hot = line_id (farm, id, "hold_hot"), low;

  assert_state (farm, id, "cook", STEAD_CHECKED_OPEN, "Not read yet.");
  read_f (farm, cook, 0, EIGHT (farm), 155);     /* hot enough, but nobody timed it */
  assert_state (farm, id, "cook", STEAD_CHECKED_UNSURE, "Read, but neither met nor missed: measure again.");
  read_f (farm, cook, 0, EIGHT (farm) + 60, 158);
  assert_state (farm, id, "cook", STEAD_CHECKED_MET, "Met at 8:01 AM.");
  low = read_f (farm, hot, 0, EIGHT (farm) + 600, 120);
  assert_state (farm, id, "hold_hot", STEAD_CHECKED_FAILED, "Did not meet its limit, and nothing says what was done.");
  do_about (farm, low, EIGHT (farm) + 660, "Heated to 165 °F.");
  assert_state (farm, id, "hold_hot", STEAD_CHECKED_HANDLED, "Did not meet its limit; something was done. Read it again.");
  FARM_DO (farm, stead_check_repo_leave_out (farm->store, line_id (farm, id, "cool"), "None was left.", &farm_error));
  assert_state (farm, id, "cool", STEAD_CHECKED_LEFT_OUT, "Left out: None was left.");
}

/* What is held is read again after the time that its row names; at noon of the day the next one is late, on
 * the day after nothing is due any more. */
static void
test_again (Farm          *farm,
            gconstpointer  data)
{
  gint64 id = keep_list (farm);
  g_autoptr(SteadCheckAnswer) answer = NULL;
  const SteadCheckedLine *hot;

  read_f (farm, line_id (farm, id, "hold_hot"), 0, EIGHT (farm), 141);
  answer = ask (farm, id);
  hot = line_of (answer, "hold_hot");
  g_assert_cmpfloat (hot->line->every_s, ==, 2 * 3600);    /* data/limits: every two hours leaves time to act */
  g_assert_cmpint (hot->next_at, ==, EIGHT (farm) + 2 * 3600);
  assert_state (farm, id, "hold_hot", STEAD_CHECKED_AGAIN, "Due again since 10:00 AM.");
  stead_store_set_today (farm->store, farm->today + 1);
  assert_state (farm, id, "hold_hot", STEAD_CHECKED_MET, "Met at 8:00 AM.");
}

/* One pot is read, the other is not; then the first is late, and something is done about it. */
static void
test_pots (Farm          *farm,
           gconstpointer  data)
{
  gint64 id = keep_list (farm), cool = line_id (farm, id, "cool"), one = 0, other = 0, late;

  FARM_DO (farm, stead_check_repo_save_pot (farm->store, cool, &one, "Large pot", NULL, NAN, &farm_error)
                 && stead_check_repo_save_pot (farm->store, cool, &other, "Small pot", NULL, NAN, &farm_error));
  read_f (farm, cool, one, EIGHT (farm), 135);
  assert_state (farm, id, "cool", STEAD_CHECKED_OPEN, "Not read yet.");
  FARM_DO (farm, stead_check_repo_delete_pot (farm->store, other, &farm_error));
  read_f (farm, cool, one, EIGHT (farm) + 3600, 100);
  assert_state (farm, id, "cool", STEAD_CHECKED_UNSURE, "Cooling: not all marks are reached yet.");
  late = read_f (farm, cool, one, EIGHT (farm) + 7260, 80);
  assert_state (farm, id, "cool", STEAD_CHECKED_FAILED, "Did not meet its limit, and nothing says what was done.");
  do_about (farm, late, EIGHT (farm) + 7300, "Thrown away.");
  assert_state (farm, id, "cool", STEAD_CHECKED_HANDLED, "Did not meet its limit; something was done. Read it again.");
}

/* A newer program's line is shown by its own word, with its source, and without what only that program knows. */
static void
test_unknown (Farm          *farm,
              gconstpointer  data)
{
  g_autoptr(SteadCheckList) list = stead_check_list_new ();
  SteadListLine *line = stead_check_list_add_line (list, -1, "hum_to_it");
  SteadLimit row = { .id = "hum-1", .process = "hum", .subject = "", .when = "", .measure = "total_time",
                     .direction = STEAD_LIMIT_AT_LEAST, .value = 20, .unit = "s", .time_s = NAN, .hazard = "pathogen_growth",
                     .source = "Invented code", .where = "§1", .version = "2099", .status = "read", .note = "" };
  g_autoptr(SteadCheckAnswer) answer = NULL;

  list->name = "Later";
  list->day = farm->today;
  list->edition = "2022";
  stead_check_list_add_food (list, "Soup");
  line->stage = "cook";
  line->tool = "probe";
  line->often = "portion";
  line->who = "cook";
  line->measure = STEAD_MEASURE_DONE;
  stead_check_list_add_row (list, line, &row);
  FARM_DO (farm, stead_check_repo_save (farm->store, list, &farm_error));
  answer = ask (farm, list->id);
  g_assert_false (line_of (answer, "hum_to_it")->known);
  g_assert_cmpstr (line_of (answer, "hum_to_it")->text, ==, "hum_to_it");
  g_assert_nonnull (strstr (line_of (answer, "hum_to_it")->source, "Invented code"));
  g_assert_null (line_of (answer, "hum_to_it")->limit);
}

/* --- stops -------------------------------------------------------------------------------------- */

static const SteadCheckStopRead *
only_stop (const SteadCheckAnswer *answer)
{
  g_assert_cmpuint (answer->stops->len, ==, 1);
  return answer->stops->pdata[0];
}

static void
test_stop (Farm          *farm,
           gconstpointer  data)
{
  SteadCheckOrder order;
  g_autoptr(SteadCheckPlanAnswer) plan = plan_of (farm, at_risk, G_N_ELEMENTS (at_risk), &order);
  gint64 id = keep (farm, plan, &order), stop_id;
  SteadPerson ada = { .name = (char *) "Ada Brown", .left_on = STEAD_DAY_NONE };
  g_autoptr(SteadCheckAnswer) open = ask (farm, id), settled = NULL, by_nobody = NULL;

  g_assert_cmpstr (only_stop (open)->food, ==, "breakfast bowls");
  g_assert_cmpstr (only_stop (open)->text, ==, ((SteadCheckStopped *) plan->stops->pdata[0])->text);
  g_assert_cmpstr (only_stop (open)->way, ==, ((SteadCheckStopped *) plan->stops->pdata[0])->way);
  g_assert_nonnull (strstr (only_stop (open)->source, "§3-801.11"));
  g_assert_null (only_stop (open)->settled);
  g_assert_false (open->can_sign);
  stop_id = only_stop (open)->stop->id;
  FARM_DO (farm, stead_person_repo_save (farm->store, &ada, &farm_error)
                 && stead_check_repo_settle_stop (farm->store, stop_id, "Bought pasteurized eggs.", ada.id, &farm_error));
  settled = ask (farm, id);
  g_assert_cmpstr (only_stop (settled)->settled, ==, "Bought pasteurized eggs. (Ada Brown)");
  FARM_DO (farm, stead_check_repo_settle_stop (farm->store, stop_id, "Bought pasteurized eggs.", 0, &farm_error));
  by_nobody = ask (farm, id);
  g_assert_cmpstr (only_stop (by_nobody)->settled, ==, "Bought pasteurized eggs.");
}

/* A plan made anew of the answers that a list keeps asks for the same, and stops the same. */
static void
test_anew (Farm          *farm,
           gconstpointer  data)
{
  SteadCheckOrder order;
  g_autoptr(SteadCheckPlanAnswer) plan = plan_of (farm, at_risk, G_N_ELEMENTS (at_risk), &order);
  g_autoptr(SteadCheckAnswer) kept = ask (farm, keep (farm, plan, &order));
  g_autoptr(GArray) answers = stead_check_list_answers (kept->list);
  g_autoptr(SteadCheckPlanAnswer) anew = NULL;

  g_assert_cmpuint (answers->len, >, 0);      /* those that were asked for */
  anew = plan_of (farm, (const SteadCheckAnswered *) (gpointer) answers->data, answers->len, &order);
  g_assert_cmpuint (anew->lines->len, ==, plan->lines->len);
  for (guint i = 0; i < plan->lines->len; i++)
    g_assert_cmpstr (((SteadCheckSaid *) anew->lines->pdata[i])->key, ==, ((SteadCheckSaid *) plan->lines->pdata[i])->key);
  g_assert_cmpuint (anew->stops->len, ==, 1);
}

/* --- heads --------------------------------------------------------------------------------------- */

/* Three foods name a list; of more, the rest is left out.  The edition is the one that was asked for. */
static void
test_names (Farm          *farm,
            gconstpointer  data)
{
  static const struct { const char *text; int edition; const char *name, *version; } rows[] = {
    { "bread", 0, "bread", "2022" }, { "bread, soup, salsa", 2017, "bread, soup, salsa", "2017" },
    { "bread, soup, salsa, tilapia", 2013, "bread, soup, salsa, …", "2013" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = rows[i].text, .day = STEAD_DAY_NONE,
                                      .edition = rows[i].edition };
      g_autoptr(GError) error = NULL;
      g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (farm->store, &order, &error);
      g_autoptr(SteadCheckList) list = NULL;

      g_assert_no_error (error);
      list = stead_check_list_from_plan (farm->store, plan, &order, NULL, &error);
      g_assert_no_error (error);
      g_assert_cmpstr (list->name, ==, rows[i].name);
      g_assert_cmpstr (list->edition, ==, rows[i].version);
      g_assert_cmpint (list->day, ==, farm->today);
    }
}

/* Where a local rule does not say where it stands, its source stands for it. */
static void
test_local_rows (void)
{
  SteadLocalLimit with = { .limit_id = (char *) "hold-hot-135", .value = 140, .source = (char *) "County", .where = (char *) "§9",
                           .time_s = NAN };
  SteadLocalLimit without = { .limit_id = (char *) "hold-cold-41", .value = 40, .source = (char *) "County", .time_s = NAN };
  g_autoptr(GPtrArray) limits = g_ptr_array_new ();
  g_autoptr(GArray) rows = NULL, none = stead_check_local_rows (NULL);

  g_assert_cmpuint (none->len, ==, 0);
  g_ptr_array_add (limits, &with);
  g_ptr_array_add (limits, &without);
  rows = stead_check_local_rows (limits);
  g_assert_cmpuint (rows->len, ==, 2);
  g_assert_cmpstr (g_array_index (rows, SteadLimitLocal, 0).where, ==, "§9");
  g_assert_cmpstr (g_array_index (rows, SteadLimitLocal, 1).where, ==, "County");
}

#define ADD(name, test) g_test_add ("/answer/check-states/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("lines", test_lines);
  ADD ("again", test_again);
  ADD ("pots", test_pots);
  ADD ("unknown", test_unknown);
  ADD ("stop", test_stop);
  ADD ("anew", test_anew);
  ADD ("names", test_names);
  g_test_add_func ("/answer/check-states/local-rows", test_local_rows);
  return g_test_run ();
}

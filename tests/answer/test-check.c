/* test-check.c - a plan kept as a list, what was read of it, the days, Today and the recall drill. */
#include "config.h"

#include <math.h>

#include "answer/stead-check-answer.h"
#include "answer/stead-check-days-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-recall-answer.h"
#include "farm.h"
#include "store/stead-place-repo.h"

#define TODAY (stead_day_new (2026, 3, 3))

#define EIGHT ((gint64) TODAY * 86400 + 8 * 3600)

static SteadStore *
new_store (void)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_create_memory ("Ember Lane", &error);
  g_autoptr(SteadPerson) person = g_new0 (SteadPerson, 1);

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  person->name = g_strdup ("Ada Brown");
  person->role = STEAD_PERSON_STUDENT;
  person->left_on = STEAD_DAY_NONE;
  g_assert_true (stead_store_begin (store, "person", &error));
  g_assert_true (stead_person_repo_save (store, person, &error));
  g_assert_true (stead_store_commit (store, &error));
  return store;
}

#define DO(store, call) \
  G_STMT_START { \
    g_autoptr(GError) do_error = NULL; \
    GError **err = &do_error; \
    g_assert_true (stead_store_begin (store, #call, err)); \
    g_assert_true (call); \
    g_assert_no_error (do_error); \
    g_assert_true (stead_store_commit (store, err)); \
  } G_STMT_END

/* Breakfast bowls with eggs broken ahead, held hot. */
static gint64
keep_list (SteadStore *store)
{
  const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_COOKED, "breakfast bowls", "raw_egg" }, { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" },
    { STEAD_CHECK_KEY_EGG_USE, "breakfast bowls", "pooled_or_held" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls", .day = TODAY,
                                  .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, &error);
  g_autoptr(SteadCheckList) list = NULL;

  g_assert_no_error (error);
  list = stead_check_list_from_plan (store, plan, &order, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->lines->len, ==, plan->plan->lines->len);
  DO (store, stead_check_repo_save (store, list, err));
  return list->id;
}

static SteadCheckAnswer *
answer_of (SteadStore *store,
           gint64      id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckAnswer *answer = stead_check_answer_new (store, id, &error);

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
  g_assert_not_reached ();
}

static gint64
read_f (SteadStore *store,
        gint64      line_id,
        gint64      at,
        double      temp_f,
        double      held_s)
{
  SteadShown shown = { .line_id = line_id, .at = at, .value = (temp_f - 32) / 1.8, .scale = 'F', .held_s = held_s,
                       .person_id = 1 };

  DO (store, stead_shown_repo_add (store, &shown, err));
  g_free (shown.kind);
  return shown.id;
}

/* Every line comes back as the generator made it: the same words. */
static void
test_same_words (void)
{
  g_autoptr(SteadStore) store = new_store ();
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls, tomato sauce, salsa, tilapia",
                                  .day = TODAY };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (store, &order, &error);
  g_autoptr(SteadCheckList) list = stead_check_list_from_plan (store, plan, &order, "Menu", &error);
  g_autoptr(SteadCheckAnswer) answer = NULL;

  g_assert_no_error (error);
  DO (store, stead_check_repo_save (store, list, err));
  answer = answer_of (store, list->id);
  g_assert_cmpuint (answer->lines->len, ==, plan->lines->len);
  g_assert_cmpuint (answer->lines->len, >, 15);
  for (guint i = 0; i < plan->lines->len; i++)
    {
      const SteadCheckSaid *said = plan->lines->pdata[i];
      const SteadCheckedLine *line = answer->lines->pdata[i];

      g_assert_true (line->known);
      g_assert_cmpstr (line->text, ==, said->text);
      g_assert_cmpstr (line->limit, ==, said->limit);
      g_assert_cmpstr (line->reason, ==, said->reason);
      g_assert_cmpstr (line->source, ==, said->source);
      g_assert_cmpstr (line->tool, ==, said->tool);
      g_assert_cmpstr (line->often, ==, said->often);
      g_assert_cmpstr (line->who, ==, said->who);
      g_assert_cmpint (line->state, ==, STEAD_CHECKED_OPEN);
    }
  g_assert_cmpuint (answer->stops->len, ==, plan->stops->len);
  g_assert_nonnull (answer->missing);
  g_assert_false (answer->can_sign);
}

/* FDA Food Code 2022, §3-401.11(A)(2): eggs broken ahead, 155 °F for 17 seconds. */
static void
test_readings (void)
{
  g_autoptr(SteadStore) store = new_store ();
  gint64 id = keep_list (store);
  g_autoptr(SteadCheckAnswer) empty = answer_of (store, id);
  const SteadCheckedLine *cook = line_of (empty, "cook");
  g_autoptr(SteadCheckAnswer) low = NULL;
  g_autoptr(SteadCheckAnswer) met = NULL;
  const SteadCheckRead *read;
  SteadDone done = { .at = EIGHT + 60, .text = (char *) "Cooked on.", .person_id = 1 };

  done.reading_id = read_f (store, cook->line->id, EIGHT, 140, 0);
  low = answer_of (store, id);
  cook = line_of (low, "cook");
  g_assert_cmpint (cook->state, ==, STEAD_CHECKED_FAILED);
  read = cook->reads->pdata[0];
  g_assert_cmpint (read->state, ==, STEAD_READ_FAILED);
  g_assert_cmpstr (read->value, ==, "140 °F");
  g_assert_true (g_str_has_prefix (read->time, "8:00"));
  g_assert_cmpstr (read->who, ==, "A. B.");
  g_assert_cmpstr (read->todo, ==, "Cook it on, and probe again.");
  g_assert_true (g_str_has_prefix (read->sentence, "Not met:"));
  DO (store, stead_done_repo_add (store, &done, err));
  read_f (store, cook->line->id, EIGHT + 120, 155, 17);
  met = answer_of (store, id);
  cook = line_of (met, "cook");
  g_assert_cmpint (cook->state, ==, STEAD_CHECKED_MET);
  read = cook->reads->pdata[0];
  g_assert_cmpint (read->state, ==, STEAD_READ_HANDLED);
  g_assert_true (g_str_has_prefix (read->done, "Cooked on. (A. B., 8:01"));
  g_assert_cmpstr (((SteadCheckRead *) cook->reads->pdata[1])->value, ==, "155 °F for 17 seconds");
}

/* 74 typed as °F for cooked food: which scale was it? */
static void
test_odd (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(SteadCheckAnswer) answer = answer_of (store, keep_list (store));
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckVerdict) odd =
    stead_check_answer_judge (answer, line_of (answer, "cook"), 74, "F", NULL, NAN, EIGHT, FALSE, &error);
  g_autoptr(SteadCheckVerdict) sure =
    stead_check_answer_judge (answer, line_of (answer, "cook"), 74, "F", NULL, NAN, EIGHT, TRUE, &error);

  g_assert_no_error (error);
  g_assert_nonnull (odd->question);
  g_assert_null (sure->question);
  g_assert_cmpint (sure->judged.outcome, ==, STEAD_CHECK_NOT_MET);
}

/* Bowls of yesterday with holes, bowls of today; one reading too low. */
static void
test_days (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  gint64 id = keep_list (store);
  g_autoptr(SteadCheckAnswer) list = answer_of (store, id);
  g_autoptr(SteadCheckTodayAnswer) before = stead_check_today_answer_new (store, &error);
  g_autoptr(SteadCheckTodayAnswer) after = NULL;
  g_autoptr(SteadCheckDaysAnswer) month = NULL;
  g_autoptr(SteadDueAnswer) due = NULL;
  const SteadCheckDay *day;
  gint64 n = (gint64) list->lines->len;

  g_assert_no_error (error);
  g_assert_cmpint (before->n_missing, ==, n);
  g_assert_cmpint (before->n_out, ==, 0);
  read_f (store, line_of (list, "cook")->line->id, EIGHT, 140, 0);
  after = stead_check_today_answer_new (store, &error);
  g_assert_cmpint (after->n_missing, ==, n - 1);
  g_assert_cmpint (after->n_out, ==, 1);
  g_assert_true (g_str_has_prefix (after->figure, "1 out, "));
  month = stead_check_days_answer_new (store, TODAY - 2, TODAY + 2, &error);
  g_assert_cmpuint (month->days->len, ==, 5);
  day = month->days->pdata[2];
  g_assert_cmpint (day->day, ==, TODAY);
  g_assert_cmpuint (day->lists->len, ==, 1);
  g_assert_cmpint (day->n_readings, ==, 1);
  g_assert_cmpint (day->n_failed, ==, 1);
  g_assert_cmpint (day->n_open, ==, n - 1);
  g_assert_false (day->all_signed);
  due = stead_due_answer_new (store, &error);
  g_assert_no_error (error);
  g_assert_cmpint (((SteadDue *) due->dues->pdata[0])->target, ==, STEAD_TARGET_CHECKLIST);
  g_assert_cmpint (due->n_warnings, ==, 1);
}

/* FDA Food Code 2022, §3-501.16(A)(2): 41 °F, which is 5 °C.  From 2 °C, 0.2 °C a day: at 4.8 °C
 * after 15 readings, one day before it passes the limit. */
static void
test_creeping (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPlaceFacts) place = g_new0 (SteadPlaceFacts, 1);
  g_autoptr(SteadPlaceAirAnswer) air = NULL;

  place->name = g_strdup ("Kitchen refrigerator");
  place->kind = STEAD_PLACE_KITCHEN;
  place->area_m2 = NAN;
  DO (store, stead_place_repo_save (store, place, err));
  for (int i = 0; i < 15; i++)
    {
      SteadShown shown = { .place_id = place->id, .kind = (char *) "air_temp", .at = EIGHT - 86400 * (14 - i),
                           .value = 2 + 0.2 * i };

      DO (store, stead_shown_repo_add (store, &shown, err));
    }
  air = stead_place_air_answer_new (store, place->id, 30, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (air->readings->len, ==, 15);
  g_assert_true (air->has_trend);
  g_assert_cmpfloat_with_epsilon (air->limit_c, 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (air->days_left, 1, 1e-6);
  g_assert_true (air->warns);
}

/* What a strip shows is told in its own unit, whatever the line is judged by. */
static void
test_values (void)
{
  static const struct { const char *kind, *unit; double value; const char *text; } cases[] = {
    { "solution_temp", "F", 24, "75.2 °F" }, { "strength", "F", 100, "100 mg/L" }, { "ph", "F", 7.4, "pH 7.4" },
    { "hardness", "F", 400, "hardness 400 mg/L" }, { "food_temp", "F", 60, "140 °F" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const SteadShown shown = { .kind = (char *) cases[i].kind, .value = cases[i].value, .held_s = NAN };
      g_autofree char *text = stead_check_value_text (&shown, cases[i].unit, STEAD_UNITS_US);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* Initials with or without dots, or the beginning of a name; nobody who left, and never one of several. */
static void
test_find_person (void)
{
  static const struct { const char *name; gboolean left; } who[] = {
    { "Ada Brown", FALSE }, { "Ada Cole", FALSE }, { "Émile Noir", FALSE }, { "Ben Oak", TRUE }, { "Al Bean", TRUE },
  };
  static const struct { const char *text; gint64 id; } cases[] = {
    { "AB", 1 }, { "a. b.", 1 }, { " A.C. ", 2 }, { "ada c", 2 }, { "én", 3 }, { "Émile", 3 },
    { "ada", 0 }, { "BO", 0 }, { "Ben Oak", 0 }, { "", 0 }, { ".", 0 }, { "zz", 0 },
  };
  g_autoptr(GPtrArray) people = g_ptr_array_new_with_free_func (g_free);

  for (gsize i = 0; i < G_N_ELEMENTS (who); i++)
    {
      SteadPerson *person = g_new0 (SteadPerson, 1);

      person->id = (gint64) i + 1;
      person->name = (char *) who[i].name;
      person->left_on = who[i].left ? TODAY - 1 : STEAD_DAY_NONE;
      g_ptr_array_add (people, person);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;

      g_test_message ("%s", cases[i].text);
      g_assert_cmpint (stead_check_find_person (people, cases[i].text, &error), ==, cases[i].id);
      g_assert_true ((error == NULL) == (cases[i].id != 0));
    }
}

/* 100 cartons: 40 sold at a market, 10 given away, 5 lost, 45 there: all of it is known; a count
 * that finds 40 leaves 5 of 100 unaccounted for. */
static void
test_recall (void)
{
  g_autoptr(SteadStore) store = new_store ();
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadItem) item = g_new0 (SteadItem, 1);
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  SteadReceiptLine line = { .quantity_base = 100, .cost_cents = 5000, .best_by = STEAD_DAY_NONE };
  g_autoptr(SteadRecallAnswer) before = NULL;
  g_autoptr(SteadRecallAnswer) after = NULL;
  g_autoptr(GPtrArray) drills = NULL, whys = NULL;
  g_autofree char *share = NULL;
  const char *worked;
  gint64 lot, drill;

  item->name = g_strdup ("Jam");
  item->kind = STEAD_ITEM_PRODUCE;
  item->reorder_base = NAN;
  item->unit = stead_unit_by_id ("ea");
  DO (store, stead_item_repo_save (store, item, err));
  receipt->day = TODAY - 9;
  receipt->supplier = g_strdup ("Orchard Hill");
  line.item_id = item->id;
  g_array_append_val (receipt->lines, line);
  DO (store, stead_receipt_repo_save (store, receipt, err));
  lot = g_array_index (receipt->lines, SteadReceiptLine, 0).lot_id;
  DO (store, stead_lot_repo_sell (store, item->id, TODAY - 3, 40, "Market of February 28", 0, err));
  DO (store, stead_lot_repo_adjust (store, lot, STEAD_MOVE_GIVEN, TODAY - 2, -10, "Food bank", 0, err));
  DO (store, stead_lot_repo_adjust (store, lot, STEAD_MOVE_LOST, TODAY - 1, -5, "Broken", 0, err));
  before = stead_recall_answer_new (store, lot, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (before->known_frac, 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (before->out_base, 50, 1e-9);
  g_assert_cmpuint (before->calls->len, ==, 5);
  /* Who decides comes first: nobody outside is called before. */
  g_assert_cmpstr (((SteadRecallCall *) before->calls->pdata[1])->who, ==, "The local health department");
  g_assert_cmpstr (((SteadRecallCall *) before->calls->pdata[2])->who, ==, "Market of February 28");
  g_assert_cmpstr (((SteadRecallCall *) before->calls->pdata[3])->who, ==, "Food bank");
  g_assert_cmpstr (((SteadRecallCall *) before->calls->pdata[4])->who, ==, "Orchard Hill");
  g_assert_true (isnan (before->minutes));
  DO (store, stead_lot_repo_adjust (store, lot, STEAD_MOVE_COUNTED, TODAY, -5, "Count", 0, err));
  DO (store, stead_drill_repo_start (store, lot, EIGHT, 1, &drill, err));
  DO (store, stead_drill_repo_finish (store, drill, EIGHT + 18 * 60, 0.95, 0.95, NULL, err));
  after = stead_recall_answer_new (store, lot, 0, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (after->known_frac, 0.95, 1e-9);
  g_assert_cmpfloat_with_epsilon (after->minutes, 18, 1e-9);
  drills = stead_drill_repo_list (store, &error);
  whys = stead_drills_whys (drills);
  g_assert_cmpuint (whys->len, ==, 1);
  worked = ((const SteadWhy *) whys->pdata[0])->worked;
  g_assert_cmpfloat (stead_drill_minutes (drills->pdata[0]), ==, 18);
  g_assert_nonnull (strstr (worked, " = 18 min; 95%"));
  /* Four of ten thousand that nobody can account for are not nothing. */
  share = stead_recall_share_text (0.9996);
  g_assert_true (g_str_has_prefix (share, "99.9"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/answer/check/same-words", test_same_words);
  g_test_add_func ("/answer/check/readings", test_readings);
  g_test_add_func ("/answer/check/odd", test_odd);
  g_test_add_func ("/answer/check/days", test_days);
  g_test_add_func ("/answer/check/creeping", test_creeping);
  g_test_add_func ("/answer/check/values", test_values);
  g_test_add_func ("/answer/check/find-person", test_find_person);
  g_test_add_func ("/answer/check/recall", test_recall);
  return g_test_run ();
}

/* test-check-repo.c - checklists, what was read, what is held, and what is signed. */
#include "config.h"

#include <math.h>
#include <string.h>

#include "check-fixture.h"
#include "kitchen-fixture.h"
#include "store/stead-place-repo.h"

static SteadListLine *
line_at (SteadCheckList *list,
         guint           at)
{
  return list->lines->pdata[at];
}

static SteadCheckList *
again (Farm   *farm,
       gint64  id)
{
  g_autoptr(GError) error = NULL;
  SteadCheckList *list = stead_check_repo_get (farm->store, id, &error);

  g_assert_no_error (error);
  return list;
}

static gint64
count (Farm       *farm,
       const char *sql)
{
  sqlite3_stmt *stmt = NULL;
  gint64 n;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (farm->store), sql, -1, &stmt, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  n = sqlite3_column_int64 (stmt, 0);
  sqlite3_finalize (stmt);
  return n;
}

/* --- making ------------------------------------------------------------------------ */

static void
test_round_trip (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, TRUE);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) heads = stead_check_repo_list (farm->store, TODAY, TODAY, &error);
  const SteadListLine *cook = line_at (list, LINE_COOK);
  const SteadListLine *hot = line_at (list, LINE_HOT);
  const SteadLimit *limit = cook->rows->pdata[0];
  const SteadListStop *stop = list->stops->pdata[0];

  g_assert_cmpstr (list->name, ==, "Breakfast bowls");
  g_assert_cmpint (list->day, ==, TODAY);
  g_assert_cmpuint (list->foods->len, ==, 2);
  g_assert_cmpuint (list->answers->len, ==, 2);
  g_assert_cmpint (((SteadListAnswer *) list->answers->pdata[0])->food, ==, -1);
  g_assert_cmpint (((SteadListAnswer *) list->answers->pdata[1])->food, ==, 0);
  g_assert_cmpuint (list->lines->len, ==, 5);
  g_assert_cmpint (line_at (list, LINE_HANDS)->food, ==, -1);
  g_assert_cmpuint (cook->rows->len, ==, 2);
  g_assert_cmpstr (limit->id, ==, "cook-egg-held-155");
  g_assert_cmpfloat (limit->value, ==, 155);
  g_assert_true (limit->has_time);
  g_assert_cmpint (limit->time_direction, ==, STEAD_LIMIT_AT_LEAST);
  g_assert_cmpfloat (limit->time_s, ==, 17);
  g_assert_cmpstr (limit->where, ==, "§3-501.16(A)(1)");
  g_assert_cmpuint (hot->rows->len, ==, 1);
  g_assert_cmpstr (hot->often_limit->id, ==, "often-hold-2");
  g_assert_cmpfloat (hot->every_s, ==, 7200);
  g_assert_cmpstr (stop->kind, ==, "eggs_pooled");
  g_assert_cmpint (stop->settled_at, ==, STEAD_TIME_NONE);
  g_assert_false (list->stale_batch || list->stale_limits);
  g_assert_cmpuint (heads->len, ==, 1);
  g_assert_cmpint (((SteadCheckList *) heads->pdata[0])->n_lines, ==, 5);
  g_assert_cmpint (((SteadCheckList *) heads->pdata[0])->n_open, ==, 5);
  g_assert_cmpint (((SteadCheckList *) heads->pdata[0])->n_stops, ==, 1);
  farm_assert_undo (farm);
}

static void
test_refusals (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, 0, FALSE);
  g_autoptr(SteadCheckList) empty = stead_check_list_new ();

  list->name = " ";
  INVALID (farm, stead_check_repo_save (farm->store, list, err), "Enter a name");
  list->name = "Bowls";
  list->day = STEAD_DAY_NONE;
  INVALID (farm, stead_check_repo_save (farm->store, list, err), "Enter the day");
  g_assert_cmpint (list->id, ==, 0);
  empty->name = "Bowls";
  empty->day = TODAY;
  INVALID (farm, stead_check_repo_save (farm->store, empty, err), "made for foods");
}

static void
test_change (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, TRUE);
  g_autoptr(SteadCheckList) changed = NULL;
  gint64 line = line_at (list, LINE_HOT)->id;

  list->name = "Bowls of Tuesday";
  list->note = "Room 4";
  ACT (farm, stead_check_repo_save (farm->store, list, err));
  ACT (farm, stead_check_repo_leave_out (farm->store, line_at (list, LINE_HANDS)->id, "Gloves all day.", err));
  INVALID (farm, stead_check_repo_leave_out (farm->store, line, "  ", err), "Enter why");
  ACT (farm, stead_check_repo_settle_stop (farm->store, ((SteadListStop *) list->stops->pdata[0])->id,
                                           "Pasteurized eggs were bought.", farm->student, err));
  changed = again (farm, list->id);
  g_assert_cmpstr (changed->name, ==, "Bowls of Tuesday");
  g_assert_cmpstr (changed->note, ==, "Room 4");
  g_assert_cmpstr (line_at (changed, LINE_HANDS)->left_out, ==, "Gloves all day.");
  g_assert_cmpint (((SteadListStop *) changed->stops->pdata[0])->settled_by, ==, farm->student);
  ACT (farm, stead_check_repo_delete (farm->store, list->id, err));
  g_assert_cmpint (count (farm, "SELECT count (*) FROM check_line"), ==, 0);
  farm_assert_undo (farm);
}

/* --- judging --------------------------------------------------------------------------- */

static SteadLimitVerdict
verdict (const SteadListLine *line,
         double               temp_f,
         double               held_s)
{
  SteadShown shown = check_shown_f (line->id, EIGHT, temp_f);
  SteadJudgement judgement;

  shown.held_s = held_s;
  g_assert_true (stead_list_line_judge (line, &shown, NULL, &judgement, NULL));
  return judgement.verdict;
}

/* FDA Food Code 2022, §3-401.11(A)(2): 155 °F for 17 s, or 150 °F for 1 minute;
 * §3-501.16(A)(1): 135 °F (data/limits/cook.csv and hold.csv hold the rows). */
static void
test_judge (void)
{
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, 0, FALSE);
  SteadListLine *cook = line_at (list, LINE_COOK);
  SteadListLine *hot = line_at (list, LINE_HOT);
  SteadShown cooling = check_shown_f (0, EIGHT, 100);
  SteadJudgement judgement;

  g_assert_cmpint (verdict (hot, 135, 0), ==, STEAD_LIMIT_MET);
  g_assert_cmpint (verdict (hot, 134.9, 0), ==, STEAD_LIMIT_NOT_MET);
  g_assert_cmpint (verdict (cook, 155, 17), ==, STEAD_LIMIT_MET);
  g_assert_cmpint (verdict (cook, 155, 16), ==, STEAD_LIMIT_NOT_MET);
  g_assert_cmpint (verdict (cook, 150, 60), ==, STEAD_LIMIT_MET);
  g_assert_cmpint (verdict (cook, 155, 0), ==, STEAD_LIMIT_WITHIN_ERROR);    /* nobody timed it */
  g_assert_cmpint (verdict (cook, 149, 0), ==, STEAD_LIMIT_NOT_MET);
  cook->own_least_c = 74;    /* the recipe asks for 165.2 °F */
  g_assert_cmpint (verdict (cook, 160, 20), ==, STEAD_LIMIT_NOT_MET);
  g_assert_cmpint (verdict (cook, 166, 20), ==, STEAD_LIMIT_MET);
  g_assert_false (stead_list_line_judge (line_at (list, LINE_COOL), &cooling, NULL, &judgement, NULL));
}

/* FDA Food Code 2022, §4-203.11(B): a thermometer in °F is right to within 2 °F. */
static void
test_judge_ice (void)
{
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, 0, FALSE);
  SteadListLine *line = stead_check_list_add_line (list, -1, "thermometer_ice");
  const SteadLimit error = { .id = "thermometer-food-f", .process = "thermometer", .measure = "error", .unit = "Fdiff",
                             .direction = STEAD_LIMIT_AT_MOST, .value = 2, .subject = "", .when = "", .hazard = "",
                             .source = "FDA Food Code", .where = "§4-203.11(B)", .version = "2022", .status = "read",
                             .note = "" };

  line->measure = STEAD_SHOWN_ICE_BATH;
  line->unit = "F";
  stead_check_list_add_row (list, line, &error);
  g_assert_cmpint (verdict (line, 34, 0), ==, STEAD_LIMIT_MET);
  g_assert_cmpint (verdict (line, 30, 0), ==, STEAD_LIMIT_MET);
  g_assert_cmpint (verdict (line, 34.2, 0), ==, STEAD_LIMIT_NOT_MET);
  g_assert_cmpint (verdict (line, 29.8, 0), ==, STEAD_LIMIT_NOT_MET);
}

/* --- readings ----------------------------------------------------------------------------- */

/* One after the other: what the one before was filled with is let go. */
#define READING(...) ({ g_free (shown.kind); shown = (SteadShown) { __VA_ARGS__ }; &shown; })

static void
test_readings (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, FALSE);
  g_autoptr(SteadInstrument) probe = g_new0 (SteadInstrument, 1);
  g_autoptr(SteadCheckList) read = NULL;
  gint64 hot = line_at (list, LINE_HOT)->id;
  gint64 first;
  SteadShown shown = { 0 };
  g_autoptr(SteadShown) right = g_new0 (SteadShown, 1);

  probe->name = g_strdup ("Blue probe");
  probe->kind = STEAD_INSTRUMENT_AIR;
  probe->step = 0.1;
  probe->error = NAN;
  probe->retired_on = STEAD_DAY_NONE;
  ACT (farm, stead_instrument_repo_save (farm->store, probe, err));
  INVALID (farm, stead_shown_repo_add (farm->store, READING (.line_id = hot, .at = EIGHT + 86400, .value = 60), err),
           "still to come");
  INVALID (farm, stead_shown_repo_add (farm->store, READING (.line_id = hot, .at = EIGHT - 86400, .value = 60), err),
           "cannot be from before");
  INVALID (farm, stead_shown_repo_add (farm->store, READING (.line_id = hot, .at = EIGHT, .value = 900), err),
           "No kitchen");
  INVALID (farm, stead_shown_repo_add (farm->store, READING (.line_id = hot, .at = EIGHT, .value = 150,
                                                             .instrument_id = probe->id), err), "cannot show");
  first = check_read (farm, hot, EIGHT, 104, 0);
  right->value = 60;
  right->scale = 'C';
  ACT (farm, stead_shown_repo_correct (farm->store, first, right, err));
  INVALID (farm, stead_shown_repo_correct (farm->store, first, READING (.value = 61), err), "corrected already");
  INVALID (farm, stead_check_repo_leave_out (farm->store, hot, "Sold out.", err), "was read already");
  g_free (shown.kind);
  read = again (farm, list->id);
  g_assert_cmpuint (line_at (read, LINE_HOT)->readings->len, ==, 2);
  g_assert_true (((SteadShown *) line_at (read, LINE_HOT)->readings->pdata[0])->corrected);
  g_assert_cmpint (((SteadShown *) line_at (read, LINE_HOT)->readings->pdata[1])->scale, ==, 'C');
  g_assert_cmpint (((SteadShown *) line_at (read, LINE_HOT)->readings->pdata[1])->at, ==, EIGHT);
  farm_assert_undo (farm);
}

/* The last minute of the day: to come by the clock, but not on a day that was set. */
static void
test_set_day (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadPlaceFacts cooler = { .kind = STEAD_PLACE_STORE_ROOM, .name = (char *) "Milk room", .area_m2 = NAN };
  SteadShown late = { .kind = (char *) "air_temp", .value = 3, .held_s = NAN };
  gint64 now = g_get_real_time () / G_USEC_PER_SEC;
  SteadDay today;

  stead_store_set_today (farm->store, STEAD_DAY_NONE);
  today = stead_store_get_today (farm->store);
  ACT (farm, stead_place_repo_save (farm->store, &cooler, err));
  late.place_id = cooler.id;
  late.at = now + 3600;
  INVALID (farm, stead_shown_repo_add (farm->store, &late, err), "still to come");
  g_assert_cmpint (ABS (stead_time_now (farm->store) - now), <=, 5);

  stead_store_set_today (farm->store, today);
  g_assert_cmpint (stead_store_get_set_day (farm->store), ==, today);
  g_assert_cmpint (stead_time_now (farm->store), ==, stead_time_midnight (today) + 86400 / 2);
  late.at = stead_time_midnight (today + 1) + 60;
  INVALID (farm, stead_shown_repo_add (farm->store, &late, err), "still to come");
  late.at = stead_time_midnight (today + 1) - 60;
  ACT (farm, stead_shown_repo_add (farm->store, &late, err));
}

static void
test_pots (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, FALSE);
  gint64 cool = line_at (list, LINE_COOL)->id;
  gint64 pot = 0, other = 0;
  g_autoptr(SteadShown) shown = g_new0 (SteadShown, 1);
  g_autoptr(SteadShown) same = g_new0 (SteadShown, 1);
  g_autoptr(SteadCheckList) read = NULL;

  ACT (farm, stead_check_repo_save_pot (farm->store, cool, &pot, "Pot 1", NULL, 0.05, err));
  ACT (farm, stead_check_repo_save_pot (farm->store, cool, &other, "Pot 2", "ice bath", NAN, err));
  ACT (farm, stead_check_repo_save_pot (farm->store, cool, &pot, "Pot 1", "shallow pan", 0.05, err));
  INVALID (farm, stead_check_repo_save_pot (farm->store, cool, &pot, "Pot 1", NULL, 3, err), "Check the depth");
  *shown = check_shown_f (cool, EIGHT, 135);
  shown->pot_id = pot;
  ACT (farm, stead_shown_repo_add (farm->store, shown, err));
  *same = check_shown_f (cool, EIGHT, 130);
  same->pot_id = pot;
  INVALID (farm, stead_shown_repo_add (farm->store, same, err), "Check the clock");
  INVALID (farm, stead_check_repo_delete_pot (farm->store, pot, err), "has readings");
  ACT (farm, stead_check_repo_delete_pot (farm->store, other, err));
  read = again (farm, list->id);
  g_assert_cmpuint (line_at (read, LINE_COOL)->pots->len, ==, 1);
  g_assert_cmpstr (((SteadListPot *) line_at (read, LINE_COOL)->pots->pdata[0])->method, ==, "shallow pan");
}

/* --- a run sheet ----------------------------------------------------------------------------- */

static void
run (Farm       *farm,
     const char *sql)
{
  g_assert_cmpint (sqlite3_exec (stead_store_get_db (farm->store), sql, NULL, NULL, NULL), ==, SQLITE_OK);
}

/* A batch with one step of cooking, which is what line 1 checks. */
static gint64
batch_with_step (Farm *farm)
{
  gint64 batch = kitchen_begin (farm, "Bowls 1", TODAY);
  gint64 dish = farm_item (farm, "Bowl", STEAD_ITEM_PRODUCE, "ea");
  g_autofree char *sql = g_strdup_printf (
    "INSERT INTO recipe (id, name, item_id, yield_base, minutes, kept, sealed, acid_added, tomato)"
    " VALUES (1, 'Bowls', %d, 10, 30, 'hot', 0, 0, 0);"
    "INSERT INTO recipe_step (recipe_id, position, text, step) VALUES (1, 0, 'Cook the eggs.', 'cook');"
    "INSERT INTO kitchen (batch_id, recipe_id, wanted_base, minutes) VALUES (%d, 1, 10, 30);"
    "INSERT INTO kitchen_step (id, batch_id, position, text, step) VALUES (1, %d, 0, 'Cook the eggs.', 'cook');",
    (int) dish, (int) batch, (int) batch);

  run (farm, sql);
  return batch;
}

static void
test_run_sheet (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 batch = batch_with_step (farm);
  g_autoptr(SteadShown) before = g_new0 (SteadShown, 1);
  g_autoptr(SteadShown) after = g_new0 (SteadShown, 1);
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, batch, FALSE);
  g_autoptr(SteadCheckList) read = NULL;
  g_autoptr(GPtrArray) of_batch = NULL;

  *before = (SteadShown) { .step_id = 1, .batch_id = batch, .at = EIGHT, .value = 70, .kind = g_strdup ("food_temp"),
                           .held_s = 30 };
  ACT (farm, stead_shown_repo_add (farm->store, before, err));
  line_at (list, LINE_COOK)->step_id = 1;
  ACT (farm, stead_check_repo_save (farm->store, list, err));
  *after = (SteadShown) { .step_id = 1, .batch_id = batch, .at = EIGHT + 60, .value = 72, .held_s = 30,
                          .kind = g_strdup ("food_temp") };
  ACT (farm, stead_shown_repo_add (farm->store, after, err));
  check_read (farm, line_at (list, LINE_COOK)->id, EIGHT + 120, 165, 20);
  read = again (farm, list->id);
  g_assert_cmpuint (line_at (read, LINE_COOK)->readings->len, ==, 3);
  of_batch = stead_shown_repo_of_batch (farm->store, batch, NULL);
  g_assert_cmpuint (of_batch->len, ==, 3);
  g_assert_cmpint (((SteadShown *) of_batch->pdata[2])->step_id, ==, 1);
  /* The run sheet keeps what is its own. */
  ACT (farm, stead_check_repo_delete (farm->store, list->id, err));
  g_assert_cmpint (count (farm, "SELECT count (*) FROM reading"), ==, 3);
}

static void
test_stale (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 batch = batch_with_step (farm);
  g_autoptr(SteadCheckList) list = check_list_new (TODAY, batch, FALSE);
  g_autoptr(SteadCheckList) fresh = NULL;
  g_autoptr(SteadCheckList) stale = NULL;
  g_autoptr(SteadCheckList) renewed = NULL;
  gint64 line, food;

  ((SteadListFood *) list->foods->pdata[0])->recipe_id = 1;
  ACT (farm, stead_check_repo_save (farm->store, list, err));
  fresh = again (farm, list->id);
  g_assert_false (((SteadListFood *) fresh->foods->pdata[0])->stale || fresh->stale_batch || fresh->stale_limits);
  run (farm, "UPDATE recipe_step SET text = 'Cook the eggs well.'");
  stale = again (farm, list->id);
  g_assert_true (((SteadListFood *) stale->foods->pdata[0])->stale);
  g_assert_false (((SteadListFood *) stale->foods->pdata[1])->stale || stale->stale_batch);
  run (farm, "UPDATE kitchen_step SET text = 'Cook the eggs well.'");
  g_clear_pointer (&stale, stead_check_list_free);
  stale = again (farm, list->id);
  g_assert_true (stale->stale_batch);
  run (farm, "INSERT INTO local_limit (limit_id, value, unit, source, from_day) VALUES ('hold-hot-135', 140, 'F',"
             " 'County', 1)");
  g_clear_pointer (&stale, stead_check_list_free);
  stale = again (farm, list->id);
  g_assert_true (stale->stale_limits);
  line = line_at (list, LINE_COOK)->id;
  food = ((SteadListFood *) list->foods->pdata[0])->id;
  ACT_LEAVING (farm, stead_check_repo_renew (farm->store, list, err),
               line_at (list, LINE_COOK)->id == line && ((SteadListFood *) list->foods->pdata[0])->id == food);
  renewed = again (farm, list->id);
  g_assert_false (((SteadListFood *) renewed->foods->pdata[0])->stale || renewed->stale_batch || renewed->stale_limits);
}

/* A line that is still asked for keeps its readings; one that is not stays if it was read. */
static void
test_renew (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) first = check_list_new (TODAY, 0, TRUE), list = NULL;
  g_autoptr(SteadCheckList) next = check_list_new (TODAY, 0, TRUE);
  g_autoptr(SteadCheckList) read = NULL;
  SteadListLine *cook = first->lines->pdata[LINE_COOK];
  const SteadListLine *last;

  cook->person_id = farm->student;
  cook->due_at = EIGHT + 3600;
  ACT (farm, stead_check_repo_save (farm->store, first, err));
  list = again (farm, first->id);
  check_read (farm, line_at (list, LINE_COOK)->id, EIGHT, 158, 20);
  check_read (farm, line_at (list, LINE_FRIDGE)->id, EIGHT, 39, 0);
  ACT (farm, stead_check_repo_settle_stop (farm->store, ((SteadListStop *) list->stops->pdata[0])->id, "Bought others.",
                                           farm->student, err));
  next->id = list->id;
  g_ptr_array_remove_index (next->lines, LINE_FRIDGE);
  g_ptr_array_remove_index (next->lines, LINE_HANDS);
  ACT (farm, stead_check_repo_renew (farm->store, next, err));
  read = again (farm, list->id);
  g_assert_cmpuint (read->lines->len, ==, 4);
  g_assert_cmpint (line_at (read, 0)->id, ==, line_at (list, LINE_COOK)->id);
  g_assert_cmpuint (line_at (read, 0)->readings->len, ==, 1);
  g_assert_cmpint (line_at (read, 0)->person_id, ==, farm->student);
  g_assert_cmpint (line_at (read, 0)->due_at, ==, EIGHT + 3600);
  last = line_at (read, 3);
  g_assert_cmpint (last->id, ==, line_at (list, LINE_FRIDGE)->id);
  g_assert_cmpuint (last->readings->len, ==, 1);
  g_assert_cmpstr (last->left_out, ==, "No longer asked for.");
  g_assert_cmpint (last->food, ==, 1);
  g_assert_cmpstr (((SteadListStop *) read->stops->pdata[0])->settled, ==, "Bought others.");
  farm_assert_undo (farm);
}

/* --- holds ------------------------------------------------------------------------------------- */

static SteadHold *
only_hold (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) holds = stead_hold_repo_open (farm->store, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (holds->len, ==, 1);
  return g_ptr_array_steal_index (holds, 0);
}

/* FDA Food Code 2022, §3-501.14(A)(1): from 135 to 70 °F within two hours.  A pot that is late holds
 * its batch, as any food that missed its limit does. */
static void
test_pot_holds (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 dish = farm_item (farm, "Sauce", STEAD_ITEM_PRODUCE, "ea");
  gint64 batch, lot, line;
  g_autoptr(SteadCheckList) list = NULL;

  farm_receipt (farm, farm->feed, TODAY, 10, 1000, FALSE);
  batch = kitchen_cook (farm, "Sauce 1", TODAY, farm->feed, 2, dish, 10);
  lot = count (farm, "SELECT id FROM lot WHERE batch_id IS NOT NULL");
  list = check_list_saved (farm, TODAY, batch, FALSE);
  line = line_at (list, LINE_COOL)->id;
  check_read (farm, line, EIGHT, 135, 0);
  check_read (farm, line, EIGHT + 7140, 71, 0);
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 0);
  check_read (farm, line, EIGHT + 7260, 70.5, 0);
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 1);
}

static void
test_holds (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 dish = farm_item (farm, "Bowl", STEAD_ITEM_PRODUCE, "ea");
  gint64 batch, lot;
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadHold) hold = NULL;
  SteadDone done = { .at = EIGHT, .text = (char *) "Cooked on." };

  farm_receipt (farm, farm->feed, TODAY, 10, 1000, FALSE);
  batch = kitchen_cook (farm, "Bowls 1", TODAY, farm->feed, 2, dish, 10);
  lot = count (farm, "SELECT id FROM lot WHERE batch_id IS NOT NULL");
  list = check_list_saved (farm, TODAY, batch, FALSE);
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 0);
  /* Hands are of no food: nothing is held for them. */
  check_read (farm, line_at (list, LINE_HANDS)->id, EIGHT, 32, 0);
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 0);
  done.reading_id = check_read (farm, line_at (list, LINE_COOK)->id, EIGHT, 140, 20);
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 1);
  hold = only_hold (farm);
  g_assert_cmpstr (hold->what, ==, "Bowls 1");
  g_assert_cmpint (hold->list_id, ==, list->id);
  INVALID (farm, stead_lot_repo_adjust (farm->store, lot, STEAD_MOVE_GIVEN, TODAY, -1, "Friends", 0, err), "held");
  ACT (farm, stead_lot_repo_adjust (farm->store, lot, STEAD_MOVE_LOST, TODAY, -1, "Fell down", 0, err));
  INVALID (farm, stead_hold_repo_settle (farm->store, hold->id, STEAD_HOLD_MENDED, "Cooked on.", farm->student, err),
           "No later reading");
  INVALID (farm, stead_hold_repo_settle (farm->store, hold->id, STEAD_HOLD_MISTAKEN, "Slip.", farm->student, err),
           "correct it first");
  INVALID (farm, stead_hold_repo_settle (farm->store, hold->id, STEAD_HOLD_DISCARDED, " ", farm->student, err),
           "how it was settled");
  INVALID (farm, stead_check_repo_delete (farm->store, list->id, err), "holds food back");
  ACT (farm, stead_done_repo_add (farm->store, &done, err));
  check_read (farm, line_at (list, LINE_COOK)->id, EIGHT + 300, 160, 20);
  ACT (farm, stead_hold_repo_settle (farm->store, hold->id, STEAD_HOLD_MENDED, "Cooked on.", farm->student, err));
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 0);
  INVALID (farm, stead_hold_repo_settle (farm->store, hold->id, STEAD_HOLD_DISCARDED, "Again.", 0, err), "settled before");
  ACT (farm, stead_lot_repo_adjust (farm->store, lot, STEAD_MOVE_GIVEN, TODAY, -1, "Friends", 0, err));
  farm_assert_undo (farm);
}

static void
test_hold_by_hand (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 lot;
  SteadHold hold = { .since_at = EIGHT, .reason = (char *) "The seal of the bag was open.", .ended_at = STEAD_TIME_NONE };

  farm_receipt (farm, farm->feed, TODAY, 10, 1000, FALSE);
  lot = count (farm, "SELECT id FROM lot");
  hold.lot_id = lot;
  ACT (farm, stead_hold_repo_begin (farm->store, &hold, err));
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, lot, NULL), ==, 1);
  INVALID (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, TODAY, 1, 0, err), "held");
  ACT (farm, stead_hold_repo_settle (farm->store, hold.id, STEAD_HOLD_MISTAKEN, "It was another bag.", 0, err));
  ACT (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, TODAY, 1, 0, err));
}

/* --- signing ------------------------------------------------------------------------------------- */

static void
test_sign (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, TRUE);
  g_autoptr(SteadCheckList) signed_list = NULL;
  g_autoptr(SteadShown) right = g_new0 (SteadShown, 1);
  g_autoptr(GError) error = NULL;
  SteadDone done = { .at = EIGHT, .text = (char *) "Heated again." };
  gint64 low;
  SteadShown shown = { 0 };

  INVALID (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err), "5 lines have no reading");
  check_read_all (farm, list->id);
  low = check_read (farm, line_at (list, LINE_HOT)->id, EIGHT + 900, 120, 0);
  INVALID (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err), "1 reading did not meet");
  done.reading_id = low;
  ACT (farm, stead_done_repo_add (farm->store, &done, err));
  INVALID (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err), "1 thing cannot be sold");
  ACT (farm, stead_check_repo_settle_stop (farm->store, ((SteadListStop *) list->stops->pdata[0])->id,
                                           "Pasteurized eggs.", farm->student, err));
  INVALID (farm, stead_check_repo_sign (farm->store, list->id, 999, err), "Choose who signs");
  ACT (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err));
  signed_list = again (farm, list->id);
  g_assert_cmpint (signed_list->signed_by, ==, farm->advisor);
  g_assert_cmpint (signed_list->seal_reading, ==, low);

#define FROZEN(call) REFUSE (farm, call, STEAD_STORE_ERROR_SIGNED, "igned")
  FROZEN (stead_check_repo_save (farm->store, list, err));
  FROZEN (stead_check_repo_renew (farm->store, list, err));
  FROZEN (stead_check_repo_delete (farm->store, list->id, err));
  FROZEN (stead_check_repo_leave_out (farm->store, line_at (list, LINE_HOT)->id, "Why not.", err));
  FROZEN (stead_check_repo_sign (farm->store, list->id, farm->advisor, err));
  FROZEN (stead_shown_repo_add (farm->store, READING (.line_id = line_at (list, LINE_HOT)->id, .at = EIGHT, .value = 60),
                                err));
  g_clear_pointer (&shown.kind, g_free);
  g_assert_false (stead_store_undo (farm->store, &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED);

  /* Both values are seen. */
  right->value = 62;
  ACT (farm, stead_shown_repo_correct (farm->store, low, right, err));
  g_clear_pointer (&signed_list, stead_check_list_free);
  signed_list = again (farm, list->id);
  g_assert_cmpuint (line_at (signed_list, LINE_HOT)->readings->len, ==, 3);
  g_assert_cmpint (right->id, >, signed_list->seal_reading);
}

/* Whoever writes to the file, not even round the program. */
static void
test_frozen_by_the_file (void)
{
  static const char * const writes[] = {
    "UPDATE checklist SET name = 'x'", "DELETE FROM checklist", "UPDATE check_line SET left_out = 'x'",
    "DELETE FROM check_line", "UPDATE check_limit SET value = 0", "UPDATE check_food SET name = 'x'",
    "UPDATE check_answer SET answer = 'x'", "UPDATE reading SET value = 0", "DELETE FROM reading",
    "DELETE FROM check_action", "UPDATE check_action SET text = 'x'",
    "INSERT INTO reading (at, kind, value, line_id) SELECT 1, 'food_temp', 1, min (id) FROM check_line",
    "INSERT INTO check_pot (line_id, name) SELECT min (id), 'x' FROM check_line",
  };
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, FALSE);
  SteadDone done = { .at = EIGHT, .text = (char *) "Looked again." };

  check_read_all (farm, list->id);
  done.reading_id = check_read (farm, line_at (list, LINE_HOT)->id, EIGHT + 900, 140, 0);
  ACT (farm, stead_done_repo_add (farm->store, &done, err));
  ACT (farm, stead_check_repo_sign (farm->store, list->id, farm->student, err));
  for (gsize i = 0; i < G_N_ELEMENTS (writes); i++)
    {
      int rc = sqlite3_exec (stead_store_get_db (farm->store), writes[i], NULL, NULL, NULL);

      g_test_message ("%s", writes[i]);
      g_assert_cmpint (rc & 0xff, ==, SQLITE_CONSTRAINT);
    }
}

/* --- instruments, limits, drills ----------------------------------------------------------------------- */

static void
test_instruments (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadInstrument) probe = g_new0 (SteadInstrument, 1);
  g_autoptr(SteadShown) ice = g_new0 (SteadShown, 1);
  g_autoptr(GPtrArray) tried = NULL;
  g_autoptr(SteadInstrument) read = NULL;

  probe->name = g_strdup ("Blue probe");
  probe->scale = g_strdup ("F_only");
  probe->step = -1;
  probe->error = 1;
  probe->retired_on = STEAD_DAY_NONE;
  INVALID (farm, stead_instrument_repo_save (farm->store, probe, err), "smallest step");
  probe->step = 0.1;
  ACT (farm, stead_instrument_repo_save (farm->store, probe, err));
  *ice = (SteadShown) { .instrument_id = probe->id, .at = EIGHT, .value = 0.5, .scale = 'F',
                        .kind = g_strdup (STEAD_SHOWN_ICE_BATH) };
  ACT (farm, stead_shown_repo_add (farm->store, ice, err));
  tried = stead_shown_repo_tried (farm->store, probe->id, EIGHT - 9, EIGHT, NULL);
  g_assert_cmpuint (tried->len, ==, 1);
  INVALID (farm, stead_instrument_repo_delete (farm->store, probe->id, err), "out of use");
  read = stead_instrument_repo_get (farm->store, probe->id, NULL);
  g_assert_cmpstr (read->scale, ==, "F_only");
  g_assert_cmpfloat (read->step, ==, 0.1);
  farm_assert_undo (farm);
}

static SteadLimitTable *
shipped_table (void)
{
  static const char csv[] =
    "id,process,subject,when,measure,direction,limit,unit,time_direction,time,time_unit,hazard,source,where,version,"
    "status,note\n"
    "hold-hot-135,hold_hot,tcs,,food_temp,at_least,135,F,,,,pathogen_growth,FDA Food Code,§3-501.16(A)(1),2022,read,\n";
  SteadLimitTable *table = stead_limit_table_new ();
  g_autoptr(GBytes) bytes = g_bytes_new_static (csv, strlen (csv));

  g_assert_true (stead_limit_table_add_csv (table, "hold", bytes, NULL));
  return table;
}

/* FDA Food Code 2022, §3-501.16(A)(1): 135 °F; states with older texts have 140 °F. */
static void
test_local_limits (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadLimitTable) table = shipped_table ();
  g_autoptr(GPtrArray) all = NULL;
  SteadLocalLimit limit = { .limit_id = (char *) "hold-hot-135", .value = 130, .unit = (char *) "F", .time_s = NAN,
                            .source = (char *) "County code", .where = (char *) "§ 4", .from_day = TODAY - 10,
                            .retired_on = STEAD_DAY_NONE };
  SteadLocalLimit next = limit;

  INVALID (farm, stead_local_limit_repo_save (farm->store, &limit, table, err), "§3-501.16(A)(1)");
  limit.value = 60;
  limit.unit = (char *) "C";
  INVALID (farm, stead_local_limit_repo_save (farm->store, &limit, table, err), "in the unit of the table");
  limit.value = 140;
  limit.unit = (char *) "F";
  ACT (farm, stead_local_limit_repo_save (farm->store, &limit, table, err));
  next.value = 145;
  next.from_day = TODAY;
  ACT (farm, stead_local_limit_repo_save (farm->store, &next, table, err));
  all = stead_local_limit_repo_list (farm->store, STEAD_DAY_NONE, NULL);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpint (((SteadLocalLimit *) all->pdata[0])->retired_on, ==, TODAY);
  g_assert_true (stead_local_limit_repo_apply (farm->store, TODAY - 1, table, NULL));
  g_assert_cmpfloat (stead_limit_table_by_id (table, "hold-hot-135")->value, ==, 140);
  g_assert_true (stead_local_limit_repo_apply (farm->store, TODAY, table, NULL));
  g_assert_cmpfloat (stead_limit_table_by_id (table, "hold-hot-135")->value, ==, 145);
  ACT (farm, stead_local_limit_repo_retire (farm->store, next.id, err));
  farm_assert_undo (farm);
}

static void
test_drills (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(GPtrArray) drills = NULL;
  gint64 lot, drill;

  farm_receipt (farm, farm->feed, TODAY, 10, 1000, FALSE);
  lot = count (farm, "SELECT id FROM lot");
  ACT (farm, stead_drill_repo_start (farm->store, lot, EIGHT, farm->student, &drill, err));
  INVALID (farm, stead_drill_repo_start (farm->store, lot, EIGHT, 0, NULL, err), "under way");
  INVALID (farm, stead_drill_repo_finish (farm->store, drill, EIGHT - 1, 1, 1, NULL, err), "before it began");
  INVALID (farm, stead_drill_repo_finish (farm->store, drill, EIGHT + 1, 1, 1.2, NULL, err), "100 %");
  ACT (farm, stead_drill_repo_finish (farm->store, drill, EIGHT + 1080, 1, 0.96, "One bag was elsewhere.", err));
  drills = stead_drill_repo_list (farm->store, NULL);
  g_assert_cmpuint (drills->len, ==, 1);
  g_assert_cmpfloat (((SteadDrill *) drills->pdata[0])->found_frac, ==, 0.96);
  ACT (farm, stead_drill_repo_delete (farm->store, drill, err));
  g_assert_cmpint (count (farm, "SELECT count (*) FROM drill"), ==, 0);
  REFUSE (farm, stead_drill_repo_delete (farm->store, drill, err), STEAD_STORE_ERROR_NOT_FOUND, "no longer");
  farm_assert_undo (farm);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/check-repo/round-trip", test_round_trip);
  g_test_add_func ("/store/check-repo/refusals", test_refusals);
  g_test_add_func ("/store/check-repo/change", test_change);
  g_test_add_func ("/store/check-repo/judge", test_judge);
  g_test_add_func ("/store/check-repo/judge-ice", test_judge_ice);
  g_test_add_func ("/store/check-repo/readings", test_readings);
  g_test_add_func ("/store/check-repo/set-day", test_set_day);
  g_test_add_func ("/store/check-repo/pots", test_pots);
  g_test_add_func ("/store/check-repo/run-sheet", test_run_sheet);
  g_test_add_func ("/store/check-repo/stale", test_stale);
  g_test_add_func ("/store/check-repo/renew", test_renew);
  g_test_add_func ("/store/check-repo/holds", test_holds);
  g_test_add_func ("/store/check-repo/pot-holds", test_pot_holds);
  g_test_add_func ("/store/check-repo/hold-by-hand", test_hold_by_hand);
  g_test_add_func ("/store/check-repo/sign", test_sign);
  g_test_add_func ("/store/check-repo/frozen-by-the-file", test_frozen_by_the_file);
  g_test_add_func ("/store/check-repo/instruments", test_instruments);
  g_test_add_func ("/store/check-repo/local-limits", test_local_limits);
  g_test_add_func ("/store/check-repo/drills", test_drills);
  return g_test_run ();
}

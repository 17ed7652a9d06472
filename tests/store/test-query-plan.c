/* test-query-plan.c - no query that a page runs walks through the whole log or ledger.
 *
 * Every statement that the repositories run is caught while they run, and the
 * database is asked how it would answer it: through an index, or by a walk.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "check-fixture.h"
#include "store/stead-routine-repo.h"
#include "store/stead-water-repo.h"
#include "store/stead-crop-repo.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-sale-cash-up.h"
#include "store/stead-sale-tally.h"
#include "store/stead-event-repo.h"
#include "store/stead-journal-repo.h"
#include "store/stead-packet-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-shot-repo.h"
#include "store/stead-skill-repo.h"
#include "store/stead-months-repo.h"
#include "store/stead-people-repo.h"
#include "store/stead-purge.h"
#include "store/stead-release-repo.h"
#include "store/stead-joint-repo.h"
#include "store/stead-overhead-repo.h"
#include "store/stead-scenario-repo.h"
#include "store/stead-work-repo.h"

static int
catch_statement (unsigned  type,
                 void     *context,
                 void     *stmt,
                 void     *text)
{
  const char *sql = sqlite3_sql (stmt);

  /* Statements of triggers come as comments. */
  if (type == SQLITE_TRACE_STMT && sql != NULL && !g_str_has_prefix (text, "--"))
    g_hash_table_add (context, g_strdup (sql));
  return 0;
}

/* "SCAN e", "SCAN movement USING COVERING INDEX …": a walk through one of the large tables. */
static gboolean
is_walk (const char *detail)
{
  static const char * const large[] = { "batch_entry", "e", "movement", "m", "harvest", "h", "treatment",
                                        "reading", "check_line", "check_limit", "check_action", "a",
                                        "t", "batch_note", "water_test", "routine_done", "d", "climate",
                                        "sale_tap", "sale_line", "l", "o", "f", "work_span", "w",
                                        "joint_figure", "joint_split", "scenario_value", "price_trial" };
  g_auto(GStrv) words = g_strsplit (detail, " ", -1);

  if (g_strv_length (words) < 2 || strcmp (words[0], "SCAN") != 0)
    return FALSE;
  /* Readings go by a letter that others have too. */
  if (strstr (detail, "INDEX reading_") != NULL)
    return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (large); i++)
    if (strcmp (words[1], large[i]) == 0)
      return TRUE;
  return FALSE;
}

static int
count_walks (Farm       *farm,
             const char *sql)
{
  g_autofree char *explain = g_strconcat ("EXPLAIN QUERY PLAN ", sql, NULL);
  sqlite3_stmt *stmt = NULL;
  int walks = 0;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (farm->store), explain, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    if (is_walk ((const char *) sqlite3_column_text (stmt, 3)))
      {
        g_test_message ("%s\n  in %s", sqlite3_column_text (stmt, 3), sql);
        walks++;
      }
  sqlite3_finalize (stmt);
  return walks;
}

static Farm *
filled (void)
{
  Farm *farm = farm_new ();

  farm_receipt (farm, farm->feed, TODAY - 60, 100, 9000, FALSE);
  farm_receipt (farm, farm->straw, TODAY - 60, 100, 9000, FALSE);
  for (int i = 1; i < 40; i++)
    farm_entry (farm, TODAY - i, 20, 3, i == 20);
  return farm;
}

static void
read_pages (Farm    *farm,
            GError **error)
{
  SteadFlockTotals totals;
  SteadHarvestTotals harvested;
  SteadStock stock;
  SteadUsualYear usual;

  g_ptr_array_unref (stead_flock_repo_list (farm->store, TRUE, error));
  stead_flock_free (stead_flock_repo_get (farm->store, farm->flock, error));
  g_assert_cmpint (stead_flock_repo_count_entries (farm->store, farm->flock, error), ==, 39);
  g_ptr_array_unref (stead_flock_repo_page_entries (farm->store, farm->flock, 3, 10, error));
  g_ptr_array_unref (stead_flock_repo_entries (farm->store, farm->flock, TODAY - 9, TODAY, error));
  g_assert_cmpint (stead_flock_repo_alive (farm->store, farm->flock, TODAY, error), ==, 29);
  g_assert_true (stead_flock_repo_totals (farm->store, farm->flock, TODAY - 50, TODAY, &totals, error));
  g_array_unref (stead_flock_repo_weeks (farm->store, farm->flock, TODAY - 50, TODAY, error));
  g_assert_cmpint (stead_flock_repo_last_eggs (farm->store, farm->flock, error), ==, TODAY - 1);
  g_assert_cmpint (stead_flock_repo_last_feed (farm->store, farm->flock, error), ==, TODAY - 1);
  g_assert_cmpint (stead_flock_repo_last_bedding (farm->store, farm->flock, error), ==, TODAY - 2);
  g_ptr_array_unref (stead_lot_repo_list (farm->store, FALSE, error));
  g_ptr_array_unref (stead_lot_repo_list (farm->store, TRUE, error));
  g_ptr_array_unref (stead_lot_repo_moves (farm->store, 1, error));
  g_ptr_array_unref (stead_lot_repo_uses (farm->store, farm->flock, TODAY - 84, TODAY, error));
  g_ptr_array_unref (stead_lot_repo_use_moves (farm->store, farm->flock, farm->feed, TODAY - 84, TODAY, error));
  g_assert_true (stead_lot_repo_stock (farm->store, farm->feed, TODAY, 14, &stock, error));
  g_ptr_array_unref (stead_receipt_repo_list (farm->store, error));
  g_ptr_array_unref (stead_search_repo_find (farm->store, "hens", 10, error));
  g_ptr_array_unref (stead_harvest_repo_list (farm->store, farm->flock, TODAY - 84, TODAY, error));
  g_assert_true (stead_harvest_repo_totals (farm->store, farm->flock, TODAY - 84, TODAY, &harvested, error));
  g_assert_cmpint (stead_treatment_repo_wait (farm->store, farm->flock, TODAY, error), ==, STEAD_DAY_NONE);
  g_ptr_array_unref (stead_batch_repo_notes (farm->store, farm->flock, error));
  g_ptr_array_unref (stead_treatment_repo_list (farm->store, farm->flock, error));
  g_ptr_array_unref (stead_crop_repo_list (farm->store, FALSE, error));
  g_ptr_array_unref (stead_crop_repo_entries (farm->store, farm->flock, TODAY - 84, TODAY, error));
  g_ptr_array_unref (stead_climate_repo_list (farm->store, 0, TODAY - 84, TODAY, error));
  g_assert_true (stead_climate_repo_usual (farm->store, 0, &usual, error));
  g_assert_no_error (*error);
}

static void
read_waters (Farm    *farm,
             GError **error)
{
  stead_water_free (stead_water_repo_get (farm->store, 1, error));
  g_ptr_array_unref (stead_water_repo_list (farm->store, TRUE, error));
  g_ptr_array_unref (stead_water_repo_fish (farm->store, 1, TODAY - 7, TODAY, error));
  g_ptr_array_unref (stead_water_test_repo_list (farm->store, 1, TODAY - 50, TODAY, error));
  stead_water_test_free (stead_water_test_repo_last (farm->store, 1, error));
  for (int i = 0; i < STEAD_N_READINGS; i++)
    stead_water_test_free (stead_water_test_repo_last_of (farm->store, 1, (SteadReading) i, error));
  g_ptr_array_unref (stead_routine_repo_list (farm->store, 0, 0, error));
  g_ptr_array_unref (stead_routine_repo_list (farm->store, 0, 1, error));
  g_ptr_array_unref (stead_routine_repo_list (farm->store, farm->flock, 0, error));
  g_assert_no_error (*error);
}

static void
write_waters (Farm *farm)
{
  g_autoptr(SteadWater) water = stead_water_new ();
  g_autoptr(SteadWaterTest) test = stead_water_test_new ();
  g_autoptr(SteadRoutine) routine = stead_routine_new ();

  water->name = g_strdup ("Loop");
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  test->water_id = routine->water_id = water->id;
  test->day = water->ended_on = TODAY;
  test->values[STEAD_READING_PH] = 7;
  ACT (farm, stead_water_test_repo_save (farm->store, test, err));
  ACT (farm, stead_water_repo_save (farm->store, water, err));
  routine->name = g_strdup ("Clean the filter");
  routine->every_days = 7;
  routine->start_on = TODAY;
  ACT (farm, stead_routine_repo_save (farm->store, routine, err));
  ACT (farm, stead_routine_repo_done (farm->store, routine->id, TODAY, 0, NULL, err));
}

static void
write_pages (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (farm->store, farm->flock, &error);
  gint64 id = farm_entry (farm, TODAY, 20, 3, 0);
  gint64 receipt = farm_receipt (farm, farm->feed, TODAY - 10, 10, 100, FALSE);
  gint64 fish = farm_fish (farm, "Catfish 1", 9);

  SteadClimateDay day = { .day = TODAY - 1, .min_c = 9, .max_c = 21, .rh_frac = NAN, .light_mol = NAN };

  ACT (farm, stead_flock_repo_save (farm->store, flock, err));
  ACT (farm, stead_climate_repo_save (farm->store, &day, TRUE, err));
  ACT (farm, stead_lot_repo_use (farm->store, farm->straw, farm->flock, TODAY - 2, 3, 0, err));
  ACT (farm, stead_lot_repo_adjust (farm->store, 2, STEAD_MOVE_LOST, TODAY, -1, "wet", 0, err));
  farm_harvest (farm, farm->flock, farm_item (farm, "Eggs", STEAD_ITEM_PRODUCE, "ea"), TODAY - 1, 30, 30, 500);
  ACT (farm, stead_batch_repo_end (farm->store, fish, TODAY, err));
  ACT (farm, stead_flock_repo_delete_entry (farm->store, id, err));
  ACT (farm, stead_receipt_repo_delete (farm->store, receipt, err));
  ACT (farm, stead_item_repo_delete (farm->store, farm->carton, err));
}

static void
write_sales (Farm *farm)
{
  g_autoptr(SteadProduct) product = stead_product_new ();
  g_autoptr(SteadSale) sale = stead_sale_new ();
  SteadSaleGood *good = stead_sale_good_new ();
  gint64 tap = 0;

  product->name = g_strdup ("Eggs");
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  sale->name = g_strdup ("Market");
  sale->day = TODAY;
  sale->closes_min = 600;
  good->product_id = product->id;
  good->planned = 9;
  g_ptr_array_add (sale->goods, good);
  ACT (farm, stead_sale_repo_save (farm->store, sale, NULL, err));
  ACT (farm, stead_sale_tally_add (farm->store, good->id, STEAD_TAP_SOLD, 1, 9, &tap, err));
  ACT (farm, stead_sale_tally_set_price (farm->store, good->id, 5, 10, err));
  ACT (farm, stead_sale_tally_take_back (farm->store, tap, 11, err));
  ACT (farm, stead_sale_repo_save (farm->store, sale, NULL, err));
}

static void
read_sales (Farm    *farm,
            GError **error)
{
  SteadSaleTill till;
  g_autoptr(SteadSale) sale = stead_sale_repo_get (farm->store, 1, error);

  g_ptr_array_unref (stead_sale_repo_list (farm->store, error));
  g_assert_cmpint (stead_sale_repo_next (farm->store, error), ==, 1);
  g_array_unref (stead_sale_repo_sums (farm->store, 1, error));
  g_array_unref (stead_sale_tally_list (farm->store, 1, error));
  g_array_unref (stead_sale_tally_prices (farm->store, 1, error));
  g_assert_cmpint (stead_sale_tally_last (farm->store, 1, error), ==, 0);
  g_ptr_array_unref (stead_sale_order_list (farm->store, 1, error));
  g_ptr_array_unref (stead_sale_left_list (farm->store, 1, error));
  g_ptr_array_unref (stead_work_repo_of_sale (farm->store, 1, error));
  g_assert_true (stead_sale_till (farm->store, sale, NULL, NULL, &till, error));
  g_assert_no_error (*error);
}

/* A list made, read, settled, signed; and all that the pages of Check read. */
static void
use_checks (Farm    *farm,
            GError **error)
{
  g_autoptr(SteadCheckList) list = check_list_saved (farm, TODAY, 0, FALSE);
  gint64 hot = ((const SteadListLine *) list->lines->pdata[LINE_HOT])->id;
  SteadDone done = { .at = EIGHT, .text = (char *) "Heated again." };

  check_read_all (farm, list->id);
  done.reading_id = check_read (farm, hot, EIGHT + 900, 120, 0);
  ACT (farm, stead_done_repo_add (farm->store, &done, err));
  g_ptr_array_unref (stead_check_repo_list (farm->store, TODAY - 30, TODAY, error));
  g_ptr_array_unref (stead_check_repo_of_batch (farm->store, 1, error));
  g_ptr_array_unref (stead_check_repo_of_sale (farm->store, 1, error));
  g_ptr_array_unref (stead_shown_repo_of_days (farm->store, TODAY - 30, TODAY, error));
  g_ptr_array_unref (stead_shown_repo_of_place (farm->store, 1, EIGHT - 9, EIGHT, error));
  g_ptr_array_unref (stead_shown_repo_tried (farm->store, 1, EIGHT - 9, EIGHT, error));
  g_ptr_array_unref (stead_shown_repo_of_batch (farm->store, 1, error));
  g_ptr_array_unref (stead_done_repo_of_list (farm->store, list->id, error));
  g_ptr_array_unref (stead_done_repo_of_days (farm->store, TODAY - 30, TODAY, error));
  g_ptr_array_unref (stead_done_repo_of_place (farm->store, 1, EIGHT - 9, EIGHT, error));
  g_ptr_array_unref (stead_hold_repo_open (farm->store, error));
  g_ptr_array_unref (stead_hold_repo_of_list (farm->store, list->id, error));
  g_assert_cmpint (stead_hold_repo_is_held (farm->store, 1, error), ==, 0);
  ACT (farm, stead_check_repo_sign (farm->store, list->id, farm->advisor, err));
  g_assert_no_error (*error);
}

/* Skills, events and packets of one person. */
static void
use_learning (Farm    *farm,
              GError **error)
{
  double minutes;
  int others;
  g_autoptr(SteadSkill) skill = g_new0 (SteadSkill, 1);
  SteadSkillTry try_ = { .person_id = farm->student, .day = TODAY, .level = STEAD_SKILL_ALONE };

  skill->words = g_strdup ("Collect eggs");
  skill->retired_on = STEAD_DAY_NONE;
  ACT (farm, stead_skill_repo_save (farm->store, skill, err));
  try_.skill_id = skill->id;
  ACT (farm, stead_skill_repo_save_try (farm->store, &try_, err));
  ACT (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_ENTRY, 1, err));
  g_ptr_array_unref (stead_skill_repo_tries (farm->store, farm->student, error));
  g_ptr_array_unref (stead_skill_repo_evidence (farm->store, farm->student, error));
  g_ptr_array_unref (stead_skill_repo_offer (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_ptr_array_unref (stead_reflection_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_goal_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_role_held_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_shot_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_event_repo_list (farm->store, error));
  g_ptr_array_unref (stead_event_repo_team (farm->store, 1, error));
  g_ptr_array_unref (stead_event_repo_needs (farm->store, 1, error));
  g_ptr_array_unref (stead_event_repo_scores (farm->store, 1, error));
  g_assert_true (stead_event_repo_minutes (farm->store, 1, farm->student, &minutes, error));
  g_ptr_array_unref (stead_packet_repo_list (farm->store, error));
  g_ptr_array_unref (stead_packet_repo_hours (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_ptr_array_unref (stead_packet_repo_trainings (farm->store, farm->student, error));
  g_ptr_array_unref (stead_packet_repo_fixes (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_array_unref (stead_packet_repo_batches (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_array_unref (stead_packet_repo_builds (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_array_unref (stead_packet_repo_sales (farm->store, farm->student, TODAY - 365, TODAY, error));
  g_ptr_array_unref (stead_packet_repo_mates (farm->store, 1, farm->student, &others, error));
  g_assert_no_error (*error);
}

/* A build with its bill, quotes, grants, pledges and receipts. */
static void
use_builds (Farm    *farm,
            GError **error)
{
  g_ptr_array_unref (stead_build_repo_list (farm->store, error));
  g_ptr_array_unref (stead_build_line_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_build_phase_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_build_pledge_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_build_income_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_build_upkeep_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_build_buy_repo_list (farm->store, 1, error));
  g_array_unref (stead_build_grant_repo_list (farm->store, 1, error));
}

/* Hours entered, checked, listed; groups, rota, trainings, timers, drafts. */
static void
use_people (Farm    *farm,
            GError **error)
{
  SteadWorkSpan span = { .person_id = farm->student, .day = TODAY, .from_at = EIGHT, .to_at = EIGHT + 3600, .minutes = 60,
                         .duty = (char *) "Feed" };
  int n;

  ACT (farm, stead_work_repo_enter (farm->store, &span, NULL, err));
  ACT (farm, stead_work_repo_enter (farm->store, &span, NULL, err));
  g_ptr_array_unref (stead_work_repo_list (farm->store, TODAY - 7, TODAY, 0, error));
  g_ptr_array_unref (stead_work_repo_list (farm->store, TODAY - 7, TODAY, farm->student, error));
  stead_work_span_free (stead_work_repo_get (farm->store, span.id, error));
  g_ptr_array_unref (stead_work_repo_duties (farm->store, error));
  g_ptr_array_unref (stead_work_repo_links (farm->store, &span, error));
  g_ptr_array_unref (stead_work_repo_drafts (farm->store, TODAY - 14, TODAY, error));
  ACT (farm, stead_work_repo_check (farm->store, TODAY, TODAY, 0, farm->advisor, &n, err));
  ACT (farm, stead_work_repo_check (farm->store, TODAY, TODAY, farm->student, farm->advisor, &n, err));
  ACT (farm, stead_work_timer_start (farm->store, farm->student, "Feed", EIGHT + 7200, err));
  ACT (farm, stead_work_timer_pause (farm->store, farm->student, EIGHT + 7800, err));
  ACT (farm, stead_work_timer_stop (farm->store, farm->student, TODAY, EIGHT + 9000, err));
  g_ptr_array_unref (stead_work_timer_list (farm->store, error));
  g_ptr_array_unref (stead_group_repo_list (farm->store, error));
  g_ptr_array_unref (stead_turn_repo_list (farm->store, TODAY, error));
  g_ptr_array_unref (stead_training_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_consent_repo_list (farm->store, farm->student, error));
  g_ptr_array_unref (stead_class_repo_sums (farm->store, TODAY - 200, TODAY, 7, error));
  g_ptr_array_unref (stead_class_repo_minutes (farm->store, TODAY - 200, TODAY, 0, error));
  g_ptr_array_unref (stead_months_repo_hours (farm->store, TODAY - 200, TODAY, error));
  g_ptr_array_unref (stead_months_repo_list (farm->store, TODAY - 200, TODAY, error));
  g_ptr_array_unref (stead_release_repo_list (farm->store, error));
  g_ptr_array_unref (stead_purge_list (farm->store, error));
  g_assert_no_error (*error);
}

/* What is kept to price with: reads of one product, one batch and the farm alone. */
static void
use_pricing (Farm    *farm,
             GError **error)
{
  g_autoptr(SteadJointPlan) plan = stead_joint_plan_new ();
  g_autoptr(SteadScenario) scenario = stead_scenario_new ("Dear feed");
  SteadPriceTrial trial = { .day = TODAY - 3, .price_cents = 450, .units = 40 };
  SteadOverhead overhead = { STEAD_OVERHEAD_HOURS, 20000, 500 };

  stead_joint_plan_set (plan, "hens", "weight", 1.9);
  stead_scenario_set (scenario, "input", 1.1);
  ACT (farm, stead_joint_repo_save (farm->store, farm->flock, plan, err));
  ACT (farm, stead_scenario_repo_save (farm->store, 1, scenario, err));
  ACT (farm, stead_scenario_repo_rename (farm->store, 1, "Dear feed", "Dearer feed", err));
  ACT (farm, stead_price_trial_repo_add (farm->store, 1, &trial, err));
  ACT (farm, stead_overhead_repo_set (farm->store, &overhead, err));
  stead_joint_plan_free (stead_joint_repo_get (farm->store, farm->flock, error));
  g_ptr_array_unref (stead_scenario_repo_list (farm->store, 1, error));
  g_ptr_array_unref (stead_price_trial_repo_list (farm->store, 1, error));
  g_assert_true (stead_overhead_repo_get (farm->store, &overhead, error));
  ACT (farm, stead_scenario_repo_delete (farm->store, 1, "Dearer feed", err));
  ACT (farm, stead_price_trial_repo_delete (farm->store, 1, err));
  g_assert_no_error (*error);
}

static void
test_no_walk (void)
{
  g_autoptr(Farm) farm = filled ();
  g_autoptr(GHashTable) caught = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr(GError) error = NULL;
  GHashTableIter iter;
  gpointer sql;
  int walks = 0;

  sqlite3_trace_v2 (stead_store_get_db (farm->store), SQLITE_TRACE_STMT, catch_statement, caught);
  write_pages (farm);
  read_pages (farm, &error);
  write_waters (farm);
  read_waters (farm, &error);
  write_sales (farm);
  read_sales (farm, &error);
  use_checks (farm, &error);
  use_learning (farm, &error);
  use_people (farm, &error);
  use_builds (farm, &error);
  use_pricing (farm, &error);
  sqlite3_trace_v2 (stead_store_get_db (farm->store), 0, NULL, NULL);
  g_assert_cmpuint (g_hash_table_size (caught), >, 30);
  g_hash_table_iter_init (&iter, caught);
  while (g_hash_table_iter_next (&iter, &sql, NULL))
    if (strncmp (sql, "SELECT", 6) == 0 || strncmp (sql, "DELETE", 6) == 0 || strncmp (sql, "UPDATE", 6) == 0)
      walks += count_walks (farm, sql);
  g_assert_cmpint (walks, ==, 0);
}

/* The check itself sees a walk. */
static void
test_sees_walk (void)
{
  g_autoptr(Farm) farm = farm_new ();

  g_assert_cmpint (count_walks (farm, "SELECT sum (eggs) FROM batch_entry"), ==, 1);
  g_assert_cmpint (count_walks (farm, "SELECT sum (m.cost_cents) FROM movement m WHERE m.kind = 'used'"), ==, 1);
  g_assert_cmpint (count_walks (farm, "SELECT sum (eggs) FROM batch_entry WHERE batch_id = 1"), ==, 0);
}

/* Whether some table is walked through once for each row of another. */
static gboolean
walks_for_each_row (Farm       *farm,
                    const char *sql)
{
  g_autofree char *explain = g_strconcat ("EXPLAIN QUERY PLAN ", sql, NULL);
  g_autoptr(GHashTable) repeated = g_hash_table_new (NULL, NULL);
  sqlite3_stmt *stmt = NULL;
  gboolean found = FALSE;

  g_assert_cmpint (sqlite3_prepare_v2 (stead_store_get_db (farm->store), explain, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      const char *detail = (const char *) sqlite3_column_text (stmt, 3);

      if (g_str_has_prefix (detail, "CORRELATED"))
        g_hash_table_add (repeated, GINT_TO_POINTER (sqlite3_column_int (stmt, 0)));
      else if (g_str_has_prefix (detail, "SCAN")
               && g_hash_table_contains (repeated, GINT_TO_POINTER (sqlite3_column_int (stmt, 1))))
        found = TRUE;
    }
  sqlite3_finalize (stmt);
  return found;
}

/* The statements read the whole ledger, once: no receipt walks through all the others. */
static void
test_books_walk_once (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(Farm) farm = filled ();
  g_autoptr(GHashTable) caught = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  SteadReceiptPaid paid;
  GHashTableIter iter;
  gpointer sql;

  sqlite3_trace_v2 (stead_store_get_db (farm->store), SQLITE_TRACE_STMT, catch_statement, caught);
  g_array_unref (stead_journal_repo_read (farm->store, TODAY - 30, TODAY, &error));
  g_ptr_array_unref (stead_cash_repo_receipts_off (farm->store, &error));
  g_assert_true (stead_cash_repo_receipt_paid (farm->store, 1, &paid, &error));
  sqlite3_trace_v2 (stead_store_get_db (farm->store), 0, NULL, NULL);
  g_assert_no_error (error);
  g_assert_cmpuint (g_hash_table_size (caught), >=, 9);
  g_hash_table_iter_init (&iter, caught);
  while (g_hash_table_iter_next (&iter, &sql, NULL))
    if (walks_for_each_row (farm, sql))
      g_error ("walks for each row: %s", (const char *) sql);
  g_assert_true (walks_for_each_row (farm, "SELECT id FROM receipt r WHERE NOT EXISTS"
                                           " (SELECT 1 FROM receipt n WHERE n.corrects_id = r.id)"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/query-plan/sees-walk", test_sees_walk);
  g_test_add_func ("/store/query-plan/no-walk", test_no_walk);
  g_test_add_func ("/store/query-plan/books-walk-once", test_books_walk_once);
  return g_test_run ();
}

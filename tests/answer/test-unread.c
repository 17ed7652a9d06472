/* test-unread.c - a farm that cannot be read, has not got what is asked about, or has nothing.
 *
 * Whatever statement fails on the way to an answer, and however it is asked for, there
 * is no answer but a message: never one of half a farm.
 */
#include "config.h"

#include <sqlite3.h>

#include "answer/stead-agenda-answer.h"
#include "answer/stead-asset-answer.h"
#include "answer/stead-batch-card.h"
#include "answer/stead-best-use.h"
#include "answer/stead-build-path.h"
#include "answer/stead-cash-answer.h"
#include "answer/stead-check-days-answer.h"
#include "answer/stead-check-menu.h"
#include "answer/stead-class-answer.h"
#include "answer/stead-cost-steps.h"
#include "answer/stead-crop-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-egg-answer.h"
#include "answer/stead-event-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-folder-answer.h"
#include "answer/stead-greenhouse-answer.h"
#include "answer/stead-harvest-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-how-sure-answer.h"
#include "answer/stead-imprint.h"
#include "answer/stead-instruments-answer.h"
#include "answer/stead-joint-answer.h"
#include "answer/stead-journal-answer.h"
#include "answer/stead-kitchen-answer.h"
#include "answer/stead-label-answer.h"
#include "answer/stead-limit-card-answer.h"
#include "answer/stead-line-answer.h"
#include "answer/stead-log-answer.h"
#include "answer/stead-log-cash.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-price-choice.h"
#include "answer/stead-question.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-recipe-list.h"
#include "answer/stead-results-answer.h"
#include "answer/stead-sale-answer.h"
#include "answer/stead-sale-tally-answer.h"
#include "answer/stead-season-answer.h"
#include "answer/stead-statement-answer.h"
#include "answer/stead-stock-answer.h"
#include "answer/stead-store-room-answer.h"
#include "answer/stead-together-answer.h"
#include "answer/stead-water-answer.h"
#include "answer/stead-what-if-answer.h"
#include "answer/stead-workbook-answer.h"

#include "demo.h"
#include "farm.h"
#include "stumble.h"
#include "unread.h"

#define TODAY DEMO_TODAY
#define NOBODY 987654321   /* the id of nothing */

/* --- what can be asked ------------------------------------------------------------------ */


UNREAD_ASK (static, agenda, SteadAgendaAnswer, stead_agenda_answer_new (store, error))
UNREAD_ASK (static, assets, SteadAssetAnswer, stead_asset_answer_new (store, error))
UNREAD_ASK (static, batch, SteadBatchAnswer, stead_batch_answer_new (store, id, error))
UNREAD_ASK (static, card, SteadBatchCard, stead_batch_card_new (store, id, error))
UNREAD_ASK (static, best_use, SteadBestUse, stead_best_use_new (store, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, build, SteadBuildAnswer, stead_build_answer_new (store, id, error))
UNREAD_ASK (static, cash, SteadCashAnswer, stead_cash_answer_new (store, TODAY - 90, TODAY, 0, error))
UNREAD_ASK (static, account, SteadCashAnswer, stead_cash_answer_new (store, TODAY - 90, TODAY, id, error))
UNREAD_ASK (static, check, SteadCheckAnswer, stead_check_answer_new (store, id, error))
UNREAD_ASK (static, check_days, SteadCheckDaysAnswer, stead_check_days_answer_new (store, TODAY - 30, TODAY, error))
UNREAD_ASK (static, check_today, SteadCheckTodayAnswer, stead_check_today_answer_new (store, error))
UNREAD_ASK (static, air, SteadPlaceAirAnswer, stead_place_air_answer_new (store, id, 28, error))
UNREAD_ASK (static, menu_kitchen, SteadCheckMenu, stead_check_menu_new_kitchen (store, id, error))
UNREAD_ASK (static, menu_recipe, SteadCheckMenu, stead_check_menu_new_recipe (store, id, error))
UNREAD_ASK (static, menu_sale, SteadCheckMenu, stead_check_menu_new_sale_day (store, id, error))
UNREAD_ASK (static, class, SteadClassAnswer, stead_class_answer_new (store, error))
UNREAD_ASK (static, cost, SteadCostAnswer, stead_cost_answer_new (store, id, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, cost_whole, SteadCostAnswer, stead_cost_answer_new (store, id, STEAD_PERIOD_WHOLE_BATCH, error))
UNREAD_ASK (static, cost_steps, SteadCostSteps, stead_cost_steps_new (store, id, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, crop, SteadCropAnswer, stead_crop_answer_new (store, id, error))
UNREAD_ASK (static, due, SteadDueAnswer, stead_due_answer_new (store, error))
UNREAD_ASK (static, eggs, SteadEggAnswer, stead_egg_answer_new (store, id, error))
UNREAD_ASK (static, event, SteadEventAnswer, stead_event_answer_new (store, id, error))
UNREAD_ASK (static, fish, SteadFishAnswer, stead_fish_answer_new (store, id, error))
UNREAD_ASK (static, fish_now, SteadFishAnswer, stead_fish_answer_new_now (store, id, error))
UNREAD_ASK (static, flock, SteadFlockAnswer, stead_flock_answer_new (store, id, error))
UNREAD_ASK (static, leaving, SteadLeaving, stead_folder_answer_leaving (store, NULL, error))
UNREAD_ASK (static, greenhouse, SteadGreenhouseAnswer, stead_greenhouse_answer_new (store, id, error))
UNREAD_ASK (static, harvest, SteadHarvestAnswer, stead_harvest_answer_new (store, id, 0, error))
UNREAD_ASK (static, hours, SteadHoursAnswer, stead_hours_answer_new (store, TODAY - 90, TODAY, 0, error))
UNREAD_ASK (static, hours_of, SteadHoursAnswer, stead_hours_answer_new (store, TODAY - 90, TODAY, id, error))
UNREAD_ASK (static, how_sure, SteadHowSure, stead_how_sure_new (store, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, imprint, SteadImprint, stead_imprint_new (store, error))
UNREAD_ASK (static, instruments, SteadInstrumentsAnswer, stead_instruments_answer_new (store, error))
UNREAD_ASK (static, joint_batches, GPtrArray, stead_joint_batches (store, error))
UNREAD_ASK (static, joint, SteadJointAnswer, stead_joint_answer_new (store, id, error))
UNREAD_ASK (static, journal, SteadJournalAnswer, stead_journal_answer_new (store, id, error))
UNREAD_ASK (static, kitchen, SteadKitchenAnswer, stead_kitchen_answer_new (store, id, error))
UNREAD_ASK (static, label, SteadLabelAnswer, stead_label_answer_new (store, id, STEAD_LABEL_JAR, 20, error))
UNREAD_ASK (static, limit_card, SteadLimitCardAnswer, stead_limit_card_answer_new (store, NULL, error))
UNREAD_ASK (static, line, SteadLineReader, stead_line_reader_new (store, error))
UNREAD_ASK (static, flock_log, SteadLogAnswer, stead_log_answer_flock (store, id, error))
UNREAD_ASK (static, fish_log, SteadLogAnswer, stead_log_answer_fish (store, id, error))
UNREAD_ASK (static, weighings, SteadLogAnswer, stead_log_answer_weighings (store, id, error))
UNREAD_ASK (static, cash_log, SteadLogAnswer, stead_log_answer_cash (store, 0, TODAY - 90, TODAY, error))
UNREAD_ASK (static, packet, SteadPacketAnswer, stead_packet_answer_new (store, id, NULL, error))
UNREAD_ASK (static, packet_people, GPtrArray, stead_packet_people (store, error))
UNREAD_ASK (static, price, SteadPriceAnswer, stead_price_answer_new (store, id, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, price_choice, SteadPriceChoice, stead_price_choice_new (store, id, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, recipe, SteadRecipeAnswer, stead_recipe_answer_new (store, id, 0, error))
UNREAD_ASK (static, recipes, GPtrArray, stead_recipe_list_new (store, TRUE, error))
UNREAD_ASK (static, results, SteadResultsAnswer, stead_results_answer_new (store, 0, error))
UNREAD_ASK (static, results_of, SteadResultsAnswer, stead_results_answer_new (store, id, error))
UNREAD_ASK (static, sale, SteadSaleAnswer, stead_sale_answer_new (store, id, error))
UNREAD_ASK (static, tally, SteadTallyAnswer, stead_tally_answer_new (store, id, error))
UNREAD_ASK (static, season, SteadSeasonAnswer, stead_season_answer_new (store, error))
UNREAD_ASK (static, statement, SteadStatementAnswer, stead_statement_answer_new (store, TODAY - 90, TODAY, 0, error))
UNREAD_ASK (static, statement_of, SteadStatementAnswer, stead_statement_answer_new (store, TODAY - 90, TODAY, id, error))
UNREAD_ASK (static, stock, SteadStockAnswer, stead_stock_answer_new (store, error))
UNREAD_ASK (static, store_room, SteadStoreRoomAnswer, stead_store_room_answer_new (store, error))
UNREAD_ASK (static, together, SteadTogether, stead_together_new (store, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, water, SteadWaterAnswer, stead_water_answer_new (store, id, error))
UNREAD_ASK (static, what_if, SteadWhatIf, stead_what_if_new (store, id, STEAD_PERIOD_12_WEEKS, error))
UNREAD_ASK (static, workbook, SteadWorkbookAnswer, stead_workbook_answer_new (store, TRUE, error))

typedef struct
{
  const char *name;
  UnreadAsk   ask;
  const char *of;      /* (nullable): SQL for the ids that it can be asked of */
  gboolean    narrows; /* an id only leaves out the rest: what is not there leaves nothing */
} Asked;

#define A_BATCH(table) "SELECT batch_id FROM " table
#define ANY(table) "SELECT id FROM " table

static const Asked asked[] = {
  { "agenda", unread_ask_agenda, NULL },
  { "assets", unread_ask_assets, NULL },
  { "batch", unread_ask_batch, ANY ("batch") },
  { "card", unread_ask_card, ANY ("batch") },
  { "best-use", unread_ask_best_use, NULL },
  { "build", unread_ask_build, ANY ("build") },
  { "cash", unread_ask_cash, NULL },
  { "account", unread_ask_account, ANY ("account"), TRUE },
  { "check", unread_ask_check, ANY ("checklist") },
  { "check-days", unread_ask_check_days, NULL },
  { "check-today", unread_ask_check_today, NULL },
  { "air", unread_ask_air, "SELECT DISTINCT place_id FROM climate", TRUE },
  { "menu-kitchen", unread_ask_menu_kitchen, A_BATCH ("kitchen") },
  { "menu-recipe", unread_ask_menu_recipe, ANY ("recipe") },
  { "menu-sale", unread_ask_menu_sale, ANY ("sale_day") },
  { "class", unread_ask_class, NULL },
  { "cost", unread_ask_cost, ANY ("product") },
  { "cost-whole", unread_ask_cost_whole, ANY ("product") },
  { "cost-steps", unread_ask_cost_steps, ANY ("product") },
  { "crop", unread_ask_crop, A_BATCH ("crop") },
  { "due", unread_ask_due, NULL },
  { "eggs", unread_ask_eggs, A_BATCH ("flock") },
  { "event", unread_ask_event, ANY ("event") },
  { "fish", unread_ask_fish, A_BATCH ("fish") },
  { "fish-now", unread_ask_fish_now, A_BATCH ("fish") },
  { "flock", unread_ask_flock, A_BATCH ("flock") },
  { "leaving", unread_ask_leaving, NULL },
  { "greenhouse", unread_ask_greenhouse, "SELECT DISTINCT place_id FROM climate", TRUE },
  { "harvest", unread_ask_harvest, A_BATCH ("fish") },
  { "hours", unread_ask_hours, NULL },
  { "hours-of", unread_ask_hours_of, ANY ("person"), TRUE },
  { "how-sure", unread_ask_how_sure, NULL },
  { "imprint", unread_ask_imprint, NULL },
  { "instruments", unread_ask_instruments, NULL },
  { "joint-batches", unread_ask_joint_batches, NULL },
  { "joint", unread_ask_joint, ANY ("batch") },
  { "journal", unread_ask_journal, ANY ("person") },
  { "kitchen", unread_ask_kitchen, A_BATCH ("kitchen") },
  { "label", unread_ask_label, ANY ("lot") },
  { "limit-card", unread_ask_limit_card, NULL },
  { "line", unread_ask_line, NULL },
  { "flock-log", unread_ask_flock_log, A_BATCH ("flock") },
  { "fish-log", unread_ask_fish_log, A_BATCH ("fish") },
  { "weighings", unread_ask_weighings, A_BATCH ("fish") },
  { "cash-log", unread_ask_cash_log, NULL },
  { "packet", unread_ask_packet, ANY ("packet") },
  { "packet-people", unread_ask_packet_people, NULL },
  { "price", unread_ask_price, ANY ("product") },
  { "price-choice", unread_ask_price_choice, ANY ("product") },
  { "recall", unread_ask_recall, ANY ("lot") },
  { "recipe", unread_ask_recipe, ANY ("recipe") },
  { "recipes", unread_ask_recipes, NULL },
  { "reflect", unread_ask_reflect, ANY ("person"), TRUE },
  { "release", unread_ask_release, NULL },
  { "results", unread_ask_results, NULL },
  { "results-of", unread_ask_results_of, ANY ("enterprise") },
  { "sale", unread_ask_sale, ANY ("sale_day") },
  { "sale-result", unread_ask_sale_result, ANY ("sale_day") },
  { "tally", unread_ask_tally, ANY ("sale_day") },
  { "season", unread_ask_season, NULL },
  { "skills", unread_ask_skills, ANY ("person") },
  { "statement", unread_ask_statement, NULL },
  { "statement-of", unread_ask_statement_of, ANY ("enterprise") },
  { "stock", unread_ask_stock, NULL },
  { "store-room", unread_ask_store_room, NULL },
  { "strip", unread_ask_strip, NULL },
  { "strip-of", unread_ask_strip_of, ANY ("product"), TRUE },
  { "together", unread_ask_together, NULL },
  { "trace", unread_ask_trace, ANY ("lot") },
  { "water", unread_ask_water, ANY ("water") },
  { "what-if", unread_ask_what_if, ANY ("product") },
  { "workbook", unread_ask_workbook, NULL },
};

/* --- the farm ----------------------------------------------------------------------------- */

/* The first, the middle and the last id of those that a question can be asked of; 0 if of none. */
static GArray *
ids_of (const Demo  *demo,
        const Asked *question)
{
  g_autofree char *path = g_build_filename (demo->folder, "demo.steading", NULL);
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (gint64));
  GArray *some = g_array_new (FALSE, TRUE, sizeof (gint64));
  sqlite3_stmt *stmt = NULL;
  sqlite3 *db = NULL;

  if (question->of == NULL)
    return g_array_set_size (some, 1);
  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (db, question->of, -1, &stmt, NULL), ==, SQLITE_OK);
  while (sqlite3_step (stmt) == SQLITE_ROW)
    {
      gint64 id = sqlite3_column_int64 (stmt, 0);

      g_array_append_val (all, id);
    }
  sqlite3_finalize (stmt);
  sqlite3_close (db);
  if (all->len == 0)
    g_error ("the demo farm has nothing to ask “%s” of", question->name);
  g_array_append_val (some, g_array_index (all, gint64, 0));
  if (all->len > 2)
    g_array_append_val (some, g_array_index (all, gint64, all->len / 2));
  if (all->len > 1)
    g_array_append_val (some, g_array_index (all, gint64, all->len - 1));
  return some;
}

/* --- the claims --------------------------------------------------------------------------- */

static guint
stumble_all (SteadStore  *store,
             const Asked *question,
             gint64       id)
{
  guint n = 0;

  for (;; n++)
    {
      g_autoptr(GError) error = NULL;
      gboolean worked;

      stumble_arm (SQLITE_IOERR);
      worked = question->ask (store, id, &error);
      if (!stumble_check (question->name, worked, error))
        return n;
    }
}

static void
test_no_answer_of_half_a_farm (Demo          *demo,
                               gconstpointer  data)
{
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr(GArray) ids = ids_of (demo, &asked[i]);
      gint64 start = g_get_monotonic_time ();
      guint found = 0;

      for (guint k = 0; k < ids->len; k++)
        found += stumble_all (demo->store, &asked[i], g_array_index (ids, gint64, k));
      g_test_message ("%s: %u places, %.1f s", asked[i].name, found, 1e-6 * (double) (g_get_monotonic_time () - start));
      n += found;
    }
  g_assert_cmpuint (n, >, 500);
}

/* The same for the questions by name, with their figures. */
static void
test_no_figures_of_half_a_farm (Demo          *demo,
                                gconstpointer  data)
{
  gsize n_questions;
  const SteadQuestion *questions = stead_question_list (&n_questions);

  for (gsize i = 0; i < n_questions; i++)
    for (gboolean failed = TRUE; failed;)
      {
        g_autoptr(GError) error = NULL;
        g_autofree char *sentence = NULL;
        g_autoptr(JsonNode) figures = NULL;
        gboolean worked;

        stumble_arm (SQLITE_CORRUPT_VTAB);
        worked = stead_question_ask (demo->store, questions[i].name, NULL, &sentence, &figures, &error);
        failed = stumble_check (questions[i].name, worked, error);
        g_assert_true (worked == (sentence != NULL) && worked == (figures != NULL));
      }
}

static void
test_what_is_not_there (Demo          *demo,
                        gconstpointer  data)
{
  for (gsize i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr(GError) error = NULL;
      gboolean answered = asked[i].ask (demo->store, asked[i].of != NULL ? NOBODY : 0, &error);

      if (asked[i].of == NULL || asked[i].narrows)
        g_assert_no_error (error);
      else if (answered || error == NULL || error->message[0] == '\0')
        g_error ("%s: an answer about what is not there", asked[i].name);
    }
}

/* On its first day a farm has nothing; each question has an answer, or says what to enter first. */
static void
test_first_day (void)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadStore) store = stead_store_create_memory ("First day", &error);
  gsize n_questions;
  const SteadQuestion *questions = stead_question_list (&n_questions);

  g_assert_no_error (error);
  stead_store_set_today (store, TODAY);
  for (gsize i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr(GError) refusal = NULL;

      g_test_message ("%s", asked[i].name);
      if (asked[i].of == NULL && !asked[i].ask (store, 0, &refusal))
        g_assert_true (refusal != NULL && g_utf8_strlen (refusal->message, -1) > 10);
    }
  for (gsize i = 0; i < n_questions; i++)
    {
      g_autoptr(GError) refusal = NULL;
      g_autofree char *sentence = NULL;
      g_autoptr(JsonNode) figures = NULL;

      g_test_message ("%s", questions[i].name);
      if (stead_question_ask (store, questions[i].name, NULL, &sentence, &figures, &refusal))
        g_assert_cmpint (g_utf8_strlen (sentence, -1), >, 10);
      else
        g_assert_true (refusal != NULL && g_utf8_strlen (refusal->message, -1) > 10);
    }
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/unread/no-answer-of-half-a-farm", Demo, NULL, demo_set_up, test_no_answer_of_half_a_farm, demo_tear_down);
  g_test_add ("/answer/unread/no-figures-of-half-a-farm", Demo, NULL, demo_set_up, test_no_figures_of_half_a_farm, demo_tear_down);
  g_test_add ("/answer/unread/what-is-not-there", Demo, NULL, demo_set_up, test_what_is_not_there, demo_tear_down);
  g_test_add_func ("/answer/unread/first-day", test_first_day);
  return g_test_run ();
}

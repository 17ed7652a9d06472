/* test-whys.c - whatever is worked out on the demo farm, it can be asked why: what is
 * computed, with which numbers, by which source.
 */
#include "config.h"

#include <sqlite3.h>

#include "answer/stead-asset-answer.h"
#include "answer/stead-best-use.h"
#include "answer/stead-build-answer.h"
#include "answer/stead-cash-answer.h"
#include "answer/stead-check-days-answer.h"
#include "answer/stead-class-answer.h"
#include "answer/stead-crop-answer.h"
#include "answer/stead-egg-answer.h"
#include "answer/stead-event-answer.h"
#include "answer/stead-fish-answer.h"
#include "answer/stead-flock-answer.h"
#include "answer/stead-greenhouse-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-how-sure-answer.h"
#include "answer/stead-instruments-answer.h"
#include "answer/stead-joint-answer.h"
#include "answer/stead-kitchen-answer.h"
#include "answer/stead-price-answer.h"
#include "answer/stead-price-choice.h"
#include "answer/stead-recipe-answer.h"
#include "answer/stead-sale-answer.h"
#include "answer/stead-sale-result-answer.h"
#include "answer/stead-sale-tally-answer.h"
#include "answer/stead-season-answer.h"
#include "answer/stead-skill-answer.h"
#include "answer/stead-statement-answer.h"
#include "answer/stead-together-answer.h"
#include "answer/stead-trace-answer.h"
#include "answer/stead-water-answer.h"
#include "answer/stead-what-if-answer.h"

#include "demo.h"
#include "farm.h"

typedef GPtrArray *(*Ask) (SteadStore *store, gint64 id);

#define ASK(name, Type, call, whys) \
  static GPtrArray * \
  ask_##name (SteadStore *store, gint64 id) \
  { \
    g_autoptr(Type) answer = call; \
    return answer != NULL ? whys (answer) : NULL; \
  }

ASK (assets, SteadAssetAnswer, stead_asset_answer_new (store, NULL), stead_asset_answer_whys)
ASK (best_use, SteadBestUse, stead_best_use_new (store, STEAD_PERIOD_SCHOOL_YEAR, NULL), stead_best_use_whys)
ASK (build, SteadBuildAnswer, stead_build_answer_new (store, id, NULL), stead_build_answer_whys)
ASK (cash, SteadCashAnswer, stead_cash_answer_new (store, stead_day_new (1900, 1, 1), stead_store_get_today (store), id, NULL),
     stead_cash_answer_whys)
ASK (crop, SteadCropAnswer, stead_crop_answer_new (store, id, NULL), stead_crop_answer_whys)
ASK (eggs, SteadEggAnswer, stead_egg_answer_new (store, id, NULL), stead_egg_answer_whys)
ASK (fish, SteadFishAnswer, stead_fish_answer_new (store, id, NULL), stead_fish_answer_whys)
ASK (flock, SteadFlockAnswer, stead_flock_answer_new (store, id, NULL), stead_flock_answer_whys)
ASK (greenhouse, SteadGreenhouseAnswer, stead_greenhouse_answer_new (store, id, NULL), stead_greenhouse_answer_whys)
ASK (how_sure, SteadHowSure, stead_how_sure_new (store, STEAD_PERIOD_SCHOOL_YEAR, NULL), stead_how_sure_whys)
ASK (instruments, SteadInstrumentsAnswer, stead_instruments_answer_new (store, NULL), stead_instruments_answer_whys)
ASK (joint, SteadJointAnswer, stead_joint_answer_new (store, id, NULL), stead_joint_answer_whys)
ASK (kitchen, SteadKitchenAnswer, stead_kitchen_answer_new (store, id, NULL), stead_kitchen_answer_whys)
ASK (price, SteadPriceAnswer, stead_price_answer_new (store, id, STEAD_PERIOD_WHOLE_BATCH, NULL), stead_price_answer_whys)
ASK (choice, SteadPriceChoice, stead_price_choice_new (store, id, STEAD_PERIOD_4_WEEKS, NULL), stead_price_choice_whys)
ASK (recipe, SteadRecipeAnswer, stead_recipe_answer_new (store, id, 0, NULL), stead_recipe_answer_whys)
ASK (checks, SteadCheckDaysAnswer,
     stead_check_days_answer_new (store, stead_store_get_today (store) - 365, stead_store_get_today (store), NULL),
     stead_check_days_answer_whys)
ASK (class, SteadClassAnswer, stead_class_answer_new (store, NULL), stead_class_answer_whys)
ASK (event, SteadEventAnswer, stead_event_answer_new (store, id, NULL), stead_event_answer_whys)
ASK (hours, SteadHoursAnswer, stead_hours_answer_new (store, stead_store_get_today (store) - 365, stead_store_get_today (store),
                                                      id, NULL), stead_hours_answer_whys)
ASK (tally, SteadTallyAnswer, stead_tally_answer_new (store, id, NULL), stead_tally_answer_whys)
ASK (result, SteadResultAnswer, stead_result_answer_new (store, id, NULL), stead_result_answer_whys)
ASK (season, SteadSeasonAnswer, stead_season_answer_new (store, NULL), stead_season_answer_whys)
ASK (sale, SteadSaleAnswer, stead_sale_answer_new (store, id, NULL), stead_sale_answer_whys)
ASK (skills, SteadSkillAnswer, stead_skill_answer_new (store, id, NULL), stead_skill_answer_whys)
ASK (statement, SteadStatementAnswer,
     stead_statement_answer_new (store, stead_store_get_today (store) - 200, stead_store_get_today (store), id, NULL),
     stead_statement_answer_whys)
ASK (together, SteadTogether, stead_together_new (store, STEAD_PERIOD_SCHOOL_YEAR, NULL), stead_together_whys)
ASK (trace, SteadTraceAnswer, stead_trace_answer_new (store, id, NULL), stead_trace_answer_whys)
ASK (water, SteadWaterAnswer, stead_water_answer_new (store, id, NULL), stead_water_answer_whys)
ASK (what_if, SteadWhatIf, stead_what_if_new (store, id, STEAD_PERIOD_SCHOOL_YEAR, NULL), stead_what_if_whys)

static const struct
{
  const char *name;
  Ask         ask;
  const char *of;    /* SQL for the ids; some of them may not be asked yet */
} asked[] = {
  { "assets", ask_assets, "SELECT 0" },
  { "best-use", ask_best_use, "SELECT 0" },
  { "build", ask_build, "SELECT id FROM build" },
  { "cash", ask_cash, "SELECT 0 UNION SELECT id FROM account" },
  { "checks", ask_checks, "SELECT 0" },
  { "class", ask_class, "SELECT 0" },
  { "crop", ask_crop, "SELECT batch_id FROM crop" },
  { "eggs", ask_eggs, "SELECT batch_id FROM flock" },
  { "event", ask_event, "SELECT id FROM event" },
  { "fish", ask_fish, "SELECT batch_id FROM fish" },
  { "flock", ask_flock, "SELECT batch_id FROM flock" },
  { "greenhouse", ask_greenhouse, "SELECT DISTINCT place_id FROM glasshouse" },
  { "hours", ask_hours, "SELECT 0 UNION SELECT id FROM person" },
  { "how-sure", ask_how_sure, "SELECT 0" },
  { "instruments", ask_instruments, "SELECT 0" },
  { "joint", ask_joint, "SELECT id FROM batch" },
  { "kitchen", ask_kitchen, "SELECT batch_id FROM kitchen" },
  { "price", ask_price, "SELECT id FROM product" },
  { "choice", ask_choice, "SELECT id FROM product" },
  { "recipe", ask_recipe, "SELECT id FROM recipe" },
  { "result", ask_result, "SELECT id FROM sale_day" },
  { "season", ask_season, "SELECT 0" },
  { "sale", ask_sale, "SELECT id FROM sale_day" },
  { "skills", ask_skills, "SELECT id FROM person" },
  { "statement", ask_statement, "SELECT 0 UNION SELECT id FROM enterprise" },
  { "tally", ask_tally, "SELECT id FROM sale_day" },
  { "together", ask_together, "SELECT 0" },
  { "trace", ask_trace, "SELECT id FROM lot" },
  { "water", ask_water, "SELECT id FROM water" },
  { "what-if", ask_what_if, "SELECT id FROM product" },
};

static gboolean
is_told (const char *text)
{
  return text != NULL && text[0] != '\0' && !g_regex_match_simple ("\\b(nan|inf)\\b", text, G_REGEX_CASELESS, 0);
}

static guint
check_whys (const char      *name,
            const GPtrArray *whys)
{
  for (guint i = 0; i < whys->len; i++)
    {
      const SteadWhy *why = whys->pdata[i];

      if (!is_told (why->title) || !is_told (why->formula) || !is_told (why->worked) || !is_told (why->source))
        g_error ("%s: “%s” has no full why: “%s”, “%s”, “%s”", name, why->title, why->formula, why->worked, why->source);
    }
  return whys->len;
}

static void
test_complete (Demo          *demo,
               gconstpointer  data)
{
  g_autofree char *path = g_build_filename (demo->folder, "demo.steading", NULL);
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL), ==, SQLITE_OK);
  for (gsize i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      sqlite3_stmt *stmt = NULL;
      guint n = 0;

      g_assert_cmpint (sqlite3_prepare_v2 (db, asked[i].of, -1, &stmt, NULL), ==, SQLITE_OK);
      while (sqlite3_step (stmt) == SQLITE_ROW)
        {
          g_autoptr(GPtrArray) whys = asked[i].ask (demo->store, sqlite3_column_int64 (stmt, 0));

          n += whys != NULL ? check_whys (asked[i].name, whys) : 0;
        }
      sqlite3_finalize (stmt);
      g_test_message ("%s: %u", asked[i].name, n);
      g_assert_cmpuint (n, >, 0);
    }
  sqlite3_close (db);
}

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  g_test_add ("/answer/whys/complete", Demo, NULL, demo_set_up, test_complete, demo_tear_down);
  return g_test_run ();
}

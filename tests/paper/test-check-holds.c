/* test-check-holds.c - the papers of Check, read back: what was held back and became of it, what cannot be sold as
 * planned, and thermometers that were tried without a list. */
#include "farm.h"
#include "read-back.h"

#include "answer/stead-check-list.h"

#include <math.h>

#define EIGHT(farm) ((gint64) (farm)->today * 86400 + 8 * 3600)

static gint64
hold (Farm       *farm,
      gint64      lot,
      const char *reason)
{
  SteadHold one = { .lot_id = lot, .since_at = EIGHT (farm), .reason = (char *) reason, .ended_at = STEAD_TIME_NONE };

  FARM_DO (farm, stead_hold_repo_begin (farm->store, &one, &farm_error));
  return one.id;
}

/* Four bags of feed are held: one was heated, one thrown away, one a slip, one is held still. */
static void
test_holds (Farm          *farm,
            gconstpointer  data)
{
  static const struct { SteadHoldOutcome outcome; const char *reason, *note, *words; } rows[] = {
    { STEAD_HOLD_MENDED, "It was damp.", "Dried.", "put right: Dried." },
    { STEAD_HOLD_DISCARDED, "Mice were in it.", "Composted.", "thrown away: Composted." },
    { STEAD_HOLD_MISTAKEN, "The wrong bag.", "It was another.", "a slip: It was another." },
    { STEAD_HOLD_OPEN, "The seal was open.", NULL, "The seal was open. still held" },
  };
  g_autoptr(GPtrArray) lots = NULL;
  g_autofree char *text = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    farm_buy (farm, farm->today - 9 + (SteadDay) i, farm->feed, 10, 1000, FALSE);
  lots = stead_lot_repo_list (farm->store, TRUE, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gint64 id = hold (farm, ((SteadLot *) lots->pdata[i])->id, rows[i].reason);

      if (rows[i].note != NULL)
        FARM_DO (farm, stead_hold_repo_settle (farm->store, id, rows[i].outcome, rows[i].note, 0, &farm_error));
    }
  text = read_back (farm->store, "corrective-actions", NULL, NULL);
  read_back_holds (text, "What was held back");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    read_back_holds (text, rows[i].words);
}

/* Days without a hold have no such table. */
static void
test_no_holds (Farm          *farm,
               gconstpointer  data)
{
  const SteadPaperOptions before = { .has_days = TRUE, .from = farm->today - 60, .to = farm->today - 50 };
  g_autofree char *text = NULL;

  farm_buy (farm, farm->today - 9, farm->feed, 10, 1000, FALSE);
  hold (farm, 1, "The seal was open.");
  text = read_back (farm->store, "corrective-actions", NULL, &before);
  read_back_counts (text, "What was held back", 0);
  read_back_holds (text, "Nothing in these days.");
  read_back_holds (text, "Jan 30, 2026 to Feb 9, 2026");     /* sixty and fifty days before Mar 31 */
}

static void
try_probe (Farm       *farm,
           gint64      instrument,
           const char *kind,
           double      temp_f)
{
  SteadShown shown = { .instrument_id = instrument, .at = EIGHT (farm), .value = (temp_f - 32) / 1.8, .scale = 'F',
                       .kind = g_strdup (kind), .held_s = NAN, .note = (char *) "Before the market" };

  FARM_DO (farm, stead_shown_repo_add (farm->store, &shown, &farm_error));
  g_free (shown.kind);
}

static void
test_thermometers (Farm          *farm,
                   gconstpointer  data)
{
  SteadInstrument probe = { .name = (char *) "Blue probe", .kind = STEAD_INSTRUMENT_PROBE, .scale = (char *) "F_only",
                            .step = NAN, .error = NAN, .retired_on = STEAD_DAY_NONE };
  g_autofree char *text = NULL;

  FARM_DO (farm, stead_instrument_repo_save (farm->store, &probe, &farm_error));
  try_probe (farm, probe.id, STEAD_SHOWN_ICE_BATH, 33);
  try_probe (farm, probe.id, STEAD_SHOWN_BOILING_WATER, 211);
  text = read_back (farm->store, "thermometer-log", NULL, NULL);
  read_back_holds (text, "Blue probe melting ice 33 °F Before the market");
  read_back_holds (text, "Blue probe boiling water 211 °F Before the market");
}

/* FDA Food Code 2022, §3-801.11: no raw eggs broken ahead for those at risk.  On paper, with the way round it, and
 * what was done instead. */
static void
test_stop (Farm          *farm,
           gconstpointer  data)
{
  static const SteadCheckAnswered answers[] = {
    { STEAD_CHECK_KEY_EATERS, NULL, "hsp" }, { STEAD_CHECK_KEY_COOKED, "breakfast bowls", "raw_egg" },
    { STEAD_CHECK_KEY_HELD, "breakfast bowls", "hot" }, { STEAD_CHECK_KEY_EGG_USE, "breakfast bowls", "pooled_or_held" },
    { STEAD_CHECK_KEY_PASTEURIZED, "breakfast bowls", "no" },
  };
  const SteadCheckOrder order = { .kind = STEAD_CHECK_ORDER_MENU, .text = "breakfast bowls", .day = farm->today,
                                  .answers = answers, .n_answers = G_N_ELEMENTS (answers) };
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCheckPlanAnswer) plan = stead_check_plan_answer_new (farm->store, &order, &error);
  g_autoptr(SteadCheckList) list = stead_check_list_from_plan (farm->store, plan, &order, "School breakfast", &error);
  g_autofree char *open = NULL, *settled = NULL;

  g_assert_no_error (error);
  FARM_DO (farm, stead_check_repo_save (farm->store, list, &farm_error));
  open = read_back (farm->store, "checklist", "School breakfast", NULL);
  read_back_holds (open, "What cannot be sold as planned");
  read_back_holds (open, "§3-801.11");
  read_back_counts (open, "Done instead", 0);
  FARM_DO (farm, stead_check_repo_settle_stop (farm->store, ((SteadListStop *) list->stops->pdata[0])->id, "Bought cartons.",
                                               0, &farm_error));
  settled = read_back (farm->store, "checklist", "School breakfast", NULL);
  read_back_holds (settled, "Done instead: Bought cartons.");
}

#define ADD(name, test) g_test_add ("/paper/check-holds/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("holds", test_holds);
  ADD ("no-holds", test_no_holds);
  ADD ("thermometers", test_thermometers);
  ADD ("stop", test_stop);
  return g_test_run ();
}

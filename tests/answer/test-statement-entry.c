/* test-statement-entry.c - what stands behind a figure of a statement, one of each kind. */
#include "numbers.h"
#include "shoal.h"

#include "answer/stead-cash-words.h"
#include "answer/stead-statement-answer.h"
#include "store/stead-cash-repo.h"
#include "store/stead-journal-repo.h"

#include <math.h>
#include <string.h>

static char *
text_of (Farm      *farm,
         SteadFact  fact,
         gint64     id)
{
  const SteadStatementEntry entry = { .day = farm->today, .fact = fact, .fact_id = id };
  g_autoptr(GError) error = NULL;
  char *text = stead_statement_entry_text (farm->store, &entry, &error);

  g_assert_no_error (error);
  g_assert_nonnull (text);
  return text;
}

static void
assert_text (Farm       *farm,
             SteadFact   fact,
             gint64      id,
             const char *words)
{
  g_autofree char *text = text_of (farm, fact, id);

  if (farm_in_english ())
    g_assert_cmpstr (text, ==, words);
}

/* The movement of this kind and amount of a lot. */
static gint64
move_of (Farm          *farm,
         gint64         lot,
         SteadMoveKind  kind,
         double         base)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_moves (farm->store, lot, NULL);

  for (guint i = 0; i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];

      if (move->kind == kind && fabs (move->quantity_base - base) < 1e-9)
        return move->id;
    }
  g_error ("no movement of kind %d and %g", (int) kind, base);
}

/* 50 kg of feed came; each way out of the store room, and each surprise of a count. */
static void
test_movements (Shoal         *shoal,
                gconstpointer  data)
{
  static const struct { SteadMoveKind kind; double base; const char *words; } rows[] = {
    { STEAD_MOVE_RECEIVED, 50, "50 kg came" }, { STEAD_MOVE_GIVEN, -2, "2 kg given away" },
    { STEAD_MOVE_LOST, -3, "3 kg lost or spoiled" }, { STEAD_MOVE_COUNTED, -1, "a count found 1 kg less" },
    { STEAD_MOVE_COUNTED, 1.5, "a count found 1.5 kg more" }, { STEAD_MOVE_CORRECTED, -4, "corrected by 4 kg less" },
    { STEAD_MOVE_CORRECTED, 2.5, "corrected by 2.5 kg more" }, { STEAD_MOVE_USED, -5, "5 kg used by Brown hens" },
    { STEAD_MOVE_SOLD, -6, "6 kg sold" },
  };
  Farm *farm = &shoal->farm;
  g_autoptr(GPtrArray) lots = NULL;
  const SteadLot *lot;

  farm_buy (farm, farm->today - 9, farm->feed, 50, 6000, FALSE);
  lots = stead_lot_repo_list (farm->store, TRUE, NULL);
  lot = lots->pdata[0];
  g_assert_cmpint (lot->item_id, ==, farm->feed);
  for (gsize i = 1; i < G_N_ELEMENTS (rows) - 2; i++)
    FARM_DO (farm, stead_lot_repo_adjust (farm->store, lot->id, rows[i].kind, farm->today - 9 + (SteadDay) i, rows[i].base,
                                          "Looked", 0, &farm_error));
  FARM_DO (farm, stead_lot_repo_use (farm->store, farm->feed, farm->flock, farm->today, 5, 0, &farm_error)
                 && stead_lot_repo_sell (farm->store, farm->feed, farm->today, 6, NULL, 0, &farm_error));
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = g_strdup_printf ("Store room: Layer feed, %s, lot %s", rows[i].words, lot->code);

      assert_text (farm, STEAD_FACT_MOVEMENT, move_of (farm, lot->id, rows[i].kind, rows[i].base), words);
    }
}

static void
test_cash (Shoal         *shoal,
           gconstpointer  data)
{
  Farm *farm = &shoal->farm;
  SteadAccount till = { .name = (char *) "Till box", .kind = STEAD_ACCOUNT_TILL, .opened_on = farm->today - 30,
                        .opening_cents = 5000, .closed_on = STEAD_DAY_NONE };
  const char *fees = stead_cash_words_category (STEAD_CASH_FEES);
  g_autofree char *with = g_strdup_printf ("Cash book: %s, Market board", fees), *without = NULL;

  FARM_DO (farm, stead_account_repo_save (farm->store, &till, &farm_error));
  for (int i = 0; i < 2; i++)
    {
      g_autoptr(SteadCashLine) line = stead_cash_line_new ();

      line->account_id = till.id;
      line->day = farm->today;
      line->cents = -2000;
      line->category = STEAD_CASH_FEES;
      line->who = i == 0 ? g_strdup ("Market board") : NULL;
      FARM_DO (farm, stead_cash_repo_save (farm->store, line, &farm_error));
      without = i == 0 ? NULL : g_strdup_printf ("Cash book: %s, line %d", fees, (int) line->id);
      assert_text (farm, STEAD_FACT_CASH_LINE, line->id, i == 0 ? with : without);
    }
  assert_text (farm, STEAD_FACT_ACCOUNT, till.id, "Till box, when it was opened");
}

static void
test_others (Shoal         *shoal,
             gconstpointer  data)
{
  Farm *farm = &shoal->farm;
  g_autoptr(SteadAsset) fan = stead_asset_new ();
  gint64 other = shoal_group (shoal, "Tilapia 2", shoal_tank (shoal, "Tank B", 1500), 90, 60, 40);
  SteadFishMove move = { .day = farm->today, .from_id = shoal->fish, .to_id = other, .n = 3, .mean_g = 60 };
  gint64 receipt = farm_buy (farm, farm->today - 9, farm->feed, 50, 6000, FALSE);

  fan->name = g_strdup ("Fan");
  fan->bought_on = farm->today;
  fan->cost_cents = 100;
  fan->life_years = 1;
  FARM_DO (farm, stead_asset_repo_save (farm->store, fan, &farm_error)
                 && stead_fish_repo_save_move (farm->store, &move, &farm_error));
  assert_text (farm, STEAD_FACT_ASSET, fan->id, "Fan");
  assert_text (farm, STEAD_FACT_RECEIPT, receipt, "Receipt of Lakeside Feed & Seed, corrected");
  assert_text (farm, STEAD_FACT_BATCH, farm->flock, "Brown hens");
  assert_text (farm, STEAD_FACT_FISH_MOVE, move.id, "Fish moved to Tilapia 2");
  assert_text (farm, STEAD_FACT_BEFORE, 0, "All before these days");
}

/* What is not there is told by its number: a statement still opens. */
static void
test_not_there (Shoal         *shoal,
                gconstpointer  data)
{
  static const SteadFact facts[] = { STEAD_FACT_ACCOUNT, STEAD_FACT_CASH_LINE, STEAD_FACT_MOVEMENT, STEAD_FACT_RECEIPT,
                                     STEAD_FACT_BATCH, STEAD_FACT_FISH_MOVE, STEAD_FACT_ASSET };

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    {
      g_autofree char *text = text_of (&shoal->farm, facts[i], 999);

      NUMBERS_ARE (text, 999);
      if (farm_in_english ())
        g_assert_cmpstr (text, ==, "Entry 999, which cannot be read");
    }
}

#define ADD(name, test) g_test_add ("/answer/statement-entry/" name, Shoal, NULL, shoal_set_up, test, shoal_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("movements", test_movements);
  ADD ("cash", test_cash);
  ADD ("others", test_others);
  ADD ("not-there", test_not_there);
  return g_test_run ();
}

/* stead-statement-entry.c - what an entry behind a figure of a statement is, in words. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-cash-words.h"
#include "answer/stead-statement-answer.h"
#include "core/stead-quantity.h"
#include "store/stead-batch-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-store-error.h"

static char *
batch_name (SteadStore  *store,
            gint64       batch_id,
            GError     **error)
{
  g_autoptr(SteadBatch) batch = batch_id != 0 ? stead_batch_repo_get (store, batch_id, error) : NULL;

  return batch != NULL ? g_strdup (batch->name) : NULL;
}

/* --- the store room ------------------------------------------------------------------ */

/* Whole sentences, since languages place these words elsewhere. */
static char *
moved_text (const SteadMove *move,
            const char      *amount)
{
  const char *name = move->item_name, *lot = move->lot_code;

  switch (move->kind)
    {
    /* Translators: in each of these an amount, an item, and the code of its lot. */
    case STEAD_MOVE_RECEIVED:
      return g_strdup_printf (_("Store room: %2$s, %1$s came, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_MADE:
      return g_strdup_printf (_("Store room: %2$s, %1$s made, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_SOLD:
      return g_strdup_printf (_("Store room: %2$s, %1$s sold, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_GIVEN:
      return g_strdup_printf (_("Store room: %2$s, %1$s given away, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_LOST:
      return g_strdup_printf (_("Store room: %2$s, %1$s lost or spoiled, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_COUNTED:
      return move->quantity_base < 0
             ? g_strdup_printf (_("Store room: %2$s, a count found %1$s less, lot %3$s"), amount, name, lot)
             : g_strdup_printf (_("Store room: %2$s, a count found %1$s more, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_CORRECTED:
      return move->quantity_base < 0
             ? g_strdup_printf (_("Store room: %2$s, corrected by %1$s less, lot %3$s"), amount, name, lot)
             : g_strdup_printf (_("Store room: %2$s, corrected by %1$s more, lot %3$s"), amount, name, lot);
    case STEAD_MOVE_USED:
    default:
      return g_strdup_printf (_("Store room: %2$s, %1$s used, lot %3$s"), amount, name, lot);
    }
}

static char *
movement_text (SteadStore  *store,
               gint64       id,
               GError     **error)
{
  g_autoptr(SteadMove) move = stead_lot_repo_get_move (store, id, error);
  g_autofree char *amount = NULL, *batch = NULL;
  g_autoptr(GError) problem = NULL;

  if (move == NULL)
    return NULL;
  amount = stead_quantity_format (fabs (move->quantity_base), move->unit);
  batch = move->kind == STEAD_MOVE_USED ? batch_name (store, move->batch_id, &problem) : NULL;
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return NULL;
    }
  if (batch != NULL)
    /* Translators: an amount, an item, the code of its lot, and who used it: a batch. */
    return g_strdup_printf (_("Store room: %2$s, %1$s used by %4$s, lot %3$s"), amount, move->item_name, move->lot_code,
                            batch);
  return moved_text (move, amount);
}

/* --- the cash book, and what lasts ------------------------------------------------------ */

static char *
cash_text (SteadStore  *store,
           gint64       id,
           GError     **error)
{
  g_autoptr(SteadCashLine) line = stead_cash_repo_get (store, id, error);
  const char *category = line != NULL ? stead_cash_words_category (line->category) : NULL;

  if (line == NULL)
    return NULL;
  if (line->who != NULL)
    /* Translators: a kind of line: "Feed"; who paid or was paid. */
    return g_strdup_printf (_("Cash book: %1$s, %2$s"), category, line->who);
  /* Translators: a kind of line: "Feed"; its number in the farm file. */
  return g_strdup_printf (_("Cash book: %1$s, line %2$d"), category, (int) id);
}

static char *
account_text (SteadStore  *store,
              gint64       id,
              GError     **error)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, error);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    if (((const SteadAccount *) accounts->pdata[i])->id == id)
      /* Translators: an account: "Till box". */
      return g_strdup_printf (_("%s, when it was opened"), ((const SteadAccount *) accounts->pdata[i])->name);
  return NULL;
}

static char *
receipt_text (SteadStore  *store,
              gint64       id,
              GError     **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (store, id, error);

  /* Translators: a supplier. */
  return receipt != NULL ? g_strdup_printf (_("Receipt of %s, corrected"), receipt->supplier) : NULL;
}

static char *
asset_text (SteadStore  *store,
            gint64       id,
            GError     **error)
{
  g_autoptr(SteadAsset) asset = stead_asset_repo_get (store, id, error);

  return asset != NULL ? g_strdup (asset->name) : NULL;
}

static char *
fish_text (SteadStore  *store,
           gint64       id,
           GError     **error)
{
  gint64 batch_id = stead_journal_repo_holder (store, STEAD_FACT_FISH_MOVE, id, error);
  g_autofree char *batch = batch_id > 0 ? batch_name (store, batch_id, error) : NULL;

  /* Translators: a group of fish. */
  return batch != NULL ? g_strdup_printf (_("Fish moved to %s"), batch) : NULL;
}

static char *
fact_text (SteadStore  *store,
           SteadFact    fact,
           gint64       id,
           GError     **error)
{
  switch (fact)
    {
    case STEAD_FACT_ACCOUNT:   return account_text (store, id, error);
    case STEAD_FACT_CASH_LINE: return cash_text (store, id, error);
    case STEAD_FACT_MOVEMENT:  return movement_text (store, id, error);
    case STEAD_FACT_RECEIPT:   return receipt_text (store, id, error);
    case STEAD_FACT_BATCH:     return batch_name (store, id, error);
    case STEAD_FACT_FISH_MOVE: return fish_text (store, id, error);
    case STEAD_FACT_ASSET:     return asset_text (store, id, error);
    case STEAD_FACT_BEFORE:
    default:                   return g_strdup (_("All before these days"));
    }
}

char *
stead_statement_entry_text (SteadStore                 *store,
                            const SteadStatementEntry  *entry,
                            GError                    **error)
{
  GError *problem = NULL;
  char *text;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entry != NULL, NULL);
  text = fact_text (store, entry->fact, entry->fact_id, &problem);
  if (text != NULL)
    return text;
  if (problem != NULL && !g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, problem);
      return NULL;
    }
  g_clear_error (&problem);
  /* Translators: the number of something in the farm file. */
  return g_strdup_printf (_("Entry %d, which cannot be read"), (int) entry->fact_id);
}

/* stead-kitchen-lots.c - what a kitchen batch takes out of the store room.
 *
 * Food goes by what expires first, not by what came first; the amounts that may be
 * taken are the ledger's (stead-ledger-private.h), so that no day is left short.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-item-private.h"
#include "store/stead-kitchen-private.h"
#include "store/stead-ledger-private.h"

void
stead_kitchen_take_free (SteadKitchenTake *take)
{
  if (take == NULL)
    return;
  g_free (take->item_name);
  g_free (take->lot_code);
  g_free (take);
}

/* --- what is there --------------------------------------------------------------- */

static gpointer
take_from_row (SteadStmt *stmt)
{
  SteadKitchenTake *take = g_new0 (SteadKitchenTake, 1);

  take->lot_id = sqlite3_column_int64 (stmt, 0);
  take->lot_code = stead_stmt_text (stmt, 1);
  take->day = stead_stmt_day (stmt, 2);
  take->best_by = stead_stmt_day (stmt, 3);
  take->item_id = sqlite3_column_int64 (stmt, 4);
  take->item_name = stead_stmt_text (stmt, 5);
  take->unit = stead_item_unit (stmt, 6);
  take->past = sqlite3_column_int (stmt, 7) != 0;
  return take;
}

static GPtrArray *
read_lots (SteadStore  *store,
           gint64       item_id,
           SteadDay     day,
           GError     **error)
{
  /* 1e-7 is STEAD_AMOUNT_EPSILON. */
  static const char sql[] =
    "SELECT l.id, l.code, l.day, l.best_by, i.id, i.name, i.unit, coalesce (l.best_by < ?2, 0)"
    " FROM lot l JOIN lot_stock s ON s.lot_id = l.id JOIN item i ON i.id = l.item_id"
    " WHERE l.item_id = ?1 AND l.day <= ?2 AND s.base > 1e-7"
    " ORDER BY coalesce (l.best_by < ?2, 0), l.best_by IS NULL, l.best_by, l.day, l.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, day);
  return stead_repo_rows (store, stmt, take_from_row, (GDestroyNotify) stead_kitchen_take_free, error);
}

GPtrArray *
stead_kitchen_repo_lots (SteadStore  *store,
                         gint64       item_id,
                         SteadDay     day,
                         GError     **error)
{
  g_autoptr(SteadLedger) ledger = NULL;
  g_autoptr(GPtrArray) lots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_day_is_valid (day), NULL);
  ledger = stead_ledger_load (store, item_id, day + 1, error);
  lots = ledger != NULL ? read_lots (store, item_id, day, error) : NULL;
  for (guint i = lots != NULL ? lots->len : 0; i > 0; i--)
    {
      SteadKitchenTake *lot = lots->pdata[i - 1];

      lot->base = stead_ledger_lot_available (ledger, lot->lot_id, day);
      if (!(lot->base > STEAD_AMOUNT_EPSILON))
        g_ptr_array_remove_index (lots, i - 1);
    }
  return g_steal_pointer (&lots);
}

/* --- what is proposed ------------------------------------------------------------- */

/* A lot of a batch that should have waited after a treatment; FALSE with @error. */
static gboolean
read_wait (SteadStore  *store,
           gint64       lot_id,
           SteadDay    *out_wait,
           GError     **error)
{
  g_autoptr(GError) problem = NULL;

  *out_wait = stead_harvest_repo_lot_wait (store, lot_id, &problem);
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

static void
add_missing (const SteadKitchenPart *part,
             double                  base,
             GPtrArray              *takes)
{
  SteadKitchenTake *take = g_new0 (SteadKitchenTake, 1);

  take->item_id = part->item_id;
  take->item_name = g_strdup (part->item_name);
  take->unit = part->item_unit;
  take->day = take->best_by = STEAD_DAY_NONE;
  take->base = base;
  g_ptr_array_add (takes, take);
}

static gboolean
propose_item (SteadStore              *store,
              const SteadKitchenPart  *part,
              double                   need,
              SteadDay                 day,
              GPtrArray               *takes,
              GError                 **error)
{
  g_autoptr(GPtrArray) lots = stead_kitchen_repo_lots (store, part->item_id, day, error);

  if (lots == NULL)
    return FALSE;
  while (lots->len > 0 && need > STEAD_AMOUNT_EPSILON)
    {
      g_autoptr(SteadKitchenTake) take = g_ptr_array_steal_index (lots, 0);
      SteadDay wait;

      if (take->past)
        break;
      if (!read_wait (store, take->lot_id, &wait, error))
        return FALSE;
      if (wait != STEAD_DAY_NONE)
        continue;
      take->base = MIN (take->base, need);
      need -= take->base;
      g_ptr_array_add (takes, g_steal_pointer (&take));
    }
  if (need > STEAD_AMOUNT_EPSILON)
    add_missing (part, need, takes);
  return TRUE;
}

/* An item that stands in several parts is proposed once, for all of them. */
static gboolean
is_first_of_item (const GPtrArray *parts,
                  guint            at)
{
  const SteadKitchenPart *part = parts->pdata[at];

  for (guint i = 0; i < at; i++)
    if (((const SteadKitchenPart *) parts->pdata[i])->item_id == part->item_id)
      return FALSE;
  return TRUE;
}

static double
item_need (const GPtrArray *parts,
           guint            at)
{
  const SteadKitchenPart *first = parts->pdata[at];
  double need = 0;

  for (guint i = at; i < parts->len; i++)
    {
      const SteadKitchenPart *part = parts->pdata[i];

      if (part->item_id == first->item_id)
        need += part->need_base;
    }
  return need - first->taken_base;
}

GPtrArray *
stead_kitchen_repo_propose (SteadStore  *store,
                            gint64       batch_id,
                            SteadDay     day,
                            GError     **error)
{
  g_autoptr(SteadKitchen) kitchen = NULL;
  g_autoptr(GPtrArray) takes = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_kitchen_take_free);

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_day_is_valid (day), NULL);
  kitchen = stead_kitchen_repo_get (store, batch_id, error);
  if (kitchen == NULL)
    return NULL;
  for (guint i = 0; i < kitchen->parts->len; i++)
    if (is_first_of_item (kitchen->parts, i) &&
        !propose_item (store, kitchen->parts->pdata[i], item_need (kitchen->parts, i), day, takes, error))
      return NULL;
  return g_steal_pointer (&takes);
}

/* --- taking ------------------------------------------------------------------------- */

static gboolean
check_lot (SteadStore  *store,
           gint64       lot_id,
           SteadDay     day,
           const char  *reason,
           GError     **error)
{
  static const char sql[] = "SELECT code, best_by FROM lot WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *code = NULL;
  g_autofree char *text = NULL;
  SteadDay best_by, wait;
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found < 0 ? FALSE : stead_repo_missing (error);
  code = stead_stmt_text (stmt, 0);
  best_by = stead_stmt_day (stmt, 1);
  if (!read_wait (store, lot_id, &wait, error))
    return FALSE;
  if (wait != STEAD_DAY_NONE)
    {
      text = stead_day_format (wait, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("Lot %s came from animals that had to wait after a treatment, up to and "
                                         "including %s. It must not be eaten."), code, text);
    }
  if (best_by != STEAD_DAY_NONE && best_by < day && reason == NULL)
    {
      text = stead_day_format (best_by, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("Lot %s was best by %s. Write down why it is used all the same, "
                                         "or take another lot."), code, text);
    }
  return TRUE;
}

gboolean
stead_kitchen_repo_take (SteadStore  *store,
                         gint64       batch_id,
                         gint64       lot_id,
                         SteadDay     day,
                         double       base,
                         const char  *reason,
                         gint64       person_id,
                         GError     **error)
{
  g_autofree char *why = stead_repo_tidy (reason);
  g_autoptr(SteadBatch) batch = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_kitchen_open_batch (store, batch_id, error);
  if (batch == NULL)
    return FALSE;
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  return check_lot (store, lot_id, day, why, error) &&
         stead_lot_repo_use_lot (store, lot_id, batch_id, day, base, why, person_id, error) &&
         stead_kitchen_begin_by (store, batch, day, error);
}

gboolean
stead_kitchen_repo_take_proposed (SteadStore  *store,
                                  gint64       batch_id,
                                  SteadDay     day,
                                  gint64       person_id,
                                  GError     **error)
{
  g_autoptr(GPtrArray) takes = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  takes = stead_kitchen_repo_propose (store, batch_id, day, error);
  if (takes == NULL)
    return FALSE;
  for (guint i = 0; i < takes->len; i++)
    {
      const SteadKitchenTake *take = takes->pdata[i];
      g_autofree char *amount = stead_quantity_format (take->base, take->unit);

      if (take->lot_id == 0)
        /* Translators: name of an item, "1.2 lb". */
        return stead_repo_refuse (error, _("%s: the store room is short by %s. Enter the missing receipt first, "
                                           "or change the amount."), take->item_name, amount);
    }
  for (guint i = 0; i < takes->len; i++)
    {
      const SteadKitchenTake *take = takes->pdata[i];

      if (!stead_kitchen_repo_take (store, batch_id, take->lot_id, day, take->base, NULL, person_id, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_kitchen_repo_give_back (SteadStore  *store,
                              gint64       move_id,
                              GError     **error)
{
  static const char read_sql[] = "SELECT m.batch_id, m.day, l.item_id FROM movement m JOIN lot l ON l.id = m.lot_id"
                                 " WHERE m.id = ?1 AND m.kind = 'used' AND m.entry_id IS NULL";
  static const char sql[] = "DELETE FROM movement WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadBatch) batch = NULL;
  SteadDay day;
  gint64 item_id;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, read_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, move_id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found < 0 ? FALSE : stead_repo_missing (error);
  day = stead_stmt_day (stmt, 1);
  item_id = sqlite3_column_int64 (stmt, 2);
  batch = stead_kitchen_open_batch (store, sqlite3_column_int64 (stmt, 0), error);
  return batch != NULL &&
         stead_repo_run_id (store, sql, move_id, error) &&
         stead_ledger_settle (store, item_id, day, error);
}

GPtrArray *
stead_kitchen_repo_taken (SteadStore  *store,
                          gint64       batch_id,
                          GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_lot_repo_batch_moves (store, batch_id, error);
}

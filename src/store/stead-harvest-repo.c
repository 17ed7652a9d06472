/* stead-harvest-repo.c - what a batch gives into the store room.
 *
 * Invariants:
 *  1. A harvest with something good has one lot of the same batch and day, and one
 *     movement "made" that brings in all of it with all its cost.
 *  2. What was used of a lot stands: its harvest is neither changed nor deleted.
 *  3. Nothing comes after the last harvest, nor while the batch waits after a treatment.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-private.h"
#include "store/stead-harvest-private.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-ledger-private.h"

SteadHarvest *
stead_harvest_new (void)
{
  SteadHarvest *harvest = g_new0 (SteadHarvest, 1);

  harvest->day = harvest->best_by = STEAD_DAY_NONE;
  harvest->pieces = STEAD_COUNT_NONE;
  harvest->live_kg = NAN;
  return harvest;
}

void
stead_harvest_free (SteadHarvest *harvest)
{
  if (harvest == NULL)
    return;
  g_free (harvest->reason);
  g_free (harvest->grade);
  g_free (harvest->note);
  g_free (harvest->lot_code);
  g_free (harvest);
}

/* --- reading ---------------------------------------------------------------- */

#define HARVEST_SELECT \
  "SELECT h.id, h.batch_id, h.day, l.item_id, coalesce (m.quantity_base, 0), h.lost_base, h.reason, h.pieces," \
  " h.live_kg, h.grade, l.best_by, coalesce (m.cost_cents, 0), h.is_last, h.note, h.person_id, h.lot_id, l.code," \
  " h.tasted_base" \
  " FROM harvest h LEFT JOIN lot l ON l.id = h.lot_id" \
  " LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'made'"

static gpointer
harvest_from_row (SteadStmt *stmt)
{
  SteadHarvest *harvest = stead_harvest_new ();

  harvest->id = sqlite3_column_int64 (stmt, 0);
  harvest->batch_id = sqlite3_column_int64 (stmt, 1);
  harvest->day = stead_stmt_day (stmt, 2);
  harvest->item_id = sqlite3_column_int64 (stmt, 3);
  harvest->quantity_base = sqlite3_column_double (stmt, 4);
  harvest->lost_base = sqlite3_column_double (stmt, 5);
  harvest->reason = stead_stmt_text (stmt, 6);
  if (sqlite3_column_type (stmt, 7) != SQLITE_NULL)
    harvest->pieces = sqlite3_column_int64 (stmt, 7);
  harvest->live_kg = stead_stmt_real (stmt, 8);
  harvest->grade = stead_stmt_text (stmt, 9);
  harvest->best_by = stead_stmt_day (stmt, 10);
  harvest->cost_cents = sqlite3_column_int64 (stmt, 11);
  harvest->is_last = sqlite3_column_int (stmt, 12) != 0;
  harvest->note = stead_stmt_text (stmt, 13);
  harvest->person_id = sqlite3_column_int64 (stmt, 14);
  harvest->lot_id = sqlite3_column_int64 (stmt, 15);
  harvest->lot_code = stead_stmt_text (stmt, 16);
  harvest->tasted_base = sqlite3_column_double (stmt, 17);
  return harvest;
}

/* Returns: (transfer full) (element-type SteadHarvest) */
GPtrArray *
stead_harvest_repo_list (SteadStore  *store,
                         gint64       batch_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = HARVEST_SELECT " WHERE h.batch_id = ?1 AND h.day BETWEEN ?2 AND ?3 ORDER BY h.day, h.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, harvest_from_row, (GDestroyNotify) stead_harvest_free, error);
}

SteadHarvest *
stead_harvest_repo_get (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = HARVEST_SELECT " WHERE h.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, harvest_from_row, error);
}

gboolean
stead_harvest_repo_totals (SteadStore          *store,
                           gint64               batch_id,
                           SteadDay             from,
                           SteadDay             to,
                           SteadHarvestTotals  *out,
                           GError             **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (m.quantity_base), 0), coalesce (sum (h.lost_base), 0), coalesce (sum (h.pieces), 0),"
    " coalesce (sum (h.live_kg), 0), coalesce (sum (m.cost_cents), 0), coalesce (max (h.is_last), 0),"
    " coalesce (sum (h.tasted_base), 0)"
    " FROM harvest h LEFT JOIN movement m ON m.lot_id = h.lot_id AND m.kind = 'made'"
    " WHERE h.batch_id = ?1 AND h.day BETWEEN ?2 AND ?3";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  out->good_base = sqlite3_column_double (stmt, 0);
  out->lost_base = sqlite3_column_double (stmt, 1);
  out->pieces = sqlite3_column_int64 (stmt, 2);
  out->live_kg = sqlite3_column_double (stmt, 3);
  out->cost_cents = sqlite3_column_int64 (stmt, 4);
  out->is_over = sqlite3_column_int (stmt, 5) != 0;
  out->tasted_base = sqlite3_column_double (stmt, 6);
  return TRUE;
}

gint64
stead_harvest_repo_last_item (SteadStore  *store,
                              gint64       batch_id,
                              GError     **error)
{
  static const char sql[] = "SELECT l.item_id FROM harvest h JOIN lot l ON l.id = h.lot_id WHERE h.batch_id = ?1"
                            " ORDER BY h.day DESC, h.id DESC LIMIT 1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, batch_id, error);
}

SteadDay
stead_harvest_repo_lot_wait (SteadStore  *store,
                             gint64       lot_id,
                             GError     **error)
{
  static const char sql[] = "SELECT batch_id, day FROM lot WHERE id = ?1 AND batch_id IS NOT NULL";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return STEAD_DAY_NONE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  if (stead_store_step (store, stmt, error) != 1)
    return STEAD_DAY_NONE;
  return stead_treatment_repo_wait (store, sqlite3_column_int64 (stmt, 0), stead_stmt_day (stmt, 1), error);
}

/* --- the lot ------------------------------------------------------------------ */

/* First letter of a lot code, by SteadBatchKind. */
static const char batch_letters[] = { 'H', 'W', 'C', 'K' };

G_STATIC_ASSERT (G_N_ELEMENTS (batch_letters) == STEAD_BATCH_KITCHEN + 1);

char *
stead_harvest_repo_next_code (SteadStore        *store,
                              const SteadBatch  *batch,
                              SteadDay           day,
                              GError           **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && batch != NULL && stead_day_is_valid (day), NULL);
  return stead_lot_new_code (store, batch_letters[batch->kind], day, error);
}

static gboolean
insert_lot (SteadStore        *store,
            const SteadBatch  *batch,
            SteadHarvest      *harvest,
            GError           **error)
{
  static const char sql[] = "INSERT INTO lot (code, item_id, batch_id, day, best_by) VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autofree char *code = stead_harvest_repo_next_code (store, batch, harvest->day, error);
  g_autoptr(SteadStmt) stmt = code != NULL ? stead_store_prepare (store, sql, error) : NULL;
  SteadMoveFacts move = { .kind = "made", .day = harvest->day, .quantity = harvest->quantity_base,
                          .cents = harvest->cost_cents, .person_id = harvest->person_id };

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, code);
  sqlite3_bind_int64 (stmt, 2, harvest->item_id);
  sqlite3_bind_int64 (stmt, 3, harvest->batch_id);
  stead_stmt_bind_day (stmt, 4, harvest->day);
  stead_stmt_bind_day (stmt, 5, harvest->best_by);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  move.lot_id = harvest->lot_id = stead_store_last_id (store);
  g_free (harvest->lot_code);
  harvest->lot_code = g_steal_pointer (&code);
  return stead_ledger_write (store, &move, error);
}

static gboolean
update_made (SteadStore          *store,
             const SteadHarvest  *harvest,
             GError             **error)
{
  static const char sql[] = "UPDATE movement SET day = ?1, quantity_base = ?2, cost_cents = ?3, person_id = ?4"
                            " WHERE lot_id = ?5 AND kind = 'made'";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, harvest->day);
  sqlite3_bind_double (stmt, 2, harvest->quantity_base);
  sqlite3_bind_int64 (stmt, 3, harvest->cost_cents);
  stead_stmt_bind_id (stmt, 4, harvest->person_id);
  sqlite3_bind_int64 (stmt, 5, harvest->lot_id);
  return stead_store_run (store, stmt, error);
}

/* The code stays: it may stand on a label already. */
static gboolean
update_lot (SteadStore          *store,
            const SteadHarvest  *harvest,
            GError             **error)
{
  static const char sql[] = "UPDATE lot SET item_id = ?1, day = ?2, best_by = ?3 WHERE id = ?4";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, harvest->item_id);
  stead_stmt_bind_day (stmt, 2, harvest->day);
  stead_stmt_bind_day (stmt, 3, harvest->best_by);
  sqlite3_bind_int64 (stmt, 4, harvest->lot_id);
  return stead_store_run (store, stmt, error) && update_made (store, harvest, error);
}

/* Takes feed of the logs out of the lot, and refuses if anything else took from it. */
static gboolean
free_lot (SteadStore          *store,
          const SteadHarvest  *harvest,
          GError             **error)
{
  g_autoptr(GPtrArray) moves = NULL;

  if (harvest->lot_id == 0)
    return TRUE;
  if (!stead_ledger_unsettle_lot (store, harvest->lot_id, harvest->day, error))
    return FALSE;
  moves = stead_lot_repo_moves (store, harvest->lot_id, error);
  for (guint i = 0; moves != NULL && i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];
      g_autofree char *when = stead_day_format (move->day, STEAD_DAY_STYLE_MEDIUM);

      if (move->kind != STEAD_MOVE_MADE)
        return stead_repo_refuse (error, _("Lot %s (%s) was used or changed on %s. "
                                           "Its harvest can no longer be changed or deleted."),
                                  move->lot_code, move->item_name, when);
    }
  return moves != NULL;
}

/* Feed of the logs is laid anew on what the two items hold now. */
static gboolean
settle (SteadStore          *store,
        const SteadHarvest  *before,
        const SteadHarvest  *after,
        GError             **error)
{
  gint64 old_item = before != NULL ? before->item_id : 0;
  gint64 new_item = after != NULL ? after->item_id : 0;
  SteadDay from = after != NULL ? after->day : STEAD_DAY_NONE;

  if (before != NULL)
    from = after != NULL ? MIN (before->day, from) : before->day;

  return stead_ledger_settle (store, old_item, from, error) &&
         (new_item == old_item || stead_ledger_settle (store, new_item, from, error));
}

/* --- saving ------------------------------------------------------------------- */

static gboolean
write_harvest (SteadStore    *store,
               SteadHarvest  *harvest,
               GError       **error)
{
  static const char insert_sql[] =
    "INSERT INTO harvest (batch_id, day, lot_id, pieces, live_kg, lost_base, grade, reason, is_last, note, person_id,"
    " tasted_base) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)";
  static const char update_sql[] =
    "UPDATE harvest SET batch_id = ?1, day = ?2, lot_id = ?3, pieces = ?4, live_kg = ?5, lost_base = ?6, grade = ?7,"
    " reason = ?8, is_last = ?9, note = ?10, person_id = ?11, tasted_base = ?12 WHERE id = ?13";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, harvest->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, harvest->batch_id);
  stead_stmt_bind_day (stmt, 2, harvest->day);
  stead_stmt_bind_id (stmt, 3, harvest->lot_id);
  if (harvest->pieces == STEAD_COUNT_NONE)
    sqlite3_bind_null (stmt, 4);
  else
    sqlite3_bind_int64 (stmt, 4, harvest->pieces);
  stead_stmt_bind_real (stmt, 5, harvest->live_kg);
  sqlite3_bind_double (stmt, 6, harvest->lost_base);
  stead_repo_bind_tidy (stmt, 7, harvest->grade);
  stead_repo_bind_tidy (stmt, 8, harvest->reason);
  sqlite3_bind_int (stmt, 9, harvest->is_last != FALSE);
  stead_repo_bind_tidy (stmt, 10, harvest->note);
  stead_stmt_bind_id (stmt, 11, harvest->person_id);
  sqlite3_bind_double (stmt, 12, harvest->tasted_base);
  if (harvest->id != 0)
    sqlite3_bind_int64 (stmt, 13, harvest->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (harvest->id == 0)
    harvest->id = stead_store_last_id (store);
  return TRUE;
}

/* A harvest that lost all has no lot; @harvest->lot_id is what it had before. */
static gboolean
write_with_lot (SteadStore        *store,
                const SteadBatch  *batch,
                SteadHarvest      *harvest,
                GError           **error)
{
  static const char delete_sql[] = "DELETE FROM lot WHERE id = ?1";
  gint64 gone = 0;

  if (harvest->quantity_base > 0)
    {
      if (harvest->lot_id == 0 ? !insert_lot (store, batch, harvest, error) : !update_lot (store, harvest, error))
        return FALSE;
    }
  else
    {
      gone = harvest->lot_id;
      harvest->lot_id = 0;
      g_clear_pointer (&harvest->lot_code, g_free);
    }
  return write_harvest (store, harvest, error) && (gone == 0 || stead_repo_run_id (store, delete_sql, gone, error));
}

gboolean
stead_harvest_repo_save (SteadStore    *store,
                         SteadHarvest  *harvest,
                         GError       **error)
{
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(SteadHarvest) before = NULL;
  g_autofree char *code = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && harvest != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_batch_repo_get (store, harvest->batch_id, error);
  if (batch == NULL)
    return FALSE;
  if (harvest->id != 0)
    {
      before = stead_harvest_repo_get (store, harvest->id, error);
      if (before == NULL)
        return FALSE;
      g_return_val_if_fail (before->batch_id == harvest->batch_id, FALSE);
    }
  ids = stead_given_ids_new (&harvest->id);
  stead_given_ids_add (ids, &harvest->lot_id);
  code = g_strdup (harvest->lot_code);
  harvest->lot_id = before != NULL ? before->lot_id : 0;
  if (stead_given_ids_end (ids, (before == NULL || free_lot (store, before, error)) &&
                                stead_harvest_check (store, batch, harvest, error) &&
                                write_with_lot (store, batch, harvest, error) &&
                                settle (store, before, harvest, error)))
    return TRUE;
  g_free (harvest->lot_code);
  harvest->lot_code = g_steal_pointer (&code);
  return FALSE;
}

gboolean
stead_harvest_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char harvest_sql[] = "DELETE FROM harvest WHERE id = ?1";
  static const char lot_sql[] = "DELETE FROM lot WHERE id = ?1";
  g_autoptr(SteadHarvest) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_harvest_repo_get (store, id, error);
  return before != NULL &&
         free_lot (store, before, error) &&
         stead_repo_run_id (store, harvest_sql, id, error) &&
         (before->lot_id == 0 || stead_repo_run_id (store, lot_sql, before->lot_id, error)) &&
         settle (store, before, NULL, error);
}

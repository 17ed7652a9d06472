/* stead-kitchen-repo.c - kitchen batches as they stand in the file.
 *
 * Invariants:
 *  1. Only a kitchen batch that is not finished takes out of the store room.
 *  2. A finished one has one harvest, on its last day; its lot, if something good
 *     came, carries the cents of all that the batch used, and nothing else.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-item-private.h"
#include "store/stead-kitchen-private.h"

void
stead_kitchen_part_free (SteadKitchenPart *part)
{
  if (part == NULL)
    return;
  g_free (part->note);
  g_free (part->item_name);
  g_free (part);
}

void
stead_kitchen_step_free (SteadKitchenStep *step)
{
  if (step == NULL)
    return;
  g_free (step->text);
  g_free (step->step);
  g_free (step->food);
  g_free (step->note);
  g_free (step);
}

void
stead_kitchen_free (SteadKitchen *kitchen)
{
  if (kitchen == NULL)
    return;
  stead_batch_clear (&kitchen->batch);
  g_clear_pointer (&kitchen->parts, g_ptr_array_unref);
  g_clear_pointer (&kitchen->steps, g_ptr_array_unref);
  g_free (kitchen->recipe_name);
  g_free (kitchen->item_name);
  g_free (kitchen);
}

/* --- reading ---------------------------------------------------------------- */

#define KITCHEN_SELECT \
  "SELECT " BATCH_COLUMNS ", k.recipe_id, k.wanted_base, k.minutes, r.name, r.item_id, i.name, i.unit," \
  " (SELECT max (id) FROM harvest WHERE batch_id = b.id)" \
  " FROM kitchen k JOIN batch b ON b.id = k.batch_id JOIN recipe r ON r.id = k.recipe_id" \
  " JOIN item i ON i.id = r.item_id"

static gpointer
kitchen_from_row (SteadStmt *stmt)
{
  SteadKitchen *kitchen = g_new0 (SteadKitchen, 1);
  int at = BATCH_N_COLUMNS;

  stead_batch_read_row (stmt, &kitchen->batch);
  kitchen->recipe_id = sqlite3_column_int64 (stmt, at++);
  kitchen->wanted_base = sqlite3_column_double (stmt, at++);
  kitchen->minutes = sqlite3_column_double (stmt, at++);
  kitchen->recipe_name = stead_stmt_text (stmt, at++);
  kitchen->item_id = sqlite3_column_int64 (stmt, at++);
  kitchen->item_name = stead_stmt_text (stmt, at++);
  kitchen->item_unit = stead_item_unit (stmt, at++);
  kitchen->harvest_id = sqlite3_column_int64 (stmt, at);
  kitchen->parts = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_kitchen_part_free);
  kitchen->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_kitchen_step_free);
  return kitchen;
}

GPtrArray *
stead_kitchen_repo_list (SteadStore  *store,
                         gboolean     ended,
                         GError     **error)
{
  static const char sql[] =
    KITCHEN_SELECT " WHERE ?1 OR b.ended_on IS NULL ORDER BY b.ended_on IS NOT NULL,"
    " CASE WHEN b.ended_on IS NULL THEN b.started_on ELSE -b.ended_on END, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, kitchen_from_row,
                             (GDestroyNotify) stead_kitchen_free, error);
}

static gpointer
part_from_row (SteadStmt *stmt)
{
  SteadKitchenPart *part = g_new0 (SteadKitchenPart, 1);

  part->id = sqlite3_column_int64 (stmt, 0);
  part->item_id = sqlite3_column_int64 (stmt, 1);
  part->need_base = sqlite3_column_double (stmt, 2);
  part->amount = sqlite3_column_double (stmt, 3);
  part->unit = stead_item_unit (stmt, 4);
  part->note = stead_stmt_text (stmt, 5);
  part->item_name = stead_stmt_text (stmt, 6);
  part->item_unit = stead_item_unit (stmt, 7);
  part->taken_base = sqlite3_column_double (stmt, 8);
  return part;
}

static GPtrArray *
read_parts (SteadStore  *store,
            gint64       batch_id,
            GError     **error)
{
  static const char sql[] =
    "SELECT p.id, p.item_id, p.need_base, p.amount, p.unit, p.note, i.name, i.unit,"
    " (SELECT coalesce (-sum (m.quantity_base), 0) FROM movement m JOIN lot l ON l.id = m.lot_id"
    "   WHERE m.batch_id = p.batch_id AND m.kind = 'used' AND l.item_id = p.item_id)"
    " FROM kitchen_part p JOIN item i ON i.id = p.item_id WHERE p.batch_id = ?1 ORDER BY p.position, p.id";

  return stead_repo_rows_of (store, sql, batch_id, part_from_row, (GDestroyNotify) stead_kitchen_part_free,
                             error);
}

static gint64
time_at (SteadStmt *stmt,
         int        at)
{
  return sqlite3_column_type (stmt, at) == SQLITE_NULL ? STEAD_TIME_NONE : sqlite3_column_int64 (stmt, at);
}

static gpointer
step_from_row (SteadStmt *stmt)
{
  SteadKitchenStep *step = g_new0 (SteadKitchenStep, 1);

  step->id = sqlite3_column_int64 (stmt, 0);
  step->text = stead_stmt_text (stmt, 1);
  step->minutes = stead_stmt_real (stmt, 2);
  step->step = stead_stmt_text (stmt, 3);
  step->food = stead_stmt_text (stmt, 4);
  step->least_c = stead_stmt_real (stmt, 5);
  step->most_c = stead_stmt_real (stmt, 6);
  step->hold_s = stead_stmt_real (stmt, 7);
  step->started_at = time_at (stmt, 8);
  step->done_at = time_at (stmt, 9);
  step->person_id = sqlite3_column_int64 (stmt, 10);
  step->note = stead_stmt_text (stmt, 11);
  return step;
}

static GPtrArray *
read_steps (SteadStore  *store,
            gint64       batch_id,
            GError     **error)
{
  static const char sql[] =
    "SELECT id, text, minutes, step, food, least_c, most_c, hold_s, started_at, done_at, person_id, note"
    " FROM kitchen_step WHERE batch_id = ?1 ORDER BY position, id";

  return stead_repo_rows_of (store, sql, batch_id, step_from_row, (GDestroyNotify) stead_kitchen_step_free,
                             error);
}

SteadKitchen *
stead_kitchen_repo_get (SteadStore  *store,
                        gint64       batch_id,
                        GError     **error)
{
  static const char sql[] = KITCHEN_SELECT " WHERE k.batch_id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadKitchen) kitchen = NULL;
  g_autoptr(GPtrArray) parts = NULL;
  g_autoptr(GPtrArray) steps = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  kitchen = stead_repo_row (store, stmt, kitchen_from_row, error);
  parts = kitchen != NULL ? read_parts (store, batch_id, error) : NULL;
  steps = parts != NULL ? read_steps (store, batch_id, error) : NULL;
  if (steps == NULL)
    return NULL;
  g_ptr_array_unref (kitchen->parts);
  kitchen->parts = g_steal_pointer (&parts);
  g_ptr_array_unref (kitchen->steps);
  kitchen->steps = g_steal_pointer (&steps);
  return g_steal_pointer (&kitchen);
}

/* --- the batch itself ----------------------------------------------------------- */

SteadBatch *
stead_kitchen_open_batch (SteadStore  *store,
                          gint64       batch_id,
                          GError     **error)
{
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, batch_id, error);

  if (batch == NULL)
    return NULL;
  if (batch->kind != STEAD_BATCH_KITCHEN)
    {
      stead_repo_missing (error);
      return NULL;
    }
  if (batch->ended_on != STEAD_DAY_NONE)
    {
      stead_repo_refuse (error, _("“%s” is finished. Open it again first."), batch->name);
      return NULL;
    }
  return g_steal_pointer (&batch);
}

gboolean
stead_kitchen_begin_by (SteadStore  *store,
                        SteadBatch  *batch,
                        SteadDay     day,
                        GError     **error)
{
  if (batch->started_on <= day)
    return TRUE;
  batch->started_on = day;
  return stead_batch_write (store, batch, error);
}

/* What was taken out must lie on the first day or after it. */
static gboolean
check_first_day (SteadStore        *store,
                 const SteadBatch  *batch,
                 GError           **error)
{
  static const char sql[] = "SELECT min (day) FROM movement WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  SteadDay first;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  first = stead_stmt_day (stmt, 0);
  if (first != STEAD_DAY_NONE && first < batch->started_on)
    {
      g_autofree char *text = stead_day_format (first, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("“%s” has something written down for %s. It cannot begin after that day."),
                                batch->name, text);
    }
  return TRUE;
}

gboolean
stead_kitchen_repo_save (SteadStore    *store,
                         SteadKitchen  *kitchen,
                         GError       **error)
{
  static const char sql[] = "UPDATE kitchen SET minutes = ?2 WHERE batch_id = ?1";
  g_autoptr(SteadBatch) before = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && kitchen != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_batch_repo_get (store, kitchen->batch.id, error);
  if (before == NULL)
    return FALSE;
  g_return_val_if_fail (before->kind == STEAD_BATCH_KITCHEN && kitchen->batch.kind == STEAD_BATCH_KITCHEN, FALSE);
  if (!(kitchen->minutes >= 0 && kitchen->minutes <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The minutes of work must be 0 or more. Check the number."));
  /* Its end is a matter of stead_kitchen_repo_finish(). */
  kitchen->batch.ended_on = before->ended_on;
  if (!stead_batch_check (store, &kitchen->batch, error) || !check_first_day (store, &kitchen->batch, error) ||
      !stead_batch_write (store, &kitchen->batch, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, kitchen->batch.id);
  sqlite3_bind_double (stmt, 2, kitchen->minutes);
  return stead_store_run (store, stmt, error);
}

/* stead-batch-repo.c - what all batches share, and the plan of each. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-private.h"
#include "store/stead-item-repo.h"

const char * const stead_batch_kind_words[] = { "flock", "fish", "crop", "kitchen", NULL };

SteadBatch *
stead_batch_copy (const SteadBatch *batch)
{
  SteadBatch *copy;

  if (batch == NULL)
    return NULL;
  copy = g_new (SteadBatch, 1);
  *copy = *batch;
  copy->name = g_strdup (batch->name);
  copy->note = g_strdup (batch->note);
  return copy;
}

void
stead_batch_clear (SteadBatch *batch)
{
  g_clear_pointer (&batch->name, g_free);
  g_clear_pointer (&batch->note, g_free);
}

void
stead_batch_free (SteadBatch *batch)
{
  if (batch == NULL)
    return;
  stead_batch_clear (batch);
  g_free (batch);
}

/* --- reading ---------------------------------------------------------------- */

void
stead_batch_read_row (SteadStmt  *stmt,
                      SteadBatch *out)
{
  out->id = sqlite3_column_int64 (stmt, 0);
  out->kind = (SteadBatchKind) stead_repo_word (stmt, 1, stead_batch_kind_words);
  out->name = stead_stmt_text (stmt, 2);
  out->place_id = sqlite3_column_int64 (stmt, 3);
  out->started_on = stead_stmt_day (stmt, 4);
  out->ended_on = stead_stmt_day (stmt, 5);
  out->feed_item_id = sqlite3_column_int64 (stmt, 6);
  out->care_minutes_day = sqlite3_column_double (stmt, 7);
  out->note = stead_stmt_text (stmt, 8);
}

static gpointer
batch_from_row (SteadStmt *stmt)
{
  SteadBatch *batch = g_new0 (SteadBatch, 1);

  stead_batch_read_row (stmt, batch);
  return batch;
}

/* Returns: (transfer full) (element-type SteadBatch) */
GPtrArray *
stead_batch_repo_list (SteadStore  *store,
                       gboolean     ended,
                       GError     **error)
{
  static const char sql[] =
    "SELECT " BATCH_COLUMNS " FROM batch b WHERE ?1 OR b.ended_on IS NULL"
    " ORDER BY CASE b.kind WHEN 'flock' THEN 0 WHEN 'fish' THEN 1 WHEN 'crop' THEN 2 ELSE 3 END,"
    " b.ended_on IS NOT NULL, b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, batch_from_row, (GDestroyNotify) stead_batch_free,
                             error);
}

SteadBatch *
stead_batch_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "SELECT " BATCH_COLUMNS " FROM batch b WHERE b.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, batch_from_row, error);
}

void
stead_loss_free (SteadLoss *loss)
{
  if (loss == NULL)
    return;
  g_free (loss->reason);
  g_free (loss);
}

static gpointer
loss_from_row (SteadStmt *stmt)
{
  SteadLoss *loss = g_new0 (SteadLoss, 1);

  loss->reason = stead_stmt_text (stmt, 0);
  loss->n = sqlite3_column_int64 (stmt, 1);
  return loss;
}

/* Returns: (transfer full) (element-type SteadLoss) */
GPtrArray *
stead_batch_repo_losses (SteadStore  *store,
                         gint64       id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] =
    "SELECT min (reason), sum (deaths + culled) AS n FROM batch_entry"
    " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 AND deaths + culled > 0"
    " GROUP BY lower (trim (reason)) ORDER BY n DESC, 1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, loss_from_row, (GDestroyNotify) stead_loss_free, error);
}

/* --- checking --------------------------------------------------------------- */

/* What is written down of a batch must lie between its first and its last day. */
static gboolean
check_log (SteadStore        *store,
           const SteadBatch  *batch,
           GError           **error)
{
  static const char sql[] =
    "SELECT min (first), max (last) FROM ("
    "SELECT min (day) AS first, max (day) AS last FROM batch_entry WHERE batch_id = ?1"
    " UNION ALL SELECT min (day), max (day) FROM weighing WHERE batch_id = ?1"
    " UNION ALL SELECT min (day), max (day) FROM harvest WHERE batch_id = ?1"
    " UNION ALL SELECT min (day), max (day) FROM fish_move WHERE from_id = ?1"
    " UNION ALL SELECT min (day), max (day) FROM fish_move WHERE to_id = ?1)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *text = NULL;
  SteadDay first, last;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  first = stead_stmt_day (stmt, 0);
  last = stead_stmt_day (stmt, 1);
  if (first != STEAD_DAY_NONE && first < batch->started_on)
    {
      text = stead_day_format (first, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” has something written down for %s. It cannot begin after that day."),
                                batch->name, text);
    }
  if (last != STEAD_DAY_NONE && batch->ended_on != STEAD_DAY_NONE && last > batch->ended_on)
    {
      text = stead_day_format (last, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” has something written down for %s. It cannot end before that day."),
                                batch->name, text);
    }
  return TRUE;
}

static gboolean
check_days (SteadStore        *store,
            const SteadBatch  *batch,
            GError           **error)
{
  SteadDay today = stead_store_get_today (store);

  if (batch->started_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day it began."));
  /* Only what is cooked is planned for a day to come. */
  if (batch->started_on > today && batch->kind != STEAD_BATCH_KITCHEN)
    return stead_repo_refuse (error, _("The day it began is still to come. Enter a day up to today."));
  if (batch->ended_on != STEAD_DAY_NONE && batch->ended_on < batch->started_on)
    return stead_repo_refuse (error, _("It cannot end before it began. Check the two days."));
  if (batch->ended_on != STEAD_DAY_NONE && batch->ended_on > today)
    return stead_repo_refuse (error, _("The day it ended is still to come. Enter it when it is here."));
  return batch->id == 0 || check_log (store, batch, error);
}

static gboolean
check_feed (SteadStore  *store,
            gint64       item_id,
            GError     **error)
{
  g_autoptr(SteadItem) item = NULL;

  if (item_id == 0)
    return TRUE;
  item = stead_item_repo_get (store, item_id, error);
  if (item == NULL)
    return FALSE;
  if (item->unit->dimension != STEAD_DIMENSION_MASS)
    return stead_repo_refuse (error, _("“%s” is not weighed. Choose a feed that is bought by weight."), item->name);
  return TRUE;
}

gboolean
stead_batch_check (SteadStore        *store,
                   const SteadBatch  *batch,
                   GError           **error)
{
  static const char taken_sql[] = "SELECT 1 FROM batch WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (batch->name, error) ||
      !stead_repo_check_unique (store, taken_sql, batch->name, batch->id, error) ||
      !check_days (store, batch, error) ||
      !check_feed (store, batch->feed_item_id, error) ||
      !stead_repo_check_note (batch->note, error))
    return FALSE;
  if (!(batch->care_minutes_day >= 0 && batch->care_minutes_day <= 1440))
    return stead_repo_refuse (error, _("The minutes of care must lie between 0 and 1,440, the minutes of a day."));
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

gboolean
stead_batch_write (SteadStore  *store,
                   SteadBatch  *batch,
                   GError     **error)
{
  static const char insert_sql[] = "INSERT INTO batch (name, place_id, started_on, ended_on, note, feed_item_id,"
                                   " care_minutes_day, kind) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] = "UPDATE batch SET name = ?1, place_id = ?2, started_on = ?3, ended_on = ?4,"
                                   " note = ?5, feed_item_id = ?6, care_minutes_day = ?7 WHERE id = ?9 AND kind = ?8";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, batch->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, batch->name);
  stead_stmt_bind_id (stmt, 2, batch->place_id);
  stead_stmt_bind_day (stmt, 3, batch->started_on);
  stead_stmt_bind_day (stmt, 4, batch->ended_on);
  stead_repo_bind_tidy (stmt, 5, batch->note);
  stead_stmt_bind_id (stmt, 6, batch->feed_item_id);
  sqlite3_bind_double (stmt, 7, batch->care_minutes_day);
  stead_stmt_bind_text (stmt, 8, stead_batch_kind_words[batch->kind]);
  if (batch->id != 0)
    sqlite3_bind_int64 (stmt, 9, batch->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (batch->id == 0)
    batch->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
write_end (SteadStore  *store,
           gint64       id,
           SteadDay     day,
           GError     **error)
{
  static const char sql[] = "UPDATE batch SET ended_on = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_day (stmt, 2, day);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_batch_repo_end (SteadStore  *store,
                      gint64       id,
                      SteadDay     day,
                      GError     **error)
{
  g_autoptr(SteadBatch) batch = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_batch_repo_get (store, id, error);
  if (batch == NULL)
    return FALSE;
  batch->ended_on = day;
  return check_days (store, batch, error) && write_end (store, id, day, error);
}

/* --- deleting --------------------------------------------------------------- */

gboolean
stead_batch_check_unused (SteadStore  *store,
                          gint64       id,
                          GError     **error)
{
  static const char products_sql[] = "SELECT count (*) FROM product WHERE batch_id = ?1";
  static const char harvests_sql[] =
    "SELECT (SELECT count (*) FROM lot WHERE batch_id = ?1) + (SELECT count (*) FROM harvest WHERE batch_id = ?1)";
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, id, error);
  gint64 products, harvests;

  if (batch == NULL ||
      (products = stead_repo_count_id (store, products_sql, id, error)) < 0 ||
      (harvests = stead_repo_count_id (store, harvests_sql, id, error)) < 0)
    return FALSE;
  if (products > 0)
    return stead_repo_refuse (error, ngettext ("%d product comes from “%s”. Choose another batch there first.",
                                               "%d products come from “%s”. Choose another batch there first.",
                                               (gulong) products), (int) products, batch->name);
  if (harvests > 0)
    return stead_repo_refuse (error, _("“%s” has harvests. It cannot be deleted; end it instead."), batch->name);
  return TRUE;
}

/* A picture belongs to one note; those of the batch go once no note names them. */
static gboolean
remove_pictures (SteadStore  *store,
                 gint64       id,
                 GError     **error)
{
  static const char list_sql[] = "SELECT picture_id FROM batch_note WHERE batch_id = ?1 AND picture_id IS NOT NULL"
                                 " ORDER BY id";
  static const char notes_sql[] = "DELETE FROM batch_note WHERE batch_id = ?1";
  static const char picture_sql[] = "DELETE FROM picture WHERE id = ?1";
  g_autoptr(GArray) pictures = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, list_sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      gint64 picture = sqlite3_column_int64 (stmt, 0);

      g_array_append_val (pictures, picture);
    }
  if (found < 0 || !stead_repo_run_id (store, notes_sql, id, error))
    return FALSE;
  for (guint i = 0; i < pictures->len; i++)
    if (!stead_repo_run_id (store, picture_sql, g_array_index (pictures, gint64, i), error))
      return FALSE;
  return TRUE;
}

gboolean
stead_batch_remove (SteadStore  *store,
                    gint64       id,
                    GError     **error)
{
  static const char sql[] = "DELETE FROM batch WHERE id = ?1";

  return remove_pictures (store, id, error) && stead_repo_run_id (store, sql, id, error);
}

/* stead-crop-log.c - the log of a crop: plants lost, work done, notes. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-crop-repo.h"
#include "store/stead-repo-private.h"

#define ENTRY_COLUMNS "id, batch_id, day, deaths, reason, note, person_id, left_out"

void
stead_crop_entry_free (SteadCropEntry *entry)
{
  if (entry == NULL)
    return;
  g_free (entry->reason);
  g_free (entry->note);
  g_free (entry);
}

/* --- reading ---------------------------------------------------------------- */

static gpointer
entry_from_row (SteadStmt *stmt)
{
  SteadCropEntry *entry = g_new0 (SteadCropEntry, 1);

  entry->id = sqlite3_column_int64 (stmt, 0);
  entry->crop_id = sqlite3_column_int64 (stmt, 1);
  entry->day = stead_stmt_day (stmt, 2);
  entry->lost = sqlite3_column_int (stmt, 3);
  entry->reason = stead_stmt_text (stmt, 4);
  entry->note = stead_stmt_text (stmt, 5);
  entry->person_id = sqlite3_column_int64 (stmt, 6);
  entry->left_out = sqlite3_column_int (stmt, 7) != 0;
  return entry;
}

/* Returns: (transfer full) (element-type SteadCropEntry): oldest first */
GPtrArray *
stead_crop_repo_entries (SteadStore  *store,
                         gint64       crop_id,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = "SELECT " ENTRY_COLUMNS " FROM batch_entry"
                            " WHERE batch_id = ?1 AND day BETWEEN ?2 AND ?3 ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, crop_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  return stead_repo_rows (store, stmt, entry_from_row, (GDestroyNotify) stead_crop_entry_free, error);
}

/* Plants lost before @day by other entries than @but; -1 with @error. */
static gint64
lost_before (SteadStore  *store,
             gint64       crop_id,
             SteadDay     day,
             gint64       but,
             GError     **error)
{
  static const char sql[] = "SELECT coalesce (sum (deaths), 0) FROM batch_entry"
                            " WHERE batch_id = ?1 AND deaths + culled > 0 AND day < ?2 AND id <> ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 lost = -1;

  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, crop_id);
  sqlite3_bind_int (stmt, 2, day);
  sqlite3_bind_int64 (stmt, 3, but);
  return stead_repo_number (store, stmt, 0, &lost, error) ? lost : -1;
}

gint64
stead_crop_repo_plants (SteadStore  *store,
                        gint64       crop_id,
                        SteadDay     day,
                        GError     **error)
{
  g_autoptr(SteadCrop) crop = NULL;
  gint64 lost;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  crop = stead_crop_repo_get (store, crop_id, error);
  if (crop == NULL)
    return -1;
  lost = lost_before (store, crop_id, day, 0, error);
  return lost < 0 ? -1 : MAX (crop->plants - lost, 0);
}

gboolean
stead_crop_repo_fish_feed (SteadStore  *store,
                           gint64       crop_id,
                           SteadDay     from,
                           SteadDay     to,
                           double      *out,
                           GError     **error)
{
  static const char sql[] =
    "SELECT (SELECT coalesce (sum (e.feed_kg), 0) FROM place p JOIN batch f ON f.place_id = p.id AND f.kind = 'fish'"
    " JOIN batch_entry e ON e.batch_id = f.id AND e.day BETWEEN ?2 AND ?3 AND e.feed_kg > 0"
    " WHERE p.water_id = own.water_id)"
    " FROM batch b JOIN place own ON own.id = b.place_id WHERE b.id = ?1 AND own.water_id IS NOT NULL";
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, crop_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  found = stead_store_step (store, stmt, error);
  if (found < 0)
    return FALSE;
  *out = found == 1 ? sqlite3_column_double (stmt, 0) : NAN;
  return TRUE;
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_entry_day (const SteadCropEntry  *entry,
                 const SteadCrop       *crop,
                 SteadDay               today,
                 GError               **error)
{
  g_autofree char *text = NULL;

  if (entry->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (entry->day < crop->batch.started_on)
    {
      text = stead_day_format (crop->batch.started_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” began on %s. An entry cannot be from before that day."),
                                crop->batch.name, text);
    }
  if (crop->batch.ended_on != STEAD_DAY_NONE && entry->day > crop->batch.ended_on)
    {
      text = stead_day_format (crop->batch.ended_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” ended on %s. An entry cannot be from after that day."),
                                crop->batch.name, text);
    }
  if (entry->day > today)
    return stead_repo_refuse (error, _("That day is still to come. Check the date."));
  return TRUE;
}

static gboolean
check_lost (SteadStore            *store,
            const SteadCropEntry  *entry,
            const SteadCrop       *crop,
            GError               **error)
{
  gint64 lost, left;

  if (entry->lost < 0)
    return stead_repo_refuse (error, _("The number of plants lost must be 0 or more."));
  if (entry->lost == 0)
    return TRUE;
  lost = lost_before (store, entry->crop_id, G_MAXINT32, entry->id, error);
  if (lost < 0)
    return FALSE;
  left = crop->plants - lost;
  if (entry->lost > left)
    return stead_repo_refuse (error, ngettext ("Only %d plant is left, so no more can be lost. Check the number.",
                                               "Only %d plants are left, so no more can be lost. Check the number.",
                                               (gulong) left), (int) left);
  return TRUE;
}

static gboolean
has_text (const char *text)
{
  g_autofree char *tidy = stead_repo_tidy (text);

  return tidy != NULL;
}

static gboolean
entry_check (SteadStore            *store,
             const SteadCropEntry  *entry,
             const SteadCrop       *crop,
             GError               **error)
{
  if (!check_entry_day (entry, crop, stead_store_get_today (store), error) ||
      !check_lost (store, entry, crop, error) ||
      !stead_repo_check_note (entry->reason, error) || !stead_repo_check_note (entry->note, error))
    return FALSE;
  if (entry->lost == 0 && !has_text (entry->note))
    return stead_repo_refuse (error, _("Nothing is entered. Enter plants lost, or a note."));
  return TRUE;
}

/* --- writing ---------------------------------------------------------------- */

gboolean
stead_crop_repo_save_entry (SteadStore      *store,
                            SteadCropEntry  *entry,
                            GError         **error)
{
  static const char insert_sql[] = "INSERT INTO batch_entry (batch_id, day, deaths, reason, note, person_id, left_out)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] = "UPDATE batch_entry SET batch_id = ?1, day = ?2, deaths = ?3, reason = ?4,"
                                   " note = ?5, person_id = ?6, left_out = ?7 WHERE id = ?8";
  g_autoptr(SteadCrop) crop = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && entry != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  crop = stead_crop_repo_get (store, entry->crop_id, error);
  if (crop == NULL || !entry_check (store, entry, crop, error))
    return FALSE;
  stmt = stead_store_prepare (store, entry->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, entry->crop_id);
  stead_stmt_bind_day (stmt, 2, entry->day);
  sqlite3_bind_int (stmt, 3, entry->lost);
  stead_repo_bind_tidy (stmt, 4, entry->reason);
  stead_repo_bind_tidy (stmt, 5, entry->note);
  stead_stmt_bind_id (stmt, 6, entry->person_id);
  sqlite3_bind_int (stmt, 7, entry->left_out != FALSE);
  if (entry->id != 0)
    sqlite3_bind_int64 (stmt, 8, entry->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (entry->id == 0)
    entry->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_crop_repo_delete_entry (SteadStore  *store,
                              gint64       entry_id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM batch_entry WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, sql, entry_id, error);
}

/* stead-batch-notes.c - notes on a batch, with pictures.
 *
 * A picture belongs to one note and goes with it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-batch-private.h"

/* The largest that the file takes; the window scales down far below it. */
#define JPEG_MAX 1000000
#define SIDE_MAX 8000

void
stead_batch_note_free (SteadBatchNote *note)
{
  if (note == NULL)
    return;
  g_free (note->text);
  g_free (note);
}

#define NOTE_COLUMNS "id, batch_id, day, text, picture_id, person_id"

static gpointer
note_from_row (SteadStmt *stmt)
{
  SteadBatchNote *note = g_new0 (SteadBatchNote, 1);

  note->id = sqlite3_column_int64 (stmt, 0);
  note->batch_id = sqlite3_column_int64 (stmt, 1);
  note->day = stead_stmt_day (stmt, 2);
  note->text = stead_stmt_text (stmt, 3);
  note->picture_id = sqlite3_column_int64 (stmt, 4);
  note->person_id = sqlite3_column_int64 (stmt, 5);
  return note;
}

/* Returns: (transfer full) (element-type SteadBatchNote) */
GPtrArray *
stead_batch_repo_notes (SteadStore  *store,
                        gint64       batch_id,
                        GError     **error)
{
  static const char sql[] = "SELECT " NOTE_COLUMNS " FROM batch_note WHERE batch_id = ?1 ORDER BY day DESC, id DESC";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, batch_id, note_from_row, (GDestroyNotify) stead_batch_note_free,
                             error);
}

static SteadBatchNote *
get_note (SteadStore  *store,
          gint64       id,
          GError     **error)
{
  static const char sql[] = "SELECT " NOTE_COLUMNS " FROM batch_note WHERE id = ?1";

  return stead_repo_row_of (store, sql, id, note_from_row, error);
}

static gboolean
note_check (SteadStore            *store,
            const SteadBatchNote  *note,
            GError               **error)
{
  g_autofree char *text = stead_repo_tidy (note->text);

  if (note->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (note->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The day of the note is still to come. Enter a day up to today."));
  if (text == NULL && note->picture_id == 0)
    return stead_repo_refuse (error, _("Write something, or add a picture."));
  return stead_repo_check_note (text, error);
}

static gboolean
write_note (SteadStore      *store,
            SteadBatchNote  *note,
            GError         **error)
{
  static const char insert_sql[] = "INSERT INTO batch_note (batch_id, day, text, picture_id, person_id)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5)";
  static const char update_sql[] = "UPDATE batch_note SET batch_id = ?1, day = ?2, text = ?3, picture_id = ?4,"
                                   " person_id = ?5 WHERE id = ?6";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, note->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, note->batch_id);
  stead_stmt_bind_day (stmt, 2, note->day);
  stead_repo_bind_tidy (stmt, 3, note->text);
  stead_stmt_bind_id (stmt, 4, note->picture_id);
  stead_stmt_bind_id (stmt, 5, note->person_id);
  if (note->id != 0)
    sqlite3_bind_int64 (stmt, 6, note->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (note->id == 0)
    note->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
remove_picture (SteadStore  *store,
                gint64       id,
                GError     **error)
{
  static const char sql[] = "DELETE FROM picture WHERE id = ?1";

  return id == 0 || stead_repo_run_id (store, sql, id, error);
}

gboolean
stead_batch_repo_save_note (SteadStore      *store,
                            SteadBatchNote  *note,
                            GError         **error)
{
  g_autoptr(SteadBatch) batch = NULL;
  g_autoptr(SteadBatchNote) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && note != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_batch_repo_get (store, note->batch_id, error);
  if (batch == NULL || !note_check (store, note, error))
    return FALSE;
  if (note->id == 0)
    return write_note (store, note, error);
  before = get_note (store, note->id, error);
  return before != NULL &&
         write_note (store, note, error) &&
         (before->picture_id == note->picture_id || remove_picture (store, before->picture_id, error));
}

gboolean
stead_batch_repo_delete_note (SteadStore  *store,
                              gint64       note_id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM batch_note WHERE id = ?1";
  g_autoptr(SteadBatchNote) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = get_note (store, note_id, error);
  return before != NULL &&
         stead_repo_run_id (store, sql, note_id, error) &&
         remove_picture (store, before->picture_id, error);
}

/* --- pictures ----------------------------------------------------------------- */

gint64
stead_picture_repo_add (SteadStore  *store,
                        GBytes      *jpeg,
                        int          width,
                        int          height,
                        GError     **error)
{
  static const char sql[] = "INSERT INTO picture (width, height, jpeg) VALUES (?1, ?2, ?3)";
  g_autoptr(SteadStmt) stmt = NULL;
  gconstpointer data;
  gsize size;

  g_return_val_if_fail (STEAD_IS_STORE (store) && jpeg != NULL, 0);
  g_return_val_if_fail (stead_store_in_action (store), 0);
  data = g_bytes_get_data (jpeg, &size);
  if (size == 0 || size > JPEG_MAX || width < 1 || height < 1 || width > SIDE_MAX || height > SIDE_MAX)
    {
      stead_repo_refuse (error, _("The picture is empty or too large. Choose a smaller one."));
      return 0;
    }
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return 0;
  sqlite3_bind_int (stmt, 1, width);
  sqlite3_bind_int (stmt, 2, height);
  sqlite3_bind_blob64 (stmt, 3, data, size, SQLITE_TRANSIENT);
  return stead_store_run (store, stmt, error) ? stead_store_last_id (store) : 0;
}

static gpointer
picture_from_row (SteadStmt *stmt)
{
  gconstpointer data = sqlite3_column_blob (stmt, 0);

  return g_bytes_new (data, (gsize) sqlite3_column_bytes (stmt, 0));
}

/* Returns: (transfer full): the JPEG file, or %NULL with @error */
GBytes *
stead_picture_repo_get (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "SELECT jpeg FROM picture WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, picture_from_row, error);
}

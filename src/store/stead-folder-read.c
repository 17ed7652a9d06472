/* stead-folder-read.c - a farm made of the tables and the pictures in a folder.
 *
 * The rows go in as they are, with the triggers asleep, since what triggers keep is in
 * the tables, too.  Then everything that must hold is checked, and only a farm that is
 * sound gets its name.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "core/stead-jpeg.h"
#include "store/stead-copy.h"
#include "store/stead-folder-private.h"
#include "store/stead-message.h"
#include "store/stead-store-internal.h"

#define MOST_PICTURE_BYTES 1000000

/* What the mark of the folder says. */
typedef struct
{
  gint64 format, schema, whole;
} Mark;

/* One table on its way in. */
typedef struct
{
  sqlite3                *db;
  const char             *folder;
  const SteadFolderTable *table;
  char                   *name;      /* "tables/batch.csv" */
  sqlite3_stmt           *stmt;
  GArray                 *order;     /* of int: the column of each cell */
  GCancellable           *cancellable;
} Reader;

/* --- the mark ---------------------------------------------------------------------- */

static gboolean
mark_row (const SteadFolderCell  *cells,
          guint                   n_cells,
          guint                   line,
          gpointer                data,
          GError                **error)
{
  Mark *mark = data;
  gint64 number = -1;

  if (n_cells != 2 || line == 1 || !stead_folder_take_whole (&cells[1], STEAD_FOLDER_WHOLE, &number))
    return TRUE;
  if (g_str_equal (cells[0].text, "format"))
    mark->format = number;
  else if (g_str_equal (cells[0].text, "schema"))
    mark->schema = number;
  else if (g_str_equal (cells[0].text, "whole"))
    mark->whole = number;
  return TRUE;
}

static gboolean
check_mark (const char  *folder,
            Mark        *mark,
            GError     **error)
{
  g_autofree char *path = g_build_filename (folder, STEAD_FOLDER_MARK, NULL);

  if (!g_file_test (path, G_FILE_TEST_IS_REGULAR))
    return stead_repo_refuse (error, _("This is not the folder of a farm: the file “%s” is not in it. "
                                       "Choose the folder that holds it."), STEAD_FOLDER_MARK);
  if (!stead_folder_read_rows (path, STEAD_FOLDER_MARK, mark_row, mark, error))
    return FALSE;
  if (mark->format > STEAD_FOLDER_FORMAT || mark->schema > STEAD_SCHEMA_VERSION)
    {
      g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_NEWER,
                           _("A newer version of this program wrote this folder. Bring the program up to date to "
                             "take it in."));
      return FALSE;
    }
  if (mark->format < 1 || mark->schema < 1)
    return stead_repo_refuse (error, _("“%s” does not say which kind of folder this is. Nothing was taken in."),
                              STEAD_FOLDER_MARK);
  if (mark->whole != 1)
    return stead_repo_refuse (error, _("This folder holds only a part of a farm, so it cannot be taken in as one. "
                                       "Write the whole farm as a folder."));
  return TRUE;
}

/* --- one row ------------------------------------------------------------------------- */

static const SteadFolderColumn *
column_of (const Reader *reader,
           guint         at)
{
  return reader->table->columns->pdata[at];
}

static gboolean
refuse_cell (const Reader             *reader,
             const SteadFolderColumn  *column,
             const SteadFolderCell    *cell,
             guint                     line,
             GError                  **error)
{
  g_autofree char *shown = g_utf8_substring (cell->text, 0, MIN (g_utf8_strlen (cell->text, -1), 40));
  const char *name = reader->name;

  switch (column->type)
    {
    case STEAD_FOLDER_NUMBER:
      return stead_repo_refuse (error, _("“%s”, line %u, column “%s”: “%s” is not a number. Write it with a decimal "
                                         "point. Nothing was taken in."), name, line, column->name, shown);
    case STEAD_FOLDER_DAY:
      return stead_repo_refuse (error, _("“%s”, line %u, column “%s”: “%s” is not a day such as 2026-03-03. "
                                         "Nothing was taken in."), name, line, column->name, shown);
    case STEAD_FOLDER_MOMENT:
      return stead_repo_refuse (error, _("“%s”, line %u, column “%s”: “%s” is not a moment such as "
                                         "2026-03-03T14:05:00Z. Nothing was taken in."), name, line, column->name, shown);
    case STEAD_FOLDER_PICTURE:
      return stead_repo_refuse (error, _("“%s”, line %u, column “%s”: “%s” is not the name of this picture. "
                                         "Nothing was taken in."), name, line, column->name, shown);
    case STEAD_FOLDER_WHOLE:
    case STEAD_FOLDER_TEXT:
    default:
      return stead_repo_refuse (error, _("“%s”, line %u, column “%s”: “%s” is not a whole number. "
                                         "Nothing was taken in."), name, line, column->name, shown);
    }
}

/* The name in the table must be the one that the id gives: no path is followed. */
static gboolean
bind_picture (Reader                  *reader,
              int                      at,
              const SteadFolderCell   *cell,
              const SteadFolderCell   *id_cell,
              guint                    line,
              GError                 **error)
{
  g_autofree char *name = NULL;
  g_autofree char *path = NULL;
  g_autofree char *data = NULL;
  g_autoptr(GBytes) whole = NULL;
  g_autoptr(GBytes) bare = NULL;
  gint64 id = 0;
  gsize length;
  int width, height;

  if (id_cell == NULL || !stead_folder_take_whole (id_cell, STEAD_FOLDER_WHOLE, &id))
    return refuse_cell (reader, column_of (reader, (guint) at - 1), cell, line, error);
  name = stead_folder_picture (id);
  if (!g_str_equal (name, cell->text))
    return refuse_cell (reader, column_of (reader, (guint) at - 1), cell, line, error);
  path = g_build_filename (reader->folder, name, NULL);
  if (!g_file_test (path, G_FILE_TEST_IS_REGULAR) || g_file_test (path, G_FILE_TEST_IS_SYMLINK) ||
      !g_file_get_contents (path, &data, &length, NULL))
    return stead_repo_refuse (error, _("The picture “%s” is not in the folder, or cannot be read. "
                                       "Nothing was taken in."), name);
  if (!stead_jpeg_read_size ((const guint8 *) data, length, &width, &height))
    return stead_repo_refuse (error, _("“%s” is not a JPEG picture, or it is cut off. Put the right picture in its "
                                       "place. Nothing was taken in."), name);
  whole = g_bytes_new_take (g_steal_pointer (&data), length);
  bare = stead_jpeg_strip (whole);
  if (g_bytes_get_size (bare) > MOST_PICTURE_BYTES)
    return stead_repo_refuse (error, _("The picture “%s” is larger than the farm can keep. Save it smaller. "
                                       "Nothing was taken in."), name);
  sqlite3_bind_blob64 (reader->stmt, at, g_bytes_get_data (bare, NULL), g_bytes_get_size (bare), SQLITE_TRANSIENT);
  return TRUE;
}

static gboolean
bind_cell (Reader                 *reader,
           guint                   at,
           const SteadFolderCell  *cell,
           const SteadFolderCell  *id_cell,
           guint                   line,
           GError                **error)
{
  const SteadFolderColumn *column = column_of (reader, at);
  int place = (int) at + 1;
  const char *text;
  gint64 whole;
  double number;
  gsize length;

  if (cell->length == 0)
    {
      if (column->needed)
        return stead_repo_refuse (error, _("“%s”, line %u, column “%s” is empty, and something is needed there. "
                                           "Nothing was taken in."), reader->name, line, column->name);
      return TRUE;
    }
  switch (column->type)
    {
    case STEAD_FOLDER_PICTURE:
      return bind_picture (reader, place, cell, id_cell, line, error);
    case STEAD_FOLDER_NUMBER:
      if (!stead_folder_take_number (cell, &number))
        return refuse_cell (reader, column, cell, line, error);
      sqlite3_bind_double (reader->stmt, place, number);
      return TRUE;
    case STEAD_FOLDER_TEXT:
      text = stead_folder_take_text (cell, &length);
      sqlite3_bind_text64 (reader->stmt, place, text, length, SQLITE_TRANSIENT, SQLITE_UTF8);
      return TRUE;
    case STEAD_FOLDER_WHOLE:
    case STEAD_FOLDER_DAY:
    case STEAD_FOLDER_MOMENT:
    default:
      if (!stead_folder_take_whole (cell, column->type, &whole))
        return refuse_cell (reader, column, cell, line, error);
      sqlite3_bind_int64 (reader->stmt, place, whole);
      return TRUE;
    }
}

static gboolean
refuse_row (const Reader  *reader,
            guint          line,
            int            rc,
            GError       **error)
{
  if (rc == SQLITE_CONSTRAINT_PRIMARYKEY || rc == SQLITE_CONSTRAINT_ROWID || rc == SQLITE_CONSTRAINT_UNIQUE)
    return stead_repo_refuse (error, _("“%s”, line %u: another row has the same %s, and no two may. "
                                       "Nothing was taken in."), reader->name, line,
                              strchr (sqlite3_errmsg (reader->db), ':') != NULL
                                ? strchr (sqlite3_errmsg (reader->db), ':') + 2 : "id");
  if ((rc & 0xff) == SQLITE_CONSTRAINT)
    return stead_repo_refuse (error, _("“%s”, line %u: a value is outside of what the farm can hold (%s). "
                                       "Nothing was taken in."), reader->name, line,
                              strchr (sqlite3_errmsg (reader->db), ':') != NULL
                                ? strchr (sqlite3_errmsg (reader->db), ':') + 2 : sqlite3_errmsg (reader->db));
  stead_message_set (reader->db, rc, error);
  return FALSE;
}

/* --- the first line ------------------------------------------------------------------- */

static int
find_column (const Reader *reader,
             const char   *name)
{
  for (guint i = 0; i < reader->table->columns->len; i++)
    if (g_str_equal (column_of (reader, i)->name, name))
      return (int) i;
  return -1;
}

static gboolean
has_column (const Reader *reader,
            int           at)
{
  for (guint i = 0; i < reader->order->len; i++)
    if (g_array_index (reader->order, int, i) == at)
      return TRUE;
  return FALSE;
}

/* Columns may stand in another order, as a person may have moved them. */
static gboolean
take_heading (Reader                 *reader,
              const SteadFolderCell  *cells,
              guint                   n_cells,
              GError                **error)
{
  for (guint i = 0; i < n_cells; i++)
    {
      int at = find_column (reader, cells[i].text);

      if (at < 0 || has_column (reader, at))
        return stead_repo_refuse (error, _("“%s” has a column “%s” that does not belong there. Nothing was taken in."),
                                  reader->name, cells[i].text);
      g_array_append_val (reader->order, at);
    }
  for (guint i = 0; i < reader->table->columns->len; i++)
    if (!has_column (reader, (int) i))
      return stead_repo_refuse (error, _("“%s” lacks the column “%s”. Nothing was taken in."), reader->name,
                                column_of (reader, i)->name);
  return TRUE;
}

static gboolean
take_row (const SteadFolderCell  *cells,
          guint                   n_cells,
          guint                   line,
          gpointer                data,
          GError                **error)
{
  Reader *reader = data;
  const SteadFolderCell *id_cell = NULL;
  int rc;

  if (reader->order->len == 0)
    return take_heading (reader, cells, n_cells, error);
  if (n_cells != reader->order->len)
    return stead_repo_refuse (error, _("“%s”, line %u has %u cells, but the first line has %u. Nothing was taken in."),
                              reader->name, line, n_cells, reader->order->len);
  if (g_cancellable_set_error_if_cancelled (reader->cancellable, error))
    return FALSE;
  for (guint i = 0; i < n_cells; i++)
    if (g_str_equal (column_of (reader, (guint) g_array_index (reader->order, int, i))->name, "id"))
      id_cell = &cells[i];
  for (guint i = 0; i < n_cells; i++)
    if (!bind_cell (reader, (guint) g_array_index (reader->order, int, i), &cells[i], id_cell, line, error))
      return FALSE;
  rc = sqlite3_step (reader->stmt);
  sqlite3_reset (reader->stmt);
  sqlite3_clear_bindings (reader->stmt);
  return rc == SQLITE_DONE || refuse_row (reader, line, rc, error);
}

static gboolean
read_table (Reader                  *reader,
            const SteadFolderTable  *table,
            GError                 **error)
{
  g_autofree char *path = NULL;
  g_autofree char *sql = stead_folder_insert (table);
  g_autofree char *empty = g_strdup_printf ("DELETE FROM \"%s\"", table->name);
  gboolean done;
  int rc;

  reader->table = table;
  reader->name = g_strdup_printf (STEAD_FOLDER_TABLES "/%s.csv", table->name);
  path = g_build_filename (reader->folder, reader->name, NULL);
  g_array_set_size (reader->order, 0);
  rc = sqlite3_prepare_v2 (reader->db, sql, -1, &reader->stmt, NULL);
  if (rc != SQLITE_OK)
    stead_message_set (reader->db, rc, error);
  done = rc == SQLITE_OK && stead_connection_exec (reader->db, empty, error) &&
         stead_folder_read_rows (path, reader->name, take_row, reader, error);
  if (done && reader->order->len == 0)
    done = stead_repo_refuse (error, _("“%s” is empty; not even the names of its columns are there. "
                                       "Nothing was taken in."), reader->name);
  g_clear_pointer (&reader->stmt, sqlite3_finalize);
  g_clear_pointer (&reader->name, g_free);
  return done;
}

/* --- the last ids ------------------------------------------------------------------------ */

static gboolean
take_last_id (const SteadFolderCell  *cells,
              guint                   n_cells,
              guint                   line,
              gpointer                data,
              GError                **error)
{
  Reader *reader = data;
  gint64 last;
  gsize length;

  if (line == 1)
    return TRUE;
  if (n_cells != 2 || !stead_folder_take_whole (&cells[1], STEAD_FOLDER_WHOLE, &last) || last < 0)
    return stead_repo_refuse (error, _("“%s”, line %u: a table and its last id belong here. Nothing was taken in."),
                              reader->name, line);
  sqlite3_reset (reader->stmt);
  sqlite3_bind_text (reader->stmt, 1, stead_folder_take_text (&cells[0], &length), -1, SQLITE_TRANSIENT);
  sqlite3_bind_int64 (reader->stmt, 2, last);
  return sqlite3_step (reader->stmt) == SQLITE_DONE ||
         stead_repo_refuse (error, "%s", sqlite3_errmsg (reader->db));
}

/* A table that only ever lost its rows has no other trace of the ids it gave. */
static gboolean
read_last_ids (Reader  *reader,
               GError **error)
{
  static const char sql[] =
    "INSERT INTO sqlite_sequence (name, seq)"
    " SELECT ?1, max (?2, coalesce ((SELECT seq FROM temp.had WHERE name = ?1), 0))"
    " WHERE EXISTS (SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?1 AND sql LIKE '%AUTOINCREMENT%')";
  g_autofree char *path = g_build_filename (reader->folder, STEAD_FOLDER_TABLES, STEAD_FOLDER_LAST ".csv", NULL);
  gboolean done;
  int rc;

  if (!stead_connection_exec (reader->db, "CREATE TEMP TABLE had AS SELECT name, seq FROM sqlite_sequence;"
                                          "DELETE FROM sqlite_sequence", error))
    return FALSE;
  rc = sqlite3_prepare_v2 (reader->db, sql, -1, &reader->stmt, NULL);
  if (rc != SQLITE_OK)
    {
      stead_message_set (reader->db, rc, error);
      return FALSE;
    }
  reader->name = g_strdup (STEAD_FOLDER_TABLES "/" STEAD_FOLDER_LAST ".csv");
  done = stead_folder_read_rows (path, reader->name, take_last_id, reader, error);
  g_clear_pointer (&reader->stmt, sqlite3_finalize);
  g_clear_pointer (&reader->name, g_free);
  return done &&
         stead_connection_exec (reader->db,
                                "INSERT INTO sqlite_sequence (name, seq) SELECT name, seq FROM temp.had h"
                                " WHERE h.seq > 0 AND NOT EXISTS (SELECT 1 FROM sqlite_sequence s WHERE s.name = h.name);"
                                "DROP TABLE temp.had", error);
}

/* --- what must hold ------------------------------------------------------------------------ */

static gboolean
check_pointers (sqlite3  *db,
                GError  **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, "PRAGMA foreign_key_check", -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (stmt);
  if (rc == SQLITE_ROW)
    return stead_repo_refuse (error, _("A row of “tables/%s.csv” (id %d) names a row of “tables/%s.csv” that is not "
                                       "there. Nothing was taken in."),
                              (const char *) sqlite3_column_text (stmt, 0), sqlite3_column_int (stmt, 1),
                              (const char *) sqlite3_column_text (stmt, 2));
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (db, rc, error);
  return FALSE;
}

static gboolean
check_rules (sqlite3       *db,
             GCancellable  *cancellable,
             GError       **error)
{
  g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func (g_free);
  gint64 farms;

  if (!stead_connection_number (db, "SELECT count (*) FROM farm", &farms, error) ||
      !stead_store_verify_connection (db, cancellable, found, error))
    return FALSE;
  if (farms != 1)
    return stead_repo_refuse (error, _("tables/farm.csv must have one row. Nothing was taken in."));
  if (found->len > 0)
    return stead_repo_refuse (error, _("The tables do not fit together: %s Nothing was taken in."),
                              (const char *) found->pdata[0]);
  return TRUE;
}

/* --- the whole -------------------------------------------------------------------------------- */

static gboolean
read_all (sqlite3       *db,
          const char    *folder,
          GCancellable  *cancellable,
          GError       **error)
{
  g_autoptr(GPtrArray) tables = stead_folder_tables (db, error);
  Reader reader = { .db = db, .folder = folder, .cancellable = cancellable };
  gboolean done = tables != NULL;

  reader.order = g_array_new (FALSE, FALSE, sizeof (int));
  for (guint i = 0; done && i < tables->len; i++)
    done = read_table (&reader, tables->pdata[i], error);
  done = done && read_last_ids (&reader, error);
  g_array_unref (reader.order);
  return done;
}

static gboolean
fill (const char    *part,
      const char    *folder,
      const Mark    *mark,
      GCancellable  *cancellable,
      GError       **error)
{
  g_autofree char *id = g_strdup_printf ("PRAGMA application_id = %d", STEAD_SCHEMA_APPLICATION_ID);
  g_autoptr(sqlite3) db = stead_connection_create (part, error);

  if (db == NULL)
    return FALSE;
  sqlite3_db_config (db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
  return stead_connection_exec (db, "PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF; BEGIN EXCLUSIVE", error) &&
         stead_connection_exec (db, id, error) &&
         stead_connection_lay_out (db, &stead_schema, 0, (int) mark->schema, error) &&
         read_all (db, folder, cancellable, error) &&
         stead_connection_lay_out (db, &stead_schema, (int) mark->schema, STEAD_SCHEMA_VERSION, error) &&
         check_pointers (db, error) &&
         check_rules (db, cancellable, error) &&
         stead_connection_exec (db, "COMMIT", error);
}

gboolean
stead_folder_read (const char    *folder,
                   const char    *path,
                   GCancellable  *cancellable,
                   GError       **error)
{
  g_autofree char *whole = NULL;
  g_autofree char *part = NULL;
  Mark mark = { 0 };
  gboolean done;

  g_return_val_if_fail (folder != NULL && path != NULL, FALSE);
  whole = g_canonicalize_filename (path, NULL);
  if (!check_mark (folder, &mark, error) || !stead_connection_claim (whole, error))
    return FALSE;
  part = g_strdup_printf ("%s.%08x.part", whole, g_random_int ());
  done = stead_connection_claim (part, error) && fill (part, folder, &mark, cancellable, error);
  if (!done)
    g_unlink (part);
  done = done && stead_copy_settle (part, cancellable, error) && stead_copy_place (part, whole, error);
  if (!done)
    g_unlink (whole);   /* the empty file that kept the name */
  return done;
}

/* stead-folder-write.c - the tables and the pictures of a farm, written into a folder.
 *
 * All is read in one transaction, so that it fits together, and goes into a folder
 * with a name of its own that is renamed once it is whole.  The files are left to the
 * system to put on the disk: a hundred waits would take seconds, the farm itself is
 * still there, and a folder that a power cut spoiled is refused when it is taken in.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>

#include "core/stead-jpeg.h"
#include "store/stead-copy.h"
#include "store/stead-folder-private.h"
#include "store/stead-message.h"
#include "store/stead-store-internal.h"

#define NEW_LINE "\r\n"
#define BUFFER_BYTES 65536

typedef struct
{
  sqlite3                   *db;
  const char                *folder;
  const SteadFolderOptions  *options;
  GCancellable              *cancellable;
  GString                   *text;       /* lines on their way to the file */
  FILE                      *file;
} Writer;

static const SteadFolderOptions everything = { .names = TRUE, .notes = TRUE, .pictures = TRUE };

static gboolean
refuse_errno (int      number,
              GError **error)
{
  if (number == ENOSPC || number == EDQUOT)
    g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_FULL,
                         _("The disk is full. Free some space, or choose a folder on another disk."));
  else
    g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO,
                 _("The folder could not be written (%s). Choose another place."), g_strerror (number));
  return FALSE;
}

static gboolean
write_bytes (const char    *folder,
             const char    *name,
             gconstpointer  data,
             gsize          length,
             GError       **error)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr(GError) own = NULL;

  if (g_file_set_contents_full (path, data, (gssize) length, G_FILE_SET_CONTENTS_NONE, 0600, &own))
    return TRUE;
  return refuse_errno (errno, error);
}

/* --- one table ------------------------------------------------------------------ */

static gboolean
flush (Writer  *writer,
       gsize    keep,
       GError **error)
{
  if (writer->text->len <= keep)
    return TRUE;
  if (fwrite (writer->text->str, 1, writer->text->len, writer->file) != writer->text->len)
    return refuse_errno (errno, error);
  g_string_truncate (writer->text, 0);
  return TRUE;
}

static gboolean
write_picture (Writer        *writer,
               sqlite3_stmt  *stmt,
               int            at,
               GError       **error)
{
  g_autofree char *name = stead_folder_picture (sqlite3_column_int64 (stmt, 0));
  g_autoptr(GBytes) whole = NULL;
  g_autoptr(GBytes) bare = NULL;
  gsize length;
  const void *data;

  if (!writer->options->pictures)
    return TRUE;
  whole = g_bytes_new (sqlite3_column_blob (stmt, at), (gsize) sqlite3_column_bytes (stmt, at));
  bare = stead_jpeg_strip (whole);
  data = g_bytes_get_data (bare, &length);
  stead_folder_add_text (writer->text, name, strlen (name));
  return write_bytes (writer->folder, name, data, length, error);
}

/* "Student 3" stands for a name, as "person 3" is what the other tables point to. */
static void
add_role (GString      *text,
          sqlite3_stmt *stmt)
{
  gint64 id = sqlite3_column_int64 (stmt, 0);
  const char *role = (const char *) sqlite3_column_text (stmt, 2);
  g_autofree char *name = NULL;

  if (g_strcmp0 (role, "advisor") == 0)
    name = g_strdup_printf (_("Advisor %d"), (int) id);
  else if (g_strcmp0 (role, "helper") == 0)
    name = g_strdup_printf (_("Helper %d"), (int) id);
  else
    name = g_strdup_printf (_("Student %d"), (int) id);
  stead_folder_add_text (text, name, strlen (name));
}

static gboolean
left_out (const Writer            *writer,
          const SteadFolderColumn *column)
{
  return (column->kind == STEAD_FOLDER_NAME && !writer->options->names) ||
         (column->kind == STEAD_FOLDER_NOTE && !writer->options->notes);
}

static gboolean
add_cell (Writer                   *writer,
          const SteadFolderTable   *table,
          const SteadFolderColumn  *column,
          sqlite3_stmt             *stmt,
          int                       at,
          GError                  **error)
{
  if (sqlite3_column_type (stmt, at) == SQLITE_NULL)
    return TRUE;
  if (left_out (writer, column))
    {
      if (g_str_equal (table->name, "person"))
        add_role (writer->text, stmt);
      return TRUE;
    }
  switch (column->type)
    {
    case STEAD_FOLDER_PICTURE:
      return write_picture (writer, stmt, at, error);
    case STEAD_FOLDER_NUMBER:
      stead_folder_add_number (writer->text, sqlite3_column_double (stmt, at));
      return TRUE;
    case STEAD_FOLDER_TEXT:
      stead_folder_add_text (writer->text, (const char *) sqlite3_column_text (stmt, at),
                             (gsize) sqlite3_column_bytes (stmt, at));
      return TRUE;
    case STEAD_FOLDER_WHOLE:
    case STEAD_FOLDER_DAY:
    case STEAD_FOLDER_MOMENT:
    default:
      stead_folder_add_whole (writer->text, column->type, sqlite3_column_int64 (stmt, at));
      return TRUE;
    }
}

static gboolean
write_row (Writer                  *writer,
           const SteadFolderTable  *table,
           sqlite3_stmt            *stmt,
           GError                 **error)
{
  for (guint i = 0; i < table->columns->len; i++)
    {
      if (i > 0)
        g_string_append_c (writer->text, ',');
      if (!add_cell (writer, table, table->columns->pdata[i], stmt, (int) i, error))
        return FALSE;
    }
  g_string_append (writer->text, NEW_LINE);
  return flush (writer, BUFFER_BYTES, error) && !g_cancellable_set_error_if_cancelled (writer->cancellable, error);
}

static gboolean
write_rows (Writer                  *writer,
            const SteadFolderTable  *table,
            GError                 **error)
{
  g_autofree char *sql = stead_folder_select (table);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (writer->db, sql, -1, &stmt, NULL);

  if (rc != SQLITE_OK)
    {
      stead_message_set (writer->db, rc, error);
      return FALSE;
    }
  while ((rc = sqlite3_step (stmt)) == SQLITE_ROW)
    if (!write_row (writer, table, stmt, error))
      return FALSE;
  if (rc != SQLITE_DONE)
    stead_message_set (writer->db, rc, error);
  return rc == SQLITE_DONE && flush (writer, 0, error);
}

static gboolean
close_file (Writer    *writer,
            gboolean   good,
            GError   **error)
{
  FILE *file = g_steal_pointer (&writer->file);

  if (fclose (file) != 0 && good)
    return refuse_errno (errno, error);
  return good;
}

static gboolean
write_table (Writer                  *writer,
             const SteadFolderTable  *table,
             GError                 **error)
{
  g_autofree char *name = g_strconcat (table->name, ".csv", NULL);
  g_autofree char *path = g_build_filename (writer->folder, STEAD_FOLDER_TABLES, name, NULL);

  writer->file = g_fopen (path, "wb");
  if (writer->file == NULL)
    return refuse_errno (errno, error);
  g_chmod (path, 0600);
  g_string_truncate (writer->text, 0);
  for (guint i = 0; i < table->columns->len; i++)
    g_string_append_printf (writer->text, "%s%s", i > 0 ? "," : "",
                            ((const SteadFolderColumn *) table->columns->pdata[i])->name);
  g_string_append (writer->text, NEW_LINE);
  return close_file (writer, write_rows (writer, table, error), error);
}

/* --- the whole -------------------------------------------------------------------- */

static gboolean
is_chosen (const Writer *writer,
           const char   *table)
{
  return writer->options->tables == NULL || g_strv_contains (writer->options->tables, table);
}

static gboolean
is_whole (const SteadFolderOptions *options)
{
  return options->tables == NULL && options->names && options->notes && options->pictures;
}

static gboolean
write_last_ids (Writer  *writer,
                GError **error)
{
  static const char sql[] = "SELECT name, seq FROM sqlite_sequence WHERE name <> 'step' ORDER BY name";
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (writer->db, sql, -1, &stmt, NULL);

  g_string_assign (writer->text, "table,last_id" NEW_LINE);
  while (rc == SQLITE_OK && sqlite3_step (stmt) == SQLITE_ROW)
    {
      stead_folder_add_text (writer->text, (const char *) sqlite3_column_text (stmt, 0),
                             (gsize) sqlite3_column_bytes (stmt, 0));
      g_string_append_printf (writer->text, ",%" G_GINT64_FORMAT NEW_LINE, (gint64) sqlite3_column_int64 (stmt, 1));
    }
  if (rc == SQLITE_OK)
    rc = sqlite3_reset (stmt);
  if (rc != SQLITE_OK)
    {
      stead_message_set (writer->db, rc, error);
      return FALSE;
    }
  return write_bytes (writer->folder, STEAD_FOLDER_TABLES "/" STEAD_FOLDER_LAST ".csv", writer->text->str,
                      writer->text->len, error);
}

static gboolean
write_mark (Writer  *writer,
            GError **error)
{
  g_autofree char *text =
    g_strdup_printf ("what,number" NEW_LINE "\"format\",%d" NEW_LINE "\"schema\",%d" NEW_LINE "\"whole\",%d" NEW_LINE,
                     STEAD_FOLDER_FORMAT, STEAD_SCHEMA_VERSION, is_whole (writer->options));

  return write_bytes (writer->folder, STEAD_FOLDER_MARK, text, strlen (text), error);
}

static gboolean
write_besides (Writer  *writer,
               GError **error)
{
  GHashTableIter iter;
  gpointer name, bytes;

  if (writer->options->besides == NULL)
    return TRUE;
  g_hash_table_iter_init (&iter, writer->options->besides);
  while (g_hash_table_iter_next (&iter, &name, &bytes))
    {
      gsize length;
      gconstpointer data = g_bytes_get_data (bytes, &length);

      if (!write_bytes (writer->folder, name, data, length, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_all (Writer  *writer,
           GError **error)
{
  g_autoptr(GPtrArray) tables = stead_folder_tables (writer->db, error);

  if (tables == NULL)
    return FALSE;
  for (guint i = 0; i < tables->len; i++)
    {
      const SteadFolderTable *table = tables->pdata[i];

      if (is_chosen (writer, table->name) && !write_table (writer, table, error))
        return FALSE;
    }
  return (!is_whole (writer->options) || write_last_ids (writer, error)) &&
         write_besides (writer, error) && write_mark (writer, error);
}

static gboolean
make_folders (const Writer  *writer,
              GError       **error)
{
  g_autofree char *tables = g_build_filename (writer->folder, STEAD_FOLDER_TABLES, NULL);
  g_autofree char *pictures = g_build_filename (writer->folder, STEAD_FOLDER_PICTURES, NULL);

  if (g_mkdir (writer->folder, 0700) != 0 || g_mkdir (tables, 0700) != 0 ||
      (writer->options->pictures && is_chosen (writer, "picture") && g_mkdir (pictures, 0700) != 0))
    return refuse_errno (errno, error);
  return TRUE;
}

/* Only what was made here just now. */
static void
remove_tree (const char *path)
{
  g_autoptr(GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);

      if (g_file_test (inside, G_FILE_TEST_IS_DIR) && !g_file_test (inside, G_FILE_TEST_IS_SYMLINK))
        remove_tree (inside);
      else
        g_unlink (inside);
    }
  g_rmdir (path);
}

static gboolean
write_snapshot (Writer  *writer,
                GError **error)
{
  gboolean own = sqlite3_get_autocommit (writer->db) != 0;
  gboolean done;

  if (own && !stead_connection_exec (writer->db, "BEGIN", error))
    return FALSE;
  done = write_all (writer, error);
  if (own)
    sqlite3_exec (writer->db, "ROLLBACK", NULL, NULL, NULL);   /* nothing was changed */
  return done;
}

gboolean
stead_folder_write (SteadStore                *store,
                    const char                *path,
                    const SteadFolderOptions  *options,
                    GCancellable              *cancellable,
                    GError                   **error)
{
  g_autofree char *whole = NULL;
  g_autofree char *part = NULL;
  Writer writer = { .options = options != NULL ? options : &everything, .cancellable = cancellable };
  gboolean done;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (path != NULL && *path != '\0', FALSE);
  whole = g_canonicalize_filename (path, NULL);
  if (g_file_test (whole, G_FILE_TEST_EXISTS) || g_file_test (whole, G_FILE_TEST_IS_SYMLINK))
    return stead_repo_refuse (error, _("There is already something of this name. Choose another name."));
  part = g_strdup_printf ("%s.%08x.part", whole, g_random_int ());
  writer.db = store->db;
  writer.folder = part;
  writer.text = g_string_sized_new (BUFFER_BYTES * 2);
  done = make_folders (&writer, error) && write_snapshot (&writer, error);
  if (done && g_rename (part, whole) != 0)
    done = refuse_errno (errno, error);
  if (done)
    stead_copy_sync_folder (whole);
  else
    remove_tree (part);
  g_string_free (writer.text, TRUE);
  return done;
}

/* stead-connection-kind.c - whether a file is a farm, and its schema ours.
 *
 * Invariants:
 *  1. The header is read through the connection's own file handle: opening and
 *     closing the file ourselves would drop the locks of every other connection
 *     of this process on it.
 *  2. A schema counts as ours only if each line of it is as this program writes it.
 */
#include "config.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "store/stead-connection-private.h"
#include "store/stead-message.h"

#define HEADER_BYTES 100

/* --- what the file says that it is ------------------------------------------ */

static gboolean
refuse_foreign (GError **error)
{
  return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM,
                               _("This file looks like a farm, but this program did not make it as it is. "
                                 "Open one of its dated copies."));
}

gboolean
stead_connection_check_path (const char  *path,
                             GError     **error)
{
  GStatBuf about;
  int trouble = g_stat (path, &about) == 0 ? 0 : errno;

  if (trouble == ENOENT || trouble == ENOTDIR)
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_FOUND,
                                 _("There is no such file. It may have been moved, renamed or deleted."));
  if (trouble != 0)
    return stead_message_refuse (error, STEAD_STORE_ERROR_IO,
                                 _("The file cannot be looked at. Check that the disk is there and that you may use the "
                                   "folder."));
  if (S_ISDIR (about.st_mode))
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM, _("This is a folder. Choose a farm file in it."));
  if (!S_ISREG (about.st_mode))
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM, _("This is not a file that can be opened."));
  return TRUE;
}

static guint32
big_endian (const guint8 *at)
{
  return (guint32) at[0] << 24 | (guint32) at[1] << 16 | (guint32) at[2] << 8 | (guint32) at[3];
}

static gboolean
check_ids (guint32             application_id,
           gint64              version,
           const SteadSchema  *schema,
           GError            **error)
{
  if (application_id != STEAD_SCHEMA_APPLICATION_ID || version < 1)
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM,
                                 _("This file was made by another program. It is not a farm."));
  if (version > schema->version)
    return stead_message_refuse (error, STEAD_STORE_ERROR_NEWER,
                                 _("A newer version of this program made this farm. Bring the program up to date to open it."));
  return TRUE;
}

/* The first hundred bytes, as sqlite.org/fileformat2.html lays them out. */
gboolean
stead_connection_sniff (sqlite3            *db,
                        const SteadSchema  *schema,
                        GError            **error)
{
  guint8 header[HEADER_BYTES] = { 0 };
  sqlite3_file *file = NULL;
  sqlite3_int64 size = 0;
  int rc;

  rc = sqlite3_file_control (db, "main", SQLITE_FCNTL_FILE_POINTER, &file);
  if (rc == SQLITE_OK)
    rc = file->pMethods->xFileSize (file, &size);
  if (rc == SQLITE_OK && size == 0)
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM, _("This file is empty. It is not a farm."));
  if (rc == SQLITE_OK)
    rc = file->pMethods->xRead (file, header, sizeof header, 0);
  if (rc != SQLITE_OK && rc != SQLITE_IOERR_SHORT_READ)
    {
      stead_message_set (NULL, rc, error);
      return FALSE;
    }
  if (memcmp (header, "SQLite format 3", 16) != 0)
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM,
                                 _("This file is not a farm. It was made for something else."));
  if (size < 512)
    return stead_message_refuse (error, STEAD_STORE_ERROR_DAMAGED,
                                 _("Most of this farm file is missing. Nothing was changed in it. Open one of its dated copies."));
  if (!check_ids (big_endian (header + 68), (gint32) big_endian (header + 60), schema, error))
    return FALSE;
  if (header[18] != 1 || header[19] != 1)   /* we keep a rollback journal, never a write-ahead log */
    return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_A_FARM,
                                 _("Another program changed how this farm is kept. Open one of its dated copies."));
  return TRUE;
}

/* What is said about a schema that could not be read: too much of it is not ours. */
gboolean
stead_connection_tell_schema (sqlite3  *db,
                              int       rc,
                              GError  **error)
{
  if (rc == SQLITE_INTERRUPT || rc == SQLITE_TOOBIG)
    return refuse_foreign (error);
  stead_message_set (db, rc, error);
  return FALSE;
}

/* --- the schema ------------------------------------------------------------- */

gboolean
stead_connection_lay_out (sqlite3            *db,
                          const SteadSchema  *schema,
                          int                 from,
                          int                 to,
                          GError            **error)
{
  for (int version = from; version < to; version++)
    {
      g_autofree char *mark = g_strdup_printf ("PRAGMA user_version = %d", version + 1);

      if (!stead_connection_exec (db, schema->steps[version], error) ||
          !stead_connection_exec (db, mark, error))
        return FALSE;
    }
  return TRUE;
}

/* Everything that the schema says, a line each, in an order of its own. */
static char *
describe (sqlite3  *db,
          GError  **error)
{
  static const char sql[] = "SELECT type, name, tbl_name, coalesce (sql, '') FROM sqlite_schema"
                           " ORDER BY type, name, tbl_name, sql";
  g_autoptr(GString) text = g_string_new (NULL);
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  while (rc == SQLITE_OK || rc == SQLITE_ROW)
    {
      rc = sqlite3_step (stmt);
      for (int i = 0; rc == SQLITE_ROW && i < 4; i++)
        {
          const char *part = (const char *) sqlite3_column_text (stmt, i);

          if (part == NULL)
            rc = SQLITE_NOMEM;
          else
            g_string_append_printf (text, "%s\n", part);
        }
    }
  if (rc == SQLITE_DONE)
    return g_string_free (g_steal_pointer (&text), FALSE);
  stead_connection_tell_schema (db, rc, error);
  return NULL;
}

static char *
describe_expected (const SteadSchema  *schema,
                   int                 version,
                   GError            **error)
{
  g_autoptr(sqlite3) db = stead_connection_create (NULL, error);

  if (db == NULL || !stead_connection_lay_out (db, schema, 0, version, error))
    return NULL;
  return describe (db, error);
}

/* What our own versions look like is worked out once. */
static char *
recall_expected (const SteadSchema  *schema,
                 int                 version,
                 GError            **error)
{
  static char *known[STEAD_SCHEMA_VERSION + 1];
  char *expected;

  if (schema != &stead_schema)
    return describe_expected (schema, version, error);
  expected = g_atomic_pointer_get (&known[version]);
  if (expected != NULL)
    return g_strdup (expected);
  expected = describe_expected (schema, version, error);
  if (expected == NULL)
    return NULL;
  if (!g_atomic_pointer_compare_and_exchange (&known[version], NULL, expected))
    return expected;   /* another thread was quicker */
  return g_strdup (expected);
}

static gboolean
is_known (const SteadSchema *schema,
          int                version,
          const char        *found)
{
  g_autofree char *sum = NULL;

  if (schema->sums == NULL)
    return FALSE;
  sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, found, -1);
  return g_str_equal (sum, schema->sums[version - 1]);
}

static gboolean
is_ours (sqlite3            *db,
         const SteadSchema  *schema,
         int                *out_version,
         GError            **error)
{
  g_autofree char *found = NULL;
  g_autofree char *expected = NULL;
  gint64 id, version;

  if (!stead_connection_number (db, "PRAGMA application_id", &id, error) ||
      !stead_connection_number (db, "PRAGMA user_version", &version, error) ||
      !check_ids ((guint32) id, version, schema, error))
    return FALSE;
  found = describe (db, error);
  if (found == NULL)
    return FALSE;
  *out_version = (int) version;
  if (is_known (schema, (int) version, found))
    return TRUE;
  /* Another SQLite may have put the same in other words. */
  expected = recall_expected (schema, (int) version, error);
  if (expected == NULL)
    return FALSE;
  return g_str_equal (found, expected) || refuse_foreign (error);
}

gboolean
stead_connection_recognize (sqlite3            *db,
                            const SteadSchema  *schema,
                            int                *out_version,
                            GError            **error)
{
  SteadPatience patience = { 0 };
  gboolean done;

  stead_connection_bound_schema (db, &patience);
  done = is_ours (db, schema, out_version, error);
  stead_connection_bound (db, NULL);
  if (done)
    stead_connection_trust (db);
  return done;
}

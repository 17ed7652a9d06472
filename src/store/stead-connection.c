/* stead-connection.c - one SQLite connection, made safe against a stranger's file.
 *
 * Invariants:
 *  1. Nothing that the file brings along runs before the schema is known to be ours: no
 *     trigger, view, CHECK, DEFAULT, generated column or index on an expression.
 *  2. A schema that is no farm's, by its size alone, is not read to its end.
 *  3. A file that is refused is not written to.
 */
#include "config.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "store/stead-connection-private.h"
#include "store/stead-message.h"

#define BUSY_WAIT_MS 3000
#define OPS_BETWEEN_LOOKS 20000

/* A recorded step is one value: 100,000 imported rows take some 10 MB. */
#define LONGEST_VALUE (256 << 20)

/* A farm's schema has some 400 entries, of which the longest has 2 kB: reading it takes
 * 10,000 steps. */
#define LONGEST_ENTRY (1 << 18)
#define OPS_OF_SCHEMA 1000
#define MOST_LOOKS_AT_SCHEMA 100

/* The check of all tables is one program, of 11,000 to 19,000 steps from SQLite to SQLite;
 * the room for it doubles as it grows, and more than this is told as a lack of memory. */
#define MOST_STEPS_OF_PROGRAM 250000

static const struct
{
  int id, value;
} limits[] = {
  { SQLITE_LIMIT_LENGTH, LONGEST_ENTRY },   /* until the schema is known to be ours */
  { SQLITE_LIMIT_SQL_LENGTH, 100000 },
  { SQLITE_LIMIT_COLUMN, 100 },
  { SQLITE_LIMIT_EXPR_DEPTH, 50 },
  { SQLITE_LIMIT_ATTACHED, 1 },
  { SQLITE_LIMIT_TRIGGER_DEPTH, 10 },
  { SQLITE_LIMIT_VDBE_OP, MOST_STEPS_OF_PROGRAM },
  { SQLITE_LIMIT_COMPOUND_SELECT, 10 },
};

static const struct
{
  int id, on;
} guards[] = {
  { SQLITE_DBCONFIG_DEFENSIVE, 1 },
  { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 },
  { SQLITE_DBCONFIG_ENABLE_VIEW, 0 },
  { SQLITE_DBCONFIG_DQS_DML, 0 },
  { SQLITE_DBCONFIG_DQS_DDL, 0 },
};

gboolean
stead_connection_exec (sqlite3     *db,
                       const char  *sql,
                       GError     **error)
{
  int rc = sqlite3_exec (db, sql, NULL, NULL, NULL);

  if (rc == SQLITE_OK)
    return TRUE;
  stead_message_set (db, rc, error);
  return FALSE;
}

gboolean
stead_connection_number (sqlite3     *db,
                         const char  *sql,
                         gint64      *out,
                         GError     **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (stmt);
  if (rc == SQLITE_ROW)
    {
      *out = sqlite3_column_int64 (stmt, 0);
      return TRUE;
    }
  stead_message_set (db, rc == SQLITE_DONE ? SQLITE_CORRUPT : rc, error);
  return FALSE;
}

const char *
stead_connection_finding (sqlite3_stmt *stmt)
{
  static const char heading[] = "*** in database main ***\n";
  const char *found = (const char *) sqlite3_column_text (stmt, 0);

  if (found == NULL)
    return "?";
  return g_str_has_prefix (found, heading) ? found + strlen (heading) : found;
}

int
stead_connection_finding_code (sqlite3_stmt *stmt)
{
  static const char words[] = "error code=";
  const char *at;
  int rc;

  if (sqlite3_column_text (stmt, 0) == NULL)
    return SQLITE_NOMEM;
  at = strstr (stead_connection_finding (stmt), words);
  rc = at != NULL ? (int) g_ascii_strtoll (at + strlen (words), NULL, 10) : SQLITE_OK;
  return (rc & 0xff) == SQLITE_CORRUPT || (rc & 0xff) == SQLITE_NOTADB ? SQLITE_OK : rc;
}

gboolean
stead_connection_check (sqlite3     *db,
                        const char  *pragma,
                        GError     **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, pragma, -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (stmt);
  if (rc == SQLITE_ROW && g_str_equal (stead_connection_finding (stmt), "ok"))
    return TRUE;
  if (rc == SQLITE_ROW)
    rc = stead_connection_finding_code (stmt);
  if (rc != SQLITE_OK)
    stead_message_set (db, rc == SQLITE_DONE ? SQLITE_CORRUPT : rc, error);
  else
    g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED,
                 _("The farm file is damaged (%s). Nothing was changed in it. Open one of its dated copies."),
                 stead_connection_finding (stmt));
  return FALSE;
}

gboolean
stead_connection_may_write (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  return g_access (path, W_OK) == 0 && g_access (folder, W_OK | X_OK) == 0;
}

static int
look_cb (gpointer data)
{
  return g_cancellable_is_cancelled (data);
}

void
stead_connection_watch (sqlite3      *db,
                        GCancellable *cancellable)
{
  if (cancellable != NULL)
    sqlite3_progress_handler (db, OPS_BETWEEN_LOOKS, look_cb, cancellable);
  else
    sqlite3_progress_handler (db, 0, NULL, NULL);
}

static int
patience_cb (gpointer data)
{
  SteadPatience *patience = data;

  return g_cancellable_is_cancelled (patience->cancellable) || --patience->looks_left < 0;
}

void
stead_connection_bound (sqlite3       *db,
                        SteadPatience *patience)
{
  if (patience != NULL)
    sqlite3_progress_handler (db, OPS_BETWEEN_LOOKS, patience_cb, patience);
  else
    sqlite3_progress_handler (db, 0, NULL, NULL);
}

void
stead_connection_bound_schema (sqlite3       *db,
                               SteadPatience *patience)
{
  patience->looks_left = MOST_LOOKS_AT_SCHEMA;
  sqlite3_progress_handler (db, OPS_OF_SCHEMA, patience_cb, patience);
}

gboolean
stead_connection_ran_out (const SteadPatience *patience)
{
  return patience->looks_left < 0;
}

/* --- opening ---------------------------------------------------------------- */

/* The first of the pragmas to need the schema reads it. */
static gboolean
harden (sqlite3  *db,
        GError  **error)
{
  SteadPatience patience = { 0 };
  int rc;

  for (gsize i = 0; i < G_N_ELEMENTS (guards); i++)
    sqlite3_db_config (db, guards[i].id, guards[i].on, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    sqlite3_limit (db, limits[i].id, limits[i].value);
  sqlite3_busy_timeout (db, BUSY_WAIT_MS);
  stead_connection_bound_schema (db, &patience);
  rc = sqlite3_exec (db,
                     "PRAGMA mmap_size = 0;"
                     "PRAGMA temp_store = MEMORY;"
                     "PRAGMA cache_size = -32000;"
                     "PRAGMA cell_size_check = ON;"
                     "PRAGMA foreign_keys = ON;"
                     "PRAGMA journal_mode = DELETE;"
                     "PRAGMA synchronous = EXTRA;"
                     "PRAGMA secure_delete = ON;",
                     NULL, NULL, NULL);
  stead_connection_bound (db, NULL);
  return rc == SQLITE_OK || stead_connection_tell_schema (db, rc, error);
}

void
stead_connection_trust (sqlite3 *db)
{
  sqlite3_limit (db, SQLITE_LIMIT_LENGTH, LONGEST_VALUE);
}

static sqlite3 *
open_file (const char         *path,
           gboolean            writable,
           const SteadSchema  *schema,
           GError            **error)
{
  g_autofree char *whole = g_canonicalize_filename (path, NULL);   /* never a "file:" or ":memory:" */
  g_autoptr(sqlite3) db = NULL;
  int rc;

  if (!stead_connection_check_path (whole, error))
    return NULL;
  rc = sqlite3_open_v2 (whole, &db,
                        (writable ? SQLITE_OPEN_READWRITE : SQLITE_OPEN_READONLY) | SQLITE_OPEN_EXRESCODE, NULL);
  if (rc != SQLITE_OK)
    {
      stead_message_set (db, rc, error);
      return NULL;
    }
  if ((schema != NULL && !stead_connection_sniff (db, schema, error)) || !harden (db, error))
    return NULL;
  return g_steal_pointer (&db);
}

sqlite3 *
stead_connection_open (const char         *path,
                       gboolean            writable,
                       const SteadSchema  *schema,
                       GError            **error)
{
  g_return_val_if_fail (schema != NULL, NULL);
  return open_file (path, writable, schema, error);
}

sqlite3 *
stead_connection_open_any (const char  *path,
                           gboolean     writable,
                           GError     **error)
{
  return open_file (path, writable, NULL, error);
}

sqlite3 *
stead_connection_open_bytes (gconstpointer       bytes,
                             gsize               size,
                             const SteadSchema  *schema,
                             GError            **error)
{
  g_autoptr(sqlite3) db = NULL;
  guint8 *copy = sqlite3_malloc64 (size + 1);
  int rc = sqlite3_open_v2 (":memory:", &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE, NULL);

  g_return_val_if_fail (copy != NULL && rc == SQLITE_OK, NULL);
  if (size > 0)
    memcpy (copy, bytes, size);
  rc = sqlite3_deserialize (db, "main", copy, (sqlite3_int64) size, (sqlite3_int64) size,
                            SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_RESIZEABLE);
  if (rc != SQLITE_OK)
    stead_message_set (db, rc, error);
  if (rc != SQLITE_OK || !stead_connection_sniff (db, schema, error) || !harden (db, error))
    return NULL;
  return g_steal_pointer (&db);
}

gboolean
stead_connection_claim (const char  *path,
                        GError     **error)
{
  int fd = g_open (path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);

  if (fd >= 0)
    return g_close (fd, error);
  switch (errno)
    {
    case EEXIST:
      return stead_message_refuse (error, STEAD_STORE_ERROR_INVALID,
                                   _("There is already a file of this name. Choose another name."));
    case ENOENT:
    case ENOTDIR:
      return stead_message_refuse (error, STEAD_STORE_ERROR_NOT_FOUND,
                                   _("The folder for this file is not there. Choose another folder."));
    case ENOSPC:
    case EDQUOT:
      return stead_message_refuse (error, STEAD_STORE_ERROR_FULL,
                                   _("The disk is full. Free some space, or choose a folder on another disk."));
    case EACCES:
    case EPERM:
    case EROFS:
      return stead_message_refuse (error, STEAD_STORE_ERROR_READ_ONLY,
                                   _("This folder cannot be written to. Choose another folder."));
    default:
      g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_IO,
                   _("The file could not be made here (%s). Choose another folder."), g_strerror (errno));
      return FALSE;
    }
}

sqlite3 *
stead_connection_create (const char  *path,
                         GError     **error)
{
  g_autofree char *whole = path != NULL ? g_canonicalize_filename (path, NULL) : g_strdup (":memory:");
  g_autoptr(sqlite3) db = NULL;
  int rc = sqlite3_open_v2 (whole, &db, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_EXRESCODE, NULL);

  if (rc != SQLITE_OK)
    {
      stead_message_set (db, rc, error);
      return NULL;
    }
  if (!harden (db, error))
    return NULL;
  stead_connection_trust (db);
  return g_steal_pointer (&db);
}

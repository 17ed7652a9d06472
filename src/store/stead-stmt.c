/* stead-stmt.c - prepared statements: kept, run, bound and read.
 *
 * Our own "nothing" (STEAD_DAY_NONE, NAN, id 0, no text) is NULL in the file
 * and comes back as such, in one place.
 */
#include "config.h"

#include <math.h>

#include "store/stead-message.h"
#include "store/stead-store-internal.h"

void
stead_stmt_release (SteadStmt *stmt)
{
  sqlite3_reset (stmt);
  sqlite3_clear_bindings (stmt);
}

SteadStmt *
stead_store_prepare (SteadStore  *self,
                     const char  *sql,
                     GError     **error)
{
  SteadStmt *stmt;
  int rc;

  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  stmt = g_hash_table_lookup (self->stmts, sql);
  g_return_val_if_fail (stmt == NULL || !sqlite3_stmt_busy (stmt), NULL);
  if (stmt != NULL)
    return stmt;
  rc = sqlite3_prepare_v3 (self->db, sql, -1, SQLITE_PREPARE_PERSISTENT, &stmt, NULL);
  if (rc != SQLITE_OK)
    {
      stead_store_set_error (self, rc, error);
      return NULL;
    }
  g_hash_table_insert (self->stmts, (gpointer) sql, stmt);
  return stmt;
}

int
stead_store_step (SteadStore  *self,
                  SteadStmt   *stmt,
                  GError     **error)
{
  int rc = sqlite3_step (stmt);

  if (rc == SQLITE_ROW)
    return 1;
  if (rc == SQLITE_DONE)
    return 0;
  stead_store_set_error (self, rc, error);
  return -1;
}

gboolean
stead_store_run (SteadStore  *self,
                 SteadStmt   *stmt,
                 GError     **error)
{
  int got = stead_store_step (self, stmt, error);

  sqlite3_reset (stmt);
  g_return_val_if_fail (got != 1, FALSE);   /* a statement with rows is stepped, not run */
  return got == 0;
}

void
stead_store_set_error (SteadStore  *self,
                       int          rc,
                       GError     **error)
{
  g_return_if_fail (STEAD_IS_STORE (self));
  if ((rc & 0xff) == SQLITE_CORRUPT || (rc & 0xff) == SQLITE_NOTADB)
    self->damaged = TRUE;
  stead_message_set (self->db, rc, error);
}

sqlite3 *
stead_store_get_db (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), NULL);
  return self->db;
}

gint64
stead_store_last_id (SteadStore *self)
{
  g_return_val_if_fail (STEAD_IS_STORE (self), 0);
  return sqlite3_last_insert_rowid (self->db);
}

void
stead_stmt_bind_day (SteadStmt *stmt,
                     int        at,
                     SteadDay   day)
{
  if (day == STEAD_DAY_NONE)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int (stmt, at, day);
}

void
stead_stmt_bind_real (SteadStmt *stmt,
                      int        at,
                      double     value)
{
  if (isnan (value))
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_double (stmt, at, value);
}

void
stead_stmt_bind_id (SteadStmt *stmt,
                    int        at,
                    gint64     id)
{
  if (id == 0)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int64 (stmt, at, id);
}

void
stead_stmt_bind_text (SteadStmt  *stmt,
                      int         at,
                      const char *text)
{
  stead_stmt_bind_exactly (stmt, at, text != NULL && *text != '\0' ? text : NULL);
}

void
stead_stmt_bind_exactly (SteadStmt  *stmt,
                         int         at,
                         const char *text)
{
  if (text == NULL)
    sqlite3_bind_null (stmt, at);
  else if (sqlite3_bind_text (stmt, at, text, -1, SQLITE_TRANSIENT) != SQLITE_OK)
    sqlite3_bind_zeroblob (stmt, at, 1);   /* no memory, or too long: a STRICT table refuses this */
}

SteadDay
stead_stmt_day (SteadStmt *stmt,
                int        at)
{
  if (sqlite3_column_type (stmt, at) == SQLITE_NULL)
    return STEAD_DAY_NONE;
  return sqlite3_column_int (stmt, at);
}

double
stead_stmt_real (SteadStmt *stmt,
                 int        at)
{
  if (sqlite3_column_type (stmt, at) == SQLITE_NULL)
    return NAN;
  return sqlite3_column_double (stmt, at);
}

char *
stead_stmt_text (SteadStmt *stmt,
                 int        at)
{
  const char *text = (const char *) sqlite3_column_text (stmt, at);

  if (text == NULL && sqlite3_column_type (stmt, at) != SQLITE_NULL)
    g_error ("out of memory");   /* as GLib does: text of a fact must not become nothing */
  /* A stranger's file may hold other bytes.  Whoever shows them relies on letters. */
  return text == NULL || g_utf8_validate (text, -1, NULL) ? g_strdup (text) : g_utf8_make_valid (text, -1);
}

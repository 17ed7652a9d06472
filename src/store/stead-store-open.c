/* stead-store-open.c - making a farm and opening one.
 *
 * A farm is made in one transaction: after a crash there is a whole farm or an
 * empty file, which is refused as such.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "store/stead-message.h"
#include "store/stead-migrate.h"
#include "store/stead-store-internal.h"

#define LONGEST_NAME 200

/* Of one question to a file that is not checked yet. */
#define LONGEST_UNCHECKED_US (G_USEC_PER_SEC)
#define LONGEST_UNCHECKED (4 << 20)
#define OPS_UNCHECKED 500

/* --- making ----------------------------------------------------------------- */

static gboolean
check_name (const char  *farm_name,
            GError     **error)
{
  glong length = g_utf8_validate (farm_name, -1, NULL) ? g_utf8_strlen (farm_name, -1) : 0;

  if (length >= 1 && length <= LONGEST_NAME)
    return TRUE;
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID,
                       _("Give the farm a name of 1 to 200 letters."));
  return FALSE;
}

gboolean
stead_store_insert_farm (sqlite3     *db,
                         const char  *farm_name,
                         GError     **error)
{
  static const char sql[] = "INSERT INTO farm (id, name, units, currency, elevation_m, school_month, school_mday,"
                            " labor_cents_hour) VALUES (1, ?1, 'us', 'USD', 0, 8, 1, 0)";
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_bind_text (stmt, 1, farm_name, -1, SQLITE_STATIC);
  if (rc == SQLITE_OK)
    rc = sqlite3_step (stmt);
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (db, rc, error);
  return FALSE;
}

static gboolean
fill_in (sqlite3            *db,
         const char         *farm_name,
         const SteadSchema  *schema,
         GError            **error)
{
  g_autofree char *mark = g_strdup_printf ("PRAGMA application_id = %d", STEAD_SCHEMA_APPLICATION_ID);

  return stead_connection_exec (db, "BEGIN EXCLUSIVE", error) &&
         stead_connection_exec (db, mark, error) &&
         stead_connection_lay_out (db, schema, 0, schema->version, error) &&
         stead_store_insert_farm (db, farm_name, error) &&
         stead_connection_exec (db, "COMMIT", error);
}

static void
leave_nothing (const char *path)
{
  g_autofree char *journal = g_strconcat (path, "-journal", NULL);

  g_unlink (path);
  g_unlink (journal);
}

SteadStore *
stead_store_create_as (const char         *path,
                       const char         *farm_name,
                       const SteadSchema  *schema,
                       GError            **error)
{
  g_autoptr(sqlite3) db = NULL;

  if (!check_name (farm_name, error) || (path != NULL && !stead_connection_claim (path, error)))
    return NULL;
  db = stead_connection_create (path, error);
  if (db != NULL && fill_in (db, farm_name, schema, error))
    return stead_store_wrap (g_steal_pointer (&db), path, schema);
  g_clear_pointer (&db, sqlite3_close);
  if (path != NULL)
    leave_nothing (path);
  return NULL;
}

SteadStore *
stead_store_create (const char  *path,
                    const char  *farm_name,
                    GError     **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_return_val_if_fail (farm_name != NULL, NULL);
  return stead_store_create_as (path, farm_name, &stead_schema, error);
}

SteadStore *
stead_store_create_memory (const char  *farm_name,
                           GError     **error)
{
  g_return_val_if_fail (farm_name != NULL, NULL);
  return stead_store_create_as (NULL, farm_name, &stead_schema, error);
}

/* --- opening ---------------------------------------------------------------- */

static gboolean
bring_up_to_date (sqlite3            *db,
                  const char         *path,
                  gboolean            writable,
                  const SteadSchema  *schema,
                  int                 version,
                  GError            **error)
{
  if (version == schema->version)
    return TRUE;
  if (writable)
    return stead_connection_check (db, "PRAGMA quick_check(1)", error) &&
           stead_migrate (db, path, schema, version, error);
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY,
                       _("An older version of this program made this farm, and it cannot be brought up to date "
                         "where it is. Copy it to a folder that you can write to, and open it there."));
  return FALSE;
}

/* --- before it is checked ----------------------------------------------------- */

/* A table of a damaged file may seem to have no end.  Whatever is read before the check
 * is through gives up then, and what is read after it too. */
static int
look_at_clock_cb (gpointer data)
{
  SteadStore *self = data;

  self->gave_up = self->gave_up || g_get_monotonic_time () - self->began_us > LONGEST_UNCHECKED_US;
  return self->gave_up;
}

static int
begin_cb (unsigned  what,
          gpointer  data,
          gpointer  stmt,
          gpointer  text)
{
  SteadStore *self = data;

  self->began_us = g_get_monotonic_time ();
  return 0;
}

static void
begin_unchecked (SteadStore *self)
{
  self->unchecked = TRUE;
  self->longest_value = sqlite3_limit (self->db, SQLITE_LIMIT_LENGTH, LONGEST_UNCHECKED);
  sqlite3_trace_v2 (self->db, SQLITE_TRACE_STMT, begin_cb, self);
  sqlite3_progress_handler (self->db, OPS_UNCHECKED, look_at_clock_cb, self);
}

void
stead_store_end_unchecked (SteadStore *self)
{
  if (!self->unchecked)
    return;
  self->unchecked = FALSE;
  sqlite3_trace_v2 (self->db, 0, NULL, NULL);
  sqlite3_progress_handler (self->db, 0, NULL, NULL);
  sqlite3_limit (self->db, SQLITE_LIMIT_LENGTH, self->longest_value);
}

SteadStore *
stead_store_open_as (const char           *path,
                     SteadStoreOpenFlags   flags,
                     const SteadSchema    *schema,
                     GError              **error)
{
  g_autoptr(SteadStore) self = NULL;
  g_autoptr(sqlite3) db = NULL;
  gboolean writable = stead_connection_may_write (path);
  gboolean defer = (flags & STEAD_STORE_OPEN_DEFER_CHECK) != 0;
  int version;

  db = stead_connection_open (path, writable, schema, error);
  if (db == NULL ||
      !stead_connection_recognize (db, schema, &version, error) ||
      (!defer && !stead_connection_check (db, "PRAGMA quick_check(1)", error)) ||
      !bring_up_to_date (db, path, writable && (flags & STEAD_STORE_OPEN_READ_ONLY) == 0, schema, version, error))
    return NULL;
  self = stead_store_wrap (g_steal_pointer (&db), path, schema);
  self->read_only = !writable || (flags & STEAD_STORE_OPEN_READ_ONLY) != 0;
  if (defer)
    begin_unchecked (self);
  if (self->read_only && !stead_connection_exec (self->db, "PRAGMA query_only = ON", error))
    return NULL;
  return g_steal_pointer (&self);
}

SteadStore *
stead_store_open (const char           *path,
                  SteadStoreOpenFlags   flags,
                  GError              **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  return stead_store_open_as (path, flags, &stead_schema, error);
}

gboolean
stead_store_check_file (const char    *path,
                        GCancellable  *cancellable,
                        GError       **error)
{
  g_autoptr(sqlite3) db = NULL;
  int version;

  g_return_val_if_fail (path != NULL, FALSE);
  db = stead_connection_open (path, stead_connection_may_write (path), &stead_schema, error);
  if (db == NULL)
    return FALSE;
  if (!stead_connection_recognize (db, &stead_schema, &version, error))
    return FALSE;
  stead_connection_watch (db, cancellable);
  return stead_connection_check (db, "PRAGMA quick_check(1)", error);
}

/* stead-migrate.c - an older farm is brought to this program's schema. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "store/stead-copy.h"
#include "store/stead-message.h"
#include "store/stead-migrate.h"

static char *
copy_before (sqlite3            *db,
             const char         *path,
             const SteadSchema  *schema,
             GError            **error)
{
  g_autofree char *words = g_strdup_printf ("before version %d", schema->version);
  g_autofree char *target = stead_copy_beside (path, words);

  return stead_copy_make (db, target, NULL, error) ? g_steal_pointer (&target) : NULL;
}

/* No row may be left that names what is gone. */
static gboolean
check_references (sqlite3  *db,
                  GError  **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  int rc = sqlite3_prepare_v2 (db, "PRAGMA foreign_key_check", -1, &stmt, NULL);

  if (rc == SQLITE_OK)
    rc = sqlite3_step (stmt);
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_message_set (NULL, rc == SQLITE_ROW ? SQLITE_CORRUPT : rc, error);
  return FALSE;
}

static gboolean
change (sqlite3            *db,
        const SteadSchema  *schema,
        int                 from,
        GError            **error)
{
  gint64 present;
  int version;

  if (!stead_connection_number (db, "PRAGMA user_version", &present, error))
    return FALSE;
  if (present == schema->version)   /* another window was quicker */
    return TRUE;
  return stead_connection_lay_out (db, schema, from, schema->version, error) &&
         stead_connection_exec (db, "DELETE FROM step", error) &&
         stead_connection_check (db, "PRAGMA quick_check(1)", error) &&
         check_references (db, error) &&
         stead_connection_recognize (db, schema, &version, error);
}

static gboolean
change_all (sqlite3            *db,
            const SteadSchema  *schema,
            int                 from,
            GError            **error)
{
  gboolean done;

  /* A table is rebuilt by dropping it; that must not take its children along. */
  if (!stead_connection_exec (db, "PRAGMA foreign_keys = OFF; BEGIN EXCLUSIVE", error))
    return FALSE;
  done = change (db, schema, from, error) && stead_connection_exec (db, "COMMIT", error);
  if (!sqlite3_get_autocommit (db))
    sqlite3_exec (db, "ROLLBACK", NULL, NULL, NULL);
  return done && stead_connection_exec (db, "PRAGMA foreign_keys = ON", error);
}

/* A disk that goes on failing may leave the mending to the next opening. */
static gboolean
is_as_before (sqlite3 *db,
              int      from)
{
  gint64 present;

  return stead_connection_number (db, "PRAGMA user_version", &present, NULL) && present == from;
}

gboolean
stead_migrate (sqlite3            *db,
               const char         *path,
               const SteadSchema  *schema,
               int                 from,
               GError            **error)
{
  g_autoptr(GError) problem = NULL;
  g_autofree char *copy = path != NULL ? copy_before (db, path, schema, &problem) : NULL;

  if ((path == NULL || copy != NULL) && change_all (db, schema, from, &problem))
    return TRUE;
  if (copy != NULL && is_as_before (db, from))
    g_unlink (copy);
  /* Translators: %s is a sentence that gives the reason. */
  g_set_error (error, STEAD_STORE_ERROR, problem->code,
               _("This farm could not be brought up to date, and is as it was. %s"), problem->message);
  return FALSE;
}

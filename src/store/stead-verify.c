/* stead-verify.c - is a farm file sound, and do its facts agree with each other?
 *
 * The structure is SQLite's to check.  What only we know is checked beside it: the rules
 * between rows (stead-verify-rules.c), what is signed (stead-verify-seals.c), and here the
 * steps that can be undone.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-changeset.h"
#include "store/stead-copy.h"
#include "store/stead-message.h"
#include "store/stead-migrate.h"
#include "store/stead-store-internal.h"
#include "store/stead-verify-private.h"

const char *
stead_verify_text (sqlite3_stmt *stmt,
                   int           at)
{
  const char *text = (const char *) sqlite3_column_text (stmt, at);

  return text != NULL ? text : "?";
}

gboolean
stead_verify_note_failure (SteadVerifyReport  *report,
                           int                 rc,
                           GError            **error)
{
  g_autoptr(GError) problem = NULL;

  stead_message_set (report->db, rc, &problem);
  if (!g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (!g_ptr_array_find_with_equal_func (report->found, problem->message, g_str_equal, NULL))
    g_ptr_array_add (report->found, g_strdup (problem->message));
  return TRUE;
}

/* --- the steps that can be undone --------------------------------------------- */

/* Each record is read as undo would read it, and no farther: nothing is applied. */
static gboolean
check_steps (SteadVerifyReport  *report,
             GError            **error)
{
  static const char sql[] = "SELECT name, changeset FROM step ORDER BY id";
  g_autoptr(sqlite3_stmt) stmt = NULL;
  guint n = 0;
  int rc = sqlite3_prepare_v2 (report->db, sql, -1, &stmt, NULL);

  while (rc == SQLITE_OK && n < STEAD_VERIFY_MOST && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      const guint8 *bytes = sqlite3_column_blob (stmt, 1);
      gsize size = (gsize) sqlite3_column_bytes (stmt, 1);
      g_autoptr(GError) problem = NULL;

      rc = SQLITE_OK;
      if (stead_changeset_check (report->db, bytes, size, &problem))
        continue;
      if (!g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID))
        {
          g_propagate_error (error, g_steal_pointer (&problem));
          return FALSE;
        }
      /* Translators: %s is a step as the menu names it: "22 eggs on March 3". */
      g_ptr_array_add (report->found, g_strdup_printf (_("The record of the step “%s” cannot be read, so the step "
                                                         "cannot be undone. The facts are not touched by that."),
                                                       stead_verify_text (stmt, 0)));
      n++;
    }
  return rc == SQLITE_OK || rc == SQLITE_DONE || stead_verify_note_failure (report, rc, error);
}

/* --- the whole -------------------------------------------------------------- */

/* A sound file is read through in a fraction of these: a row of 40 bytes takes some
 * 200 steps with its indexes.  A tree that runs into itself may seem to have no end. */
#define LOOKS_AT_LEAST 1000
#define LOOKS_PER_PAGE 5
#define LOOKS_AT_WRECK 500

static gint64
looks_for (sqlite3 *db)
{
  gint64 n_pages = 0;

  return LOOKS_AT_LEAST +
         (stead_connection_number (db, "PRAGMA page_count", &n_pages, NULL) ? n_pages * LOOKS_PER_PAGE : 0);
}

static gboolean
look_at_all (SteadVerifyReport  *report,
             SteadPatience      *patience,
             GError            **error)
{
  if (!stead_verify_structure (report, error))
    return FALSE;
  patience->looks_left = report->found->len > 0 ? LOOKS_AT_WRECK : G_MAXINT64;
  return stead_verify_rules (report, error) &&
         check_steps (report, error) &&
         stead_verify_seals (report, error);
}

/* The names in the sentences are as the file has them, which may be no letters at all. */
static void
make_readable (GPtrArray *found)
{
  for (guint i = 0; i < found->len; i++)
    if (!g_utf8_validate (found->pdata[i], -1, NULL))
      {
        g_autofree char *sentence = found->pdata[i];

        found->pdata[i] = g_utf8_make_valid (sentence, -1);
      }
}

gboolean
stead_store_verify_connection (sqlite3       *db,
                               GCancellable  *cancellable,
                               GPtrArray     *found,
                               GError       **error)
{
  SteadVerifyReport report = { db, found };
  SteadPatience patience = { cancellable, looks_for (db) };
  g_autoptr(GError) problem = NULL;
  gboolean done;

  stead_connection_bound (db, &patience);
  done = look_at_all (&report, &patience, &problem);
  make_readable (found);
  stead_connection_bound (db, NULL);
  if (done)
    return TRUE;
  if (!stead_connection_ran_out (&patience) || g_cancellable_is_cancelled (cancellable))
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  return found->len > 0 || stead_verify_note_failure (&report, SQLITE_CORRUPT, error);
}

/* An older farm is looked at as it will be: a copy in memory is brought up to date. */
static gboolean
look_at_older (sqlite3            *db,
               const SteadSchema  *schema,
               int                 version,
               GCancellable       *cancellable,
               GPtrArray          *found,
               GError            **error)
{
  g_autoptr(sqlite3) copy = stead_connection_create (NULL, error);

  return copy != NULL &&
         stead_connection_check (db, "PRAGMA quick_check(1)", error) &&
         stead_copy_pages (db, copy, cancellable, error) &&
         stead_migrate (copy, NULL, schema, version, error) &&
         stead_store_verify_connection (copy, cancellable, found, error);
}

static gboolean
look_at_file (const char         *path,
              const SteadSchema  *schema,
              GCancellable       *cancellable,
              GPtrArray          *found,
              GError            **error)
{
  g_autoptr(sqlite3) db = stead_connection_open (path, stead_connection_may_write (path), schema, error);
  int version;

  if (db == NULL || !stead_connection_recognize (db, schema, &version, error))
    return FALSE;
  if (version < schema->version)
    return look_at_older (db, schema, version, cancellable, found, error);
  return stead_store_verify_connection (db, cancellable, found, error);
}

GPtrArray *
stead_store_verify_as (const char         *path,
                       const SteadSchema  *schema,
                       GCancellable       *cancellable,
                       GError            **error)
{
  g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GError) problem = NULL;

  if (look_at_file (path, schema, cancellable, found, &problem))
    return g_steal_pointer (&found);
  if (g_error_matches (problem, STEAD_STORE_ERROR, STEAD_STORE_ERROR_DAMAGED))
    {
      g_ptr_array_add (found, g_strdup (problem->message));
      return g_steal_pointer (&found);
    }
  g_propagate_error (error, g_steal_pointer (&problem));
  return NULL;
}

GPtrArray *
stead_store_verify (const char    *path,
                    GCancellable  *cancellable,
                    GError       **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  return stead_store_verify_as (path, &stead_schema, cancellable, error);
}

/* stead-release-repo.c - what left the farm. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/stead-release-repo.h"
#include "store/stead-repo-private.h"

#define LONGEST_WHAT 400

void
stead_release_free (SteadRelease *release)
{
  if (release == NULL)
    return;
  g_free (release->what);
  g_free (release->to_whom);
  g_free (release->ground);
  g_free (release->by_name);
  g_free (release);
}

static gpointer
from_row (SteadStmt *stmt)
{
  SteadRelease *release = g_new0 (SteadRelease, 1);

  release->id = sqlite3_column_int64 (stmt, 0);
  release->day = stead_stmt_day (stmt, 1);
  release->what = stead_stmt_text (stmt, 2);
  release->to_whom = stead_stmt_text (stmt, 3);
  release->ground = stead_stmt_text (stmt, 4);
  release->by_person = sqlite3_column_int64 (stmt, 5);
  release->by_name = stead_stmt_text (stmt, 6);
  release->n_people = (guint) sqlite3_column_int (stmt, 7);
  return release;
}

GPtrArray *
stead_release_repo_list (SteadStore  *store,
                         GError     **error)
{
  static const char sql[] =
    "SELECT r.id, r.day, r.what, r.to_whom, r.ground, r.by_person, p.name,"
    " (SELECT count (*) FROM release_person rp WHERE rp.release_id = r.id)"
    " FROM release r LEFT JOIN person p ON p.id = r.by_person ORDER BY r.day DESC, r.id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, from_row, (GDestroyNotify) stead_release_free, error) : NULL;
}

static gboolean
check (const SteadRelease  *release,
       GError             **error)
{
  g_autofree char *ground = stead_repo_tidy (release->ground);
  g_autofree char *to_whom = stead_repo_tidy (release->to_whom);

  if (release->what == NULL || *release->what == '\0' || g_utf8_strlen (release->what, -1) > LONGEST_WHAT)
    return stead_repo_refuse (error, _("Say what leaves, in at most %d letters."), LONGEST_WHAT);
  if (to_whom == NULL || g_utf8_strlen (to_whom, -1) > STEAD_NAME_MAX)
    return stead_repo_refuse (error, _("Say who gets it: a name, or an office."));
  if (ground == NULL || g_utf8_strlen (ground, -1) > LONGEST_WHAT)
    return stead_repo_refuse (error, _("Say on which ground it may leave: consent, the school's own use, a request."));
  return TRUE;
}

static gboolean
add_people (SteadStore    *store,
            gint64         release_id,
            const GArray  *people,
            GError       **error)
{
  static const char sql[] = "INSERT INTO release_person (release_id, person_id) VALUES (?1, ?2)";

  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, release_id);
      sqlite3_bind_int64 (stmt, 2, g_array_index (people, gint64, i));
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_release_repo_add (SteadStore    *store,
                        SteadRelease  *release,
                        const GArray  *people,
                        GError       **error)
{
  static const char sql[] = "INSERT INTO release (day, what, to_whom, ground, by_person) VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && release != NULL && release->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check (release, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, release->day);
  stead_stmt_bind_text (stmt, 2, release->what);
  stead_repo_bind_tidy (stmt, 3, release->to_whom);
  stead_repo_bind_tidy (stmt, 4, release->ground);
  stead_stmt_bind_id (stmt, 5, release->by_person);
  ids = stead_given_ids_new (&release->id);
  return stead_given_ids_end (ids, stead_repo_save_row (store, stmt, &release->id, error) &&
                                   add_people (store, release->id, people, error));
}

GArray *
stead_release_repo_named (SteadStore  *store,
                          GError     **error)
{
  static const char sql[] = "SELECT id FROM person WHERE redacted_on IS NULL ORDER BY id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_ids (store, stmt, error) : NULL;
}

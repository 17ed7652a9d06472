/* stead-shot-repo.c - pictures with captions, and who is on them. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-shot-repo.h"
#include "store/stead-show-private.h"

#define MOST_CAPTION 1000

void
stead_shot_free (SteadShot *shot)
{
  if (shot == NULL)
    return;
  g_free (shot->caption);
  g_clear_pointer (&shot->people, g_array_unref);
  g_clear_pointer (&shot->unasked, g_ptr_array_unref);
  g_free (shot);
}

gboolean
stead_shot_may_show (const SteadShot *shot)
{
  g_return_val_if_fail (shot != NULL && shot->unasked != NULL, FALSE);
  return shot->unasked->len == 0;
}

#define SHOT_COLUMNS "id, picture_id, day, caption, person_id, batch_id, build_id, event_id"

static gpointer
shot_from_row (SteadStmt *stmt)
{
  SteadShot *shot = g_new0 (SteadShot, 1);

  shot->id = sqlite3_column_int64 (stmt, 0);
  shot->picture_id = sqlite3_column_int64 (stmt, 1);
  shot->day = stead_stmt_day (stmt, 2);
  shot->caption = stead_stmt_text (stmt, 3);
  shot->person_id = sqlite3_column_int64 (stmt, 4);
  shot->batch_id = sqlite3_column_int64 (stmt, 5);
  shot->build_id = sqlite3_column_int64 (stmt, 6);
  shot->event_id = sqlite3_column_int64 (stmt, 7);
  shot->people = g_array_new (FALSE, FALSE, sizeof (gint64));
  shot->unasked = g_ptr_array_new_with_free_func (g_free);
  return shot;
}

typedef struct
{
  gint64    person_id;
  gboolean  agreed;
  char     *name;
} Shown;

static gpointer
shown_from_row (SteadStmt *stmt)
{
  Shown *shown = g_new0 (Shown, 1);

  shown->person_id = sqlite3_column_int64 (stmt, 0);
  shown->name = stead_stmt_text (stmt, 1);
  shown->agreed = sqlite3_column_int (stmt, 2) != 0;
  return shown;
}

static void
shown_free (Shown *shown)
{
  g_free (shown->name);
  g_free (shown);
}

static gboolean
read_people (SteadStore  *store,
             SteadShot   *shot,
             GError     **error)
{
  /* Taken back today is taken back. */
  static const char sql[] =
    "SELECT p.id, p.name, EXISTS (SELECT 1 FROM consent c WHERE c.person_id = p.id AND c.what = 'picture'"
    " AND c.given_on <= ?2 AND (c.ended_on IS NULL OR c.ended_on > ?2))"
    " FROM shot_person s JOIN person p ON p.id = s.person_id WHERE s.shot_id = ?1 ORDER BY p.name, p.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(GPtrArray) rows = NULL;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, shot->id);
  stead_stmt_bind_day (stmt, 2, stead_store_get_today (store));
  rows = stead_repo_rows (store, stmt, shown_from_row, (GDestroyNotify) shown_free, error);
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      Shown *shown = rows->pdata[i];

      g_array_append_val (shot->people, shown->person_id);
      if (!shown->agreed)
        g_ptr_array_add (shot->unasked, g_steal_pointer (&shown->name));
    }
  return rows != NULL;
}

GPtrArray *
stead_shot_repo_list (SteadStore  *store,
                      gint64       person_id,
                      GError     **error)
{
  static const char all_sql[] = "SELECT " SHOT_COLUMNS " FROM shot ORDER BY day, id";
  static const char sql[] = "SELECT " SHOT_COLUMNS " FROM shot WHERE person_id = ?1 ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) shots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, person_id == 0 ? all_sql : sql, error);
  if (stmt == NULL)
    return NULL;
  if (person_id != 0)
    sqlite3_bind_int64 (stmt, 1, person_id);
  shots = stead_repo_rows (store, stmt, shot_from_row, (GDestroyNotify) stead_shot_free, error);
  for (guint i = 0; shots != NULL && i < shots->len; i++)
    if (!read_people (store, shots->pdata[i], error))
      return NULL;
  return g_steal_pointer (&shots);
}

SteadShot *
stead_shot_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = "SELECT " SHOT_COLUMNS " FROM shot WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadShot) shot = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  shot = stead_repo_row (store, stmt, shot_from_row, error);
  return shot != NULL && read_people (store, shot, error) ? g_steal_pointer (&shot) : NULL;
}

static gboolean
write_people (SteadStore       *store,
              const SteadShot  *shot,
              GError          **error)
{
  static const char clear_sql[] = "DELETE FROM shot_person WHERE shot_id = ?1";
  static const char sql[] = "INSERT OR IGNORE INTO shot_person (shot_id, person_id) VALUES (?1, ?2)";

  if (!stead_repo_run_id (store, clear_sql, shot->id, error))
    return FALSE;
  for (guint i = 0; shot->people != NULL && i < shot->people->len; i++)
    {
      gint64 person_id = g_array_index (shot->people, gint64, i);
      g_autoptr(SteadStmt) stmt = NULL;

      if (!stead_show_check_person (store, person_id, error)
          || (stmt = stead_store_prepare (store, sql, error)) == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, shot->id);
      sqlite3_bind_int64 (stmt, 2, person_id);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_shot (SteadStore  *store,
            SteadShot   *shot,
            GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO shot (picture_id, day, caption, person_id, batch_id, build_id, event_id)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] =
    "UPDATE shot SET picture_id = ?1, day = ?2, caption = ?3, person_id = ?4, batch_id = ?5, build_id = ?6,"
    " event_id = ?7 WHERE id = ?8";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, shot->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, shot->picture_id);
  stead_stmt_bind_day (stmt, 2, shot->day);
  stead_repo_bind_tidy (stmt, 3, shot->caption);
  stead_stmt_bind_id (stmt, 4, shot->person_id);
  stead_stmt_bind_id (stmt, 5, shot->batch_id);
  stead_stmt_bind_id (stmt, 6, shot->build_id);
  stead_stmt_bind_id (stmt, 7, shot->event_id);
  return stead_repo_save_row (store, stmt, &shot->id, error) && write_people (store, shot, error);
}

static gboolean
drop_picture (SteadStore  *store,
              gint64       picture_id,
              GError     **error)
{
  static const char sql[] = "DELETE FROM picture WHERE id = ?1";

  return stead_repo_run_id (store, sql, picture_id, error);
}

gboolean
stead_shot_repo_save (SteadStore  *store,
                      SteadShot   *shot,
                      GError     **error)
{
  g_autoptr(SteadShot) before = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && shot != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (shot->picture_id == 0)
    return stead_repo_refuse (error, _("Choose a picture."));
  if (!stead_show_check_words (shot->caption, MOST_CAPTION, _("Write what the picture shows."), error)
      || !stead_show_check_past (store, shot->day, error)
      || (shot->person_id != 0 && !stead_show_check_person (store, shot->person_id, error)))
    return FALSE;
  if (shot->id != 0 && (before = stead_shot_repo_get (store, shot->id, error)) == NULL)
    return FALSE;
  ids = stead_given_ids_new (&shot->id);
  return stead_given_ids_end (ids, write_shot (store, shot, error) &&
                                   (before == NULL || before->picture_id == shot->picture_id ||
                                    drop_picture (store, before->picture_id, error)));
}

gboolean
stead_shot_repo_drop (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "DELETE FROM shot WHERE id = ?1";
  g_autoptr(SteadShot) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_shot_repo_get (store, id, error);
  return before != NULL && stead_repo_run_id (store, sql, id, error) && drop_picture (store, before->picture_id, error);
}

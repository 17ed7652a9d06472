/* stead-people-repo.c - groups of people, duties and turns. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-people-private.h"

gboolean
stead_people_remove (SteadStore  *store,
                     const char  *sql,
                     gint64       id,
                     GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, sql, id, error);
}

GPtrArray *
stead_people_list (SteadStore      *store,
                   const char      *sql,
                   gint64           id,
                   SteadRowFunc     row,
                   GDestroyNotify   free_row,
                   GError         **error)
{
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  if (sqlite3_bind_parameter_count (stmt) > 0)
    sqlite3_bind_int64 (stmt, 1, id);
  return stead_repo_rows (store, stmt, row, free_row, error);
}

/* --- groups ----------------------------------------------------------------- */

SteadGroup *
stead_group_new (void)
{
  SteadGroup *group = g_new0 (SteadGroup, 1);

  group->person_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  return group;
}

void
stead_group_free (SteadGroup *group)
{
  if (group == NULL)
    return;
  g_free (group->name);
  g_clear_pointer (&group->person_ids, g_array_unref);
  g_free (group);
}

/* One row a member; a group of nobody has one row without. */
GPtrArray *
stead_group_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] =
    "SELECT g.id, g.name, m.person_id FROM person_group g LEFT JOIN group_member m ON m.group_id = g.id"
    " LEFT JOIN person p ON p.id = m.person_id ORDER BY g.name, g.id, p.name, p.id";
  g_autoptr(GPtrArray) groups = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_group_free);
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGroup *last = NULL;
  int rc;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  while ((rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      gint64 person_id = sqlite3_column_int64 (stmt, 2);

      if (last == NULL || last->id != sqlite3_column_int64 (stmt, 0))
        {
          last = stead_group_new ();
          last->id = sqlite3_column_int64 (stmt, 0);
          last->name = stead_stmt_text (stmt, 1);
          g_ptr_array_add (groups, last);
        }
      if (person_id != 0)
        g_array_append_val (last->person_ids, person_id);
    }
  if (rc == SQLITE_DONE)
    return g_steal_pointer (&groups);
  stead_store_set_error (store, rc, error);
  return NULL;
}

static gboolean
write_members (SteadStore        *store,
               const SteadGroup  *group,
               GError           **error)
{
  if (!stead_repo_run_id (store, "DELETE FROM group_member WHERE group_id = ?1", group->id, error))
    return FALSE;
  for (guint i = 0; i < group->person_ids->len; i++)
    {
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, "INSERT OR IGNORE INTO group_member (group_id, person_id)"
                                                              " VALUES (?1, ?2)", error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, group->id);
      sqlite3_bind_int64 (stmt, 2, g_array_index (group->person_ids, gint64, i));
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_group_repo_save (SteadStore  *store,
                       SteadGroup  *group,
                       GError     **error)
{
  static const char taken_sql[] = "SELECT 1 FROM person_group WHERE name = ?1 AND id <> ?2";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && group != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (group->name, error) ||
      !stead_repo_check_unique (store, taken_sql, group->name, group->id, error))
    return FALSE;
  stmt = stead_store_prepare (store, group->id == 0 ? "INSERT INTO person_group (name) VALUES (?1)"
                                                    : "UPDATE person_group SET name = ?1 WHERE id = ?2", error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, group->name);
  ids = stead_given_ids_new (&group->id);
  return stead_given_ids_end (ids, stead_repo_save_row (store, stmt, &group->id, error) &&
                                   write_members (store, group, error));
}

gboolean
stead_group_repo_remove (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  gint64 turns = stead_repo_count_id (store, "SELECT count (*) FROM rota_turn WHERE group_id = ?1", id, error);

  if (turns < 0)
    return FALSE;
  if (turns > 0)
    return stead_repo_refuse (error, _("This group has turns in the rota. Give them to others first."));
  return stead_people_remove (store, "DELETE FROM person_group WHERE id = ?1", id, error);
}

/* --- duties ----------------------------------------------------------------- */

void
stead_duty_free (SteadDuty *duty)
{
  if (duty == NULL)
    return;
  g_free (duty->name);
  g_free (duty->needs);
  g_free (duty);
}

static gpointer
duty_from_row (SteadStmt *stmt)
{
  SteadDuty *duty = g_new0 (SteadDuty, 1);

  duty->id = sqlite3_column_int64 (stmt, 0);
  duty->name = stead_stmt_text (stmt, 1);
  duty->needs = stead_stmt_text (stmt, 2);
  duty->retired_on = stead_stmt_day (stmt, 3);
  return duty;
}

GPtrArray *
stead_duty_repo_list (SteadStore  *store,
                      GError     **error)
{
  return stead_people_list (store, "SELECT id, name, needs, retired_on FROM duty ORDER BY name, id", 0, duty_from_row,
                  (GDestroyNotify) stead_duty_free, error);
}

gboolean
stead_duty_repo_save (SteadStore  *store,
                      SteadDuty   *duty,
                      GError     **error)
{
  static const char taken_sql[] = "SELECT 1 FROM duty WHERE name = ?1 AND id <> ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && duty != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (duty->name, error) || (duty->needs != NULL && *duty->needs != '\0' &&
                                                    !stead_repo_check_name (duty->needs, error)) ||
      !stead_repo_check_unique (store, taken_sql, duty->name, duty->id, error))
    return FALSE;
  stmt = stead_store_prepare (store, duty->id == 0
                                     ? "INSERT INTO duty (name, needs, retired_on) VALUES (?1, ?2, ?3)"
                                     : "UPDATE duty SET name = ?1, needs = ?2, retired_on = ?3 WHERE id = ?4", error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, duty->name);
  stead_repo_bind_tidy (stmt, 2, duty->needs);
  stead_stmt_bind_day (stmt, 3, duty->retired_on);
  return stead_repo_save_row (store, stmt, &duty->id, error);
}

gboolean
stead_duty_repo_remove (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  /* Not by the cascade alone: undo records what is written here. */
  return stead_people_remove (store, "DELETE FROM rota_turn WHERE duty_id = ?1", id, error) &&
         stead_people_remove (store, "DELETE FROM duty WHERE id = ?1", id, error);
}

/* --- turns ------------------------------------------------------------------ */

void
stead_turn_free (SteadTurn *turn)
{
  if (turn == NULL)
    return;
  g_free (turn->duty_name);
  g_free (turn->needs);
  g_free (turn->who);
  g_free (turn);
}

static gpointer
turn_from_row (SteadStmt *stmt)
{
  SteadTurn *turn = g_new0 (SteadTurn, 1);

  turn->id = sqlite3_column_int64 (stmt, 0);
  turn->duty_id = sqlite3_column_int64 (stmt, 1);
  turn->weekday = sqlite3_column_int (stmt, 2);
  turn->person_id = sqlite3_column_int64 (stmt, 3);
  turn->group_id = sqlite3_column_int64 (stmt, 4);
  turn->at_minute = sqlite3_column_type (stmt, 5) == SQLITE_NULL ? -1 : sqlite3_column_int (stmt, 5);
  turn->from_on = stead_stmt_day (stmt, 6);
  turn->to_on = stead_stmt_day (stmt, 7);
  turn->duty_name = stead_stmt_text (stmt, 8);
  turn->needs = stead_stmt_text (stmt, 9);
  turn->who = stead_stmt_text (stmt, 10);
  return turn;
}

GPtrArray *
stead_turn_repo_list (SteadStore  *store,
                      SteadDay     day,
                      GError     **error)
{
  static const char sql[] =
    "SELECT q.id, q.duty_id, q.weekday, q.person_id, q.group_id, q.at_minute, q.from_on, q.to_on, d.name, d.needs,"
    " coalesce (p.name, g.name) FROM rota_turn q JOIN duty d ON d.id = q.duty_id"
    " LEFT JOIN person p ON p.id = q.person_id LEFT JOIN person_group g ON g.id = q.group_id"
    " WHERE q.from_on <= ?1 AND (q.to_on IS NULL OR q.to_on >= ?1)"
    " ORDER BY q.weekday, coalesce (q.at_minute, 1440), d.name, q.id";

  return stead_people_list (store, sql, day, turn_from_row, (GDestroyNotify) stead_turn_free, error);
}

gboolean
stead_turn_repo_save (SteadStore  *store,
                      SteadTurn   *turn,
                      GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO rota_turn (duty_id, weekday, person_id, group_id, at_minute, from_on, to_on)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] =
    "UPDATE rota_turn SET duty_id = ?1, weekday = ?2, person_id = ?3, group_id = ?4, at_minute = ?5, from_on = ?6,"
    " to_on = ?7 WHERE id = ?8";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && turn != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (turn->duty_id == 0)
    return stead_repo_refuse (error, _("Choose the duty."));
  if ((turn->person_id == 0) == (turn->group_id == 0))
    return stead_repo_refuse (error, _("A turn is one person's or one group's."));
  if (turn->weekday < 1 || turn->weekday > 7 || turn->at_minute > 1439)
    return stead_repo_refuse (error, _("Choose the day of the week, and a time of the day."));
  if (turn->to_on != STEAD_DAY_NONE && turn->to_on < turn->from_on)
    return stead_repo_refuse (error, _("A turn ends on or after the day on which it begins."));
  stmt = stead_store_prepare (store, turn->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, turn->duty_id);
  sqlite3_bind_int (stmt, 2, turn->weekday);
  stead_stmt_bind_id (stmt, 3, turn->person_id);
  stead_stmt_bind_id (stmt, 4, turn->group_id);
  if (turn->at_minute >= 0)
    sqlite3_bind_int (stmt, 5, turn->at_minute);
  stead_stmt_bind_day (stmt, 6, turn->from_on);
  stead_stmt_bind_day (stmt, 7, turn->to_on);
  return stead_repo_save_row (store, stmt, &turn->id, error);
}

gboolean
stead_turn_repo_remove (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  return stead_people_remove (store, "DELETE FROM rota_turn WHERE id = ?1", id, error);
}

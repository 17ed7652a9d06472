/* stead-reflection-repo.c - thoughts on what happened, goals, roles and services. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-reflection-repo.h"
#include "store/stead-show-private.h"

#define MOST_GOAL 1000

void
stead_reflection_free (SteadReflection *reflection)
{
  if (reflection == NULL)
    return;
  g_free (reflection->question);
  g_free (reflection->text);
  g_free (reflection);
}

void
stead_goal_free (SteadGoal *goal)
{
  if (goal == NULL)
    return;
  g_free (goal->words);
  g_free (goal->result);
  g_free (goal);
}

void
stead_role_held_free (SteadRoleHeld *role)
{
  if (role == NULL)
    return;
  g_free (role->words);
  g_free (role);
}

gboolean
stead_reflection_repo_last_writer (SteadStore  *store,
                                   gint64      *out_person_id,
                                   GError     **error)
{
  static const char sql[] =
    "SELECT e.person_id FROM (SELECT person_id, day FROM reflection UNION ALL SELECT person_id, set_on FROM goal"
    " UNION ALL SELECT person_id, day FROM skill_try) e JOIN person p ON p.id = e.person_id"
    " WHERE p.left_on IS NULL ORDER BY e.day DESC, e.person_id LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_person_id != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL && stead_repo_number (store, stmt, 0, out_person_id, error);
}

/* --- thoughts --------------------------------------------------------------------- */

static gpointer
reflection_from_row (SteadStmt *stmt)
{
  SteadReflection *reflection = g_new0 (SteadReflection, 1);

  reflection->id = sqlite3_column_int64 (stmt, 0);
  reflection->person_id = sqlite3_column_int64 (stmt, 1);
  reflection->day = stead_stmt_day (stmt, 2);
  reflection->question = stead_stmt_text (stmt, 3);
  reflection->text = stead_stmt_text (stmt, 4);
  reflection->batch_id = sqlite3_column_int64 (stmt, 5);
  reflection->sale_id = sqlite3_column_int64 (stmt, 6);
  reflection->build_id = sqlite3_column_int64 (stmt, 7);
  reflection->event_id = sqlite3_column_int64 (stmt, 8);
  reflection->is_shown = sqlite3_column_int (stmt, 9) != 0;
  return reflection;
}

GPtrArray *
stead_reflection_repo_list (SteadStore  *store,
                            gint64       person_id,
                            GError     **error)
{
  static const char sql[] = "SELECT id, person_id, day, question, text, batch_id, sale_id, build_id, event_id, is_shown"
                            " FROM reflection WHERE person_id = ?1 ORDER BY day, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, person_id, reflection_from_row, (GDestroyNotify) stead_reflection_free, error);
}

gboolean
stead_reflection_repo_save (SteadStore       *store,
                            SteadReflection  *reflection,
                            GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO reflection (person_id, day, question, text, batch_id, sale_id, build_id, event_id, is_shown)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
  static const char update_sql[] =
    "UPDATE reflection SET person_id = ?1, day = ?2, question = ?3, text = ?4, batch_id = ?5, sale_id = ?6,"
    " build_id = ?7, event_id = ?8, is_shown = ?9 WHERE id = ?10";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && reflection != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_show_check_person (store, reflection->person_id, error)
      || !stead_show_check_past (store, reflection->day, error)
      || !stead_show_check_words (reflection->text, STEAD_NOTE_MAX, _("Write what you think about it."), error)
      || !stead_repo_check_note (reflection->question, error))
    return FALSE;
  stmt = stead_store_prepare (store, reflection->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, reflection->person_id);
  stead_stmt_bind_day (stmt, 2, reflection->day);
  stead_repo_bind_tidy (stmt, 3, reflection->question);
  stead_repo_bind_tidy (stmt, 4, reflection->text);
  stead_stmt_bind_id (stmt, 5, reflection->batch_id);
  stead_stmt_bind_id (stmt, 6, reflection->sale_id);
  stead_stmt_bind_id (stmt, 7, reflection->build_id);
  stead_stmt_bind_id (stmt, 8, reflection->event_id);
  sqlite3_bind_int (stmt, 9, reflection->is_shown != FALSE);
  return stead_repo_save_row (store, stmt, &reflection->id, error);
}

gboolean
stead_reflection_repo_drop (SteadStore  *store,
                            gint64       id,
                            GError     **error)
{
  static const char sql[] = "DELETE FROM reflection WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, id, error);
}

/* --- goals ------------------------------------------------------------------------ */

static gpointer
goal_from_row (SteadStmt *stmt)
{
  SteadGoal *goal = g_new0 (SteadGoal, 1);

  goal->id = sqlite3_column_int64 (stmt, 0);
  goal->person_id = sqlite3_column_int64 (stmt, 1);
  goal->words = stead_stmt_text (stmt, 2);
  goal->set_on = stead_stmt_day (stmt, 3);
  goal->due_on = stead_stmt_day (stmt, 4);
  goal->reached_on = stead_stmt_day (stmt, 5);
  goal->result = stead_stmt_text (stmt, 6);
  return goal;
}

GPtrArray *
stead_goal_repo_list (SteadStore  *store,
                      gint64       person_id,
                      GError     **error)
{
  static const char sql[] = "SELECT id, person_id, words, set_on, due_on, reached_on, result FROM goal"
                            " WHERE person_id = ?1 ORDER BY set_on, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, person_id, goal_from_row, (GDestroyNotify) stead_goal_free, error);
}

static gboolean
check_goal (SteadStore       *store,
            const SteadGoal  *goal,
            GError          **error)
{
  if (!stead_show_check_person (store, goal->person_id, error) || !stead_show_check_past (store, goal->set_on, error))
    return FALSE;
  if (goal->due_on != STEAD_DAY_NONE && !(stead_day_is_valid (goal->due_on) && goal->due_on >= goal->set_on))
    return stead_repo_refuse (error, _("A goal is due on or after the day it was set."));
  if (goal->reached_on != STEAD_DAY_NONE && !stead_show_check_past (store, goal->reached_on, error))
    return FALSE;
  if (goal->reached_on != STEAD_DAY_NONE && goal->reached_on < goal->set_on)
    return stead_repo_refuse (error, _("A goal is reached on or after the day it was set."));
  return stead_show_check_words (goal->words, MOST_GOAL, _("Write what the goal is."), error) &&
         stead_repo_check_note (goal->result, error);
}

gboolean
stead_goal_repo_save (SteadStore  *store,
                      SteadGoal   *goal,
                      GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO goal (person_id, words, set_on, due_on, reached_on, result) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] =
    "UPDATE goal SET person_id = ?1, words = ?2, set_on = ?3, due_on = ?4, reached_on = ?5, result = ?6 WHERE id = ?7";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && goal != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_goal (store, goal, error))
    return FALSE;
  stmt = stead_store_prepare (store, goal->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, goal->person_id);
  stead_repo_bind_tidy (stmt, 2, goal->words);
  stead_stmt_bind_day (stmt, 3, goal->set_on);
  stead_stmt_bind_day (stmt, 4, goal->due_on);
  stead_stmt_bind_day (stmt, 5, goal->reached_on);
  stead_repo_bind_tidy (stmt, 6, goal->result);
  return stead_repo_save_row (store, stmt, &goal->id, error);
}

gboolean
stead_goal_repo_drop (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "DELETE FROM goal WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, id, error);
}

/* --- roles and services -------------------------------------------------------------- */

static gpointer
role_from_row (SteadStmt *stmt)
{
  SteadRoleHeld *role = g_new0 (SteadRoleHeld, 1);

  role->id = sqlite3_column_int64 (stmt, 0);
  role->person_id = sqlite3_column_int64 (stmt, 1);
  role->words = stead_stmt_text (stmt, 2);
  role->is_service = sqlite3_column_int (stmt, 3) != 0;
  role->from_on = stead_stmt_day (stmt, 4);
  role->to_on = stead_stmt_day (stmt, 5);
  return role;
}

GPtrArray *
stead_role_held_repo_list (SteadStore  *store,
                           gint64       person_id,
                           GError     **error)
{
  static const char sql[] = "SELECT id, person_id, words, is_service, from_on, to_on FROM role_held"
                            " WHERE person_id = ?1 ORDER BY from_on, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, person_id, role_from_row, (GDestroyNotify) stead_role_held_free, error);
}

gboolean
stead_role_held_repo_save (SteadStore     *store,
                           SteadRoleHeld  *role,
                           GError        **error)
{
  static const char insert_sql[] =
    "INSERT INTO role_held (person_id, words, is_service, from_on, to_on) VALUES (?1, ?2, ?3, ?4, ?5)";
  static const char update_sql[] =
    "UPDATE role_held SET person_id = ?1, words = ?2, is_service = ?3, from_on = ?4, to_on = ?5 WHERE id = ?6";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && role != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_show_check_person (store, role->person_id, error)
      || !stead_show_check_past (store, role->from_on, error))
    return FALSE;
  if (role->to_on != STEAD_DAY_NONE && !(stead_day_is_valid (role->to_on) && role->to_on >= role->from_on))
    return stead_repo_refuse (error, _("The last day lies before the first one. Change one of them."));
  if (!stead_show_check_words (role->words, STEAD_NAME_MAX, _("Write which role or service it was."), error))
    return FALSE;
  stmt = stead_store_prepare (store, role->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, role->person_id);
  stead_repo_bind_tidy (stmt, 2, role->words);
  sqlite3_bind_int (stmt, 3, role->is_service != FALSE);
  stead_stmt_bind_day (stmt, 4, role->from_on);
  stead_stmt_bind_day (stmt, 5, role->to_on);
  return stead_repo_save_row (store, stmt, &role->id, error);
}

gboolean
stead_role_held_repo_drop (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM role_held WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, id, error);
}

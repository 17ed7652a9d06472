/* stead-routine-repo.c - what has to be done again and again, or once at an age. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-repo-private.h"
#include "store/stead-routine-repo.h"

#define EVERY_DAYS_MAX 3660
#define AGE_DAYS_MAX 36600

SteadRoutine *
stead_routine_new (void)
{
  SteadRoutine *routine = g_new0 (SteadRoutine, 1);

  routine->start_on = STEAD_DAY_NONE;
  routine->last_done = STEAD_DAY_NONE;
  routine->age_days = -1;
  routine->degree_days = NAN;
  return routine;
}

void
stead_routine_free (SteadRoutine *routine)
{
  if (routine == NULL)
    return;
  g_free (routine->name);
  g_free (routine);
}

/* --- reading ---------------------------------------------------------------- */

#define ROUTINE_SELECT \
  "SELECT r.id, r.batch_id, r.water_id, r.name, r.every_days, r.start_on, r.age_days, r.degree_days, r.paused," \
  " (SELECT max (d.day) FROM routine_done d WHERE d.routine_id = r.id) FROM routine r"

static gpointer
routine_from_row (SteadStmt *stmt)
{
  SteadRoutine *routine = stead_routine_new ();

  routine->id = sqlite3_column_int64 (stmt, 0);
  routine->batch_id = sqlite3_column_int64 (stmt, 1);
  routine->water_id = sqlite3_column_int64 (stmt, 2);
  routine->name = stead_stmt_text (stmt, 3);
  routine->every_days = sqlite3_column_int (stmt, 4);
  routine->start_on = stead_stmt_day (stmt, 5);
  if (sqlite3_column_type (stmt, 6) != SQLITE_NULL)
    routine->age_days = sqlite3_column_int (stmt, 6);
  routine->degree_days = stead_stmt_real (stmt, 7);
  routine->paused = sqlite3_column_int (stmt, 8) != 0;
  routine->last_done = stead_stmt_day (stmt, 9);
  return routine;
}

GPtrArray *
stead_routine_repo_list (SteadStore  *store,
                         gint64       batch_id,
                         gint64       water_id,
                         GError     **error)
{
  static const char batch_sql[] = ROUTINE_SELECT " WHERE r.batch_id = ?1 ORDER BY r.name, r.id";
  static const char water_sql[] = ROUTINE_SELECT " WHERE r.water_id = ?1 ORDER BY r.name, r.id";
  static const char all_sql[] =
    ROUTINE_SELECT " LEFT JOIN batch b ON b.id = r.batch_id LEFT JOIN water w ON w.id = r.water_id"
    " WHERE coalesce (b.ended_on, w.ended_on) IS NULL ORDER BY r.name, r.id";
  const char *sql = batch_id != 0 ? batch_sql : water_id != 0 ? water_sql : all_sql;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (batch_id == 0 || water_id == 0, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  if (sql != all_sql)
    sqlite3_bind_int64 (stmt, 1, batch_id != 0 ? batch_id : water_id);
  return stead_repo_rows (store, stmt, routine_from_row, (GDestroyNotify) stead_routine_free, error);
}

SteadRoutine *
stead_routine_repo_get (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = ROUTINE_SELECT " WHERE r.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, routine_from_row, error);
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
check_when (const SteadRoutine  *routine,
            GError             **error)
{
  int ways = (routine->every_days != 0) + (routine->age_days != -1) + !isnan (routine->degree_days);

  if (ways != 1)
    return stead_repo_refuse (error, _("Say when it is due: every so many days, once at an age, "
                                       "or once at a sum of degree days."));
  if (routine->every_days != 0 && !(routine->every_days >= 1 && routine->every_days <= EVERY_DAYS_MAX))
    return stead_repo_refuse (error, _("It can recur after 1 to 3,660 days. Check the number."));
  if (routine->every_days != 0 && routine->start_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day on which it is due for the first time."));
  if (routine->age_days != -1 && !(routine->age_days >= 0 && routine->age_days <= AGE_DAYS_MAX))
    return stead_repo_refuse (error, _("The age must be 0 to 36,600 days. Check the number."));
  if (!isnan (routine->degree_days) && !(routine->degree_days > 0 && routine->degree_days <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The sum of degree days must be more than 0."));
  return TRUE;
}

static void
bind_routine (SteadStmt          *stmt,
              const SteadRoutine *routine)
{
  stead_stmt_bind_id (stmt, 1, routine->batch_id);
  stead_stmt_bind_id (stmt, 2, routine->water_id);
  stead_repo_bind_tidy (stmt, 3, routine->name);
  stead_stmt_bind_id (stmt, 4, routine->every_days);
  stead_stmt_bind_day (stmt, 5, routine->every_days != 0 ? routine->start_on : STEAD_DAY_NONE);
  if (routine->age_days == -1)
    sqlite3_bind_null (stmt, 6);
  else
    sqlite3_bind_int (stmt, 6, routine->age_days);
  stead_stmt_bind_real (stmt, 7, routine->degree_days);
  sqlite3_bind_int (stmt, 8, routine->paused != FALSE);
}

gboolean
stead_routine_repo_save (SteadStore    *store,
                         SteadRoutine  *routine,
                         GError       **error)
{
  static const char insert_sql[] =
    "INSERT INTO routine (batch_id, water_id, name, every_days, start_on, age_days, degree_days, paused)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] =
    "UPDATE routine SET batch_id = ?1, water_id = ?2, name = ?3, every_days = ?4, start_on = ?5, age_days = ?6,"
    " degree_days = ?7, paused = ?8 WHERE id = ?9";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && routine != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail ((routine->batch_id == 0) != (routine->water_id == 0), FALSE);
  if (!stead_repo_check_name (routine->name, error) || !check_when (routine, error))
    return FALSE;
  stmt = stead_store_prepare (store, routine->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_routine (stmt, routine);
  return stead_repo_save_row (store, stmt, &routine->id, error);
}

gboolean
stead_routine_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM routine WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

gboolean
stead_routine_repo_done (SteadStore  *store,
                         gint64       id,
                         SteadDay     day,
                         gint64       person_id,
                         const char  *note,
                         GError     **error)
{
  static const char sql[] = "INSERT INTO routine_done (routine_id, day, note, person_id) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadRoutine) routine = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  routine = stead_routine_repo_get (store, id, error);
  if (routine == NULL || !stead_repo_check_note (note, error))
    return FALSE;
  if (day == STEAD_DAY_NONE || day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("A day that is still to come cannot be done yet. Enter a day up to today."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_day (stmt, 2, day);
  stead_repo_bind_tidy (stmt, 3, note);
  stead_stmt_bind_id (stmt, 4, person_id);
  return stead_store_run (store, stmt, error);
}

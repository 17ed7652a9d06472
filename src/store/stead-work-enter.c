/* stead-work-enter.c - hours that a person enters: what stands against them, and the advisor's check. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-farm-repo.h"
#include "store/stead-repo-private.h"
#include "store/stead-work-private.h"

#define DAY_MINUTES 1440

/* "14:05", in the place's time. */
static char *
clock_text (gint64 at)
{
  g_autoptr(GDateTime) time = g_date_time_new_from_unix_local (at);

  return g_date_time_format (time, "%H:%M");
}

static gboolean
refuse_overlap (SteadStmt  *stmt,
                GError    **error)
{
  g_autofree char *name = stead_stmt_text (stmt, 0), *duty = stead_stmt_text (stmt, 4);
  g_autofree char *day = stead_day_format (stead_stmt_day (stmt, 1), STEAD_DAY_STYLE_SHORT);
  g_autofree char *from = clock_text (sqlite3_column_int64 (stmt, 2)), *to = clock_text (sqlite3_column_int64 (stmt, 3));

  /* Translators: a person, a day, from, to, what was done. */
  return stead_repo_refuse (error, _("%1$s already has hours on %2$s from %3$s to %4$s (%5$s). Nobody is in two places "
                                     "at once: mend one of them."), name, day, from, to, duty);
}

/* An entry in whose place this one stands does not count. */
static gboolean
check_overlap (SteadStore           *store,
               const SteadWorkSpan  *span,
               GError              **error)
{
  static const char sql[] =
    "SELECT p.name, w.day, w.from_at, w.to_at, w.duty FROM work_span w JOIN person p ON p.id = w.person_id"
    " WHERE w.person_id = ?1 AND w.day BETWEEN ?2 - 1 AND ?2 + 1 AND w.from_at < ?4 AND w.to_at > ?3"
    " AND w.minutes > 0 AND w.id NOT IN (?5, ?6)"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id) ORDER BY w.from_at, w.id LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;
  int rc;

  if (span->from_at == G_MININT64 || !(span->minutes > 0))
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, span->person_id);
  sqlite3_bind_int (stmt, 2, span->day);
  sqlite3_bind_int64 (stmt, 3, span->from_at);
  sqlite3_bind_int64 (stmt, 4, span->to_at);
  sqlite3_bind_int64 (stmt, 5, span->id);
  sqlite3_bind_int64 (stmt, 6, span->corrects_id);
  rc = sqlite3_step (stmt);
  if (rc == SQLITE_ROW)
    return refuse_overlap (stmt, error);
  if (rc == SQLITE_DONE)
    return TRUE;
  stead_store_set_error (store, rc, error);
  return FALSE;
}

static gboolean
check_day (SteadStore           *store,
           const SteadWorkSpan  *span,
           GError              **error)
{
  static const char sql[] =
    "SELECT CAST (round (total (w.minutes)) AS INTEGER) FROM work_span w WHERE w.person_id = ?1 AND w.day = ?2"
    " AND w.id NOT IN (?3, ?4) AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 others = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, span->person_id);
  sqlite3_bind_int (stmt, 2, span->day);
  sqlite3_bind_int64 (stmt, 3, span->id);
  sqlite3_bind_int64 (stmt, 4, span->corrects_id);
  if (!stead_repo_number (store, stmt, 0, &others, error))
    return FALSE;
  if ((double) others + span->minutes > DAY_MINUTES)
    return stead_repo_refuse (error, _("With this, more than 24 hours would be worked on that day. Check the times."));
  return TRUE;
}

static gboolean
check_times (const SteadWorkSpan  *span,
             GError              **error)
{
  if (span->from_at == G_MININT64 || span->minutes == 0)
    return TRUE;
  if (span->to_at <= span->from_at)
    return stead_repo_refuse (error, _("The end must be later than the start. Tick “The end is on the next day” for work "
                                       "past midnight."));
  if ((double) (span->to_at - span->from_at) / 60 - span->break_minutes < span->minutes - 0.5)
    return stead_repo_refuse (error, _("That is longer than from the start to the end. Check the times."));
  return TRUE;
}

gboolean
stead_work_repo_enter (SteadStore      *store,
                       SteadWorkSpan   *span,
                       SteadWorkFault  *out_fault,
                       GError         **error)
{
  SteadWorkFault fault = STEAD_WORK_FAULT_TIME;
  gboolean good;

  g_return_val_if_fail (STEAD_IS_STORE (store) && span != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);

  good = check_times (span, error) && stead_work_check (store, span, &fault, error);
  if (good)
    {
      fault = STEAD_WORK_FAULT_TIME;
      good = check_overlap (store, span, error) && check_day (store, span, error);
    }
  if (good)
    {
      fault = STEAD_WORK_FAULT_NONE;
      good = stead_work_write (store, span, error);
    }
  if (!good && out_fault != NULL)
    *out_fault = fault;
  return good;
}

static char *
name_of (SteadStore *store,
         gint64      person_id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  for (guint i = 0; people != NULL && i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == person_id)
      return g_strdup (((const SteadPerson *) people->pdata[i])->name);
  return g_strdup ("?");
}

gboolean
stead_work_repo_enter_all (SteadStore           *store,
                           const SteadWorkSpan  *span,
                           const GArray         *person_ids,
                           SteadWorkFault       *out_fault,
                           GError              **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && span != NULL && person_ids != NULL, FALSE);

  if (person_ids->len == 0)
    {
      if (out_fault != NULL)
        *out_fault = STEAD_WORK_FAULT_PERSON;
      return stead_repo_refuse (error, _("Choose who worked."));
    }
  for (guint i = 0; i < person_ids->len; i++)
    {
      SteadWorkSpan one = *span;

      one.id = 0;
      one.person_id = g_array_index (person_ids, gint64, i);
      if (!stead_work_repo_enter (store, &one, out_fault, error))
        {
          g_autofree char *name = name_of (store, one.person_id);

          g_prefix_error (error, "%s: ", name);
          return FALSE;
        }
    }
  return TRUE;
}

gboolean
stead_work_repo_remove (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, "DELETE FROM work_span WHERE id = ?1", id, error);
}

gboolean
stead_work_repo_check (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       gint64       person_id,
                       gint64       checked_by,
                       int         *out_n,
                       GError     **error)
{
  static const char all_sql[] = "UPDATE work_span SET checked_by = ?3, checked_on = ?4"
                                " WHERE day BETWEEN ?1 AND ?2 AND checked_on IS NULL";
  static const char one_sql[] = "UPDATE work_span SET checked_by = ?3, checked_on = ?4"
                                " WHERE person_id = ?5 AND day BETWEEN ?1 AND ?2 AND checked_on IS NULL";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 advisors;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_n != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  advisors = stead_repo_count_id (store, "SELECT count (*) FROM person WHERE id = ?1 AND role = 'advisor'", checked_by,
                                  error);
  if (advisors < 0)
    return FALSE;
  if (advisors == 0)
    return stead_repo_refuse (error, _("Hours are checked by an advisor. Choose one."));
  stmt = stead_store_prepare (store, person_id == 0 ? all_sql : one_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int64 (stmt, 3, checked_by);
  stead_stmt_bind_day (stmt, 4, stead_store_get_today (store));
  if (person_id != 0)
    sqlite3_bind_int64 (stmt, 5, person_id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  *out_n = sqlite3_changes (stead_store_get_db (store));
  return TRUE;
}

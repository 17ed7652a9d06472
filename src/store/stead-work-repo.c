/* stead-work-repo.c - who worked when, and at what. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-repo-private.h"
#include "store/stead-work-repo.h"

void
stead_work_span_free (SteadWorkSpan *span)
{
  if (span == NULL)
    return;
  g_free (span->duty);
  g_free (span->note);
  g_free (span->person_name);
  g_free (span);
}

static gboolean
check_span (SteadStore           *store,
            const SteadWorkSpan  *span,
            GError              **error)
{
  if (span->person_id == 0)
    return stead_repo_refuse (error, _("Choose who worked."));
  if (!stead_day_is_valid (span->day) || span->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("Hours are entered for a day up to today."));
  if (!(span->minutes > 0 && span->minutes <= 1440) || !(span->break_minutes >= 0 && span->break_minutes <= 1440))
    return stead_repo_refuse (error, _("Between nothing and 24 hours can be worked on one day."));
  return stead_repo_check_name (span->duty, error) && stead_repo_check_note (span->note, error);
}

gboolean
stead_work_repo_add (SteadStore     *store,
                     SteadWorkSpan  *span,
                     GError        **error)
{
  static const char sql[] =
    "INSERT INTO work_span (person_id, day, from_at, to_at, minutes, break_minutes, duty, paid, batch_id, sale_id, note,"
    " entered_on) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && span != NULL && span->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_span (store, span, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  span->entered_on = stead_store_get_today (store);
  sqlite3_bind_int64 (stmt, 1, span->person_id);
  stead_stmt_bind_day (stmt, 2, span->day);
  if (span->from_at != G_MININT64)
    {
      sqlite3_bind_int64 (stmt, 3, span->from_at);
      sqlite3_bind_int64 (stmt, 4, span->to_at);
    }
  else
    {
      sqlite3_bind_null (stmt, 3);
      sqlite3_bind_null (stmt, 4);
    }
  sqlite3_bind_double (stmt, 5, span->minutes);
  sqlite3_bind_double (stmt, 6, span->break_minutes);
  stead_repo_bind_tidy (stmt, 7, span->duty);
  sqlite3_bind_int (stmt, 8, span->paid != FALSE);
  stead_stmt_bind_id (stmt, 9, span->batch_id);
  stead_stmt_bind_id (stmt, 10, span->sale_id);
  stead_repo_bind_tidy (stmt, 11, span->note);
  stead_stmt_bind_day (stmt, 12, span->entered_on);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  span->id = stead_store_last_id (store);
  return TRUE;
}

static gpointer
span_from_row (SteadStmt *stmt)
{
  SteadWorkSpan *span = g_new0 (SteadWorkSpan, 1);

  span->id = sqlite3_column_int64 (stmt, 0);
  span->person_id = sqlite3_column_int64 (stmt, 1);
  span->day = stead_stmt_day (stmt, 2);
  span->from_at = sqlite3_column_type (stmt, 3) == SQLITE_NULL ? G_MININT64 : sqlite3_column_int64 (stmt, 3);
  span->to_at = sqlite3_column_type (stmt, 4) == SQLITE_NULL ? G_MININT64 : sqlite3_column_int64 (stmt, 4);
  span->minutes = sqlite3_column_double (stmt, 5);
  span->break_minutes = sqlite3_column_double (stmt, 6);
  span->duty = stead_stmt_text (stmt, 7);
  span->paid = sqlite3_column_int (stmt, 8) != 0;
  span->batch_id = sqlite3_column_int64 (stmt, 9);
  span->sale_id = sqlite3_column_int64 (stmt, 10);
  span->note = stead_stmt_text (stmt, 11);
  span->entered_on = stead_stmt_day (stmt, 12);
  span->checked_by = sqlite3_column_int64 (stmt, 13);
  span->person_name = stead_stmt_text (stmt, 14);
  return span;
}

GPtrArray *
stead_work_repo_of_sale (SteadStore  *store,
                         gint64       sale_id,
                         GError     **error)
{
  static const char sql[] =
    "SELECT w.id, w.person_id, w.day, w.from_at, w.to_at, w.minutes, w.break_minutes, w.duty, w.paid, w.batch_id,"
    " w.sale_id, w.note, w.entered_on, w.checked_by, p.name FROM work_span w JOIN person p ON p.id = w.person_id"
    " WHERE w.sale_id = ?1 AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)"
    " ORDER BY p.name, w.from_at, w.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  return stead_repo_rows (store, stmt, span_from_row, (GDestroyNotify) stead_work_span_free, error);
}

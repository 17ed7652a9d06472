/* stead-work-repo.c - who worked when, and at what. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-repo-private.h"
#include "store/stead-work-private.h"

void
stead_work_span_free (SteadWorkSpan *span)
{
  if (span == NULL)
    return;
  g_free (span->duty);
  g_free (span->note);
  g_free (span->known_by);
  g_free (span->person_name);
  g_free (span->checker_name);
  g_free (span->about);
  g_free (span);
}

/* Leaves the fault at what is looked at, until all is well. */
gboolean
stead_work_check (SteadStore           *store,
                  const SteadWorkSpan  *span,
                  SteadWorkFault       *out_fault,
                  GError              **error)
{
  *out_fault = STEAD_WORK_FAULT_PERSON;
  if (span->person_id == 0)
    return stead_repo_refuse (error, _("Choose who worked."));
  *out_fault = STEAD_WORK_FAULT_DAY;
  if (!stead_day_is_valid (span->day) || span->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("Hours are entered for a day up to today."));
  *out_fault = STEAD_WORK_FAULT_BREAK;
  if (!(span->break_minutes >= 0 && span->break_minutes <= 1440))
    return stead_repo_refuse (error, _("A break takes between nothing and 24 hours."));
  *out_fault = STEAD_WORK_FAULT_TIME;
  if (!(span->minutes >= 0 && span->minutes <= 1440) || (!(span->minutes > 0) && span->corrects_id == 0))
    return stead_repo_refuse (error, _("Between nothing and 24 hours can be worked on one day."));
  *out_fault = STEAD_WORK_FAULT_DUTY;
  if (!stead_repo_check_name (span->duty, error))
    return FALSE;
  *out_fault = STEAD_WORK_FAULT_NONE;
  return stead_repo_check_note (span->note, error);
}

/* Parameters 1 to 13, the same for a new entry and a changed one. */
static void
bind_span (SteadStmt           *stmt,
           const SteadWorkSpan *span)
{
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
  stead_stmt_bind_id (stmt, 11, span->phase_id);
  stead_stmt_bind_id (stmt, 12, span->event_id);
  stead_repo_bind_tidy (stmt, 13, span->note);
}

static gboolean
insert_span (SteadStore     *store,
             SteadWorkSpan  *span,
             GError        **error)
{
  static const char sql[] =
    "INSERT INTO work_span (person_id, day, from_at, to_at, minutes, break_minutes, duty, paid, batch_id, sale_id,"
    " phase_id, event_id, note, entered_on, corrects_id, known_by)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  span->entered_on = stead_store_get_today (store);
  bind_span (stmt, span);
  stead_stmt_bind_day (stmt, 14, span->entered_on);
  stead_stmt_bind_id (stmt, 15, span->corrects_id);
  stead_repo_bind_tidy (stmt, 16, span->known_by);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  span->id = stead_store_last_id (store);
  return TRUE;
}

/* The day of entry stays: a late entry does not become timely by a change. */
static gboolean
update_span (SteadStore     *store,
             SteadWorkSpan  *span,
             GError        **error)
{
  static const char sql[] =
    "UPDATE work_span SET person_id = ?1, day = ?2, from_at = ?3, to_at = ?4, minutes = ?5, break_minutes = ?6,"
    " duty = ?7, paid = ?8, batch_id = ?9, sale_id = ?10, phase_id = ?11, event_id = ?12, note = ?13 WHERE id = ?14";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  bind_span (stmt, span);
  return stead_repo_save_row (store, stmt, &span->id, error);
}

gboolean
stead_work_write (SteadStore     *store,
                  SteadWorkSpan  *span,
                  GError        **error)
{
  return span->id == 0 ? insert_span (store, span, error) : update_span (store, span, error);
}

gboolean
stead_work_repo_add (SteadStore     *store,
                     SteadWorkSpan  *span,
                     GError        **error)
{
  SteadWorkFault fault;

  g_return_val_if_fail (STEAD_IS_STORE (store) && span != NULL && span->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_work_check (store, span, &fault, error) && insert_span (store, span, error);
}

/* --- reading ---------------------------------------------------------------- */

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
  span->checked_on = stead_stmt_day (stmt, 15);
  span->phase_id = sqlite3_column_int64 (stmt, 16);
  span->event_id = sqlite3_column_int64 (stmt, 17);
  span->corrects_id = sqlite3_column_int64 (stmt, 18);
  span->known_by = stead_stmt_text (stmt, 19);
  span->was_minutes = sqlite3_column_type (stmt, 20) == SQLITE_NULL ? NAN : sqlite3_column_double (stmt, 20);
  span->checker_name = stead_stmt_text (stmt, 21);
  span->about = stead_stmt_text (stmt, 22);
  return span;
}

/* A correction that says nothing was worked stays in sight: it is a fact of its own. */
#define SPANS \
  "SELECT w.id, w.person_id, w.day, w.from_at, w.to_at, w.minutes, w.break_minutes, w.duty, w.paid, w.batch_id," \
  " w.sale_id, w.note, w.entered_on, w.checked_by, p.name, w.checked_on, w.phase_id, w.event_id, w.corrects_id," \
  " w.known_by, o.minutes, k.name, coalesce (e.name, b.name, s.name, u.name)" \
  " FROM work_span w JOIN person p ON p.id = w.person_id" \
  " LEFT JOIN work_span o ON o.id = w.corrects_id LEFT JOIN person k ON k.id = w.checked_by" \
  " LEFT JOIN event e ON e.id = w.event_id LEFT JOIN batch b ON b.id = w.batch_id" \
  " LEFT JOIN sale_day s ON s.id = w.sale_id LEFT JOIN build_phase h ON h.id = w.phase_id" \
  " LEFT JOIN build u ON u.id = h.build_id"

#define HOLDS " NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)"

GPtrArray *
stead_work_repo_of_sale (SteadStore  *store,
                         gint64       sale_id,
                         GError     **error)
{
  static const char sql[] = SPANS " WHERE w.sale_id = ?1 AND" HOLDS " ORDER BY p.name, w.from_at, w.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, sale_id, span_from_row, (GDestroyNotify) stead_work_span_free,
                             error);
}

GPtrArray *
stead_work_repo_list (SteadStore  *store,
                      SteadDay     from,
                      SteadDay     to,
                      gint64       person_id,
                      GError     **error)
{
  static const char all_sql[] = SPANS " WHERE w.day BETWEEN ?1 AND ?2 AND" HOLDS " ORDER BY w.day, p.name, w.from_at, w.id";
  static const char one_sql[] = SPANS " WHERE w.person_id = ?3 AND w.day BETWEEN ?1 AND ?2 AND" HOLDS
                                " ORDER BY w.day, w.from_at, w.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, person_id == 0 ? all_sql : one_sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  if (person_id != 0)
    sqlite3_bind_int64 (stmt, 3, person_id);
  return stead_repo_rows (store, stmt, span_from_row, (GDestroyNotify) stead_work_span_free, error);
}

SteadWorkSpan *
stead_work_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = SPANS " WHERE w.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, span_from_row, error);
}

static gpointer
text_from_row (SteadStmt *stmt)
{
  return stead_stmt_text (stmt, 0);
}

/* Of the last year only, so that no list of all hours is walked through. */
GPtrArray *
stead_work_repo_duties (SteadStore  *store,
                        GError     **error)
{
  static const char sql[] = "SELECT duty FROM work_span WHERE day BETWEEN ?1 - 365 AND ?1"
                            " GROUP BY duty ORDER BY count (*) DESC, duty LIMIT 30";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, stead_store_get_today (store), text_from_row, g_free, error);
}

/* --- what hours belong to ----------------------------------------------------- */

void
stead_work_link_free (SteadWorkLink *link)
{
  g_free (link->name);
  g_free (link);
}

static gpointer
link_from_row (SteadStmt *stmt)
{
  SteadWorkLink *link = g_new0 (SteadWorkLink, 1);
  g_autofree char *name = stead_stmt_text (stmt, 2);

  link->kind = (SteadWorkLinkKind) sqlite3_column_int (stmt, 0);
  link->id = sqlite3_column_int64 (stmt, 1);
  if (sqlite3_column_type (stmt, 3) != SQLITE_NULL)
    {
      g_autofree char *day = stead_day_format (stead_stmt_day (stmt, 3), STEAD_DAY_STYLE_SHORT);

      /* Translators: a sale day or an event, and its day. */
      link->name = g_strdup_printf (C_("hours", "%1$s, %2$s"), name, day);
    }
  else
    link->name = g_steal_pointer (&name);
  return link;
}

GPtrArray *
stead_work_repo_links (SteadStore           *store,
                       const SteadWorkSpan  *span,
                       GError              **error)
{
  static const char sql[] =
    "SELECT 0, id, name, NULL FROM batch WHERE (started_on <= ?1 AND (ended_on IS NULL OR ended_on >= ?1 - 14)) OR id = ?2"
    " UNION ALL SELECT 1, id, name, day FROM sale_day WHERE day BETWEEN ?1 - 60 AND ?1 + 30 OR id = ?3"
    " UNION ALL SELECT 2, z.id, u.name || ': ' || z.name, NULL FROM build u JOIN build_phase z ON z.build_id = u.id"
    " UNION ALL SELECT 3, id, name, day FROM event WHERE day BETWEEN ?1 - 60 AND ?1 + 200 OR id = ?4"
    " ORDER BY 1, 3, 4, 2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, stead_store_get_today (store));
  sqlite3_bind_int64 (stmt, 2, span != NULL ? span->batch_id : 0);
  sqlite3_bind_int64 (stmt, 3, span != NULL ? span->sale_id : 0);
  sqlite3_bind_int64 (stmt, 4, span != NULL ? span->event_id : 0);
  return stead_repo_rows (store, stmt, link_from_row, (GDestroyNotify) stead_work_link_free, error);
}

/* stead-work-timer.c - work that is being done, and work that the farm knows of. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-hours.h"
#include "store/stead-repo-private.h"
#include "store/stead-work-repo.h"

void
stead_work_timer_free (SteadWorkTimer *timer)
{
  if (timer == NULL)
    return;
  g_free (timer->duty);
  g_free (timer->person_name);
  g_free (timer);
}

void
stead_work_draft_free (SteadWorkDraft *draft)
{
  if (draft == NULL)
    return;
  g_free (draft->known_by);
  g_free (draft->about);
  g_free (draft->person_name);
  g_free (draft);
}

/* --- the timer -------------------------------------------------------------- */

static gpointer
timer_from_row (SteadStmt *stmt)
{
  SteadWorkTimer *timer = g_new0 (SteadWorkTimer, 1);

  timer->person_id = sqlite3_column_int64 (stmt, 0);
  timer->started_at = sqlite3_column_int64 (stmt, 1);
  timer->duty = stead_stmt_text (stmt, 2);
  timer->paused_at = sqlite3_column_type (stmt, 3) == SQLITE_NULL ? G_MININT64 : sqlite3_column_int64 (stmt, 3);
  timer->break_minutes = sqlite3_column_double (stmt, 4);
  timer->person_name = stead_stmt_text (stmt, 5);
  return timer;
}

#define TIMERS \
  "SELECT t.person_id, t.started_at, t.duty, t.paused_at, t.break_minutes, p.name" \
  " FROM work_timer t JOIN person p ON p.id = t.person_id"

double
stead_work_timer_minutes (const SteadWorkTimer *timer,
                          gint64                now)
{
  gint64 end;

  g_return_val_if_fail (timer != NULL, 0);
  end = timer->paused_at != G_MININT64 ? timer->paused_at : now;
  return MAX (0.0, (double) (end - timer->started_at) / 60 - timer->break_minutes);
}

GPtrArray *
stead_work_timer_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = TIMERS " ORDER BY p.name, t.person_id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, timer_from_row, (GDestroyNotify) stead_work_timer_free, error) : NULL;
}

static SteadWorkTimer *
read_timer (SteadStore  *store,
            gint64       person_id,
            GError     **error)
{
  static const char sql[] = TIMERS " WHERE t.person_id = ?1";

  return stead_repo_row_of (store, sql, person_id, timer_from_row, error);
}

gboolean
stead_work_timer_start (SteadStore  *store,
                        gint64       person_id,
                        const char  *duty,
                        gint64       now,
                        GError     **error)
{
  static const char sql[] = "INSERT INTO work_timer (person_id, started_at, duty) VALUES (?1, ?2, ?3)";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 running;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (person_id == 0)
    return stead_repo_refuse (error, _("Choose who works."));
  if (!stead_repo_check_name (duty, error))
    return FALSE;
  running = stead_repo_count_id (store, "SELECT count (*) FROM work_timer WHERE person_id = ?1", person_id, error);
  if (running < 0)
    return FALSE;
  if (running > 0)
    return stead_repo_refuse (error, _("The timer of this person is running. Stop it first."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, person_id);
  sqlite3_bind_int64 (stmt, 2, now);
  stead_repo_bind_tidy (stmt, 3, duty);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_work_timer_pause (SteadStore  *store,
                        gint64       person_id,
                        gint64       now,
                        GError     **error)
{
  static const char sql[] = "UPDATE work_timer SET paused_at = ?2, break_minutes = ?3 WHERE person_id = ?1";
  g_autoptr(SteadWorkTimer) timer = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  double breaks;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  timer = read_timer (store, person_id, error);
  if (timer == NULL || (stmt = stead_store_prepare (store, sql, error)) == NULL)
    return FALSE;
  breaks = timer->break_minutes;
  sqlite3_bind_int64 (stmt, 1, person_id);
  if (timer->paused_at == G_MININT64)
    sqlite3_bind_int64 (stmt, 2, MAX (now, timer->started_at));
  else
    breaks += MAX (0.0, (double) (now - timer->paused_at) / 60);
  sqlite3_bind_double (stmt, 3, MIN (breaks, 1440.0));
  return stead_store_run (store, stmt, error);
}

gboolean
stead_work_timer_drop (SteadStore  *store,
                       gint64       person_id,
                       GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, "DELETE FROM work_timer WHERE person_id = ?1", person_id, error);
}

/* Less than half a minute is a slip: it counts as one. */
gboolean
stead_work_timer_stop (SteadStore  *store,
                       gint64       person_id,
                       SteadDay     day,
                       gint64       now,
                       GError     **error)
{
  g_autoptr(SteadWorkTimer) timer = NULL;
  SteadWorkSpan span = { .person_id = person_id, .day = day };
  gint64 end;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  timer = read_timer (store, person_id, error);
  if (timer == NULL)
    return FALSE;
  end = timer->paused_at != G_MININT64 ? timer->paused_at : now;
  span.minutes = MAX (1.0, round (stead_work_timer_minutes (timer, now)));
  if (span.minutes > STEAD_HOURS_MOST_MIN)
    return stead_repo_refuse (error, _("This timer has run for more than 16 hours: somebody forgot to stop it. Drop it, "
                                       "and enter the hours by hand."));
  span.from_at = timer->started_at;
  span.to_at = MAX (end, timer->started_at + 60);
  span.break_minutes = round (timer->break_minutes);
  /* Rounding to minutes must not make the work longer than its time. */
  span.minutes = MAX (1.0, MIN (span.minutes, floor ((double) (span.to_at - span.from_at) / 60 - span.break_minutes)));
  span.duty = timer->duty;
  return stead_work_repo_enter (store, &span, NULL, error) && stead_work_timer_drop (store, person_id, error);
}

/* --- drafts ----------------------------------------------------------------- */

static gpointer
draft_from_row (SteadStmt *stmt)
{
  SteadWorkDraft *draft = g_new0 (SteadWorkDraft, 1);

  draft->kind = (SteadDraftKind) sqlite3_column_int (stmt, 0);
  draft->person_id = sqlite3_column_int64 (stmt, 1);
  draft->day = stead_stmt_day (stmt, 2);
  draft->known_by = stead_stmt_text (stmt, 3);
  draft->batch_id = sqlite3_column_int64 (stmt, 4);
  draft->sale_id = sqlite3_column_int64 (stmt, 5);
  draft->minutes = sqlite3_column_double (stmt, 6) > 0 ? sqlite3_column_double (stmt, 6) : NAN;
  draft->break_minutes = sqlite3_column_double (stmt, 7);
  draft->about = stead_stmt_text (stmt, 8);
  draft->person_name = stead_stmt_text (stmt, 9);
  return draft;
}

/* A batch's log of a day is one piece of work, however often somebody wrote into it.  Not
 * offered: what was taken over, and what the person has hours for of that day and batch,
 * list or sale day.  CROSS JOIN keeps the order: batches, then their days by the index. */
#define FREE(person, known, day, link) \
  " AND NOT EXISTS (SELECT 1 FROM work_span w WHERE w.person_id = " person " AND w.known_by = " known ")" \
  " AND NOT EXISTS (SELECT 1 FROM work_span w WHERE w.person_id = " person " AND w.day = " day " AND " link ")"

#define KNOWN_LOG "'log ' || b.id || ' ' || e.day"
#define KNOWN_READINGS "'readings ' || c.id"
#define KNOWN_STALL "'stall ' || f.id"

static const char drafts_sql[] =
  "SELECT 0, p.id, e.day, " KNOWN_LOG ", b.id, NULL, b.care_minutes_day, 0.0, b.name, p.name"
  " FROM batch b CROSS JOIN batch_entry e ON e.batch_id = b.id AND e.day BETWEEN ?1 AND ?2"
  " JOIN person p ON p.id = e.person_id WHERE 1"
  FREE ("p.id", KNOWN_LOG, "e.day", "w.batch_id = b.id")
  " GROUP BY p.id, b.id, e.day"
  " UNION ALL"
  " SELECT 1, p.id, c.day, " KNOWN_READINGS ", c.batch_id, c.sale_id, 0.0, 0.0, c.name, p.name"
  " FROM checklist c CROSS JOIN check_line n ON n.list_id = c.id CROSS JOIN reading r ON r.line_id = n.id"
  " JOIN person p ON p.id = r.person_id WHERE c.day BETWEEN ?1 AND ?2"
  FREE ("p.id", KNOWN_READINGS, "c.day", "(w.batch_id = c.batch_id OR w.sale_id = c.sale_id)")
  " GROUP BY p.id, c.id"
  " UNION ALL"
  " SELECT 2, p.id, s.day, " KNOWN_STALL ", NULL, s.id, f.to_min - f.from_min - f.break_min, f.break_min * 1.0, s.name,"
  " p.name FROM sale_day s CROSS JOIN sale_shift f ON f.sale_id = s.id JOIN person p ON p.id = f.person_id"
  " WHERE s.day BETWEEN ?1 AND ?2 AND s.closed_at IS NULL"
  FREE ("p.id", KNOWN_STALL, "s.day", "w.sale_id = s.id")
  " ORDER BY 3 DESC, 10, 1, 4";

GPtrArray *
stead_work_repo_drafts (SteadStore  *store,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, drafts_sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  return stead_repo_rows (store, stmt, draft_from_row, (GDestroyNotify) stead_work_draft_free, error);
}

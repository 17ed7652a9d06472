/* stead-kitchen-log.c - what was done, by whom, and what the instruments showed. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-kitchen-private.h"

#define DAY_S 86400

void
stead_batch_person_free (SteadBatchPerson *person)
{
  if (person == NULL)
    return;
  g_free (person->name);
  g_free (person);
}

static void
bind_time (SteadStmt *stmt,
           int        at,
           gint64     time)
{
  if (time == STEAD_TIME_NONE)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int64 (stmt, at, time);
}

/* The clock of another place may be most of a day ahead of UTC. */
static gboolean
check_time (SteadStore  *store,
            gint64       at,
            GError     **error)
{
  if (at != STEAD_TIME_NONE && at / DAY_S > stead_store_get_today (store) + 1)
    return stead_repo_refuse (error, _("That time is still to come. Check the clock."));
  return TRUE;
}

/* --- steps --------------------------------------------------------------------- */

typedef struct
{
  SteadBatch *batch;
  gint64      started_at;
  gint64      done_at;
} OpenStep;

static void
open_step_clear (OpenStep *step)
{
  g_clear_pointer (&step->batch, stead_batch_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (OpenStep, open_step_clear)

static gboolean
open_step (SteadStore  *store,
           gint64       step_id,
           OpenStep    *out,
           GError     **error)
{
  static const char sql[] = "SELECT batch_id, started_at, done_at FROM kitchen_step WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, step_id);
  found = stead_store_step (store, stmt, error);
  if (found != 1)
    return found < 0 ? FALSE : stead_repo_missing (error);
  out->started_at = sqlite3_column_type (stmt, 1) == SQLITE_NULL ? STEAD_TIME_NONE : sqlite3_column_int64 (stmt, 1);
  out->done_at = sqlite3_column_type (stmt, 2) == SQLITE_NULL ? STEAD_TIME_NONE : sqlite3_column_int64 (stmt, 2);
  out->batch = stead_kitchen_open_batch (store, sqlite3_column_int64 (stmt, 0), error);
  return out->batch != NULL;
}

static gboolean
write_step (SteadStore      *store,
            gint64           step_id,
            const OpenStep  *step,
            gint64           person_id,
            GError         **error)
{
  static const char sql[] = "UPDATE kitchen_step SET started_at = ?2, done_at = ?3, person_id = ?4 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  if (step->started_at != STEAD_TIME_NONE && step->done_at != STEAD_TIME_NONE && step->done_at < step->started_at)
    return stead_repo_refuse (error, _("A step cannot be done before it began. Check the two times."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, step_id);
  bind_time (stmt, 2, step->started_at);
  bind_time (stmt, 3, step->done_at);
  stead_stmt_bind_id (stmt, 4, person_id);
  return stead_store_run (store, stmt, error);
}

/* What was planned for later has begun: the batch goes by what was done. */
static gboolean
begin_now (SteadStore  *store,
           OpenStep    *step,
           GError     **error)
{
  return stead_kitchen_begin_by (store, step->batch, stead_store_get_today (store), error);
}

gboolean
stead_kitchen_repo_step_start (SteadStore  *store,
                               gint64       step_id,
                               gint64       at,
                               gint64       person_id,
                               GError     **error)
{
  g_auto(OpenStep) step = { NULL };

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_time (store, at, error) || !open_step (store, step_id, &step, error))
    return FALSE;
  step.started_at = at;
  if (at == STEAD_TIME_NONE)
    step.done_at = STEAD_TIME_NONE;
  return write_step (store, step_id, &step, person_id, error) &&
         (at == STEAD_TIME_NONE || begin_now (store, &step, error));
}

static gboolean
write_note (SteadStore  *store,
            gint64       step_id,
            const char  *note,
            GError     **error)
{
  static const char sql[] = "UPDATE kitchen_step SET note = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, step_id);
  stead_repo_bind_tidy (stmt, 2, note);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_kitchen_repo_step_done (SteadStore  *store,
                              gint64       step_id,
                              gint64       at,
                              gint64       person_id,
                              const char  *note,
                              GError     **error)
{
  g_auto(OpenStep) step = { NULL };

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_note (note, error) || !check_time (store, at, error) ||
      !open_step (store, step_id, &step, error))
    return FALSE;
  step.done_at = at;
  if (step.started_at == STEAD_TIME_NONE)
    step.started_at = at;
  return write_step (store, step_id, &step, person_id, error) &&
         write_note (store, step_id, note, error) &&
         (at == STEAD_TIME_NONE || begin_now (store, &step, error));
}

/* --- readings --------------------------------------------------------------------- */

GPtrArray *
stead_kitchen_repo_readings (SteadStore  *store,
                             gint64       batch_id,
                             GError     **error)
{
  return stead_shown_repo_of_batch (store, batch_id, error);
}

gboolean
stead_kitchen_repo_add_reading (SteadStore  *store,
                                SteadShown  *shown,
                                GError     **error)
{
  return stead_shown_repo_add (store, shown, error);
}

/* --- people ------------------------------------------------------------------------- */

static gpointer
person_from_row (SteadStmt *stmt)
{
  SteadBatchPerson *person = g_new0 (SteadBatchPerson, 1);

  person->person_id = sqlite3_column_int64 (stmt, 0);
  person->name = stead_stmt_text (stmt, 1);
  person->minutes = sqlite3_column_double (stmt, 2);
  return person;
}

GPtrArray *
stead_kitchen_repo_people (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  static const char sql[] = "SELECT p.id, p.name, b.minutes FROM batch_person b JOIN person p ON p.id = b.person_id"
                            " WHERE b.batch_id = ?1 ORDER BY p.name, p.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, batch_id, person_from_row, (GDestroyNotify) stead_batch_person_free,
                             error);
}

gboolean
stead_kitchen_repo_set_person (SteadStore  *store,
                               gint64       batch_id,
                               gint64       person_id,
                               double       minutes,
                               GError     **error)
{
  static const char sql[] = "INSERT INTO batch_person (batch_id, person_id, minutes) VALUES (?1, ?2, ?3)"
                            " ON CONFLICT (batch_id, person_id) DO UPDATE SET minutes = excluded.minutes";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && person_id != 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!(minutes >= 0 && minutes <= 14400))
    return stead_repo_refuse (error, _("The minutes of work must lie between 0 and 14,400. Check the number."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, person_id);
  sqlite3_bind_double (stmt, 3, minutes);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_kitchen_repo_drop_person (SteadStore  *store,
                                gint64       batch_id,
                                gint64       person_id,
                                GError     **error)
{
  static const char sql[] = "DELETE FROM batch_person WHERE batch_id = ?1 AND person_id = ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, person_id);
  return stead_store_run (store, stmt, error);
}

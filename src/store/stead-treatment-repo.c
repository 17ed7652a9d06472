/* stead-treatment-repo.c - medicines that a veterinarian ordered, and how long what
 * comes from the batch has to wait.
 *
 * The wait goes along with fish that move to another group.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-batch-private.h"

/* Longest course and longest wait that are believed, in days. */
#define SPAN_MAX 3660

void
stead_treatment_free (SteadTreatment *treatment)
{
  if (treatment == NULL)
    return;
  g_free (treatment->what);
  g_free (treatment->dose);
  g_free (treatment->ordered_by);
  g_free (treatment->note);
  g_free (treatment);
}

static gpointer
treatment_from_row (SteadStmt *stmt)
{
  SteadTreatment *treatment = g_new0 (SteadTreatment, 1);

  treatment->id = sqlite3_column_int64 (stmt, 0);
  treatment->batch_id = sqlite3_column_int64 (stmt, 1);
  treatment->day = stead_stmt_day (stmt, 2);
  treatment->last_day = stead_stmt_day (stmt, 3);
  treatment->wait_until = stead_stmt_day (stmt, 4);
  treatment->what = stead_stmt_text (stmt, 5);
  treatment->dose = stead_stmt_text (stmt, 6);
  treatment->ordered_by = stead_stmt_text (stmt, 7);
  treatment->note = stead_stmt_text (stmt, 8);
  treatment->person_id = sqlite3_column_int64 (stmt, 9);
  return treatment;
}

/* Returns: (transfer full) (element-type SteadTreatment) */
GPtrArray *
stead_treatment_repo_list (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  static const char sql[] = "SELECT id, batch_id, day, last_day, wait_until, what, dose, ordered_by, note, person_id"
                            " FROM treatment WHERE batch_id = ?1 ORDER BY day DESC, id DESC";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, batch_id, treatment_from_row, (GDestroyNotify) stead_treatment_free,
                             error);
}

/* Fish that came from a treated group wait as that group does; a path of moves goes
 * back in time, so it ends. */
SteadDay
stead_treatment_repo_wait (SteadStore  *store,
                           gint64       batch_id,
                           SteadDay     day,
                           GError     **error)
{
  static const char sql[] =
    "WITH RECURSIVE source (id, upto) AS (SELECT ?1, ?2"
    " UNION SELECT m.from_id, m.day FROM source s JOIN fish_move m ON m.to_id = s.id AND m.day <= s.upto)"
    " SELECT max (t.wait_until) FROM source s JOIN treatment t ON t.batch_id = s.id"
    " WHERE t.day <= s.upto AND t.wait_until >= ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), STEAD_DAY_NONE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return STEAD_DAY_NONE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  stead_stmt_bind_day (stmt, 2, day);
  return stead_store_step (store, stmt, error) == 1 ? stead_stmt_day (stmt, 0) : STEAD_DAY_NONE;
}

/* --- saving ------------------------------------------------------------------- */

static gboolean
check_days (SteadStore            *store,
            const SteadBatch      *batch,
            const SteadTreatment  *treatment,
            GError               **error)
{
  if (treatment->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (treatment->day < batch->started_on)
    return stead_repo_refuse (error, _("The treatment cannot be from before “%s” began. Check the day."), batch->name);
  if (treatment->day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The first day of the treatment is still to come. Enter it when it is here."));
  if (treatment->last_day < treatment->day || treatment->last_day - treatment->day > SPAN_MAX)
    return stead_repo_refuse (error, _("The last day of the treatment cannot be before the first. Check the two days."));
  if (treatment->wait_until < treatment->last_day || treatment->wait_until - treatment->last_day > SPAN_MAX)
    return stead_repo_refuse (error, _("Enter until when to wait, as the veterinarian ordered it: "
                                       "the last day of the treatment or later."));
  return TRUE;
}

static gboolean
treatment_check (SteadStore            *store,
                 const SteadBatch      *batch,
                 const SteadTreatment  *treatment,
                 GError               **error)
{
  g_autofree char *what = stead_repo_tidy (treatment->what);
  g_autofree char *ordered_by = stead_repo_tidy (treatment->ordered_by);

  if (what == NULL)
    return stead_repo_refuse (error, _("Enter what was given."));
  if (ordered_by == NULL)
    return stead_repo_refuse (error, _("Enter the veterinarian who ordered it. Give no medicine without one."));
  return stead_repo_check_name (what, error) &&
         stead_repo_check_name (ordered_by, error) &&
         stead_repo_check_note (treatment->dose, error) &&
         stead_repo_check_note (treatment->note, error) &&
         check_days (store, batch, treatment, error);
}

static gboolean
write_treatment (SteadStore      *store,
                 SteadTreatment  *treatment,
                 GError         **error)
{
  static const char insert_sql[] = "INSERT INTO treatment (batch_id, day, last_day, wait_until, what, dose,"
                                   " ordered_by, note, person_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)";
  static const char update_sql[] = "UPDATE treatment SET batch_id = ?1, day = ?2, last_day = ?3, wait_until = ?4,"
                                   " what = ?5, dose = ?6, ordered_by = ?7, note = ?8, person_id = ?9 WHERE id = ?10";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, treatment->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, treatment->batch_id);
  stead_stmt_bind_day (stmt, 2, treatment->day);
  stead_stmt_bind_day (stmt, 3, treatment->last_day);
  stead_stmt_bind_day (stmt, 4, treatment->wait_until);
  stead_repo_bind_tidy (stmt, 5, treatment->what);
  stead_repo_bind_tidy (stmt, 6, treatment->dose);
  stead_repo_bind_tidy (stmt, 7, treatment->ordered_by);
  stead_repo_bind_tidy (stmt, 8, treatment->note);
  stead_stmt_bind_id (stmt, 9, treatment->person_id);
  if (treatment->id != 0)
    sqlite3_bind_int64 (stmt, 10, treatment->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (treatment->id == 0)
    treatment->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_treatment_repo_save (SteadStore      *store,
                           SteadTreatment  *treatment,
                           GError         **error)
{
  g_autoptr(SteadBatch) batch = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && treatment != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  batch = stead_batch_repo_get (store, treatment->batch_id, error);
  return batch != NULL &&
         treatment_check (store, batch, treatment, error) &&
         write_treatment (store, treatment, error);
}

gboolean
stead_treatment_repo_delete (SteadStore  *store,
                             gint64       id,
                             GError     **error)
{
  static const char sql[] = "DELETE FROM treatment WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_run_id (store, sql, id, error);
}

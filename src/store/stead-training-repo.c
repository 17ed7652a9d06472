/* stead-training-repo.c - who was shown how to use a tool, and until when that holds. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-people-private.h"

void
stead_training_free (SteadTraining *training)
{
  if (training == NULL)
    return;
  g_free (training->subject);
  g_free (training->note);
  g_free (training->person_name);
  g_free (training->given_by_name);
  g_free (training);
}

static gpointer
training_from_row (SteadStmt *stmt)
{
  SteadTraining *training = g_new0 (SteadTraining, 1);

  training->id = sqlite3_column_int64 (stmt, 0);
  training->person_id = sqlite3_column_int64 (stmt, 1);
  training->subject = stead_stmt_text (stmt, 2);
  training->given_on = stead_stmt_day (stmt, 3);
  training->until_on = stead_stmt_day (stmt, 4);
  training->given_by = sqlite3_column_int64 (stmt, 5);
  training->note = stead_stmt_text (stmt, 6);
  training->person_name = stead_stmt_text (stmt, 7);
  training->given_by_name = stead_stmt_text (stmt, 8);
  return training;
}

#define TRAININGS \
  "SELECT t.id, t.person_id, t.subject, t.given_on, t.until_on, t.given_by, t.note, p.name, g.name" \
  " FROM training t JOIN person p ON p.id = t.person_id LEFT JOIN person g ON g.id = t.given_by"

GPtrArray *
stead_training_repo_list (SteadStore  *store,
                          gint64       person_id,
                          GError     **error)
{
  static const char all_sql[] = TRAININGS " ORDER BY p.name, t.subject, t.given_on, t.id";
  static const char one_sql[] = TRAININGS " WHERE t.person_id = ?1 ORDER BY t.subject, t.given_on, t.id";

  return stead_people_list (store, person_id == 0 ? all_sql : one_sql, person_id, training_from_row,
                  (GDestroyNotify) stead_training_free, error);
}

gboolean
stead_training_repo_save (SteadStore     *store,
                          SteadTraining  *training,
                          GError        **error)
{
  static const char insert_sql[] = "INSERT INTO training (person_id, subject, given_on, until_on, given_by, note)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] = "UPDATE training SET person_id = ?1, subject = ?2, given_on = ?3, until_on = ?4,"
                                   " given_by = ?5, note = ?6 WHERE id = ?7";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && training != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (training->person_id == 0)
    return stead_repo_refuse (error, _("Choose who was trained."));
  if (!stead_repo_check_name (training->subject, error) || !stead_repo_check_note (training->note, error))
    return FALSE;
  if (!stead_day_is_valid (training->given_on) || training->given_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("A training is entered once it was given: a day up to today."));
  if (training->until_on != STEAD_DAY_NONE && training->until_on < training->given_on)
    return stead_repo_refuse (error, _("A training ends on or after the day on which it was given."));
  stmt = stead_store_prepare (store, training->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, training->person_id);
  stead_repo_bind_tidy (stmt, 2, training->subject);
  stead_stmt_bind_day (stmt, 3, training->given_on);
  stead_stmt_bind_day (stmt, 4, training->until_on);
  stead_stmt_bind_id (stmt, 5, training->given_by);
  stead_repo_bind_tidy (stmt, 6, training->note);
  return stead_repo_save_row (store, stmt, &training->id, error);
}

gboolean
stead_training_repo_remove (SteadStore  *store,
                            gint64       id,
                            GError     **error)
{
  return stead_people_remove (store, "DELETE FROM training WHERE id = ?1", id, error);
}

gboolean
stead_training_holds (const GPtrArray *trainings,
                      gint64           person_id,
                      const char      *subject,
                      SteadDay         day)
{
  g_autofree char *wanted = NULL;

  g_return_val_if_fail (trainings != NULL && subject != NULL, FALSE);
  wanted = g_utf8_casefold (subject, -1);
  for (guint i = 0; i < trainings->len; i++)
    {
      const SteadTraining *training = trainings->pdata[i];
      g_autofree char *given = g_utf8_casefold (training->subject, -1);

      if (training->person_id == person_id && g_str_equal (given, wanted) && training->given_on <= day &&
          (training->until_on == STEAD_DAY_NONE || training->until_on >= day))
        return TRUE;
    }
  return FALSE;
}

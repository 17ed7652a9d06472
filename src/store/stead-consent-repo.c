/* stead-consent-repo.c - what may be shown of whom. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-people-private.h"

static const char * const consent_words[] = { "name", "picture", "work", NULL };

void
stead_consent_free (SteadConsent *consent)
{
  if (consent == NULL)
    return;
  g_free (consent->note);
  g_free (consent);
}

static gpointer
consent_from_row (SteadStmt *stmt)
{
  SteadConsent *consent = g_new0 (SteadConsent, 1);

  consent->id = sqlite3_column_int64 (stmt, 0);
  consent->person_id = sqlite3_column_int64 (stmt, 1);
  consent->what = (SteadConsentWhat) stead_repo_word (stmt, 2, consent_words);
  consent->given_on = stead_stmt_day (stmt, 3);
  consent->ended_on = stead_stmt_day (stmt, 4);
  consent->note = stead_stmt_text (stmt, 5);
  return consent;
}

GPtrArray *
stead_consent_repo_list (SteadStore  *store,
                         gint64       person_id,
                         GError     **error)
{
  static const char all_sql[] = "SELECT id, person_id, what, given_on, ended_on, note FROM consent"
                                " ORDER BY person_id, what, given_on, id";
  static const char one_sql[] = "SELECT id, person_id, what, given_on, ended_on, note FROM consent"
                                " WHERE person_id = ?1 ORDER BY what, given_on, id";

  return stead_people_list (store, person_id == 0 ? all_sql : one_sql, person_id, consent_from_row,
                  (GDestroyNotify) stead_consent_free, error);
}

gboolean
stead_consent_repo_save (SteadStore    *store,
                         SteadConsent  *consent,
                         GError       **error)
{
  static const char insert_sql[] = "INSERT INTO consent (person_id, what, given_on, ended_on, note)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5)";
  static const char update_sql[] = "UPDATE consent SET person_id = ?1, what = ?2, given_on = ?3, ended_on = ?4,"
                                   " note = ?5 WHERE id = ?6";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && consent != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_day_is_valid (consent->given_on) || consent->given_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("A consent is entered once the paper is signed: a day up to today."));
  if (consent->ended_on != STEAD_DAY_NONE && consent->ended_on < consent->given_on)
    return stead_repo_refuse (error, _("A consent ends on or after the day on which it was given."));
  if (!stead_repo_check_note (consent->note, error))
    return FALSE;
  stmt = stead_store_prepare (store, consent->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, consent->person_id);
  stead_stmt_bind_text (stmt, 2, consent_words[consent->what]);
  stead_stmt_bind_day (stmt, 3, consent->given_on);
  stead_stmt_bind_day (stmt, 4, consent->ended_on);
  stead_repo_bind_tidy (stmt, 5, consent->note);
  return stead_repo_save_row (store, stmt, &consent->id, error);
}

gboolean
stead_consent_holds (const GPtrArray  *consents,
                     gint64            person_id,
                     SteadConsentWhat  what,
                     SteadDay          day)
{
  g_return_val_if_fail (consents != NULL, FALSE);
  for (guint i = 0; i < consents->len; i++)
    {
      const SteadConsent *consent = consents->pdata[i];

      if (consent->person_id == person_id && consent->what == what && consent->given_on <= day &&
          (consent->ended_on == STEAD_DAY_NONE || consent->ended_on > day))
        return TRUE;
    }
  return FALSE;
}

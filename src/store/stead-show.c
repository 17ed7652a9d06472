/* stead-show.c - what the repositories of learning and showing share. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-show-private.h"

gboolean
stead_show_check_words (const char  *text,
                        glong        most,
                        const char  *empty,
                        GError     **error)
{
  g_autofree char *tidy = stead_repo_tidy (text);

  if (tidy == NULL)
    return stead_repo_refuse (error, "%s", empty);
  if (g_utf8_strlen (tidy, -1) > most)
    return stead_repo_refuse (error, _("That is too long. Write at most %ld letters."), most);
  return stead_repo_check_note (tidy, error);
}

gboolean
stead_show_check_past (SteadStore  *store,
                       SteadDay     day,
                       GError     **error)
{
  if (!stead_day_is_valid (day))
    return stead_repo_refuse (error, _("Enter the day."));
  if (day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("That day is still to come. Enter a day up to today."));
  return TRUE;
}

gboolean
stead_show_check_person (SteadStore  *store,
                         gint64       person_id,
                         GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM person WHERE id = ?1";
  gint64 n;

  if (person_id == 0)
    return stead_repo_refuse (error, _("Choose a person."));
  n = stead_repo_count_id (store, sql, person_id, error);
  return n > 0 || (n == 0 && stead_repo_missing (error));
}

gboolean
stead_show_delete (SteadStore  *store,
                   const char  *sql,
                   gint64       id,
                   GError     **error)
{
  if (!stead_repo_run_id (store, sql, id, error))
    return FALSE;
  return sqlite3_changes (stead_store_get_db (store)) > 0 || stead_repo_missing (error);
}

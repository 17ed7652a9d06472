/* stead-event-repo.c - events that students prepare for. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-event-repo.h"
#include "store/stead-show-private.h"

static const char * const need_words[] = { "section", "own", "material", NULL };

/* More points than any sheet of a judge has. */
#define MOST_POINTS 100000

void
stead_event_free (SteadEvent *event)
{
  if (event == NULL)
    return;
  g_free (event->name);
  g_free (event->kind);
  g_free (event->place);
  g_free (event->result);
  g_free (event->learned);
  g_free (event);
}

void
stead_event_person_free (SteadEventPerson *person)
{
  if (person == NULL)
    return;
  g_free (person->name);
  g_free (person->role);
  g_free (person);
}

void
stead_event_need_free (SteadEventNeed *need)
{
  if (need == NULL)
    return;
  g_free (need->words);
  g_free (need->text);
  g_free (need);
}

void
stead_event_score_free (SteadEventScore *score)
{
  if (score == NULL)
    return;
  g_free (score->person_name);
  g_free (score->part);
  g_free (score->note);
  g_free (score);
}

/* --- events --------------------------------------------------------------------- */

#define EVENT_COLUMNS "id, name, kind, day, place, result, learned"

static gpointer
event_from_row (SteadStmt *stmt)
{
  SteadEvent *event = g_new0 (SteadEvent, 1);

  event->id = sqlite3_column_int64 (stmt, 0);
  event->name = stead_stmt_text (stmt, 1);
  event->kind = stead_stmt_text (stmt, 2);
  event->day = stead_stmt_day (stmt, 3);
  event->place = stead_stmt_text (stmt, 4);
  event->result = stead_stmt_text (stmt, 5);
  event->learned = stead_stmt_text (stmt, 6);
  return event;
}

GPtrArray *
stead_event_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = "SELECT " EVENT_COLUMNS " FROM event ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt == NULL ? NULL
         : stead_repo_rows (store, stmt, event_from_row, (GDestroyNotify) stead_event_free, error);
}

SteadEvent *
stead_event_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "SELECT " EVENT_COLUMNS " FROM event WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, event_from_row, error);
}

static gboolean
check_event (SteadStore        *store,
             const SteadEvent  *event,
             GError           **error)
{
  if (!stead_day_is_valid (event->day))
    return stead_repo_refuse (error, _("Enter the day of the event."));
  return stead_repo_check_name (event->name, error) &&
         stead_show_check_words (event->kind, STEAD_NAME_MAX, _("Choose what kind of event it is."), error) &&
         stead_repo_check_note (event->place, error) &&
         stead_repo_check_note (event->result, error) &&
         stead_repo_check_note (event->learned, error);
}

gboolean
stead_event_repo_save (SteadStore  *store,
                       SteadEvent  *event,
                       GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO event (name, kind, day, place, result, learned) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] =
    "UPDATE event SET name = ?1, kind = ?2, day = ?3, place = ?4, result = ?5, learned = ?6 WHERE id = ?7";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && event != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_event (store, event, error))
    return FALSE;
  stmt = stead_store_prepare (store, event->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, event->name);
  stead_repo_bind_tidy (stmt, 2, event->kind);
  stead_stmt_bind_day (stmt, 3, event->day);
  stead_repo_bind_tidy (stmt, 4, event->place);
  stead_repo_bind_tidy (stmt, 5, event->result);
  stead_repo_bind_tidy (stmt, 6, event->learned);
  return stead_repo_save_row (store, stmt, &event->id, error);
}

gboolean
stead_event_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char used_sql[] =
    "SELECT (SELECT count (*) FROM work_span WHERE event_id = ?1) + (SELECT count (*) FROM shot WHERE event_id = ?1)"
    " + (SELECT count (*) FROM reflection WHERE event_id = ?1)";
  static const char sql[] = "DELETE FROM event WHERE id = ?1";
  gint64 used;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  used = stead_repo_count_id (store, used_sql, id, error);
  if (used < 0)
    return FALSE;
  if (used > 0)
    return stead_repo_refuse (error, _("Hours, pictures or thoughts belong to this event. Change them first, or leave "
                                       "the event as it is."));
  return stead_show_delete (store, sql, id, error);
}

/* --- the team --------------------------------------------------------------------- */

static gpointer
person_from_row (SteadStmt *stmt)
{
  SteadEventPerson *person = g_new0 (SteadEventPerson, 1);

  person->person_id = sqlite3_column_int64 (stmt, 0);
  person->name = stead_stmt_text (stmt, 1);
  person->role = stead_stmt_text (stmt, 2);
  return person;
}

GPtrArray *
stead_event_repo_team (SteadStore  *store,
                       gint64       event_id,
                       GError     **error)
{
  static const char sql[] = "SELECT t.person_id, p.name, t.role FROM event_person t JOIN person p ON p.id = t.person_id"
                            " WHERE t.event_id = ?1 ORDER BY p.name, p.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, event_id, person_from_row, (GDestroyNotify) stead_event_person_free,
                             error);
}

gboolean
stead_event_repo_join (SteadStore  *store,
                       gint64       event_id,
                       gint64       person_id,
                       const char  *role,
                       GError     **error)
{
  static const char sql[] =
    "INSERT INTO event_person (event_id, person_id, role) VALUES (?1, ?2, ?3)"
    " ON CONFLICT (event_id, person_id) DO UPDATE SET role = excluded.role";
  g_autoptr(SteadEvent) event = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  event = stead_event_repo_get (store, event_id, error);
  if (event == NULL || !stead_show_check_person (store, person_id, error) || !stead_repo_check_note (role, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, event_id);
  sqlite3_bind_int64 (stmt, 2, person_id);
  stead_repo_bind_tidy (stmt, 3, role);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_event_repo_leave (SteadStore  *store,
                        gint64       event_id,
                        gint64       person_id,
                        GError     **error)
{
  static const char sql[] = "DELETE FROM event_person WHERE event_id = ?1 AND person_id = ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, event_id);
  sqlite3_bind_int64 (stmt, 2, person_id);
  return stead_store_run (store, stmt, error);
}

/* --- what the packet needs ---------------------------------------------------------- */

static gpointer
need_from_row (SteadStmt *stmt)
{
  SteadEventNeed *need = g_new0 (SteadEventNeed, 1);

  need->id = sqlite3_column_int64 (stmt, 0);
  need->event_id = sqlite3_column_int64 (stmt, 1);
  need->position = sqlite3_column_int (stmt, 2);
  need->what = (SteadNeedKind) stead_repo_word (stmt, 3, need_words);
  need->words = stead_stmt_text (stmt, 4);
  need->text = stead_stmt_text (stmt, 5);
  need->done_on = stead_stmt_day (stmt, 6);
  return need;
}

GPtrArray *
stead_event_repo_needs (SteadStore  *store,
                        gint64       event_id,
                        GError     **error)
{
  static const char sql[] = "SELECT id, event_id, position, what, words, text, done_on FROM event_need"
                            " WHERE event_id = ?1 ORDER BY position";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, event_id, need_from_row, (GDestroyNotify) stead_event_need_free,
                             error);
}

static gboolean
check_need (SteadStore            *store,
            const SteadEventNeed  *need,
            GError               **error)
{
  if (need->done_on != STEAD_DAY_NONE && !stead_show_check_past (store, need->done_on, error))
    return FALSE;
  return stead_show_check_words (need->words, STEAD_NAME_MAX, _("Write what the packet needs."), error) &&
         stead_repo_check_note (need->text, error);
}

gboolean
stead_event_repo_save_need (SteadStore      *store,
                            SteadEventNeed  *need,
                            GError         **error)
{
  static const char last_sql[] = "SELECT coalesce (max (position), 0) FROM event_need WHERE event_id = ?1";
  static const char insert_sql[] =
    "INSERT INTO event_need (event_id, position, what, words, text, done_on) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] =
    "UPDATE event_need SET event_id = ?1, position = ?2, what = ?3, words = ?4, text = ?5, done_on = ?6 WHERE id = ?7";
  g_autoptr(SteadEvent) event = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && need != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  event = stead_event_repo_get (store, need->event_id, error);
  if (event == NULL || !check_need (store, need, error))
    return FALSE;
  if (need->id == 0)
    {
      gint64 last = stead_repo_count_id (store, last_sql, need->event_id, error);

      if (last < 0)
        return FALSE;
      need->position = (int) last + 1;
    }
  stmt = stead_store_prepare (store, need->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, need->event_id);
  sqlite3_bind_int (stmt, 2, need->position);
  stead_stmt_bind_text (stmt, 3, need_words[need->what]);
  stead_repo_bind_tidy (stmt, 4, need->words);
  stead_repo_bind_tidy (stmt, 5, need->text);
  stead_stmt_bind_day (stmt, 6, need->done_on);
  return stead_repo_save_row (store, stmt, &need->id, error);
}

gboolean
stead_event_repo_drop_need (SteadStore  *store,
                            gint64       need_id,
                            GError     **error)
{
  static const char sql[] = "DELETE FROM event_need WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, need_id, error);
}

/* --- scores ------------------------------------------------------------------------- */

static gpointer
score_from_row (SteadStmt *stmt)
{
  SteadEventScore *score = g_new0 (SteadEventScore, 1);

  score->id = sqlite3_column_int64 (stmt, 0);
  score->event_id = sqlite3_column_int64 (stmt, 1);
  score->person_id = sqlite3_column_int64 (stmt, 2);
  score->person_name = stead_stmt_text (stmt, 3);
  score->day = stead_stmt_day (stmt, 4);
  score->part = stead_stmt_text (stmt, 5);
  score->score = sqlite3_column_double (stmt, 6);
  score->out_of = sqlite3_column_double (stmt, 7);
  score->is_final = sqlite3_column_int (stmt, 8) != 0;
  score->note = stead_stmt_text (stmt, 9);
  return score;
}

GPtrArray *
stead_event_repo_scores (SteadStore  *store,
                         gint64       event_id,
                         GError     **error)
{
  static const char sql[] =
    "SELECT s.id, s.event_id, s.person_id, p.name, s.day, s.part, s.score, s.out_of, s.is_final, s.note"
    " FROM event_score s LEFT JOIN person p ON p.id = s.person_id WHERE s.event_id = ?1 ORDER BY s.day, s.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, event_id, score_from_row, (GDestroyNotify) stead_event_score_free,
                             error);
}

static gboolean
check_score (SteadStore             *store,
             const SteadEventScore  *score,
             GError                **error)
{
  if (!stead_show_check_past (store, score->day, error))
    return FALSE;
  if (!(score->out_of > 0 && score->out_of <= MOST_POINTS))
    return stead_repo_refuse (error, _("Enter how many points there are to win: more than 0."));
  if (!(score->score >= 0 && score->score <= score->out_of))
    return stead_repo_refuse (error, _("The score lies between 0 and the points that there are to win."));
  return stead_repo_check_note (score->part, error) && stead_repo_check_note (score->note, error) &&
         (score->person_id == 0 || stead_show_check_person (store, score->person_id, error));
}

gboolean
stead_event_repo_save_score (SteadStore       *store,
                             SteadEventScore  *score,
                             GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO event_score (event_id, person_id, day, part, score, out_of, is_final, note)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  static const char update_sql[] =
    "UPDATE event_score SET event_id = ?1, person_id = ?2, day = ?3, part = ?4, score = ?5, out_of = ?6, is_final = ?7,"
    " note = ?8 WHERE id = ?9";
  g_autoptr(SteadEvent) event = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && score != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  event = stead_event_repo_get (store, score->event_id, error);
  if (event == NULL || !check_score (store, score, error))
    return FALSE;
  stmt = stead_store_prepare (store, score->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, score->event_id);
  stead_stmt_bind_id (stmt, 2, score->person_id);
  stead_stmt_bind_day (stmt, 3, score->day);
  stead_repo_bind_tidy (stmt, 4, score->part);
  sqlite3_bind_double (stmt, 5, score->score);
  sqlite3_bind_double (stmt, 6, score->out_of);
  sqlite3_bind_int (stmt, 7, score->is_final != FALSE);
  stead_repo_bind_tidy (stmt, 8, score->note);
  return stead_repo_save_row (store, stmt, &score->id, error);
}

gboolean
stead_event_repo_drop_score (SteadStore  *store,
                             gint64       score_id,
                             GError     **error)
{
  static const char sql[] = "DELETE FROM event_score WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store) && stead_store_in_action (store), FALSE);
  return stead_show_delete (store, sql, score_id, error);
}

static gpointer
minutes_from_row (SteadStmt *stmt)
{
  double *minutes = g_new (double, 1);

  *minutes = sqlite3_column_double (stmt, 0);
  return minutes;
}

gboolean
stead_event_repo_minutes (SteadStore  *store,
                          gint64       event_id,
                          gint64       person_id,
                          double      *out_minutes,
                          GError     **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (w.minutes), 0.0) FROM work_span w WHERE w.event_id = ?1 AND (?2 IS NULL OR w.person_id = ?2)"
    " AND NOT EXISTS (SELECT 1 FROM work_span c WHERE c.corrects_id = w.id)";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autofree double *minutes = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_minutes != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, event_id);
  stead_stmt_bind_id (stmt, 2, person_id);
  minutes = stead_repo_row (store, stmt, minutes_from_row, error);
  if (minutes == NULL)
    return FALSE;
  *out_minutes = *minutes;
  return TRUE;
}

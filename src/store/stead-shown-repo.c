/* stead-shown-repo.c - writing down what instruments showed.
 *
 * Invariants:
 *  1. A reading is never changed; a right one names the wrong one, once.
 *  2. One that was typed in later, from paper, keeps the time of both.
 *  3. A reading of a step of a run sheet counts for the line of a checklist that
 *     names the step, whichever way it came in.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

#define DAY_S 86400

/* --- what it belongs to ------------------------------------------------------------------ */

/* A reading on a run sheet counts for the line that names the step, unless that list is signed. */
static gboolean
find_line (SteadStore  *store,
           SteadShown  *shown,
           GError     **error)
{
  static const char sql[] =
    "SELECT c.id FROM check_line c JOIN checklist l ON l.id = c.list_id"
    " WHERE c.step_id = ?1 AND c.measure = ?2 AND l.seal IS NULL ORDER BY l.id DESC, c.position LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;

  if (shown->line_id != 0 || shown->step_id == 0)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, shown->step_id);
  stead_stmt_bind_text (stmt, 2, shown->kind);
  return stead_repo_number (store, stmt, 0, &shown->line_id, error);
}

static gboolean
check_list_takes (SteadStore            *store,
                  const SteadCheckList  *list,
                  const SteadShown      *shown,
                  GError               **error)
{
  g_autofree char *day = NULL;

  if (list->signed_at != STEAD_TIME_NONE && shown->corrects_id == 0)
    {
      g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED,
                   _("“%s” is signed. No reading is added any more; a wrong one is corrected by a new one beside it."),
                   list->name);
      return FALSE;
    }
  if (stead_time_day (shown->at) >= list->day)
    return TRUE;
  day = stead_day_format (list->day, STEAD_DAY_STYLE_LONG);
  return stead_repo_refuse (error, _("“%s” is for %s. A reading cannot be from before that. Check the time."),
                            list->name, day);
}

static gboolean
check_pot (SteadStore        *store,
           const SteadShown  *shown,
           GError           **error)
{
  static const char line_sql[] = "SELECT line_id FROM check_pot WHERE id = ?1";
  static const char same_sql[] = "SELECT count (*) FROM reading r WHERE r.pot_id = ?1 AND r.at = ?2 AND NOT EXISTS"
                                 " (SELECT 1 FROM reading c WHERE c.corrects_id = r.id)";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 line_id, n;

  if (shown->pot_id == 0)
    return TRUE;
  line_id = stead_repo_count_id (store, line_sql, shown->pot_id, error);
  if (line_id != shown->line_id)
    return line_id >= 0 && stead_repo_missing (error);
  if (shown->corrects_id != 0)
    return TRUE;
  stmt = stead_store_prepare (store, same_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, shown->pot_id);
  sqlite3_bind_int64 (stmt, 2, shown->at);
  if (!stead_repo_number (store, stmt, 0, &n, error))
    return FALSE;
  if (n > 0)
    return stead_repo_refuse (error, _("This pot has a reading of that minute. Check the clock, or correct the one "
                                       "that is there."));
  return TRUE;
}

/* Fills in what follows from the line. */
static gboolean
fill_in (SteadStore           *store,
         SteadShown           *shown,
         const SteadListLine  *line,
         const SteadCheckList *list)
{
  if (shown->kind == NULL)
    shown->kind = g_strdup (line->measure);
  if (shown->step_id == 0)
    shown->step_id = line->step_id;
  if (shown->batch_id == 0)
    shown->batch_id = list->batch_id;
  if (shown->instrument_id == 0)
    shown->instrument_id = line->instrument_id;
  /* A solution is measured in several ways at one time. */
  return g_str_equal (shown->kind, line->measure) || g_str_equal (line->topic, "sanitizer");
}

/* --- checking ------------------------------------------------------------------------------ */

static gboolean
is_temperature (const SteadShown    *shown,
                const SteadListLine *line)
{
  if (line != NULL && line->unit != NULL && g_str_equal (line->measure, shown->kind))
    return g_str_equal (line->unit, "F") || g_str_equal (line->unit, "C");
  return g_str_has_suffix (shown->kind, "_temp") || g_str_equal (shown->kind, STEAD_SHOWN_ICE_BATH) ||
         g_str_equal (shown->kind, STEAD_SHOWN_BOILING_WATER);
}

static gboolean
check_instrument (const SteadShown       *shown,
                  const SteadInstrument  *instrument,
                  GError                **error)
{
  double least, most;

  stead_instrument_range (instrument->kind, shown->kind, &least, &most);
  if (shown->value >= least && shown->value <= most)
    return TRUE;
  return stead_repo_refuse (error, _("“%s” cannot show that. Check the number, and with what it was read."),
                            instrument->name);
}

static gboolean
check_value (const SteadShown       *shown,
             const SteadListLine    *line,
             const SteadInstrument  *instrument,
             GError                **error)
{
  if (!isfinite (shown->value))
    return stead_repo_refuse (error, _("Enter what the instrument showed."));
  if (is_temperature (shown, line) && !(shown->value >= -60 && shown->value <= 300))
    return stead_repo_refuse (error, _("No kitchen is so cold or so hot. Check the temperature."));
  if (g_str_equal (shown->kind, "ph") && !(shown->value >= 0 && shown->value <= 14))
    return stead_repo_refuse (error, _("A pH lies between 0 and 14. Check the number."));
  if (!is_temperature (shown, line) && shown->value < 0)
    return stead_repo_refuse (error, _("A number below zero is not possible here. Check it."));
  if (!isnan (shown->held_s) && !(shown->held_s >= 0 && shown->held_s <= 30 * DAY_S))
    return stead_repo_refuse (error, _("The time that it was held cannot be right. Check it."));
  if (instrument != NULL && is_temperature (shown, line))
    return check_instrument (shown, instrument, error);
  return TRUE;
}

/* Each reading is corrected once at most; the correction can be corrected in turn. */
static gboolean
check_corrects (SteadStore        *store,
                const SteadShown  *shown,
                GError           **error)
{
  static const char there_sql[] = "SELECT count (*) FROM reading WHERE id = ?1";
  static const char sql[] = "SELECT count (*) FROM reading WHERE corrects_id = ?1";
  gint64 there, n;

  if (shown->corrects_id == 0)
    return TRUE;
  there = stead_repo_count_id (store, there_sql, shown->corrects_id, error);
  n = there > 0 ? stead_repo_count_id (store, sql, shown->corrects_id, error) : there;
  if (there == 0)
    return stead_repo_missing (error);
  if (n > 0)
    return stead_repo_refuse (error, _("That reading was corrected already. Correct the newer one."));
  return n == 0;
}

/* --- writing --------------------------------------------------------------------------------- */

static gboolean
write_reading (SteadStore  *store,
               SteadShown  *shown,
               GError     **error)
{
  static const char sql[] =
    "INSERT INTO reading (at, kind, value, batch_id, step_id, person_id, note, corrects_id, line_id, pot_id,"
    " instrument_id, place_id, held_s, scale, noted_at)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  const char scale[] = { shown->scale, '\0' };

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, shown->at);
  stead_stmt_bind_text (stmt, 2, shown->kind);
  sqlite3_bind_double (stmt, 3, shown->value);
  stead_stmt_bind_id (stmt, 4, shown->batch_id);
  stead_stmt_bind_id (stmt, 5, shown->step_id);
  stead_stmt_bind_id (stmt, 6, shown->person_id);
  stead_repo_bind_tidy (stmt, 7, shown->note);
  stead_stmt_bind_id (stmt, 8, shown->corrects_id);
  stead_stmt_bind_id (stmt, 9, shown->line_id);
  stead_stmt_bind_id (stmt, 10, shown->pot_id);
  stead_stmt_bind_id (stmt, 11, shown->instrument_id);
  stead_stmt_bind_id (stmt, 12, shown->place_id);
  stead_stmt_bind_real (stmt, 13, shown->held_s > 0 ? shown->held_s : NAN);
  stead_stmt_bind_text (stmt, 14, scale);
  stead_stmt_bind_id (stmt, 15, shown->noted_at);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  shown->id = stead_store_last_id (store);
  return TRUE;
}

/* The list and the line of a reading, if it has one. */
static gboolean
load_line (SteadStore       *store,
           SteadShown       *shown,
           SteadCheckList  **out_list,
           SteadListLine   **out_line,
           GError          **error)
{
  gint64 list_id;

  if (!find_line (store, shown, error))
    return FALSE;
  if (shown->line_id == 0)
    return TRUE;
  list_id = stead_check_repo_of_line (store, shown->line_id, error);
  if (list_id <= 0)
    return list_id == 0 ? stead_repo_missing (error) : FALSE;
  *out_list = stead_check_repo_get (store, list_id, error);
  *out_line = *out_list != NULL ? stead_check_list_find_line (*out_list, shown->line_id) : NULL;
  if (*out_line == NULL)
    return FALSE;
  g_return_val_if_fail (fill_in (store, shown, *out_line, *out_list), FALSE);
  return check_list_takes (store, *out_list, shown, error) && check_pot (store, shown, error);
}

/* What does not meet its limit is held, unless the line is about no food. */
static gboolean
hold_if_failed (SteadStore             *store,
                const SteadShown       *shown,
                const SteadCheckList   *list,
                const SteadListLine    *line,
                const SteadInstrument  *instrument,
                GError                **error)
{
  SteadJudgement judgement;

  if (line == NULL || line->food < 0 ||
      !stead_list_line_judge (line, shown, instrument, &judgement, NULL) || judgement.verdict != STEAD_LIMIT_NOT_MET)
    return TRUE;
  return stead_hold_begin_for_reading (store, shown, list, line, error);
}

gboolean
stead_shown_repo_add (SteadStore  *store,
                      SteadShown  *shown,
                      GError     **error)
{
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadInstrument) instrument = NULL;
  SteadListLine *line = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && shown != NULL && shown->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_shown_check_time (store, shown->at, error) || !load_line (store, shown, &list, &line, error))
    return FALSE;
  g_return_val_if_fail (shown->kind != NULL && shown->kind[0] != '\0' && strlen (shown->kind) <= 40, FALSE);
  if (shown->instrument_id != 0)
    instrument = stead_instrument_repo_get (store, shown->instrument_id, error);
  if (shown->instrument_id != 0 && instrument == NULL)
    return FALSE;
  ids = stead_given_ids_new (&shown->id);
  return stead_given_ids_end (ids, check_value (shown, line, instrument, error) &&
                                   stead_repo_check_note (shown->note, error) &&
                                   check_corrects (store, shown, error) &&
                                   write_reading (store, shown, error) &&
                                   hold_if_failed (store, shown, list, line, instrument, error));
}

gboolean
stead_shown_repo_correct (SteadStore  *store,
                          gint64       wrong_id,
                          SteadShown  *right,
                          GError     **error)
{
  g_autoptr(SteadShown) wrong = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && right != NULL && right->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  wrong = stead_shown_by_id (store, wrong_id, error);
  if (wrong == NULL)
    return FALSE;
  right->corrects_id = wrong_id;
  right->line_id = wrong->line_id;
  right->pot_id = wrong->pot_id;
  right->batch_id = wrong->batch_id;
  right->step_id = wrong->step_id;
  right->place_id = wrong->place_id;
  if (right->instrument_id == 0)
    right->instrument_id = wrong->instrument_id;
  g_free (right->kind);
  right->kind = g_strdup (wrong->kind);
  if (right->at == 0 || right->at == STEAD_TIME_NONE)
    right->at = wrong->at;
  return stead_shown_repo_add (store, right, error);
}

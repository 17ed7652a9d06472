/* stead-hold-repo.c - what was done when a limit was not met, and what is held back.
 *
 * The file itself (a trigger) lets nothing that is held be sold, given away or used.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/stead-check-private.h"

/* --- what was done -------------------------------------------------------------------- */

void
stead_done_free (SteadDone *done)
{
  if (done == NULL)
    return;
  g_free (done->text);
  g_free (done);
}

static gpointer
done_from_row (SteadStmt *stmt)
{
  SteadDone *done = g_new0 (SteadDone, 1);

  done->id = sqlite3_column_int64 (stmt, 0);
  done->reading_id = sqlite3_column_int64 (stmt, 1);
  done->at = sqlite3_column_int64 (stmt, 2);
  done->text = stead_stmt_text (stmt, 3);
  done->person_id = sqlite3_column_int64 (stmt, 4);
  return done;
}

/* The column "action" is for a name of the limits, which nothing writes. */
#define DONE_TEXT "coalesce (a.text, a.action)"
#define DONE_FROM_LISTS \
  "SELECT a.id, a.reading_id, a.at, " DONE_TEXT ", a.person_id FROM checklist l" \
  " CROSS JOIN check_line c ON c.list_id = l.id CROSS JOIN reading r ON r.line_id = c.id" \
  " CROSS JOIN check_action a ON a.reading_id = r.id"

GPtrArray *
stead_done_repo_of_list (SteadStore  *store,
                         gint64       list_id,
                         GError     **error)
{
  static const char sql[] = DONE_FROM_LISTS " WHERE l.id = ?1 ORDER BY a.at, a.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, list_id, done_from_row, (GDestroyNotify) stead_done_free, error);
}

GPtrArray *
stead_done_repo_of_days (SteadStore  *store,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = DONE_FROM_LISTS " WHERE l.day BETWEEN ?1 AND ?2 ORDER BY a.at, a.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return stead_repo_rows (store, stmt, done_from_row, (GDestroyNotify) stead_done_free, error);
}

GPtrArray *
stead_done_repo_of_place (SteadStore  *store,
                          gint64       place_id,
                          gint64       from,
                          gint64       to,
                          GError     **error)
{
  static const char sql[] =
    "SELECT a.id, a.reading_id, a.at, " DONE_TEXT ", a.person_id FROM reading r"
    " CROSS JOIN check_action a ON a.reading_id = r.id"
    " WHERE r.place_id = ?1 AND r.at BETWEEN ?2 AND ?3 ORDER BY a.at, a.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, place_id);
  sqlite3_bind_int64 (stmt, 2, from);
  sqlite3_bind_int64 (stmt, 3, to);
  return stead_repo_rows (store, stmt, done_from_row, (GDestroyNotify) stead_done_free, error);
}

gboolean
stead_done_repo_add (SteadStore  *store,
                     SteadDone   *done,
                     GError     **error)
{
  static const char there_sql[] = "SELECT count (*) FROM reading WHERE id = ?1";
  static const char sql[] =
    "INSERT INTO check_action (reading_id, at, text, person_id) VALUES (?1, ?2, ?3, ?4)";
  g_autofree char *text = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 there;

  g_return_val_if_fail (STEAD_IS_STORE (store) && done != NULL && done->id == 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  text = stead_repo_tidy (done->text);
  if (text == NULL)
    return stead_repo_refuse (error, _("Choose what was done, or write it down."));
  if (!stead_repo_check_note (done->text, error) || !stead_shown_check_time (store, done->at, error))
    return FALSE;
  there = stead_repo_count_id (store, there_sql, done->reading_id, error);
  if (there <= 0)
    return there == 0 ? stead_repo_missing (error) : FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, done->reading_id);
  sqlite3_bind_int64 (stmt, 2, done->at);
  stead_stmt_bind_text (stmt, 3, text);
  stead_stmt_bind_id (stmt, 4, done->person_id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  done->id = stead_store_last_id (store);
  return TRUE;
}

/* --- holds ------------------------------------------------------------------------------- */

static const char * const outcome_words[] = { "", "mended", "discarded", "mistaken", NULL };

void
stead_hold_free (SteadHold *hold)
{
  if (hold == NULL)
    return;
  g_free (hold->reason);
  g_free (hold->note);
  g_free (hold->what);
  g_free (hold);
}

#define HOLDS \
  "SELECT hd.id, hd.lot_id, hd.batch_id, hd.reading_id, hd.since_at, hd.reason, hd.ended_at, hd.ended_by, hd.outcome, hd.note," \
  " coalesce (b.name, i.name || ', ' || lot.code), c.list_id FROM safety_hold hd" \
  " LEFT JOIN batch b ON b.id = hd.batch_id LEFT JOIN lot ON lot.id = hd.lot_id LEFT JOIN item i ON i.id = lot.item_id" \
  " LEFT JOIN reading r ON r.id = hd.reading_id LEFT JOIN check_line c ON c.id = r.line_id"

static gpointer
hold_from_row (SteadStmt *stmt)
{
  SteadHold *hold = g_new0 (SteadHold, 1);

  hold->id = sqlite3_column_int64 (stmt, 0);
  hold->lot_id = sqlite3_column_int64 (stmt, 1);
  hold->batch_id = sqlite3_column_int64 (stmt, 2);
  hold->reading_id = sqlite3_column_int64 (stmt, 3);
  hold->since_at = sqlite3_column_int64 (stmt, 4);
  hold->reason = stead_stmt_text (stmt, 5);
  hold->ended_at = stead_stmt_time (stmt, 6);
  hold->ended_by = sqlite3_column_int64 (stmt, 7);
  hold->outcome = (SteadHoldOutcome) stead_repo_word (stmt, 8, outcome_words);
  hold->note = stead_stmt_text (stmt, 9);
  hold->what = stead_stmt_text (stmt, 10);
  hold->list_id = sqlite3_column_int64 (stmt, 11);
  return hold;
}

static GPtrArray *
holds_of (SteadStore  *store,
          const char  *sql,
          gint64       first,
          gint64       second,
          GError     **error)
{
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  if (sqlite3_bind_parameter_count (stmt) > 0)
    sqlite3_bind_int64 (stmt, 1, first);
  if (sqlite3_bind_parameter_count (stmt) > 1)
    sqlite3_bind_int64 (stmt, 2, second);
  return stead_repo_rows (store, stmt, hold_from_row, (GDestroyNotify) stead_hold_free, error);
}

GPtrArray *
stead_hold_repo_open (SteadStore  *store,
                      GError     **error)
{
  static const char sql[] = HOLDS " WHERE hd.ended_at IS NULL ORDER BY hd.since_at, hd.id";

  return holds_of (store, sql, 0, 0, error);
}

GPtrArray *
stead_hold_repo_of_days (SteadStore  *store,
                         SteadDay     from,
                         SteadDay     to,
                         GError     **error)
{
  static const char sql[] = HOLDS " WHERE hd.since_at >= ?1 AND hd.since_at < ?2 ORDER BY hd.since_at, hd.id";

  return holds_of (store, sql, stead_time_midnight (from), stead_time_midnight (to + 1), error);
}

GPtrArray *
stead_hold_repo_of_list (SteadStore  *store,
                         gint64       list_id,
                         GError     **error)
{
  static const char sql[] =
    HOLDS " WHERE hd.reading_id IN (SELECT r.id FROM check_line k JOIN reading r ON r.line_id = k.id WHERE k.list_id = ?1)"
    " ORDER BY hd.since_at, hd.id";

  return holds_of (store, sql, list_id, 0, error);
}

int
stead_hold_repo_is_held (SteadStore  *store,
                         gint64       lot_id,
                         GError     **error)
{
  static const char sql[] =
    "SELECT EXISTS (SELECT 1 FROM safety_hold WHERE lot_id = ?1 AND ended_at IS NULL) OR EXISTS (SELECT 1 FROM lot"
    " JOIN safety_hold hd ON hd.batch_id = lot.batch_id WHERE lot.id = ?1 AND hd.ended_at IS NULL)";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return (int) stead_repo_count_id (store, sql, lot_id, error);
}

/* --- beginning ------------------------------------------------------------------------------ */

static gboolean
is_begun (SteadStore       *store,
          const SteadHold  *hold,
          gint64           *out_n,
          GError          **error)
{
  static const char sql[] =
    "SELECT count (*) FROM safety_hold WHERE reading_id = ?1 AND (lot_id IS ?2 OR batch_id IS ?3) AND ended_at IS NULL";
  g_autoptr(SteadStmt) stmt = NULL;

  *out_n = 0;
  if (hold->reading_id == 0)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, hold->reading_id);
  sqlite3_bind_int64 (stmt, 2, hold->lot_id);
  sqlite3_bind_int64 (stmt, 3, hold->batch_id);
  return stead_repo_number (store, stmt, 0, out_n, error);
}

gboolean
stead_hold_repo_begin (SteadStore  *store,
                       SteadHold   *hold,
                       GError     **error)
{
  static const char sql[] =
    "INSERT INTO safety_hold (lot_id, batch_id, reading_id, since_at, reason) VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autofree char *reason = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 begun;

  g_return_val_if_fail (STEAD_IS_STORE (store) && hold != NULL && hold->id == 0, FALSE);
  g_return_val_if_fail ((hold->lot_id == 0) != (hold->batch_id == 0), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  reason = stead_repo_tidy (hold->reason);
  if (reason == NULL)
    return stead_repo_refuse (error, _("Enter why it is held back."));
  if (!stead_repo_check_note (reason, error) || !stead_shown_check_time (store, hold->since_at, error) ||
      !is_begun (store, hold, &begun, error))
    return FALSE;
  if (begun > 0)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, hold->lot_id);
  stead_stmt_bind_id (stmt, 2, hold->batch_id);
  stead_stmt_bind_id (stmt, 3, hold->reading_id);
  sqlite3_bind_int64 (stmt, 4, hold->since_at);
  stead_stmt_bind_text (stmt, 5, reason);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  hold->id = stead_store_last_id (store);
  return TRUE;
}

/* Lots that a sale day takes along of a product. */
static GArray *
lots_of_sale (SteadStore  *store,
              gint64       sale_id,
              gint64       product_id,
              GError     **error)
{
  static const char sql[] = "SELECT sl.lot_id FROM sale_line s JOIN sale_lot sl ON sl.line_id = s.id"
                            " WHERE s.sale_id = ?1 AND s.product_id = ?2 ORDER BY sl.lot_id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, sale_id);
  sqlite3_bind_int64 (stmt, 2, product_id);
  return stead_repo_ids (store, stmt, error);
}

gboolean
stead_hold_begin_for_reading (SteadStore            *store,
                              const SteadShown      *shown,
                              const SteadCheckList  *list,
                              const SteadListLine   *line,
                              GError               **error)
{
  const SteadListFood *food = list->foods->pdata[line->food];
  /* Translators: why a food is held back: a food, the name of a checklist. */
  g_autofree char *reason = g_strdup_printf (_("%s did not meet its limit on “%s”."), food->name, list->name);
  SteadHold hold = { .batch_id = list->batch_id, .reading_id = shown->id, .since_at = shown->at, .reason = reason };
  g_autoptr(GArray) lots = NULL;

  if (list->batch_id != 0)
    return stead_hold_repo_begin (store, &hold, error);
  if (list->sale_id == 0 || food->product_id == 0)
    return TRUE;
  lots = lots_of_sale (store, list->sale_id, food->product_id, error);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      hold.id = 0;
      hold.lot_id = g_array_index (lots, gint64, i);
      if (!stead_hold_repo_begin (store, &hold, error))
        return FALSE;
    }
  return lots != NULL;
}

/* --- settling --------------------------------------------------------------------------------- */

static SteadHold *
open_hold (SteadStore  *store,
           gint64       id,
           GError     **error)
{
  static const char sql[] = HOLDS " WHERE hd.id = ?1";
  g_autoptr(GPtrArray) holds = holds_of (store, sql, id, 0, error);
  g_autoptr(SteadHold) hold = NULL;

  if (holds == NULL)
    return NULL;
  if (holds->len == 0)
    {
      stead_repo_missing (error);
      return NULL;
    }
  hold = g_ptr_array_steal_index (holds, 0);
  if (hold->ended_at == STEAD_TIME_NONE)
    return g_steal_pointer (&hold);
  stead_repo_refuse (error, _("“%s” was settled before."), hold->what);
  return NULL;
}

/* Of the same line, later, not corrected, and met. */
static gboolean
has_better (const SteadCheckList *list,
            const SteadShown     *failed)
{
  const SteadListLine *line = stead_check_list_find_line (list, failed->line_id);

  for (guint i = 0; line != NULL && i < line->readings->len; i++)
    {
      const SteadShown *shown = line->readings->pdata[i];
      SteadJudgement judgement;

      if (!shown->corrected && shown->id != failed->id && shown->at >= failed->at &&
          stead_list_line_judge (line, shown, NULL, &judgement, NULL) && judgement.verdict != STEAD_LIMIT_NOT_MET)
        return TRUE;
    }
  return FALSE;
}

/* Nothing is put right, and nothing was a slip, by saying so. */
static gboolean
check_outcome (SteadStore        *store,
               const SteadHold   *hold,
               SteadHoldOutcome   outcome,
               GError           **error)
{
  g_autoptr(SteadCheckList) list = NULL;
  const SteadShown *failed;
  const SteadListLine *line;

  if (hold->list_id == 0 || outcome == STEAD_HOLD_DISCARDED)
    return TRUE;
  list = stead_check_repo_get (store, hold->list_id, error);
  failed = list != NULL ? stead_check_list_find_reading (list, hold->reading_id) : NULL;
  if (failed == NULL)
    return FALSE;
  if (outcome == STEAD_HOLD_MISTAKEN)
    return failed->corrected ||
           stead_repo_refuse (error, _("If the reading was a slip, correct it first: the right one stands beside it."));
  line = stead_check_list_find_line (list, failed->line_id);
  if (stead_list_line_is_cooling (line) || has_better (list, failed))
    return TRUE;
  return stead_repo_refuse (error, _("No later reading shows that “%s” was put right. Read it again first, "
                                     "or throw it away."), hold->what);
}

gboolean
stead_hold_repo_settle (SteadStore        *store,
                        gint64             id,
                        SteadHoldOutcome   outcome,
                        const char        *note,
                        gint64             person_id,
                        GError           **error)
{
  static const char sql[] = "UPDATE safety_hold SET ended_at = ?2, ended_by = ?3, outcome = ?4, note = ?5 WHERE id = ?1";
  g_autoptr(SteadHold) hold = NULL;
  g_autofree char *tidy = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (outcome > STEAD_HOLD_OPEN && outcome <= STEAD_HOLD_MISTAKEN, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  hold = open_hold (store, id, error);
  if (hold == NULL)
    return FALSE;
  tidy = stead_repo_tidy (note);
  if (tidy == NULL)
    return stead_repo_refuse (error, _("Enter how it was settled: what was done, and how it was checked."));
  if (!stead_repo_check_note (note, error) || !check_outcome (store, hold, outcome, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (stmt, 2, MAX (stead_time_now (store), hold->since_at));
  stead_stmt_bind_id (stmt, 3, person_id);
  stead_stmt_bind_text (stmt, 4, outcome_words[outcome]);
  stead_stmt_bind_text (stmt, 5, tidy);
  return stead_store_run (store, stmt, error);
}

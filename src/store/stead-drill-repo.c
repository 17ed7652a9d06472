/* stead-drill-repo.c - recall drills that were held. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-check-private.h"

void
stead_drill_free (SteadDrill *drill)
{
  if (drill == NULL)
    return;
  g_free (drill->note);
  g_free (drill->lot_code);
  g_free (drill->item_name);
  g_free (drill);
}

#define DRILLS \
  "SELECT d.id, d.lot_id, d.started_at, d.ended_at, d.person_id, d.known_frac, d.found_frac, d.note, l.code, i.name" \
  " FROM drill d JOIN lot l ON l.id = d.lot_id JOIN item i ON i.id = l.item_id"

static gpointer
drill_from_row (SteadStmt *stmt)
{
  SteadDrill *drill = g_new0 (SteadDrill, 1);

  drill->id = sqlite3_column_int64 (stmt, 0);
  drill->lot_id = sqlite3_column_int64 (stmt, 1);
  drill->started_at = sqlite3_column_int64 (stmt, 2);
  drill->ended_at = stead_stmt_time (stmt, 3);
  drill->person_id = sqlite3_column_int64 (stmt, 4);
  drill->known_frac = stead_stmt_real (stmt, 5);
  drill->found_frac = stead_stmt_real (stmt, 6);
  drill->note = stead_stmt_text (stmt, 7);
  drill->lot_code = stead_stmt_text (stmt, 8);
  drill->item_name = stead_stmt_text (stmt, 9);
  return drill;
}

GPtrArray *
stead_drill_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = DRILLS " ORDER BY d.started_at DESC, d.id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, drill_from_row, (GDestroyNotify) stead_drill_free, error) : NULL;
}

SteadDrill *
stead_drill_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = DRILLS " WHERE d.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, drill_from_row, error);
}

gboolean
stead_drill_repo_start (SteadStore  *store,
                        gint64       lot_id,
                        gint64       at,
                        gint64       person_id,
                        gint64      *out_id,
                        GError     **error)
{
  static const char open_sql[] = "SELECT count (*) FROM drill WHERE ended_at IS NULL AND id <> ?1";
  static const char lot_sql[] = "SELECT count (*) FROM lot WHERE id = ?1";
  static const char sql[] = "INSERT INTO drill (lot_id, started_at, person_id) VALUES (?1, ?2, ?3)";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 n;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_shown_check_time (store, at, error))
    return FALSE;
  n = stead_repo_count_id (store, lot_sql, lot_id, error);
  if (n <= 0)
    return n == 0 ? stead_repo_missing (error) : FALSE;
  n = stead_repo_count_id (store, open_sql, 0, error);
  if (n > 0)
    return stead_repo_refuse (error, _("A drill is under way. Finish that one first."));
  stmt = n == 0 ? stead_store_prepare (store, sql, error) : NULL;
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  sqlite3_bind_int64 (stmt, 2, at);
  stead_stmt_bind_id (stmt, 3, person_id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (out_id != NULL)
    *out_id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
is_share (double frac)
{
  return isnan (frac) || (frac >= 0 && frac <= 1);
}

static gboolean
check_end (SteadStore        *store,
           const SteadDrill  *drill,
           gint64             at,
           double             known_frac,
           double             found_frac,
           const char        *note,
           GError           **error)
{
  if (at < drill->started_at)
    return stead_repo_refuse (error, _("A drill cannot end before it began. Check the clock."));
  if (!is_share (known_frac) || !is_share (found_frac))
    return stead_repo_refuse (error, _("Enter how much was found: from nothing, 0 %%, to all of it, 100 %%."));
  return stead_shown_check_time (store, at, error) && stead_repo_check_note (note, error);
}

gboolean
stead_drill_repo_finish (SteadStore  *store,
                         gint64       id,
                         gint64       at,
                         double       known_frac,
                         double       found_frac,
                         const char  *note,
                         GError     **error)
{
  static const char sql[] = "UPDATE drill SET ended_at = ?2, known_frac = ?3, found_frac = ?4, note = ?5 WHERE id = ?1";
  g_autoptr(SteadDrill) drill = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  drill = stead_drill_repo_get (store, id, error);
  if (drill == NULL || !check_end (store, drill, at, known_frac, found_frac, note, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (stmt, 2, at);
  stead_stmt_bind_real (stmt, 3, known_frac);
  stead_stmt_bind_real (stmt, 4, found_frac);
  stead_repo_bind_tidy (stmt, 5, note);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_drill_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM drill WHERE id = ?1";
  g_autoptr(SteadDrill) drill = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  drill = stead_drill_repo_get (store, id, error);
  return drill != NULL && stead_repo_run_id (store, sql, id, error);
}

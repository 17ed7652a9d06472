/* stead-check-repo.c - checklists made, made anew, changed and taken away. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

/* --- checking --------------------------------------------------------------------- */

static gboolean
check_head (const SteadCheckList  *list,
            GError               **error)
{
  if (!stead_repo_check_name (list->name, error) || !stead_repo_check_note (list->note, error))
    return FALSE;
  if (list->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day that the list is for."));
  return TRUE;
}

static gboolean
check_whole (const SteadCheckList  *list,
             GError               **error)
{
  if (!check_head (list, error))
    return FALSE;
  if (list->foods->len == 0)
    return stead_repo_refuse (error, _("Choose what is made or sold first: a list is made for foods."));
  for (guint i = 0; i < list->foods->len; i++)
    if (!stead_repo_check_name (((const SteadListFood *) list->foods->pdata[i])->name, error))
      return FALSE;
  g_return_val_if_fail (list->lines->len > 0 || list->stops->len > 0, FALSE);
  for (guint i = 0; i < list->lines->len; i++)
    g_return_val_if_fail (((const SteadListLine *) list->lines->pdata[i])->rows->len > 0, FALSE);
  return TRUE;
}

/* --- writing the head --------------------------------------------------------------- */

static gboolean
insert_head (SteadStore      *store,
             SteadCheckList  *list,
             GError         **error)
{
  static const char sql[] =
    "INSERT INTO checklist (name, day, batch_id, sale_id, made_at, edition, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  list->made_at = stead_time_now (store);
  stead_repo_bind_tidy (stmt, 1, list->name);
  stead_stmt_bind_day (stmt, 2, list->day);
  stead_stmt_bind_id (stmt, 3, list->batch_id);
  stead_stmt_bind_id (stmt, 4, list->sale_id);
  sqlite3_bind_int64 (stmt, 5, list->made_at);
  stead_stmt_bind_exactly (stmt, 6, list->edition);
  stead_repo_bind_tidy (stmt, 7, list->note);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  list->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
update_head (SteadStore            *store,
             const SteadCheckList  *list,
             GError               **error)
{
  static const char sql[] = "UPDATE checklist SET name = ?2, day = ?3, note = ?4 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  stead_repo_bind_tidy (stmt, 2, list->name);
  stead_stmt_bind_day (stmt, 3, list->day);
  stead_repo_bind_tidy (stmt, 4, list->note);
  return stead_store_run (store, stmt, error);
}

/* What it was made from, to see later what is stale. */
static gboolean
write_sums (SteadStore            *store,
            const SteadCheckList  *list,
            GError               **error)
{
  static const char sql[] = "UPDATE checklist SET made_from = ?2, local_from = ?3, edition = ?4 WHERE id = ?1";
  g_autofree char *batch = NULL;
  g_autofree char *limits = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  if (!stead_check_from_batch (store, list->batch_id, &batch, error) ||
      !stead_check_from_limits (store, list->day, &limits, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, list->id);
  stead_stmt_bind_text (stmt, 2, batch);
  stead_stmt_bind_text (stmt, 3, limits);
  stead_stmt_bind_exactly (stmt, 4, list->edition);
  return stead_store_run (store, stmt, error);
}

/* --- readings of the run sheet ---------------------------------------------------------- */

/* A reading counts for the first line that names its step and reads the same. */
gboolean
stead_check_claim_steps (SteadStore  *store,
                         gint64       list_id,
                         GError     **error)
{
  static const char sql[] =
    "UPDATE reading SET line_id = (SELECT c.id FROM check_line c WHERE c.list_id = ?1 AND c.step_id = reading.step_id"
    "   AND c.measure = reading.kind ORDER BY c.position LIMIT 1)"
    " WHERE id IN (SELECT r.id FROM check_line c JOIN reading r ON r.step_id = c.step_id AND r.kind = c.measure"
    "   WHERE c.list_id = ?1 AND c.step_id IS NOT NULL AND r.line_id IS NULL)";

  return stead_repo_run_id (store, sql, list_id, error);
}

/* Those of a run sheet stay with it. */
static gboolean
let_go_steps (SteadStore  *store,
              gint64       list_id,
              GError     **error)
{
  static const char sql[] =
    "UPDATE reading SET line_id = NULL, pot_id = NULL WHERE step_id IS NOT NULL"
    " AND line_id IN (SELECT id FROM check_line WHERE list_id = ?1)";

  return stead_repo_run_id (store, sql, list_id, error);
}

/* --- saving ------------------------------------------------------------------------------ */

static gboolean
save_new (SteadStore      *store,
          SteadCheckList  *list,
          GError         **error)
{
  return insert_head (store, list, error) &&
         stead_check_write_parts (store, list, error) &&
         write_sums (store, list, error) &&
         stead_check_claim_steps (store, list->id, error);
}

static SteadGivenIds *
ids_of (SteadCheckList *list)
{
  SteadGivenIds *ids = stead_given_ids_new (&list->id);

  for (guint i = 0; i < list->foods->len; i++)
    stead_given_ids_add (ids, &((SteadListFood *) list->foods->pdata[i])->id);
  for (guint i = 0; i < list->lines->len; i++)
    stead_given_ids_add (ids, &((SteadListLine *) list->lines->pdata[i])->id);
  for (guint i = 0; i < list->stops->len; i++)
    stead_given_ids_add (ids, &((SteadListStop *) list->stops->pdata[i])->id);
  return ids;
}

gboolean
stead_check_repo_save (SteadStore      *store,
                       SteadCheckList  *list,
                       GError         **error)
{
  g_autoptr(SteadCheckList) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && list != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (list->id == 0)
    {
      SteadGivenIds *ids = ids_of (list);

      return stead_given_ids_end (ids, check_whole (list, error) && save_new (store, list, error));
    }
  before = stead_check_open_list (store, list->id, error);
  return before != NULL && check_head (list, error) && update_head (store, list, error);
}

/* --- made anew ---------------------------------------------------------------------------- */

static const char *
food_name (const SteadCheckList *list,
           int                   food)
{
  return food >= 0 && (guint) food < list->foods->len ? ((const SteadListFood *) list->foods->pdata[food])->name : "";
}

/* Asks for the same thing of the same food. */
static gboolean
is_same_line (const SteadCheckList *a_list,
              const SteadListLine  *a,
              const SteadCheckList *b_list,
              const SteadListLine  *b)
{
  return g_str_equal (a->topic, b->topic) && g_str_equal (a->measure, b->measure) &&
         g_strcmp0 (a->subject, b->subject) == 0 &&
         g_str_equal (food_name (a_list, a->food), food_name (b_list, b->food));
}

/* Takes over who and with what, unless it is said anew. */
static void
take_over (SteadListLine       *line,
           const SteadListLine *before)
{
  line->id = before->id;
  if (line->person_id == 0)
    line->person_id = before->person_id;
  if (line->instrument_id == 0)
    line->instrument_id = before->instrument_id;
  if (line->due_at == STEAD_TIME_NONE)
    line->due_at = before->due_at;
  if (line->left_out == NULL)
    line->left_out = before->left_out;
}

static void
match_lines (SteadCheckList       *list,
             const SteadCheckList *before,
             GHashTable           *taken)
{
  for (guint i = 0; i < list->lines->len; i++)
    {
      SteadListLine *line = list->lines->pdata[i];

      line->id = 0;
      for (guint n = 0; n < before->lines->len && line->id == 0; n++)
        {
          const SteadListLine *old = before->lines->pdata[n];

          if (!g_hash_table_contains (taken, &old->id) && is_same_line (list, line, before, old))
            {
              take_over (line, old);
              line->left_out = stead_check_list_keep (list, line->left_out);
              g_hash_table_add (taken, (gpointer) &old->id);
            }
        }
    }
}

static void
match_stops (SteadCheckList       *list,
             const SteadCheckList *before)
{
  for (guint i = 0; i < list->stops->len; i++)
    {
      SteadListStop *stop = list->stops->pdata[i];

      for (guint n = 0; n < before->stops->len; n++)
        {
          const SteadListStop *old = before->stops->pdata[n];

          if (!g_str_equal (stop->kind, old->kind) || g_strcmp0 (stop->lot_code, old->lot_code) != 0 ||
              !g_str_equal (food_name (list, stop->food), food_name (before, old->food)))
            continue;
          stop->settled = stead_check_list_keep (list, old->settled);
          stop->settled_by = old->settled_by;
          stop->settled_at = old->settled_at;
        }
    }
}

static int
food_by_name (const SteadCheckList *list,
              const char           *name)
{
  for (guint i = 0; i < list->foods->len; i++)
    if (g_str_equal (((const SteadListFood *) list->foods->pdata[i])->name, name))
      return (int) i;
  return -1;
}

/* What was read and is no longer asked for stays at the end; the rest goes. */
static gboolean
settle_old_lines (SteadStore            *store,
                  const SteadCheckList  *list,
                  const SteadCheckList  *before,
                  GHashTable            *taken,
                  GError               **error)
{
  static const char delete_sql[] = "DELETE FROM check_line WHERE id = ?1";
  guint position = list->lines->len;

  for (guint n = 0; n < before->lines->len; n++)
    {
      SteadListLine *old = before->lines->pdata[n];

      if (g_hash_table_contains (taken, &old->id))
        continue;
      if (old->readings->len == 0)
        {
          if (!stead_repo_run_id (store, delete_sql, old->id, error))
            return FALSE;
          continue;
        }
      old->food = food_by_name (list, food_name (before, old->food));
      if (old->left_out == NULL)
        old->left_out = _("No longer asked for.");
      if (!stead_check_write_line (store, list, old, position++, error))
        return FALSE;
    }
  return TRUE;
}

/* Makes room for the new rows; lines keep theirs. */
static gboolean
clear_for_renewal (SteadStore  *store,
                   gint64       list_id,
                   GError     **error)
{
  static const char lines_sql[] = "UPDATE check_line SET food_id = NULL, position = position + 1000000 WHERE list_id = ?1";
  static const char answers_sql[] = "DELETE FROM check_answer WHERE list_id = ?1";
  static const char stops_sql[] = "DELETE FROM check_stop WHERE list_id = ?1";
  static const char foods_sql[] = "DELETE FROM check_food WHERE list_id = ?1";

  return stead_repo_run_id (store, lines_sql, list_id, error) &&
         stead_repo_run_id (store, answers_sql, list_id, error) &&
         stead_repo_run_id (store, stops_sql, list_id, error) &&
         stead_repo_run_id (store, foods_sql, list_id, error);
}

gboolean
stead_check_repo_renew (SteadStore      *store,
                        SteadCheckList  *list,
                        GError         **error)
{
  g_autoptr(SteadCheckList) open = NULL;
  g_autoptr(SteadCheckList) before = NULL;
  g_autoptr(GHashTable) taken = g_hash_table_new (g_int64_hash, g_int64_equal);
  SteadGivenIds *ids;
  gboolean done;

  g_return_val_if_fail (STEAD_IS_STORE (store) && list != NULL && list->id != 0, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  open = stead_check_open_list (store, list->id, error);
  before = open != NULL && check_whole (list, error) ? stead_check_repo_get (store, list->id, error) : NULL;
  if (before == NULL)
    return FALSE;
  list->batch_id = before->batch_id;
  list->sale_id = before->sale_id;
  ids = ids_of (list);
  match_lines (list, before, taken);
  match_stops (list, before);
  done = clear_for_renewal (store, list->id, error) && stead_check_write_foods (store, list, error);
  for (guint i = 0; done && i < list->lines->len; i++)
    done = stead_check_write_line (store, list, list->lines->pdata[i], i, error);
  return stead_given_ids_end (ids, done &&
                                   settle_old_lines (store, list, before, taken, error) &&
                                   stead_check_write_rest (store, list, error) &&
                                   update_head (store, list, error) &&
                                   write_sums (store, list, error) &&
                                   stead_check_claim_steps (store, list->id, error));
}

/* A hold would end with its reading. */
static gboolean
check_no_hold (SteadStore            *store,
               const SteadCheckList  *list,
               GError               **error)
{
  static const char sql[] =
    "SELECT count (*) FROM check_line c JOIN reading r ON r.line_id = c.id JOIN safety_hold h ON h.reading_id = r.id"
    " WHERE c.list_id = ?1 AND h.ended_at IS NULL";
  gint64 n = stead_repo_count_id (store, sql, list->id, error);

  if (n > 0)
    return stead_repo_refuse (error, _("A reading of “%s” holds food back. Settle that first: say what was done, "
                                       "or throw the food away."), list->name);
  return n == 0;
}

gboolean
stead_check_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM checklist WHERE id = ?1";
  g_autoptr(SteadCheckList) list = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  list = stead_check_open_list (store, id, error);
  return list != NULL && check_no_hold (store, list, error) && let_go_steps (store, id, error) && stead_repo_run_id (store, sql, id, error);
}

/* --- lines --------------------------------------------------------------------------------- */

static gboolean
check_reason (SteadStore  *store,
              gint64       line_id,
              const char  *reason,
              GError     **error)
{
  static const char sql[] = "SELECT count (*) FROM reading WHERE line_id = ?1";
  g_autofree char *tidy = stead_repo_tidy (reason);
  gint64 n;

  if (reason == NULL)
    return TRUE;
  if (tidy == NULL)
    return stead_repo_refuse (error, _("Enter why this need not be checked."));
  n = stead_repo_count_id (store, sql, line_id, error);
  if (n > 0)
    return stead_repo_refuse (error, _("This was read already, so it cannot be left out. A wrong reading is corrected."));
  return n == 0 && stead_repo_check_note (reason, error);
}

gboolean
stead_check_repo_leave_out (SteadStore  *store,
                            gint64       line_id,
                            const char  *reason,
                            GError     **error)
{
  static const char sql[] = "UPDATE check_line SET left_out = ?2 WHERE id = ?1";
  g_autoptr(SteadCheckList) list = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  list = stead_check_open_line (store, line_id, error);
  if (list == NULL || !check_reason (store, line_id, reason, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  stead_repo_bind_tidy (stmt, 2, reason);
  return stead_store_run (store, stmt, error);
}

/* --- stops ----------------------------------------------------------------------------------- */

gboolean
stead_check_repo_settle_stop (SteadStore  *store,
                              gint64       stop_id,
                              const char  *settled,
                              gint64       person_id,
                              GError     **error)
{
  static const char list_sql[] = "SELECT list_id FROM check_stop WHERE id = ?1";
  static const char sql[] = "UPDATE check_stop SET settled = ?2, settled_by = ?3, settled_at = ?4 WHERE id = ?1";
  g_autoptr(SteadCheckList) list = NULL;
  g_autofree char *tidy = stead_repo_tidy (settled);
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 list_id;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  list_id = stead_repo_count_id (store, list_sql, stop_id, error);
  if (list_id == 0)
    return stead_repo_missing (error);
  list = list_id > 0 ? stead_check_open_list (store, list_id, error) : NULL;
  if (list == NULL || !stead_repo_check_note (settled, error))
    return FALSE;
  if (settled != NULL && tidy == NULL)
    return stead_repo_refuse (error, _("Enter what was done instead."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, stop_id);
  stead_stmt_bind_text (stmt, 2, tidy);
  stead_stmt_bind_id (stmt, 3, tidy != NULL ? person_id : 0);
  stead_stmt_bind_time (stmt, 4, tidy != NULL ? stead_time_now (store) : STEAD_TIME_NONE);
  return stead_store_run (store, stmt, error);
}

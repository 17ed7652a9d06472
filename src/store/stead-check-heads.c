/* stead-check-heads.c - checklists without their parts: what they are of, and how they stand. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-check-private.h"

const char *
stead_check_keep (SteadCheckList *list,
                  SteadStmt      *stmt,
                  int             at)
{
  g_autofree char *text = stead_stmt_text (stmt, at);

  return stead_check_list_keep (list, text);
}

const char *
stead_check_keep_some (SteadCheckList *list,
                       SteadStmt      *stmt,
                       int             at)
{
  const char *text = stead_check_keep (list, stmt, at);

  return text != NULL ? text : "";
}

gpointer
stead_check_head_from_row (SteadStmt *stmt)
{
  SteadCheckList *list = stead_check_list_new ();

  list->id = sqlite3_column_int64 (stmt, 0);
  list->name = stead_check_keep_some (list, stmt, 1);
  list->day = stead_stmt_day (stmt, 2);
  list->batch_id = sqlite3_column_int64 (stmt, 3);
  list->sale_id = sqlite3_column_int64 (stmt, 4);
  list->made_at = sqlite3_column_int64 (stmt, 5);
  list->edition = stead_check_keep_some (list, stmt, 6);
  list->note = stead_check_keep (list, stmt, 7);
  list->signed_by = sqlite3_column_int64 (stmt, 8);
  list->signed_at = stead_stmt_time (stmt, 9);
  list->seal_reading = sqlite3_column_int64 (stmt, 10);
  if (sqlite3_column_count (stmt) > 11)
    {
      list->n_lines = sqlite3_column_int64 (stmt, 11);
      list->n_open = sqlite3_column_int64 (stmt, 12);
      list->n_readings = sqlite3_column_int64 (stmt, 13);
      list->n_stops = sqlite3_column_int64 (stmt, 14);
      list->n_holds = sqlite3_column_int64 (stmt, 15);
    }
  return list;
}

static GPtrArray *
heads (SteadStore  *store,
       SteadStmt   *stmt,
       GError     **error)
{
  return stead_repo_rows (store, stmt, stead_check_head_from_row, (GDestroyNotify) stead_check_list_free, error);
}

GPtrArray *
stead_check_repo_list (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  static const char sql[] = "SELECT " CHECK_HEAD_COLUMNS "," CHECK_COUNT_COLUMNS " FROM checklist l"
                            " WHERE l.day BETWEEN ?1 AND ?2 ORDER BY l.day DESC, l.id DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return heads (store, stmt, error);
}

static GPtrArray *
heads_of (SteadStore  *store,
          const char  *sql,
          gint64       id,
          GError     **error)
{
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  return heads (store, stmt, error);
}

GPtrArray *
stead_check_repo_of_batch (SteadStore  *store,
                           gint64       batch_id,
                           GError     **error)
{
  static const char sql[] = "SELECT " CHECK_HEAD_COLUMNS "," CHECK_COUNT_COLUMNS " FROM checklist l"
                            " WHERE l.batch_id = ?1 ORDER BY l.day DESC, l.id DESC";

  return heads_of (store, sql, batch_id, error);
}

GPtrArray *
stead_check_repo_of_sale (SteadStore  *store,
                          gint64       sale_id,
                          GError     **error)
{
  static const char sql[] = "SELECT " CHECK_HEAD_COLUMNS "," CHECK_COUNT_COLUMNS " FROM checklist l"
                            " WHERE l.sale_id = ?1 ORDER BY l.day DESC, l.id DESC";

  return heads_of (store, sql, sale_id, error);
}

gint64
stead_check_repo_of_line (SteadStore  *store,
                          gint64       line_id,
                          GError     **error)
{
  static const char sql[] = "SELECT list_id FROM check_line WHERE id = ?1";

  return stead_repo_count_id (store, sql, line_id, error);
}

gint64
stead_check_repo_of_reading (SteadStore  *store,
                             gint64       reading_id,
                             GError     **error)
{
  static const char sql[] = "SELECT c.list_id FROM reading r JOIN check_line c ON c.id = r.line_id WHERE r.id = ?1";

  return stead_repo_count_id (store, sql, reading_id, error);
}

SteadCheckList *
stead_check_open_list (SteadStore  *store,
                       gint64       list_id,
                       GError     **error)
{
  static const char sql[] = "SELECT " CHECK_HEAD_COLUMNS " FROM checklist l WHERE l.id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(SteadCheckList) list = NULL;
  g_autofree char *when = NULL;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, list_id);
  list = stead_repo_row (store, stmt, stead_check_head_from_row, error);
  if (list == NULL || list->signed_at == STEAD_TIME_NONE)
    return g_steal_pointer (&list);
  when = stead_day_format (stead_time_day (list->signed_at), STEAD_DAY_STYLE_MEDIUM);
  g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED,
               _("“%s” was signed on %s and stays as it is. A wrong reading is corrected by a new one beside it."),
               list->name, when);
  return NULL;
}

SteadCheckList *
stead_check_open_line (SteadStore  *store,
                       gint64       line_id,
                       GError     **error)
{
  gint64 list_id = stead_check_repo_of_line (store, line_id, error);

  if (list_id == 0)
    stead_repo_missing (error);
  return list_id > 0 ? stead_check_open_list (store, list_id, error) : NULL;
}

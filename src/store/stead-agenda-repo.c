/* stead-agenda-repo.c - days that the farm's tables already know of. */
#include "config.h"

#include "store/stead-agenda-repo.h"
#include "store/stead-repo-private.h"

void
stead_agenda_day_free (SteadAgendaDay *day)
{
  if (day == NULL)
    return;
  g_free (day->name);
  g_free (day->detail);
  g_free (day);
}

static gpointer
from_row (SteadStmt *stmt)
{
  SteadAgendaDay *day = g_new0 (SteadAgendaDay, 1);

  day->kind = (SteadAgendaKind) sqlite3_column_int (stmt, 0);
  day->id = sqlite3_column_int64 (stmt, 1);
  day->day = stead_stmt_day (stmt, 2);
  day->name = stead_stmt_text (stmt, 3);
  day->detail = stead_stmt_text (stmt, 4);
  return day;
}

GPtrArray *
stead_agenda_repo_list (SteadStore  *store,
                        SteadDay     from,
                        SteadDay     to,
                        GError     **error)
{
  static const char sql[] =
    "SELECT 0, id, day, name, place FROM event WHERE day BETWEEN ?1 AND ?2"
    " UNION ALL SELECT 1, p.id, p.from_day, p.name, b.name FROM build_phase p JOIN build b ON b.id = p.build_id"
    " WHERE p.done_on IS NULL AND p.from_day BETWEEN ?1 AND ?2"
    " UNION ALL SELECT 2, l.id, l.best_by, i.name, l.code FROM lot l JOIN item i ON i.id = l.item_id"
    " JOIN lot_stock s ON s.lot_id = l.id WHERE l.best_by BETWEEN ?1 AND ?2 AND s.base > 1e-7"
    " UNION ALL SELECT 3, t.id, t.wait_until, b.name, t.what FROM treatment t JOIN batch b ON b.id = t.batch_id"
    " WHERE t.wait_until BETWEEN ?1 AND ?2 AND b.ended_on IS NULL"
    " ORDER BY 3, 1, 2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, from);
  stead_stmt_bind_day (stmt, 2, to);
  return stead_repo_rows (store, stmt, from_row, (GDestroyNotify) stead_agenda_day_free, error);
}

/* stead-recost.c - what has to be costed anew when something changed. */
#include "config.h"

#include "store/stead-closing-repo.h"
#include "store/stead-recost-private.h"
#include "store/stead-recost.h"

/* Before any day that a farm can have. */
#define FIRST_DAY (G_MININT32 + 1)

/* --- the farm's choice --------------------------------------------------------- */

gboolean
stead_recost_method (SteadStore        *store,
                     SteadStockMethod  *out,
                     GError           **error)
{
  static const char sql[] = "SELECT cost_method = 'average' FROM farm WHERE id = 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 average = 0;

  if (stmt == NULL || !stead_repo_number (store, stmt, 0, &average, error))
    return FALSE;
  *out = average != 0 ? STEAD_STOCK_AVERAGE_MOVING : STEAD_STOCK_FIFO;
  return TRUE;
}

gboolean
stead_recost_first_open (SteadStore  *store,
                         SteadDay    *out,
                         GError     **error)
{
  SteadDay closed;

  if (!stead_closing_repo_last (store, &closed, error))
    return FALSE;
  *out = closed != STEAD_DAY_NONE ? closed + 1 : FIRST_DAY;
  return TRUE;
}

/* --- public ------------------------------------------------------------------------ */

gboolean
stead_recost_item (SteadStore  *store,
                   gint64       item_id,
                   SteadDay     from,
                   GError     **error)
{
  g_auto(SteadRecost) recost = { 0 };
  SteadStockMethod method;

  if (item_id == 0)
    return TRUE;
  if (!stead_recost_method (store, &method, error))
    return FALSE;
  if (method == STEAD_STOCK_FIFO)
    return TRUE;
  if (!stead_recost_begin (&recost, store, TRUE, from, error))
    return FALSE;
  g_array_append_val (recost.begin, item_id);
  return stead_recost_end (&recost, error);
}

/* The first day on which the batch used or made anything. */
static gboolean
first_day (SteadStore  *store,
           gint64       batch_id,
           SteadDay    *out,
           GError     **error)
{
  static const char sql[] = "SELECT min (day) FROM (SELECT min (day) AS day FROM movement WHERE batch_id = ?1"
                            " UNION ALL SELECT min (day) FROM lot WHERE batch_id = ?1)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 day = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  if (!stead_repo_number (store, stmt, G_MAXINT32, &day, error))
    return FALSE;
  *out = (SteadDay) day;
  return TRUE;
}

static gboolean
recost_batches (SteadStore    *store,
                const gint64  *batch_ids,
                gsize          n,
                SteadDay       from,
                gboolean       by_item,
                GError       **error)
{
  g_auto(SteadRecost) recost = { 0 };

  if (n == 0)
    return TRUE;
  if (!stead_recost_begin (&recost, store, by_item, from, error))
    return FALSE;
  g_array_append_vals (recost.begin_batches, batch_ids, (guint) n);
  return stead_recost_end (&recost, error);
}

gboolean
stead_recost_batch (SteadStore  *store,
                    gint64       batch_id,
                    GError     **error)
{
  SteadStockMethod method;
  SteadDay from = FIRST_DAY;

  if (!stead_recost_method (store, &method, error))
    return FALSE;
  if (method != STEAD_STOCK_FIFO && !first_day (store, batch_id, &from, error))
    return FALSE;
  return recost_batches (store, &batch_id, 1, from, method != STEAD_STOCK_FIFO, error);
}

static gboolean
add_users (SteadStore  *store,
           gint64       lot_id,
           GArray      *batch_ids,
           GError     **error)
{
  static const char sql[] = "SELECT DISTINCT m.batch_id FROM movement m JOIN batch b ON b.id = m.batch_id"
                            " WHERE m.lot_id = ?1 AND m.kind = 'used' AND b.kind = 'kitchen' ORDER BY m.batch_id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, lot_id);
  return stead_repo_add_ids (store, stmt, batch_ids, error);
}

gboolean
stead_recost_users (SteadStore    *store,
                    const gint64  *lot_ids,
                    gsize          n,
                    GError       **error)
{
  g_autoptr(GArray) batch_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  SteadStockMethod method;

  if (!stead_recost_method (store, &method, error))
    return FALSE;
  if (method != STEAD_STOCK_FIFO)    /* settling its item did it */
    return TRUE;
  for (gsize i = 0; i < n; i++)
    if (!add_users (store, lot_ids[i], batch_ids, error))
      return FALSE;
  return recost_batches (store, (const gint64 *) (void *) batch_ids->data, batch_ids->len, FIRST_DAY, FALSE, error);
}

gboolean
stead_recost_all (SteadStore  *store,
                  GError     **error)
{
  static const char items_sql[] = "SELECT id FROM item ORDER BY id";
  static const char lots_sql[] = "SELECT id FROM lot ORDER BY id";
  g_auto(SteadRecost) recost = { 0 };
  g_autoptr(SteadStmt) stmt = NULL;
  SteadStockMethod method;

  if (!stead_recost_method (store, &method, error) ||
      !stead_recost_begin (&recost, store, method != STEAD_STOCK_FIFO, FIRST_DAY, error) ||
      (stmt = stead_store_prepare (store, recost.by_item ? items_sql : lots_sql, error)) == NULL)
    return FALSE;
  return stead_repo_add_ids (store, stmt, recost.begin, error) && stead_recost_end (&recost, error);
}

/* stead-sale-order.c - what people ordered before a sale day. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-sale-private.h"
#include "store/stead-sale-tally.h"

void
stead_sale_order_free (SteadSaleOrder *order)
{
  if (order == NULL)
    return;
  g_free (order->who);
  g_free (order->note);
  g_free (order);
}

static gpointer
order_from_row (SteadStmt *stmt)
{
  SteadSaleOrder *order = g_new0 (SteadSaleOrder, 1);

  order->id = sqlite3_column_int64 (stmt, 0);
  order->sale_id = sqlite3_column_int64 (stmt, 1);
  order->line_id = sqlite3_column_int64 (stmt, 2);
  order->who = stead_stmt_text (stmt, 3);
  order->units = sqlite3_column_double (stmt, 4);
  order->paid = sqlite3_column_int (stmt, 5) != 0;
  order->tap_id = sqlite3_column_int64 (stmt, 6);
  order->note = stead_stmt_text (stmt, 7);
  return order;
}

#define ORDER_COLUMNS "id, sale_id, line_id, who, units, paid, tap_id, note"

GPtrArray *
stead_sale_order_list (SteadStore  *store,
                       gint64       sale_id,
                       GError     **error)
{
  static const char sql[] = "SELECT " ORDER_COLUMNS " FROM sale_order WHERE sale_id = ?1"
                            " ORDER BY tap_id IS NOT NULL, who IS NULL, who, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, sale_id, order_from_row, (GDestroyNotify) stead_sale_order_free,
                             error);
}

static SteadSaleOrder *
read_order (SteadStore  *store,
            gint64       id,
            GError     **error)
{
  static const char sql[] = "SELECT " ORDER_COLUMNS " FROM sale_order WHERE id = ?1";

  return stead_repo_row_of (store, sql, id, order_from_row, error);
}

/* An order that waits, of a sale that is open. */
static SteadSaleOrder *
read_waiting (SteadStore  *store,
              gint64       id,
              GError     **error)
{
  g_autoptr(SteadSaleOrder) order = read_order (store, id, error);

  if (order == NULL || !stead_sale_check_open (store, order->sale_id, error))
    return NULL;
  if (order->tap_id != 0)
    {
      stead_repo_refuse (error, _("This order was collected. Take its tap back first."));
      return NULL;
    }
  return g_steal_pointer (&order);
}

static gboolean
check_order (SteadStore            *store,
             const SteadSaleOrder  *order,
             GError               **error)
{
  static const char sql[] = "SELECT sale_id FROM sale_line WHERE id = ?1";
  gint64 sale_id;

  if (order->line_id == 0)
    return stead_repo_refuse (error, _("Choose what was ordered."));
  if (!(order->units > STEAD_AMOUNT_EPSILON && order->units <= STEAD_SALE_MOST_UNITS))
    return stead_repo_refuse (error, _("Enter an amount above zero."));
  if (!stead_repo_check_note (order->who, error) || !stead_repo_check_note (order->note, error))
    return FALSE;
  sale_id = stead_repo_count_id (store, sql, order->line_id, error);
  if (sale_id >= 0 && sale_id != order->sale_id)
    return stead_repo_refuse (error, _("This product is not sold at this sale."));
  return sale_id >= 0 && stead_sale_check_open (store, order->sale_id, error);
}

gboolean
stead_sale_order_save (SteadStore      *store,
                       SteadSaleOrder  *order,
                       GError         **error)
{
  static const char insert_sql[] = "INSERT INTO sale_order (sale_id, line_id, who, units, paid, note)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  static const char update_sql[] = "UPDATE sale_order SET sale_id = ?1, line_id = ?2, who = ?3, units = ?4, paid = ?5,"
                                   " note = ?6 WHERE id = ?7";
  g_autoptr(SteadSaleOrder) before = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && order != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_order (store, order, error))
    return FALSE;
  if (order->id != 0 && (before = read_waiting (store, order->id, error)) == NULL)
    return FALSE;
  stmt = stead_store_prepare (store, order->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, order->sale_id);
  sqlite3_bind_int64 (stmt, 2, order->line_id);
  stead_repo_bind_tidy (stmt, 3, order->who);
  sqlite3_bind_double (stmt, 4, order->units);
  sqlite3_bind_int (stmt, 5, order->paid != FALSE);
  stead_repo_bind_tidy (stmt, 6, order->note);
  if (order->id != 0)
    sqlite3_bind_int64 (stmt, 7, order->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (order->id == 0)
    order->id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_sale_order_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM sale_order WHERE id = ?1";
  g_autoptr(SteadSaleOrder) order = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  order = read_waiting (store, id, error);
  return order != NULL && stead_repo_run_id (store, sql, id, error);
}

gboolean
stead_sale_order_collect (SteadStore  *store,
                          gint64       id,
                          gint64       at,
                          GError     **error)
{
  static const char sql[] = "UPDATE sale_order SET tap_id = ?2 WHERE id = ?1";
  g_autoptr(SteadSaleOrder) order = NULL;
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 tap_id = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  order = read_waiting (store, id, error);
  if (order == NULL || !stead_sale_tally_add (store, order->line_id, STEAD_TAP_SOLD, order->units, at, &tap_id, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (stmt, 2, tap_id);
  return stead_store_run (store, stmt, error);
}

/* stead-lot-read.c - traceable quantities and their movements, as they stand in the file. */
#include "config.h"

#include "core/stead-money.h"
#include "store/stead-item-private.h"
#include "store/stead-lot-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-recost.h"
#include "store/stead-repo-private.h"

const char * const stead_move_words[] = {
  "received", "used", "sold", "given", "lost", "counted", "corrected", "made", NULL
};

void
stead_lot_free (SteadLot *lot)
{
  if (lot == NULL)
    return;
  g_free (lot->code);
  g_free (lot->item_name);
  g_free (lot->supplier);
  g_free (lot->batch_name);
  g_free (lot->place_name);
  g_free (lot);
}

void
stead_move_free (SteadMove *move)
{
  if (move == NULL)
    return;
  g_free (move->lot_code);
  g_free (move->item_name);
  g_free (move->reason);
  g_free (move);
}

/* --- reading ---------------------------------------------------------------- */

#define LOT_SELECT \
  "SELECT l.id, l.code, l.item_id, i.name, i.kind, i.unit, l.day, l.best_by, r.id, r.supplier, r.is_gift," \
  " coalesce (rl.quantity_base, m.quantity_base, 0), coalesce (rl.cost_cents, m.cost_cents, 0), s.base, s.cents," \
  " l.batch_id, b.name, l.place_id, w.name FROM lot l JOIN item i ON i.id = l.item_id JOIN lot_stock s ON s.lot_id = l.id" \
  " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id" \
  " LEFT JOIN batch b ON b.id = l.batch_id LEFT JOIN place w ON w.id = l.place_id" \
  " LEFT JOIN movement m ON m.lot_id = l.id AND m.kind = 'made' AND l.batch_id IS NOT NULL"

static gpointer
lot_from_row (SteadStmt *stmt)
{
  SteadLot *lot = g_new0 (SteadLot, 1);
  double base = sqlite3_column_double (stmt, 13);

  lot->id = sqlite3_column_int64 (stmt, 0);
  lot->code = stead_stmt_text (stmt, 1);
  lot->item_id = sqlite3_column_int64 (stmt, 2);
  lot->item_name = stead_stmt_text (stmt, 3);
  lot->item_kind = (SteadItemKind) stead_repo_word (stmt, 4, stead_item_kind_words);
  lot->unit = stead_item_unit (stmt, 5);
  lot->day = stead_stmt_day (stmt, 6);
  lot->best_by = stead_stmt_day (stmt, 7);
  lot->receipt_id = sqlite3_column_int64 (stmt, 8);
  lot->supplier = stead_stmt_text (stmt, 9);
  lot->is_gift = sqlite3_column_int (stmt, 10) != 0;
  lot->received_base = sqlite3_column_double (stmt, 11);
  lot->received_cents = sqlite3_column_int64 (stmt, 12);
  lot->on_hand_base = base > STEAD_AMOUNT_EPSILON ? base : 0;
  lot->on_hand_cents = sqlite3_column_int64 (stmt, 14);
  lot->batch_id = sqlite3_column_int64 (stmt, 15);
  lot->batch_name = stead_stmt_text (stmt, 16);
  lot->place_id = sqlite3_column_int64 (stmt, 17);
  lot->place_name = stead_stmt_text (stmt, 18);
  return lot;
}

/* Shares the cents of an item among the @n lots of it that are at @lots, by what is left. */
static gboolean
share_item (SteadStore  *store,
            gpointer    *lots,
            guint        n,
            GError     **error)
{
  static const char sql[] = "SELECT coalesce (sum (s.cents), 0) FROM lot l JOIN lot_stock s ON s.lot_id = l.id"
                            " WHERE l.item_id = ?1";
  g_autofree double *weights = g_new (double, n);
  g_autofree gint64 *shares = g_new0 (gint64, n);
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 cents = 0;
  double sum = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, ((SteadLot *) lots[0])->item_id);
  if (!stead_repo_number (store, stmt, 0, &cents, error))
    return FALSE;
  for (guint i = 0; i < n; i++)
    sum += weights[i] = ((SteadLot *) lots[i])->on_hand_base;
  if (sum > 0)
    stead_money_split (cents, weights, n, shares);
  for (guint i = 0; i < n; i++)
    ((SteadLot *) lots[i])->on_hand_cents = shares[i];
  return TRUE;
}

/* On a farm that averages, a lot is worth its share of its item. */
static gboolean
share_average (SteadStore  *store,
               GPtrArray   *lots,
               GError     **error)
{
  guint first = 0;
  SteadStockMethod method;

  if (!stead_recost_method (store, &method, error))
    return FALSE;
  while (method != STEAD_STOCK_FIFO && first < lots->len)
    {
      gint64 item_id = ((SteadLot *) lots->pdata[first])->item_id;
      guint end = first + 1;

      while (end < lots->len && ((SteadLot *) lots->pdata[end])->item_id == item_id)
        end++;
      if (!share_item (store, lots->pdata + first, end - first, error))
        return FALSE;
      first = end;
    }
  return TRUE;
}

/* 1e-7 in the SQL is STEAD_AMOUNT_EPSILON. */
GPtrArray *
stead_lot_repo_list (SteadStore  *store,
                     gboolean     all,
                     GError     **error)
{
  static const char sql[] = LOT_SELECT " WHERE ?1 OR s.base > 1e-7 ORDER BY i.name, l.item_id, l.day, l.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) lots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, all != FALSE);
  lots = stead_repo_rows (store, stmt, lot_from_row, (GDestroyNotify) stead_lot_free, error);
  return lots != NULL && share_average (store, lots, error) ? g_steal_pointer (&lots) : NULL;
}

SteadLot *
stead_lot_repo_get (SteadStore  *store,
                    gint64       id,
                    GError     **error)
{
  static const char sql[] = LOT_SELECT " WHERE l.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, lot_from_row, error);
}

#define MOVE_SELECT \
  "SELECT m.id, m.lot_id, l.code, i.name, i.kind, i.unit, m.day, m.kind, m.quantity_base, m.cost_cents," \
  " coalesce (r.is_gift, 0), m.batch_id, r.id, m.reason, m.person_id" \
  " FROM movement m JOIN lot l ON l.id = m.lot_id JOIN item i ON i.id = l.item_id" \
  " LEFT JOIN receipt_line rl ON rl.id = l.receipt_line_id LEFT JOIN receipt r ON r.id = rl.receipt_id"

static gpointer
move_from_row (SteadStmt *stmt)
{
  SteadMove *move = g_new0 (SteadMove, 1);

  move->id = sqlite3_column_int64 (stmt, 0);
  move->lot_id = sqlite3_column_int64 (stmt, 1);
  move->lot_code = stead_stmt_text (stmt, 2);
  move->item_name = stead_stmt_text (stmt, 3);
  move->item_kind = (SteadItemKind) stead_repo_word (stmt, 4, stead_item_kind_words);
  move->unit = stead_item_unit (stmt, 5);
  move->day = stead_stmt_day (stmt, 6);
  move->kind = (SteadMoveKind) stead_repo_word (stmt, 7, stead_move_words);
  move->quantity_base = sqlite3_column_double (stmt, 8);
  move->cost_cents = sqlite3_column_int64 (stmt, 9);
  move->is_gift = sqlite3_column_int (stmt, 10) != 0;
  move->batch_id = sqlite3_column_int64 (stmt, 11);
  move->receipt_id = sqlite3_column_int64 (stmt, 12);
  move->reason = stead_stmt_text (stmt, 13);
  move->person_id = sqlite3_column_int64 (stmt, 14);
  return move;
}

GPtrArray *
stead_lot_repo_moves (SteadStore  *store,
                      gint64       lot_id,
                      GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.lot_id = ?1 ORDER BY m.day, m.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, lot_id, move_from_row, (GDestroyNotify) stead_move_free, error);
}

SteadMove *
stead_lot_repo_get_move (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, move_from_row, error);
}

GPtrArray *
stead_lot_repo_batch_moves (SteadStore  *store,
                            gint64       batch_id,
                            GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.batch_id = ?1 AND m.kind = 'used' ORDER BY m.day, m.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, batch_id, move_from_row, (GDestroyNotify) stead_move_free, error);
}

GPtrArray *
stead_lot_repo_use_moves (SteadStore  *store,
                          gint64       batch_id,
                          gint64       item_id,
                          SteadDay     from,
                          SteadDay     to,
                          GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.batch_id = ?1 AND m.day BETWEEN ?3 AND ?4 AND m.kind = 'used'"
                                        " AND +l.item_id = ?2 ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, batch_id);
  sqlite3_bind_int64 (stmt, 2, item_id);
  sqlite3_bind_int (stmt, 3, from);
  sqlite3_bind_int (stmt, 4, to);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

GPtrArray *
stead_lot_repo_unsold (SteadStore  *store,
                       SteadDay     from,
                       SteadDay     to,
                       GError     **error)
{
  static const char sql[] = MOVE_SELECT " WHERE m.kind IN ('lost', 'given', 'counted', 'corrected')"
                                        " AND m.day BETWEEN ?1 AND ?2 ORDER BY m.day, m.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, from);
  sqlite3_bind_int (stmt, 2, to);
  return stead_repo_rows (store, stmt, move_from_row, (GDestroyNotify) stead_move_free, error);
}

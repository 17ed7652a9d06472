/* stead-cash-paid.c - which receipts the cash book paid, and what is in it twice.
 *
 * A receipt that corrects another takes over what was paid on that one: the paper is
 * one, however often it was written down.
 */
#include "config.h"

#include "store/stead-cash-private.h"

#define CHAIN \
  STEAD_RECEIPT_CHAIN ", paid (last, cents, n) AS" \
  " (SELECT chain.last, sum (c.cents), sum (c.cents < 0 AND NOT EXISTS" \
  "    (SELECT 1 FROM cash_line x WHERE x.corrects_id = c.id))" \
  "   FROM cash_line c JOIN chain ON chain.id = c.receipt_id GROUP BY chain.last) "

#define PAID_COLUMNS \
  "r.id, r.day, (SELECT coalesce (sum (l.cost_cents), 0) FROM receipt_line l WHERE l.receipt_id = r.id)," \
  " coalesce (-p.cents, 0), coalesce (p.n, 0), r.is_gift"

static gpointer
paid_from_row (SteadStmt *stmt)
{
  SteadReceiptPaid *paid = g_new0 (SteadReceiptPaid, 1);

  paid->receipt_id = sqlite3_column_int64 (stmt, 0);
  paid->day = stead_stmt_day (stmt, 1);
  paid->total_cents = sqlite3_column_int64 (stmt, 2);
  paid->paid_cents = sqlite3_column_int64 (stmt, 3);
  paid->n_lines = sqlite3_column_int (stmt, 4);
  paid->is_gift = sqlite3_column_int (stmt, 5) != 0;
  return paid;
}

gboolean
stead_cash_repo_receipt_paid (SteadStore        *store,
                              gint64             receipt_id,
                              SteadReceiptPaid  *out,
                              GError           **error)
{
  static const char sql[] = CHAIN "SELECT " PAID_COLUMNS " FROM chain JOIN receipt r ON r.id = chain.last"
                            " LEFT JOIN paid p ON p.last = r.id WHERE chain.id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autofree SteadReceiptPaid *paid = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, receipt_id);
  paid = stead_repo_row (store, stmt, paid_from_row, error);
  if (paid == NULL)
    return FALSE;
  *out = *paid;
  return TRUE;
}

GPtrArray *
stead_cash_repo_receipts_off (SteadStore  *store,
                              GError     **error)
{
  static const char sql[] =
    CHAIN "SELECT " PAID_COLUMNS " FROM receipt r LEFT JOIN paid p ON p.last = r.id"
    " WHERE r.is_gift = 0 AND r.id NOT IN " STEAD_RECEIPTS_CORRECTED
    " AND coalesce (-p.cents, 0) <> (SELECT coalesce (sum (l.cost_cents), 0) FROM receipt_line l"
    "                                 WHERE l.receipt_id = r.id) ORDER BY r.day, r.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL ? stead_repo_rows (store, stmt, paid_from_row, g_free, error) : NULL;
}

GPtrArray *
stead_cash_repo_twins (SteadStore           *store,
                       const SteadCashLine  *line,
                       int                   days,
                       GError              **error)
{
  static const char sql[] =
    "SELECT " STEAD_CASH_COLUMNS " FROM " STEAD_CASH_LINES
    " WHERE c.account_id = ?1 AND c.day BETWEEN ?2 AND ?3 AND c.cents = ?4 AND c.id <> ?5"
    " AND coalesce (c.corrects_id, 0) <> ?5 AND c.id <> ?6 ORDER BY c.day, c.id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && line != NULL && days >= 0, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, line->account_id);
  sqlite3_bind_int (stmt, 2, line->day - days);
  sqlite3_bind_int (stmt, 3, line->day + days);
  sqlite3_bind_int64 (stmt, 4, line->cents);
  sqlite3_bind_int64 (stmt, 5, line->id);
  sqlite3_bind_int64 (stmt, 6, line->corrects_id);
  return stead_repo_rows (store, stmt, stead_cash_line_from_row, (GDestroyNotify) stead_cash_line_free, error);
}

GArray *
stead_receipt_repo_twins (SteadStore  *store,
                          gint64       receipt_id,
                          GError     **error)
{
  static const char sql[] =
    "SELECT o.id FROM receipt r JOIN receipt o ON o.id <> r.id AND lower (o.supplier) = lower (r.supplier)"
    " AND coalesce (o.corrects_id, 0) <> r.id AND coalesce (r.corrects_id, 0) <> o.id"
    " WHERE r.id = ?1 AND (o.reference = r.reference OR (o.day = r.day AND"
    "  (SELECT sum (cost_cents) FROM receipt_line WHERE receipt_id = o.id)"
    "   = (SELECT sum (cost_cents) FROM receipt_line WHERE receipt_id = r.id))) ORDER BY o.day, o.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_ids_of (store, sql, receipt_id, error);
}

/* stead-receipt-read.c - receipts as they stand in the file, and their sums. */
#include "config.h"

#include "store/stead-receipt-private.h"
#include "store/stead-repo-private.h"

SteadReceipt *
stead_receipt_new (void)
{
  SteadReceipt *receipt = g_new0 (SteadReceipt, 1);

  receipt->day = STEAD_DAY_NONE;
  receipt->signed_on = STEAD_DAY_NONE;
  receipt->lines = g_array_new (FALSE, TRUE, sizeof (SteadReceiptLine));
  return receipt;
}

void
stead_receipt_free (SteadReceipt *receipt)
{
  if (receipt == NULL)
    return;
  g_free (receipt->supplier);
  g_free (receipt->reference);
  g_free (receipt->note);
  g_array_unref (receipt->lines);
  g_free (receipt);
}

/* Returns: the sum of the lines */
gint64
stead_receipt_total_cents (const SteadReceipt *receipt)
{
  gint64 total = 0;

  g_return_val_if_fail (receipt != NULL, 0);
  for (guint i = 0; i < receipt->lines->len; i++)
    total += g_array_index (receipt->lines, SteadReceiptLine, i).cost_cents;
  return total;
}

SteadReceiptSums
stead_receipt_sums (GPtrArray *receipts)
{
  SteadReceiptSums sums = { 0 };

  g_return_val_if_fail (receipts != NULL, sums);
  for (guint i = 0; i < receipts->len; i++)
    {
      const SteadReceipt *receipt = receipts->pdata[i];

      if (receipt->corrected_by != 0)
        {
          sums.n_corrected++;
          continue;
        }
      sums.n++;
      *(receipt->is_gift ? &sums.gift_cents : &sums.paid_cents) += stead_receipt_total_cents (receipt);
    }
  return sums;
}

/* --- reading ---------------------------------------------------------------- */

#define RECEIPT_COLUMNS \
  "r.id, r.day, r.supplier, r.is_gift, r.reference, r.note, r.person_id, r.signed_by, r.signed_on, r.corrects_id, c.id"
#define RECEIPTS "receipt r LEFT JOIN receipt c ON c.corrects_id = r.id"
#define LINE_COLUMNS "rl.receipt_id, rl.id, rl.item_id, rl.quantity_base, rl.cost_cents, l.best_by, l.id"

static gpointer
receipt_from_row (SteadStmt *stmt)
{
  SteadReceipt *receipt = stead_receipt_new ();

  receipt->id = sqlite3_column_int64 (stmt, 0);
  receipt->day = stead_stmt_day (stmt, 1);
  receipt->supplier = stead_stmt_text (stmt, 2);
  receipt->is_gift = sqlite3_column_int (stmt, 3) != 0;
  receipt->reference = stead_stmt_text (stmt, 4);
  receipt->note = stead_stmt_text (stmt, 5);
  receipt->person_id = sqlite3_column_int64 (stmt, 6);
  receipt->signed_by = sqlite3_column_int64 (stmt, 7);
  receipt->signed_on = stead_stmt_day (stmt, 8);
  receipt->corrects_id = sqlite3_column_int64 (stmt, 9);
  receipt->corrected_by = sqlite3_column_int64 (stmt, 10);
  return receipt;
}

/* Lines come in the same order as the receipts that they belong to. */
static gboolean
read_lines (SteadStore  *store,
            SteadStmt   *stmt,
            GPtrArray   *receipts,
            GError     **error)
{
  guint at = 0;
  int found;

  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadReceiptLine line = { .id = sqlite3_column_int64 (stmt, 1),
                                .item_id = sqlite3_column_int64 (stmt, 2),
                                .quantity_base = sqlite3_column_double (stmt, 3),
                                .cost_cents = sqlite3_column_int64 (stmt, 4),
                                .best_by = stead_stmt_day (stmt, 5),
                                .lot_id = sqlite3_column_int64 (stmt, 6) };
      gint64 id = sqlite3_column_int64 (stmt, 0);

      while (at < receipts->len && ((SteadReceipt *) receipts->pdata[at])->id != id)
        at++;
      if (at < receipts->len)
        g_array_append_val (((SteadReceipt *) receipts->pdata[at])->lines, line);
    }
  return found == 0;
}

GPtrArray *
stead_receipt_repo_list (SteadStore  *store,
                         GError     **error)
{
  static const char sql[] = "SELECT " RECEIPT_COLUMNS " FROM " RECEIPTS " ORDER BY r.day DESC, r.id DESC";
  static const char lines_sql[] =
    "SELECT " LINE_COLUMNS " FROM receipt r JOIN receipt_line rl ON rl.receipt_id = r.id"
    " LEFT JOIN lot l ON l.receipt_line_id = rl.id ORDER BY r.day DESC, r.id DESC, rl.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadStmt) lines = NULL;
  g_autoptr(GPtrArray) receipts = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if ((stmt = stead_store_prepare (store, sql, error)) == NULL ||
      (lines = stead_store_prepare (store, lines_sql, error)) == NULL)
    return NULL;
  receipts = stead_repo_rows (store, stmt, receipt_from_row, (GDestroyNotify) stead_receipt_free, error);
  if (receipts == NULL || !read_lines (store, lines, receipts, error))
    return NULL;
  return g_steal_pointer (&receipts);
}

SteadReceipt *
stead_receipt_repo_get (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "SELECT " RECEIPT_COLUMNS " FROM " RECEIPTS " WHERE r.id = ?1";
  static const char lines_sql[] =
    "SELECT " LINE_COLUMNS " FROM receipt_line rl LEFT JOIN lot l ON l.receipt_line_id = rl.id"
    " WHERE rl.receipt_id = ?1 ORDER BY rl.id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadStmt) lines = NULL;
  g_autoptr(SteadReceipt) receipt = NULL;
  g_autoptr(GPtrArray) alone = g_ptr_array_new ();

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  if ((stmt = stead_store_prepare (store, sql, error)) == NULL ||
      (lines = stead_store_prepare (store, lines_sql, error)) == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  sqlite3_bind_int64 (lines, 1, id);
  receipt = stead_repo_row (store, stmt, receipt_from_row, error);
  if (receipt == NULL)
    return NULL;
  g_ptr_array_add (alone, receipt);
  return read_lines (store, lines, alone, error) ? g_steal_pointer (&receipt) : NULL;
}

/* stead-receipt-repo.c - purchases and gifts in kind, with their lines.
 *
 * A line, its lot and its movement "received" always agree.  A signed receipt is
 * never touched: a receipt that corrects it takes over what came out of its lots,
 * and takes the rest out of them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/stead-money.h"
#include "store/stead-closing-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-ledger-private.h"
#include "store/stead-receipt-private.h"
#include "store/stead-recost.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-seal.h"

/* --- checking --------------------------------------------------------------- */

static gboolean
check_line (SteadStore              *store,
            const SteadReceipt      *receipt,
            const SteadReceiptLine  *line,
            guint                    number,
            GError                 **error)
{
  g_autoptr(SteadItem) item = NULL;

  if (line->item_id == 0)
    return stead_repo_refuse (error, _("Line %u: choose what was bought."), number);
  item = stead_item_repo_get (store, line->item_id, error);
  if (item == NULL)
    return FALSE;
  if (!(line->quantity_base > STEAD_AMOUNT_EPSILON && line->quantity_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Line %u (%s): the amount must be above zero. Check the number."),
                              number, item->name);
  if (line->best_by != STEAD_DAY_NONE && line->best_by < receipt->day)
    return stead_repo_refuse (error, _("Line %u (%s): the best-by day is before the day it was bought."),
                              number, item->name);
  return stead_repo_check_cents (item->name, line->cost_cents, error);
}

static gboolean
check_receipt_day (SteadStore  *store,
                   SteadDay     day,
                   GError     **error)
{
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day on the receipt."));
  if (day > stead_store_get_today (store))
    {
      g_autofree char *text = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("%s is still to come. Enter the day on the receipt."), text);
    }
  return TRUE;
}

static gboolean
check_supplier (SteadReceipt  *receipt,
                GError       **error)
{
  g_autofree char *supplier = stead_repo_tidy (receipt->supplier);

  if (supplier == NULL)
    return stead_repo_refuse (error, _("Enter who it came from: a store, a family, a neighbor."));
  return stead_repo_check_name (receipt->supplier, error);
}

static gboolean
receipt_check (SteadStore    *store,
               SteadReceipt  *receipt,
               GError       **error)
{
  if (!check_receipt_day (store, receipt->day, error) || !check_supplier (receipt, error))
    return FALSE;
  if (!stead_repo_check_note (receipt->reference, error) || !stead_repo_check_note (receipt->note, error))
    return FALSE;
  if (receipt->lines->len == 0)
    return stead_repo_refuse (error, _("Enter at least one line: what was bought, how much, and what it cost."));
  for (guint i = 0; i < receipt->lines->len; i++)
    if (!check_line (store, receipt, &g_array_index (receipt->lines, SteadReceiptLine, i), i + 1, error))
      return FALSE;
  return TRUE;
}

static gboolean
refuse_signed (const SteadReceipt  *receipt,
               GError             **error)
{
  g_autofree char *when = stead_day_format (receipt->signed_on, STEAD_DAY_STYLE_MEDIUM);

  g_set_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_SIGNED,
               _("This receipt from %s was signed on %s and stays as it is. Enter a new receipt that corrects it."),
               receipt->supplier, when);
  return FALSE;
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_head (SteadStore    *store,
            SteadReceipt  *receipt,
            GError       **error)
{
  static const char insert_sql[] = "INSERT INTO receipt (day, supplier, is_gift, reference, note, person_id,"
                                   " corrects_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] = "UPDATE receipt SET day = ?1, supplier = ?2, is_gift = ?3, reference = ?4,"
                                   " note = ?5, person_id = ?6, corrects_id = ?7 WHERE id = ?8";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, receipt->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, receipt->day);
  stead_repo_bind_tidy (stmt, 2, receipt->supplier);
  sqlite3_bind_int (stmt, 3, receipt->is_gift != FALSE);
  stead_repo_bind_tidy (stmt, 4, receipt->reference);
  stead_repo_bind_tidy (stmt, 5, receipt->note);
  stead_stmt_bind_id (stmt, 6, receipt->person_id);
  stead_stmt_bind_id (stmt, 7, receipt->corrects_id);
  if (receipt->id != 0)
    sqlite3_bind_int64 (stmt, 8, receipt->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (receipt->id == 0)
    receipt->id = stead_store_last_id (store);
  return TRUE;
}

static gboolean
insert_line (SteadStore          *store,
             const SteadReceipt  *receipt,
             SteadReceiptLine    *line,
             GError             **error)
{
  static const char sql[] = "INSERT INTO receipt_line (receipt_id, item_id, quantity_base, cost_cents)"
                            " VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, receipt->id);
  sqlite3_bind_int64 (stmt, 2, line->item_id);
  sqlite3_bind_double (stmt, 3, line->quantity_base);
  sqlite3_bind_int64 (stmt, 4, line->cost_cents);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  line->id = stead_store_last_id (store);
  return stead_receipt_lot_insert (store, receipt->day, line, error);
}

static gboolean
update_line (SteadStore          *store,
             const SteadReceipt  *receipt,
             SteadReceiptLine    *line,
             gint64               lot_id,
             GError             **error)
{
  static const char sql[] = "UPDATE receipt_line SET quantity_base = ?1, cost_cents = ?2 WHERE id = ?3";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_double (stmt, 1, line->quantity_base);
  sqlite3_bind_int64 (stmt, 2, line->cost_cents);
  sqlite3_bind_int64 (stmt, 3, line->id);
  line->lot_id = lot_id;
  return stead_store_run (store, stmt, error) &&
         stead_receipt_lot_update (store, receipt->day, line, error);
}

static gboolean
delete_line (SteadStore              *store,
             const SteadReceiptLine  *line,
             GError                 **error)
{
  static const char sql[] = "DELETE FROM receipt_line WHERE id = ?1";

  return stead_receipt_lot_check_free (store, line->lot_id, error) &&
         stead_repo_run_id (store, sql, line->id, error);
}

/* The line of @receipt that keeps the old line: same id, same item. */
static SteadReceiptLine *
find_kept (const SteadReceipt      *receipt,
           const SteadReceiptLine  *old)
{
  for (guint i = 0; i < receipt->lines->len; i++)
    {
      SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, i);

      if (line->id == old->id && line->item_id == old->item_id)
        return line;
    }
  return NULL;
}

/* Old lines change or go; lines that match none of them are new. */
static gboolean
write_old_lines (SteadStore          *store,
                 const SteadReceipt  *receipt,
                 const SteadReceipt  *before,
                 GArray              *kept,
                 GError             **error)
{
  for (guint i = 0; i < before->lines->len; i++)
    {
      const SteadReceiptLine *old = &g_array_index (before->lines, SteadReceiptLine, i);
      SteadReceiptLine *line = find_kept (receipt, old);

      if (!stead_ledger_unsettle_lot (store, old->lot_id, before->day, error))
        return FALSE;
      if (line == NULL ? !delete_line (store, old, error)
                       : !update_line (store, receipt, line, old->lot_id, error))
        return FALSE;
      if (line != NULL)
        g_array_append_val (kept, line->id);
    }
  return TRUE;
}

static gboolean
contains_id (const GArray *ids,
             gint64        id)
{
  for (guint i = 0; i < ids->len; i++)
    if (g_array_index (ids, gint64, i) == id)
      return TRUE;
  return FALSE;
}

static gboolean
write_lines (SteadStore          *store,
             const SteadReceipt  *receipt,
             const SteadReceipt  *before,
             GError             **error)
{
  g_autoptr(GArray) kept = g_array_new (FALSE, FALSE, sizeof (gint64));

  if (before != NULL && !write_old_lines (store, receipt, before, kept, error))
    return FALSE;
  for (guint i = 0; i < receipt->lines->len; i++)
    {
      SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, i);

      if (!contains_id (kept, line->id) && !insert_line (store, receipt, line, error))
        return FALSE;
    }
  return TRUE;
}

/* Whether only the head of the receipt changes: its lots, and what was taken of them,
 * stay as they are and need not be settled anew. */
static gboolean
has_same_lines (const SteadReceipt *receipt,
                const SteadReceipt *before)
{
  if (receipt->day != before->day || receipt->lines->len != before->lines->len)
    return FALSE;
  for (guint i = 0; i < before->lines->len; i++)
    {
      const SteadReceiptLine *old = &g_array_index (before->lines, SteadReceiptLine, i);
      const SteadReceiptLine *line = find_kept (receipt, old);

      if (line == NULL || line->cost_cents != old->cost_cents || line->best_by != old->best_by ||
          line->quantity_base < old->quantity_base || line->quantity_base > old->quantity_base)
        return FALSE;
    }
  return TRUE;
}

/* A line tells its lot once it is saved. */
static void
name_lots (SteadReceipt       *receipt,
           const SteadReceipt *before)
{
  for (guint i = 0; i < before->lines->len; i++)
    {
      const SteadReceiptLine *old = &g_array_index (before->lines, SteadReceiptLine, i);

      find_kept (receipt, old)->lot_id = old->lot_id;
    }
}

static void
add_items (const SteadReceipt *receipt,
           GArray             *items)
{
  for (guint i = 0; receipt != NULL && i < receipt->lines->len; i++)
    {
      gint64 id = g_array_index (receipt->lines, SteadReceiptLine, i).item_id;

      if (!contains_id (items, id))
        g_array_append_val (items, id);
    }
}

/* Settles each item of the receipts once; both others may be %NULL. */
static gboolean
settle_lines (SteadStore          *store,
              const SteadReceipt  *receipt,
              const SteadReceipt  *before,
              const SteadReceipt  *wrong,
              SteadDay             from,
              GError             **error)
{
  g_autoptr(GArray) items = g_array_new (FALSE, FALSE, sizeof (gint64));

  add_items (receipt, items);
  add_items (before, items);
  add_items (wrong, items);
  for (guint i = 0; i < items->len; i++)
    if (!stead_ledger_settle (store, g_array_index (items, gint64, i), from, error))
      return FALSE;
  return TRUE;
}

/* What kitchen batches made of it costs what it costs now. */
static gboolean
recost_users (SteadStore          *store,
              const SteadReceipt  *receipt,
              GError             **error)
{
  g_autoptr(GArray) lot_ids = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < receipt->lines->len; i++)
    g_array_append_val (lot_ids, g_array_index (receipt->lines, SteadReceiptLine, i).lot_id);
  return stead_recost_users (store, (const gint64 *) (void *) lot_ids->data, lot_ids->len, error);
}

/* --- public ----------------------------------------------------------------- */

/* For a new receipt *before stays %NULL; *wrong is the one that it corrects. */
static gboolean
load_others (SteadStore           *store,
             const SteadReceipt   *receipt,
             SteadReceipt        **before,
             SteadReceipt        **wrong,
             GError              **error)
{
  if (receipt->id != 0)
    {
      *before = stead_receipt_repo_get (store, receipt->id, error);
      if (*before == NULL)
        return FALSE;
      if ((*before)->signed_by != 0)
        return refuse_signed (*before, error);
      if ((*before)->corrects_id != receipt->corrects_id)
        return stead_repo_refuse (error, _("A receipt cannot be turned into a correction, or back. Enter a new one."));
      return TRUE;
    }
  if (receipt->corrects_id == 0)
    return TRUE;
  *wrong = stead_receipt_repo_get (store, receipt->corrects_id, error);
  return *wrong != NULL && stead_receipt_check_corrects (store, *wrong, error);
}

static gboolean
save_all (SteadStore          *store,
          SteadReceipt        *receipt,
          const SteadReceipt  *before,
          const SteadReceipt  *wrong,
          GError             **error)
{
  SteadDay from = receipt->day;

  if (before != NULL)
    from = MIN (from, before->day);
  if (wrong != NULL)
    from = MIN (from, wrong->day);
  if (!write_head (store, receipt, error))
    return FALSE;
  if (before != NULL && has_same_lines (receipt, before))
    {
      name_lots (receipt, before);
      return TRUE;
    }
  return write_lines (store, receipt, before, error) &&
         (wrong == NULL || stead_receipt_take_over (store, wrong, receipt, error)) &&
         settle_lines (store, receipt, before, wrong, from, error) &&
         recost_users (store, receipt, error);
}

gboolean
stead_receipt_repo_save (SteadStore    *store,
                         SteadReceipt  *receipt,
                         GError       **error)
{
  g_autoptr(SteadReceipt) before = NULL;
  g_autoptr(SteadReceipt) wrong = NULL;

  g_autoptr(GArray) lines = NULL;
  gint64 id;

  g_return_val_if_fail (STEAD_IS_STORE (store) && receipt != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  id = receipt->id;
  lines = g_array_copy (receipt->lines);
  if (receipt_check (store, receipt, error) &&
      load_others (store, receipt, &before, &wrong, error) &&
      save_all (store, receipt, before, wrong, error))
    return TRUE;
  receipt->id = id;
  if (lines->len > 0)
    memcpy (receipt->lines->data, lines->data, lines->len * sizeof (SteadReceiptLine));
  return FALSE;
}

static gboolean
delete_all (SteadStore          *store,
            const SteadReceipt  *receipt,
            GError             **error)
{
  static const char sql[] = "DELETE FROM receipt WHERE id = ?1";

  for (guint i = 0; i < receipt->lines->len; i++)
    {
      const SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, i);

      if (!stead_ledger_unsettle_lot (store, line->lot_id, receipt->day, error) ||
          !delete_line (store, line, error))
        return FALSE;
    }
  return stead_repo_run_id (store, sql, receipt->id, error) &&
         settle_lines (store, receipt, NULL, NULL, receipt->day, error);
}

/* Refused once it is signed, corrects another, or something of it was used by hand. */
gboolean
stead_receipt_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  g_autoptr(SteadReceipt) receipt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  receipt = stead_receipt_repo_get (store, id, error);
  if (receipt == NULL)
    return FALSE;
  if (receipt->signed_by != 0)
    return refuse_signed (receipt, error);
  if (receipt->corrects_id != 0)
    return stead_repo_refuse (error, _("This receipt corrects a signed one and cannot be deleted. "
                                       "Change its lines instead."));
  return delete_all (store, receipt, error);
}

/* --- signing ---------------------------------------------------------------- */

static gboolean
check_advisor (SteadStore  *store,
               gint64       id,
               GError     **error)
{
  static const char sql[] = "SELECT role = 'advisor' FROM person WHERE id = ?1";
  gint64 is_advisor = stead_repo_count_id (store, sql, id, error);

  if (is_advisor == 0)
    return stead_repo_refuse (error, _("Only an advisor signs receipts. Choose an advisor."));
  return is_advisor == 1;
}

gboolean
stead_receipt_repo_sign (SteadStore  *store,
                         gint64       id,
                         gint64       advisor_id,
                         GError     **error)
{
  g_autoptr(SteadReceipt) receipt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  receipt = stead_receipt_repo_get (store, id, error);
  if (receipt == NULL || !check_advisor (store, advisor_id, error))
    return FALSE;
  if (receipt->signed_by != 0)
    return refuse_signed (receipt, error);
  return stead_seal_receipt (store, id, advisor_id, stead_store_get_today (store), error);
}

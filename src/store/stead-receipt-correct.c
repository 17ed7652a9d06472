/* stead-receipt-correct.c - a receipt takes the place of a signed one that was wrong.
 *
 * The signed one is never touched: the later one takes over what came out of its lots,
 * and takes the rest out of them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-closing-repo.h"
#include "store/stead-ledger-private.h"
#include "store/stead-receipt-private.h"

gboolean
stead_receipt_check_corrects (SteadStore          *store,
                              const SteadReceipt  *wrong,
                              GError             **error)
{
  static const char sql[] = "SELECT count (*) FROM receipt WHERE corrects_id = ?1";
  gint64 others;

  if (wrong->signed_by == 0)
    return stead_repo_refuse (error, _("The receipt from %s is not signed yet. Change it instead of correcting it."),
                              wrong->supplier);
  others = stead_repo_count_id (store, sql, wrong->id, error);
  if (others > 0)
    return stead_repo_refuse (error, _("The receipt from %s was corrected before. Correct the later receipt."),
                              wrong->supplier);
  return others == 0;
}

/* The nth line of @item_id. */
static const SteadReceiptLine *
nth_line_of (const SteadReceipt *receipt,
             gint64              item_id,
             guint               n)
{
  for (guint i = 0; i < receipt->lines->len; i++)
    {
      const SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, i);

      if (line->item_id == item_id && n-- == 0)
        return line;
    }
  return NULL;
}

/* The line that takes the place of the wrong one at @at: the nth of the same item. */
static const SteadReceiptLine *
right_line (const SteadReceipt *wrong,
            guint               at,
            const SteadReceipt *receipt)
{
  gint64 item_id = g_array_index (wrong->lines, SteadReceiptLine, at).item_id;
  guint n = 0;

  for (guint i = 0; i < at; i++)
    n += g_array_index (wrong->lines, SteadReceiptLine, i).item_id == item_id;
  return nth_line_of (receipt, item_id, n);
}

/* What came out of a wrong receipt's lots by hand goes over to the right ones; what
 * the logs took is settled anew; the rest leaves the wrong lots, money and all. */
static gboolean
take_over_line (SteadStore              *store,
                const SteadReceipt      *wrong,
                const SteadReceiptLine  *line,
                const SteadReceipt      *receipt,
                const SteadReceiptLine  *right,
                const char              *reason,
                GError                 **error)
{
  return stead_ledger_unsettle_lot (store, line->lot_id, wrong->day, error) &&
         (right == NULL || stead_receipt_lot_take_over (store, line->lot_id, receipt->day, right, error)) &&
         stead_receipt_lot_empty (store, line->lot_id, wrong->day, reason, receipt->person_id, error);
}

/* In closed days all stays as it is: what is left of the wrong lot leaves it on the day
 * of the correction, and what was taken of it comes off the right one. */
static gboolean
take_over_closed (SteadStore              *store,
                  const SteadReceiptLine  *line,
                  const SteadReceipt      *receipt,
                  const SteadReceiptLine  *right,
                  SteadDay                 closed,
                  const char              *reason,
                  GError                 **error)
{
  return stead_ledger_unsettle_lot (store, line->lot_id, closed + 1, error) &&
         (right == NULL || stead_receipt_lot_take_off (store, line, receipt->day, right, reason, receipt->person_id, error)) &&
         stead_receipt_lot_empty (store, line->lot_id, receipt->day, reason, receipt->person_id, error);
}

gboolean
stead_receipt_take_over (SteadStore          *store,
                         const SteadReceipt  *wrong,
                         const SteadReceipt  *receipt,
                         GError             **error)
{
  g_autofree char *when = stead_day_format (receipt->day, STEAD_DAY_STYLE_ISO);
  /* Translators: why a lot was emptied; %s is a day as 2026-03-03. */
  g_autofree char *reason = g_strdup_printf (_("Corrected by the receipt of %s"), when);
  SteadDay closed;

  if (!stead_closing_repo_last (store, &closed, error))
    return FALSE;
  for (guint i = 0; i < wrong->lines->len; i++)
    {
      const SteadReceiptLine *line = &g_array_index (wrong->lines, SteadReceiptLine, i);
      const SteadReceiptLine *right = right_line (wrong, i, receipt);
      gboolean is_closed = closed != STEAD_DAY_NONE && wrong->day <= closed;

      if (is_closed ? !take_over_closed (store, line, receipt, right, closed, reason, error)
                    : !take_over_line (store, wrong, line, receipt, right, reason, error))
        return FALSE;
    }
  return TRUE;
}

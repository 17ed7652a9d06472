/* stead-receipt-line-row.h - one line of a receipt: item, amount, cost, best-by. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "store/stead-receipt-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECEIPT_LINE_ROW (stead_receipt_line_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadReceiptLineRow, stead_receipt_line_row, STEAD, RECEIPT_LINE_ROW, GtkWidget)

/* Signals: "changed" (the cost may be another), "removed" (its button was pressed). */

GtkWidget *stead_receipt_line_row_new       (SteadDesk *desk);
/* @items: (element-type SteadItem): what can be chosen; the choice stays. */
void       stead_receipt_line_row_set_items (SteadReceiptLineRow *self, GPtrArray *items);
void       stead_receipt_line_row_show      (SteadReceiptLineRow *self, const SteadReceiptLine *line);
void       stead_receipt_line_row_choose    (SteadReceiptLineRow *self, gint64 item_id);
/* %FALSE after a field has told what is wrong.  An id shown before is kept. */
gboolean   stead_receipt_line_row_read      (SteadReceiptLineRow *self, SteadReceiptLine *out);
/* What stands in the cost so far, without a message; 0 if it is not a sum. */
gint64     stead_receipt_line_row_peek_cost (SteadReceiptLineRow *self);

G_END_DECLS

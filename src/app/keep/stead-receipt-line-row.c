/* stead-receipt-line-row.c - one line of a receipt. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-receipt-line-row.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-item-repo.h"

struct _SteadReceiptLineRow
{
  GtkWidget    parent_instance;

  char        *currency;
  SteadDay     today;
  GPtrArray   *items;      /* of SteadItem */
  gint64       item_id;    /* chosen */
  gint64       line_id;    /* on file; 0: not yet */
  gint64       lot_id;

  GtkDropDown *item;
  SteadField  *quantity, *cost, *best_by;
};

enum { CHANGED, REMOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SteadReceiptLineRow, stead_receipt_line_row, GTK_TYPE_WIDGET)

static const SteadItem *
chosen_item (SteadReceiptLineRow *self)
{
  guint at = gtk_drop_down_get_selected (self->item);

  return self->items != NULL && at < self->items->len ? self->items->pdata[at] : NULL;
}

static void
item_cb (SteadReceiptLineRow *self)
{
  const SteadItem *item = chosen_item (self);

  if (item == NULL)
    return;
  self->item_id = item->id;
  stead_field_set_unit (self->quantity, item->unit);
}

static void
cost_cb (SteadReceiptLineRow *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
remove_cb (SteadReceiptLineRow *self)
{
  g_signal_emit (self, signals[REMOVED], 0);
}

static void
stead_receipt_line_row_dispose (GObject *object)
{
  SteadReceiptLineRow *self = STEAD_RECEIPT_LINE_ROW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_RECEIPT_LINE_ROW);
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->items, g_ptr_array_unref);
  g_clear_pointer (&self->currency, g_free);
  G_OBJECT_CLASS (stead_receipt_line_row_parent_class)->dispose (object);
}

static void
stead_receipt_line_row_class_init (SteadReceiptLineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_receipt_line_row_dispose;
  signals[CHANGED] = g_signal_new ("changed", STEAD_TYPE_RECEIPT_LINE_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  signals[REMOVED] = g_signal_new ("removed", STEAD_TYPE_RECEIPT_LINE_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-receipt-line.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptLineRow, item);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptLineRow, quantity);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptLineRow, cost);
  gtk_widget_class_bind_template_child (widget_class, SteadReceiptLineRow, best_by);
  gtk_widget_class_bind_template_callback (widget_class, item_cb);
  gtk_widget_class_bind_template_callback (widget_class, cost_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
stead_receipt_line_row_init (SteadReceiptLineRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
}

GtkWidget *
stead_receipt_line_row_new (SteadDesk *desk)
{
  SteadReceiptLineRow *self = g_object_new (STEAD_TYPE_RECEIPT_LINE_ROW, NULL);

  self->currency = g_strdup (stead_desk_get_farm (desk)->currency);
  self->today = stead_store_get_today (stead_desk_get_store (desk));
  stead_field_set_currency (self->cost, self->currency);
  stead_field_set_today (self->best_by, self->today);
  return GTK_WIDGET (self);
}

void
stead_receipt_line_row_set_items (SteadReceiptLineRow *self,
                                  GPtrArray           *items)
{
  g_autoptr(GtkStringList) names = gtk_string_list_new (NULL);
  gint64 before = self->item_id;

  g_return_if_fail (STEAD_IS_RECEIPT_LINE_ROW (self));

  for (guint i = 0; i < items->len; i++)
    gtk_string_list_append (names, ((SteadItem *) items->pdata[i])->name);
  g_clear_pointer (&self->items, g_ptr_array_unref);
  self->items = g_ptr_array_ref (items);
  gtk_drop_down_set_model (self->item, G_LIST_MODEL (names));
  stead_receipt_line_row_choose (self, before);
}

void
stead_receipt_line_row_choose (SteadReceiptLineRow *self,
                               gint64               item_id)
{
  g_return_if_fail (STEAD_IS_RECEIPT_LINE_ROW (self));

  for (guint i = 0; i < self->items->len; i++)
    if (((SteadItem *) self->items->pdata[i])->id == item_id)
      gtk_drop_down_set_selected (self->item, i);
  item_cb (self);
}

void
stead_receipt_line_row_show (SteadReceiptLineRow    *self,
                             const SteadReceiptLine *line)
{
  g_return_if_fail (STEAD_IS_RECEIPT_LINE_ROW (self));

  self->line_id = line->id;
  self->lot_id = line->lot_id;
  stead_receipt_line_row_choose (self, line->item_id);
  stead_field_show_quantity (self->quantity, line->quantity_base);
  stead_field_show_money (self->cost, line->cost_cents);
  if (line->best_by != STEAD_DAY_NONE)
    stead_field_show_day (self->best_by, line->best_by);
}

gboolean
stead_receipt_line_row_read (SteadReceiptLineRow *self,
                             SteadReceiptLine    *out)
{
  SteadReceiptLine line = { .id = self->line_id, .lot_id = self->lot_id, .item_id = self->item_id };
  gboolean good = stead_field_read_quantity (self->quantity, 0, &line.quantity_base);

  good &= stead_field_read_money (self->cost, 0, &line.cost_cents);
  good &= stead_field_read_day (self->best_by, STEAD_DAY_NONE, &line.best_by);
  if (!good)
    return FALSE;
  if (!(line.quantity_base > 0))
    {
      stead_field_set_error (self->quantity, _("Enter more than zero."));
      return FALSE;
    }
  if (line.cost_cents < 0)
    {
      stead_field_set_error (self->cost, _("Enter a cost of 0 or more."));
      return FALSE;
    }
  *out = line;
  return TRUE;
}

gint64
stead_receipt_line_row_peek_cost (SteadReceiptLineRow *self)
{
  gint64 cents = 0;

  g_return_val_if_fail (STEAD_IS_RECEIPT_LINE_ROW (self), 0);

  if (stead_field_is_empty (self->cost)
      || !stead_money_parse (stead_field_get_text (self->cost), self->currency, &cents, NULL))
    return 0;
  return cents;
}

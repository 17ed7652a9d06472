/* stead-order-dialog.c - one order taken before a sale day. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-order-dialog.h"

#include "app/sell/stead-sell-parts.h"
#include "store/stead-sale-tally.h"

struct _SteadOrderDialog
{
  SteadDialog     parent_instance;

  SteadSaleOrder *order;
  SteadField     *who, *units, *note;
  SteadPick      *good;
  GtkCheckButton *paid;
};

G_DEFINE_FINAL_TYPE (SteadOrderDialog, stead_order_dialog, STEAD_TYPE_DIALOG)

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_sale_order_save (store, data, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_sale_order_delete (store, ((SteadSaleOrder *) data)->id, error);
}

static gboolean
stead_order_dialog_save (SteadDialog  *dialog,
                         GError      **error)
{
  SteadOrderDialog *self = STEAD_ORDER_DIALOG (dialog);
  SteadSaleOrder *order = self->order;

  if (!stead_sell_read_units (self->units, 0, &order->units))
    return FALSE;
  g_free (order->who);
  order->who = g_strdup (stead_field_get_text (self->who));
  g_free (order->note);
  order->note = g_strdup (stead_field_get_text (self->note));
  order->line_id = stead_pick_get (self->good);
  order->paid = gtk_check_button_get_active (self->paid);
  return stead_desk_act (stead_dialog_get_desk (dialog), _("an order"), save_act, order, error);
}

static gboolean
stead_order_dialog_remove (SteadDialog  *dialog,
                           GError      **error)
{
  return stead_desk_act (stead_dialog_get_desk (dialog), _("deleting an order"), remove_act,
                         STEAD_ORDER_DIALOG (dialog)->order, error);
}

static void
stead_order_dialog_dispose (GObject *object)
{
  g_clear_pointer (&STEAD_ORDER_DIALOG (object)->order, stead_sale_order_free);
  G_OBJECT_CLASS (stead_order_dialog_parent_class)->dispose (object);
}

static void
stead_order_dialog_class_init (SteadOrderDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_order_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_order_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_order_dialog_remove;
}

static void
stead_order_dialog_init (SteadOrderDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->who = stead_sell_field (box, _("Who (may be left out)"), STEAD_FIELD_TEXT);
  self->good = stead_sell_pick (box, _("What"));
  self->units = stead_sell_field (box, _("How many"), STEAD_FIELD_NUMBER);
  g_object_set (self->units, "required", TRUE, NULL);
  self->paid = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_("Paid before the sale: the money is in the cash book already")));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->paid));
  self->note = stead_sell_field (box, _("Note"), STEAD_FIELD_TEXT);
  g_object_set (self, "content", box, "save-label", _("Save order"), "default-width", 480, NULL);
}

static SteadSaleOrder *
find_order (SteadStore  *store,
            gint64       sale_id,
            gint64       order_id,
            GError     **error)
{
  g_autoptr(GPtrArray) orders = stead_sale_order_list (store, sale_id, error);
  SteadSaleOrder *order = g_new0 (SteadSaleOrder, 1);

  order->sale_id = sale_id;
  for (guint i = 0; orders != NULL && i < orders->len; i++)
    if (((SteadSaleOrder *) orders->pdata[i])->id == order_id)
      {
        stead_sale_order_free (order);
        return g_ptr_array_steal_index (orders, i);
      }
  return order;
}

void
stead_order_dialog_show (GtkWidget *parent,
                         SteadDesk *desk,
                         gint64     sale_id,
                         gint64     order_id)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, &error);
  SteadOrderDialog *self;

  if (sale == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_ORDER_DIALOG, "title", _("Order"),
                       "delete-label", order_id != 0 ? _("Delete order") : NULL, NULL);
  self->order = find_order (store, sale_id, order_id, &error);
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];

      stead_pick_append (self->good, good->id, good->name);
    }
  stead_pick_show (self->good, self->order->line_id);
  stead_field_set_text (self->who, self->order->who);
  stead_field_set_text (self->note, self->order->note);
  if (order_id != 0)
    stead_field_show_number (self->units, self->order->units);
  gtk_check_button_set_active (self->paid, self->order->paid);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}

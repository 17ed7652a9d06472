/* stead-stall-line-dialog.c - price and amount of one product, changed in the middle of a sale. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-stall-line-dialog.h"

#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"
#include "store/stead-sale-tally.h"

struct _SteadStallLineDialog
{
  SteadDialog  parent_instance;

  gint64       line_id;
  gint64       cents;
  double       brought_units;
  SteadField  *price, *brought;
};

G_DEFINE_FINAL_TYPE (SteadStallLineDialog, stead_stall_line_dialog, STEAD_TYPE_DIALOG)

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadStallLineDialog *self = data;

  return stead_sale_tally_set_brought (store, self->line_id, self->brought_units, error) &&
         stead_sale_tally_set_price (store, self->line_id, self->cents, stead_sell_now (), error);
}

static gboolean
stead_stall_line_dialog_save (SteadDialog  *dialog,
                              GError      **error)
{
  SteadStallLineDialog *self = STEAD_STALL_LINE_DIALOG (dialog);
  gboolean good = stead_field_read_money (self->price, 0, &self->cents);

  good &= stead_sell_read_units (self->brought, 0, &self->brought_units);
  return good && stead_desk_act (stead_dialog_get_desk (dialog), _("a change at the stall"), save_act, self, error);
}

static void
stead_stall_line_dialog_class_init (SteadStallLineDialogClass *klass)
{
  STEAD_DIALOG_CLASS (klass)->save = stead_stall_line_dialog_save;
}

static void
stead_stall_line_dialog_init (SteadStallLineDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->price = stead_sell_field (box, _("Price from now on"), STEAD_FIELD_MONEY);
  self->brought = stead_sell_field (box, _("Brought"), STEAD_FIELD_NUMBER);
  g_object_set (self->price, "required", TRUE, NULL);
  g_object_set (self->brought, "required", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), stead_make_label (_("What was sold before keeps its price. Both prices are kept, with the time."), "soft"));
  g_object_set (self, "content", box, "save-label", _("Save"), "default-width", 420, NULL);
}

void
stead_stall_line_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     sale_id,
                              gint64     line_id)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, &error);
  const SteadSaleGood *good = sale != NULL ? stead_sale_find_good (sale, line_id) : NULL;
  gint64 price = good != NULL ? stead_sale_tally_price (store, line_id, &error) : -1;
  SteadStallLineDialog *self;

  if (price < 0)
    {
      stead_desk_say (desk, error != NULL ? error->message : _("This is not there any more."), FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_STALL_LINE_DIALOG, "title", good->name, NULL);
  self->line_id = line_id;
  stead_field_set_currency (self->price, stead_desk_get_farm (desk)->currency);
  stead_field_show_money (self->price, price);
  stead_field_show_number (self->brought, stead_sale_good_brought (good));
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}

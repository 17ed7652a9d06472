/* stead-again-sale-dialog.c - the plan of a sale, copied to another day. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/sell/stead-again-sale-dialog.h"

#include "app/make/stead-make-parts.h"
#include "app/sell/stead-sell-parts.h"

struct _SteadAgainSaleDialog
{
  SteadDialog  parent_instance;

  gint64       sale_id, new_id;
  SteadDay     to;
  SteadField  *day;
};

G_DEFINE_FINAL_TYPE (SteadAgainSaleDialog, stead_again_sale_dialog, STEAD_TYPE_DIALOG)

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadAgainSaleDialog *self = data;

  return stead_sale_repo_again (store, self->sale_id, self->to, &self->new_id, error);
}

static gboolean
stead_again_sale_dialog_save (SteadDialog  *dialog,
                              GError      **error)
{
  SteadAgainSaleDialog *self = STEAD_AGAIN_SALE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autoptr(GError) problem = NULL;

  if (!stead_field_read_day (self->day, STEAD_DAY_NONE, &self->to))
    return FALSE;
  if (stead_desk_act (desk, _("a sale planned once more"), save_act, self, &problem))
    {
      stead_desk_jump (desk, STEAD_TARGET_SALE, self->new_id);
      return TRUE;
    }
  stead_field_set_error (self->day, problem->message);
  return FALSE;
}

static void
stead_again_sale_dialog_class_init (SteadAgainSaleDialogClass *klass)
{
  STEAD_DIALOG_CLASS (klass)->save = stead_again_sale_dialog_save;
}

static void
stead_again_sale_dialog_init (SteadAgainSaleDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->day = stead_sell_field (box, _("Day of the next sale"), STEAD_FIELD_DAY);
  g_object_set (self->day, "required", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), stead_make_label (_("Products, costs, shifts, float and what to bring are copied. Prices are those of that day."), "soft"));
  g_object_set (self, "content", box, "save-label", _("Plan it"), "default-width", 420, NULL);
}

void
stead_again_sale_dialog_show (GtkWidget *parent,
                              SteadDesk *desk,
                              gint64     sale_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, NULL);
  SteadAgainSaleDialog *self;

  if (sale == NULL)
    return;
  self = g_object_new (STEAD_TYPE_AGAIN_SALE_DIALOG, "title", sale->name, NULL);
  self->sale_id = sale_id;
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, MAX (sale->day, stead_store_get_today (store)) + 7);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
}

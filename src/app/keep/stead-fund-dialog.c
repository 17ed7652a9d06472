/* stead-fund-dialog.c - money that may be used for one thing only. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-fund-dialog.h"

#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-cash-repo.h"
#include "store/stead-store-watch.h"

struct _SteadFundDialog
{
  SteadDialog  parent_instance;

  SteadFund   *fund;

  SteadField  *name, *purpose, *closed;
};

G_DEFINE_FINAL_TYPE (SteadFundDialog, stead_fund_dialog, STEAD_TYPE_DIALOG)

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadFund *fund = data;

  stead_store_watch_id (store, &fund->id);
  return stead_fund_repo_save (store, fund, error);
}

static gboolean
stead_fund_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadFundDialog *self = STEAD_FUND_DIALOG (dialog);
  SteadFund *fund = self->fund;
  const char *name = NULL;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->closed, STEAD_DAY_NONE, &fund->closed_on);
  if (!good)
    return FALSE;
  g_free (fund->name);
  fund->name = g_strstrip (g_strdup (name));
  g_free (fund->purpose);
  fund->purpose = stead_field_is_empty (self->purpose) ? NULL : g_strdup (stead_field_get_text (self->purpose));
  /* Translators: name of a step to undo; name of a fund. */
  step = g_strdup_printf (_("fund “%s”"), fund->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, fund, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_fund_repo_delete (store, ((SteadFund *) data)->id, error);
}

static gboolean
stead_fund_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  SteadFundDialog *self = STEAD_FUND_DIALOG (dialog);
  /* Translators: name of a step to undo; name of a fund. */
  g_autofree char *step = g_strdup_printf (_("deleting the fund “%s”"), self->fund->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->fund, error);
}

static void
stead_fund_dialog_dispose (GObject *object)
{
  SteadFundDialog *self = STEAD_FUND_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_FUND_DIALOG);
  g_clear_pointer (&self->fund, stead_fund_free);
  G_OBJECT_CLASS (stead_fund_dialog_parent_class)->dispose (object);
}

static void
stead_fund_dialog_class_init (SteadFundDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  G_OBJECT_CLASS (klass)->dispose = stead_fund_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_fund_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_fund_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-fund-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadFundDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadFundDialog, purpose);
  gtk_widget_class_bind_template_child (widget_class, SteadFundDialog, closed);
}

static void
stead_fund_dialog_init (SteadFundDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static SteadFund *
load_fund (SteadStore  *store,
           gint64       id,
           GError     **error)
{
  g_autoptr(GPtrArray) funds = NULL;
  SteadFund *fund;

  if (id == 0)
    {
      fund = g_new0 (SteadFund, 1);
      fund->closed_on = STEAD_DAY_NONE;
      return fund;
    }
  funds = stead_fund_repo_list (store, TRUE, error);
  for (guint i = 0; funds != NULL && i < funds->len; i++)
    if (((SteadFund *) funds->pdata[i])->id == id)
      return g_ptr_array_steal_index (funds, i);
  return NULL;
}

void
stead_fund_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     fund_id)
{
  g_autoptr(GError) error = NULL;
  SteadFund *fund;
  SteadFundDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  fund = load_fund (stead_desk_get_store (desk), fund_id, &error);
  if (fund == NULL)
    {
      if (error != NULL)
        stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_FUND_DIALOG, "title", fund_id == 0 ? _("New fund") : _("Fund"),
                       "delete-label", fund_id != 0 ? _("Delete fund") : NULL, NULL);
  self->fund = fund;
  stead_field_set_today (self->closed, stead_store_get_today (stead_desk_get_store (desk)));
  stead_field_set_text (self->name, fund->name != NULL ? fund->name : "");
  stead_field_set_text (self->purpose, fund->purpose != NULL ? fund->purpose : "");
  if (fund->closed_on != STEAD_DAY_NONE)
    stead_field_show_day (self->closed, fund->closed_on);
  gtk_widget_set_visible (GTK_WIDGET (self->closed), fund_id != 0);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}

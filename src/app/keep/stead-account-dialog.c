/* stead-account-dialog.c - where money lies: a till box, an account. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-account-dialog.h"

#include "answer/stead-cash-words.h"
#include "app/keep/stead-cash-picks.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "store/stead-store-watch.h"

struct _SteadAccountDialog
{
  SteadDialog   parent_instance;

  SteadAccount *account;
  gboolean      is_named;   /* the name is the person's own, not that of the kind */

  SteadField   *name, *opened, *opening, *closed;
  SteadPick    *kind;
  GtkLabel     *state, *caution;
};

G_DEFINE_FINAL_TYPE (SteadAccountDialog, stead_account_dialog, STEAD_TYPE_DIALOG)

/* A new account is called after its kind until a person names it. */
static void
kind_cb (SteadAccountDialog *self)
{
  if (self->account->id == 0 && !self->is_named)
    {
      stead_field_set_text (self->name, stead_cash_words_account ((SteadAccountKind) stead_pick_get (self->kind)));
      self->is_named = FALSE;
    }
}

static void
named_cb (SteadAccountDialog *self)
{
  self->is_named = TRUE;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadAccount *account = data;

  stead_store_watch_id (store, &account->id);
  return stead_account_repo_save (store, account, error);
}

static gboolean
stead_account_dialog_save (SteadDialog  *dialog,
                           GError      **error)
{
  SteadAccountDialog *self = STEAD_ACCOUNT_DIALOG (dialog);
  SteadAccount *account = self->account;
  const char *name = NULL;
  g_autofree char *step = NULL;
  gboolean good = stead_field_read_text (self->name, &name);

  good &= stead_field_read_day (self->opened, STEAD_DAY_NONE, &account->opened_on);
  good &= stead_field_read_money (self->opening, 0, &account->opening_cents);
  good &= stead_field_read_day (self->closed, STEAD_DAY_NONE, &account->closed_on);
  if (!good)
    return FALSE;
  g_free (account->name);
  account->name = g_strstrip (g_strdup (name));
  account->kind = (SteadAccountKind) stead_pick_get (self->kind);
  /* Translators: name of a step to undo; name of an account. */
  step = g_strdup_printf (_("account “%s”"), account->name);
  return stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, account, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_account_repo_delete (store, ((SteadAccount *) data)->id, error);
}

static gboolean
stead_account_dialog_remove (SteadDialog  *dialog,
                             GError      **error)
{
  SteadAccountDialog *self = STEAD_ACCOUNT_DIALOG (dialog);
  /* Translators: name of a step to undo; name of an account. */
  g_autofree char *step = g_strdup_printf (_("deleting the account “%s”"), self->account->name);

  return stead_desk_act (stead_dialog_get_desk (dialog), step, remove_act, self->account, error);
}

static void
stead_account_dialog_dispose (GObject *object)
{
  SteadAccountDialog *self = STEAD_ACCOUNT_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_ACCOUNT_DIALOG);
  g_clear_pointer (&self->account, stead_account_free);
  G_OBJECT_CLASS (stead_account_dialog_parent_class)->dispose (object);
}

static void
stead_account_dialog_class_init (SteadAccountDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_account_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_account_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_account_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-account-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, name);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, opened);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, opening);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, closed);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, kind);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, state);
  gtk_widget_class_bind_template_child (widget_class, SteadAccountDialog, caution);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
}

static void
stead_account_dialog_init (SteadAccountDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_account (SteadAccountDialog *self,
              SteadDesk          *desk)
{
  const SteadAccount *account = self->account;
  SteadDay today = stead_store_get_today (stead_desk_get_store (desk));

  for (int i = STEAD_ACCOUNT_TILL; i <= STEAD_ACCOUNT_BANK; i++)
    stead_pick_append (self->kind, i, stead_cash_words_account ((SteadAccountKind) i));
  stead_pick_show (self->kind, account->kind);
  stead_field_set_today (self->opened, today);
  stead_field_set_today (self->closed, today);
  stead_field_set_currency (self->opening, stead_desk_get_farm (desk)->currency);
  stead_field_set_text (self->name, account->name != NULL ? account->name : stead_cash_words_account (account->kind));
  stead_field_show_day (self->opened, account->opened_on);
  stead_field_show_money (self->opening, account->opening_cents);
  if (account->closed_on != STEAD_DAY_NONE)
    stead_field_show_day (self->closed, account->closed_on);
  gtk_widget_set_visible (GTK_WIDGET (self->closed), account->id != 0);
  gtk_label_set_text (self->caution, stead_cash_words_caution ());
  self->is_named = account->id != 0;
  g_signal_connect_swapped (self->name, "changed", G_CALLBACK (named_cb), self);
}

static SteadAccount *
load_account (SteadStore        *store,
              gint64             id,
              SteadAccountKind   kind,
              GError           **error)
{
  g_autoptr(GPtrArray) accounts = NULL;
  SteadAccount *account;

  if (id == 0)
    {
      account = g_new0 (SteadAccount, 1);
      account->kind = kind;
      account->opened_on = stead_store_get_today (store);
      account->closed_on = STEAD_DAY_NONE;
      return account;
    }
  accounts = stead_account_repo_list (store, TRUE, error);
  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    if (((SteadAccount *) accounts->pdata[i])->id == id)
      return g_ptr_array_steal_index (accounts, i);
  return NULL;
}

void
stead_account_dialog_show (GtkWidget        *parent,
                           SteadDesk        *desk,
                           gint64            account_id,
                           SteadAccountKind  kind)
{
  g_autoptr(GError) error = NULL;
  SteadAccount *account;
  SteadAccountDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  account = load_account (stead_desk_get_store (desk), account_id, kind, &error);
  if (account == NULL)
    {
      if (error != NULL)
        stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_ACCOUNT_DIALOG, "title", account_id == 0 ? _("New account") : _("Account"),
                       "delete-label", account_id != 0 ? _("Delete account") : NULL, NULL);
  self->account = account;
  show_account (self, desk);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->name));
}

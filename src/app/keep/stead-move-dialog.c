/* stead-move-dialog.c - money that goes from one account or fund to another.
 *
 * A transfer that is on file is changed by taking it back whole and writing it anew.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-move-dialog.h"

#include "app/keep/stead-cash-picks.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-closing-repo.h"

struct _SteadMoveDialog
{
  SteadDialog    parent_instance;

  gboolean       correcting;  /* it is of a closed day */
  SteadTransfer  transfer;    /* as saved; texts are those of the fields */

  GtkLabel      *state;
  SteadField    *day, *cents, *reference, *note, *reason;
  SteadPick     *from_account, *to_account, *from_fund, *to_fund, *person, *second;
};

G_DEFINE_FINAL_TYPE (SteadMoveDialog, stead_move_dialog, STEAD_TYPE_DIALOG)

static void
account_cb (SteadMoveDialog *self)
{
  stead_pick_say (self->to_account, NULL, FALSE);
}

static gint64
shown (SteadPick *pick)
{
  return gtk_widget_get_visible (GTK_WIDGET (pick)) ? stead_pick_get (pick) : 0;
}

static const char *
text_of (SteadField *field)
{
  return stead_field_is_empty (field) ? NULL : stead_field_get_text (field);
}

static gboolean
check_ends (SteadMoveDialog *self)
{
  const SteadTransfer *transfer = &self->transfer;
  gboolean same = transfer->from_account == transfer->to_account && transfer->from_fund == transfer->to_fund;
  gboolean alone = transfer->person_id != 0 && transfer->person_id == transfer->second_id;

  stead_pick_say (self->to_account, same ? _("Choose another account, or another fund.") : NULL, TRUE);
  stead_pick_say (self->second, alone ? _("Choose another person: two people handle money together.") : NULL, TRUE);
  return !same && !alone;
}

static gboolean
read_transfer (SteadMoveDialog *self,
               SteadStore      *store)
{
  SteadTransfer *transfer = &self->transfer;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &transfer->day);

  good &= stead_field_read_money (self->cents, 0, &transfer->cents);
  if (!good)
    return FALSE;
  if (transfer->cents <= 0)
    {
      stead_field_set_error (self->cents, _("Enter how much was moved, more than zero."));
      return FALSE;
    }
  transfer->from_account = stead_pick_get (self->from_account);
  transfer->to_account = stead_pick_get (self->to_account);
  transfer->from_fund = shown (self->from_fund);
  transfer->to_fund = shown (self->to_fund);
  transfer->person_id = stead_pick_get (self->person);
  transfer->second_id = stead_pick_get (self->second);
  transfer->reference = text_of (self->reference);
  transfer->note = text_of (self->note);
  return check_ends (self) && stead_cash_picks_check_day (self->day, store, transfer->day);
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadMoveDialog *self = data;

  return stead_cash_repo_transfer (store, &self->transfer, error) != 0;
}

static gboolean
stead_move_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadMoveDialog *self = STEAD_MOVE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autofree char *cents = NULL, *step = NULL;

  if (!read_transfer (self, stead_desk_get_store (desk)))
    return FALSE;
  cents = stead_money_format (self->transfer.cents, stead_desk_get_farm (desk)->currency);
  /* Translators: name of a step to undo; an amount of money. */
  step = g_strdup_printf (_("moving %s"), cents);
  return stead_desk_act (desk, step, save_act, self, error);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  SteadMoveDialog *self = data;
  SteadDay day;

  if (!self->correcting)
    return stead_cash_repo_delete (store, self->transfer.id, error);
  return stead_field_read_day (self->day, STEAD_DAY_NONE, &day)
         && stead_cash_repo_correct (store, self->transfer.id, day, NULL, stead_field_get_text (self->reason),
                                     stead_pick_get (self->person), error);
}

static gboolean
stead_move_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  SteadMoveDialog *self = STEAD_MOVE_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  const char *reason = NULL;
  SteadDay day;

  if (self->correcting
      && (!stead_field_read_text (self->reason, &reason)
          || !stead_field_read_day (self->day, STEAD_DAY_NONE, &day)
          || !stead_cash_picks_check_day (self->day, stead_desk_get_store (desk), day)))
    return FALSE;
  return stead_desk_act (desk, _("taking back a move of money"), remove_act, self, error);
}

/* --- showing ------------------------------------------------------------------------------- */

static void
stead_move_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), STEAD_TYPE_MOVE_DIALOG);
  G_OBJECT_CLASS (stead_move_dialog_parent_class)->dispose (object);
}

static void
stead_move_dialog_class_init (SteadMoveDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_move_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_move_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_move_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-move-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, state);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, cents);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, reference);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, from_account);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, to_account);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, from_fund);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, to_fund);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, person);
  gtk_widget_class_bind_template_child (widget_class, SteadMoveDialog, second);
  gtk_widget_class_bind_template_callback (widget_class, account_cb);
}

static void
stead_move_dialog_init (SteadMoveDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
show_picks (SteadMoveDialog     *self,
            SteadStore          *store,
            const SteadCashLine *out,
            const SteadCashLine *in,
            gint64               account_id)
{
  stead_cash_picks_accounts (self->from_account, store, out != NULL ? out->account_id : account_id);
  stead_cash_picks_accounts (self->to_account, store, in != NULL ? in->account_id : 0);
  stead_cash_picks_funds (self->from_fund, store, out != NULL ? out->fund_id : 0);
  stead_cash_picks_funds (self->to_fund, store, in != NULL ? in->fund_id : 0);
  stead_cash_picks_people (self->person, store, out != NULL ? out->person_id : 0);
  stead_cash_picks_people (self->second, store, out != NULL ? out->second_id : 0);
}

static void
show_halves (SteadMoveDialog     *self,
             const SteadCashLine *out,
             SteadDay             closed_to,
             SteadDay             today)
{
  g_autofree char *closed = NULL, *text = NULL;

  self->transfer.id = out->id;
  self->correcting = closed_to != STEAD_DAY_NONE && out->day <= closed_to;
  stead_field_show_money (self->cents, -out->cents);
  stead_field_show_day (self->day, self->correcting ? today : out->day);
  stead_field_set_text (self->reference, out->reference != NULL ? out->reference : "");
  stead_field_set_text (self->note, out->note != NULL ? out->note : "");
  if (out->corrected_by != 0)
    text = g_strdup (_("This was taken back later, so it stays as it is."));
  else if (self->correcting)
    {
      closed = stead_day_format (closed_to, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: a day. */
      text = g_strdup_printf (_("The books are closed through %s. This stays as it is; it can be taken back on a later "
                                "day and moved anew."), closed);
    }
  g_object_set (self, "save-label", text == NULL ? _("Save") : NULL,
                "delete-label", out->corrected_by != 0 ? NULL : self->correcting ? _("Take it back") : _("Delete"), NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), self->correcting && out->corrected_by == 0);
  stead_ui_tell (self->state, text);
}

void
stead_move_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     line_id,
                        gint64     account_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  g_autoptr(SteadCashLine) out = NULL;
  g_autoptr(SteadCashLine) in = NULL;
  g_autoptr(GError) error = NULL;
  SteadDay closed_to = STEAD_DAY_NONE, today = stead_store_get_today (store);
  SteadMoveDialog *self;

  if ((line_id != 0 && !stead_cash_repo_halves (store, line_id, &out, &in, &error))
      || !stead_closing_repo_last (store, &closed_to, &error))
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_MOVE_DIALOG, "title", _("Move money"), NULL);
  stead_field_set_today (self->day, today);
  stead_field_set_currency (self->cents, stead_desk_get_farm (desk)->currency);
  stead_field_show_day (self->day, today);
  show_picks (self, store, out, in, account_id);
  if (out != NULL)
    show_halves (self, out, closed_to, today);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->cents));
}

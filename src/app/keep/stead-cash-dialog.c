/* stead-cash-dialog.c - one line of the cash book: money in or out, and its correction.
 *
 * A line of a closed day stays as it is: saving then writes a correction of a later day
 * beside it.  What looks as if it were there twice is told first; pressing Save once more
 * means that it is right.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-cash-dialog.h"

#include "answer/stead-cash-words.h"
#include "app/keep/stead-cash-picks.h"
#include "app/keep/stead-picture-box.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"
#include "store/stead-closing-repo.h"
#include "store/stead-receipt-repo.h"

/* Two lines alike this near may be one (as in the answer). */
#define TWIN_DAYS 3

struct _SteadCashDialog
{
  SteadDialog      parent_instance;

  SteadCashLine   *line;        /* as on file, or a new one */
  int              sign;        /* 1: money in; -1: money out */
  gboolean         correcting;  /* the line is of a closed day */
  gboolean         warned;      /* it was told what may be there twice */

  GtkLabel        *state;
  SteadField      *day, *cents, *who, *reference, *note, *reason;
  SteadPick       *account, *category, *receipt, *product, *batch, *asset, *fund, *enterprise, *person, *second;
  SteadPictureBox *picture;
};

G_DEFINE_FINAL_TYPE (SteadCashDialog, stead_cash_dialog, STEAD_TYPE_DIALOG)

static const char *
currency_of (SteadDesk *desk)
{
  return stead_desk_get_farm (desk)->currency;
}

/* --- what follows from a choice ------------------------------------------------------------ */

/* A thing that lasts is named where one is bought or sold; a batch everywhere else. */
static void
show_for_category (SteadCashDialog *self)
{
  gint64 category = stead_pick_get (self->category);
  gboolean is_thing = category == STEAD_CASH_THING_BOUGHT || category == STEAD_CASH_THING_SOLD;

  gtk_widget_set_visible (GTK_WIDGET (self->asset), is_thing && stead_pick_count (self->asset) > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->batch), !is_thing && stead_pick_count (self->batch) > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->product),
                          category == STEAD_CASH_SALES && stead_pick_count (self->product) > 1);
}

static void
category_cb (SteadCashDialog *self)
{
  show_for_category (self);
}

static void
forget_warning (SteadCashDialog *self)
{
  self->warned = FALSE;
}

static void
account_cb (SteadCashDialog *self)
{
  forget_warning (self);
}

/* What is open of the chosen receipt without this line.  FALSE: none is chosen. */
static gboolean
open_of_receipt (SteadCashDialog  *self,
                 SteadStore       *store,
                 SteadReceiptPaid *paid,
                 gint64           *open_cents)
{
  gint64 id = stead_pick_get (self->receipt);

  if (id == 0 || !stead_cash_repo_receipt_paid (store, id, paid, NULL))
    return FALSE;
  if (self->line->id != 0 && self->line->receipt_id == id)
    paid->paid_cents += self->line->cents;
  *open_cents = paid->total_cents - paid->paid_cents;
  return TRUE;
}

/* Says at the receipt what is open.  Returns: what is open; 0: nothing, or no receipt. */
static gint64
say_open (SteadCashDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  SteadReceiptPaid paid;
  gint64 open_cents = 0;
  g_autofree char *total = NULL, *rest = NULL, *text = NULL;

  if (!open_of_receipt (self, stead_desk_get_store (desk), &paid, &open_cents))
    {
      stead_pick_say (self->receipt, NULL, FALSE);
      return 0;
    }
  total = stead_money_format (paid.total_cents, currency_of (desk));
  rest = stead_money_format (open_cents, currency_of (desk));
  /* Translators: amounts of money. */
  text = open_cents > 0 ? g_strdup_printf (_("%s of %s is still to be paid."), rest, total)
                        : g_strdup_printf (_("This receipt over %s is paid already. Do not pay it twice."), total);
  stead_pick_say (self->receipt, text, open_cents <= 0);
  return MAX (open_cents, 0);
}

static void
fill_from_receipt (SteadCashDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  gint64 open_cents = say_open (self);
  g_autoptr(SteadReceipt) receipt = NULL;

  if (stead_pick_get (self->receipt) == 0)
    return;
  receipt = stead_receipt_repo_get (stead_desk_get_store (desk), stead_pick_get (self->receipt), NULL);
  if (receipt == NULL)
    return;
  if (open_cents > 0)
    stead_field_show_money (self->cents, open_cents);
  stead_field_set_text (self->who, receipt->supplier);
}

static void
receipt_cb (SteadCashDialog *self)
{
  forget_warning (self);
  fill_from_receipt (self);
}

/* --- what may be there twice ------------------------------------------------------------------ */

static gboolean
tell_if_paid_twice (SteadCashDialog *self,
                    SteadStore      *store,
                    gint64           cents)
{
  SteadReceiptPaid paid;
  gint64 open_cents = 0;
  g_autofree char *rest = NULL, *text = NULL;

  if (!open_of_receipt (self, store, &paid, &open_cents) || cents <= open_cents)
    return FALSE;
  rest = stead_money_format (MAX (open_cents, 0), currency_of (stead_dialog_get_desk (STEAD_DIALOG (self))));
  text = open_cents <= 0
         ? g_strdup (_("This receipt is paid already. If it was really paid twice, save once more."))
         /* Translators: an amount of money. */
         : g_strdup_printf (_("Only %s of this receipt is open. If more was really paid, save once more."), rest);
  stead_pick_say (self->receipt, text, TRUE);
  stead_field_set_error (self->cents, text);
  return TRUE;
}

static gboolean
tell_if_twin (SteadCashDialog *self,
              SteadStore      *store)
{
  g_autoptr(GPtrArray) twins = stead_cash_repo_twins (store, self->line, TWIN_DAYS, NULL);

  for (guint i = 0; twins != NULL && i < twins->len; i++)
    {
      const SteadCashLine *twin = twins->pdata[i];
      g_autofree char *day = NULL, *text = NULL;

      if (twin->category != self->line->category || g_strcmp0 (twin->who, self->line->who) != 0
          || twin->corrects_id != 0 || twin->corrected_by != 0)
        continue;
      day = stead_day_format (twin->day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: a day. */
      text = g_strdup_printf (_("The same stands in the book on %s. If this is another one, save once more."), day);
      stead_field_set_error (self->cents, text);
      return TRUE;
    }
  return FALSE;
}

/* --- saving ---------------------------------------------------------------------------------- */

static void
set_text (char      **text,
          SteadField *field)
{
  char *typed = g_strstrip (g_strdup (stead_field_get_text (field)));

  g_free (*text);
  *text = *typed != '\0' ? typed : NULL;
  if (*typed == '\0')
    g_free (typed);
}

static gint64
shown (SteadPick *pick)
{
  return gtk_widget_get_visible (GTK_WIDGET (pick)) ? stead_pick_get (pick) : 0;
}

static gboolean
read_line (SteadCashDialog *self)
{
  SteadCashLine *line = self->line;
  gint64 cents = 0;
  const char *reason = NULL;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &line->day);

  good &= stead_field_read_money (self->cents, 0, &cents);
  if (self->correcting)
    good &= stead_field_read_text (self->reason, &reason);
  if (!good)
    return FALSE;
  if (cents <= 0)
    {
      stead_field_set_error (self->cents, _("Enter more than zero. The line itself says whether it came in or went out."));
      return FALSE;
    }
  line->cents = self->sign * cents;
  line->account_id = stead_pick_get (self->account);
  line->category = (SteadCashCategory) stead_pick_get (self->category);
  line->receipt_id = shown (self->receipt);
  line->product_id = shown (self->product);
  line->batch_id = shown (self->batch);
  line->asset_id = shown (self->asset);
  line->fund_id = shown (self->fund);
  line->enterprise_id = shown (self->enterprise);
  line->person_id = stead_pick_get (self->person);
  line->second_id = stead_pick_get (self->second);
  set_text (&line->who, self->who);
  set_text (&line->reference, self->reference);
  set_text (&line->note, self->note);
  return TRUE;
}

static gboolean
check_people (SteadCashDialog *self)
{
  gboolean same = self->line->person_id != 0 && self->line->person_id == self->line->second_id;

  stead_pick_say (self->second, same ? _("Choose another person: two people handle money together.") : NULL, TRUE);
  return !same;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadCashDialog *self = data;
  g_autoptr(SteadCashLine) line = stead_cash_line_copy (self->line);
  g_autoptr(GArray) pictures = stead_picture_box_save (self->picture, store, error);

  if (pictures == NULL)
    return FALSE;
  line->picture_id = pictures->len > 0 ? g_array_index (pictures, gint64, 0) : 0;
  if (!self->correcting)
    return stead_cash_repo_save (store, line, error);
  line->id = 0;
  return stead_cash_repo_correct (store, self->line->id, self->line->day, line,
                                  stead_field_get_text (self->reason), line->person_id, error);
}

static char *
step_name (SteadCashDialog *self)
{
  g_autofree char *cents = stead_money_format (ABS (self->line->cents),
                                               currency_of (stead_dialog_get_desk (STEAD_DIALOG (self))));

  /* Translators: names of steps to undo; an amount of money. */
  return g_strdup_printf (self->correcting ? _("correction over %s")
                          : self->sign > 0 ? _("%s in the cash book, in") : _("%s in the cash book, out"), cents);
}

static gboolean
stead_cash_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadCashDialog *self = STEAD_CASH_DIALOG (dialog);
  SteadStore *store = stead_desk_get_store (stead_dialog_get_desk (dialog));
  g_autoptr(SteadCashLine) before = stead_cash_line_copy (self->line);
  g_autofree char *step = NULL;

  if (!read_line (self) || !check_people (self) || !stead_cash_picks_check_day (self->day, store, self->line->day)
      || !stead_picture_box_is_ready (self->picture))
    goto refused;
  if (!self->warned && !self->correcting
      && (tell_if_paid_twice (self, store, ABS (self->line->cents)) || tell_if_twin (self, store)))
    {
      self->warned = TRUE;
      goto refused;
    }
  step = step_name (self);
  if (stead_desk_act (stead_dialog_get_desk (dialog), step, save_act, self, error))
    return TRUE;
refused:
  /* What is on file stays what the line is compared with. */
  stead_cash_line_free (self->line);
  self->line = g_steal_pointer (&before);
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_cash_repo_delete (store, ((SteadCashLine *) data)->id, error);
}

static gboolean
take_back_act (SteadStore  *store,
               gpointer     data,
               GError     **error)
{
  SteadCashDialog *self = data;
  SteadDay day;

  return stead_field_read_day (self->day, STEAD_DAY_NONE, &day)
         && stead_cash_repo_correct (store, self->line->id, day, NULL, stead_field_get_text (self->reason),
                                     stead_pick_get (self->person), error);
}

static gboolean
stead_cash_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  SteadCashDialog *self = STEAD_CASH_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  g_autofree char *cents = stead_money_format (ABS (self->line->cents), currency_of (desk));
  g_autofree char *step = NULL;
  const char *reason = NULL;
  SteadDay day;

  /* Translators: names of steps to undo; an amount of money. */
  step = g_strdup_printf (self->correcting ? _("taking back %s") : _("deleting %s from the cash book"), cents);
  if (!self->correcting)
    return stead_desk_act (desk, step, remove_act, self->line, error);
  return stead_field_read_text (self->reason, &reason) && stead_field_read_day (self->day, STEAD_DAY_NONE, &day)
         && stead_cash_picks_check_day (self->day, stead_desk_get_store (desk), day)
         && stead_desk_act (desk, step, take_back_act, self, error);
}

/* --- showing ------------------------------------------------------------------------------------ */

static void
stead_cash_dialog_dispose (GObject *object)
{
  SteadCashDialog *self = STEAD_CASH_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_CASH_DIALOG);
  g_clear_pointer (&self->line, stead_cash_line_free);
  G_OBJECT_CLASS (stead_cash_dialog_parent_class)->dispose (object);
}

static void
stead_cash_dialog_class_init (SteadCashDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  g_type_ensure (STEAD_TYPE_PICTURE_BOX);
  G_OBJECT_CLASS (klass)->dispose = stead_cash_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_cash_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_cash_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-cash-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, state);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, cents);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, who);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, reference);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, account);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, category);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, receipt);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, product);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, batch);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, asset);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, fund);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, enterprise);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, person);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, second);
  gtk_widget_class_bind_template_child (widget_class, SteadCashDialog, picture);
  gtk_widget_class_bind_template_callback (widget_class, account_cb);
  gtk_widget_class_bind_template_callback (widget_class, category_cb);
  gtk_widget_class_bind_template_callback (widget_class, receipt_cb);
}

static void
stead_cash_dialog_init (SteadCashDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->cents, "changed", G_CALLBACK (forget_warning), self);
  g_signal_connect_swapped (self->day, "changed", G_CALLBACK (forget_warning), self);
}

/* What stands against changing the line, or says what it corrects. */
static void
show_state (SteadCashDialog *self,
            SteadDay         closed_to)
{
  g_autofree char *day = stead_day_format (self->line->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *closed = NULL, *text = NULL;

  if (self->line->corrected_by != 0)
    /* Translators: numbers of lines of the cash book. */
    text = g_strdup_printf (_("Line %u corrects this one, so it stays as it is."), (guint) self->line->corrected_by);
  else if (self->correcting)
    {
      closed = stead_day_format (closed_to, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: two days. */
      text = g_strdup_printf (_("This line is of %s, and the books are closed through %s. It stays as it is; saving "
                                "writes a correction beside it."), day, closed);
    }
  else if (self->line->corrects_id != 0)
    text = g_strdup_printf (_("This is a correction of line %u."), (guint) self->line->corrects_id);
  else if (self->line->bank_line_id != 0)
    text = g_strdup (_("This line is matched with the bank’s: amount, day and account stay as they are."));
  if (text == NULL)
    return;
  gtk_label_set_text (self->state, text);
  gtk_widget_show (GTK_WIDGET (self->state));
}

static void
show_buttons (SteadCashDialog *self)
{
  const SteadCashLine *line = self->line;

  if (line->corrected_by != 0)
    g_object_set (self, "save-label", NULL, "delete-label", NULL, NULL);
  else if (self->correcting)
    g_object_set (self, "save-label", _("Save as correction"), "delete-label", _("Take it back"), NULL);
  else
    g_object_set (self, "save-label", self->sign > 0 ? _("Save money in") : _("Save money out"),
                  "delete-label", line->id != 0 ? _("Delete line") : NULL, NULL);
}

static void
show_picks (SteadCashDialog *self,
            SteadDesk       *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  const SteadCashLine *line = self->line;

  stead_cash_picks_accounts (self->account, store, line->account_id);
  stead_cash_picks_categories (self->category, self->sign, line->category);
  stead_cash_picks_receipts (self->receipt, store, currency_of (desk), line->receipt_id);
  gtk_widget_set_visible (GTK_WIDGET (self->receipt), self->sign < 0 && stead_pick_count (self->receipt) > 1);
  stead_cash_picks_products (self->product, store, line->product_id);
  stead_cash_picks_batches (self->batch, store, line->batch_id);
  stead_cash_picks_assets (self->asset, store, line->asset_id);
  stead_cash_picks_funds (self->fund, store, line->fund_id);
  stead_cash_picks_enterprises (self->enterprise, store, line->enterprise_id);
  stead_cash_picks_people (self->person, store, line->person_id);
  stead_cash_picks_people (self->second, store, line->second_id);
  show_for_category (self);
}

static void
show_line (SteadCashDialog *self,
           SteadDesk       *desk,
           SteadDay         closed_to)
{
  SteadStore *store = stead_desk_get_store (desk);
  const SteadCashLine *line = self->line;
  SteadDay today = stead_store_get_today (store);

  stead_field_set_today (self->day, today);
  stead_field_set_currency (self->cents, currency_of (desk));
  stead_field_show_day (self->day, self->correcting ? today : line->day);
  if (line->cents != 0)
    stead_field_show_money (self->cents, ABS (line->cents));
  g_object_set (self->who, "label", self->sign > 0 ? _("From whom") : _("To whom"), NULL);
  if (self->correcting)
    g_object_set (self->day, "label", _("Day of the correction"), NULL);
  stead_field_set_text (self->who, line->who != NULL ? line->who : "");
  stead_field_set_text (self->reference, line->reference != NULL ? line->reference : "");
  stead_field_set_text (self->note, line->note != NULL ? line->note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->reason), self->correcting);
  stead_picture_box_add (self->picture, store, line->picture_id);
  show_picks (self, desk);
  show_state (self, closed_to);
  show_buttons (self);
}

/* Takes @line over. */
static SteadCashDialog *
show_dialog (GtkWidget     *parent,
             SteadDesk     *desk,
             SteadCashLine *line,
             int            sign,
             const char    *title)
{
  SteadStore *store = stead_desk_get_store (desk);
  SteadCashDialog *self = g_object_new (STEAD_TYPE_CASH_DIALOG, "title", title, NULL);
  SteadDay closed_to = STEAD_DAY_NONE;
  gboolean is_known = stead_closing_repo_last (store, &closed_to, NULL) && closed_to != STEAD_DAY_NONE;

  self->line = line;
  self->sign = sign;
  self->correcting = is_known && line->id != 0 && line->day <= closed_to && line->corrected_by == 0;
  show_line (self, desk, closed_to);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (self->cents));
  return self;
}

void
stead_cash_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     line_id)
{
  g_autoptr(GError) error = NULL;
  SteadCashLine *line;

  g_return_if_fail (STEAD_IS_DESK (desk));

  line = stead_cash_repo_get (stead_desk_get_store (desk), line_id, &error);
  if (line == NULL)
    stead_desk_say (desk, error->message, FALSE);
  else
    show_dialog (parent, desk, line, line->cents > 0 ? 1 : -1, line->cents > 0 ? _("Money in") : _("Money out"));
}

static SteadCashLine *
new_line (SteadDesk *desk,
          int        sign)
{
  SteadCashLine *line = stead_cash_line_new ();

  line->day = stead_store_get_today (stead_desk_get_store (desk));
  line->category = sign > 0 ? STEAD_CASH_SALES : STEAD_CASH_SUPPLIES;
  return line;
}

void
stead_cash_dialog_show_new (GtkWidget *parent,
                            SteadDesk *desk,
                            int        sign,
                            gint64     account_id)
{
  SteadCashLine *line;

  g_return_if_fail (STEAD_IS_DESK (desk) && sign != 0);

  line = new_line (desk, sign);
  line->account_id = account_id;
  show_dialog (parent, desk, line, sign, sign > 0 ? _("Money in") : _("Money out"));
}

void
stead_cash_dialog_show_draft (GtkWidget     *parent,
                              SteadDesk     *desk,
                              SteadCashLine *line)
{
  g_return_if_fail (STEAD_IS_DESK (desk) && line != NULL && line->id == 0);

  show_dialog (parent, desk, line, line->cents > 0 ? 1 : -1, line->cents > 0 ? _("Money in") : _("Money out"));
}

void
stead_cash_dialog_show_pay (GtkWidget *parent,
                            SteadDesk *desk,
                            gint64     receipt_id)
{
  SteadCashLine *line;

  g_return_if_fail (STEAD_IS_DESK (desk));

  line = new_line (desk, -1);
  line->receipt_id = receipt_id;
  fill_from_receipt (show_dialog (parent, desk, line, -1, _("Pay a receipt")));
}

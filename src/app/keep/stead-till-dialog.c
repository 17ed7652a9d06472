/* stead-till-dialog.c - two people count the money in a box together.
 *
 * What the book says is read anew for the day and account that are chosen.  A difference
 * needs a reason; the money above the change that stays goes on as a transfer.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-till-dialog.h"

#include "answer/stead-cash-count-why.h"
#include "answer/stead-cash-words.h"
#include "app/keep/stead-cash-picks.h"
#include "app/stead-field.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-store-watch.h"

#define FACE_COLUMNS 3

/* Of the grid: below the sentence that they work out. */
#define WHYS_ROW 6

struct _SteadTillDialog
{
  SteadDialog     parent_instance;

  SteadCashCount *count;
  GPtrArray      *pieces;      /* of SteadField, not owned: one a face */
  const gint64   *faces;
  gsize           n_faces;

  GtkLabel       *caution, *sum;
  GtkGrid        *grid, *face_grid;
  GtkCheckButton *deposit;
  SteadField     *day, *reason, *float_cents, *note, *reference;
  SteadPick      *account, *first, *second, *to;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadTillDialog, stead_till_dialog, STEAD_TYPE_DIALOG)

/* --- what is counted -------------------------------------------------------------------- */

/* As far as it can be read: a field that is being typed into counts nothing yet. */
static void
peek_pieces (SteadTillDialog *self,
             GArray          *out)
{
  for (gsize i = 0; i < self->n_faces; i++)
    {
      gint64 pieces = g_ascii_strtoll (stead_field_get_text (self->pieces->pdata[i]), NULL, 10);
      SteadCashPiece piece = { .face_cents = self->faces[i], .pieces = CLAMP (pieces, 0, 1000000) };

      if (piece.pieces > 0)
        g_array_append_val (out, piece);
    }
}

/* @is_known: (out): what the book says, without the count's own line, can be told. */
static SteadCashCount *
peek_count (SteadTillDialog *self,
            SteadDesk       *desk,
            gboolean        *is_known)
{
  SteadCashCount *typed = stead_cash_count_new ();

  typed->account_id = stead_pick_get (self->account);
  if (!stead_money_parse (stead_field_get_text (self->float_cents), stead_desk_get_farm (desk)->currency,
                          &typed->float_cents, NULL))
    typed->float_cents = 0;
  peek_pieces (self, typed->pieces);
  if (self->count->id != 0 && typed->account_id == self->count->account_id)
    {
      typed->id = self->count->id;
      typed->expected_cents = self->count->expected_cents;
      *is_known = TRUE;
    }
  else
    *is_known = stead_cash_picks_peek_day (self->day, stead_desk_get_store (desk), &typed->day)
                && stead_cash_repo_balance (stead_desk_get_store (desk), typed->account_id, STEAD_FUND_ANY, typed->day,
                                            &typed->expected_cents, NULL);
  return typed;
}

static void
update_sum (SteadTillDialog *self)
{
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (self));
  g_autoptr(SteadCashCount) typed = NULL;
  g_autoptr(GPtrArray) whys = NULL;
  g_autofree char *counted = NULL, *book = NULL, *off = NULL, *text = NULL;
  gboolean known;
  gint64 over;
  const char *currency;

  if (desk == NULL)
    return;
  currency = stead_desk_get_farm (desk)->currency;
  typed = peek_count (self, desk, &known);
  over = stead_cash_count_over_cents (typed);
  counted = stead_money_format (stead_cash_count_total_cents (typed), currency);
  book = stead_money_format (typed->expected_cents, currency);
  off = stead_money_format (ABS (over), currency);
  /* Translators: amounts of money. */
  text = !known ? g_strdup_printf (_("Counted <b>%s</b>."), counted)
         : over == 0 ? g_strdup_printf (_("Counted <b>%s</b>, as the book says."), counted)
         : over > 0 ? g_strdup_printf (_("Counted <b>%s</b>; the book says %s: <b>%s over</b>."), counted, book, off)
         : g_strdup_printf (_("Counted <b>%s</b>; the book says %s: <b>%s short</b>."), counted, book, off);
  gtk_label_set_markup (self->sum, text);
  gtk_widget_set_visible (GTK_WIDGET (self->reason), known && over != 0);
  whys = stead_cash_count_whys (stead_desk_get_store (desk), typed, known, currency);
  stead_why_box_set (self->whys, whys);
}

static void
account_cb (SteadTillDialog *self)
{
  update_sum (self);
}

static void
deposit_cb (SteadTillDialog *self)
{
  gboolean on = gtk_check_button_get_active (self->deposit);

  gtk_widget_set_visible (GTK_WIDGET (self->to), on);
  gtk_widget_set_visible (GTK_WIDGET (self->reference), on);
}

/* From the largest note down, column by column. */
static void
add_faces (SteadTillDialog *self,
           const char      *currency)
{
  int rows;

  self->faces = stead_cash_faces (currency, &self->n_faces);
  rows = (int) (self->n_faces + FACE_COLUMNS - 1) / FACE_COLUMNS;
  for (int i = 0; i < (int) self->n_faces; i++)
    {
      g_autofree char *face = stead_money_format (self->faces[i], currency);
      /* Translators: beside a field for the number of coins or notes of this amount. */
      g_autofree char *label = g_strdup_printf (_("%s ×"), face);
      GtkWidget *field = stead_field_new (label, STEAD_FIELD_COUNT);

      g_object_set (field, "compact", TRUE, NULL);
      g_signal_connect_swapped (field, "changed", G_CALLBACK (update_sum), self);
      stead_cash_picks_put_face (self->face_grid, field, i / rows);
      g_ptr_array_add (self->pieces, field);
    }
}

static void
align_faces (SteadTillDialog *self)
{
  g_autoptr(GtkSizeGroup) widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);

  for (guint i = 0; i < self->pieces->len; i++)
    stead_field_share_width (self->pieces->pdata[i], widths);
}

/* --- saving -------------------------------------------------------------------------------- */

static gboolean
read_pieces (SteadTillDialog *self)
{
  gboolean good = TRUE;

  g_array_set_size (self->count->pieces, 0);
  for (gsize i = 0; i < self->n_faces; i++)
    {
      SteadCashPiece piece = { .face_cents = self->faces[i] };

      if (!stead_field_read_count (self->pieces->pdata[i], 0, &piece.pieces))
        good = FALSE;
      else if (piece.pieces > 0)
        g_array_append_val (self->count->pieces, piece);
    }
  return good;
}

static gboolean
check_people (SteadTillDialog *self)
{
  gboolean none = self->count->first_id == 0, same = self->count->first_id == self->count->second_id;

  stead_pick_say (self->first, none ? _("Choose who counted.") : NULL, TRUE);
  stead_pick_say (self->second, self->count->second_id == 0 || same
                                ? _("Choose another person: two people count money together.") : NULL, TRUE);
  return !none && !same && self->count->second_id != 0;
}

static gboolean
check_reason (SteadTillDialog *self)
{
  if (!gtk_widget_get_visible (GTK_WIDGET (self->reason)) || !stead_field_is_empty (self->reason))
    return TRUE;
  stead_field_set_error (self->reason, _("Write why. Never put money in or take it out to make it agree."));
  gtk_widget_grab_focus (GTK_WIDGET (self->reason));
  return FALSE;
}

static gboolean
save_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  SteadTillDialog *self = data;

  stead_store_watch_id (store, &self->count->id);
  stead_store_watch_id (store, &self->count->line_id);
  if (!stead_cash_count_repo_save (store, self->count, error))
    return FALSE;
  return !gtk_check_button_get_active (self->deposit)
         || stead_cash_count_repo_deposit (store, self->count->id, stead_pick_get (self->to), self->count->day,
                                           stead_field_is_empty (self->reference)
                                           ? NULL : stead_field_get_text (self->reference), error) != 0;
}

static gboolean
read_count (SteadTillDialog *self,
            SteadStore      *store)
{
  SteadCashCount *count = self->count;
  gboolean good = stead_field_read_day (self->day, STEAD_DAY_NONE, &count->day);

  good &= stead_field_read_money (self->float_cents, 0, &count->float_cents);
  good &= read_pieces (self);
  count->account_id = stead_pick_get (self->account);
  count->first_id = stead_pick_get (self->first);
  count->second_id = stead_pick_get (self->second);
  g_free (count->reason);
  count->reason = gtk_widget_get_visible (GTK_WIDGET (self->reason)) && !stead_field_is_empty (self->reason)
                  ? g_strdup (stead_field_get_text (self->reason)) : NULL;
  g_free (count->note);
  count->note = stead_field_is_empty (self->note) ? NULL : g_strdup (stead_field_get_text (self->note));
  good &= check_people (self);
  return good && check_reason (self) && stead_cash_picks_check_day (self->day, store, count->day);
}

static gboolean
stead_till_dialog_save (SteadDialog  *dialog,
                        GError      **error)
{
  SteadTillDialog *self = STEAD_TILL_DIALOG (dialog);
  SteadDesk *desk = stead_dialog_get_desk (dialog);
  gint64 id = self->count->id, line_id = self->count->line_id;
  g_autofree char *step = NULL;

  if (!read_count (self, stead_desk_get_store (desk)))
    return FALSE;
  /* Translators: name of a step to undo; name of an account. */
  step = g_strdup_printf (_("count of “%s”"), stead_pick_get_text (self->account));
  if (stead_desk_act (desk, step, save_act, self, error))
    return TRUE;
  self->count->id = id;
  self->count->line_id = line_id;
  return FALSE;
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_cash_count_repo_delete (store, ((SteadCashCount *) data)->id, error);
}

static gboolean
stead_till_dialog_remove (SteadDialog  *dialog,
                          GError      **error)
{
  SteadTillDialog *self = STEAD_TILL_DIALOG (dialog);

  return stead_desk_act (stead_dialog_get_desk (dialog), _("deleting a count of money"), remove_act, self->count, error);
}

/* --- showing ---------------------------------------------------------------------------------- */

static void
stead_till_dialog_dispose (GObject *object)
{
  SteadTillDialog *self = STEAD_TILL_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_TILL_DIALOG);
  g_clear_pointer (&self->count, stead_cash_count_free);
  g_clear_pointer (&self->pieces, g_ptr_array_unref);
  G_OBJECT_CLASS (stead_till_dialog_parent_class)->dispose (object);
}

static void
stead_till_dialog_class_init (SteadTillDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_till_dialog_dispose;
  STEAD_DIALOG_CLASS (klass)->save = stead_till_dialog_save;
  STEAD_DIALOG_CLASS (klass)->remove = stead_till_dialog_remove;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-till-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, caution);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, sum);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, face_grid);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, grid);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, deposit);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, day);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, reason);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, float_cents);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, note);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, reference);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, account);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, first);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, second);
  gtk_widget_class_bind_template_child (widget_class, SteadTillDialog, to);
  gtk_widget_class_bind_template_callback (widget_class, account_cb);
  gtk_widget_class_bind_template_callback (widget_class, deposit_cb);
}

static void
stead_till_dialog_init (SteadTillDialog *self)
{
  self->pieces = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_grid_attach (self->grid, stead_why_box_new_folded (&self->whys), 0, WHYS_ROW, 2, 1);
  g_signal_connect_swapped (self->day, "changed", G_CALLBACK (update_sum), self);
  g_signal_connect_swapped (self->float_cents, "changed", G_CALLBACK (update_sum), self);
}

/* The first box; else the first account. */
static gint64
first_box (SteadStore *store)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, FALSE, NULL);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    if (((SteadAccount *) accounts->pdata[i])->kind == STEAD_ACCOUNT_TILL)
      return ((SteadAccount *) accounts->pdata[i])->id;
  return 0;
}

/* Where money from a box goes: what is no box. */
static gint64
first_other (SteadStore *store)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, FALSE, NULL);

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    if (((SteadAccount *) accounts->pdata[i])->kind != STEAD_ACCOUNT_TILL)
      return ((SteadAccount *) accounts->pdata[i])->id;
  return 0;
}

static void
show_pieces (SteadTillDialog *self)
{
  for (gsize i = 0; i < self->n_faces; i++)
    for (guint j = 0; j < self->count->pieces->len; j++)
      {
        const SteadCashPiece *piece = &g_array_index (self->count->pieces, SteadCashPiece, j);

        if (piece->face_cents == self->faces[i])
          stead_field_show_count (self->pieces->pdata[i], piece->pieces);
      }
}

static void
show_count (SteadTillDialog *self,
            SteadDesk       *desk,
            gint64           account_id)
{
  SteadStore *store = stead_desk_get_store (desk);
  const char *currency = stead_desk_get_farm (desk)->currency;
  const SteadCashCount *count = self->count;
  gboolean is_new = count->id == 0;

  add_faces (self, currency);
  align_faces (self);
  stead_field_set_today (self->day, stead_store_get_today (store));
  stead_field_show_day (self->day, is_new ? stead_store_get_today (store) : count->day);
  stead_field_set_currency (self->float_cents, currency);
  stead_field_show_money (self->float_cents, count->float_cents);
  stead_field_set_text (self->reason, count->reason != NULL ? count->reason : "");
  stead_field_set_text (self->note, count->note != NULL ? count->note : "");
  stead_cash_picks_accounts (self->account, store, !is_new ? count->account_id
                                                   : account_id != 0 ? account_id : first_box (store));
  stead_cash_picks_accounts (self->to, store, first_other (store));
  stead_cash_picks_people (self->first, store, count->first_id);
  stead_cash_picks_people (self->second, store, count->second_id);
  gtk_widget_set_visible (GTK_WIDGET (self->deposit), stead_pick_count (self->to) > 1);
  gtk_label_set_text (self->caution, stead_cash_words_caution ());
  show_pieces (self);
}

void
stead_till_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     count_id,
                        gint64     account_id)
{
  g_autoptr(GError) error = NULL;
  SteadCashCount *count;
  SteadTillDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  count = count_id != 0 ? stead_cash_count_repo_get (stead_desk_get_store (desk), count_id, &error)
          : stead_cash_count_new ();
  if (count == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  self = g_object_new (STEAD_TYPE_TILL_DIALOG, "title", _("Count the money"),
                       "delete-label", count_id != 0 ? _("Delete count") : NULL, NULL);
  self->count = count;
  show_count (self, desk, account_id);
  stead_dialog_present (STEAD_DIALOG (self), parent, desk);
  update_sum (self);
  gtk_widget_grab_focus (self->pieces->pdata[0]);
}

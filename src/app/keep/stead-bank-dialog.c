/* stead-bank-dialog.c - the cash book beside what the bank, or the school's bookkeeper, says.
 *
 * Each line of the statement that is not matched stands beside the line of the cash book
 * that may be the same.  The two agree once nothing is left and both sides are equal.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-bank-dialog.h"

#include "answer/stead-bank-why.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-cash-picks.h"
#include "app/stead-import-dialog.h"
#include "app/stead-table.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-bank-repo.h"

/* Checks take longer than deposits (common practice, no source). */
#define MATCH_DAYS 10

#define STEAD_TYPE_BANK_DIALOG (stead_bank_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadBankDialog, stead_bank_dialog, STEAD, BANK_DIALOG, GtkWindow)

struct _SteadBankDialog
{
  GtkWindow       parent_instance;

  SteadDesk      *desk;
  gulong          changed_id;
  SteadBankSheet *sheet;        /* (nullable): the one that is open */
  GHashTable     *proposals;    /* id of a bank line → SteadBankPair */

  SteadPick      *account, *person;
  SteadField     *through, *closing;
  GtkLabel       *sentence, *error;
  GtkBox         *slot;
  GtkWidget      *keep, *remove, *match, *match_all, *enter, *drop, *agree;
  SteadTable     *table;
  SteadWhyBox    *whys;
};

G_DEFINE_FINAL_TYPE (SteadBankDialog, stead_bank_dialog, GTK_TYPE_WINDOW)

static SteadStore *
store_of (SteadBankDialog *self)
{
  return stead_desk_get_store (self->desk);
}

static char *
money (SteadBankDialog *self,
       gint64           cents)
{
  return stead_money_format (cents, stead_desk_get_farm (self->desk)->currency);
}

static void
tell (SteadBankDialog *self,
      const char      *text)
{
  stead_ui_tell (self->error, text);
}

/* --- the table ---------------------------------------------------------------------------- */

static const SteadBankLine *
line_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (line_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
words_text (gpointer item,
            gpointer data)
{
  return g_strdup (line_of (item)->text);
}

static char *
cents_text (gpointer item,
            gpointer data)
{
  return money (data, line_of (item)->cents);
}

/* "Line 12, Nov 3, Lakeside Feed & Seed" */
static char *
proposal_text (gpointer item,
               gpointer data)
{
  SteadBankDialog *self = data;
  const SteadBankPair *pair = g_hash_table_lookup (self->proposals, &line_of (item)->id);
  g_autoptr(SteadCashLine) line = pair != NULL ? stead_cash_repo_get (store_of (self), pair->line_id, NULL) : NULL;
  g_autofree char *day = NULL;

  if (line == NULL)
    return g_strdup (_("nothing like it"));
  day = stead_day_format (line->day, STEAD_DAY_STYLE_MEDIUM);
  if (line->who == NULL)
    /* Translators: number of a line of the cash book, and its day. */
    return g_strdup_printf (_("line %u, %s"), (guint) line->id, day);
  /* Translators: number of a line of the cash book, its day, and from or to whom. */
  return g_strdup_printf (_("line %u, %s, %s"), (guint) line->id, day, line->who);
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = line_of (a)->day, y = line_of (b)->day;

  return (x > y) - (x < y);
}

static int
compare_cents (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = line_of (a)->cents, y = line_of (b)->cents;

  return (x > y) - (x < y);
}

/* --- what stands there ---------------------------------------------------------------------- */

static void
load_sheet (SteadBankDialog *self)
{
  g_autoptr(GPtrArray) sheets = stead_bank_repo_sheets (store_of (self), stead_pick_get (self->account), NULL);

  g_clear_pointer (&self->sheet, stead_bank_sheet_free);
  for (guint i = 0; sheets != NULL && i < sheets->len && self->sheet == NULL; i++)
    if (((SteadBankSheet *) sheets->pdata[i])->agreed_on == STEAD_DAY_NONE)
      self->sheet = g_ptr_array_steal_index (sheets, i--);
}

static SteadDay
last_day (SteadBankDialog *self)
{
  return self->sheet != NULL ? self->sheet->through_day : stead_store_get_today (store_of (self));
}

static void
load_proposals (SteadBankDialog *self)
{
  g_autoptr(GArray) pairs = stead_bank_repo_proposals (store_of (self), stead_pick_get (self->account), last_day (self),
                                                       MATCH_DAYS, NULL);

  g_hash_table_remove_all (self->proposals);
  for (guint i = 0; pairs != NULL && i < pairs->len; i++)
    {
      SteadBankPair *pair = g_memdup2 (&g_array_index (pairs, SteadBankPair, i), sizeof *pair);

      g_hash_table_insert (self->proposals, &pair->bank_line_id, pair);
    }
}

/* How many lines of the statement are to be matched still. */
static char *
left_text (SteadBankDialog *self,
           guint            n_left)
{
  g_autoptr(GPtrArray) all = NULL;

  if (n_left > 0)
    return g_strdup_printf (ngettext ("<b>%u</b> line of the statement is not matched yet.",
                                      "<b>%u</b> lines of the statement are not matched yet.", n_left), n_left);
  all = stead_bank_repo_lines (store_of (self), stead_pick_get (self->account), last_day (self), FALSE, NULL);
  return g_strdup (all != NULL && all->len > 0 ? _("Every line of the statement is matched.")
                                               : _("No line of this account’s statements is here yet."));
}

static char *
sentence_text (SteadBankDialog *self,
               guint            n_left)
{
  SteadBankCheck check;
  g_autofree char *bank = NULL, *book = NULL, *off = NULL, *left = NULL, *sides = NULL;

  if (stead_pick_count (self->account) == 0)
    return g_strdup (_("A statement belongs to the school activity account or to a bank account. Make one first."));
  left = left_text (self, n_left);
  if (self->sheet == NULL || !stead_bank_repo_check (store_of (self), self->sheet->id, &check, NULL))
    return g_strjoin (" ", left, _("Enter the last day of the statement and what it says is there."), NULL);
  bank = money (self, stead_bank_side_cents (&check));
  book = money (self, stead_book_side_cents (&check));
  off = money (self, ABS (stead_bank_side_cents (&check) - stead_book_side_cents (&check)));
  /* Translators: amounts of money. */
  sides = stead_bank_side_cents (&check) == stead_book_side_cents (&check)
          ? g_strdup_printf (_("Both sides come to %s."), bank)
          : g_strdup_printf (_("With what is under way the statement comes to %s and the book to %s: %s apart."),
                             bank, book, off);
  return g_strjoin (" ", left, sides, NULL);
}

static void
show_whys (SteadBankDialog *self)
{
  g_autoptr(GPtrArray) whys = NULL;
  SteadBankCheck check;

  whys = self->sheet != NULL && stead_bank_repo_check (store_of (self), self->sheet->id, &check, NULL)
         ? stead_bank_check_whys (&check, stead_desk_get_farm (self->desk)->currency) : g_ptr_array_new ();
  stead_why_box_set (self->whys, whys);
}

static void
show_fields (SteadBankDialog *self)
{
  if (self->sheet != NULL)
    {
      stead_field_show_day (self->through, self->sheet->through_day);
      stead_field_show_money (self->closing, self->sheet->closing_cents);
    }
  else
    {
      stead_field_set_text (self->through, "");
      stead_field_set_text (self->closing, "");
    }
}

/* What is typed stays, unless another statement is the open one now. */
static void
load_open (SteadBankDialog *self)
{
  gint64 before = self->sheet != NULL ? self->sheet->id : 0;

  load_sheet (self);
  if (before != (self->sheet != NULL ? self->sheet->id : 0))
    show_fields (self);
}

static void
refresh (SteadBankDialog *self)
{
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GListModel) model = NULL;
  g_autofree char *text = NULL;
  guint n_left;
  gboolean can;

  if (store_of (self) == NULL)
    return;
  load_open (self);
  load_proposals (self);
  lines = stead_bank_repo_lines (store_of (self), stead_pick_get (self->account), last_day (self), TRUE, NULL);
  n_left = lines != NULL ? lines->len : 0;
  text = sentence_text (self, n_left);
  gtk_label_set_markup (self->sentence, text);
  show_whys (self);
  if (lines != NULL)
    model = stead_rows_from_array (g_steal_pointer (&lines), (GDestroyNotify) stead_bank_line_free);
  stead_table_set_model (self->table, model);
  can = n_left > 0;
  gtk_widget_set_sensitive (self->match, can);
  gtk_widget_set_sensitive (self->match_all, g_hash_table_size (self->proposals) > 0);
  gtk_widget_set_sensitive (self->enter, can);
  gtk_widget_set_sensitive (self->drop, can);
  gtk_widget_set_sensitive (self->agree, self->sheet != NULL);
  gtk_widget_set_visible (self->remove, self->sheet != NULL);
  gtk_widget_set_sensitive (self->keep, stead_pick_count (self->account) > 0);
}

static void
show_sheet (SteadBankDialog *self)
{
  load_sheet (self);
  show_fields (self);
}

static void
account_cb (SteadBankDialog *self)
{
  tell (self, NULL);
  show_sheet (self);
  refresh (self);
}

/* --- what a person does ------------------------------------------------------------------------ */

static void
act (SteadBankDialog *self,
     const char      *step,
     SteadDeskAct     what,
     gpointer         data)
{
  g_autoptr(GError) error = NULL;

  tell (self, stead_desk_act (self->desk, step, what, data, &error) ? NULL : error->message);
}

static const SteadBankLine *
chosen (SteadBankDialog *self)
{
  gpointer row = stead_table_get_selected (self->table);

  if (row == NULL)
    tell (self, _("Choose a row of the table first."));
  return row != NULL ? stead_row_get (row) : NULL;
}

static gboolean
keep_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_bank_repo_save_sheet (store, data, error);
}

static void
keep_cb (SteadBankDialog *self)
{
  g_autoptr(SteadBankSheet) sheet = g_new0 (SteadBankSheet, 1);
  gboolean good = stead_field_read_day (self->through, STEAD_DAY_NONE, &sheet->through_day);

  good &= stead_field_read_money (self->closing, 0, &sheet->closing_cents);
  if (!good)
    return;
  sheet->id = self->sheet != NULL ? self->sheet->id : 0;
  sheet->account_id = stead_pick_get (self->account);
  sheet->agreed_on = STEAD_DAY_NONE;
  act (self, _("a statement of an account"), keep_act, sheet);
}

static gboolean
remove_act (SteadStore  *store,
            gpointer     data,
            GError     **error)
{
  return stead_bank_repo_delete_sheet (store, *(const gint64 *) data, error);
}

static void
remove_cb (SteadBankDialog *self)
{
  gint64 id = self->sheet != NULL ? self->sheet->id : 0;

  if (id != 0)
    act (self, _("deleting a statement of an account"), remove_act, &id);
}

static gboolean
match_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  const SteadBankPair *pair = data;

  return stead_bank_repo_match (store, pair->bank_line_id, pair->line_id, error);
}

static void
match_cb (SteadBankDialog *self)
{
  const SteadBankLine *line = chosen (self);
  const SteadBankPair *pair = line != NULL ? g_hash_table_lookup (self->proposals, &line->id) : NULL;
  SteadBankPair copy;

  if (line != NULL && pair == NULL)
    tell (self, _("The cash book has no line like it. Enter it there, or take the line away if it is wrong."));
  if (pair == NULL)
    return;
  copy = *pair;
  act (self, _("matching a line of the statement"), match_act, &copy);
}

static gboolean
match_all_act (SteadStore  *store,
               gpointer     data,
               GError     **error)
{
  const GArray *pairs = data;

  for (guint i = 0; i < pairs->len; i++)
    if (!match_act (store, &g_array_index (pairs, SteadBankPair, i), error))
      return FALSE;
  return TRUE;
}

static void
match_all_cb (SteadBankDialog *self)
{
  g_autoptr(GArray) pairs = stead_bank_repo_proposals (store_of (self), stead_pick_get (self->account), last_day (self),
                                                       MATCH_DAYS, NULL);

  if (pairs != NULL && pairs->len > 0)
    act (self, _("matching lines of the statement"), match_all_act, pairs);
}

static void
enter_cb (SteadBankDialog *self)
{
  const SteadBankLine *bank = chosen (self);
  SteadCashLine *line;

  if (bank == NULL)
    return;
  line = stead_cash_line_new ();
  line->day = bank->day;
  line->account_id = bank->account_id;
  line->cents = bank->cents;
  line->category = bank->cents > 0 ? STEAD_CASH_OTHER_IN : STEAD_CASH_FEES;
  line->note = g_strdup (bank->text);
  stead_cash_dialog_show_draft (GTK_WIDGET (self), self->desk, line);
}

static gboolean
drop_act (SteadStore  *store,
          gpointer     data,
          GError     **error)
{
  return stead_bank_repo_delete_line (store, *(const gint64 *) data, error);
}

static void
drop_cb (SteadBankDialog *self)
{
  const SteadBankLine *line = chosen (self);
  gint64 id = line != NULL ? line->id : 0;

  if (id != 0)
    act (self, _("taking away a line of the statement"), drop_act, &id);
}

static void
import_cb (SteadBankDialog *self)
{
  stead_import_dialog_show (GTK_WIDGET (self), self->desk, STEAD_IMPORT_BANK, stead_pick_get (self->account));
}

static gboolean
agree_act (SteadStore  *store,
           gpointer     data,
           GError     **error)
{
  SteadBankDialog *self = data;

  return stead_bank_repo_agree (store, self->sheet->id, stead_pick_get (self->person), error);
}

static void
agree_cb (SteadBankDialog *self)
{
  gboolean nobody = stead_pick_get (self->person) == 0;

  stead_pick_say (self->person, nobody ? _("Choose who compared it.") : NULL, TRUE);
  if (!nobody && self->sheet != NULL)
    {
      act (self, _("agreeing with a statement"), agree_act, self);
      show_sheet (self);
    }
}

static void
close_cb (SteadBankDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

/* --- the window ------------------------------------------------------------------------------------ */

static void
stead_bank_dialog_dispose (GObject *object)
{
  SteadBankDialog *self = STEAD_BANK_DIALOG (object);

  if (self->desk != NULL)
    g_clear_signal_handler (&self->changed_id, self->desk);
  gtk_widget_dispose_template (GTK_WIDGET (self), STEAD_TYPE_BANK_DIALOG);
  g_clear_object (&self->desk);
  g_clear_pointer (&self->sheet, stead_bank_sheet_free);
  g_clear_pointer (&self->proposals, g_hash_table_unref);
  G_OBJECT_CLASS (stead_bank_dialog_parent_class)->dispose (object);
}

static void
stead_bank_dialog_class_init (SteadBankDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (STEAD_TYPE_FIELD);
  g_type_ensure (STEAD_TYPE_PICK);
  G_OBJECT_CLASS (klass)->dispose = stead_bank_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, STEAD_UI ("keep/stead-bank-dialog.ui"));
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, account);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, person);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, through);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, closing);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, sentence);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, error);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, slot);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, keep);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, remove);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, match);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, match_all);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, enter);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, drop);
  gtk_widget_class_bind_template_child (widget_class, SteadBankDialog, agree);
  gtk_widget_class_bind_template_callback (widget_class, account_cb);
  gtk_widget_class_bind_template_callback (widget_class, keep_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
  gtk_widget_class_bind_template_callback (widget_class, import_cb);
  gtk_widget_class_bind_template_callback (widget_class, match_cb);
  gtk_widget_class_bind_template_callback (widget_class, match_all_cb);
  gtk_widget_class_bind_template_callback (widget_class, enter_cb);
  gtk_widget_class_bind_template_callback (widget_class, drop_cb);
  gtk_widget_class_bind_template_callback (widget_class, agree_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
stead_bank_dialog_init (SteadBankDialog *self)
{
  self->proposals = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL, g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->sentence))),
                              stead_why_box_new_low (&self->whys), GTK_WIDGET (self->sentence));
  self->table = STEAD_TABLE (stead_table_new (_("Lines of the statement that are not matched")));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, _("The statement says"), FALSE, TRUE, words_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Amount"), TRUE, FALSE, cents_text, NULL, compare_cents, self);
  stead_table_add_column (self->table, _("In the cash book"), FALSE, TRUE, proposal_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("No line is waiting. Import the lines of the statement, or go on to “They agree”."));
  gtk_widget_set_hexpand (GTK_WIDGET (self->table), TRUE);
  gtk_box_append (self->slot, GTK_WIDGET (self->table));
}

/* A box has no statement. */
static void
fill_accounts (SteadBankDialog *self,
               gint64           id)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store_of (self), FALSE, NULL);

  stead_pick_clear (self->account);
  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];

      if (account->kind != STEAD_ACCOUNT_TILL)
        stead_pick_append (self->account, account->id, account->name);
    }
  stead_pick_show (self->account, id);
}

void
stead_bank_dialog_show (GtkWidget *parent,
                        SteadDesk *desk,
                        gint64     account_id)
{
  SteadBankDialog *self;

  g_return_if_fail (STEAD_IS_DESK (desk));

  self = g_object_new (STEAD_TYPE_BANK_DIALOG, NULL);
  self->desk = g_object_ref (desk);
  self->changed_id = g_signal_connect_swapped (desk, "changed", G_CALLBACK (refresh), self);
  stead_field_set_today (self->through, stead_store_get_today (store_of (self)));
  stead_field_set_currency (self->closing, stead_desk_get_farm (desk)->currency);
  fill_accounts (self, account_id);
  stead_cash_picks_people (self->person, store_of (self), 0);
  show_sheet (self);
  refresh (self);
  gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (gtk_widget_get_root (parent)));
  stead_ui_name_drop_downs (GTK_WIDGET (self));
  gtk_window_present (GTK_WINDOW (self));
}

/* stead-cash-pane.c - the cash book: where money lies, and each line, newest first. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-cash-pane.h"

#include "answer/stead-cash-words.h"
#include "app/keep/stead-account-dialog.h"
#include "app/keep/stead-bank-dialog.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-cash-head.h"
#include "app/keep/stead-close-dialog.h"
#include "app/keep/stead-fund-dialog.h"
#include "app/keep/stead-move-dialog.h"
#include "app/keep/stead-till-dialog.h"
#include "app/stead-paper-dialog.h"
#include "app/stead-ui.h"
#include "core/stead-money.h"

struct _SteadCashPane
{
  SteadPane      parent_instance;

  SteadTable    *table;
  SteadCashHead *head;
  GHashTable    *names;      /* of accounts: id → name */
  GHashTable    *funds;      /* id → name */
  SteadDay       closed_to;
  GtkWidget     *more, *menu;
  GtkWidget     *first[2];   /* buttons of a book without an account */
  GtkWidget     *usual[6];   /* buttons of a book with one */
};

G_DEFINE_FINAL_TYPE (SteadCashPane, stead_cash_pane, STEAD_TYPE_PANE)

/* --- columns ------------------------------------------------------------------------------ */

static const SteadCashLine *
line_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static const char *
currency_of (gpointer pane)
{
  return stead_desk_get_farm (stead_pane_get_desk (pane))->currency;
}

static char *
number_text (gpointer item,
             gpointer data)
{
  return g_strdup_printf ("%" G_GINT64_FORMAT, line_of (item)->id);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (line_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
account_text (gpointer item,
              gpointer data)
{
  SteadCashPane *self = data;

  return g_strdup (g_hash_table_lookup (self->names, &line_of (item)->account_id));
}

static char *
category_text (gpointer item,
               gpointer data)
{
  return g_strdup (stead_cash_words_category (line_of (item)->category));
}

/* Of money that was moved: the account at the other end, if it is another one. */
static const char *
other_end (SteadCashPane       *self,
           const SteadCashLine *line)
{
  return line->pair_id != 0 && line->pair_account_id != line->account_id
         ? g_hash_table_lookup (self->names, &line->pair_account_id) : NULL;
}

static char *
who_text (gpointer item,
          gpointer data)
{
  const SteadCashLine *line = line_of (item);
  const char *other = other_end (data, line);

  if (other != NULL)
    return g_strdup (other);
  return g_strdup (line->who != NULL ? line->who : line->note);
}

static char *
in_text (gpointer item,
         gpointer data)
{
  const SteadCashLine *line = line_of (item);

  return line->cents > 0 ? stead_money_format (line->cents, currency_of (data)) : NULL;
}

static char *
out_text (gpointer item,
          gpointer data)
{
  const SteadCashLine *line = line_of (item);

  return line->cents < 0 ? stead_money_format (-line->cents, currency_of (data)) : NULL;
}

static char *
balance_text (gpointer item,
              gpointer data)
{
  return stead_money_format (line_of (item)->balance_cents, currency_of (data));
}

static void
add_mark (GString *text,
          char    *mark)
{
  if (text->len > 0)
    g_string_append (text, C_("between items of a list", ", "));
  g_string_append (text, mark);
  g_free (mark);
}

static char *
mark_text (gpointer item,
           gpointer data)
{
  SteadCashPane *self = data;
  const SteadCashLine *line = line_of (item);
  GString *text = g_string_new (NULL);

  if (line->fund_id != 0)
    add_mark (text, g_strdup (g_hash_table_lookup (self->funds, &line->fund_id)));
  if (line->corrected_by != 0)
    /* Translators: number of a line of the cash book. */
    add_mark (text, g_strdup_printf (_("corrected by line %u"), (guint) line->corrected_by));
  if (line->corrects_id != 0)
    /* Translators: number of a line of the cash book. */
    add_mark (text, g_strdup_printf (_("corrects line %u"), (guint) line->corrects_id));
  if (line->bank_line_id != 0)
    add_mark (text, g_strdup (_("on the statement ✓")));
  if (line->picture_id != 0)
    add_mark (text, g_strdup (_("picture")));
  if (self->closed_to != STEAD_DAY_NONE && line->day <= self->closed_to && line->corrected_by == 0)
    add_mark (text, g_strdup (_("closed")));
  return g_string_free (text, FALSE);
}

static int
compare_number (gconstpointer a,
                gconstpointer b,
                gpointer      data)
{
  gint64 x = line_of (a)->id, y = line_of (b)->id;

  return (x > y) - (x < y);
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = line_of (a)->day, y = line_of (b)->day;

  return x != y ? (x > y) - (x < y) : compare_number (a, b, data);
}

static int
compare_account (gconstpointer a,
                 gconstpointer b,
                 gpointer      data)
{
  g_autofree char *x = account_text ((gpointer) a, data);
  g_autofree char *y = account_text ((gpointer) b, data);

  return g_utf8_collate (x != NULL ? x : "", y != NULL ? y : "");
}

static int
compare_category (gconstpointer a,
                  gconstpointer b,
                  gpointer      data)
{
  return g_utf8_collate (stead_cash_words_category (line_of (a)->category),
                         stead_cash_words_category (line_of (b)->category));
}

static int
compare_cents (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = line_of (a)->cents, y = line_of (b)->cents;

  return (x > y) - (x < y);
}

/* --- what a person does ------------------------------------------------------------------------ */

static void
open_line (gpointer item,
           gpointer data)
{
  SteadDesk *desk = stead_pane_get_desk (data);
  const SteadCashLine *line = line_of (item);

  if (line->pair_id != 0)
    stead_move_dialog_show (data, desk, line->id, 0);
  else
    stead_cash_dialog_show (data, desk, line->id);
}

static void
open_cb (SteadPane *pane)
{
  SteadCashPane *self = STEAD_CASH_PANE (pane);

  if (stead_pane_get_chosen (pane) != NULL)
    open_line (stead_table_get_selected (self->table), pane);
}

static gint64
account_of (SteadPane *pane)
{
  return stead_cash_head_get_account (STEAD_CASH_PANE (pane)->head);
}

static void
in_cb (SteadPane *pane)
{
  stead_cash_dialog_show_new (GTK_WIDGET (pane), stead_pane_get_desk (pane), 1, account_of (pane));
}

static void
out_cb (SteadPane *pane)
{
  stead_cash_dialog_show_new (GTK_WIDGET (pane), stead_pane_get_desk (pane), -1, account_of (pane));
}

static void
move_cb (SteadPane *pane)
{
  stead_move_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, account_of (pane));
}

static void
count_cb (SteadPane *pane)
{
  stead_till_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, 0);
}

static void
till_cb (SteadPane *pane)
{
  stead_account_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, STEAD_ACCOUNT_TILL);
}

static void
activity_cb (SteadPane *pane)
{
  stead_account_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, STEAD_ACCOUNT_ACTIVITY);
}

/* --- less often ----------------------------------------------------------------------------------- */

static void
new_account (SteadPane *pane)
{
  stead_account_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, STEAD_ACCOUNT_BANK);
}

static void
change_account (SteadPane *pane)
{
  if (account_of (pane) != 0)
    stead_account_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), account_of (pane), STEAD_ACCOUNT_TILL);
  else
    stead_desk_say (stead_pane_get_desk (pane), _("Choose one of the accounts above first."), FALSE);
}

static void
new_fund (SteadPane *pane)
{
  stead_fund_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0);
}

static void
close_books (SteadPane *pane)
{
  stead_close_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane));
}

static void
print_book (SteadPane *pane)
{
  SteadCashPane *self = STEAD_CASH_PANE (pane);
  SteadDesk *desk = stead_pane_get_desk (pane);

  stead_paper_dialog_show_days (GTK_WIDGET (pane), desk, "cash-book", NULL,
                                stead_cash_head_get_from (self->head, desk),
                                stead_store_get_today (stead_desk_get_store (desk)));
}

static void
print_sheet (SteadPane *pane)
{
  stead_paper_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), "count-sheet", NULL);
}

static void
match_bank (SteadPane *pane)
{
  stead_bank_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), account_of (pane));
}

typedef void (*Action) (SteadPane *pane);

static void
menu_cb (GtkWidget *button,
         gpointer   data)
{
  SteadCashPane *self = STEAD_CASH_PANE (gtk_widget_get_ancestor (button, STEAD_TYPE_CASH_PANE));
  Action action = (Action) data;

  gtk_popover_popdown (GTK_POPOVER (self->menu));
  action (STEAD_PANE (self));
}

static void
add_action (SteadCashPane *self,
            GtkWidget     *box,
            const char    *label,
            Action         action)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0);
  gtk_widget_add_css_class (button, "quiet");
  g_signal_connect (button, "clicked", G_CALLBACK (menu_cb), (gpointer) action);
  gtk_box_append (GTK_BOX (box), button);
}

static void
more_cb (SteadPane *pane)
{
  gtk_popover_popup (GTK_POPOVER (STEAD_CASH_PANE (pane)->menu));
}

static void
make_menu (SteadCashPane *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  add_action (self, box, _("New account…"), new_account);
  add_action (self, box, _("Change account…"), change_account);
  add_action (self, box, _("New fund…"), new_fund);
  add_action (self, box, _("Compare with a statement…"), match_bank);
  add_action (self, box, _("Close the books…"), close_books);
  add_action (self, box, _("Print the cash book…"), print_book);
  add_action (self, box, _("Print a sheet for counting…"), print_sheet);
  self->menu = gtk_popover_new ();
  gtk_widget_add_css_class (self->menu, "steading");
  gtk_popover_set_child (GTK_POPOVER (self->menu), box);
  gtk_widget_set_parent (self->menu, self->more);
}

/* --- showing ---------------------------------------------------------------------------------------- */

static void
name_add (GHashTable *names,
          gint64      id,
          const char *name)
{
  g_hash_table_insert (names, g_memdup2 (&id, sizeof id), g_strdup (name));
}

static void
take_names (SteadCashPane         *self,
            const SteadCashAnswer *answer)
{
  g_hash_table_remove_all (self->names);
  g_hash_table_remove_all (self->funds);
  for (guint i = 0; i < answer->accounts->len; i++)
    {
      const SteadAccountState *state = answer->accounts->pdata[i];

      name_add (self->names, state->account->id, state->account->name);
    }
  for (guint i = 0; i < answer->funds->len; i++)
    {
      const SteadFundState *state = answer->funds->pdata[i];

      name_add (self->funds, state->fund->id, state->fund->name);
    }
}

static void
show_buttons (SteadCashPane *self,
              gboolean       has_account)
{
  for (gsize i = 0; i < G_N_ELEMENTS (self->first); i++)
    gtk_widget_set_visible (self->first[i], !has_account);
  for (gsize i = 0; i < G_N_ELEMENTS (self->usual); i++)
    gtk_widget_set_visible (self->usual[i], has_account);
  stead_table_set_empty (self->table, has_account
                         ? _("Nothing came in or went out in this time.")
                         : _("Money in and money out belong here. Start with where the money lies: a till box, or the "
                             "farm’s account in the school’s books."));
}

/* The lines, newest first. */
static GListModel *
lines_model (SteadCashAnswer *answer)
{
  GPtrArray *lines = g_steal_pointer (&answer->lines);

  for (guint i = 0; i < lines->len / 2; i++)
    {
      gpointer one = lines->pdata[i];

      lines->pdata[i] = lines->pdata[lines->len - 1 - i];
      lines->pdata[lines->len - 1 - i] = one;
    }
  return stead_rows_from_array (lines, (GDestroyNotify) stead_cash_line_free);
}

static void
stead_cash_pane_refresh (SteadPane *pane)
{
  SteadCashPane *self = STEAD_CASH_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  SteadDesk *desk = stead_pane_get_desk (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadCashAnswer) answer = stead_cash_answer_new (store, stead_cash_head_get_from (self->head, desk),
                                                             stead_store_get_today (store), account_of (pane), &error);
  g_autoptr(GListModel) model = NULL;

  stead_pane_say (pane, answer != NULL ? answer->sentence : NULL, error);
  stead_cash_head_set (self->head, desk, answer);
  if (answer != NULL)
    {
      self->closed_to = answer->closed_to;
      take_names (self, answer);
      show_buttons (self, answer->accounts->len > 0);
      model = lines_model (answer);
    }
  stead_table_set_model (self->table, model);
}

static void
sought_cb (SteadCashPane *self)
{
  const char *words = stead_cash_head_get_words (self->head);

  stead_table_set_filter (self->table, *words != '\0' ? words : NULL);
}

static void
stead_cash_pane_dispose (GObject *object)
{
  SteadCashPane *self = STEAD_CASH_PANE (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  G_OBJECT_CLASS (stead_cash_pane_parent_class)->dispose (object);
}

static void
stead_cash_pane_finalize (GObject *object)
{
  SteadCashPane *self = STEAD_CASH_PANE (object);

  g_clear_pointer (&self->names, g_hash_table_unref);
  g_clear_pointer (&self->funds, g_hash_table_unref);
  G_OBJECT_CLASS (stead_cash_pane_parent_class)->finalize (object);
}

static void
stead_cash_pane_class_init (SteadCashPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cash_pane_dispose;
  G_OBJECT_CLASS (klass)->finalize = stead_cash_pane_finalize;
  STEAD_PANE_CLASS (klass)->refresh = stead_cash_pane_refresh;
}

static void
add_columns (SteadCashPane *self)
{
  SteadTable *table = self->table;

  stead_table_add_column (table, C_("number of a line", "No."), TRUE, FALSE, number_text, NULL, compare_number, self);
  stead_table_add_column (table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (table, _("Account"), FALSE, FALSE, account_text, NULL, compare_account, self);
  stead_table_add_column (table, _("What for"), FALSE, TRUE, category_text, NULL, compare_category, self);
  stead_table_add_column (table, _("From or to"), FALSE, TRUE, who_text, NULL, NULL, self);
  stead_table_add_column (table, C_("money", "In"), TRUE, FALSE, in_text, NULL, compare_cents, self);
  stead_table_add_column (table, C_("money", "Out"), TRUE, FALSE, out_text, NULL, compare_cents, self);
  stead_table_add_column (table, _("Balance"), TRUE, FALSE, balance_text, NULL, NULL, self);
  stead_table_add_column (table, _("Marks"), FALSE, FALSE, mark_text, NULL, NULL, self);
}

static void
stead_cash_pane_init (SteadCashPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->closed_to = STEAD_DAY_NONE;
  self->names = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  self->funds = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  self->head = STEAD_CASH_HEAD (stead_cash_head_new ());
  g_signal_connect_swapped (self->head, "chosen", G_CALLBACK (stead_cash_pane_refresh), self);
  g_signal_connect_swapped (self->head, "sought", G_CALLBACK (sought_cb), self);
  stead_pane_add_head (pane, GTK_WIDGET (self->head));
  self->table = stead_pane_add_table (pane, _("Lines of the cash book"));
  add_columns (self);
  stead_table_set_activate (self->table, open_line, self);
  self->usual[0] = stead_pane_add_button (pane, _("Money in…"), G_CALLBACK (in_cb));
  self->usual[1] = stead_pane_add_button (pane, _("Money out…"), G_CALLBACK (out_cb));
  self->usual[2] = stead_pane_add_button (pane, _("Move money…"), G_CALLBACK (move_cb));
  self->usual[3] = stead_pane_add_button (pane, _("Count the till…"), G_CALLBACK (count_cb));
  self->usual[4] = stead_pane_add_button (pane, _("Open…"), G_CALLBACK (open_cb));
  self->usual[5] = self->more = stead_pane_add_button (pane, _("More"), G_CALLBACK (more_cb));
  self->first[0] = stead_pane_add_button (pane, _("Till box…"), G_CALLBACK (till_cb));
  self->first[1] = stead_pane_add_button (pane, _("School activity account…"), G_CALLBACK (activity_cb));
  gtk_widget_add_css_class (self->first[0], "primary");
  make_menu (self);
}

/* stead-cash-head.c - over the lines of the cash book: accounts, funds, what needs a look, and why. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-cash-head.h"

#include "app/keep/stead-account-dialog.h"
#include "app/keep/stead-bank-dialog.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-fund-dialog.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/keep/stead-till-dialog.h"
#include "app/stead-chips.h"
#include "app/stead-ui.h"
#include "app/stead-why-box.h"
#include "app/stead-wrap-layout.h"
#include "core/stead-money.h"

/* Chip ids: 0 is none of them, so all of them is one more. */
#define ALL_ACCOUNTS (-1)

/* In the order of the drop-down. */
enum { THIS_MONTH, WEEKS_12, SCHOOL_YEAR, EVERYTHING };

struct _SteadCashHead
{
  GtkWidget    parent_instance;

  SteadDesk   *desk;
  gint64       account_id;
  GtkWidget   *box, *chips, *seek_row, *period, *words, *funds, *looks, *look_box;
  SteadWhyBox *whys;
};

G_DEFINE_FINAL_TYPE (SteadCashHead, stead_cash_head, GTK_TYPE_WIDGET)

enum { CHOSEN, SOUGHT, N_SIGNALS };
static guint signals[N_SIGNALS];

/* --- what a person chooses ------------------------------------------------------------- */

static void
account_cb (SteadCashHead *self,
            gint64         id)
{
  self->account_id = id == ALL_ACCOUNTS ? 0 : id;
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
period_cb (SteadCashHead *self)
{
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
words_cb (SteadCashHead *self)
{
  g_signal_emit (self, signals[SOUGHT], 0);
}

gint64
stead_cash_head_get_account (SteadCashHead *self)
{
  g_return_val_if_fail (STEAD_IS_CASH_HEAD (self), 0);
  return self->account_id;
}

const char *
stead_cash_head_get_words (SteadCashHead *self)
{
  g_return_val_if_fail (STEAD_IS_CASH_HEAD (self), NULL);
  return gtk_editable_get_text (GTK_EDITABLE (self->words));
}

SteadDay
stead_cash_head_get_from (SteadCashHead *self,
                          SteadDesk     *desk)
{
  const SteadFarm *farm;
  SteadDay today;
  int year, month, day;

  g_return_val_if_fail (STEAD_IS_CASH_HEAD (self) && STEAD_IS_DESK (desk), STEAD_DAY_NONE);

  farm = stead_desk_get_farm (desk);
  today = stead_store_get_today (stead_desk_get_store (desk));
  stead_day_split (today, &year, &month, &day);
  switch (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->period)))
    {
    case THIS_MONTH: return today - day + 1;
    case WEEKS_12: return today - 12 * 7 + 1;
    case EVERYTHING: return stead_day_new (1900, 1, 1);
    case SCHOOL_YEAR:
    default: return stead_school_year_start (today, farm->school_year_month, farm->school_year_mday);
    }
}

/* --- accounts and funds ------------------------------------------------------------------ */

static void
show_accounts (SteadCashHead         *self,
               const SteadCashAnswer *answer)
{
  SteadChips *chips = STEAD_CHIPS (self->chips);
  g_autofree char *total = stead_money_format (answer->total_cents, answer->farm->currency);
  /* Translators: an amount of money. */
  g_autofree char *all = g_strdup_printf (_("All %s"), total);
  gboolean there = FALSE;

  stead_chips_clear (chips);
  if (answer->accounts->len > 1)
    stead_chips_append (chips, ALL_ACCOUNTS, all);
  for (guint i = 0; i < answer->accounts->len; i++)
    {
      const SteadAccountState *state = answer->accounts->pdata[i];
      g_autofree char *cents = stead_money_format (state->cents, answer->farm->currency);
      /* Translators: name of an account and an amount of money. */
      g_autofree char *text = g_strdup_printf (C_("account", "%s %s"), state->account->name, cents);

      if (state->account->closed_on != STEAD_DAY_NONE && state->account->id != self->account_id)
        continue;
      stead_chips_append (chips, state->account->id, text);
      there = there || state->account->id == self->account_id;
    }
  if (!there)
    self->account_id = 0;
  stead_chips_choose (chips, self->account_id != 0 ? self->account_id
                             : answer->accounts->len == 1
                             ? ((SteadAccountState *) answer->accounts->pdata[0])->account->id : ALL_ACCOUNTS);
}

static void
fund_cb (GtkWidget *button,
         gpointer   data)
{
  SteadCashHead *self = STEAD_CASH_HEAD (gtk_widget_get_ancestor (button, STEAD_TYPE_CASH_HEAD));
  const gint64 *id = g_object_get_data (G_OBJECT (button), "id");

  stead_fund_dialog_show (GTK_WIDGET (self), self->desk, *id);
}

static void
keep_id (GtkWidget  *widget,
         const char *name,
         gint64      id)
{
  g_object_set_data_full (G_OBJECT (widget), name, g_memdup2 (&id, sizeof id), g_free);
}

static void
show_funds (SteadCashHead         *self,
            const SteadCashAnswer *answer)
{
  GtkWidget *label = gtk_label_new (_("Kept apart:"));

  stead_ui_drop_children (self->funds);
  gtk_widget_add_css_class (label, "soft");
  gtk_widget_set_parent (label, self->funds);
  for (guint i = 0; i < answer->funds->len; i++)
    {
      const SteadFundState *state = answer->funds->pdata[i];
      g_autofree char *cents = stead_money_format (state->cents, answer->farm->currency);
      /* Translators: name of a fund and an amount of money. */
      g_autofree char *text = g_strdup_printf (C_("fund", "%s %s"), state->fund->name, cents);
      GtkWidget *button = gtk_button_new_with_label (text);

      gtk_widget_add_css_class (button, "link");
      gtk_widget_set_tooltip_text (button, state->fund->purpose);
      keep_id (button, "id", state->fund->id);
      g_signal_connect (button, "clicked", G_CALLBACK (fund_cb), NULL);
      gtk_widget_set_parent (button, self->funds);
    }
  gtk_widget_set_visible (self->funds, answer->funds->len > 0);
}

/* --- what needs a look --------------------------------------------------------------------- */

static gint64
sheet_account (SteadCashHead *self,
               gint64         sheet_id)
{
  g_autoptr(SteadBankSheet) sheet = stead_bank_repo_sheet (stead_desk_get_store (self->desk), sheet_id, NULL);

  return sheet != NULL ? sheet->account_id : 0;
}

static void
look_cb (GtkWidget *button,
         gpointer   data)
{
  SteadCashHead *self = STEAD_CASH_HEAD (gtk_widget_get_ancestor (button, STEAD_TYPE_CASH_HEAD));
  gint64 id = *(const gint64 *) g_object_get_data (G_OBJECT (button), "id");
  gint64 kind = *(const gint64 *) g_object_get_data (G_OBJECT (button), "kind");
  GtkWidget *parent = GTK_WIDGET (self);

  switch ((SteadCashLookKind) kind)
    {
    case STEAD_CASH_LOOK_BELOW_ZERO: stead_account_dialog_show (parent, self->desk, id, STEAD_ACCOUNT_TILL); break;
    case STEAD_CASH_LOOK_FUND_SHORT: stead_fund_dialog_show (parent, self->desk, id); break;
    case STEAD_CASH_LOOK_PAID_TWICE: stead_receipt_dialog_show (parent, self->desk, id, 0); break;
    case STEAD_CASH_LOOK_TWIN: stead_cash_dialog_show (parent, self->desk, id); break;
    case STEAD_CASH_LOOK_COUNT_OPEN:
    case STEAD_CASH_LOOK_NOT_DEPOSITED: stead_till_dialog_show (parent, self->desk, id, 0); break;
    case STEAD_CASH_LOOK_SHEET_OPEN: stead_bank_dialog_show (parent, self->desk, sheet_account (self, id)); break;
    default: break;
    }
}

static void
add_look (SteadCashHead       *self,
          const SteadCashLook *look)
{
  GtkWidget *button = gtk_button_new_with_label (look->text);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  stead_ui_wrap (GTK_LABEL (label));
  gtk_widget_add_css_class (button, "link");
  keep_id (button, "id", look->id);
  keep_id (button, "kind", look->kind);
  g_signal_connect (button, "clicked", G_CALLBACK (look_cb), NULL);
  gtk_box_append (GTK_BOX (self->look_box), button);
}

static void
show_looks (SteadCashHead         *self,
            const SteadCashAnswer *answer)
{
  g_autofree char *title = g_strdup_printf (ngettext ("%u thing needs a look", "%u things need a look",
                                                      answer->looks->len), answer->looks->len);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->look_box)) != NULL)
    gtk_box_remove (GTK_BOX (self->look_box), child);
  for (guint i = 0; i < answer->looks->len; i++)
    add_look (self, answer->looks->pdata[i]);
  gtk_expander_set_label (GTK_EXPANDER (self->looks), title);
  stead_ui_name (self->looks, title);
  gtk_widget_set_visible (self->looks, answer->looks->len > 0);
}

void
stead_cash_head_set (SteadCashHead         *self,
                     SteadDesk             *desk,
                     const SteadCashAnswer *answer)
{
  g_autoptr(GPtrArray) whys = NULL;

  g_return_if_fail (STEAD_IS_CASH_HEAD (self) && STEAD_IS_DESK (desk));

  g_set_object (&self->desk, desk);
  gtk_widget_set_visible (GTK_WIDGET (self), answer != NULL && answer->accounts->len > 0);
  if (answer == NULL)
    return;
  show_accounts (self, answer);
  show_funds (self, answer);
  show_looks (self, answer);
  whys = stead_cash_answer_whys (answer);
  stead_why_box_set (self->whys, whys);
}

/* --- the widget --------------------------------------------------------------------------------- */

static void
stead_cash_head_dispose (GObject *object)
{
  SteadCashHead *self = STEAD_CASH_HEAD (object);

  if (self->funds != NULL)
    stead_ui_drop_children (self->funds);
  self->funds = NULL;
  stead_ui_drop_children (GTK_WIDGET (self));
  g_clear_object (&self->desk);
  G_OBJECT_CLASS (stead_cash_head_parent_class)->dispose (object);
}

static void
stead_cash_head_class_init (SteadCashHeadClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = stead_cash_head_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  signals[SOUGHT] = g_signal_new ("sought", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
make_seek_row (SteadCashHead *self)
{
  const char *periods[] = { _("This month"), _("Last 12 weeks"), _("This school year"), _("Everything"), NULL };

  GtkWidget *seek = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->seek_row = g_object_new (GTK_TYPE_BOX, "layout-manager", stead_wrap_layout_new (), NULL);
  self->chips = stead_chips_new ();
  stead_ui_name (self->chips, _("Account"));
  g_signal_connect_swapped (self->chips, "chosen", G_CALLBACK (account_cb), self);
  self->period = gtk_drop_down_new_from_strings (periods);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->period), SCHOOL_YEAR);
  stead_ui_name (self->period, _("How far back"));
  stead_ui_name (gtk_widget_get_first_child (self->period), _("How far back"));
  gtk_widget_set_valign (self->period, GTK_ALIGN_START);
  g_signal_connect_swapped (self->period, "notify::selected", G_CALLBACK (period_cb), self);
  self->words = gtk_search_entry_new ();
  g_object_set (self->words, "placeholder-text", _("Find a line"), "width-chars", 12, "max-width-chars", 14, "valign", GTK_ALIGN_START, NULL);
  stead_ui_name (self->words, _("Find a line"));
  g_signal_connect_swapped (self->words, "search-changed", G_CALLBACK (words_cb), self);
  gtk_box_append (GTK_BOX (self->seek_row), self->chips);
  gtk_box_append (GTK_BOX (seek), self->period);
  gtk_box_append (GTK_BOX (seek), self->words);
  gtk_box_append (GTK_BOX (self->seek_row), seek);
}

static void
stead_cash_head_init (SteadCashHead *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  make_seek_row (self);
  self->funds = g_object_new (GTK_TYPE_BOX, "layout-manager", stead_wrap_layout_new (), NULL);
  self->looks = gtk_expander_new ("");
  stead_ui_name (self->looks, _("What needs a look"));
  self->look_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  stead_ui_expander_set_child (self->looks, self->look_box);
  gtk_widget_add_css_class (self->looks, "caution");
  gtk_box_append (GTK_BOX (self->box), self->seek_row);
  gtk_box_append (GTK_BOX (self->box), self->funds);
  gtk_box_append (GTK_BOX (self->box), self->looks);
  gtk_box_append (GTK_BOX (self->box), stead_why_box_new_low (&self->whys));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
stead_cash_head_new (void)
{
  return g_object_new (STEAD_TYPE_CASH_HEAD, NULL);
}

/* stead-buy-dialog.c - one receipt for a build: what was bought, where, and out of which fund. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-build-buy-why.h"
#include "app/fund/stead-fund-dialogs.h"
#include "app/keep/stead-cash-picks.h"
#include "app/make/stead-make-parts.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-store-watch.h"

typedef struct
{
  SteadBuildLine      *line;   /* not saved yet if nobody said anything about it */
  const SteadBuildRow *bill;   /* (transfer none) */
  SteadField          *packs, *cents;
} Row;

typedef struct
{
  SteadBuildAnswer   *answer;
  GPtrArray          *rows;   /* of Row */
  SteadBuildPurchase  purchase;
  GArray             *buys;   /* of SteadBuildBuy */
  GPtrArray          *lines;  /* of SteadBuildLine, (transfer none), beside @buys */
  SteadField         *supplier, *day, *reference, *tax;
  SteadPick          *account, *fund;
  SteadWhyBox        *whys;
  const char         *currency;   /* of the farm */
} Form;

static void
row_free (gpointer data)
{
  stead_build_line_free (((Row *) data)->line);
  g_free (data);
}

static void
form_free (gpointer data)
{
  Form *form = data;

  stead_build_answer_free (form->answer);
  g_ptr_array_unref (form->rows);
  g_array_unref (form->buys);
  g_ptr_array_unref (form->lines);
  g_free (form);
}

/* --- while it is typed --------------------------------------------------------------------- */

/* As far as it can be read; without a number all that is still to come. */
static double
peek_packs (const Row *row)
{
  double packs;

  if (stead_field_is_empty (row->packs) || !stead_number_parse (stead_field_get_text (row->packs), &packs, NULL)
      || !(packs > 0))
    return row->bill->open;
  return packs;
}

/* What is left empty costs what was planned. */
static void
show_hint (const Form *form,
           const Row  *row)
{
  g_autofree char *cost = row->bill->price_cents < 0 ? NULL
    : stead_money_format (stead_build_price_cents (row->bill->price_cents, peek_packs (row)), form->currency);

  if (cost != NULL)
    g_object_set (row->cents, "hint", cost, NULL);
}

static void
typed_cb (Form *form)
{
  g_autoptr(GArray) things = g_array_new (FALSE, FALSE, sizeof (SteadBuildBuying));
  g_autoptr(GPtrArray) whys = NULL;

  for (guint i = 0; i < form->rows->len; i++)
    {
      const Row *row = form->rows->pdata[i];
      const SteadBuildBuying thing = { row->bill->name, row->bill->packs, row->bill->came, peek_packs (row),
                                       row->bill->price_cents };

      g_array_append_val (things, thing);
      show_hint (form, row);
    }
  whys = stead_build_buying_whys (things, form->currency);
  stead_why_box_set (form->whys, whys);
}

/* --- saving ----------------------------------------------------------------------------- */

static gboolean
buy_act (SteadStore  *store,
         gpointer     data,
         GError     **error)
{
  Form *form = data;

  for (guint i = 0; i < form->buys->len; i++)
    {
      SteadBuildLine *line = form->lines->pdata[i];

      stead_store_watch_id (store, &line->id);
      stead_store_watch_id (store, &g_array_index (form->buys, SteadBuildBuy, i).id);
      if (line->id == 0 && !stead_build_line_repo_save (store, line, error))
        return FALSE;
      g_array_index (form->buys, SteadBuildBuy, i).line_id = line->id;
    }
  return stead_build_buy_repo_add (store, form->answer->build->id, &form->purchase,
                                   (SteadBuildBuy *) (gpointer) form->buys->data, form->buys->len, error);
}

/* A row with neither a number nor a cost was not on the receipt. */
static gboolean
read_row (Form *form,
          Row  *row)
{
  SteadBuildBuy buy = { 0 };

  if (stead_field_is_empty (row->packs) && stead_field_is_empty (row->cents))
    return TRUE;
  if (!stead_field_read_number (row->packs, row->bill->open, &buy.packs) || !stead_field_read_money (row->cents, -1, &buy.cents))
    return FALSE;
  if (!(buy.packs > 0))
    {
      stead_field_set_error (row->packs, _("Enter how many came, above zero."));
      return FALSE;
    }
  if (buy.cents < 0 && row->bill->price_cents >= 0)
    buy.cents = stead_build_price_cents (row->bill->price_cents, buy.packs);
  if (buy.cents < 0)
    {
      stead_field_set_error (row->cents, _("Enter what it cost."));
      return FALSE;
    }
  g_array_append_val (form->buys, buy);
  g_ptr_array_add (form->lines, row->line);
  return TRUE;
}

static gboolean
read_form (Form      *form,
           SteadDesk *desk)
{
  SteadBuildPurchase *purchase = &form->purchase;
  gboolean good = stead_field_read_text (form->supplier, &purchase->supplier);

  good &= stead_field_read_day (form->day, stead_store_get_today (stead_desk_get_store (desk)), &purchase->day);
  good &= stead_field_read_money (form->tax, 0, &purchase->tax_cents);
  g_array_set_size (form->buys, 0);
  g_ptr_array_set_size (form->lines, 0);
  for (guint i = 0; i < form->rows->len; i++)
    good &= read_row (form, form->rows->pdata[i]);
  purchase->reference = stead_field_get_text (form->reference);
  if (*purchase->reference == '\0')
    purchase->reference = NULL;
  purchase->account_id = stead_pick_get (form->account);
  purchase->fund_id = stead_pick_get (form->fund);
  if (good && form->buys->len == 0)
    {
      stead_field_set_error (((Row *) form->rows->pdata[0])->packs, _("Enter how many came of at least one thing."));
      return FALSE;
    }
  return good;
}

static gboolean
save_cb (SteadForm  *dialog,
         gpointer    data,
         GError    **error)
{
  Form *form = data;
  SteadDesk *desk = stead_dialog_get_desk (STEAD_DIALOG (dialog));
  g_autofree char *step = NULL;

  if (!read_form (form, desk))
    return FALSE;
  /* Translators: name of a step to undo; a supplier. */
  step = g_strdup_printf (_("receipt of %s"), form->purchase.supplier);
  return stead_desk_act (desk, step, buy_act, form, error);
}

/* --- what is asked ------------------------------------------------------------------------ */

static void
add_row (Form                *form,
         GtkWidget           *grid,
         SteadDesk           *desk,
         const SteadBuildRow *bill)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *open = stead_number_format (bill->open, 1);
  /* Translators: a thing on a bill, how many of it are still to come. */
  g_autofree char *name = g_strdup_printf (_("%s (%s to come)"), bill->name, open);
  g_autofree char *packs = g_strdup_printf (_("How many: %s"), bill->name);
  g_autofree char *cents = g_strdup_printf (_("Cost: %s"), bill->name);
  Row *row = g_new0 (Row, 1);
  int at = (int) form->rows->len + 1;

  row->line = stead_fund_find_line (desk, form->answer->build->id, bill, &error);
  if (row->line == NULL)
    {
      g_free (row);
      return;
    }
  row->bill = bill;
  row->packs = stead_form_cell (packs, STEAD_FIELD_NUMBER);
  row->cents = stead_form_cell (cents, STEAD_FIELD_MONEY);
  stead_field_set_currency (row->cents, form->currency);
  g_signal_connect_swapped (row->packs, "changed", G_CALLBACK (typed_cb), form);
  gtk_grid_attach (GTK_GRID (grid), stead_make_label (name, NULL), 0, at, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (row->packs), 1, at, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (row->cents), 2, at, 1, 1);
  g_ptr_array_add (form->rows, row);
}

static GtkWidget *
make_rows (Form      *form,
           SteadDesk *desk)
{
  GtkWidget *grid = gtk_grid_new ();
  const char *heads[] = { _("Thing"), _("How many"), _("Cost of all of them, without tax") };

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < 3; i++)
    {
      GtkWidget *head = stead_make_label (heads[i], "soft");

      gtk_widget_set_hexpand (head, i == 0);
      gtk_grid_attach (GTK_GRID (grid), head, i, 0, 1, 1);
    }
  for (guint i = 0; i < form->answer->rows->len; i++)
    {
      const SteadBuildRow *row = form->answer->rows->pdata[i];

      if (!row->given && row->open > 0)
        add_row (form, grid, desk, row);
    }
  return grid;
}

static void
all_cb (Form *form)
{
  for (guint i = 0; i < form->rows->len; i++)
    {
      Row *row = form->rows->pdata[i];

      stead_field_show_number (row->packs, row->bill->open);
    }
}

static void
add_fields (Form      *form,
            SteadForm *dialog,
            SteadDesk *desk)
{
  SteadStore *store = stead_desk_get_store (desk);
  GtkWidget *all = gtk_button_new_with_label (_("All of it came"));

  form->supplier = stead_form_add (dialog, desk, _("Bought from"), STEAD_FIELD_TEXT);
  form->day = stead_form_add (dialog, desk, _("Day"), STEAD_FIELD_DAY);
  stead_field_show_day (form->day, stead_store_get_today (store));
  form->reference = stead_form_add (dialog, desk, _("Number of the receipt"), STEAD_FIELD_TEXT);
  form->tax = stead_form_add (dialog, desk, _("Sales tax on the receipt"), STEAD_FIELD_MONEY);
  form->account = stead_form_add_pick (dialog, _("Paid out of the account"));
  stead_cash_picks_accounts (form->account, store, 0);
  form->fund = stead_form_add_pick (dialog, _("Paid with the money of"));
  stead_cash_picks_funds (form->fund, store, form->answer->build->fund_id);
  gtk_widget_set_halign (all, GTK_ALIGN_START);
  g_signal_connect_swapped (all, "clicked", G_CALLBACK (all_cb), form);
  stead_form_add_widget (dialog, make_rows (form, desk));
  stead_form_add_widget (dialog, all);
  stead_form_add_widget (dialog, stead_why_box_new_folded (&form->whys));
  typed_cb (form);
}

void
stead_buy_dialog_show (GtkWidget *parent,
                       SteadDesk *desk,
                       gint64     build_id)
{
  g_autoptr(GError) error = NULL;
  SteadBuildAnswer *answer = stead_build_answer_new (stead_desk_get_store (desk), build_id, &error);
  SteadForm *dialog;
  Form *form;

  if (answer == NULL)
    {
      stead_desk_say (desk, error->message, FALSE);
      return;
    }
  form = g_new0 (Form, 1);
  form->answer = answer;
  form->currency = stead_desk_get_farm (desk)->currency;
  form->rows = g_ptr_array_new_with_free_func (row_free);
  form->buys = g_array_new (FALSE, TRUE, sizeof (SteadBuildBuy));
  form->lines = g_ptr_array_new ();
  dialog = stead_form_new (_("Bought"), _("Save receipt"), NULL, save_cb, NULL, form, form_free);
  add_fields (form, dialog, desk);
  if (form->rows->len == 0)
    {
      stead_desk_say (desk, _("Nothing on the bill is still to be bought."), FALSE);
      gtk_window_destroy (GTK_WINDOW (dialog));
      return;
    }
  if (stead_pick_count (form->account) == 0)
    {
      stead_desk_say (desk, _("Enter an account of the cash book in Keep first: what is bought is paid from it."), FALSE);
      gtk_window_destroy (GTK_WINDOW (dialog));
      return;
    }
  stead_dialog_present (STEAD_DIALOG (dialog), parent, desk);
  gtk_widget_grab_focus (GTK_WIDGET (form->supplier));
}

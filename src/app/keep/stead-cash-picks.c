/* stead-cash-picks.c - what a person can choose from in the dialogs of the cash book. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-cash-picks.h"

#include "answer/stead-cash-words.h"
#include "core/stead-money.h"
#include "store/stead-asset-repo.h"
#include "store/stead-batch-repo.h"
#include "store/stead-closing-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-receipt-repo.h"

void
stead_cash_picks_accounts (SteadPick  *pick,
                           SteadStore *store,
                           gint64      id)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, NULL);

  stead_pick_clear (pick);
  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];

      if (account->closed_on == STEAD_DAY_NONE || account->id == id)
        stead_pick_append (pick, account->id, account->name);
    }
  stead_pick_show (pick, id);
}

void
stead_cash_picks_funds (SteadPick  *pick,
                        SteadStore *store,
                        gint64      id)
{
  g_autoptr(GPtrArray) funds = stead_fund_repo_list (store, TRUE, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("fund", "none: for anything"));
  for (guint i = 0; funds != NULL && i < funds->len; i++)
    {
      const SteadFund *fund = funds->pdata[i];

      if (fund->closed_on == STEAD_DAY_NONE || fund->id == id)
        stead_pick_append (pick, fund->id, fund->name);
    }
  gtk_widget_set_visible (GTK_WIDGET (pick), stead_pick_count (pick) > 1);
  stead_pick_show (pick, id);
}

void
stead_cash_picks_enterprises (SteadPick  *pick,
                              SteadStore *store,
                              gint64      id)
{
  g_autoptr(GPtrArray) enterprises = stead_enterprise_repo_list (store, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("part of the farm", "all, or that of the batch"));
  for (guint i = 0; enterprises != NULL && i < enterprises->len; i++)
    {
      const SteadEnterprise *enterprise = enterprises->pdata[i];

      stead_pick_append (pick, enterprise->id, enterprise->name);
    }
  gtk_widget_set_visible (GTK_WIDGET (pick), stead_pick_count (pick) > 1);
  stead_pick_show (pick, id);
}

void
stead_cash_picks_people (SteadPick  *pick,
                         SteadStore *store,
                         gint64      id)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, _("not said"));
  for (guint i = 0; people != NULL && i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];

      if (person->left_on == STEAD_DAY_NONE || person->id == id)
        stead_pick_append (pick, person->id, person->name);
    }
  stead_pick_show (pick, id);
}

void
stead_cash_picks_batches (SteadPick  *pick,
                          SteadStore *store,
                          gint64      id)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, TRUE, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("batch", "none"));
  for (guint i = 0; batches != NULL && i < batches->len; i++)
    stead_pick_append (pick, ((SteadBatch *) batches->pdata[i])->id, ((SteadBatch *) batches->pdata[i])->name);
  stead_pick_show (pick, id);
}

void
stead_cash_picks_products (SteadPick  *pick,
                           SteadStore *store,
                           gint64      id)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, id != 0, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("product", "none, or several"));
  for (guint i = 0; products != NULL && i < products->len; i++)
    stead_pick_append (pick, ((SteadProduct *) products->pdata[i])->id, ((SteadProduct *) products->pdata[i])->name);
  stead_pick_show (pick, id);
}

void
stead_cash_picks_assets (SteadPick  *pick,
                         SteadStore *store,
                         gint64      id)
{
  g_autoptr(GPtrArray) assets = stead_asset_repo_list (store, NULL);

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("thing that lasts", "none"));
  for (guint i = 0; assets != NULL && i < assets->len; i++)
    stead_pick_append (pick, ((SteadAsset *) assets->pdata[i])->id, ((SteadAsset *) assets->pdata[i])->name);
  stead_pick_show (pick, id);
}

void
stead_cash_picks_categories (SteadPick         *pick,
                             int                sign,
                             SteadCashCategory  category)
{
  stead_pick_clear (pick);
  for (int i = 0; i < STEAD_N_CASH_CATEGORIES; i++)
    if (stead_cash_category_sign (i) == sign)
      stead_pick_append (pick, i, stead_cash_words_category (i));
  stead_pick_show (pick, category);
}

/* "Mar 3, Lakeside Feed, $25.00" */
static char *
receipt_text (const SteadReceipt *receipt,
              gint64              open_cents,
              const char         *currency)
{
  g_autofree char *day = stead_day_format (receipt->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *cents = stead_money_format (open_cents, currency);

  if (open_cents <= 0)
    /* Translators: a day and a shop. */
    return g_strdup_printf (_("%s, %s, paid"), day, receipt->supplier);
  /* Translators: a day, a shop, an amount of money. */
  return g_strdup_printf (_("%s, %s, %s open"), day, receipt->supplier, cents);
}

static void
append_receipt (SteadPick  *pick,
                SteadStore *store,
                const char *currency,
                gint64      id,
                gint64      open_cents)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_repo_get (store, id, NULL);
  g_autofree char *text = receipt != NULL ? receipt_text (receipt, open_cents, currency) : NULL;

  if (text != NULL)
    stead_pick_append (pick, id, text);
}

void
stead_cash_picks_receipts (SteadPick  *pick,
                           SteadStore *store,
                           const char *currency,
                           gint64      id)
{
  g_autoptr(GPtrArray) off = stead_cash_repo_receipts_off (store, NULL);
  gboolean there = id == 0;

  stead_pick_clear (pick);
  stead_pick_append (pick, 0, C_("receipt", "none"));
  for (guint i = off != NULL ? off->len : 0; i > 0; i--)
    {
      const SteadReceiptPaid *paid = off->pdata[i - 1];

      if (paid->paid_cents >= paid->total_cents && paid->receipt_id != id)
        continue;
      append_receipt (pick, store, currency, paid->receipt_id, paid->total_cents - paid->paid_cents);
      there = there || paid->receipt_id == id;
    }
  if (!there)
    append_receipt (pick, store, currency, id, 0);
  stead_pick_show (pick, id);
}

gboolean
stead_cash_picks_peek_day (SteadField *field,
                           SteadStore *store,
                           SteadDay   *day)
{
  return stead_day_parse (stead_field_get_text (field), stead_store_get_today (store),
                          stead_date_order_from_locale (), day, NULL);
}

gboolean
stead_cash_picks_check_day (SteadField *field,
                            SteadStore *store,
                            SteadDay    day)
{
  SteadDay closed = STEAD_DAY_NONE;
  g_autofree char *when = NULL, *text = NULL;

  if (!stead_closing_repo_last (store, &closed, NULL) || closed == STEAD_DAY_NONE || day > closed)
    return TRUE;
  when = stead_day_format (closed, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day. */
  text = g_strdup_printf (_("The books are closed through %s. Enter a later day."), when);
  stead_field_set_error (field, text);
  gtk_widget_grab_focus (GTK_WIDGET (field));
  return FALSE;
}

void
stead_cash_picks_put_face (GtkGrid   *grid,
                           GtkWidget *field,
                           int        column)
{
  GtkWidget *box = gtk_grid_get_child_at (grid, column, 0);

  if (box == NULL)
    {
      box = gtk_box_new (GTK_ORIENTATION_VERTICAL, (int) gtk_grid_get_row_spacing (grid));
      gtk_grid_attach (grid, box, column, 0, 1, 1);
    }
  gtk_box_append (GTK_BOX (box), field);
}

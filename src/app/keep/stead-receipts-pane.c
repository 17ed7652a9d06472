/* stead-receipts-pane.c - purchases and gifts, newest first. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "app/keep/stead-receipts-pane.h"

#include "answer/stead-store-room-why.h"
#include "app/keep/stead-cash-dialog.h"
#include "app/keep/stead-receipt-dialog.h"
#include "app/stead-import-dialog.h"
#include "app/stead-why-box.h"
#include "core/stead-money.h"
#include "store/stead-cash-repo.h"
#include "store/stead-item-repo.h"
#include "store/stead-receipt-repo.h"

struct _SteadReceiptsPane
{
  SteadPane    parent_instance;

  SteadTable  *table;
  SteadWhyBox *whys;
  GtkWidget   *pay;
  GHashTable  *items;    /* id → name */
  GHashTable  *open;     /* id → cents that are still to be paid */
};

G_DEFINE_FINAL_TYPE (SteadReceiptsPane, stead_receipts_pane, STEAD_TYPE_PANE)

static const SteadReceipt *
receipt_of (gpointer item)
{
  return stead_row_get (item);
}

static char *
day_text (gpointer item,
          gpointer data)
{
  return stead_day_format (receipt_of (item)->day, STEAD_DAY_STYLE_MEDIUM);
}

static char *
supplier_text (gpointer item,
               gpointer data)
{
  return g_strdup (receipt_of (item)->supplier);
}

static char *
lines_text (gpointer item,
            gpointer data)
{
  SteadReceiptsPane *self = data;
  const SteadReceipt *receipt = receipt_of (item);
  g_autoptr(GString) text = g_string_new (NULL);

  for (guint i = 0; i < receipt->lines->len; i++)
    {
      const SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, i);
      const char *name = g_hash_table_lookup (self->items, &line->item_id);

      if (i > 0)
        g_string_append (text, C_("between items of a list", ", "));
      g_string_append (text, name != NULL ? name : "?");
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
total_text (gpointer item,
            gpointer data)
{
  const SteadFarm *farm = stead_desk_get_farm (stead_pane_get_desk (data));

  return stead_money_format (stead_receipt_total_cents (receipt_of (item)), farm->currency);
}

/* "open: $12.00", where the cash book has not paid all of it. */
static char *
open_text (SteadReceiptsPane  *self,
           const SteadReceipt *receipt)
{
  const gint64 *cents = g_hash_table_lookup (self->open, &receipt->id);
  g_autofree char *text = NULL;

  if (cents == NULL)
    return NULL;
  text = stead_money_format (*cents, stead_desk_get_farm (stead_pane_get_desk (STEAD_PANE (self)))->currency);
  /* Translators: of a receipt: an amount of money that is still to be paid. */
  return g_strdup_printf (_("to pay: %s"), text);
}

static char *
mark_text (gpointer item,
           gpointer data)
{
  const SteadReceipt *receipt = receipt_of (item);
  g_autofree char *to_pay = open_text (data, receipt);
  const char *gift = receipt->is_gift ? _("gift") : NULL;
  const char *mark = receipt->corrected_by != 0 ? _("corrected, does not count")
                     : receipt->signed_by != 0 ? _("checked ✓")
                     : receipt->corrects_id != 0 ? _("correction") : NULL;

  if (to_pay != NULL && mark != NULL)
    return g_strdup_printf (C_("two marks of a receipt", "%s, %s"), to_pay, mark);
  if (to_pay != NULL)
    return g_steal_pointer (&to_pay);
  if (gift != NULL && mark != NULL)
    return g_strdup_printf (C_("two marks of a receipt", "%s, %s"), gift, mark);
  return g_strdup (gift != NULL ? gift : mark != NULL ? mark : "");
}

static int
compare_day (gconstpointer a,
             gconstpointer b,
             gpointer      data)
{
  SteadDay x = receipt_of ((gpointer) a)->day, y = receipt_of ((gpointer) b)->day;

  return (x > y) - (x < y);
}

static int
compare_supplier (gconstpointer a,
                  gconstpointer b,
                  gpointer      data)
{
  return g_utf8_collate (receipt_of ((gpointer) a)->supplier, receipt_of ((gpointer) b)->supplier);
}

static int
compare_total (gconstpointer a,
               gconstpointer b,
               gpointer      data)
{
  gint64 x = stead_receipt_total_cents (receipt_of ((gpointer) a));
  gint64 y = stead_receipt_total_cents (receipt_of ((gpointer) b));

  return (x > y) - (x < y);
}

static void
open_receipt (gpointer item,
              gpointer data)
{
  stead_receipt_dialog_show (data, stead_pane_get_desk (data), receipt_of (item)->id, 0);
}

static void
new_cb (SteadPane *pane)
{
  stead_receipt_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), 0, 0);
}

static void
open_cb (SteadPane *pane)
{
  const SteadReceipt *receipt = stead_pane_get_chosen (pane);

  if (receipt != NULL)
    stead_receipt_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), receipt->id, 0);
}

static void
pay_cb (SteadPane *pane)
{
  const SteadReceipt *receipt = stead_pane_get_chosen (pane);

  if (receipt != NULL)
    stead_cash_dialog_show_pay (GTK_WIDGET (pane), stead_pane_get_desk (pane), receipt->id);
}

static void
import_cb (SteadPane *pane)
{
  stead_import_dialog_show (GTK_WIDGET (pane), stead_pane_get_desk (pane), STEAD_IMPORT_RECEIPTS, 0);
}

static gboolean
load_items (SteadReceiptsPane *self,
            SteadStore        *store,
            GError           **error)
{
  g_autoptr(GPtrArray) items = stead_item_repo_list (store, error);

  if (items == NULL)
    return FALSE;
  g_hash_table_remove_all (self->items);
  for (guint i = 0; i < items->len; i++)
    {
      SteadItem *item = items->pdata[i];

      g_hash_table_insert (self->items, g_memdup2 (&item->id, sizeof item->id), g_strdup (item->name));
    }
  return TRUE;
}

/* The first day of the cash book; STEAD_DAY_NONE: it has not begun. */
static SteadDay
first_day (SteadStore *store)
{
  g_autoptr(GPtrArray) accounts = stead_account_repo_list (store, TRUE, NULL);
  SteadDay first = STEAD_DAY_NONE;

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      SteadDay day = ((SteadAccount *) accounts->pdata[i])->opened_on;

      if (first == STEAD_DAY_NONE || day < first)
        first = day;
    }
  return first;
}

/* What was bought before the cash book began was paid outside of it. */
static void
load_open (SteadReceiptsPane *self,
           SteadStore        *store)
{
  SteadDay first = first_day (store);
  g_autoptr(GPtrArray) off = first != STEAD_DAY_NONE ? stead_cash_repo_receipts_off (store, NULL) : NULL;

  g_hash_table_remove_all (self->open);
  for (guint i = 0; off != NULL && i < off->len; i++)
    {
      const SteadReceiptPaid *paid = off->pdata[i];
      gint64 cents = paid->total_cents - paid->paid_cents;

      if (cents > 0 && paid->day >= first)
        g_hash_table_insert (self->open, g_memdup2 (&paid->receipt_id, sizeof paid->receipt_id),
                             g_memdup2 (&cents, sizeof cents));
    }
  gtk_widget_set_visible (self->pay, first != STEAD_DAY_NONE);
}

/* "12 receipts: $310.00 paid, and gifts worth $18.00." */
static char *
sums_text (SteadReceiptsPane *self,
           GPtrArray         *receipts)
{
  const char *currency = stead_desk_get_farm (stead_pane_get_desk (STEAD_PANE (self)))->currency;
  SteadReceiptSums sums = stead_receipt_sums (receipts);
  g_autofree char *paid = stead_money_format (sums.paid_cents, currency);
  g_autofree char *given = stead_money_format (sums.gift_cents, currency);
  g_autofree char *count = NULL;
  g_autofree char *corrected = NULL;

  if (receipts->len == 0)
    return g_strdup (_("Every purchase and every gift, with what came and what it cost."));
  if (sums.gift_cents > 0)
    count = g_strdup_printf (ngettext ("%u receipt: %s paid, and gifts worth %s.",
                                       "%u receipts: %s paid, and gifts worth %s.", sums.n), sums.n, paid, given);
  else
    count = g_strdup_printf (ngettext ("%u receipt: %s paid.", "%u receipts: %s paid.", sums.n), sums.n, paid);
  if (sums.n_corrected == 0)
    return g_steal_pointer (&count);
  corrected = g_strdup_printf (ngettext ("%u more was corrected and does not count.",
                                         "%u more were corrected and do not count.", sums.n_corrected),
                               sums.n_corrected);
  return g_strjoin (" ", count, corrected, NULL);
}

static void
stead_receipts_pane_refresh (SteadPane *pane)
{
  SteadReceiptsPane *self = STEAD_RECEIPTS_PANE (pane);
  SteadStore *store = stead_pane_get_store (pane);
  g_autoptr(GError) error = NULL;
  g_autoptr(GPtrArray) receipts = load_items (self, store, &error) ? stead_receipt_repo_list (store, &error) : NULL;
  g_autoptr(GListModel) model = NULL;
  g_autofree char *text = receipts != NULL ? sums_text (self, receipts) : NULL;
  g_autoptr(GPtrArray) whys = NULL;

  stead_pane_say (pane, text, error);
  load_open (self, store);
  if (receipts != NULL)
    {
      whys = stead_receipts_whys (receipts, stead_desk_get_farm (stead_pane_get_desk (pane))->currency);
      stead_why_box_set (self->whys, whys);
    }
  if (receipts != NULL)
    model = stead_rows_from_array (g_steal_pointer (&receipts), (GDestroyNotify) stead_receipt_free);
  stead_table_set_model (self->table, model);
}

static void
stead_receipts_pane_finalize (GObject *object)
{
  g_clear_pointer (&STEAD_RECEIPTS_PANE (object)->items, g_hash_table_unref);
  g_clear_pointer (&STEAD_RECEIPTS_PANE (object)->open, g_hash_table_unref);
  G_OBJECT_CLASS (stead_receipts_pane_parent_class)->finalize (object);
}

static void
stead_receipts_pane_class_init (SteadReceiptsPaneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = stead_receipts_pane_finalize;
  STEAD_PANE_CLASS (klass)->refresh = stead_receipts_pane_refresh;
}

static void
stead_receipts_pane_init (SteadReceiptsPane *self)
{
  SteadPane *pane = STEAD_PANE (self);

  self->items = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  self->open = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  stead_pane_add_head (pane, stead_why_box_new_low (&self->whys));
  self->table = stead_pane_add_table (pane, _("Receipts"));
  stead_table_add_column (self->table, _("Day"), FALSE, FALSE, day_text, NULL, compare_day, self);
  stead_table_add_column (self->table, C_("supplier", "From"), FALSE, FALSE, supplier_text, NULL, compare_supplier, self);
  stead_table_add_column (self->table, _("What came"), FALSE, FALSE, lines_text, NULL, NULL, self);
  stead_table_add_column (self->table, _("Total"), TRUE, FALSE, total_text, NULL, compare_total, self);
  stead_table_add_column (self->table, _("Marks"), FALSE, TRUE, mark_text, NULL, NULL, self);
  stead_table_set_empty (self->table, _("Receipts belong here. Enter the last feed bag: day, shop, pounds, price."));
  stead_table_set_activate (self->table, open_receipt, self);
  stead_pane_add_button (pane, _("New receipt…"), G_CALLBACK (new_cb));
  stead_pane_add_button (pane, _("Open…"), G_CALLBACK (open_cb));
  self->pay = stead_pane_add_button (pane, _("Pay…"), G_CALLBACK (pay_cb));
  stead_pane_add_button (pane, _("Import receipts…"), G_CALLBACK (import_cb));
}

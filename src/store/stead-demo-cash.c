/* stead-demo-cash.c - the demo farm's money: accounts, a fund, what is paid and what is
 * taken in.
 *
 * Receipts are paid some days later out of the account in the school's books.  What is
 * sold goes into the cash box at the price of the day; two people count the box that
 * evening, and what lies above the float goes to the office on the next Monday.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-coins.h"
#include "core/stead-money.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-demo-writer-private.h"

/* What waits to be paid. */
typedef struct
{
  gint64            receipt_id;
  int               due_at;
  gint64            cents;
  SteadCashCategory category;
  gint64            enterprise_id;
  char             *who;
  char             *reference;
} Owed;

/* What lies in the box since the last count, one product a row. */
typedef struct
{
  char   *group;
  double  units;
} Taking;

struct _SteadDemoCash
{
  gint64     till_id, account_id, fund_id;
  GPtrArray *owed;        /* of Owed, the first due first */
  GPtrArray *takings;     /* of Taking, of today */
  gint64     count_id;    /* counted, not brought to the office yet; 0: none */
  int        n_counts;
  int        n_checks;
  int        n_slips;
};

static void
owed_free (gpointer data)
{
  Owed *owed = data;

  g_free (owed->who);
  g_free (owed->reference);
  g_free (owed);
}

static void
taking_free (gpointer data)
{
  g_free (((Taking *) data)->group);
  g_free (data);
}

/**
 * stead_demo_cash_new:
 *
 * Returns: (transfer full): no accounts yet
 */
SteadDemoCash *
stead_demo_cash_new (SteadDemoWriter *writer)
{
  SteadDemoCash *cash = g_new0 (SteadDemoCash, 1);

  cash->owed = g_ptr_array_new_with_free_func (owed_free);
  cash->takings = g_ptr_array_new_with_free_func (taking_free);
  return cash;
}

void
stead_demo_cash_free (SteadDemoCash *cash)
{
  if (cash == NULL)
    return;
  g_ptr_array_unref (cash->owed);
  g_ptr_array_unref (cash->takings);
  g_free (cash);
}

/* 0: none is named. */
static gint64
enterprise_of (SteadDemoWriter *writer,
               const char      *group)
{
  g_autofree char *name = stead_demo_text_if (&writer->story->reader, group, "enterprise");

  return name != NULL ? stead_demo_id_of (writer, "enterprise", name) : 0;
}

/* --- the book is opened -------------------------------------------------------------- */

static gboolean
write_enterprise (SteadDemoWriter  *writer,
                  gconstpointer     what,
                  GError          **error)
{
  g_autofree char *name = g_strdup (stead_demo_group_name (what));
  SteadEnterprise enterprise = { .name = name };

  if (!stead_enterprise_repo_save (writer->store, &enterprise, error))
    return FALSE;
  stead_demo_set_id (writer, what, enterprise.id);
  return TRUE;
}

static gboolean
write_account (SteadDemoWriter   *writer,
               const char        *key,
               SteadAccountKind   kind,
               gint64             cents,
               gint64            *out_id,
               GError           **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *name = stead_demo_text (reader, "cash", key);
  SteadAccount account = { .name = name, .kind = kind, .opening_cents = cents, .closed_on = STEAD_DAY_NONE };

  account.opened_on = stead_demo_day_at (writer, -(int) stead_demo_number (reader, "cash", "days_before"));
  if (!stead_demo_sound (writer, error) || !stead_account_repo_save (writer->store, &account, error))
    return FALSE;
  *out_id = account.id;
  return TRUE;
}

static gboolean
write_accounts (SteadDemoWriter  *writer,
                gconstpointer     what,
                GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadDemoCash *cash = writer->cash;
  gint64 float_cents = stead_demo_cents (reader, "cash", "float");
  gint64 opening = stead_demo_cents (reader, "cash", "opening");

  return write_account (writer, "till", STEAD_ACCOUNT_TILL, float_cents, &cash->till_id, error) &&
         write_account (writer, "account", STEAD_ACCOUNT_ACTIVITY, opening, &cash->account_id, error);
}

static gboolean
write_fund (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  g_autofree char *name = g_strdup (stead_demo_group_name (what));
  g_autofree char *purpose = stead_demo_text (&writer->story->reader, what, "purpose");
  SteadFund fund = { .name = name, .purpose = purpose, .closed_on = STEAD_DAY_NONE };

  if (!stead_demo_sound (writer, error) || !stead_fund_repo_save (writer->store, &fund, error))
    return FALSE;
  stead_demo_set_id (writer, what, fund.id);
  return TRUE;
}

gboolean
stead_demo_begin_cash (SteadDemoWriter  *writer,
                       GError          **error)
{
  int before = (int) stead_demo_number (&writer->story->reader, "cash", "days_before");

  stead_store_set_today (writer->store, stead_demo_day_at (writer, -before));
  return stead_demo_write_groups (writer, "enterprise", write_enterprise, error) &&
         stead_demo_act (writer, "cash", write_accounts, NULL, error) &&
         stead_demo_write_groups (writer, "fund", write_fund, error);
}

gint64
stead_demo_cash_till (SteadDemoWriter *writer)
{
  return writer->cash->till_id;
}

/* --- one line ------------------------------------------------------------------------- */

/* Out of, or into, the account in the school's books. */
static SteadCashLine *
new_line (SteadDemoWriter   *writer,
          SteadDay           day,
          SteadCashCategory  category,
          gint64             cents)
{
  SteadCashLine *line = stead_cash_line_new ();

  line->day = day;
  line->account_id = writer->cash->account_id;
  line->category = category;
  line->cents = cents;
  line->person_id = writer->advisor_id;
  return line;
}

static char *
next_check (SteadDemoWriter *writer)
{
  /* Translators: number of a check. */
  return g_strdup_printf (_("Check %d"), 1041 + writer->cash->n_checks++);
}

gboolean
stead_demo_cash_begin_batch (SteadDemoWriter  *writer,
                             const char       *group,
                             gint64            batch_id,
                             gint64            cents,
                             GError          **error)
{
  g_autoptr(SteadCashLine) line = new_line (writer, stead_demo_day_at (writer, writer->at), STEAD_CASH_ANIMALS, -cents);
  gint64 enterprise = enterprise_of (writer, group);

  line->batch_id = batch_id;
  line->who = stead_demo_text_if (&writer->story->reader, group, "supplier");
  line->reference = next_check (writer);
  return stead_demo_sound (writer, error) &&
         stead_enterprise_repo_set_batch (writer->store, batch_id, enterprise, error) &&
         (cents == 0 || stead_cash_repo_save (writer->store, line, error));
}

gboolean
stead_demo_cash_buy_asset (SteadDemoWriter   *writer,
                           const SteadAsset  *asset,
                           GError           **error)
{
  g_autoptr(SteadCashLine) line = new_line (writer, asset->bought_on, STEAD_CASH_THING_BOUGHT,
                                            -(asset->cost_cents + asset->extra_cents));

  line->asset_id = asset->id;
  line->reference = next_check (writer);
  return stead_cash_repo_save (writer->store, line, error);
}

gboolean
stead_demo_cash_begin_product (SteadDemoWriter  *writer,
                               const char       *group,
                               gint64            product_id,
                               GError          **error)
{
  gint64 enterprise = enterprise_of (writer, group);

  return stead_demo_sound (writer, error) &&
         stead_enterprise_repo_set_product (writer->store, product_id, enterprise, error);
}

/* --- receipts are paid ------------------------------------------------------------------ */

void
stead_demo_cash_owe (SteadDemoWriter     *writer,
                     const SteadReceipt  *receipt,
                     const char          *item_group)
{
  SteadDemoReader *reader = &writer->story->reader;
  gboolean energy = stead_demo_number_if (reader, item_group, "energy", 0) > 0;
  Owed *owed;

  if (receipt->is_gift)
    return;
  owed = g_new0 (Owed, 1);
  *owed = (Owed) { .receipt_id = receipt->id, .cents = stead_receipt_total_cents (receipt),
                   .due_at = receipt->day - writer->story->first + (int) stead_demo_number (reader, "cash", "pay_days"),
                   .category = energy ? STEAD_CASH_ENERGY : STEAD_CASH_SUPPLIES,
                   .enterprise_id = enterprise_of (writer, item_group),
                   .who = g_strdup (receipt->supplier), .reference = g_strdup (receipt->reference) };
  g_ptr_array_add (writer->cash->owed, owed);
}

static gboolean
write_paid (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  GPtrArray *owed = writer->cash->owed;

  while (owed->len > 0 && ((const Owed *) owed->pdata[0])->due_at <= writer->at)
    {
      const Owed *bill = owed->pdata[0];
      g_autoptr(SteadCashLine) line = new_line (writer, stead_demo_day_at (writer, writer->at), bill->category,
                                                -bill->cents);

      line->receipt_id = bill->receipt_id;
      line->enterprise_id = bill->enterprise_id;
      line->who = g_strdup (bill->who);
      line->reference = next_check (writer);
      line->note = bill->reference != NULL ? g_strdup (bill->reference) : NULL;
      if (!stead_cash_repo_save (writer->store, line, error))
        return FALSE;
      g_ptr_array_remove_index (owed, 0);
    }
  return stead_demo_sound (writer, error);
}

/* --- goods are sold ----------------------------------------------------------------------- */

void
stead_demo_cash_sold (SteadDemoWriter *writer,
                      const char      *group,
                      double           units)
{
  GPtrArray *takings = writer->cash->takings;
  Taking *taking;

  if (!(units > 0))
    return;
  for (guint i = 0; i < takings->len; i++)
    {
      taking = takings->pdata[i];
      if (g_str_equal (taking->group, group))
        {
          taking->units += units;
          return;
        }
    }
  taking = g_new0 (Taking, 1);
  *taking = (Taking) { g_strdup (group), units };
  g_ptr_array_add (takings, taking);
}

void
stead_demo_cash_sold_of (SteadDemoWriter *writer,
                         gint64           item_id,
                         double           base)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) groups = stead_demo_groups (reader, "product");

  for (char **group = groups; *group != NULL; group++)
    {
      g_autofree char *item = stead_demo_text_if (reader, *group, "item");

      if (item == NULL || stead_demo_id_of (writer, "item", item) != item_id)
        continue;
      stead_demo_cash_sold (writer, *group, base / stead_demo_number (reader, *group, "eggs"));
      return;
    }
}

/* The price in force; before the first one that one. */
static gint64
price_today (SteadDemoWriter *writer,
             const char      *group)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) prices = stead_demo_list (reader, group, "prices");
  gint64 cents = 0;

  for (char **price = prices; *price != NULL; price++)
    {
      g_auto(GStrv) parts = g_strsplit (*price, ":", 3);

      if (g_strv_length (parts) < 2 || (price != prices && (int) g_ascii_strtod (*price, NULL) > writer->at))
        break;
      cents = stead_demo_cents_of (reader, parts[1]);
    }
  return cents;
}

static gboolean
write_taking (SteadDemoWriter  *writer,
              const Taking     *taking,
              GError          **error)
{
  gint64 cents = stead_money_round (taking->units * (double) price_today (writer, taking->group));
  g_autoptr(SteadCashLine) line = new_line (writer, stead_demo_day_at (writer, writer->at), STEAD_CASH_SALES, cents);

  line->account_id = writer->cash->till_id;
  line->enterprise_id = enterprise_of (writer, taking->group);
  line->who = stead_demo_text (&writer->story->reader, "cash", "customers");
  line->product_id = GPOINTER_TO_SIZE (g_hash_table_lookup (writer->ids, taking->group));
  line->person_id = stead_demo_person_on (writer, writer->at);
  line->second_id = stead_demo_second_on (writer, writer->at);
  return stead_demo_sound (writer, error) && (cents == 0 || stead_cash_repo_save (writer->store, line, error));
}

/* --- and counted ---------------------------------------------------------------------------- */

/* What lies in the box, in as few pieces as can be: nobody keeps a note of how it came. */
gboolean
stead_demo_cash_pieces (GArray      *pieces_out,
                        const char  *currency,
                        gint64       cents,
                        GError     **error)
{
  gsize n;
  const gint64 *faces = stead_coins_faces (currency, &n);
  gint64 pieces[STEAD_COINS_MOST_FACES] = { 0 };

  if (faces == NULL || !stead_coins_change (MIN (cents, STEAD_COINS_MOST_CHANGE), faces, NULL, n, pieces, error))
    return FALSE;
  for (gsize i = 0; i < n; i++)
    {
      SteadCashPiece piece = { faces[i], pieces[i] };

      if (pieces[i] > 0)
        g_array_append_val (pieces_out, piece);
    }
  return TRUE;
}

/* On one of the counts two dollars are missing, and somebody knows why. */
static gboolean
write_count (SteadDemoWriter  *writer,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadDemoCash *cash = writer->cash;
  g_autoptr(SteadCashCount) count = stead_cash_count_new ();
  g_autofree char *currency = stead_demo_text (reader, "farm", "currency");
  gint64 there;

  count->day = stead_demo_day_at (writer, writer->at);
  count->account_id = cash->till_id;
  count->float_cents = stead_demo_cents (reader, "cash", "float");
  count->first_id = stead_demo_person_on (writer, writer->at);
  count->second_id = stead_demo_second_on (writer, writer->at);
  if (!stead_cash_repo_balance (writer->store, cash->till_id, STEAD_FUND_ANY, count->day, &there, error))
    return FALSE;
  if (cash->n_counts++ == (int) stead_demo_number (reader, "cash", "short_count"))
    {
      there -= stead_demo_cents (reader, "cash", "short");
      count->reason = stead_demo_text (reader, "cash", "short_reason");
    }
  if (!stead_demo_sound (writer, error) || !stead_demo_cash_pieces (count->pieces, currency, there, error) ||
      !stead_cash_count_repo_save (writer->store, count, error))
    return FALSE;
  cash->count_id = stead_cash_count_deposit_cents (count) > 0 ? count->id : 0;
  return TRUE;
}

/* A table at the market costs the same each time, and is paid for by the office. */
static gboolean
write_table (SteadDemoWriter  *writer,
             GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadCashLine) line = new_line (writer, stead_demo_day_at (writer, writer->at), STEAD_CASH_FEES,
                                            -stead_demo_cents (reader, "cash", "table"));
  int mday;

  stead_day_split (line->day, NULL, NULL, &mday);
  if (stead_day_weekday (line->day) != 6 || mday > 7)
    return TRUE;
  line->who = stead_demo_text (reader, "cash", "market");
  line->reference = next_check (writer);
  return stead_demo_sound (writer, error) && stead_cash_repo_save (writer->store, line, error);
}

static gboolean
write_takings (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  GPtrArray *takings = writer->cash->takings;

  for (guint i = 0; i < takings->len; i++)
    if (!write_taking (writer, takings->pdata[i], error))
      return FALSE;
  g_ptr_array_set_size (takings, 0);
  return (stead_demo_market_is_on (writer) || write_table (writer, error)) && write_count (writer, error);
}

static gboolean
write_deposit (SteadDemoWriter  *writer,
               gconstpointer     what,
               GError          **error)
{
  SteadDemoCash *cash = writer->cash;
  /* Translators: number of a deposit slip. */
  g_autofree char *slip = g_strdup_printf (_("Slip %d"), 301 + cash->n_slips++);
  gint64 count = cash->count_id;

  cash->count_id = 0;
  return stead_cash_count_repo_deposit (writer->store, count, cash->account_id, stead_demo_day_at (writer, writer->at),
                                        slip, error) != 0;
}

gboolean
stead_demo_cash_before_sale (SteadDemoWriter  *writer,
                             GError          **error)
{
  return (writer->cash->count_id == 0 || write_deposit (writer, NULL, error)) && write_table (writer, error);
}

gint64
stead_demo_cash_office (SteadDemoWriter *writer)
{
  return writer->cash->account_id;
}

/* --- for one thing only ------------------------------------------------------------------------ */

static gboolean
write_given (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  const char *group = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *fund = stead_demo_text (reader, group, "fund");
  g_autofree char *from = stead_demo_text_if (reader, group, "from");
  g_autofree char *note = stead_demo_text_if (reader, group, "note");
  SteadDay day = stead_demo_day_at (writer, writer->at);
  gint64 cents = stead_demo_cents (reader, group, "amount");
  gint64 fund_id = stead_demo_id_of (writer, "fund", fund);
  SteadTransfer own = { .day = day, .cents = cents, .from_account = writer->cash->account_id,
                        .to_account = writer->cash->account_id, .to_fund = fund_id, .note = note,
                        .person_id = writer->advisor_id };
  g_autoptr(SteadCashLine) line = new_line (writer, day, STEAD_CASH_GRANT, cents);

  if (!stead_demo_sound (writer, error))
    return FALSE;
  if (from == NULL)
    return stead_cash_repo_transfer (writer->store, &own, error) != 0;
  line->fund_id = fund_id;
  line->who = g_steal_pointer (&from);
  line->note = g_strdup (note);
  return stead_cash_repo_save (writer->store, line, error);
}

/* Gifts of money, and what the group sets aside itself. */
static gboolean
live_given (SteadDemoWriter  *writer,
            GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, "money");

  for (char **group = groups; *group != NULL; group++)
    if (stead_demo_days_back (writer, *group, "back", -1) == writer->at &&
        !stead_demo_act (writer, stead_demo_group_name (*group), write_given, *group, error))
      return FALSE;
  return TRUE;
}

/* --- the whole -------------------------------------------------------------------------------------- */

gboolean
stead_demo_live_cash (SteadDemoWriter  *writer,
                      GError          **error)
{
  SteadDemoCash *cash = writer->cash;
  gboolean monday = stead_day_weekday (stead_demo_day_at (writer, writer->at)) == 1;

  return (cash->owed->len == 0 || ((const Owed *) cash->owed->pdata[0])->due_at > writer->at ||
          stead_demo_act (writer, _("Bills paid"), write_paid, NULL, error)) &&
         (cash->count_id == 0 || !monday || stead_demo_act (writer, _("Money deposited"), write_deposit, NULL, error)) &&
         (cash->takings->len == 0 || stead_demo_act (writer, _("Money counted"), write_takings, NULL, error)) &&
         live_given (writer, error);
}

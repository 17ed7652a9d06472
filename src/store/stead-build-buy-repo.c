/* stead-build-buy-repo.c - what was bought for a build, and what was given. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-build-money-repo.h"
#include "store/stead-build-private.h"
#include "store/stead-cash-repo.h"
#include "store/stead-repo-private.h"

void
stead_build_buy_free (SteadBuildBuy *buy)
{
  if (buy == NULL)
    return;
  g_free (buy->supplier);
  g_free (buy->reference);
  g_free (buy);
}

static gpointer
buy_from_row (SteadStmt *stmt)
{
  SteadBuildBuy *buy = g_new0 (SteadBuildBuy, 1);

  buy->id = sqlite3_column_int64 (stmt, 0);
  buy->line_id = sqlite3_column_int64 (stmt, 1);
  buy->cash_line_id = sqlite3_column_int64 (stmt, 2);
  buy->day = stead_stmt_day (stmt, 3);
  buy->packs = sqlite3_column_double (stmt, 4);
  buy->cents = sqlite3_column_int64 (stmt, 5);
  buy->tax_cents = sqlite3_column_int64 (stmt, 6);
  buy->supplier = stead_stmt_text (stmt, 7);
  buy->reference = stead_stmt_text (stmt, 8);
  return buy;
}

GPtrArray *
stead_build_buy_repo_list (SteadStore  *store,
                           gint64       build_id,
                           GError     **error)
{
  static const char sql[] =
    "SELECT b.id, b.line_id, coalesce (b.cash_line_id, 0), coalesce (c.day, b.day), b.packs, b.cents, b.tax_cents,"
    " c.who, c.reference FROM build_buy b JOIN build_line l ON l.id = b.line_id"
    " LEFT JOIN cash_line c ON c.id = b.cash_line_id WHERE l.build_id = ?1 ORDER BY 4, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, build_id, buy_from_row, (GDestroyNotify) stead_build_buy_free,
                             error);
}

/* --- what may be bought ------------------------------------------------------------- */

static const SteadBuildLine *
find_line (const GPtrArray *lines,
           gint64           id)
{
  for (guint i = 0; i < lines->len; i++)
    if (((const SteadBuildLine *) lines->pdata[i])->id == id)
      return lines->pdata[i];
  return NULL;
}

static gboolean
is_animal (const SteadBuildLine *line)
{
  return g_strcmp0 (line->key, "animal") == 0;
}

static gboolean
check_amounts (const SteadBuildBuy  *buy,
               GError              **error)
{
  if (!(buy->packs > 0 && buy->packs <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how many came, above zero."));
  return stead_repo_check_cents (_("Cost"), buy->cents, error);
}

/* Each line is one of the build's, bought and not given; animals stand on a receipt of
 * their own, for they are no part of the thing that wears down. */
static gboolean
check_lines (const GPtrArray      *lines,
             const SteadBuildBuy  *buys,
             gsize                 n,
             gboolean             *out_animals,
             GError              **error)
{
  gsize animals = 0;

  for (gsize i = 0; i < n; i++)
    {
      const SteadBuildLine *line = find_line (lines, buys[i].line_id);

      if (line == NULL)
        return stead_repo_missing (error);
      if (line->given)
        return stead_repo_refuse (error, _("This is given, not bought. Change its line on the bill first."));
      if (!check_amounts (&buys[i], error))
        return FALSE;
      animals += is_animal (line);
    }
  if (n == 0)
    return stead_repo_refuse (error, _("Enter what was bought: how many, and what it cost."));
  if (animals != 0 && animals != n)
    return stead_repo_refuse (error, _("Enter animals apart from things: a pen wears down, animals do not."));
  *out_animals = animals != 0;
  return TRUE;
}

/* A grant pays for the part that it is bound to, until its last day. */
static gboolean
check_grant (SteadStore                *store,
             gint64                     build_id,
             const SteadBuildPurchase  *purchase,
             const GPtrArray           *lines,
             const SteadBuildBuy       *buys,
             gsize                      n,
             GError                   **error)
{
  g_autoptr(GArray) grants = stead_build_grant_repo_list (store, build_id, error);

  if (grants == NULL)
    return FALSE;
  for (guint i = 0; i < grants->len; i++)
    {
      const SteadBuildGrant *grant = &g_array_index (grants, SteadBuildGrant, i);

      if (grant->fund_id != purchase->fund_id)
        continue;
      if (grant->use_by != STEAD_DAY_NONE && purchase->day > grant->use_by)
        return stead_repo_refuse (error, _("The grant had to be spent before this day. Ask the giver, or pay with other money."));
      for (gsize k = 0; grant->part >= 0 && k < n; k++)
        if ((int) find_line (lines, buys[k].line_id)->part != grant->part)
          return stead_repo_refuse (error, _("The grant is bound to one part of the build, and this is another part. Pay for it with other money."));
    }
  return TRUE;
}

/* --- writing ------------------------------------------------------------------------ */

static gboolean
write_buy (SteadStore     *store,
           SteadBuildBuy  *buy,
           SteadDay        day,
           GError        **error)
{
  static const char sql[] = "INSERT INTO build_buy (line_id, cash_line_id, day, packs, cents, tax_cents)"
                            " VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, buy->line_id);
  stead_stmt_bind_id (stmt, 2, buy->cash_line_id);
  stead_stmt_bind_day (stmt, 3, day);
  sqlite3_bind_double (stmt, 4, buy->packs);
  sqlite3_bind_int64 (stmt, 5, buy->cents);
  sqlite3_bind_int64 (stmt, 6, buy->tax_cents);
  return stead_repo_save_row (store, stmt, &buy->id, error);
}

/* By cost over what is taxed; over all if nothing is. */
static void
share_tax (const GPtrArray *lines,
           SteadBuildBuy   *buys,
           gsize            n,
           gint64           tax_cents)
{
  g_autofree double *weights = g_new0 (double, n);
  g_autofree gint64 *shares = g_new0 (gint64, n);
  double all = 0;

  for (gsize i = 0; i < n; i++)
    all += weights[i] = find_line (lines, buys[i].line_id)->taxed ? (double) buys[i].cents : 0;
  for (gsize i = 0; i < n && all == 0; i++)
    weights[i] = 1;
  stead_money_split (tax_cents, weights, n, shares);
  for (gsize i = 0; i < n; i++)
    buys[i].tax_cents = shares[i];
}

static gint64
pay (SteadStore                *store,
     const SteadBuildPurchase  *purchase,
     gint64                     cents,
     gboolean                   animals,
     GError                   **error)
{
  g_autoptr(SteadCashLine) cash = stead_cash_line_new ();

  cash->day = purchase->day;
  cash->account_id = purchase->account_id;
  cash->fund_id = purchase->fund_id;
  cash->cents = -cents;
  cash->category = animals ? STEAD_CASH_ANIMALS : STEAD_CASH_THING_BOUGHT;
  cash->who = g_strdup (purchase->supplier);
  cash->reference = g_strdup (purchase->reference);
  cash->person_id = purchase->person_id;
  return stead_cash_repo_save (store, cash, error) ? cash->id : 0;
}

gboolean
stead_build_buy_repo_add (SteadStore                *store,
                          gint64                     build_id,
                          const SteadBuildPurchase  *purchase,
                          SteadBuildBuy             *buys,
                          gsize                      n,
                          GError                   **error)
{
  g_autoptr(GPtrArray) lines = NULL;
  gboolean animals = FALSE;
  gint64 sum = 0, cash_id;

  g_return_val_if_fail (STEAD_IS_STORE (store) && purchase != NULL && (buys != NULL || n == 0), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  lines = stead_build_line_repo_list (store, build_id, error);
  if (lines == NULL || !check_lines (lines, buys, n, &animals, error) ||
      !stead_repo_check_name (purchase->supplier, error) ||
      !check_grant (store, build_id, purchase, lines, buys, n, error))
    return FALSE;
  for (gsize i = 0; i < n; i++)
    sum += buys[i].cents;
  if (purchase->tax_cents < 0 || purchase->tax_cents > sum)
    return stead_repo_refuse (error, _("Sales tax is not more than the goods cost. Check it on the receipt."));
  if (sum == 0)
    return stead_repo_refuse (error, _("Enter what it cost. What cost nothing is a gift."));
  cash_id = pay (store, purchase, sum + purchase->tax_cents, animals, error);
  if (cash_id == 0)
    return FALSE;
  share_tax (lines, buys, n, purchase->tax_cents);
  for (gsize i = 0; i < n; i++)
    {
      buys[i].id = 0;   /* it is new, also where a try before this one failed at the next */
      buys[i].cash_line_id = cash_id;
      if (!write_buy (store, &buys[i], STEAD_DAY_NONE, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_build_buy_repo_give (SteadStore     *store,
                           SteadBuildBuy  *buy,
                           SteadDay        day,
                           GError        **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && buy != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_amounts (buy, error))
    return FALSE;
  if (day == STEAD_DAY_NONE || day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("It came today or before. Check the date."));
  buy->cash_line_id = 0;
  buy->tax_cents = 0;
  return write_buy (store, buy, day, error);
}

gboolean
stead_build_buy_repo_delete (SteadStore  *store,
                             gint64       id,
                             GError     **error)
{
  static const char cash_sql[] = "SELECT coalesce (cash_line_id, 0) FROM build_buy WHERE id = ?1";
  static const char sql[] = "DELETE FROM build_buy WHERE id = ?1";
  gint64 cash_id;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  cash_id = stead_repo_count_id (store, cash_sql, id, error);
  if (cash_id < 0)
    return FALSE;
  if (cash_id > 0)
    return stead_cash_repo_delete (store, cash_id, error);
  return stead_repo_change_row (store, sql, id, error);
}

/* stead-cash-fund.c - money that was given for a purpose. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-cash-private.h"

void
stead_fund_free (SteadFund *fund)
{
  if (fund == NULL)
    return;
  g_free (fund->name);
  g_free (fund->purpose);
  g_free (fund);
}

static gpointer
fund_from_row (SteadStmt *stmt)
{
  SteadFund *fund = g_new0 (SteadFund, 1);

  fund->id = sqlite3_column_int64 (stmt, 0);
  fund->name = stead_stmt_text (stmt, 1);
  fund->purpose = stead_stmt_text (stmt, 2);
  fund->closed_on = stead_stmt_day (stmt, 3);
  return fund;
}

GPtrArray *
stead_fund_repo_list (SteadStore  *store,
                      gboolean     closed,
                      GError     **error)
{
  static const char sql[] = "SELECT id, name, purpose, closed_on FROM fund WHERE ?1 OR closed_on IS NULL"
                            " ORDER BY closed_on IS NOT NULL, name, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, closed != FALSE, fund_from_row, (GDestroyNotify) stead_fund_free,
                             error);
}

static gboolean
check_fund (SteadStore       *store,
            const SteadFund  *fund,
            GError          **error)
{
  static const char taken_sql[] = "SELECT 1 FROM fund WHERE name = ?1 AND id <> ?2";
  gint64 cents = 0;

  if (!stead_repo_check_name (fund->name, error) ||
      !stead_repo_check_unique (store, taken_sql, fund->name, fund->id, error) ||
      !stead_repo_check_note (fund->purpose, error))
    return FALSE;
  if (fund->closed_on == STEAD_DAY_NONE || fund->id == 0)
    return TRUE;
  if (!stead_cash_repo_balance (store, 0, fund->id, G_MAXINT32, &cents, error))
    return FALSE;
  return cents == 0 || stead_repo_refuse (error, _("There is still money in the fund “%s”. Use it, or move it as its "
                                                   "giver allows."), fund->name);
}

gboolean
stead_fund_repo_save (SteadStore  *store,
                      SteadFund   *fund,
                      GError     **error)
{
  static const char insert_sql[] = "INSERT INTO fund (name, purpose, closed_on) VALUES (?1, ?2, ?3)";
  static const char update_sql[] = "UPDATE fund SET name = ?1, purpose = ?2, closed_on = ?3 WHERE id = ?4";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && fund != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_fund (store, fund, error))
    return FALSE;
  stmt = stead_store_prepare (store, fund->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, fund->name);
  stead_repo_bind_tidy (stmt, 2, fund->purpose);
  stead_stmt_bind_day (stmt, 3, fund->closed_on);
  return stead_repo_save_row (store, stmt, &fund->id, error);
}

gboolean
stead_fund_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "DELETE FROM fund WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

gboolean
stead_cash_check_fund (SteadStore  *store,
                       gint64       fund_id,
                       SteadDay     day,
                       GError     **error)
{
  static const char sql[] = "SELECT id, name, purpose, closed_on FROM fund WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadFund) fund = NULL;

  if (fund_id == 0)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, fund_id);
  fund = stead_repo_row (store, stmt, fund_from_row, error);
  if (fund == NULL)
    return FALSE;
  if (fund->closed_on == STEAD_DAY_NONE || day <= fund->closed_on)
    return TRUE;
  return stead_repo_refuse (error, _("The fund “%s” is closed. Choose another."), fund->name);
}

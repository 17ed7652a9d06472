/* stead-cash-account.c - where money lies: till boxes, the school activity account, banks. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-cash-private.h"

static const char * const account_words[] = { "till", "activity", "bank", NULL };

void
stead_account_free (SteadAccount *account)
{
  if (account == NULL)
    return;
  g_free (account->name);
  g_free (account);
}

static gpointer
account_from_row (SteadStmt *stmt)
{
  SteadAccount *account = g_new0 (SteadAccount, 1);

  account->id = sqlite3_column_int64 (stmt, 0);
  account->name = stead_stmt_text (stmt, 1);
  account->kind = (SteadAccountKind) stead_repo_word (stmt, 2, account_words);
  account->opened_on = stead_stmt_day (stmt, 3);
  account->opening_cents = sqlite3_column_int64 (stmt, 4);
  account->closed_on = stead_stmt_day (stmt, 5);
  return account;
}

GPtrArray *
stead_account_repo_list (SteadStore  *store,
                         gboolean     closed,
                         GError     **error)
{
  static const char sql[] = "SELECT id, name, kind, opened_on, opening_cents, closed_on FROM account"
                            " WHERE ?1 OR closed_on IS NULL ORDER BY closed_on IS NOT NULL, name, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, closed != FALSE, account_from_row,
                             (GDestroyNotify) stead_account_free, error);
}

/* Days outside of @from and @to on which the account has lines. */
static gboolean
check_account_days (SteadStore          *store,
                    const SteadAccount  *account,
                    GError             **error)
{
  static const char sql[] = "SELECT day FROM cash_line WHERE account_id = ?1 AND (day < ?2 OR day > ?3) LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 day;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, account->id);
  sqlite3_bind_int (stmt, 2, account->opened_on);
  sqlite3_bind_int (stmt, 3, account->closed_on == STEAD_DAY_NONE ? G_MAXINT32 : account->closed_on);
  if (!stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error))
    return FALSE;
  if (day != STEAD_DAY_NONE)
    {
      g_autofree char *when = stead_day_format ((SteadDay) day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("“%s” has a line on %s. It must be open on that day."), account->name, when);
    }
  return TRUE;
}

/* What an account opened with is money of its first day: a closing holds it too. */
static gboolean
check_account_closed (SteadStore          *store,
                      const SteadAccount  *account,
                      GError             **error)
{
  static const char sql[] =
    "SELECT count (*) FROM closing c LEFT JOIN account a ON a.id = ?1"
    " WHERE (?2 <= c.through_day OR a.opened_on <= c.through_day)"
    " AND (a.id IS NULL OR a.opened_on <> ?2 OR a.opening_cents <> ?3)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 n;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, account->id);
  sqlite3_bind_int (stmt, 2, account->opened_on);
  sqlite3_bind_int64 (stmt, 3, account->opening_cents);
  if (!stead_repo_number (store, stmt, 0, &n, error))
    return FALSE;
  return n == 0 || stead_repo_refuse (error, _("The books are closed for the day “%s” was opened. "
                                               "Open it on a later day, or enter its money as a line."), account->name);
}

static gboolean
check_account (SteadStore          *store,
               const SteadAccount  *account,
               GError             **error)
{
  static const char taken_sql[] = "SELECT 1 FROM account WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (account->name, error) ||
      !stead_repo_check_unique (store, taken_sql, account->name, account->id, error) ||
      !stead_cash_check_day (store, account->opened_on, error))
    return FALSE;
  if (ABS (account->opening_cents) > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("%s: the amount is too large. Check the number."), account->name);
  if (account->closed_on != STEAD_DAY_NONE && account->closed_on < account->opened_on)
    return stead_repo_refuse (error, _("“%s” cannot be closed before it was opened. Check the dates."), account->name);
  return check_account_closed (store, account, error) &&
         (account->id == 0 || check_account_days (store, account, error));
}

/* An account that is given up holds nothing. */
static gboolean
check_empty (SteadStore          *store,
             const SteadAccount  *account,
             GError             **error)
{
  gint64 cents;

  if (account->closed_on == STEAD_DAY_NONE)
    return TRUE;
  if (!stead_cash_repo_balance (store, account->id, STEAD_FUND_ANY, G_MAXINT32, &cents, error))
    return FALSE;
  return cents == 0 || stead_repo_refuse (error, _("There is still money in “%s”. Move it to another account first."),
                                          account->name);
}

gboolean
stead_account_repo_save (SteadStore    *store,
                         SteadAccount  *account,
                         GError       **error)
{
  static const char insert_sql[] = "INSERT INTO account (name, kind, opened_on, opening_cents, closed_on)"
                                   " VALUES (?1, ?2, ?3, ?4, ?5)";
  static const char update_sql[] = "UPDATE account SET name = ?1, kind = ?2, opened_on = ?3, opening_cents = ?4,"
                                   " closed_on = ?5 WHERE id = ?6";
  g_autoptr(SteadStmt) stmt = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && account != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_account (store, account, error))
    return FALSE;
  stmt = stead_store_prepare (store, account->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, account->name);
  stead_stmt_bind_text (stmt, 2, account_words[account->kind]);
  stead_stmt_bind_day (stmt, 3, account->opened_on);
  sqlite3_bind_int64 (stmt, 4, account->opening_cents);
  stead_stmt_bind_day (stmt, 5, account->closed_on);
  ids = stead_given_ids_new (&account->id);
  return stead_given_ids_end (ids, stead_repo_save_row (store, stmt, &account->id, error) &&
                                   check_empty (store, account, error));
}

gboolean
stead_account_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char closed_sql[] = "SELECT count (*) FROM account WHERE id = ?1 AND opening_cents <> 0"
                                   " AND opened_on <= (SELECT max (through_day) FROM closing)";
  static const char sql[] = "DELETE FROM account WHERE id = ?1";
  gint64 n;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  n = stead_repo_count_id (store, closed_sql, id, error);
  if (n > 0)
    return stead_repo_refuse (error, _("The books are closed for the day this account was opened, so it stays."));
  return n == 0 && stead_repo_change_row (store, sql, id, error);
}

gboolean
stead_cash_check_account (SteadStore  *store,
                          gint64       account_id,
                          SteadDay     day,
                          GError     **error)
{
  static const char sql[] = "SELECT id, name, kind, opened_on, opening_cents, closed_on FROM account WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadAccount) account = NULL;
  g_autofree char *when = NULL;

  if (account_id == 0)
    return stead_repo_refuse (error, _("Choose an account: a till box, the school activity account, a bank."));
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, account_id);
  account = stead_repo_row (store, stmt, account_from_row, error);
  if (account == NULL)
    return FALSE;
  if (day >= account->opened_on && (account->closed_on == STEAD_DAY_NONE || day <= account->closed_on))
    return TRUE;
  when = stead_day_format (day < account->opened_on ? account->opened_on : account->closed_on,
                           STEAD_DAY_STYLE_MEDIUM);
  if (day < account->opened_on)
    return stead_repo_refuse (error, _("“%s” was opened on %s. Enter that day or a later one."), account->name, when);
  return stead_repo_refuse (error, _("“%s” was closed on %s. Choose another account."), account->name, when);
}

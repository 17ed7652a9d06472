/* stead-build-income-repo.c - what is planned to come in for a build, and what it costs
 * each year once it stands. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-build-money-repo.h"
#include "store/stead-repo-private.h"

/* --- planned money ------------------------------------------------------------------ */

SteadBuildIncome *
stead_build_income_new (void)
{
  SteadBuildIncome *income = g_new0 (SteadBuildIncome, 1);

  income->first_on = STEAD_DAY_NONE;
  income->every_days = 7;
  income->times = 1;
  income->is_sale = TRUE;
  return income;
}

void
stead_build_income_free (SteadBuildIncome *income)
{
  if (income == NULL)
    return;
  g_free (income->name);
  g_free (income);
}

static gpointer
income_from_row (SteadStmt *stmt)
{
  SteadBuildIncome *income = stead_build_income_new ();

  income->id = sqlite3_column_int64 (stmt, 0);
  income->build_id = sqlite3_column_int64 (stmt, 1);
  income->name = stead_stmt_text (stmt, 2);
  income->product_id = sqlite3_column_int64 (stmt, 3);
  income->first_on = stead_stmt_day (stmt, 4);
  income->every_days = sqlite3_column_int (stmt, 5);
  income->times = sqlite3_column_int (stmt, 6);
  income->mean_cents = sqlite3_column_int64 (stmt, 7);
  income->sd_cents = sqlite3_column_int64 (stmt, 8);
  income->is_sale = sqlite3_column_int (stmt, 9);
  return income;
}

GPtrArray *
stead_build_income_repo_list (SteadStore  *store,
                              gint64       build_id,
                              GError     **error)
{
  static const char sql[] =
    "SELECT id, build_id, name, product_id, first_on, every_days, times, mean_cents, sd_cents, is_sale"
    " FROM build_income WHERE build_id = ?1 ORDER BY position, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, build_id, income_from_row, (GDestroyNotify) stead_build_income_free,
                             error);
}

static gboolean
check_income (SteadStore              *store,
              const SteadBuildIncome  *income,
              GError                 **error)
{
  if (!stead_repo_check_name (income->name, error))
    return FALSE;
  if (income->first_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the first day on which it comes."));
  if (income->id == 0 && income->first_on < stead_store_get_today (store))
    return stead_repo_refuse (error, _("What is planned comes today or later. What came already is in the cash book."));
  if (income->every_days < 1 || income->every_days > 366 || income->times < 1 || income->times > 500)
    return stead_repo_refuse (error, _("Enter how many times it comes, 1 to 500, and after how many days again, 1 to 366."));
  if (income->mean_cents <= 0 || income->mean_cents > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("Enter what it clears each time, above zero."));
  return stead_repo_check_cents (_("Spread"), income->sd_cents, error);
}

static void
bind_income (SteadStmt              *stmt,
             const SteadBuildIncome *income)
{
  sqlite3_bind_int64 (stmt, 1, income->build_id);
  stead_repo_bind_tidy (stmt, 2, income->name);
  stead_stmt_bind_id (stmt, 3, income->product_id);
  stead_stmt_bind_day (stmt, 4, income->first_on);
  sqlite3_bind_int (stmt, 5, income->every_days);
  sqlite3_bind_int (stmt, 6, income->times);
  sqlite3_bind_int64 (stmt, 7, income->mean_cents);
  sqlite3_bind_int64 (stmt, 8, income->sd_cents);
  sqlite3_bind_int (stmt, 9, income->is_sale != FALSE);
}

gboolean
stead_build_income_repo_save (SteadStore        *store,
                              SteadBuildIncome  *income,
                              GError           **error)
{
  static const char insert_sql[] =
    "INSERT INTO build_income (build_id, name, product_id, first_on, every_days, times, mean_cents, sd_cents, is_sale,"
    " position) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9,"
    " (SELECT coalesce (max (position), -1) + 1 FROM build_income WHERE build_id = ?1))";
  static const char update_sql[] =
    "UPDATE build_income SET build_id = ?1, name = ?2, product_id = ?3, first_on = ?4, every_days = ?5, times = ?6,"
    " mean_cents = ?7, sd_cents = ?8, is_sale = ?9 WHERE id = ?10";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && income != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_income (store, income, error))
    return FALSE;
  stmt = stead_store_prepare (store, income->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_income (stmt, income);
  return stead_repo_save_row (store, stmt, &income->id, error);
}

gboolean
stead_build_income_repo_delete (SteadStore  *store,
                                gint64       id,
                                GError     **error)
{
  static const char sql[] = "DELETE FROM build_income WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* --- each year ---------------------------------------------------------------------- */

SteadBuildUpkeep *
stead_build_upkeep_new (void)
{
  return g_new0 (SteadBuildUpkeep, 1);
}

void
stead_build_upkeep_free (SteadBuildUpkeep *upkeep)
{
  if (upkeep == NULL)
    return;
  g_free (upkeep->name);
  g_free (upkeep->unit);
  g_free (upkeep);
}

static gpointer
upkeep_from_row (SteadStmt *stmt)
{
  SteadBuildUpkeep *upkeep = stead_build_upkeep_new ();

  upkeep->id = sqlite3_column_int64 (stmt, 0);
  upkeep->build_id = sqlite3_column_int64 (stmt, 1);
  upkeep->name = stead_stmt_text (stmt, 2);
  upkeep->quantity = sqlite3_column_double (stmt, 3);
  upkeep->unit = stead_stmt_text (stmt, 4);
  upkeep->per_head = sqlite3_column_int (stmt, 5);
  upkeep->price_cents = sqlite3_column_int64 (stmt, 6);
  return upkeep;
}

GPtrArray *
stead_build_upkeep_repo_list (SteadStore  *store,
                              gint64       build_id,
                              GError     **error)
{
  static const char sql[] = "SELECT id, build_id, name, quantity, unit, per_head, price_cents FROM build_upkeep"
                            " WHERE build_id = ?1 ORDER BY position, id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, build_id, upkeep_from_row, (GDestroyNotify) stead_build_upkeep_free,
                             error);
}

gboolean
stead_build_upkeep_repo_save (SteadStore        *store,
                              SteadBuildUpkeep  *upkeep,
                              GError           **error)
{
  static const char insert_sql[] =
    "INSERT INTO build_upkeep (build_id, name, quantity, unit, per_head, price_cents, position)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6,"
    " (SELECT coalesce (max (position), -1) + 1 FROM build_upkeep WHERE build_id = ?1))";
  static const char update_sql[] =
    "UPDATE build_upkeep SET build_id = ?1, name = ?2, quantity = ?3, unit = ?4, per_head = ?5, price_cents = ?6"
    " WHERE id = ?7";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && upkeep != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (upkeep->name, error) ||
      !stead_repo_check_cents (_("Price"), upkeep->price_cents, error))
    return FALSE;
  if (!(upkeep->quantity >= 0 && upkeep->quantity <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The amount must be zero or more. Check the number."));
  stmt = stead_store_prepare (store, upkeep->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, upkeep->build_id);
  stead_repo_bind_tidy (stmt, 2, upkeep->name);
  sqlite3_bind_double (stmt, 3, upkeep->quantity);
  stead_repo_bind_tidy (stmt, 4, upkeep->unit);
  sqlite3_bind_int (stmt, 5, upkeep->per_head != FALSE);
  sqlite3_bind_int64 (stmt, 6, upkeep->price_cents);
  return stead_repo_save_row (store, stmt, &upkeep->id, error);
}

gboolean
stead_build_upkeep_repo_delete (SteadStore  *store,
                                gint64       id,
                                GError     **error)
{
  static const char sql[] = "DELETE FROM build_upkeep WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* stead-cash-repo.c - the lines of the cash book. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-cash-private.h"

/* By SteadCashCategory: its word in the file, where it stands, and which way money goes. */
static const struct
{
  const char *word;
  SteadCashActivity   flow;
  int         sign;
} categories[] = {
  [STEAD_CASH_SALES] = { "sales", STEAD_CASH_ACTIVITY_OPERATING, 1 },
  [STEAD_CASH_REFUND] = { "refund", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_OTHER_IN] = { "other_in", STEAD_CASH_ACTIVITY_OPERATING, 1 },
  [STEAD_CASH_SUPPLIES] = { "supplies", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_ANIMALS] = { "animals", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_ENERGY] = { "energy", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_FEES] = { "fees", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_PAY] = { "pay", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_OTHER_OUT] = { "other_out", STEAD_CASH_ACTIVITY_OPERATING, -1 },
  [STEAD_CASH_OVER_SHORT] = { "over_short", STEAD_CASH_ACTIVITY_OPERATING, 0 },
  [STEAD_CASH_THING_BOUGHT] = { "thing_bought", STEAD_CASH_ACTIVITY_INVESTING, -1 },
  [STEAD_CASH_THING_SOLD] = { "thing_sold", STEAD_CASH_ACTIVITY_INVESTING, 1 },
  [STEAD_CASH_PUT_IN] = { "put_in", STEAD_CASH_ACTIVITY_FINANCING, 1 },
  [STEAD_CASH_GRANT] = { "grant", STEAD_CASH_ACTIVITY_FINANCING, 1 },
  [STEAD_CASH_LOAN] = { "loan", STEAD_CASH_ACTIVITY_FINANCING, 1 },
  [STEAD_CASH_LOAN_PAID] = { "loan_paid", STEAD_CASH_ACTIVITY_FINANCING, -1 },
  [STEAD_CASH_TAKEN_OUT] = { "taken_out", STEAD_CASH_ACTIVITY_FINANCING, -1 },
  [STEAD_CASH_TRANSFER] = { "transfer", STEAD_CASH_ACTIVITY_NONE, 0 },
};

G_STATIC_ASSERT (G_N_ELEMENTS (categories) == STEAD_N_CASH_CATEGORIES);

SteadCashActivity
stead_cash_category_activity (SteadCashCategory category)
{
  g_return_val_if_fail (category < STEAD_N_CASH_CATEGORIES, STEAD_CASH_ACTIVITY_NONE);
  return categories[category].flow;
}

int
stead_cash_category_sign (SteadCashCategory category)
{
  g_return_val_if_fail (category < STEAD_N_CASH_CATEGORIES, 0);
  return categories[category].sign;
}

const char *
stead_cash_category_word (SteadCashCategory category)
{
  g_return_val_if_fail (category < STEAD_N_CASH_CATEGORIES, NULL);
  return categories[category].word;
}

SteadCashCategory
stead_cash_category_from_word (const char *word)
{
  for (guint i = 0; i < G_N_ELEMENTS (categories); i++)
    if (g_strcmp0 (word, categories[i].word) == 0)
      return (SteadCashCategory) i;
  return STEAD_CASH_OTHER_OUT;
}

/* --- lines ------------------------------------------------------------------------------ */

SteadCashLine *
stead_cash_line_new (void)
{
  SteadCashLine *line = g_new0 (SteadCashLine, 1);

  line->day = STEAD_DAY_NONE;
  return line;
}

SteadCashLine *
stead_cash_line_copy (const SteadCashLine *line)
{
  SteadCashLine *copy;

  g_return_val_if_fail (line != NULL, NULL);
  copy = g_memdup2 (line, sizeof *line);
  copy->who = g_strdup (line->who);
  copy->reference = g_strdup (line->reference);
  copy->note = g_strdup (line->note);
  return copy;
}

void
stead_cash_line_free (SteadCashLine *line)
{
  if (line == NULL)
    return;
  g_free (line->who);
  g_free (line->reference);
  g_free (line->note);
  g_free (line);
}

void
stead_cash_filter_init (SteadCashFilter *filter)
{
  g_return_if_fail (filter != NULL);
  *filter = (SteadCashFilter) { .from = STEAD_DAY_NONE, .to = STEAD_DAY_NONE, .fund_id = STEAD_FUND_ANY,
                                .category = -1 };
}

/* --- reading ------------------------------------------------------------------------------ */

gpointer
stead_cash_line_from_row (SteadStmt *stmt)
{
  SteadCashLine *line = stead_cash_line_new ();

  line->id = sqlite3_column_int64 (stmt, 0);
  line->day = stead_stmt_day (stmt, 1);
  line->account_id = sqlite3_column_int64 (stmt, 2);
  line->cents = sqlite3_column_int64 (stmt, 3);
  line->category = stead_cash_category_from_word ((const char *) sqlite3_column_text (stmt, 4));
  line->fund_id = sqlite3_column_int64 (stmt, 5);
  line->enterprise_id = sqlite3_column_int64 (stmt, 6);
  line->who = stead_stmt_text (stmt, 7);
  line->reference = stead_stmt_text (stmt, 8);
  line->note = stead_stmt_text (stmt, 9);
  line->receipt_id = sqlite3_column_int64 (stmt, 10);
  line->batch_id = sqlite3_column_int64 (stmt, 11);
  line->product_id = sqlite3_column_int64 (stmt, 12);
  line->asset_id = sqlite3_column_int64 (stmt, 13);
  line->pair_id = sqlite3_column_int64 (stmt, 14);
  line->picture_id = sqlite3_column_int64 (stmt, 15);
  line->person_id = sqlite3_column_int64 (stmt, 16);
  line->second_id = sqlite3_column_int64 (stmt, 17);
  line->corrects_id = sqlite3_column_int64 (stmt, 18);
  line->corrected_by = sqlite3_column_int64 (stmt, 19);
  line->bank_line_id = sqlite3_column_int64 (stmt, 20);
  line->sale_id = sqlite3_column_int64 (stmt, 21);
  line->pair_account_id = sqlite3_column_int64 (stmt, 22);
  return line;
}

/* Bounds that let everything through are the ends of all days. */
static SteadDay
lower_bound (SteadDay day)
{
  return day == STEAD_DAY_NONE ? G_MININT32 + 1 : day;
}

static SteadDay
upper_bound (SteadDay day)
{
  return day == STEAD_DAY_NONE ? G_MAXINT32 : day;
}

/* What accounts of @filter that were opened after @from, but not after @to, opened with. */
static gint64
opened_cents (const GPtrArray        *accounts,
              const SteadCashFilter  *filter,
              SteadDay                from,
              SteadDay                to)
{
  gint64 sum = 0;

  for (guint i = 0; accounts != NULL && i < accounts->len; i++)
    {
      const SteadAccount *account = accounts->pdata[i];

      if ((filter->account_id == 0 || filter->account_id == account->id) && filter->fund_id <= 0
          && account->opened_on > from && account->opened_on <= to)
        sum += account->opening_cents;
    }
  return sum;
}

/* @accounts: (nullable): what they opened with is left out */
static void
add_balances (GPtrArray             *lines,
              gint64                 before_cents,
              const GPtrArray       *accounts,
              const SteadCashFilter *filter)
{
  gint64 sum = before_cents;

  for (guint i = 0; i < lines->len; i++)
    {
      SteadCashLine *line = lines->pdata[i];

      if (i > 0)
        sum += opened_cents (accounts, filter, ((SteadCashLine *) lines->pdata[i - 1])->day, line->day);
      sum += line->cents;
      line->balance_cents = sum;
    }
}

static GPtrArray *
read_lines (SteadStore             *store,
            const SteadCashFilter  *filter,
            GError                **error)
{
  static const char sql[] =
    "SELECT " STEAD_CASH_COLUMNS " FROM " STEAD_CASH_LINES " WHERE c.day BETWEEN ?1 AND ?2"
    " AND (?3 = 0 OR c.account_id = ?3) AND (?4 < 0 OR coalesce (c.fund_id, 0) = ?4)"
    " AND (?5 IS NULL OR c.category = ?5) AND (?6 = 0 OR c.receipt_id = ?6) ORDER BY c.day, c.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, lower_bound (filter->from));
  sqlite3_bind_int (stmt, 2, upper_bound (filter->to));
  sqlite3_bind_int64 (stmt, 3, filter->account_id);
  sqlite3_bind_int64 (stmt, 4, filter->fund_id);
  stead_stmt_bind_text (stmt, 5, filter->category < 0 ? NULL : categories[filter->category].word);
  sqlite3_bind_int64 (stmt, 6, filter->receipt_id);
  return stead_repo_rows (store, stmt, stead_cash_line_from_row, (GDestroyNotify) stead_cash_line_free, error);
}

GPtrArray *
stead_cash_repo_list (SteadStore             *store,
                      const SteadCashFilter  *filter,
                      GError                **error)
{
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GPtrArray) accounts = NULL;
  gint64 before = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store) && filter != NULL, NULL);
  g_return_val_if_fail (filter->category < STEAD_N_CASH_CATEGORIES, NULL);
  lines = read_lines (store, filter, error);
  if (lines == NULL)
    return NULL;
  if (filter->category < 0 && filter->receipt_id == 0 && lines->len > 0)
    {
      const SteadCashLine *first = lines->pdata[0];

      accounts = stead_account_repo_list (store, TRUE, error);
      /* What an account opened with is there on its first day, so the day of the first
       * line is taken with it, and its lines off again. */
      if (accounts == NULL
          || !stead_cash_repo_balance (store, filter->account_id, filter->fund_id, first->day, &before, error))
        return NULL;
      for (guint i = 0; i < lines->len; i++)
        {
          const SteadCashLine *line = lines->pdata[i];

          if (line->day == first->day)
            before -= line->cents;
        }
    }
  add_balances (lines, before, accounts, filter);
  return g_steal_pointer (&lines);
}

SteadCashLine *
stead_cash_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = "SELECT " STEAD_CASH_COLUMNS " FROM " STEAD_CASH_LINES " WHERE c.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, stead_cash_line_from_row, error);
}

/* --- balances ------------------------------------------------------------------------------ */

gboolean
stead_cash_repo_balance (SteadStore  *store,
                         gint64       account_id,
                         gint64       fund_id,
                         SteadDay     day,
                         gint64      *out_cents,
                         GError     **error)
{
  static const char sql[] =
    "SELECT coalesce ((SELECT sum (opening_cents) FROM account"
    "    WHERE (?1 = 0 OR id = ?1) AND ?2 <= 0 AND opened_on <= ?3), 0)"
    " + coalesce ((SELECT sum (cents) FROM cash_line"
    "    WHERE (?1 = 0 OR account_id = ?1) AND (?2 < 0 OR coalesce (fund_id, 0) = ?2) AND day <= ?3), 0)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_cents != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, account_id);
  sqlite3_bind_int64 (stmt, 2, fund_id);
  sqlite3_bind_int (stmt, 3, day);
  return stead_repo_number (store, stmt, 0, out_cents, error);
}

static gpointer
balance_from_row (SteadStmt *stmt)
{
  SteadCashBalance *balance = g_new0 (SteadCashBalance, 1);

  balance->account_id = sqlite3_column_int64 (stmt, 0);
  balance->fund_id = sqlite3_column_int64 (stmt, 1);
  balance->cents = sqlite3_column_int64 (stmt, 2);
  return balance;
}

GPtrArray *
stead_cash_repo_balances (SteadStore  *store,
                          SteadDay     day,
                          GError     **error)
{
  static const char sql[] =
    "SELECT a, f, sum (cents) AS total FROM"
    " (SELECT id AS a, 0 AS f, opening_cents AS cents FROM account WHERE opened_on <= ?1"
    "  UNION ALL SELECT account_id, coalesce (fund_id, 0), cents FROM cash_line WHERE day <= ?1)"
    " GROUP BY a, f HAVING total <> 0 ORDER BY a, f";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, day, balance_from_row, g_free, error);
}

/* --- checking ------------------------------------------------------------------------------ */

gboolean
stead_cash_check_day (SteadStore  *store,
                      SteadDay     day,
                      GError     **error)
{
  if (day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (day > stead_store_get_today (store))
    {
      g_autofree char *when = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);

      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), when);
    }
  return TRUE;
}

gboolean
stead_cash_check_amount (gint64   cents,
                         GError **error)
{
  if (cents == 0)
    return stead_repo_refuse (error, _("Enter an amount of money, not zero."));
  if (ABS (cents) > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("The amount is too large. Check the number."));
  return TRUE;
}

static gboolean
check_sign (const SteadCashLine  *line,
            GError              **error)
{
  int sign = categories[line->category].sign;

  if (sign == 0 || line->corrects_id != 0 || (line->cents > 0) == (sign > 0))
    return TRUE;
  if (sign > 0)
    return stead_repo_refuse (error, _("This is for money that comes in. Choose another category, "
                                       "or change the sign of the amount."));
  return stead_repo_refuse (error, _("This is for money that goes out. Choose another category, "
                                     "or change the sign of the amount."));
}

static gboolean
check_people (const SteadCashLine  *line,
              GError              **error)
{
  if (line->person_id != 0 && line->person_id == line->second_id)
    return stead_repo_refuse (error, _("Two people handle money together. Choose another second person."));
  return TRUE;
}

static gboolean
check_line (SteadStore           *store,
            const SteadCashLine  *line,
            GError              **error)
{
  return stead_cash_check_day (store, line->day, error) &&
         stead_cash_check_amount (line->cents, error) &&
         stead_cash_check_account (store, line->account_id, line->day, error) &&
         stead_cash_check_fund (store, line->fund_id, line->day, error) &&
         check_sign (line, error) &&
         check_people (line, error) &&
         stead_repo_check_note (line->who, error) &&
         stead_repo_check_note (line->reference, error) &&
         stead_repo_check_note (line->note, error);
}

gboolean
stead_cash_check_free (SteadStore           *store,
                       const SteadCashLine  *line,
                       GError              **error)
{
  static const char sql[] = "SELECT count (*) FROM cash_count WHERE line_id = ?1";
  gint64 n;

  if (line->bank_line_id != 0)
    return stead_repo_refuse (error, _("This line is matched with the bank's. Take the match away first."));
  if (line->corrected_by != 0)
    return stead_repo_refuse (error, _("This line was corrected by a later one. Correct that one instead."));
  n = stead_repo_count_id (store, sql, line->id, error);
  if (n > 0)
    return stead_repo_refuse (error, _("This line belongs to a count. Change the count instead."));
  if (line->sale_id != 0)
    return stead_repo_refuse (error, _("This line was written by the cash-up of a sale. Correct it by a line beside it."));
  return n == 0;
}

/* --- writing -------------------------------------------------------------------------------- */

gboolean
stead_cash_write (SteadStore     *store,
                  SteadCashLine  *line,
                  GError        **error)
{
  static const char insert_sql[] =
    "INSERT INTO cash_line (day, account_id, cents, category, fund_id, enterprise_id, who, reference, note,"
    " receipt_id, batch_id, product_id, asset_id, pair_id, picture_id, person_id, second_id, corrects_id,"
    " sale_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19)";
  static const char update_sql[] =
    "UPDATE cash_line SET day = ?1, account_id = ?2, cents = ?3, category = ?4, fund_id = ?5, enterprise_id = ?6,"
    " who = ?7, reference = ?8, note = ?9, receipt_id = ?10, batch_id = ?11, product_id = ?12, asset_id = ?13,"
    " pair_id = ?14, picture_id = ?15, person_id = ?16, second_id = ?17, corrects_id = ?18, sale_id = ?19 WHERE id = ?20";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, line->id == 0 ? insert_sql : update_sql, error);
  const gint64 ids[] = { line->receipt_id, line->batch_id, line->product_id, line->asset_id, line->pair_id,
                         line->picture_id, line->person_id, line->second_id, line->corrects_id, line->sale_id };

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, line->day);
  sqlite3_bind_int64 (stmt, 2, line->account_id);
  sqlite3_bind_int64 (stmt, 3, line->cents);
  stead_stmt_bind_text (stmt, 4, categories[line->category].word);
  stead_stmt_bind_id (stmt, 5, line->fund_id);
  stead_stmt_bind_id (stmt, 6, line->enterprise_id);
  stead_repo_bind_tidy (stmt, 7, line->who);
  stead_repo_bind_tidy (stmt, 8, line->reference);
  stead_repo_bind_tidy (stmt, 9, line->note);
  for (int i = 0; i < (int) G_N_ELEMENTS (ids); i++)
    stead_stmt_bind_id (stmt, 10 + i, ids[i]);
  if (line->id != 0)
    sqlite3_bind_int64 (stmt, 20, line->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (line->id == 0)
    line->id = stead_store_last_id (store);
  return TRUE;
}

/* What may change of a line depends on what hangs on it. */
static gboolean
check_change (SteadStore           *store,
              const SteadCashLine  *before,
              const SteadCashLine  *line,
              GError              **error)
{
  if (before->pair_id != 0)
    return stead_repo_refuse (error, _("This is one half of a transfer. Delete the transfer and enter it again."));
  if (before->corrects_id != line->corrects_id)
    return stead_repo_refuse (error, _("A line cannot be turned into a correction, or back. Enter a new one."));
  if (before->day == line->day && before->cents == line->cents && before->account_id == line->account_id)
    return TRUE;
  return stead_cash_check_free (store, before, error);
}

gboolean
stead_cash_repo_save (SteadStore     *store,
                      SteadCashLine  *line,
                      GError        **error)
{
  g_autoptr(SteadCashLine) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && line != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (line->category == STEAD_CASH_TRANSFER)
    return stead_repo_refuse (error, _("Money that goes from one account or fund to another is entered as a transfer."));
  if (!check_line (store, line, error))
    return FALSE;
  if (line->id != 0)
    {
      before = stead_cash_repo_get (store, line->id, error);
      if (before == NULL || !check_change (store, before, line, error))
        return FALSE;
    }
  line->pair_id = 0;
  return stead_cash_write (store, line, error);
}

gboolean
stead_cash_remove (SteadStore  *store,
                   gint64       id,
                   GError     **error)
{
  static const char sql[] = "DELETE FROM cash_line WHERE id = ?1";

  return stead_repo_run_id (store, sql, id, error);
}

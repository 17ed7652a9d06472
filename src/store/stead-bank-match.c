/* stead-bank-match.c - the lines of a statement beside the farm's own, until both agree. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-bank-private.h"
#include "store/stead-cash-private.h"

/* --- matching ----------------------------------------------------------------------------- */

static gboolean
check_match (SteadStore           *store,
             const SteadBankLine  *line,
             gint64                line_id,
             GError              **error)
{
  g_autoptr(SteadCashLine) own = NULL;

  if (line_id == 0)
    return TRUE;
  own = stead_cash_repo_get (store, line_id, error);
  if (own == NULL)
    return FALSE;
  if (own->account_id != line->account_id || own->cents != line->cents)
    return stead_repo_refuse (error, _("Only lines of the same account and the same amount belong together."));
  if (own->bank_line_id != 0 && own->bank_line_id != line->id)
    return stead_repo_refuse (error, _("This line of the book belongs to another line of the bank already."));
  return TRUE;
}

gboolean
stead_bank_repo_match (SteadStore  *store,
                       gint64       bank_line_id,
                       gint64       line_id,
                       GError     **error)
{
  static const char sql[] = "UPDATE bank_line SET line_id = ?2 WHERE id = ?1";
  g_autoptr(SteadBankLine) line = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  line = stead_bank_get_line (store, bank_line_id, error);
  if (line == NULL ||
      !stead_bank_check_open (store, line->account_id, line->day, error) ||
      !check_match (store, line, line_id, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, bank_line_id);
  stead_stmt_bind_id (stmt, 2, line_id);
  return stead_store_run (store, stmt, error);
}

/* All pairs that could be, nearest days first. */
static GArray *
possible_pairs (SteadStore  *store,
                gint64       account_id,
                SteadDay     to,
                int          days,
                GError     **error)
{
  static const char sql[] =
    "SELECT b.id, c.id, b.day - c.day FROM bank_line b"
    " JOIN cash_line c ON c.account_id = b.account_id AND c.cents = b.cents AND c.day BETWEEN b.day - ?3 AND b.day + ?3"
    " WHERE b.account_id = ?1 AND b.day <= ?2 AND b.line_id IS NULL"
    " AND NOT EXISTS (SELECT 1 FROM bank_line x WHERE x.line_id = c.id)"
    " ORDER BY abs (b.day - c.day), b.day, b.id, c.id";
  g_autoptr(GArray) pairs = g_array_new (FALSE, FALSE, sizeof (SteadBankPair));
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, account_id);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int (stmt, 3, days);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadBankPair pair = { .bank_line_id = sqlite3_column_int64 (stmt, 0),
                             .line_id = sqlite3_column_int64 (stmt, 1),
                             .days = sqlite3_column_int (stmt, 2) };

      g_array_append_val (pairs, pair);
    }
  return found == 0 ? g_steal_pointer (&pairs) : NULL;
}

GArray *
stead_bank_repo_proposals (SteadStore  *store,
                           gint64       account_id,
                           SteadDay     to,
                           int          days,
                           GError     **error)
{
  g_autoptr(GArray) pairs = NULL;
  g_autoptr(GArray) chosen = g_array_new (FALSE, FALSE, sizeof (SteadBankPair));
  g_autoptr(GHashTable) bank = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autoptr(GHashTable) book = g_hash_table_new (g_int64_hash, g_int64_equal);

  g_return_val_if_fail (STEAD_IS_STORE (store) && days >= 0, NULL);
  pairs = possible_pairs (store, account_id, to, days, error);
  if (pairs == NULL)
    return NULL;
  for (guint i = 0; i < pairs->len; i++)
    {
      SteadBankPair *pair = &g_array_index (pairs, SteadBankPair, i);

      if (g_hash_table_contains (bank, &pair->bank_line_id) || g_hash_table_contains (book, &pair->line_id))
        continue;
      g_hash_table_add (bank, &pair->bank_line_id);
      g_hash_table_add (book, &pair->line_id);
      g_array_append_vals (chosen, pair, 1);
    }
  return g_steal_pointer (&chosen);
}

/* --- agreeing ------------------------------------------------------------------------------ */

gboolean
stead_bank_repo_check (SteadStore      *store,
                       gint64           sheet_id,
                       SteadBankCheck  *out,
                       GError         **error)
{
  static const char book_sql[] =
    "SELECT coalesce (sum (max (c.cents, 0)), 0), coalesce (sum (max (-c.cents, 0)), 0) FROM cash_line c"
    " WHERE c.account_id = ?1 AND c.day <= ?2"
    " AND NOT EXISTS (SELECT 1 FROM bank_line b WHERE b.line_id = c.id AND b.day <= ?2)";
  static const char bank_sql[] =
    "SELECT coalesce (sum (max (b.cents, 0)), 0), coalesce (sum (max (-b.cents, 0)), 0) FROM bank_line b"
    " LEFT JOIN cash_line c ON c.id = b.line_id"
    " WHERE b.account_id = ?1 AND b.day <= ?2 AND (b.line_id IS NULL OR c.day > ?2)";
  g_autoptr(SteadBankSheet) sheet = NULL;
  g_autoptr(SteadStmt) book = NULL;
  g_autoptr(SteadStmt) bank = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  sheet = stead_bank_repo_sheet (store, sheet_id, error);
  if (sheet == NULL || (book = stead_store_prepare (store, book_sql, error)) == NULL ||
      (bank = stead_store_prepare (store, bank_sql, error)) == NULL)
    return FALSE;
  *out = (SteadBankCheck) { .bank_cents = sheet->closing_cents };
  sqlite3_bind_int64 (book, 1, sheet->account_id);
  sqlite3_bind_int (book, 2, sheet->through_day);
  sqlite3_bind_int64 (bank, 1, sheet->account_id);
  sqlite3_bind_int (bank, 2, sheet->through_day);
  if (stead_store_step (store, book, error) != 1 || stead_store_step (store, bank, error) != 1)
    return FALSE;
  out->in_transit_cents = sqlite3_column_int64 (book, 0);
  out->outstanding_cents = sqlite3_column_int64 (book, 1);
  out->additions_cents = sqlite3_column_int64 (bank, 0);
  out->deductions_cents = sqlite3_column_int64 (bank, 1);
  return stead_cash_repo_balance (store, sheet->account_id, STEAD_FUND_ANY, sheet->through_day, &out->book_cents, error);
}

static gboolean
check_agrees (SteadStore            *store,
              const SteadBankSheet  *sheet,
              GError               **error)
{
  static const char sql[] = "SELECT count (*) FROM bank_line b JOIN bank_sheet s ON s.account_id = b.account_id"
                            " LEFT JOIN cash_line c ON c.id = b.line_id"
                            " WHERE s.id = ?1 AND b.day <= s.through_day"
                            " AND (b.line_id IS NULL OR c.day > s.through_day)";
  SteadBankCheck check;
  gint64 open = stead_repo_count_id (store, sql, sheet->id, error);

  if (open < 0 || !stead_bank_repo_check (store, sheet->id, &check, error))
    return FALSE;
  if (open > 0)
    return stead_repo_refuse (error, ngettext ("%d line of the statement is not in the book by its day yet. Match it, "
                                               "or enter it in the book.",
                                               "%d lines of the statement are not in the book by its day yet. Match "
                                               "them, or enter them in the book.", (gulong) open), (int) open);
  if (stead_bank_side_cents (&check) != stead_book_side_cents (&check))
    return stead_repo_refuse (error, _("The two sides differ. Look for a line that is missing on the statement's list, "
                                       "or an amount with two figures swapped."));
  return TRUE;
}

gboolean
stead_bank_repo_agree (SteadStore  *store,
                       gint64       sheet_id,
                       gint64       person_id,
                       GError     **error)
{
  static const char sql[] = "UPDATE bank_sheet SET agreed_on = ?2, person_id = ?3 WHERE id = ?1";
  g_autoptr(SteadBankSheet) sheet = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  sheet = stead_bank_repo_sheet (store, sheet_id, error);
  if (sheet == NULL)
    return FALSE;
  if (sheet->agreed_on != STEAD_DAY_NONE)
    return stead_bank_refuse_agreed (sheet, error);
  if (person_id == 0)
    return stead_repo_refuse (error, _("Enter who compared the statement with the book."));
  if (!check_agrees (store, sheet, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sheet_id);
  stead_stmt_bind_day (stmt, 2, stead_store_get_today (store));
  sqlite3_bind_int64 (stmt, 3, person_id);
  return stead_store_run (store, stmt, error);
}

/* stead-bank-repo.c - statements of an account, and their lines. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-bank-private.h"
#include "store/stead-cash-private.h"

void
stead_bank_sheet_free (SteadBankSheet *sheet)
{
  g_free (sheet);
}

void
stead_bank_line_free (SteadBankLine *line)
{
  if (line == NULL)
    return;
  g_free (line->text);
  g_free (line);
}

/* --- sheets --------------------------------------------------------------------------- */

static gpointer
sheet_from_row (SteadStmt *stmt)
{
  SteadBankSheet *sheet = g_new0 (SteadBankSheet, 1);

  sheet->id = sqlite3_column_int64 (stmt, 0);
  sheet->account_id = sqlite3_column_int64 (stmt, 1);
  sheet->through_day = stead_stmt_day (stmt, 2);
  sheet->closing_cents = sqlite3_column_int64 (stmt, 3);
  sheet->agreed_on = stead_stmt_day (stmt, 4);
  sheet->person_id = sqlite3_column_int64 (stmt, 5);
  return sheet;
}

GPtrArray *
stead_bank_repo_sheets (SteadStore  *store,
                        gint64       account_id,
                        GError     **error)
{
  static const char sql[] = "SELECT id, account_id, through_day, closing_cents, agreed_on, person_id FROM bank_sheet"
                            " WHERE ?1 = 0 OR account_id = ?1 ORDER BY through_day DESC, id DESC";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, account_id, sheet_from_row, (GDestroyNotify) stead_bank_sheet_free,
                             error);
}

SteadBankSheet *
stead_bank_repo_sheet (SteadStore  *store,
                       gint64       id,
                       GError     **error)
{
  static const char sql[] = "SELECT id, account_id, through_day, closing_cents, agreed_on, person_id FROM bank_sheet"
                            " WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, sheet_from_row, error);
}

/* The last day of @account_id that an agreed sheet covers; STEAD_DAY_NONE: none. */
static gboolean
agreed_through (SteadStore  *store,
                gint64       account_id,
                SteadDay    *out,
                GError     **error)
{
  static const char sql[] = "SELECT max (through_day) FROM bank_sheet WHERE account_id = ?1 AND agreed_on IS NOT NULL";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  gint64 day;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, account_id);
  if (!stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error))
    return FALSE;
  *out = (SteadDay) day;
  return TRUE;
}

/* Refuses @day where an agreed sheet covers it. */
gboolean
stead_bank_check_open (SteadStore  *store,
                       gint64       account_id,
                       SteadDay     day,
                       GError     **error)
{
  g_autofree char *when = NULL;
  SteadDay through;

  if (!agreed_through (store, account_id, &through, error))
    return FALSE;
  if (through == STEAD_DAY_NONE || day > through)
    return TRUE;
  when = stead_day_format (through, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, _("The statement through %s agrees with the book and stays as it is."), when);
}

static gboolean
check_sheet (SteadStore            *store,
             const SteadBankSheet  *sheet,
             GError               **error)
{
  static const char kind_sql[] = "SELECT kind = 'till' FROM account WHERE id = ?1";
  static const char same_sql[] = "SELECT 1 FROM bank_sheet WHERE account_id = ?1 AND through_day = ?2 AND id <> ?3";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 is_till, same;

  if (!stead_cash_check_day (store, sheet->through_day, error) ||
      !stead_cash_check_account (store, sheet->account_id, sheet->through_day, error))
    return FALSE;
  if (ABS (sheet->closing_cents) > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("The amount is too large. Check the number."));
  is_till = stead_repo_count_id (store, kind_sql, sheet->account_id, error);
  if (is_till == 1)
    return stead_repo_refuse (error, _("A till box has no statement. Count it with two people instead."));
  stmt = is_till == 0 ? stead_store_prepare (store, same_sql, error) : NULL;
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sheet->account_id);
  stead_stmt_bind_day (stmt, 2, sheet->through_day);
  sqlite3_bind_int64 (stmt, 3, sheet->id);
  if (!stead_repo_number (store, stmt, 0, &same, error))
    return FALSE;
  if (same != 0)
    return stead_repo_refuse (error, _("There is a statement of this account through that day already. Change that one."));
  return stead_bank_check_open (store, sheet->account_id, sheet->through_day, error);
}

gboolean
stead_bank_refuse_agreed (const SteadBankSheet  *sheet,
                          GError               **error)
{
  g_autofree char *when = stead_day_format (sheet->through_day, STEAD_DAY_STYLE_MEDIUM);

  return stead_repo_refuse (error, _("The statement through %s agrees with the book and stays as it is."), when);
}

gboolean
stead_bank_repo_save_sheet (SteadStore      *store,
                            SteadBankSheet  *sheet,
                            GError         **error)
{
  static const char insert_sql[] = "INSERT INTO bank_sheet (account_id, through_day, closing_cents) VALUES (?1, ?2, ?3)";
  static const char update_sql[] = "UPDATE bank_sheet SET account_id = ?1, through_day = ?2, closing_cents = ?3"
                                   " WHERE id = ?4";
  g_autoptr(SteadBankSheet) before = NULL;
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && sheet != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (sheet->id != 0)
    {
      before = stead_bank_repo_sheet (store, sheet->id, error);
      if (before == NULL)
        return FALSE;
      if (before->agreed_on != STEAD_DAY_NONE)
        return stead_bank_refuse_agreed (before, error);
    }
  if (!check_sheet (store, sheet, error))
    return FALSE;
  stmt = stead_store_prepare (store, sheet->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, sheet->account_id);
  stead_stmt_bind_day (stmt, 2, sheet->through_day);
  sqlite3_bind_int64 (stmt, 3, sheet->closing_cents);
  if (sheet->id != 0)
    sqlite3_bind_int64 (stmt, 4, sheet->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (sheet->id == 0)
    sheet->id = stead_store_last_id (store);
  sheet->agreed_on = STEAD_DAY_NONE;
  return TRUE;
}

gboolean
stead_bank_repo_delete_sheet (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM bank_sheet WHERE id = ?1";
  g_autoptr(SteadBankSheet) sheet = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  sheet = stead_bank_repo_sheet (store, id, error);
  if (sheet == NULL)
    return FALSE;
  if (sheet->agreed_on != STEAD_DAY_NONE)
    return stead_bank_refuse_agreed (sheet, error);
  return stead_repo_run_id (store, sql, id, error);
}

/* --- lines ------------------------------------------------------------------------------ */

static gpointer
line_from_row (SteadStmt *stmt)
{
  SteadBankLine *line = g_new0 (SteadBankLine, 1);

  line->id = sqlite3_column_int64 (stmt, 0);
  line->account_id = sqlite3_column_int64 (stmt, 1);
  line->day = stead_stmt_day (stmt, 2);
  line->cents = sqlite3_column_int64 (stmt, 3);
  line->text = stead_stmt_text (stmt, 4);
  line->line_id = sqlite3_column_int64 (stmt, 5);
  return line;
}

GPtrArray *
stead_bank_repo_lines (SteadStore  *store,
                       gint64       account_id,
                       SteadDay     to,
                       gboolean     unmatched,
                       GError     **error)
{
  static const char sql[] = "SELECT id, account_id, day, cents, text, line_id FROM bank_line"
                            " WHERE account_id = ?1 AND day <= ?2 AND (?3 = 0 OR line_id IS NULL) ORDER BY day, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, account_id);
  sqlite3_bind_int (stmt, 2, to);
  sqlite3_bind_int (stmt, 3, unmatched != FALSE);
  return stead_repo_rows (store, stmt, line_from_row, (GDestroyNotify) stead_bank_line_free, error);
}

SteadBankLine *
stead_bank_get_line (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = "SELECT id, account_id, day, cents, text, line_id FROM bank_line WHERE id = ?1";

  return stead_repo_row_of (store, sql, id, line_from_row, error);
}

gint64
stead_bank_repo_count_same (SteadStore           *store,
                            const SteadBankLine  *line,
                            GError              **error)
{
  static const char sql[] = "SELECT count (*) FROM bank_line WHERE account_id = ?1 AND day = ?2 AND cents = ?3"
                            " AND text IS ?4";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 n;

  g_return_val_if_fail (STEAD_IS_STORE (store) && line != NULL, -1);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, line->account_id);
  stead_stmt_bind_day (stmt, 2, line->day);
  sqlite3_bind_int64 (stmt, 3, line->cents);
  stead_repo_bind_tidy (stmt, 4, line->text);
  return stead_repo_number (store, stmt, 0, &n, error) ? n : -1;
}

gboolean
stead_bank_repo_add_line (SteadStore     *store,
                          SteadBankLine  *line,
                          GError        **error)
{
  static const char sql[] = "INSERT INTO bank_line (account_id, day, cents, text) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && line != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_cash_check_day (store, line->day, error) ||
      !stead_cash_check_amount (line->cents, error) ||
      !stead_cash_check_account (store, line->account_id, line->day, error) ||
      !stead_repo_check_note (line->text, error) ||
      !stead_bank_check_open (store, line->account_id, line->day, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line->account_id);
  stead_stmt_bind_day (stmt, 2, line->day);
  sqlite3_bind_int64 (stmt, 3, line->cents);
  stead_repo_bind_tidy (stmt, 4, line->text);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  line->id = stead_store_last_id (store);
  line->line_id = 0;
  return TRUE;
}

gboolean
stead_bank_repo_delete_line (SteadStore  *store,
                             gint64       id,
                             GError     **error)
{
  static const char sql[] = "DELETE FROM bank_line WHERE id = ?1";
  g_autoptr(SteadBankLine) line = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  line = stead_bank_get_line (store, id, error);
  return line != NULL &&
         stead_bank_check_open (store, line->account_id, line->day, error) &&
         stead_repo_run_id (store, sql, id, error);
}

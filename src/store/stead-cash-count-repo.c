/* stead-cash-count-repo.c - two people count an account's money together. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "core/stead-cash.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-cash-private.h"

SteadCashCount *
stead_cash_count_new (void)
{
  SteadCashCount *count = g_new0 (SteadCashCount, 1);

  count->day = STEAD_DAY_NONE;
  count->pieces = g_array_new (FALSE, TRUE, sizeof (SteadCashPiece));
  return count;
}

void
stead_cash_count_free (SteadCashCount *count)
{
  if (count == NULL)
    return;
  g_free (count->reason);
  g_free (count->note);
  g_array_unref (count->pieces);
  g_free (count);
}

gint64
stead_cash_count_total_cents (const SteadCashCount *count)
{
  gint64 total = 0;

  g_return_val_if_fail (count != NULL, 0);
  for (guint i = 0; i < count->pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (count->pieces, SteadCashPiece, i);

      total += piece->face_cents * piece->pieces;
    }
  return total;
}

gint64
stead_cash_count_over_cents (const SteadCashCount *count)
{
  g_return_val_if_fail (count != NULL, 0);
  return stead_cash_count_total_cents (count) - count->expected_cents;
}

gint64
stead_cash_count_deposit_cents (const SteadCashCount *count)
{
  g_return_val_if_fail (count != NULL, 0);
  return MAX (0, stead_till_deposit_cents (stead_cash_count_total_cents (count), count->float_cents));
}

gboolean
stead_cash_count_is_open (const SteadCashCount *count)
{
  g_return_val_if_fail (count != NULL, FALSE);
  return count->line_id == 0 && stead_cash_count_over_cents (count) != 0;
}

/* --- reading ------------------------------------------------------------------------------ */

#define COUNT_COLUMNS \
  "id, day, account_id, expected_cents, float_cents, first_id, second_id, reason, line_id, note, sale_id"

static gpointer
count_from_row (SteadStmt *stmt)
{
  SteadCashCount *count = stead_cash_count_new ();

  count->id = sqlite3_column_int64 (stmt, 0);
  count->day = stead_stmt_day (stmt, 1);
  count->account_id = sqlite3_column_int64 (stmt, 2);
  count->expected_cents = sqlite3_column_int64 (stmt, 3);
  count->float_cents = sqlite3_column_int64 (stmt, 4);
  count->first_id = sqlite3_column_int64 (stmt, 5);
  count->second_id = sqlite3_column_int64 (stmt, 6);
  count->reason = stead_stmt_text (stmt, 7);
  count->line_id = sqlite3_column_int64 (stmt, 8);
  count->note = stead_stmt_text (stmt, 9);
  count->sale_id = sqlite3_column_int64 (stmt, 10);
  return count;
}

static gboolean
read_pieces (SteadStore      *store,
             SteadCashCount  *count,
             GError         **error)
{
  static const char sql[] = "SELECT face_cents, pieces FROM cash_count_piece WHERE count_id = ?1"
                            " ORDER BY face_cents DESC";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, count->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadCashPiece piece = { .face_cents = sqlite3_column_int64 (stmt, 0),
                               .pieces = sqlite3_column_int64 (stmt, 1) };

      g_array_append_val (count->pieces, piece);
    }
  return found == 0;
}

GPtrArray *
stead_cash_count_repo_list (SteadStore  *store,
                            gint64       account_id,
                            GError     **error)
{
  static const char sql[] = "SELECT " COUNT_COLUMNS " FROM cash_count WHERE ?1 = 0 OR account_id = ?1"
                            " ORDER BY day DESC, id DESC";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) counts = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, account_id);
  counts = stead_repo_rows (store, stmt, count_from_row, (GDestroyNotify) stead_cash_count_free, error);
  for (guint i = 0; counts != NULL && i < counts->len; i++)
    if (!read_pieces (store, counts->pdata[i], error))
      return NULL;
  return g_steal_pointer (&counts);
}

SteadCashCount *
stead_cash_count_repo_get (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "SELECT " COUNT_COLUMNS " FROM cash_count WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadCashCount) count = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  count = stead_repo_row (store, stmt, count_from_row, error);
  return count != NULL && read_pieces (store, count, error) ? g_steal_pointer (&count) : NULL;
}

/* --- checking ------------------------------------------------------------------------------ */

static gboolean
check_pieces (const SteadCashCount  *count,
              GError               **error)
{
  if (count->pieces->len == 0)
    return stead_repo_refuse (error, _("Enter how many there are of at least one coin or note."));
  for (guint i = 0; i < count->pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (count->pieces, SteadCashPiece, i);

      if (piece->face_cents <= 0 || piece->pieces < 0 || piece->face_cents > STEAD_CENTS_MAX
          || piece->pieces > STEAD_CENTS_MAX / piece->face_cents)
        return stead_repo_refuse (error, _("A number of coins or notes is not possible. Check the numbers."));
    }
  return TRUE;
}

static gboolean
check_count (SteadStore            *store,
             const SteadCashCount  *count,
             GError               **error)
{
  if (!stead_cash_check_day (store, count->day, error) ||
      !stead_cash_check_account (store, count->account_id, count->day, error) ||
      !check_pieces (count, error) ||
      !stead_repo_check_note (count->reason, error) ||
      !stead_repo_check_note (count->note, error))
    return FALSE;
  if (count->first_id == 0 || count->second_id == 0)
    return stead_repo_refuse (error, _("Two people count money together. Enter both."));
  if (count->first_id == count->second_id)
    return stead_repo_refuse (error, _("The second person must be somebody else than the first."));
  if (count->float_cents < 0 || count->float_cents > stead_cash_count_total_cents (count))
    return stead_repo_refuse (error, _("More cannot stay in the box than was counted. Check the two numbers."));
  return TRUE;
}

/* --- writing -------------------------------------------------------------------------------- */

static gboolean
write_pieces (SteadStore            *store,
              const SteadCashCount  *count,
              GError               **error)
{
  static const char delete_sql[] = "DELETE FROM cash_count_piece WHERE count_id = ?1";
  static const char insert_sql[] = "INSERT INTO cash_count_piece (count_id, face_cents, pieces) VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, delete_sql, count->id, error))
    return FALSE;
  for (guint i = 0; i < count->pieces->len; i++)
    {
      const SteadCashPiece *piece = &g_array_index (count->pieces, SteadCashPiece, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, count->id);
      sqlite3_bind_int64 (stmt, 2, piece->face_cents);
      sqlite3_bind_int64 (stmt, 3, piece->pieces);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_count (SteadStore      *store,
             SteadCashCount  *count,
             GError         **error)
{
  static const char insert_sql[] =
    "INSERT INTO cash_count (day, account_id, expected_cents, float_cents, first_id, second_id, reason, line_id, note,"
    " sale_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
  static const char update_sql[] =
    "UPDATE cash_count SET day = ?1, account_id = ?2, expected_cents = ?3, float_cents = ?4, first_id = ?5,"
    " second_id = ?6, reason = ?7, line_id = ?8, note = ?9, sale_id = ?10 WHERE id = ?11";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, count->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, count->day);
  sqlite3_bind_int64 (stmt, 2, count->account_id);
  sqlite3_bind_int64 (stmt, 3, count->expected_cents);
  sqlite3_bind_int64 (stmt, 4, count->float_cents);
  sqlite3_bind_int64 (stmt, 5, count->first_id);
  sqlite3_bind_int64 (stmt, 6, count->second_id);
  stead_repo_bind_tidy (stmt, 7, count->reason);
  stead_stmt_bind_id (stmt, 8, count->line_id);
  stead_repo_bind_tidy (stmt, 9, count->note);
  stead_stmt_bind_id (stmt, 10, count->sale_id);
  if (count->id != 0)
    sqlite3_bind_int64 (stmt, 11, count->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (count->id == 0)
    count->id = stead_store_last_id (store);
  return TRUE;
}

/* The row that names the line goes off it first; the file holds them together. */
static gboolean
drop_line (SteadStore      *store,
           SteadCashCount  *before,
           GError         **error)
{
  gint64 line_id = before->line_id;

  before->line_id = 0;
  return line_id == 0 || (write_count (store, before, error) && stead_cash_remove (store, line_id, error));
}

/* The line "over or short", once there is a reason for it. */
static gboolean
write_line (SteadStore      *store,
            SteadCashCount  *count,
            GError         **error)
{
  g_autoptr(SteadCashLine) line = NULL;
  g_autofree char *reason = stead_repo_tidy (count->reason);
  gint64 over = stead_cash_count_over_cents (count);

  if (over == 0 || reason == NULL)
    return TRUE;
  line = stead_cash_line_new ();
  line->day = count->day;
  line->account_id = count->account_id;
  line->cents = over;
  line->category = STEAD_CASH_OVER_SHORT;
  line->note = g_steal_pointer (&reason);
  line->person_id = count->first_id;
  line->second_id = count->second_id;
  line->sale_id = count->sale_id;
  if (!stead_cash_write (store, line, error))
    return FALSE;
  count->line_id = line->id;
  return TRUE;
}

/* A line that the bank's is matched with, or that a later one corrects, holds the count. */
static gboolean
check_line_free (SteadStore            *store,
                 const SteadCashCount  *before,
                 GError               **error)
{
  g_autoptr(SteadCashLine) line = NULL;

  if (before->sale_id != 0)
    return stead_repo_refuse (error, _("This count closed a sale, and a till is counted once for it. "
                                       "Correct it by a line in the cash book."));
  if (before->line_id == 0)
    return TRUE;
  line = stead_cash_repo_get (store, before->line_id, error);
  if (line == NULL)
    return FALSE;
  if (line->bank_line_id != 0)
    return stead_repo_refuse (error, _("This line is matched with the bank's. Take the match away first."));
  return TRUE;
}

gboolean
stead_cash_count_repo_save (SteadStore      *store,
                            SteadCashCount  *count,
                            GError         **error)
{
  g_autoptr(SteadCashCount) before = NULL;
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && count != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_count (store, count, error))
    return FALSE;
  if (count->id != 0)
    {
      before = stead_cash_count_repo_get (store, count->id, error);
      if (before == NULL || !check_line_free (store, before, error) || !drop_line (store, before, error))
        return FALSE;
    }
  ids = stead_given_ids_new (&count->id);
  stead_given_ids_add (ids, &count->line_id);
  stead_given_ids_add (ids, &count->expected_cents);
  count->line_id = 0;
  return stead_given_ids_end (
    ids, stead_cash_repo_balance (store, count->account_id, STEAD_FUND_ANY, count->day, &count->expected_cents, error) &&
         write_line (store, count, error) &&
         write_count (store, count, error) &&
         write_pieces (store, count, error));
}

gboolean
stead_cash_count_repo_delete (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM cash_count WHERE id = ?1";
  g_autoptr(SteadCashCount) before = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  before = stead_cash_count_repo_get (store, id, error);
  return before != NULL &&
         check_line_free (store, before, error) &&
         drop_line (store, before, error) &&
         stead_repo_run_id (store, sql, id, error);
}

gint64
stead_cash_count_repo_deposit (SteadStore  *store,
                               gint64       count_id,
                               gint64       to_account,
                               SteadDay     day,
                               const char  *reference,
                               GError     **error)
{
  g_autoptr(SteadCashCount) count = NULL;
  SteadTransfer transfer = { .day = day, .to_account = to_account, .reference = reference };

  g_return_val_if_fail (STEAD_IS_STORE (store), 0);
  g_return_val_if_fail (stead_store_in_action (store), 0);
  count = stead_cash_count_repo_get (store, count_id, error);
  if (count == NULL)
    return 0;
  transfer.cents = stead_cash_count_deposit_cents (count);
  transfer.from_account = count->account_id;
  transfer.person_id = count->first_id;
  transfer.second_id = count->second_id;
  if (stead_cash_count_is_open (count))
    stead_repo_refuse (error, _("The count differs from the book. Write the reason first, then deposit."));
  else if (transfer.cents == 0)
    stead_repo_refuse (error, _("Nothing was counted above what stays in the box, so there is nothing to deposit."));
  else if (day < count->day)
    stead_repo_refuse (error, _("A deposit cannot be earlier than its count."));
  else
    return stead_cash_repo_transfer (store, &transfer, error);
  return 0;
}

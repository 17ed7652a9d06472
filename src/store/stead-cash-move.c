/* stead-cash-move.c - transfers, corrections and deletions of the cash book.
 *
 * The two halves of a transfer name each other, so that neither is ever changed or
 * taken back without the other.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-cash-private.h"

/* --- transfers ---------------------------------------------------------------------- */

static gboolean
set_pair (SteadStore  *store,
          gint64       id,
          gint64       pair_id,
          GError     **error)
{
  static const char sql[] = "UPDATE cash_line SET pair_id = ?2 WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_id (stmt, 2, pair_id);
  return stead_store_run (store, stmt, error);
}

/* Writes both lines and makes each name the other. */
static gboolean
write_pair (SteadStore     *store,
            SteadCashLine  *out,
            SteadCashLine  *in,
            GError        **error)
{
  if (!stead_cash_write (store, out, error))
    return FALSE;
  in->pair_id = out->id;
  if (!stead_cash_write (store, in, error))
    return FALSE;
  out->pair_id = in->id;
  return set_pair (store, out->id, in->id, error);
}

/* A half says what the transfer says, with its own sign and its own account. */
static void
fill_half (SteadCashLine        *line,
           const SteadTransfer  *transfer,
           gboolean              out)
{
  line->day = transfer->day;
  line->category = STEAD_CASH_TRANSFER;
  line->cents = out ? -transfer->cents : transfer->cents;
  line->account_id = out ? transfer->from_account : transfer->to_account;
  line->fund_id = out ? transfer->from_fund : transfer->to_fund;
  g_free (line->reference);
  line->reference = g_strdup (transfer->reference);
  g_free (line->note);
  line->note = g_strdup (transfer->note);
  line->person_id = transfer->person_id;
  line->second_id = transfer->second_id;
}

gboolean
stead_cash_repo_halves (SteadStore      *store,
                        gint64           id,
                        SteadCashLine  **out,
                        SteadCashLine  **in,
                        GError         **error)
{
  g_autoptr(SteadCashLine) line = NULL;
  g_autoptr(SteadCashLine) other = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL && in != NULL, FALSE);
  line = stead_cash_repo_get (store, id, error);
  if (line == NULL)
    return FALSE;
  other = stead_cash_repo_get (store, line->pair_id, error);
  if (other == NULL)
    return FALSE;
  *out = line->cents < 0 ? g_steal_pointer (&line) : g_steal_pointer (&other);
  *in = line != NULL ? g_steal_pointer (&line) : g_steal_pointer (&other);
  return TRUE;
}

/* What the bank, a count or a correction hangs on stays as it is. */
static gboolean
check_half (SteadStore           *store,
            const SteadCashLine  *before,
            const SteadTransfer  *transfer,
            gboolean              out,
            GError              **error)
{
  if (before->day == transfer->day &&
      before->cents == (out ? -transfer->cents : transfer->cents) &&
      before->account_id == (out ? transfer->from_account : transfer->to_account))
    return TRUE;
  return stead_cash_check_free (store, before, error);
}

static gboolean
check_transfer (SteadStore           *store,
                const SteadTransfer  *transfer,
                GError              **error)
{
  if (!stead_cash_check_day (store, transfer->day, error) ||
      !stead_cash_check_amount (transfer->cents, error) ||
      !stead_cash_check_account (store, transfer->from_account, transfer->day, error) ||
      !stead_cash_check_account (store, transfer->to_account, transfer->day, error) ||
      !stead_cash_check_fund (store, transfer->from_fund, transfer->day, error) ||
      !stead_cash_check_fund (store, transfer->to_fund, transfer->day, error) ||
      !stead_repo_check_note (transfer->reference, error) ||
      !stead_repo_check_note (transfer->note, error))
    return FALSE;
  if (transfer->cents < 0)
    return stead_repo_refuse (error, _("Enter the amount that is moved without a minus sign."));
  if (transfer->from_account == transfer->to_account && transfer->from_fund == transfer->to_fund)
    return stead_repo_refuse (error, _("Choose another account or another fund to move the money to."));
  if (transfer->person_id != 0 && transfer->person_id == transfer->second_id)
    return stead_repo_refuse (error, _("Two people handle money together. Choose another second person."));
  return TRUE;
}

gint64
stead_cash_repo_transfer (SteadStore           *store,
                          const SteadTransfer  *transfer,
                          GError              **error)
{
  g_autoptr(SteadCashLine) out = NULL;
  g_autoptr(SteadCashLine) in = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && transfer != NULL, 0);
  g_return_val_if_fail (stead_store_in_action (store), 0);
  if (!check_transfer (store, transfer, error))
    return 0;
  if (transfer->id == 0)
    {
      out = stead_cash_line_new ();
      in = stead_cash_line_new ();
    }
  else if (!stead_cash_repo_halves (store, transfer->id, &out, &in, error) ||
           !check_half (store, out, transfer, TRUE, error) ||
           !check_half (store, in, transfer, FALSE, error))
    return 0;
  fill_half (out, transfer, TRUE);
  fill_half (in, transfer, FALSE);
  return write_pair (store, out, in, error) ? out->id : 0;
}

/* --- corrections ---------------------------------------------------------------------- */

/* Takes @wrong back on @day; the new line, or %NULL with @error. */
static SteadCashLine *
reversal_new (const SteadCashLine *wrong,
              SteadDay             day,
              const char          *reason,
              gint64               person_id)
{
  SteadCashLine *line = stead_cash_line_copy (wrong);

  line->id = line->pair_id = line->picture_id = line->second_id = 0;
  line->corrected_by = line->bank_line_id = 0;
  line->day = day;
  line->cents = -wrong->cents;
  line->corrects_id = wrong->id;
  line->sale_id = 0;
  line->person_id = person_id;
  g_free (line->note);
  line->note = g_strdup (reason);
  return line;
}

static gboolean
check_wrong (SteadStore           *store,
             const SteadCashLine  *wrong,
             SteadDay              day,
             const char           *reason,
             GError              **error)
{
  static const char sql[] = "SELECT count (*) FROM cash_count WHERE line_id = ?1";
  g_autofree char *tidy = stead_repo_tidy (reason);
  gint64 n;

  if (tidy == NULL)
    return stead_repo_refuse (error, _("Write why the line is corrected."));
  if (!stead_repo_check_note (tidy, error) ||
      !stead_cash_check_day (store, day, error) ||
      !stead_cash_check_account (store, wrong->account_id, day, error))
    return FALSE;
  if (day < wrong->day)
    return stead_repo_refuse (error, _("A correction cannot be earlier than the line that it corrects."));
  if (wrong->corrected_by != 0)
    return stead_repo_refuse (error, _("This line was corrected by a later one. Correct that one instead."));
  n = stead_repo_count_id (store, sql, wrong->id, error);
  if (n > 0)
    return stead_repo_refuse (error, _("This line belongs to a count. Count again and give the reason there."));
  return n == 0;
}

/* Both halves are taken back, each naming its own. */
static gboolean
correct_transfer (SteadStore           *store,
                  const SteadCashLine  *wrong,
                  SteadDay              day,
                  const char           *reason,
                  gint64                person_id,
                  GError              **error)
{
  g_autoptr(SteadCashLine) other = stead_cash_repo_get (store, wrong->pair_id, error);
  g_autoptr(SteadCashLine) first = NULL;
  g_autoptr(SteadCashLine) second = NULL;

  if (other == NULL || !check_wrong (store, other, day, reason, error))
    return FALSE;
  first = reversal_new (wrong, day, reason, person_id);
  second = reversal_new (other, day, reason, person_id);
  return write_pair (store, first, second, error);
}

gboolean
stead_cash_repo_correct (SteadStore     *store,
                         gint64          id,
                         SteadDay        day,
                         SteadCashLine  *right,
                         const char     *reason,
                         gint64          person_id,
                         GError        **error)
{
  g_autoptr(SteadCashLine) wrong = NULL;
  g_autoptr(SteadCashLine) back = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  wrong = stead_cash_repo_get (store, id, error);
  if (wrong == NULL || !check_wrong (store, wrong, day, reason, error))
    return FALSE;
  if (wrong->pair_id != 0)
    {
      g_return_val_if_fail (right == NULL, FALSE);
      return correct_transfer (store, wrong, day, reason, person_id, error);
    }
  back = reversal_new (wrong, day, reason, person_id);
  if (!stead_cash_write (store, back, error))
    return FALSE;
  if (right == NULL)
    return TRUE;
  right->id = 0;
  right->day = day;
  right->corrects_id = wrong->id;
  right->sale_id = 0;
  return stead_cash_repo_save (store, right, error);
}

/* --- deleting --------------------------------------------------------------------------- */

/* The other half must be as free as the one that is deleted. */
static gboolean
delete_pair (SteadStore           *store,
             const SteadCashLine  *line,
             GError              **error)
{
  g_autoptr(SteadCashLine) other = stead_cash_repo_get (store, line->pair_id, error);

  return other != NULL &&
         stead_cash_check_free (store, other, error) &&
         set_pair (store, line->id, 0, error) &&
         stead_cash_remove (store, other->id, error) &&
         stead_cash_remove (store, line->id, error);
}

static gboolean
remove_picture (SteadStore  *store,
                gint64       id,
                GError     **error)
{
  static const char sql[] =
    "DELETE FROM picture WHERE id = ?1"
    " AND NOT EXISTS (SELECT 1 FROM cash_line WHERE picture_id = ?1)"
    " AND NOT EXISTS (SELECT 1 FROM receipt_picture WHERE picture_id = ?1)"
    " AND NOT EXISTS (SELECT 1 FROM batch_note WHERE picture_id = ?1)";

  return id == 0 || stead_repo_run_id (store, sql, id, error);
}

gboolean
stead_cash_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  g_autoptr(SteadCashLine) line = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  line = stead_cash_repo_get (store, id, error);
  if (line == NULL || !stead_cash_check_free (store, line, error))
    return FALSE;
  if (line->pair_id != 0)
    return delete_pair (store, line, error);
  return stead_cash_remove (store, id, error) && remove_picture (store, line->picture_id, error);
}

/* --- pictures of receipts ----------------------------------------------------------------- */

GArray *
stead_receipt_picture_repo_list (SteadStore  *store,
                                 gint64       receipt_id,
                                 GError     **error)
{
  static const char sql[] = "SELECT picture_id FROM receipt_picture WHERE receipt_id = ?1 ORDER BY picture_id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_ids_of (store, sql, receipt_id, error);
}

static gboolean
run_picture (SteadStore  *store,
             const char  *sql,
             gint64       receipt_id,
             gint64       picture_id,
             GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, receipt_id);
  sqlite3_bind_int64 (stmt, 2, picture_id);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_receipt_picture_repo_add (SteadStore  *store,
                                gint64       receipt_id,
                                gint64       picture_id,
                                GError     **error)
{
  static const char sql[] = "INSERT INTO receipt_picture (receipt_id, picture_id) VALUES (?1, ?2)";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return run_picture (store, sql, receipt_id, picture_id, error);
}

gboolean
stead_receipt_picture_repo_remove (SteadStore  *store,
                                   gint64       receipt_id,
                                   gint64       picture_id,
                                   GError     **error)
{
  static const char sql[] = "DELETE FROM receipt_picture WHERE receipt_id = ?1 AND picture_id = ?2";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return run_picture (store, sql, receipt_id, picture_id, error) && remove_picture (store, picture_id, error);
}

/* stead-closing-repo.c - days whose books are closed. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-closing-repo.h"
#include "store/stead-repo-private.h"

void
stead_closing_free (SteadClosing *closing)
{
  if (closing == NULL)
    return;
  g_free (closing->note);
  g_free (closing);
}

static gpointer
closing_from_row (SteadStmt *stmt)
{
  SteadClosing *closing = g_new0 (SteadClosing, 1);

  closing->id = sqlite3_column_int64 (stmt, 0);
  closing->through_day = stead_stmt_day (stmt, 1);
  closing->closed_on = stead_stmt_day (stmt, 2);
  closing->person_id = sqlite3_column_int64 (stmt, 3);
  closing->note = stead_stmt_text (stmt, 4);
  return closing;
}

GPtrArray *
stead_closing_repo_list (SteadStore  *store,
                         GError     **error)
{
  static const char sql[] = "SELECT id, through_day, closed_on, person_id, note FROM closing"
                            " ORDER BY through_day DESC";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL
         ? stead_repo_rows (store, stmt, closing_from_row, (GDestroyNotify) stead_closing_free, error) : NULL;
}

gboolean
stead_closing_repo_last (SteadStore  *store,
                         SteadDay    *out,
                         GError     **error)
{
  static const char sql[] = "SELECT max (through_day) FROM closing";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 day;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL || !stead_repo_number (store, stmt, STEAD_DAY_NONE, &day, error))
    return FALSE;
  *out = (SteadDay) day;
  return TRUE;
}

gboolean
stead_closing_repo_bars (SteadStore        *store,
                         SteadDay           through_day,
                         SteadClosingBars  *out,
                         GError           **error)
{
  static const char counts_sql[] =
    "SELECT count (*) FROM cash_count c WHERE c.day <= ?1 AND c.line_id IS NULL AND c.expected_cents <>"
    " (SELECT coalesce (sum (face_cents * pieces), 0) FROM cash_count_piece WHERE count_id = c.id)";
  static const char sheets_sql[] =
    "SELECT count (*) FROM bank_sheet WHERE through_day <= ?1 AND agreed_on IS NULL";

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  out->open_counts = stead_repo_count_id (store, counts_sql, through_day, error);
  if (out->open_counts < 0)
    return FALSE;
  out->open_sheets = stead_repo_count_id (store, sheets_sql, through_day, error);
  return out->open_sheets >= 0;
}

/* --- closing -------------------------------------------------------------------------------- */

static gboolean
check_day (SteadStore  *store,
           SteadDay     through_day,
           GError     **error)
{
  g_autofree char *when = NULL;
  SteadDay last;

  if (!stead_closing_repo_last (store, &last, error))
    return FALSE;
  if (through_day == STEAD_DAY_NONE || through_day >= stead_store_get_today (store))
    return stead_repo_refuse (error, _("Only days that are over can be closed. Choose a day before today."));
  if (last == STEAD_DAY_NONE || through_day > last)
    return TRUE;
  when = stead_day_format (last, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, _("The books are closed through %s already. Choose a later day."), when);
}

static gboolean
check_advisor (SteadStore  *store,
               gint64       id,
               GError     **error)
{
  static const char sql[] = "SELECT role = 'advisor' AND left_on IS NULL FROM person WHERE id = ?1";
  gint64 may = stead_repo_count_id (store, sql, id, error);

  if (may == 0)
    return stead_repo_refuse (error, _("Only an advisor closes the books. Choose an advisor."));
  return may == 1;
}

static gboolean
check_bars (SteadStore  *store,
            SteadDay     through_day,
            GError     **error)
{
  SteadClosingBars bars;

  if (!stead_closing_repo_bars (store, through_day, &bars, error))
    return FALSE;
  if (bars.open_counts > 0)
    return stead_repo_refuse (error, ngettext ("%d count of money differs from the book and has no reason yet. "
                                               "Write the reason first.",
                                               "%d counts of money differ from the book and have no reason yet. "
                                               "Write the reasons first.", (gulong) bars.open_counts),
                              (int) bars.open_counts);
  if (bars.open_sheets > 0)
    return stead_repo_refuse (error, ngettext ("%d statement of an account does not agree with the book yet. "
                                               "Make it agree first.",
                                               "%d statements of accounts do not agree with the book yet. "
                                               "Make them agree first.", (gulong) bars.open_sheets),
                              (int) bars.open_sheets);
  return TRUE;
}

gboolean
stead_closing_repo_close (SteadStore  *store,
                          SteadDay     through_day,
                          gint64       advisor_id,
                          const char  *note,
                          GError     **error)
{
  static const char sql[] = "INSERT INTO closing (through_day, closed_on, person_id, note) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_day (store, through_day, error) ||
      !check_advisor (store, advisor_id, error) ||
      !check_bars (store, through_day, error) ||
      !stead_repo_check_note (note, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_day (stmt, 1, through_day);
  stead_stmt_bind_day (stmt, 2, stead_store_get_today (store));
  sqlite3_bind_int64 (stmt, 3, advisor_id);
  stead_repo_bind_tidy (stmt, 4, note);
  return stead_store_run (store, stmt, error);
}

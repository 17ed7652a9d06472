/* stead-verify-seals.c - is what was signed as it was then, and all there? */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-seal.h"
#include "store/stead-verify-private.h"

#define DAY(column) STEAD_VERIFY_DAY (column)

static gboolean
check_receipt_seal (SteadVerifyReport  *report,
                    sqlite3_stmt       *stmt,
                    const char         *previous,
                    GError            **error)
{
  g_autofree char *seal = stead_seal_compute (report->db, sqlite3_column_int64 (stmt, 0),
                                              sqlite3_column_int64 (stmt, 1), previous,
                                              sqlite3_column_int64 (stmt, 3), sqlite3_column_int (stmt, 4), error);

  if (seal == NULL)
    return FALSE;
  if (!g_str_equal (seal, stead_verify_text (stmt, 2)))
    g_ptr_array_add (report->found,
                     g_strdup_printf (_("The receipt from %s of %s is not as it was when it was signed."),
                                      stead_verify_text (stmt, 5), stead_verify_text (stmt, 6)));
  return TRUE;
}

/* Of one thing that is signed: looks at a row, and tells of one that is missing before it. */
typedef struct
{
  const char  *sql;      /* id, number, seal …, by number */
  gboolean   (*check) (SteadVerifyReport *report, sqlite3_stmt *stmt, const char *previous, GError **error);
  char      *(*tell_gap) (sqlite3_stmt *stmt);
} Seals;

/* The seals of a chain: each carries the one before it, and no number is missing. */
static gboolean
check_chain (SteadVerifyReport  *report,
             const Seals        *seals,
             GError            **error)
{
  g_autoptr(sqlite3_stmt) stmt = NULL;
  g_autofree char *previous = NULL;
  gint64 expected = 1;
  int rc = sqlite3_prepare_v2 (report->db, seals->sql, -1, &stmt, NULL);

  while (rc == SQLITE_OK && (rc = sqlite3_step (stmt)) == SQLITE_ROW)
    {
      gint64 no = sqlite3_column_int64 (stmt, 1);

      rc = SQLITE_OK;
      if (no != expected)
        g_ptr_array_add (report->found, seals->tell_gap (stmt));
      else if (!seals->check (report, stmt, previous, error))
        return FALSE;
      g_free (previous);
      previous = g_strdup (stead_verify_text (stmt, 2));
      expected = no + 1;
    }
  return rc == SQLITE_OK || rc == SQLITE_DONE || stead_verify_note_failure (report, rc, error);
}

static char *
tell_receipt_gap (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A signed receipt is missing before the one from %s of %s."),
                          stead_verify_text (stmt, 5), stead_verify_text (stmt, 6));
}

static gboolean
check_receipts (SteadVerifyReport  *report,
                GError            **error)
{
  static const Seals receipts = {
    "SELECT id, seal_no, seal, signed_by, signed_on, supplier, " DAY ("day")
    " FROM receipt WHERE seal_no IS NOT NULL ORDER BY seal_no",
    check_receipt_seal, tell_receipt_gap
  };

  return check_chain (report, &receipts, error);
}

/* The same chain of the checklists. */
static gboolean
check_list_seal (SteadVerifyReport  *report,
                 sqlite3_stmt       *stmt,
                 const char         *previous,
                 GError            **error)
{
  const SteadListSeal signature = { .list_id = sqlite3_column_int64 (stmt, 0), .no = sqlite3_column_int64 (stmt, 1),
                                    .previous = previous, .person_id = sqlite3_column_int64 (stmt, 3),
                                    .at = sqlite3_column_int64 (stmt, 4), .last_reading = sqlite3_column_int64 (stmt, 5),
                                    .last_action = sqlite3_column_int64 (stmt, 6) };
  g_autofree char *seal = stead_seal_compute_list (report->db, &signature, error);

  if (seal == NULL)
    return FALSE;
  if (!g_str_equal (seal, stead_verify_text (stmt, 2)))
    g_ptr_array_add (report->found,
                     g_strdup_printf (_("The checklist “%s” of %s is not as it was when it was signed."),
                                      stead_verify_text (stmt, 7), stead_verify_text (stmt, 8)));
  return TRUE;
}

static char *
tell_list_gap (sqlite3_stmt *stmt)
{
  return g_strdup_printf (_("A signed checklist is missing before “%s” of %s."), stead_verify_text (stmt, 7), stead_verify_text (stmt, 8));
}

static gboolean
check_lists (SteadVerifyReport  *report,
             GError            **error)
{
  static const Seals lists = {
    "SELECT id, seal_no, seal, signed_by, signed_at, seal_reading, seal_action, name, " DAY ("day")
    " FROM checklist WHERE seal_no IS NOT NULL ORDER BY seal_no",
    check_list_seal, tell_list_gap
  };

  return check_chain (report, &lists, error);
}

gboolean
stead_verify_seals (SteadVerifyReport  *report,
                    GError            **error)
{
  return check_receipts (report, error) && check_lists (report, error);
}

/* stead-overhead-repo.c - the rate by which cost that belongs to no one batch is charged. */
#include "config.h"

#include "store/stead-overhead-repo.h"

#include <glib/gi18n-lib.h>

#include "store/stead-repo-private.h"

static const char * const base_words[] = { "none", "hours", "space", "money", NULL };

gboolean
stead_overhead_repo_get (SteadStore     *store,
                         SteadOverhead  *out,
                         GError        **error)
{
  static const char sql[] = "SELECT base, planned_cents, planned_base FROM overhead WHERE id = 1";
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL || (found = stead_store_step (store, stmt, error)) < 0)
    return FALSE;
  *out = (SteadOverhead) { STEAD_OVERHEAD_NONE, 0, 0 };
  if (found == 1)
    *out = (SteadOverhead) { (SteadOverheadBase) stead_repo_word (stmt, 0, base_words), sqlite3_column_int64 (stmt, 1),
                             sqlite3_column_double (stmt, 2) };
  return TRUE;
}

static gboolean
check_overhead (const SteadOverhead  *overhead,
                GError              **error)
{
  if (!stead_repo_check_cents (_("Overhead of a year"), overhead->planned_cents, error))
    return FALSE;
  if (!(overhead->planned_base > 0 && overhead->planned_base <= (double) STEAD_CENTS_MAX))
    return stead_repo_refuse (error, _("Enter how many hours, how much space or how much other cost a year has, above zero: the "
                                       "overhead is spread over it."));
  return TRUE;
}

gboolean
stead_overhead_repo_set (SteadStore           *store,
                         const SteadOverhead  *overhead,
                         GError              **error)
{
  static const char drop[] = "DELETE FROM overhead WHERE id = ?1";
  static const char sql[] = "INSERT INTO overhead (id, base, planned_cents, planned_base) VALUES (1, ?1, ?2, ?3)"
                            " ON CONFLICT (id) DO UPDATE SET base = excluded.base, planned_cents = excluded.planned_cents,"
                            " planned_base = excluded.planned_base";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && overhead != NULL && stead_store_in_action (store), FALSE);
  if (overhead->base == STEAD_OVERHEAD_NONE)
    return stead_repo_run_id (store, drop, 1, error);
  if (!check_overhead (overhead, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, base_words[overhead->base]);
  sqlite3_bind_int64 (stmt, 2, overhead->planned_cents);
  sqlite3_bind_double (stmt, 3, overhead->planned_base);
  return stead_store_run (store, stmt, error);
}

/* stead-build-money-repo.c - money for a build: grants and pledges. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-build-money-repo.h"
#include "store/stead-build-private.h"
#include "store/stead-repo-private.h"

static void
bind_part (SteadStmt *stmt,
           int        at,
           int        part)
{
  stead_stmt_bind_text (stmt, at, part >= 0 && part < STEAD_N_BUILD_PARTS ? stead_build_part_words[part] : NULL);
}

static int
read_part (SteadStmt *stmt,
           int        at)
{
  if (sqlite3_column_type (stmt, at) == SQLITE_NULL)
    return STEAD_BUILD_PART_ANY;
  return stead_repo_word (stmt, at, stead_build_part_words);
}

/* --- grants ----------------------------------------------------------------------- */

GArray *
stead_build_grant_repo_list (SteadStore  *store,
                             gint64       build_id,
                             GError     **error)
{
  static const char sql[] = "SELECT fund_id, part, use_by FROM build_grant WHERE build_id = ?1 ORDER BY fund_id";
  g_autoptr(GArray) grants = g_array_new (FALSE, FALSE, sizeof (SteadBuildGrant));
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, build_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadBuildGrant grant = { sqlite3_column_int64 (stmt, 0), read_part (stmt, 1), stead_stmt_day (stmt, 2) };

      g_array_append_val (grants, grant);
    }
  return found == 0 ? g_steal_pointer (&grants) : NULL;
}

static gboolean
write_grant (SteadStore             *store,
             gint64                  build_id,
             const SteadBuildGrant  *grant,
             GError                **error)
{
  static const char sql[] = "INSERT INTO build_grant (build_id, fund_id, part, use_by) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, build_id);
  sqlite3_bind_int64 (stmt, 2, grant->fund_id);
  bind_part (stmt, 3, grant->part);
  stead_stmt_bind_day (stmt, 4, grant->use_by);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_build_grant_repo_set (SteadStore             *store,
                            gint64                  build_id,
                            const SteadBuildGrant  *grants,
                            gsize                   n,
                            GError                **error)
{
  static const char drop_sql[] = "DELETE FROM build_grant WHERE build_id = ?1";
  static const char own_sql[] = "SELECT coalesce (fund_id, 0) FROM build WHERE id = ?1";
  gint64 own;

  g_return_val_if_fail (STEAD_IS_STORE (store) && (grants != NULL || n == 0), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  own = stead_repo_count_id (store, own_sql, build_id, error);
  if (own < 0 || !stead_repo_run_id (store, drop_sql, build_id, error))
    return FALSE;
  for (gsize i = 0; i < n; i++)
    {
      if (grants[i].fund_id == own)
        return stead_repo_refuse (error, _("This fund holds the free money for the build. A grant is another fund."));
      if (!write_grant (store, build_id, &grants[i], error))
        return FALSE;
    }
  return TRUE;
}

/* --- pledges ---------------------------------------------------------------------- */

SteadBuildPledge *
stead_build_pledge_new (void)
{
  SteadBuildPledge *pledge = g_new0 (SteadBuildPledge, 1);

  pledge->chance = 0.8;
  pledge->pledged_on = pledge->due_on = pledge->withdrawn_on = STEAD_DAY_NONE;
  pledge->part = STEAD_BUILD_PART_ANY;
  return pledge;
}

void
stead_build_pledge_free (SteadBuildPledge *pledge)
{
  if (pledge == NULL)
    return;
  g_free (pledge->who);
  g_free (pledge->note);
  g_free (pledge);
}

static gpointer
pledge_from_row (SteadStmt *stmt)
{
  SteadBuildPledge *pledge = stead_build_pledge_new ();

  pledge->id = sqlite3_column_int64 (stmt, 0);
  pledge->build_id = sqlite3_column_int64 (stmt, 1);
  pledge->who = stead_stmt_text (stmt, 2);
  pledge->cents = sqlite3_column_int64 (stmt, 3);
  pledge->chance = sqlite3_column_double (stmt, 4);
  pledge->pledged_on = stead_stmt_day (stmt, 5);
  pledge->due_on = stead_stmt_day (stmt, 6);
  pledge->part = read_part (stmt, 7);
  pledge->cash_line_id = sqlite3_column_int64 (stmt, 8);
  pledge->withdrawn_on = stead_stmt_day (stmt, 9);
  pledge->note = stead_stmt_text (stmt, 10);
  pledge->received_cents = sqlite3_column_int64 (stmt, 11);
  return pledge;
}

GPtrArray *
stead_build_pledge_repo_list (SteadStore  *store,
                              gint64       build_id,
                              GError     **error)
{
  static const char sql[] =
    "SELECT p.id, p.build_id, p.who, p.cents, p.chance, p.pledged_on, p.due_on, p.part, p.cash_line_id,"
    " p.withdrawn_on, p.note, coalesce (c.cents, 0) FROM build_pledge p LEFT JOIN cash_line c ON c.id = p.cash_line_id"
    " WHERE p.build_id = ?1 ORDER BY p.due_on, p.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, build_id, pledge_from_row, (GDestroyNotify) stead_build_pledge_free,
                             error);
}

/* What all others stand for together. */
static gboolean
others_cents (SteadStore              *store,
              const SteadBuildPledge  *pledge,
              gint64                  *out,
              GError                 **error)
{
  static const char sql[] = "SELECT coalesce (sum (cents), 0) FROM build_pledge"
                            " WHERE build_id = ?1 AND id <> ?2 AND withdrawn_on IS NULL";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, pledge->build_id);
  sqlite3_bind_int64 (stmt, 2, pledge->id);
  return stead_repo_number (store, stmt, 0, out, error);
}

static gboolean
check_pledge (SteadStore              *store,
              const SteadBuildPledge  *pledge,
              gint64                   goal_cents,
              GError                 **error)
{
  gint64 others = 0;

  if (!stead_repo_check_name (pledge->who, error) || !stead_repo_check_note (pledge->note, error))
    return FALSE;
  if (pledge->cents <= 0 || pledge->cents > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("Enter the sum that was promised, above zero."));
  if (!(pledge->chance >= 0 && pledge->chance <= 1))
    return stead_repo_refuse (error, _("Enter how likely it is that it comes, between 0 and 100 %%."));
  if (pledge->pledged_on == STEAD_DAY_NONE || pledge->pledged_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("A pledge was made today or before. Check the date."));
  if (pledge->due_on == STEAD_DAY_NONE || pledge->due_on < pledge->pledged_on)
    return stead_repo_refuse (error, _("A pledge is due after it was made. Check the date."));
  if (!others_cents (store, pledge, &others, error))
    return FALSE;
  if (goal_cents > 0 && pledge->withdrawn_on == STEAD_DAY_NONE && others + pledge->cents > goal_cents)
    return stead_repo_refuse (error, _("All pledges together would be more than the whole build costs. Check the sum, or ask the giver what else it may be used for."));
  return TRUE;
}

static void
bind_pledge (SteadStmt              *stmt,
             const SteadBuildPledge *pledge)
{
  sqlite3_bind_int64 (stmt, 1, pledge->build_id);
  stead_repo_bind_tidy (stmt, 2, pledge->who);
  sqlite3_bind_int64 (stmt, 3, pledge->cents);
  sqlite3_bind_double (stmt, 4, pledge->chance);
  stead_stmt_bind_day (stmt, 5, pledge->pledged_on);
  stead_stmt_bind_day (stmt, 6, pledge->due_on);
  bind_part (stmt, 7, pledge->part);
  stead_stmt_bind_id (stmt, 8, pledge->cash_line_id);
  stead_stmt_bind_day (stmt, 9, pledge->withdrawn_on);
  stead_repo_bind_tidy (stmt, 10, pledge->note);
}

gboolean
stead_build_pledge_repo_save (SteadStore        *store,
                              SteadBuildPledge  *pledge,
                              gint64             goal_cents,
                              GError           **error)
{
  static const char insert_sql[] =
    "INSERT INTO build_pledge (build_id, who, cents, chance, pledged_on, due_on, part, cash_line_id, withdrawn_on, note)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
  static const char update_sql[] =
    "UPDATE build_pledge SET build_id = ?1, who = ?2, cents = ?3, chance = ?4, pledged_on = ?5, due_on = ?6,"
    " part = ?7, cash_line_id = ?8, withdrawn_on = ?9, note = ?10 WHERE id = ?11";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && pledge != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!check_pledge (store, pledge, goal_cents, error))
    return FALSE;
  stmt = stead_store_prepare (store, pledge->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  bind_pledge (stmt, pledge);
  return stead_repo_save_row (store, stmt, &pledge->id, error);
}

/* Money that is bound to a part lies in a fund that is bound to it, too. */
static gboolean
check_bound (SteadStore              *store,
             const SteadBuildPledge  *pledge,
             gint64                   fund_id,
             GError                 **error)
{
  g_autoptr(GArray) grants = NULL;

  if (pledge->part < 0)
    return TRUE;
  grants = stead_build_grant_repo_list (store, pledge->build_id, error);
  if (grants == NULL)
    return FALSE;
  for (guint i = 0; i < grants->len; i++)
    if (g_array_index (grants, SteadBuildGrant, i).fund_id == fund_id &&
        g_array_index (grants, SteadBuildGrant, i).part == pledge->part)
      return TRUE;
  return stead_repo_refuse (error, _("This pledge is bound to one part of the build. Choose the fund of a grant that is bound to the same part, so that it is kept apart."));
}

gboolean
stead_build_pledge_repo_receive (SteadStore        *store,
                                 SteadBuildPledge  *pledge,
                                 SteadCashLine     *cash,
                                 GError           **error)
{
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && pledge != NULL && pledge->id != 0 && cash != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (pledge->cash_line_id != 0)
    return stead_repo_refuse (error, _("This pledge was received before."));
  if (pledge->withdrawn_on != STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("This pledge was taken back."));
  if (!check_bound (store, pledge, cash->fund_id, error))
    return FALSE;
  cash->category = STEAD_CASH_GRANT;
  g_free (cash->who);
  cash->who = g_strdup (pledge->who);
  ids = stead_given_ids_new (&cash->id);
  stead_given_ids_add (ids, &pledge->cash_line_id);
  if (!stead_cash_repo_save (store, cash, error))
    return stead_given_ids_end (ids, FALSE);
  pledge->cash_line_id = cash->id;
  return stead_given_ids_end (ids, stead_build_pledge_repo_save (store, pledge, 0, error));
}

gboolean
stead_build_pledge_repo_delete (SteadStore  *store,
                                gint64       id,
                                GError     **error)
{
  static const char sql[] = "DELETE FROM build_pledge WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

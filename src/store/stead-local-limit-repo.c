/* stead-local-limit-repo.c - stricter rules of the school or the health department. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-check-private.h"

void
stead_local_limit_free (SteadLocalLimit *limit)
{
  if (limit == NULL)
    return;
  g_free (limit->limit_id);
  g_free (limit->unit);
  g_free (limit->source);
  g_free (limit->where);
  g_free (limit->version);
  g_free (limit);
}

#define COLUMNS "id, limit_id, value, unit, time_s, source, source_where, version, from_day, retired_on"

static gpointer
limit_from_row (SteadStmt *stmt)
{
  SteadLocalLimit *limit = g_new0 (SteadLocalLimit, 1);

  limit->id = sqlite3_column_int64 (stmt, 0);
  limit->limit_id = stead_stmt_text (stmt, 1);
  limit->value = sqlite3_column_double (stmt, 2);
  limit->unit = stead_stmt_text (stmt, 3);
  limit->time_s = stead_stmt_real (stmt, 4);
  limit->source = stead_stmt_text (stmt, 5);
  limit->where = stead_stmt_text (stmt, 6);
  limit->version = stead_stmt_text (stmt, 7);
  limit->from_day = stead_stmt_day (stmt, 8);
  limit->retired_on = stead_stmt_day (stmt, 9);
  return limit;
}

GPtrArray *
stead_local_limit_repo_list (SteadStore  *store,
                             SteadDay     day,
                             GError     **error)
{
  static const char sql[] = "SELECT " COLUMNS " FROM local_limit WHERE ?1 IS NULL"
                            " OR (from_day <= ?1 AND (retired_on IS NULL OR retired_on > ?1)) ORDER BY limit_id, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_day (stmt, 1, day);
  return stead_repo_rows (store, stmt, limit_from_row, (GDestroyNotify) stead_local_limit_free, error);
}

static gboolean
put_into (SteadLimitTable        *table,
          const SteadLocalLimit  *limit,
          GError                **error)
{
  /* A table wants to know where in the source; a rule of the school has no paragraphs. */
  const SteadLimitLocal local = { limit->limit_id, limit->value, limit->time_s, limit->source,
                                  limit->where != NULL ? limit->where : limit->source, limit->version };
  g_autoptr(GError) problem = NULL;

  if (stead_limit_table_add_local (table, &local, &problem))
    return TRUE;
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID, problem->message);
  return FALSE;
}

gboolean
stead_local_limit_repo_apply (SteadStore       *store,
                              SteadDay          day,
                              SteadLimitTable  *table,
                              GError          **error)
{
  g_autoptr(GPtrArray) limits = NULL;

  g_return_val_if_fail (table != NULL && day != STEAD_DAY_NONE, FALSE);
  limits = stead_local_limit_repo_list (store, day, error);
  for (guint i = 0; limits != NULL && i < limits->len; i++)
    {
      /* A row that a newer program made stricter still, or no longer has, stands as shipped. */
      if (!put_into (table, limits->pdata[i], NULL))
        g_debug ("local limit “%s” is passed over", ((const SteadLocalLimit *) limits->pdata[i])->limit_id);
    }
  return limits != NULL;
}

/* --- saving ------------------------------------------------------------------------------- */

/* In a table of one row, so that the shipped one stays as it is. */
static gboolean
check_stricter (const SteadLocalLimit  *limit,
                const SteadLimitTable  *shipped,
                GError                **error)
{
  const SteadLimit *row = stead_limit_table_by_id (shipped, limit->limit_id);
  const SteadLimitLocal local = { limit->limit_id, limit->value, limit->time_s, limit->source,
                                  limit->where != NULL ? limit->where : limit->source, limit->version };
  g_autoptr(GError) problem = NULL;

  if (row == NULL)
    return stead_repo_refuse (error, _("The tables have no limit called “%s”."), limit->limit_id);
  if (g_strcmp0 (row->unit, limit->unit) != 0)
    return stead_repo_refuse (error, _("Enter the stricter limit in the unit of the table: %s."), row->unit);
  if (stead_limit_check_local (shipped, &local, &problem))
    return TRUE;
  g_set_error_literal (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_INVALID, problem->message);
  return FALSE;
}

static gboolean
check_texts (const SteadLocalLimit  *limit,
             GError                **error)
{
  g_autofree char *source = stead_repo_tidy (limit->source);

  if (source == NULL)
    return stead_repo_refuse (error, _("Enter who says so: the health department, the school, with the paper it is in."));
  if (limit->from_day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day from which it holds."));
  return stead_repo_check_note (limit->source, error) && stead_repo_check_note (limit->where, error) &&
         stead_repo_check_note (limit->version, error);
}

/* The rule before it holds until the day before, and not below one day. */
static gboolean
retire_before (SteadStore             *store,
               const SteadLocalLimit  *limit,
               GError                **error)
{
  static const char sql[] = "UPDATE local_limit SET retired_on = max (?2, from_day)"
                            " WHERE limit_id = ?1 AND retired_on IS NULL";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, limit->limit_id);
  stead_stmt_bind_day (stmt, 2, limit->from_day);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_local_limit_repo_save (SteadStore             *store,
                             SteadLocalLimit        *limit,
                             const SteadLimitTable  *shipped,
                             GError                **error)
{
  static const char sql[] =
    "INSERT INTO local_limit (limit_id, value, unit, time_s, source, source_where, version, from_day)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && limit != NULL && limit->id == 0 && shipped != NULL, FALSE);
  g_return_val_if_fail (limit->limit_id != NULL && stead_store_in_action (store), FALSE);
  if (!isfinite (limit->value))
    return stead_repo_refuse (error, _("Enter the stricter limit."));
  if (!check_texts (limit, error) || !check_stricter (limit, shipped, error) || !retire_before (store, limit, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_text (stmt, 1, limit->limit_id);
  sqlite3_bind_double (stmt, 2, limit->value);
  stead_stmt_bind_text (stmt, 3, limit->unit);
  stead_stmt_bind_real (stmt, 4, limit->time_s);
  stead_repo_bind_tidy (stmt, 5, limit->source);
  stead_repo_bind_tidy (stmt, 6, limit->where);
  stead_repo_bind_tidy (stmt, 7, limit->version);
  stead_stmt_bind_day (stmt, 8, limit->from_day);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  limit->id = stead_store_last_id (store);
  limit->retired_on = STEAD_DAY_NONE;
  return TRUE;
}

gboolean
stead_local_limit_repo_retire (SteadStore  *store,
                               gint64       id,
                               GError     **error)
{
  static const char there_sql[] = "SELECT count (*) FROM local_limit WHERE id = ?1";
  static const char sql[] = "UPDATE local_limit SET retired_on = max (?2, from_day) WHERE id = ?1 AND retired_on IS NULL";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 there;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  there = stead_repo_count_id (store, there_sql, id, error);
  if (there <= 0)
    return there == 0 ? stead_repo_missing (error) : FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_day (stmt, 2, stead_store_get_today (store));
  return stead_store_run (store, stmt, error);
}

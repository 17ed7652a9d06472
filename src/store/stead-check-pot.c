/* stead-check-pot.c - the pots of a line that cools. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-check-pot.h"
#include "store/stead-check-private.h"

/* Deeper than any pot of a school kitchen. */
#define DEPTH_MOST_M 2

static gboolean
check_pot (const char  *name,
           const char  *method,
           double       depth_m,
           GError     **error)
{
  if (!stead_repo_check_name (name, error) || !stead_repo_check_note (method, error))
    return FALSE;
  if (!isnan (depth_m) && !(depth_m > 0 && depth_m <= DEPTH_MOST_M))
    return stead_repo_refuse (error, _("The food is not that deep. Check the depth."));
  return TRUE;
}

/* The pot is of that line. */
static gboolean
check_of_line (SteadStore  *store,
               gint64       pot_id,
               gint64       line_id,
               GError     **error)
{
  static const char sql[] = "SELECT line_id FROM check_pot WHERE id = ?1";
  gint64 of = stead_repo_count_id (store, sql, pot_id, error);

  return of == line_id || (of >= 0 && stead_repo_missing (error));
}

static gboolean
write_pot (SteadStore  *store,
           gint64       line_id,
           gint64      *pot_id,
           const char  *name,
           const char  *method,
           double       depth_m,
           GError     **error)
{
  static const char insert_sql[] = "INSERT INTO check_pot (line_id, name, method, depth_m) VALUES (?1, ?2, ?3, ?4)";
  static const char update_sql[] = "UPDATE check_pot SET line_id = ?1, name = ?2, method = ?3, depth_m = ?4 WHERE id = ?5";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, *pot_id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, line_id);
  stead_repo_bind_tidy (stmt, 2, name);
  stead_repo_bind_tidy (stmt, 3, method);
  stead_stmt_bind_real (stmt, 4, depth_m);
  if (*pot_id != 0)
    sqlite3_bind_int64 (stmt, 5, *pot_id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (*pot_id == 0)
    *pot_id = stead_store_last_id (store);
  return TRUE;
}

gboolean
stead_check_repo_save_pot (SteadStore  *store,
                           gint64       line_id,
                           gint64      *pot_id,
                           const char  *name,
                           const char  *method,
                           double       depth_m,
                           GError     **error)
{
  g_autoptr(SteadCheckList) list = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && pot_id != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  list = stead_check_open_line (store, line_id, error);
  return list != NULL &&
         check_pot (name, method, depth_m, error) &&
         (*pot_id == 0 || check_of_line (store, *pot_id, line_id, error)) &&
         write_pot (store, line_id, pot_id, name, method, depth_m, error);
}

gboolean
stead_check_repo_delete_pot (SteadStore  *store,
                             gint64       pot_id,
                             GError     **error)
{
  static const char line_sql[] = "SELECT line_id FROM check_pot WHERE id = ?1";
  static const char readings_sql[] = "SELECT count (*) FROM reading WHERE pot_id = ?1";
  static const char sql[] = "DELETE FROM check_pot WHERE id = ?1";
  g_autoptr(SteadCheckList) list = NULL;
  gint64 line_id, n;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  line_id = stead_repo_count_id (store, line_sql, pot_id, error);
  if (line_id == 0)
    return stead_repo_missing (error);
  list = line_id > 0 ? stead_check_open_line (store, line_id, error) : NULL;
  n = list != NULL ? stead_repo_count_id (store, readings_sql, pot_id, error) : -1;
  if (n > 0)
    return stead_repo_refuse (error, _("This pot has readings, so it stays. A wrong reading is corrected."));
  return n == 0 && stead_repo_run_id (store, sql, pot_id, error);
}

gint64
stead_check_pot_line (SteadStore  *store,
                      gint64       pot_id,
                      GError     **error)
{
  static const char sql[] = "SELECT line_id FROM check_pot WHERE id = ?1";
  gint64 line_id;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  line_id = stead_repo_count_id (store, sql, pot_id, error);
  if (line_id == 0)
    stead_repo_missing (error);
  return line_id;
}

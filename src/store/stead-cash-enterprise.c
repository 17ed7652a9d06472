/* stead-cash-enterprise.c - what the farm's batches and products are grouped by: eggs, fish. */
#include "config.h"

#include "store/stead-cash-private.h"

void
stead_enterprise_free (SteadEnterprise *enterprise)
{
  if (enterprise == NULL)
    return;
  g_free (enterprise->name);
  g_free (enterprise);
}

static gpointer
enterprise_from_row (SteadStmt *stmt)
{
  SteadEnterprise *enterprise = g_new0 (SteadEnterprise, 1);

  enterprise->id = sqlite3_column_int64 (stmt, 0);
  enterprise->name = stead_stmt_text (stmt, 1);
  return enterprise;
}

GPtrArray *
stead_enterprise_repo_list (SteadStore  *store,
                            GError     **error)
{
  static const char sql[] = "SELECT id, name FROM enterprise ORDER BY name, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  return stead_repo_rows (store, stmt, enterprise_from_row, (GDestroyNotify) stead_enterprise_free, error);
}

gboolean
stead_enterprise_repo_save (SteadStore       *store,
                            SteadEnterprise  *enterprise,
                            GError          **error)
{
  static const char taken_sql[] = "SELECT 1 FROM enterprise WHERE name = ?1 AND id <> ?2";
  static const char insert_sql[] = "INSERT INTO enterprise (name) VALUES (?1)";
  static const char update_sql[] = "UPDATE enterprise SET name = ?1 WHERE id = ?2";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && enterprise != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!stead_repo_check_name (enterprise->name, error) ||
      !stead_repo_check_unique (store, taken_sql, enterprise->name, enterprise->id, error))
    return FALSE;
  stmt = stead_store_prepare (store, enterprise->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, enterprise->name);
  return stead_repo_save_row (store, stmt, &enterprise->id, error);
}

gboolean
stead_enterprise_repo_delete (SteadStore  *store,
                              gint64       id,
                              GError     **error)
{
  static const char sql[] = "DELETE FROM enterprise WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

gint64
stead_enterprise_repo_of_batch (SteadStore  *store,
                                gint64       batch_id,
                                GError     **error)
{
  static const char sql[] = "SELECT enterprise_id FROM batch WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, batch_id, error);
}

gint64
stead_enterprise_repo_of_product (SteadStore  *store,
                                  gint64       product_id,
                                  GError     **error)
{
  static const char sql[] = "SELECT enterprise_id FROM product WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, product_id, error);
}

static gboolean
set_enterprise (SteadStore  *store,
                const char  *sql,
                gint64       id,
                gint64       enterprise_id,
                GError     **error)
{
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, id);
  stead_stmt_bind_id (stmt, 2, enterprise_id);
  return stead_repo_run_one (store, stmt, error);
}

gboolean
stead_enterprise_repo_set_batch (SteadStore  *store,
                                 gint64       batch_id,
                                 gint64       enterprise_id,
                                 GError     **error)
{
  static const char sql[] = "UPDATE batch SET enterprise_id = ?2 WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return set_enterprise (store, sql, batch_id, enterprise_id, error);
}

gboolean
stead_enterprise_repo_set_product (SteadStore  *store,
                                   gint64       product_id,
                                   gint64       enterprise_id,
                                   GError     **error)
{
  static const char sql[] = "UPDATE product SET enterprise_id = ?2 WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return set_enterprise (store, sql, product_id, enterprise_id, error);
}

/* stead-asset-repo.c - things that last for years, and which batches bear them. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-asset-repo.h"
#include "store/stead-repo-private.h"

static const char * const method_words[] = { "straight_line", "double_declining", "units", NULL };
static const char * const share_words[] = { "parts", "days", "space", "use", NULL };

/**
 * stead_asset_new:
 *
 * Returns: (transfer full): straight line, nothing else said
 */
SteadAsset *
stead_asset_new (void)
{
  SteadAsset *asset = g_new0 (SteadAsset, 1);

  asset->bought_on = STEAD_DAY_NONE;
  asset->gone_on = STEAD_DAY_NONE;
  asset->gone_cents = -1;
  asset->shares = g_array_new (FALSE, TRUE, sizeof (SteadAssetShare));
  return asset;
}

void
stead_asset_free (SteadAsset *asset)
{
  if (asset == NULL)
    return;
  g_free (asset->name);
  g_free (asset->unit_name);
  g_array_unref (asset->shares);
  g_free (asset);
}

/* --- reading ---------------------------------------------------------------- */

#define ASSET_COLUMNS \
  "id, name, bought_on, cost_cents, extra_cents, salvage_cents, method, life_years, life_units, unit_name," \
  " is_gift, gone_on, gone_cents, share_by"

static gpointer
asset_from_row (SteadStmt *stmt)
{
  SteadAsset *asset = stead_asset_new ();

  asset->id = sqlite3_column_int64 (stmt, 0);
  asset->name = stead_stmt_text (stmt, 1);
  asset->bought_on = stead_stmt_day (stmt, 2);
  asset->cost_cents = sqlite3_column_int64 (stmt, 3);
  asset->extra_cents = sqlite3_column_int64 (stmt, 4);
  asset->salvage_cents = sqlite3_column_int64 (stmt, 5);
  asset->method = (SteadDepreciationMethod) stead_repo_word (stmt, 6, method_words);
  asset->life_years = sqlite3_column_double (stmt, 7);
  asset->life_units = sqlite3_column_double (stmt, 8);
  asset->unit_name = stead_stmt_text (stmt, 9);
  asset->is_gift = sqlite3_column_int (stmt, 10) != 0;
  asset->gone_on = stead_stmt_day (stmt, 11);
  asset->gone_cents = sqlite3_column_type (stmt, 12) == SQLITE_NULL ? -1 : sqlite3_column_int64 (stmt, 12);
  asset->share_by = (SteadShareBy) stead_repo_word (stmt, 13, share_words);
  return asset;
}

static gboolean
read_shares (SteadStore  *store,
             SteadAsset  *asset,
             GError     **error)
{
  static const char sql[] = "SELECT batch_id, frac FROM asset_share WHERE asset_id = ?1 ORDER BY batch_id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, asset->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadAssetShare share = { .batch_id = sqlite3_column_int64 (stmt, 0),
                                .frac = sqlite3_column_double (stmt, 1) };

      g_array_append_val (asset->shares, share);
    }
  return found == 0;
}

/* Returns: (transfer full): those in use first, then by name */
GPtrArray *
stead_asset_repo_list (SteadStore  *store,
                       GError     **error)
{
  static const char sql[] = "SELECT " ASSET_COLUMNS " FROM asset ORDER BY gone_on IS NOT NULL, name, id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) assets = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  assets = stead_repo_rows (store, stmt, asset_from_row, (GDestroyNotify) stead_asset_free, error);
  for (guint i = 0; assets != NULL && i < assets->len; i++)
    if (!read_shares (store, assets->pdata[i], error))
      return NULL;
  return g_steal_pointer (&assets);
}

SteadAsset *
stead_asset_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = "SELECT " ASSET_COLUMNS " FROM asset WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadAsset) asset = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  asset = stead_repo_row (store, stmt, asset_from_row, error);
  return asset != NULL && read_shares (store, asset, error) ? g_steal_pointer (&asset) : NULL;
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_money (const SteadAsset  *asset,
             GError           **error)
{
  if (!stead_repo_check_cents (_("Cost"), asset->cost_cents, error) ||
      !stead_repo_check_cents (_("Delivery and setting up"), asset->extra_cents, error) ||
      !stead_repo_check_cents (_("Worth at the end"), asset->salvage_cents, error))
    return FALSE;
  if (asset->salvage_cents > asset->cost_cents + asset->extra_cents)
    return stead_repo_refuse (error, _("“%s” cannot be worth more at the end than it cost with delivery and "
                                       "setting up. Check the two numbers."), asset->name);
  if (asset->gone_cents >= 0 && asset->gone_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day “%s” was sold."), asset->name);
  if (asset->gone_cents > STEAD_CENTS_MAX)
    return stead_repo_refuse (error, _("%s: the amount is too large. Check the number."), asset->name);
  return TRUE;
}

static gboolean
check_life (const SteadAsset  *asset,
            GError           **error)
{
  if (asset->method == STEAD_DEPRECIATION_UNITS)
    {
      if (!(asset->life_units > 0 && asset->life_units <= STEAD_AMOUNT_MAX))
        return stead_repo_refuse (error, _("Enter how many units of use “%s” is good for, above zero."), asset->name);
    }
  else if (!(asset->life_years > 0 && asset->life_years <= 100))
    return stead_repo_refuse (error, _("Enter how many years “%s” lasts: more than 0, at most 100."), asset->name);
  return TRUE;
}

static gboolean
check_days (SteadStore        *store,
            const SteadAsset  *asset,
            GError           **error)
{
  if (asset->bought_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day “%s” was bought."), asset->name);
  if (asset->bought_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The day “%s” was bought is still to come. Check the date."), asset->name);
  if (asset->gone_on != STEAD_DAY_NONE && asset->gone_on < asset->bought_on)
    return stead_repo_refuse (error, _("“%s” cannot be gone before it was bought. Check the dates."), asset->name);
  return TRUE;
}

static gboolean
check_shares (const SteadAsset  *asset,
              GError           **error)
{
  double sum = 0;

  for (guint i = 0; i < asset->shares->len; i++)
    {
      const SteadAssetShare *share = &g_array_index (asset->shares, SteadAssetShare, i);

      if (!(share->frac > 0 && share->frac <= 1))
        return stead_repo_refuse (error, _("Each share of “%s” must be above 0 and at most 100 %%."), asset->name);
      for (guint j = 0; j < i; j++)
        if (g_array_index (asset->shares, SteadAssetShare, j).batch_id == share->batch_id)
          return stead_repo_refuse (error, _("“%s” names the same flock twice. Put the shares together."), asset->name);
      sum += share->frac;
    }
  if (asset->share_by == STEAD_SHARE_PARTS && sum > 1 + 1e-9)
    return stead_repo_refuse (error, _("All shares of “%s” together come to more than 100 %%."), asset->name);
  return TRUE;
}

static gboolean
asset_check (SteadStore  *store,
             SteadAsset  *asset,
             GError     **error)
{
  static const char taken_sql[] = "SELECT 1 FROM asset WHERE name = ?1 AND id <> ?2";

  return stead_repo_check_name (asset->name, error) &&
         check_days (store, asset, error) &&
         check_money (asset, error) &&
         check_life (asset, error) &&
         check_shares (asset, error) &&
         stead_repo_check_note (asset->unit_name, error) &&
         stead_repo_check_unique (store, taken_sql, asset->name, asset->id, error);
}

/* --- writing ---------------------------------------------------------------- */

static void
bind_positive (SteadStmt *stmt,
               int        at,
               double     value)
{
  if (value > 0)
    sqlite3_bind_double (stmt, at, value);
  else
    sqlite3_bind_null (stmt, at);
}

static gboolean
write_asset (SteadStore  *store,
             SteadAsset  *asset,
             GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO asset (name, bought_on, cost_cents, extra_cents, salvage_cents, method, life_years, life_units,"
    " unit_name, is_gift, gone_on, gone_cents, share_by)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)";
  static const char update_sql[] =
    "UPDATE asset SET name = ?1, bought_on = ?2, cost_cents = ?3, extra_cents = ?4, salvage_cents = ?5,"
    " method = ?6, life_years = ?7, life_units = ?8, unit_name = ?9, is_gift = ?10, gone_on = ?11,"
    " gone_cents = ?12, share_by = ?13 WHERE id = ?14";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, asset->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, asset->name);
  stead_stmt_bind_day (stmt, 2, asset->bought_on);
  sqlite3_bind_int64 (stmt, 3, asset->cost_cents);
  sqlite3_bind_int64 (stmt, 4, asset->extra_cents);
  sqlite3_bind_int64 (stmt, 5, asset->salvage_cents);
  stead_stmt_bind_text (stmt, 6, method_words[asset->method]);
  bind_positive (stmt, 7, asset->life_years);
  bind_positive (stmt, 8, asset->life_units);
  stead_repo_bind_tidy (stmt, 9, asset->unit_name);
  sqlite3_bind_int (stmt, 10, asset->is_gift != FALSE);
  stead_stmt_bind_day (stmt, 11, asset->gone_on);
  if (asset->gone_cents >= 0)
    sqlite3_bind_int64 (stmt, 12, asset->gone_cents);
  stead_stmt_bind_text (stmt, 13, share_words[asset->share_by]);
  return stead_repo_save_row (store, stmt, &asset->id, error);
}

static gboolean
write_shares (SteadStore        *store,
              const SteadAsset  *asset,
              GError           **error)
{
  static const char delete_sql[] = "DELETE FROM asset_share WHERE asset_id = ?1";
  static const char insert_sql[] = "INSERT INTO asset_share (asset_id, batch_id, frac) VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, delete_sql, asset->id, error))
    return FALSE;
  for (guint i = 0; i < asset->shares->len; i++)
    {
      const SteadAssetShare *share = &g_array_index (asset->shares, SteadAssetShare, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, asset->id);
      sqlite3_bind_int64 (stmt, 2, share->batch_id);
      sqlite3_bind_double (stmt, 3, MIN (share->frac, 1));
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_asset_repo_save (SteadStore  *store,
                       SteadAsset  *asset,
                       GError     **error)
{
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && asset != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  ids = stead_given_ids_new (&asset->id);
  return stead_given_ids_end (ids, asset_check (store, asset, error) &&
                                   write_asset (store, asset, error) &&
                                   write_shares (store, asset, error));
}

gboolean
stead_asset_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char sql[] = "DELETE FROM asset WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* --- use ---------------------------------------------------------------------- */

static gboolean
use_check (SteadStore        *store,
           const SteadAsset  *asset,
           SteadDay           day,
           double             units,
           GError           **error)
{
  if (asset->method != STEAD_DEPRECIATION_UNITS && asset->share_by != STEAD_SHARE_USE)
    return stead_repo_refuse (error, _("“%s” wears with the years, not by use. Its use is not written down."), asset->name);
  if (day == STEAD_DAY_NONE || day < asset->bought_on || day > stead_store_get_today (store))
    return stead_repo_refuse (error, _("“%s” can be used from the day it was bought up to today. Check the date."),
                              asset->name);
  if (!(units > 0 && units <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("Enter how much “%s” was used, above zero."), asset->name);
  return TRUE;
}

gboolean
stead_asset_repo_add_use (SteadStore  *store,
                          gint64       asset_id,
                          gint64       batch_id,
                          SteadDay     day,
                          double       units,
                          GError     **error)
{
  static const char sql[] = "INSERT INTO asset_use (asset_id, batch_id, day, units) VALUES (?1, ?2, ?3, ?4)";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadAsset) asset = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  asset = stead_asset_repo_get (store, asset_id, error);
  if (asset == NULL || !use_check (store, asset, day, units, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, asset_id);
  sqlite3_bind_int64 (stmt, 2, batch_id);
  stead_stmt_bind_day (stmt, 3, day);
  sqlite3_bind_double (stmt, 4, units);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_asset_repo_uses (SteadStore  *store,
                       gint64       asset_id,
                       gint64       batch_id,
                       SteadDay     from,
                       SteadDay     to,
                       double      *out_units,
                       double      *out_before,
                       GError     **error)
{
  static const char sql[] =
    "SELECT coalesce (sum (iif (day >= ?3 AND (?2 = 0 OR batch_id = ?2), units, 0)), 0),"
    " coalesce (sum (iif (day < ?3, units, 0)), 0)"
    " FROM asset_use WHERE asset_id = ?1 AND day <= ?4";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_units != NULL && out_before != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, asset_id);
  sqlite3_bind_int64 (stmt, 2, batch_id);
  sqlite3_bind_int (stmt, 3, from);
  sqlite3_bind_int (stmt, 4, to);
  if (stead_store_step (store, stmt, error) != 1)
    return FALSE;
  *out_units = sqlite3_column_double (stmt, 0);
  *out_before = sqlite3_column_double (stmt, 1);
  return TRUE;
}

GArray *
stead_asset_repo_use_list (SteadStore  *store,
                           gint64       asset_id,
                           SteadDay     from,
                           SteadDay     to,
                           GError     **error)
{
  static const char sql[] = "SELECT batch_id, day, units FROM asset_use WHERE asset_id = ?1 AND day BETWEEN ?2 AND ?3"
                            " ORDER BY day, id";
  g_autoptr(GArray) uses = g_array_new (FALSE, FALSE, sizeof (SteadAssetUse));
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, asset_id);
  sqlite3_bind_int (stmt, 2, from);
  sqlite3_bind_int (stmt, 3, to);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadAssetUse use = { .batch_id = sqlite3_column_int64 (stmt, 0),
                            .day = stead_stmt_day (stmt, 1),
                            .units = sqlite3_column_double (stmt, 2) };

      g_array_append_val (uses, use);
    }
  return found == 0 ? g_steal_pointer (&uses) : NULL;
}

/* stead-build-finish.c - a build that stands becomes a thing in the books. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-asset-repo.h"
#include "store/stead-build-buy-repo.h"
#include "store/stead-repo-private.h"

/* What was paid for things, and the fair value of what was given.  Nothing is owed for a
 * gift, so that it is a thing of its own. */
static const char paid_sql[] =
  "SELECT coalesce (sum (b.cents + b.tax_cents), 0) FROM build_buy b JOIN build_line l ON l.id = b.line_id"
  " JOIN cash_line c ON c.id = b.cash_line_id WHERE l.build_id = ?1 AND c.category = 'thing_bought'";
static const char given_sql[] =
  "SELECT coalesce (sum (b.cents), 0) FROM build_buy b JOIN build_line l ON l.id = b.line_id"
  " WHERE l.build_id = ?1 AND b.cash_line_id IS NULL AND l.key IS NOT 'animal'";

static gint64
make_asset (SteadStore        *store,
            const SteadBuild  *build,
            gboolean           is_gift,
            SteadDay           day,
            gint64             cents,
            double             life_years,
            GError           **error)
{
  g_autoptr(SteadAsset) asset = stead_asset_new ();

  /* Translators: the part of a build that was given, as a thing in the books; name of the build. */
  asset->name = is_gift ? g_strdup_printf (_("%s, given parts"), build->name) : g_strdup (build->name);
  asset->bought_on = day;
  asset->cost_cents = cents;
  asset->method = STEAD_DEPRECIATION_STRAIGHT_LINE;
  asset->life_years = life_years;
  asset->is_gift = is_gift;
  return stead_asset_repo_save (store, asset, error) ? asset->id : 0;
}

/* What was paid was paid for the thing. */
static gboolean
name_payments (SteadStore  *store,
               gint64       build_id,
               gint64       asset_id,
               GError     **error)
{
  static const char sql[] =
    "UPDATE cash_line SET asset_id = ?1 WHERE category = 'thing_bought' AND id IN"
    " (SELECT b.cash_line_id FROM build_buy b JOIN build_line l ON l.id = b.line_id WHERE l.build_id = ?2)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, asset_id);
  sqlite3_bind_int64 (stmt, 2, build_id);
  return stead_store_run (store, stmt, error);
}

gboolean
stead_build_repo_finish (SteadStore  *store,
                         gint64       build_id,
                         SteadDay     day,
                         double       life_years,
                         GError     **error)
{
  g_autoptr(SteadBuild) build = NULL;
  gint64 paid, given, gift = 0;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  build = stead_build_repo_get (store, build_id, error);
  if (build == NULL)
    return FALSE;
  if (build->finished_on != STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("It was finished before."));
  paid = stead_repo_count_id (store, paid_sql, build_id, error);
  given = paid < 0 ? -1 : stead_repo_count_id (store, given_sql, build_id, error);
  if (given < 0)
    return FALSE;
  if (paid + given == 0)
    return stead_repo_refuse (error, _("Enter what was bought for it first: what it cost is what it is worth in the books."));
  build->finished_on = day;
  if (given > 0)
    gift = make_asset (store, build, TRUE, day, given, life_years, error);
  if (given > 0 && gift == 0)
    return FALSE;
  build->asset_id = paid > 0 ? make_asset (store, build, FALSE, day, paid, life_years, error) : gift;
  return build->asset_id != 0 && (paid == 0 || name_payments (store, build_id, build->asset_id, error)) &&
         stead_build_repo_save (store, build, error);
}

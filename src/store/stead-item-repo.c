/* stead-item-repo.c - the things that are bought, used and packed. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-item-repo.h"
#include "store/stead-item-private.h"
#include "store/stead-repo-private.h"

#define ITEM_COLUMNS "id, name, kind, unit, allergens, storage, shelf_life_days, reorder_base," \
  " density_kg_l, piece_kg, measure_source, yield_frac, food, label_name"

const char * const stead_item_kind_words[] = {
  "feed", "bedding", "packaging", "ingredient", "seed", "supply", "livestock", "produce", NULL
};

void
stead_item_free (SteadItem *item)
{
  if (item == NULL)
    return;
  g_free (item->name);
  g_free (item->allergens);
  g_free (item->storage);
  g_free (item->measure_source);
  g_free (item->food);
  g_free (item->label_name);
  g_free (item);
}

void
stead_item_measure (const SteadItem *item,
                    SteadMeasure    *out)
{
  g_return_if_fail (item != NULL && item->unit != NULL && out != NULL);
  *out = (SteadMeasure) { item->name, item->unit->dimension, item->density_kg_l, item->piece_kg };
}

/* A unit that this program does not know can only come from a damaged row;
 * pieces keep the page alive, and --verify tells. */
const SteadUnit *
stead_item_unit (SteadStmt *stmt,
                 int        at)
{
  const SteadUnit *unit = stead_unit_by_id ((const char *) sqlite3_column_text (stmt, at));

  return unit != NULL ? unit : stead_unit_by_id ("ea");
}

static gpointer
item_from_row (SteadStmt *stmt)
{
  SteadItem *item = g_new0 (SteadItem, 1);

  item->id = sqlite3_column_int64 (stmt, 0);
  item->name = stead_stmt_text (stmt, 1);
  item->kind = (SteadItemKind) stead_repo_word (stmt, 2, stead_item_kind_words);
  item->unit = stead_item_unit (stmt, 3);
  item->allergens = stead_stmt_text (stmt, 4);
  item->storage = stead_stmt_text (stmt, 5);
  item->shelf_life_days = sqlite3_column_int (stmt, 6);
  item->reorder_base = stead_stmt_real (stmt, 7);
  item->density_kg_l = stead_stmt_real (stmt, 8);
  item->piece_kg = stead_stmt_real (stmt, 9);
  item->measure_source = stead_stmt_text (stmt, 10);
  item->yield_frac = sqlite3_column_double (stmt, 11);
  item->food = stead_stmt_text (stmt, 12);
  item->label_name = stead_stmt_text (stmt, 13);
  return item;
}

/* Returns: (transfer full): all items by name */
GPtrArray *
stead_item_repo_list (SteadStore  *store,
                      GError     **error)
{
  static const char sql[] = "SELECT " ITEM_COLUMNS " FROM item ORDER BY name, id";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  return stmt != NULL
         ? stead_repo_rows (store, stmt, item_from_row, (GDestroyNotify) stead_item_free, error)
         : NULL;
}

SteadItem *
stead_item_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = "SELECT " ITEM_COLUMNS " FROM item WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, item_from_row, error);
}

SteadItem *
stead_item_repo_find_by_name (SteadStore  *store,
                              const char  *name,
                              GError     **error)
{
  static const char sql[] = "SELECT " ITEM_COLUMNS " FROM item WHERE name = ?1";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && name != NULL, NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  stead_stmt_bind_text (stmt, 1, name);
  return stead_repo_row (store, stmt, item_from_row, error);
}

/* --- saving ----------------------------------------------------------------- */

static gboolean
check_dimension (SteadStore       *store,
                 const SteadItem  *item,
                 GError          **error)
{
  static const char lots_sql[] = "SELECT count (*) FROM lot WHERE item_id = ?1";
  g_autoptr(SteadItem) before = stead_item_repo_get (store, item->id, error);
  gint64 lots;

  if (before == NULL)
    return FALSE;
  if (before->unit->dimension == item->unit->dimension)
    return TRUE;
  lots = stead_repo_count_id (store, lots_sql, item->id, error);
  if (lots > 0)
    return stead_repo_refuse (error, _("“%s” was already bought by another measure. Keep a unit of the same kind, "
                                       "or make a new item."), before->name);
  return lots == 0;
}

/* 0 and NAN are "not said". */
static gboolean
is_said (double value)
{
  return !isnan (value) && value != 0;
}

static gboolean
check_measure (const SteadItem  *item,
               GError          **error)
{
  if (is_said (item->density_kg_l) && !(item->density_kg_l >= 0.01 && item->density_kg_l <= 25))
    return stead_repo_refuse (error, _("No food weighs so much or so little for its size. Weigh a cup of it again."));
  if (is_said (item->piece_kg) && !(item->piece_kg > 0 && item->piece_kg <= 1000))
    return stead_repo_refuse (error, _("The weight of a piece must be above 0. Check the number."));
  if (is_said (item->yield_frac) && !(item->yield_frac > 0 && item->yield_frac <= 1))
    return stead_repo_refuse (error, _("What is left after trimming must be above 0 and at most all of it. "
                                       "Check the number."));
  return stead_repo_check_note (item->measure_source, error) &&
         stead_repo_check_note (item->food, error) &&
         stead_repo_check_note (item->label_name, error);
}

static gboolean
item_check (SteadStore  *store,
            SteadItem   *item,
            GError     **error)
{
  static const char taken_sql[] = "SELECT 1 FROM item WHERE name = ?1 AND id <> ?2";

  if (!stead_repo_check_name (item->name, error))
    return FALSE;
  if (item->unit->dimension == STEAD_DIMENSION_TEMPERATURE)
    return stead_repo_refuse (error, _("An item is counted, weighed or measured. Choose such a unit."));
  if (!(item->shelf_life_days >= 0 && item->shelf_life_days <= 36500))
    return stead_repo_refuse (error, _("The shelf life must be a number of days, 0 or more."));
  if (!isnan (item->reorder_base) && !(item->reorder_base >= 0 && item->reorder_base <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The amount to reorder at must be 0 or more. Check the number."));
  return stead_repo_check_note (item->allergens, error) &&
         stead_repo_check_note (item->storage, error) &&
         check_measure (item, error) &&
         stead_repo_check_unique (store, taken_sql, item->name, item->id, error) &&
         (item->id == 0 || check_dimension (store, item, error));
}

gboolean
stead_item_repo_save (SteadStore  *store,
                      SteadItem   *item,
                      GError     **error)
{
  static const char insert_sql[] =
    "INSERT INTO item (name, kind, unit, allergens, storage, shelf_life_days, reorder_base, density_kg_l, piece_kg,"
    " measure_source, yield_frac, food, label_name)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)";
  static const char update_sql[] =
    "UPDATE item SET name = ?1, kind = ?2, unit = ?3, allergens = ?4, storage = ?5, shelf_life_days = ?6,"
    " reorder_base = ?7, density_kg_l = ?8, piece_kg = ?9, measure_source = ?10, yield_frac = ?11, food = ?12,"
    " label_name = ?13 WHERE id = ?14";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && item != NULL && item->unit != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!item_check (store, item, error))
    return FALSE;
  stmt = stead_store_prepare (store, item->id == 0 ? insert_sql : update_sql, error);
  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, item->name);
  stead_stmt_bind_text (stmt, 2, stead_item_kind_words[item->kind]);
  stead_stmt_bind_text (stmt, 3, item->unit->id);
  stead_repo_bind_tidy (stmt, 4, item->allergens);
  stead_repo_bind_tidy (stmt, 5, item->storage);
  sqlite3_bind_int (stmt, 6, item->shelf_life_days);
  stead_stmt_bind_real (stmt, 7, item->reorder_base);
  stead_stmt_bind_real (stmt, 8, is_said (item->density_kg_l) ? item->density_kg_l : NAN);
  stead_stmt_bind_real (stmt, 9, is_said (item->piece_kg) ? item->piece_kg : NAN);
  stead_repo_bind_tidy (stmt, 10, item->measure_source);
  sqlite3_bind_double (stmt, 11, is_said (item->yield_frac) ? item->yield_frac : 1);
  stead_repo_bind_tidy (stmt, 12, item->food);
  stead_repo_bind_tidy (stmt, 13, item->label_name);
  if (item->id != 0)
    sqlite3_bind_int64 (stmt, 14, item->id);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  if (item->id == 0)
    item->id = stead_store_last_id (store);
  return TRUE;
}

/* --- deleting --------------------------------------------------------------- */

/* In a recipe, in what was cooked, or sold as a product. */
static gboolean
check_uncooked (SteadStore       *store,
                const SteadItem  *item,
                GError          **error)
{
  static const char recipes_sql[] =
    "SELECT count (*) FROM recipe WHERE item_id = ?1"
    " OR id IN (SELECT recipe_id FROM recipe_part WHERE item_id = ?1)";
  static const char kitchens_sql[] = "SELECT count (DISTINCT batch_id) FROM kitchen_part WHERE item_id = ?1";
  static const char products_sql[] = "SELECT count (*) FROM product WHERE item_id = ?1";
  gint64 recipes = stead_repo_count_id (store, recipes_sql, item->id, error);
  gint64 kitchens = recipes < 0 ? -1 : stead_repo_count_id (store, kitchens_sql, item->id, error);
  gint64 products = kitchens < 0 ? -1 : stead_repo_count_id (store, products_sql, item->id, error);

  if (products < 0)
    return FALSE;
  if (recipes > 0)
    return stead_repo_refuse (error, ngettext ("“%s” stands in %d recipe. Take it out there first.",
                                               "“%s” stands in %d recipes. Take it out there first.",
                                               (gulong) recipes), item->name, (int) recipes);
  if (kitchens > 0)
    return stead_repo_refuse (error, ngettext ("“%s” was planned for %d kitchen batch. It stays, so that others can "
                                               "follow what was cooked.",
                                               "“%s” was planned for %d kitchen batches. It stays, so that others can "
                                               "follow what was cooked.",
                                               (gulong) kitchens), item->name, (int) kitchens);
  if (products > 0)
    return stead_repo_refuse (error, ngettext ("“%s” is sold as %d product. Change that first.",
                                               "“%s” is sold as %d products. Change those first.",
                                               (gulong) products), item->name, (int) products);
  return TRUE;
}

static gboolean
check_unnamed (SteadStore       *store,
               const SteadItem  *item,
               GError          **error)
{
  static const char receipts_sql[] = "SELECT count (DISTINCT receipt_id) FROM receipt_line WHERE item_id = ?1";
  static const char lots_sql[] = "SELECT count (*) FROM lot WHERE item_id = ?1";
  static const char products_sql[] = "SELECT count (*) FROM product_part WHERE item_id = ?1";
  static const char flocks_sql[] = "SELECT count (*) FROM batch WHERE feed_item_id = ?1";
  gint64 receipts = stead_repo_count_id (store, receipts_sql, item->id, error);
  gint64 lots = receipts < 0 ? -1 : stead_repo_count_id (store, lots_sql, item->id, error);
  gint64 products = lots < 0 ? -1 : stead_repo_count_id (store, products_sql, item->id, error);
  gint64 flocks = products < 0 ? -1 : stead_repo_count_id (store, flocks_sql, item->id, error);

  if (flocks < 0)
    return FALSE;
  if (receipts > 0)
    return stead_repo_refuse (error, ngettext ("“%s” stands on %d receipt. Delete that first.",
                                               "“%s” stands on %d receipts. Delete those first.",
                                               (gulong) receipts), item->name, (int) receipts);
  if (lots > 0)
    return stead_repo_refuse (error, ngettext ("“%s” has %d lot in the store room.",
                                               "“%s” has %d lots in the store room.",
                                               (gulong) lots), item->name, (int) lots);
  if (products > 0)
    return stead_repo_refuse (error, ngettext ("“%s” is packaging of %d product. Take it out there first.",
                                               "“%s” is packaging of %d products. Take it out there first.",
                                               (gulong) products), item->name, (int) products);
  if (flocks > 0)
    return stead_repo_refuse (error, ngettext ("“%s” is the feed of %d flock. Choose another feed there first.",
                                               "“%s” is the feed of %d flocks. Choose another feed there first.",
                                               (gulong) flocks), item->name, (int) flocks);
  return TRUE;
}

gboolean
stead_item_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "DELETE FROM item WHERE id = ?1";
  g_autoptr(SteadItem) item = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  item = stead_item_repo_get (store, id, error);
  return item != NULL && check_unnamed (store, item, error) && check_uncooked (store, item, error) &&
         stead_repo_run_id (store, sql, id, error);
}

/* stead-product-repo.c - what is sold: pack, price history, plan of a sale day. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-product-repo.h"
#include "store/stead-repo-private.h"

static const char * const pack_words[] = {
  "dozen", "half_dozen", "tray", "piece", "pound", "kilogram", "jar", "pack", NULL
};

SteadPack
stead_pack_from_word (const char *word)
{
  for (int i = 0; pack_words[i] != NULL; i++)
    if (g_strcmp0 (pack_words[i], word) == 0)
      return (SteadPack) i;
  return STEAD_PACK_DOZEN;
}

/* Most units that a plan or a step can name. */
#define UNITS_MAX 10000000

/**
 * stead_product_new:
 *
 * Returns: (transfer full): a dozen eggs with nothing else said
 */
SteadProduct *
stead_product_new (void)
{
  SteadProduct *product = g_new0 (SteadProduct, 1);

  product->pack = STEAD_PACK_DOZEN;
  product->base_per_unit = 12;
  product->retired_on = STEAD_DAY_NONE;
  product->parts = g_array_new (FALSE, TRUE, sizeof (SteadProductPart));
  product->stall_costs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_stall_cost_free);
  return product;
}

void
stead_product_free (SteadProduct *product)
{
  if (product == NULL)
    return;
  g_free (product->name);
  g_array_unref (product->parts);
  g_ptr_array_unref (product->stall_costs);
  g_free (product);
}

void
stead_stall_cost_free (SteadStallCost *cost)
{
  if (cost == NULL)
    return;
  g_free (cost->name);
  g_free (cost);
}

void
stead_price_free (SteadPrice *price)
{
  if (price == NULL)
    return;
  g_free (price->note);
  g_free (price);
}

/* --- reading ---------------------------------------------------------------- */

#define PRODUCT_COLUMNS \
  "id, name, pack, base_per_unit, batch_id, unsold_frac, pack_minutes, planned_units, target_cents, retired_on," \
  " item_id"

static gpointer
product_from_row (SteadStmt *stmt)
{
  SteadProduct *product = stead_product_new ();

  product->id = sqlite3_column_int64 (stmt, 0);
  product->name = stead_stmt_text (stmt, 1);
  product->pack = (SteadPack) stead_repo_word (stmt, 2, pack_words);
  product->base_per_unit = sqlite3_column_double (stmt, 3);
  product->batch_id = sqlite3_column_int64 (stmt, 4);
  product->unsold_frac = sqlite3_column_double (stmt, 5);
  product->pack_minutes = sqlite3_column_double (stmt, 6);
  product->planned_units = sqlite3_column_int64 (stmt, 7);
  product->target_cents = sqlite3_column_int64 (stmt, 8);
  product->retired_on = stead_stmt_day (stmt, 9);
  product->item_id = sqlite3_column_int64 (stmt, 10);
  return product;
}

static gboolean
read_parts (SteadStore    *store,
            SteadProduct  *product,
            GError       **error)
{
  static const char sql[] = "SELECT p.item_id, p.quantity_base FROM product_part p JOIN item i ON i.id = p.item_id"
                            " WHERE p.product_id = ?1 ORDER BY i.name, i.id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadProductPart part = { .item_id = sqlite3_column_int64 (stmt, 0),
                                .quantity_base = sqlite3_column_double (stmt, 1) };

      g_array_append_val (product->parts, part);
    }
  return found == 0;
}

static gboolean
read_stall_costs (SteadStore    *store,
                  SteadProduct  *product,
                  GError       **error)
{
  static const char sql[] = "SELECT id, name, cents, per_units FROM stall_cost WHERE product_id = ?1 ORDER BY id";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product->id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadStallCost *cost = g_new0 (SteadStallCost, 1);

      cost->id = sqlite3_column_int64 (stmt, 0);
      cost->name = stead_stmt_text (stmt, 1);
      cost->cents = sqlite3_column_int64 (stmt, 2);
      cost->per_units = sqlite3_column_int64 (stmt, 3);
      g_ptr_array_add (product->stall_costs, cost);
    }
  return found == 0;
}

static gboolean
read_rest (SteadStore    *store,
           SteadProduct  *product,
           GError       **error)
{
  return read_parts (store, product, error) && read_stall_costs (store, product, error);
}

/* Returns: (transfer full): by name; @retired: also those that are no longer sold, last */
GPtrArray *
stead_product_repo_list (SteadStore  *store,
                         gboolean     retired,
                         GError     **error)
{
  static const char sql[] = "SELECT " PRODUCT_COLUMNS " FROM product WHERE ?1 OR retired_on IS NULL"
                            " ORDER BY retired_on IS NOT NULL, name, id";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(GPtrArray) products = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int (stmt, 1, retired != FALSE);
  products = stead_repo_rows (store, stmt, product_from_row, (GDestroyNotify) stead_product_free, error);
  for (guint i = 0; products != NULL && i < products->len; i++)
    if (!read_rest (store, products->pdata[i], error))
      return NULL;
  return g_steal_pointer (&products);
}

SteadProduct *
stead_product_repo_get (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  static const char sql[] = "SELECT " PRODUCT_COLUMNS " FROM product WHERE id = ?1";
  g_autoptr(SteadStmt) stmt = NULL;
  g_autoptr(SteadProduct) product = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, id);
  product = stead_repo_row (store, stmt, product_from_row, error);
  return product != NULL && read_rest (store, product, error) ? g_steal_pointer (&product) : NULL;
}

gint64
stead_product_repo_of_item (SteadStore  *store,
                            gint64       item_id,
                            GError     **error)
{
  static const char sql[] = "SELECT id FROM product WHERE item_id = ?1 AND retired_on IS NULL ORDER BY id LIMIT 1";

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  return stead_repo_count_id (store, sql, item_id, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_numbers (const SteadProduct  *product,
               GError             **error)
{
  if (!(product->base_per_unit > 0 && product->base_per_unit <= 10000))
    return stead_repo_refuse (error, _("One unit must hold more than zero pieces. Check the number."));
  if (!(product->unsold_frac >= 0 && product->unsold_frac <= 0.9))
    return stead_repo_refuse (error, _("The share given up unsold must lie between 0 and 90 %%."));
  if (!(product->pack_minutes >= 0 && product->pack_minutes <= 1440))
    return stead_repo_refuse (error, _("The minutes to pack one unit must lie between 0 and 1,440."));
  if (!(product->planned_units >= 0 && product->planned_units <= UNITS_MAX))
    return stead_repo_refuse (error, _("The plan must be 0 or more units. Check the number."));
  return stead_repo_check_cents (_("Profit wanted"), product->target_cents, error);
}

static gboolean
check_parts (const SteadProduct  *product,
             GError             **error)
{
  for (guint i = 0; i < product->parts->len; i++)
    {
      const SteadProductPart *part = &g_array_index (product->parts, SteadProductPart, i);

      if (part->item_id == 0)
        return stead_repo_refuse (error, _("Choose the packaging on each line."));
      if (!(part->quantity_base > 0 && part->quantity_base <= STEAD_AMOUNT_MAX))
        return stead_repo_refuse (error, _("The amount of packaging in one unit must be above zero."));
      for (guint j = 0; j < i; j++)
        if (g_array_index (product->parts, SteadProductPart, j).item_id == part->item_id)
          return stead_repo_refuse (error, _("The same packaging stands on two lines. Put the amounts together."));
    }
  return TRUE;
}

static gboolean
check_stall_costs (const SteadProduct  *product,
                   GError             **error)
{
  guint steps = 0;

  for (guint i = 0; i < product->stall_costs->len; i++)
    {
      SteadStallCost *cost = product->stall_costs->pdata[i];

      if (!stead_repo_check_name (cost->name, error) ||
          !stead_repo_check_cents (cost->name, cost->cents, error))
        return FALSE;
      if (!(cost->per_units >= 0 && cost->per_units <= UNITS_MAX))
        return stead_repo_refuse (error, _("%s: the number of units it holds must be 0 or more."), cost->name);
      steps += cost->per_units > 0;
    }
  if (steps > 1)
    return stead_repo_refuse (error, _("Only one cost of a sale day can grow with the number sold."));
  return TRUE;
}

static gboolean
product_check (SteadStore    *store,
               SteadProduct  *product,
               GError       **error)
{
  static const char taken_sql[] = "SELECT 1 FROM product WHERE name = ?1 AND id <> ?2";

  return stead_repo_check_name (product->name, error) &&
         check_numbers (product, error) &&
         check_parts (product, error) &&
         check_stall_costs (product, error) &&
         stead_repo_check_unique (store, taken_sql, product->name, product->id, error);
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_product (SteadStore    *store,
               SteadProduct  *product,
               GError       **error)
{
  static const char insert_sql[] =
    "INSERT INTO product (name, pack, base_per_unit, batch_id, unsold_frac, pack_minutes, planned_units,"
    " target_cents, retired_on, item_id) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)";
  static const char update_sql[] =
    "UPDATE product SET name = ?1, pack = ?2, base_per_unit = ?3, batch_id = ?4, unsold_frac = ?5,"
    " pack_minutes = ?6, planned_units = ?7, target_cents = ?8, retired_on = ?9, item_id = ?10"
    " WHERE id = ?11";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, product->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, product->name);
  stead_stmt_bind_text (stmt, 2, pack_words[product->pack]);
  sqlite3_bind_double (stmt, 3, product->base_per_unit);
  stead_stmt_bind_id (stmt, 4, product->batch_id);
  sqlite3_bind_double (stmt, 5, product->unsold_frac);
  sqlite3_bind_double (stmt, 6, product->pack_minutes);
  sqlite3_bind_int64 (stmt, 7, product->planned_units);
  sqlite3_bind_int64 (stmt, 8, product->target_cents);
  stead_stmt_bind_day (stmt, 9, product->retired_on);
  stead_stmt_bind_id (stmt, 10, product->item_id);
  return stead_repo_save_row (store, stmt, &product->id, error);
}

static gboolean
write_parts (SteadStore          *store,
             const SteadProduct  *product,
             GError             **error)
{
  static const char delete_sql[] = "DELETE FROM product_part WHERE product_id = ?1";
  static const char insert_sql[] = "INSERT INTO product_part (product_id, item_id, quantity_base)"
                                   " VALUES (?1, ?2, ?3)";

  if (!stead_repo_run_id (store, delete_sql, product->id, error))
    return FALSE;
  for (guint i = 0; i < product->parts->len; i++)
    {
      const SteadProductPart *part = &g_array_index (product->parts, SteadProductPart, i);
      g_autoptr(SteadStmt) stmt = stead_store_prepare (store, insert_sql, error);

      if (stmt == NULL)
        return FALSE;
      sqlite3_bind_int64 (stmt, 1, product->id);
      sqlite3_bind_int64 (stmt, 2, part->item_id);
      sqlite3_bind_double (stmt, 3, part->quantity_base);
      if (!stead_store_run (store, stmt, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_stall_cost (SteadStore      *store,
                  gint64           product_id,
                  SteadStallCost  *cost,
                  GError         **error)
{
  static const char sql[] = "INSERT INTO stall_cost (id, product_id, name, cents, per_units)"
                            " VALUES (?1, ?2, ?3, ?4, ?5)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_stmt_bind_id (stmt, 1, cost->id);
  sqlite3_bind_int64 (stmt, 2, product_id);
  stead_repo_bind_tidy (stmt, 3, cost->name);
  sqlite3_bind_int64 (stmt, 4, cost->cents);
  sqlite3_bind_int64 (stmt, 5, cost->per_units);
  if (!stead_store_run (store, stmt, error))
    return FALSE;
  cost->id = stead_store_last_id (store);
  return TRUE;
}

/* Lines keep their ids; undo sees only what changed. */
static gboolean
write_stall_costs (SteadStore    *store,
                   SteadProduct  *product,
                   GError       **error)
{
  static const char delete_sql[] = "DELETE FROM stall_cost WHERE product_id = ?1";

  if (!stead_repo_run_id (store, delete_sql, product->id, error))
    return FALSE;
  for (guint i = 0; i < product->stall_costs->len; i++)
    if (!write_stall_cost (store, product->id, product->stall_costs->pdata[i], error))
      return FALSE;
  return TRUE;
}

gboolean
stead_product_repo_save (SteadStore    *store,
                         SteadProduct  *product,
                         GError       **error)
{
  SteadGivenIds *ids;

  g_return_val_if_fail (STEAD_IS_STORE (store) && product != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  ids = stead_given_ids_new (&product->id);
  for (guint i = 0; i < product->stall_costs->len; i++)
    stead_given_ids_add (ids, &((SteadStallCost *) product->stall_costs->pdata[i])->id);
  return stead_given_ids_end (ids, product_check (store, product, error) &&
                                   write_product (store, product, error) &&
                                   write_parts (store, product, error) &&
                                   write_stall_costs (store, product, error));
}

gboolean
stead_product_repo_delete (SteadStore  *store,
                           gint64       id,
                           GError     **error)
{
  static const char sql[] = "DELETE FROM product WHERE id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_repo_change_row (store, sql, id, error);
}

/* --- prices ----------------------------------------------------------------- */

static gpointer
price_from_row (SteadStmt *stmt)
{
  SteadPrice *price = g_new0 (SteadPrice, 1);

  price->id = sqlite3_column_int64 (stmt, 0);
  price->from_day = stead_stmt_day (stmt, 1);
  price->cents = sqlite3_column_int64 (stmt, 2);
  price->note = stead_stmt_text (stmt, 3);
  return price;
}

GPtrArray *
stead_product_repo_prices (SteadStore  *store,
                           gint64       product_id,
                           GError     **error)
{
  static const char sql[] = "SELECT id, from_day, cents, note FROM price WHERE product_id = ?1"
                            " ORDER BY from_day";  /* unique with the product */

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, product_id, price_from_row, (GDestroyNotify) stead_price_free,
                             error);
}

gboolean
stead_product_repo_set_price (SteadStore  *store,
                              gint64       product_id,
                              SteadDay     from_day,
                              gint64       cents,
                              const char  *note,
                              GError     **error)
{
  static const char sql[] = "INSERT INTO price (product_id, from_day, cents, note) VALUES (?1, ?2, ?3, ?4)"
                            " ON CONFLICT (product_id, from_day) DO UPDATE SET cents = ?3, note = ?4";
  g_autoptr(SteadStmt) stmt = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (from_day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day from which the price holds."));
  if (!stead_repo_check_cents (_("Price"), cents, error) || !stead_repo_check_note (note, error))
    return FALSE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, product_id);
  stead_stmt_bind_day (stmt, 2, from_day);
  sqlite3_bind_int64 (stmt, 3, cents);
  stead_repo_bind_tidy (stmt, 4, note);
  return stead_store_run (store, stmt, error);
}

/* -1 also if the file could not be read; @error is then set. */
gint64
stead_product_repo_price_on (SteadStore  *store,
                             gint64       product_id,
                             SteadDay     day,
                             GError     **error)
{
  static const char sql[] = "SELECT cents FROM price WHERE product_id = ?1 AND from_day <= ?2"
                            " ORDER BY from_day DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;
  gint64 cents = -1;

  g_return_val_if_fail (STEAD_IS_STORE (store), -1);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return -1;
  sqlite3_bind_int64 (stmt, 1, product_id);
  sqlite3_bind_int (stmt, 2, day);
  return stead_repo_number (store, stmt, -1, &cents, error) ? cents : -1;
}

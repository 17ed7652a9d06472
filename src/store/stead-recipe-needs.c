/* stead-recipe-needs.c - what a recipe comes to, with the recipes inside it opened. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-recipe.h"
#include "store/stead-recipe-private.h"

/* Saving refuses rings; a file that was damaged must not hang us. */
#define DEEPEST 64

void
stead_recipe_need_free (SteadRecipeNeed *need)
{
  if (need == NULL)
    return;
  g_free (need->item_name);
  g_free (need->note);
  g_free (need->recipe_name);
  g_free (need);
}

/* What comes together on the way through a recipe and those inside it. */
typedef struct
{
  GPtrArray *needs;     /* of SteadRecipeNeed */
  double     minutes;
} Walk;

static gboolean add_recipe (SteadStore  *store,
                            gint64       recipe_id,
                            double       factor,
                            int          depth,
                            Walk        *walk,
                            GError     **error);

static double
yield_of (const SteadRecipePart *part,
          const SteadItem       *item)
{
  return isnan (part->yield_frac) ? item->yield_frac : part->yield_frac;
}

static gboolean
add_item (SteadStore             *store,
          const SteadRecipe      *recipe,
          const SteadRecipePart  *part,
          double                  factor,
          Walk                   *walk,
          GError                **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, part->item_id, error);
  g_autoptr(SteadRecipeNeed) need = g_new0 (SteadRecipeNeed, 1);
  double base;

  if (item == NULL || !stead_item_to_base (item, part->amount * factor, part->unit, &base, error))
    return FALSE;
  need->item_id = item->id;
  need->item_name = g_strdup (item->name);
  need->item_kind = item->kind;
  need->item_unit = item->unit;
  need->amount = part->amount * factor;
  need->unit = part->unit;
  need->ready_base = part->ready ? base : base * yield_of (part, item);
  need->need_base = part->ready ? stead_recipe_to_buy (base, yield_of (part, item)) : base;
  need->note = g_strdup (part->note);
  need->recipe_id = recipe->id;
  need->recipe_name = g_strdup (recipe->name);
  g_ptr_array_add (walk->needs, g_steal_pointer (&need));
  return TRUE;
}

/* A recipe inside is made as often as its amount asks for. */
static gboolean
add_sub (SteadStore             *store,
         const SteadRecipePart  *part,
         double                  factor,
         int                     depth,
         Walk                   *walk,
         GError                **error)
{
  g_autoptr(SteadRecipe) sub = stead_recipe_row (store, part->sub_id, error);
  g_autoptr(SteadItem) item = sub != NULL ? stead_item_repo_get (store, sub->item_id, error) : NULL;
  double base, yield = isnan (part->yield_frac) || !part->ready ? 1 : part->yield_frac;

  if (item == NULL || !stead_item_to_base (item, part->amount * factor, part->unit, &base, error))
    return FALSE;
  return add_recipe (store, sub->id, stead_recipe_scale (sub->yield_base, 1, base / yield, 1), depth + 1, walk, error);
}

static gboolean
add_recipe (SteadStore   *store,
            gint64        recipe_id,
            double        factor,
            int           depth,
            Walk         *walk,
            GError      **error)
{
  g_autoptr(SteadRecipe) recipe = stead_recipe_row (store, recipe_id, error);
  g_autoptr(GPtrArray) parts = recipe != NULL ? stead_recipe_parts (store, recipe_id, error) : NULL;

  if (parts == NULL)
    return FALSE;
  if (depth > DEEPEST)
    return stead_repo_refuse (error, _("“%s” would contain itself: %s. Leave one of them out."),
                              recipe->name, recipe->name);
  walk->minutes += recipe->minutes * factor;
  for (guint i = 0; i < parts->len; i++)
    {
      const SteadRecipePart *part = parts->pdata[i];

      if (part->sub_id != 0 ? !add_sub (store, part, factor, depth, walk, error)
                            : !add_item (store, recipe, part, factor, walk, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
walk_recipe (SteadStore  *store,
             gint64       recipe_id,
             double       factor,
             Walk        *walk,
             GError     **error)
{
  walk->minutes = 0;
  walk->needs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_need_free);
  if (add_recipe (store, recipe_id, factor, 0, walk, error))
    return TRUE;
  g_clear_pointer (&walk->needs, g_ptr_array_unref);
  return FALSE;
}

GPtrArray *
stead_recipe_repo_needs (SteadStore  *store,
                         gint64       recipe_id,
                         double       factor,
                         GError     **error)
{
  Walk walk;

  g_return_val_if_fail (STEAD_IS_STORE (store) && factor > 0, NULL);
  return walk_recipe (store, recipe_id, factor, &walk, error) ? walk.needs : NULL;
}

gboolean
stead_recipe_repo_minutes (SteadStore  *store,
                           gint64       recipe_id,
                           double       factor,
                           double      *out_minutes,
                           GError     **error)
{
  Walk walk;

  g_return_val_if_fail (STEAD_IS_STORE (store) && factor > 0 && out_minutes != NULL, FALSE);
  if (!walk_recipe (store, recipe_id, factor, &walk, error))
    return FALSE;
  g_ptr_array_unref (walk.needs);
  *out_minutes = walk.minutes;
  return TRUE;
}

GPtrArray *
stead_recipe_repo_inside (SteadStore  *store,
                          gint64       recipe_id,
                          GError     **error)
{
  static const char sql[] =
    "WITH RECURSIVE inside (id, depth) AS (SELECT ?1, 0"
    " UNION SELECT p.sub_id, depth + 1 FROM inside JOIN recipe_part p ON p.recipe_id = inside.id"
    " WHERE p.sub_id IS NOT NULL AND depth < 64)"
    " SELECT id FROM inside GROUP BY id ORDER BY min (depth), id";
  g_autoptr(GPtrArray) inside = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_free);
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return NULL;
  sqlite3_bind_int64 (stmt, 1, recipe_id);
  while ((found = stead_store_step (store, stmt, error)) == 1)
    {
      SteadRecipe *recipe = stead_recipe_row (store, sqlite3_column_int64 (stmt, 0), error);

      if (recipe == NULL)
        return NULL;
      g_ptr_array_add (inside, recipe);
    }
  return found == 0 ? g_steal_pointer (&inside) : NULL;
}

gboolean
stead_recipe_repo_price (SteadStore  *store,
                         gint64       item_id,
                         SteadDay     day,
                         double      *out_cents,
                         GError     **error)
{
  static const char sql[] =
    "SELECT price.cents / product.base_per_unit FROM product JOIN price ON price.product_id = product.id"
    " WHERE product.item_id = ?1 AND product.retired_on IS NULL AND price.from_day <= ?2"
    " ORDER BY price.from_day DESC, product.id LIMIT 1";
  g_autoptr(SteadStmt) stmt = NULL;
  int found;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_cents != NULL, FALSE);
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, item_id);
  sqlite3_bind_int (stmt, 2, day);
  found = stead_store_step (store, stmt, error);
  if (found < 0)
    return FALSE;
  *out_cents = found == 1 ? sqlite3_column_double (stmt, 0) : NAN;
  return TRUE;
}

/* stead-recipe-list.c - all recipes with what one of each costs today. */
#include "config.h"

#include "answer/stead-recipe-list.h"
#include "core/stead-money.h"
#include "store/stead-farm-repo.h"
#include "store/stead-lot-repo.h"

#include <math.h>

/* The rate of use does not matter here. */
#define USE_DAYS 28

void
stead_recipe_cost_free (SteadRecipeCost *cost)
{
  if (cost == NULL)
    return;
  stead_recipe_free (cost->recipe);
  g_free (cost->cost);
  g_free (cost);
}

/* Cents of one base unit of @item_id; each is asked of the store once. */
static gboolean
price_of (SteadStore  *store,
          GHashTable  *prices,
          gint64       item_id,
          double      *out_cents,
          GError     **error)
{
  const double *known = g_hash_table_lookup (prices, &item_id);
  SteadStock stock;

  if (known == NULL)
    {
      if (!stead_lot_repo_stock (store, item_id, stead_store_get_today (store), USE_DAYS, &stock, error))
        return FALSE;
      known = g_memdup2 (&stock.next_unit_cents, sizeof (double));
      g_hash_table_insert (prices, g_memdup2 (&item_id, sizeof item_id), (gpointer) known);
    }
  *out_cents = *known;
  return TRUE;
}

static gboolean
add_up (SteadStore       *store,
        GHashTable       *prices,
        SteadRecipeCost  *cost,
        gboolean         *out_any,
        GError          **error)
{
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (store, cost->recipe->id, 1, error);
  double sum = 0;

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const SteadRecipeNeed *need = needs->pdata[i];
      double cents;

      if (!price_of (store, prices, need->item_id, &cents, error))
        return FALSE;
      if (isnan (cents))
        cost->all_priced = FALSE;
      else
        {
          sum += need->need_base * cents;
          *out_any = TRUE;
        }
    }
  cost->unit_cents = sum / cost->recipe->yield_base;
  return needs != NULL;
}

/* Takes @recipe over. */
static SteadRecipeCost *
new_cost (SteadStore       *store,
          const SteadFarm  *farm,
          GHashTable       *prices,
          SteadRecipe      *recipe,
          GError          **error)
{
  g_autoptr(SteadRecipeCost) cost = g_new0 (SteadRecipeCost, 1);
  gboolean any = FALSE;

  cost->recipe = recipe;
  cost->all_priced = TRUE;
  if (!add_up (store, prices, cost, &any, error))
    return NULL;
  cost->cost = any ? stead_money_format (stead_money_round (cost->unit_cents
                                                            * stead_quantity_to_base (1, recipe->unit)), farm->currency)
                   : g_strdup ("–");
  return g_steal_pointer (&cost);
}

GPtrArray *
stead_recipe_list_new (SteadStore  *store,
                       gboolean     retired,
                       GError     **error)
{
  g_autoptr(GPtrArray) costs = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_cost_free);
  g_autoptr(GHashTable) prices = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(GPtrArray) recipes = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  farm = stead_farm_repo_get (store, error);
  recipes = farm != NULL ? stead_recipe_repo_list (store, retired, error) : NULL;
  if (recipes == NULL)
    return NULL;
  while (recipes->len > 0)
    {
      SteadRecipeCost *cost = new_cost (store, farm, prices, g_ptr_array_steal_index (recipes, 0), error);

      if (cost == NULL)
        return NULL;
      g_ptr_array_add (costs, cost);
    }
  return g_steal_pointer (&costs);
}

/* stead-recipe-list.h - all recipes with what one of each costs today.
 *
 * The same figure as in stead-recipe-answer.h; each price is looked up once.
 */
#pragma once

#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadRecipe *recipe;       /* without parts and steps */
  double       unit_cents;   /* of one base unit that is made */
  gboolean     all_priced;   /* FALSE: the price of an ingredient is not known */
  char        *cost;         /* "$1.06" for one of the item's unit; "–" where nothing is priced */
} SteadRecipeCost;

void stead_recipe_cost_free (SteadRecipeCost *cost);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRecipeCost, stead_recipe_cost_free)

/**
 * stead_recipe_list_new:
 * @retired: also recipes no longer in use
 *
 * Returns: (transfer full) (element-type SteadRecipeCost): by name
 */
GPtrArray *stead_recipe_list_new (SteadStore  *store,
                                  gboolean     retired,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-recipe-private.h - what the parts of the recipe repository share. */
#pragma once

#include "store/stead-recipe-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* Refuses what cannot be cooked; see stead_recipe_repo_save(). */
gboolean stead_recipe_check (SteadStore         *store,
                             const SteadRecipe  *recipe,
                             GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (element-type SteadRecipePart): in the order of the recipe */
GPtrArray *stead_recipe_parts (SteadStore  *store,
                               gint64       recipe_id,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The row without parts and steps. */
SteadRecipe *stead_recipe_row (SteadStore  *store,
                               gint64       id,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* stead_measure_to_base() for an item, with its words in this layer's domain. */
gboolean stead_item_to_base (const SteadItem  *item,
                             double            amount,
                             const SteadUnit  *unit,
                             double           *out_base,
                             GError          **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

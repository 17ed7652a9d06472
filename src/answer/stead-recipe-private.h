/* stead-recipe-private.h - what the parts of the recipe answer share. */
#pragma once

#include "answer/stead-recipe-answer.h"

G_BEGIN_DECLS

/* Fills in allergens and their text from the items, through the recipes that make them;
 * items that say nothing of allergens are added to @unsaid (of char *). */
gboolean stead_recipe_read_allergens (SteadRecipeAnswer  *self,
                                      SteadStore         *store,
                                      GPtrArray          *unsaid,
                                      GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Puts all figures into words. */
void stead_recipe_put_words (SteadRecipeAnswer *self,
                             const GPtrArray   *unsaid);

G_END_DECLS

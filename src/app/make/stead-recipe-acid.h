/* stead-recipe-acid.h - acidity and jars of a recipe: what decides how it may be kept. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_ACID (stead_recipe_acid_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipeAcid, stead_recipe_acid, STEAD, RECIPE_ACID, GtkWidget)

void     stead_recipe_acid_show (SteadRecipeAcid *self, const SteadRecipe *recipe, SteadDay today);
/* Puts what was typed into @recipe; FALSE after a field said what is wrong. */
gboolean stead_recipe_acid_read (SteadRecipeAcid *self, SteadRecipe *recipe);

G_END_DECLS

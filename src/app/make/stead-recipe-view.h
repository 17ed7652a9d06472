/* stead-recipe-view.h - one recipe: what one costs, what goes in, what is done, what is missing. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_VIEW (stead_recipe_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipeView, stead_recipe_view, STEAD, RECIPE_VIEW, GtkWidget)

/* Reads the farm anew.  How much is wanted stays while the recipe is the same. */
void stead_recipe_view_show (SteadRecipeView *self, SteadDesk *desk, gint64 recipe_id);

G_END_DECLS

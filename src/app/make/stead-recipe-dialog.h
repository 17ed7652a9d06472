/* stead-recipe-dialog.h - a recipe: new, or changed. */
#pragma once

#include "app/stead-dialog.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_DIALOG (stead_recipe_dialog_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipeDialog, stead_recipe_dialog, STEAD, RECIPE_DIALOG, SteadDialog)

/* @recipe_id: 0 for a new one; that is shown in Make once it is saved. */
void stead_recipe_dialog_show (GtkWidget *parent, SteadDesk *desk, gint64 recipe_id);

G_END_DECLS

/* stead-recipe-step-row.h - one step in the recipe dialog. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_STEP_ROW (stead_recipe_step_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipeStepRow, stead_recipe_step_row, STEAD, RECIPE_STEP_ROW, GtkWidget)

/* Signal "removed" (): the person takes the step off. */

GtkWidget       *stead_recipe_step_row_new  (SteadUnitSystem units);
void             stead_recipe_step_row_show (SteadRecipeStepRow *self, const SteadRecipeStep *step);
/* (transfer full) (nullable): NULL: a field says what is wrong */
SteadRecipeStep *stead_recipe_step_row_read (SteadRecipeStepRow *self);

G_END_DECLS

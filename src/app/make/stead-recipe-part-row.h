/* stead-recipe-part-row.h - one ingredient in the recipe dialog.
 *
 * Where the amount does not lead to the item's own measure, the row asks for the
 * weight of a cup or of a piece, and offers the usual one with its source.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_PART_ROW (stead_recipe_part_row_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipePartRow, stead_recipe_part_row, STEAD, RECIPE_PART_ROW, GtkWidget)

/* Signal "removed" (): the person takes the line off. */

/* @units: for what is weighed */
GtkWidget       *stead_recipe_part_row_new         (SteadUnitSystem units);
/* @items: of SteadItem, @recipes: of SteadRecipe; the choice is kept if it is among them.
 * What a recipe makes must be among the items. */
void             stead_recipe_part_row_set_choices (SteadRecipePartRow *self, GPtrArray *items, GPtrArray *recipes);
/* Makes the choice of the ingredient as wide as in the other rows of @group. */
void             stead_recipe_part_row_share_width (SteadRecipePartRow *self, GtkSizeGroup *group);
void             stead_recipe_part_row_show        (SteadRecipePartRow *self, const SteadRecipePart *part);
/* (transfer full) (nullable): NULL: a field says what is wrong */
SteadRecipePart *stead_recipe_part_row_read        (SteadRecipePartRow *self);
/* (transfer none) (nullable): the item with a weight that it did not have before, to be saved
 * before the recipe; belongs to the row.  After a good reading. */
SteadItem       *stead_recipe_part_row_get_weighed (SteadRecipePartRow *self);

/* (transfer full): all items, of SteadItem, with what a kitchen uses before feed and bedding */
GPtrArray       *stead_recipe_part_items           (SteadStore *store, GError **error);
/* (transfer full): the recipes in use but @recipe_id, of SteadRecipe */
GPtrArray       *stead_recipe_part_recipes         (SteadStore *store, gint64 recipe_id, GError **error);

G_END_DECLS

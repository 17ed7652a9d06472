/* stead-recipe-made.h - what a recipe makes, and how much: an item of the farm, or something new. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-item-repo.h"
#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_RECIPE_MADE (stead_recipe_made_get_type ())
G_DECLARE_FINAL_TYPE (SteadRecipeMade, stead_recipe_made, STEAD, RECIPE_MADE, GtkWidget)

/* Fills the units that something new can be counted in. */
void     stead_recipe_made_set_units   (SteadRecipeMade *self,
                                        SteadUnitSystem  system);
/* Fills the choice with the produce among @items (of SteadItem), and chooses @item_id; 0: something new. */
void     stead_recipe_made_set_items   (SteadRecipeMade *self,
                                        GPtrArray       *items,
                                        gint64           item_id);
/* Returns: the chosen item; 0: something new */
gint64   stead_recipe_made_get_item_id (SteadRecipeMade *self);
/* Zero shows nothing. */
void     stead_recipe_made_show_yield  (SteadRecipeMade *self,
                                        double           yield_base);
/* Puts item and yield into @recipe; for something new the item is 0, and @fresh describes it with
 * words that belong to the fields.  FALSE after a field said what is wrong. */
gboolean stead_recipe_made_read        (SteadRecipeMade *self,
                                        SteadRecipe     *recipe,
                                        SteadItem       *fresh);

G_END_DECLS

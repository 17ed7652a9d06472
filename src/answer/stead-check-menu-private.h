/* stead-check-menu-private.h - what the parts of the menu share, and foods that need no recipe. */
#pragma once

#include "answer/stead-check-menu.h"
#include "store/stead-lot-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-recipe-repo.h"

G_BEGIN_DECLS

SteadCheckMenu     *stead_check_menu_new_empty     (void) G_GNUC_WARN_UNUSED_RESULT;
/* What the menu keeps for its foods: a text, and a list of such texts that NULL ends; NULL for none. */
const char         *stead_check_menu_keep          (SteadCheckMenu *menu, const char *text);
const char * const *stead_check_menu_keep_words    (SteadCheckMenu *menu, GPtrArray *words);
/* A food whose name is there already is not added again. */
void                stead_check_menu_add           (SteadCheckMenu *menu, SteadCheckFood food, const char *name);
/* Adds those of the table that stand in @text, with commas between, to @allergens. */
void                stead_check_menu_add_allergens (GPtrArray *allergens, const char *text);
/* What a recipe makes, and those that are inside it. */
gboolean            stead_check_menu_read_recipe   (SteadCheckMenu *menu, SteadStore *store, gint64 recipe_id,
                                                    SteadCheckFood *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What a product is; @lots: of SteadLot, those on hand. */
gboolean            stead_check_menu_read_product  (SteadCheckMenu *menu, SteadStore *store,
                                                    const SteadProduct *product, const GPtrArray *lots,
                                                    SteadCheckFood *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_common_find:
 * @name: as typed
 * @out: (out): the food without its name; its words are those of the program
 *
 * Returns: whether it is a common food: the longest word of one that stands in @name counts
 */
gboolean stead_check_common_find (const char     *name,
                                  SteadCheckFood *out);

/**
 * stead_check_common_allergen:
 * @name: as someone wrote it on an item: "Eggs", "soy"
 *
 * Returns: (transfer none) (nullable): the word of the table: "egg"
 */
const char *stead_check_common_allergen (const char *name);

G_END_DECLS

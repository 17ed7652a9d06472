/* stead-check-menu-private.h - foods that need no recipe. */
#pragma once

#include "answer/stead-check-menu.h"

G_BEGIN_DECLS

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

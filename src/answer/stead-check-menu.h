/* stead-check-menu.h - what is made or sold, as the plan of checks wants to know it. */
#pragma once

#include "core/stead-check-plan.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  GArray       *foods;     /* of SteadCheckFood, each with a name of its own */
  GPtrArray    *unknown;   /* of const char *: names that neither the farm nor the list of common foods has */
  GStringChunk *strings;   /* all words of the foods */
  GPtrArray    *blocks;    /* all arrays of the foods */
} SteadCheckMenu;

void stead_check_menu_free (SteadCheckMenu *menu);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckMenu, stead_check_menu_free)

/* A kitchen batch: its own steps and ingredients, kept as its recipe says. */
SteadCheckMenu *stead_check_menu_new_kitchen  (SteadStore *store, gint64 batch_id,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One recipe. */
SteadCheckMenu *stead_check_menu_new_recipe   (SteadStore *store, gint64 recipe_id,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A sale day: what its plan brings along, with the lots that go with it.  @sale_id 0: the products
 * that are planned for the next one, or all in sale if none is; with their lots on hand. */
SteadCheckMenu *stead_check_menu_new_sale_day (SteadStore *store, gint64 sale_id,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_menu_new_text:
 * @text: "breakfast bowls, tomato sauce": foods with commas, semicolons or lines between
 *
 * Each is looked for among the recipes, the products and the common foods, in the
 * person's language and in English; case, blanks and a plural s aside.  What is none of
 * them is on the list all the same: more is asked about it.
 *
 * Returns: (transfer full): the menu; or %NULL with @error: nothing was typed
 */
SteadCheckMenu *stead_check_menu_new_text     (SteadStore *store, const char *text,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

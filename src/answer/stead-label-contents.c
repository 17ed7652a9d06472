/* stead-label-contents.c - what is in a pack: its ingredients by weight, and the allergens in them. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "answer/stead-label-private.h"
#include "core/stead-food-label.h"
#include "store/stead-recipe-repo.h"

typedef struct
{
  gint64     item_id;
  SteadItem *item;
  double     kg;     /* NAN: its weight is not known */
} Ingredient;

static void
ingredient_clear (Ingredient *ingredient)
{
  g_clear_pointer (&ingredient->item, stead_item_free);
}

static Ingredient *
find_ingredient (GArray *all,
                 gint64  item_id)
{
  for (guint i = 0; i < all->len; i++)
    if (g_array_index (all, Ingredient, i).item_id == item_id)
      return &g_array_index (all, Ingredient, i);
  return NULL;
}

static gboolean
is_eaten (SteadItemKind kind)
{
  return kind == STEAD_ITEM_INGREDIENT || kind == STEAD_ITEM_PRODUCE || kind == STEAD_ITEM_LIVESTOCK;
}

/* Each item once, with its weight as it goes into the pot. */
static gboolean
add_need (SteadLabelFacts        *facts,
          GArray                 *all,
          const SteadRecipeNeed  *need,
          GError                **error)
{
  Ingredient *found = find_ingredient (all, need->item_id);
  SteadMeasure measure;
  double kg;

  if (!is_eaten (need->item_kind))
    return TRUE;
  if (found == NULL)
    {
      Ingredient fresh = { .item_id = need->item_id, .item = stead_item_repo_get (facts->store, need->item_id, error) };

      if (fresh.item == NULL)
        return FALSE;
      g_array_append_val (all, fresh);
      found = &g_array_index (all, Ingredient, all->len - 1);
    }
  stead_item_measure (found->item, &measure);
  kg = stead_measure_kg (&measure, need->ready_base);
  if (isnan (kg) && !isnan (found->kg))
    {
      g_autofree char *text = g_strdup_printf (_("The weight of %s is not known, so its place among the ingredients is not: "
                                                 "enter what a cup or a piece of it weighs."), found->item->name);

      stead_label_add_missing (facts->out, text);
    }
  found->kg += kg;
  return TRUE;
}

/* "Ingredients: tomatoes, onions, salt." */
static void
word_ingredients (SteadLabelFacts *facts,
                  GArray          *all)
{
  g_autofree double *weights = g_new (double, all->len);
  g_autofree gsize *order = g_new (gsize, all->len);
  g_autofree double *sorted = g_new (double, all->len);
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr(GString) text = g_string_new ("Ingredients: ");

  for (guint i = 0; i < all->len; i++)
    weights[i] = isnan (g_array_index (all, Ingredient, i).kg) ? 0 : g_array_index (all, Ingredient, i).kg;
  stead_ingredient_order (weights, all->len, order);
  for (guint i = 0; i < all->len; i++)
    {
      char *name = g_utf8_strdown (stead_label_item_name (g_array_index (all, Ingredient, order[i]).item), -1);

      g_ptr_array_add (names, name);
      sorted[i] = weights[order[i]];
      g_string_append_printf (text, i == 0 ? "%s" : ", %s", name);
    }
  g_string_append_c (text, '.');
  facts->out->ingredients = g_string_free (g_steal_pointer (&text), FALSE);
  stead_label_why_ingredients (facts, (const char * const *) names->pdata, sorted, all->len);
}

/* Allergens are lists with commas, as a person typed them; each is named once. */
static void
add_allergens (GPtrArray  *all,
               const char *list)
{
  g_auto(GStrv) parts = g_strsplit (list != NULL ? list : "", ",", -1);

  for (gsize i = 0; parts[i] != NULL; i++)
    {
      g_autofree char *name = g_utf8_strdown (g_strstrip (parts[i]), -1);

      if (*name != '\0' && !g_ptr_array_find_with_equal_func (all, name, g_str_equal, NULL))
        g_ptr_array_add (all, g_steal_pointer (&name));
    }
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return strcmp (*(const char * const *) a, *(const char * const *) b);
}

static void
word_contains (SteadLabelFacts *facts,
               GArray          *all)
{
  g_autoptr(GPtrArray) allergens = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;

  add_allergens (allergens, facts->item->allergens);
  for (guint i = 0; i < all->len; i++)
    add_allergens (allergens, g_array_index (all, Ingredient, i).item->allergens);
  if (allergens->len == 0)
    return;
  g_ptr_array_sort (allergens, compare_names);
  g_ptr_array_add (allergens, NULL);
  list = g_strjoinv (", ", (char **) allergens->pdata);
  facts->out->contains = g_strdup_printf ("Contains: %s.", list);
}

gboolean
stead_label_word_contents (SteadLabelFacts  *facts,
                           GError          **error)
{
  g_autoptr(GArray) all = g_array_new (FALSE, TRUE, sizeof (Ingredient));
  g_autoptr(GPtrArray) needs = NULL;

  g_array_set_clear_func (all, (GDestroyNotify) ingredient_clear);
  if (facts->out->kind == STEAD_LABEL_SHELF)
    return TRUE;
  if (facts->recipe_id != 0)
    needs = stead_recipe_repo_needs (facts->store, facts->recipe_id, 1, error);
  if (facts->recipe_id != 0 && needs == NULL)
    return FALSE;
  for (guint i = 0; needs != NULL && i < needs->len; i++)
    if (!add_need (facts, all, needs->pdata[i], error))
      return FALSE;
  if (all->len > 1)
    word_ingredients (facts, all);
  word_contains (facts, all);
  return TRUE;
}

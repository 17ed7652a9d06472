/* stead-check-menu.c - what is made, out of recipes and batches of the kitchen. */
#include "config.h"

#include "answer/stead-check-menu-private.h"
#include "store/stead-kitchen-repo.h"

/* Recipes that make what goes into others: deeper than this is a damaged file. */
#define DEEPEST 16

/* More than a kitchen can list; a text that was pasted by mistake has more. */
#define MOST_FOODS 200

void
stead_check_menu_free (SteadCheckMenu *menu)
{
  if (menu == NULL)
    return;
  g_array_unref (menu->foods);
  g_ptr_array_unref (menu->unknown);
  g_string_chunk_free (menu->strings);
  g_ptr_array_unref (menu->blocks);
  g_free (menu);
}

SteadCheckMenu *
stead_check_menu_new_empty (void)
{
  SteadCheckMenu *menu = g_new0 (SteadCheckMenu, 1);

  menu->foods = g_array_new (FALSE, TRUE, sizeof (SteadCheckFood));
  menu->unknown = g_ptr_array_new ();
  menu->strings = g_string_chunk_new (1024);
  menu->blocks = g_ptr_array_new_with_free_func (g_free);
  return menu;
}

const char *
stead_check_menu_keep (SteadCheckMenu *menu,
                       const char     *text)
{
  return text != NULL ? g_string_chunk_insert_const (menu->strings, text) : NULL;
}

/* A list of words that are kept, ended by NULL; NULL for an empty one. */
const char * const *
stead_check_menu_keep_words (SteadCheckMenu *menu,
                             GPtrArray      *words)
{
  const char **list;

  if (words->len == 0)
    return NULL;
  list = g_new0 (const char *, words->len + 1);
  for (guint i = 0; i < words->len; i++)
    list[i] = words->pdata[i];
  g_ptr_array_add (menu->blocks, list);
  return list;
}

static void
add_word (GPtrArray  *words,
          const char *word)
{
  for (guint i = 0; i < words->len; i++)
    if (g_str_equal (words->pdata[i], word))
      return;
  g_ptr_array_add (words, (gpointer) word);
}

static const SteadCheckFood *
food_named (const SteadCheckMenu *menu,
            const char           *name)
{
  for (guint i = 0; i < menu->foods->len; i++)
    if (g_str_equal (g_array_index (menu->foods, SteadCheckFood, i).name, name))
      return &g_array_index (menu->foods, SteadCheckFood, i);
  return NULL;
}

void
stead_check_menu_add (SteadCheckMenu *menu,
                      SteadCheckFood  food,
                      const char     *name)
{
  if (food_named (menu, name) != NULL || menu->foods->len >= MOST_FOODS)
    return;
  food.name = stead_check_menu_keep (menu, name);
  g_array_append_val (menu->foods, food);
}

/* --- what is in it ------------------------------------------------------------------- */

typedef struct
{
  SteadCheckMenu *menu;
  SteadStore     *store;
  GPtrArray      *parts;       /* of const char * */
  GPtrArray      *allergens;   /* of const char * */
} Inside;

static gboolean look_into_recipe (Inside  *inside,
                                  gint64   recipe_id,
                                  int      depth,
                                  GError **error);

void
stead_check_menu_add_allergens (GPtrArray  *allergens,
                                const char *text)
{
  g_auto(GStrv) names = g_strsplit_set (text != NULL ? text : "", ",;\n", -1);

  for (gsize i = 0; names[i] != NULL; i++)
    {
      const char *word = stead_check_common_allergen (g_strstrip (names[i]));

      if (word != NULL)
        add_word (allergens, word);
    }
}

/* What the farm cooked itself has what went into it; but it is cooked already. */
static gboolean
look_into_item (Inside  *inside,
                gint64   item_id,
                int      depth,
                GError **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (inside->store, item_id, error);
  gint64 recipe_id = item != NULL ? stead_recipe_repo_of_item (inside->store, item_id, error) : -1;

  if (recipe_id < 0)
    return FALSE;
  stead_check_menu_add_allergens (inside->allergens, item->allergens);
  if (item->food != NULL && depth == 0)
    add_word (inside->parts, stead_check_menu_keep (inside->menu, item->food));
  return recipe_id == 0 || depth > DEEPEST || look_into_recipe (inside, recipe_id, depth + 1, error);
}

static gboolean
look_into_recipe (Inside  *inside,
                  gint64   recipe_id,
                  int      depth,
                  GError **error)
{
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (inside->store, recipe_id, 1, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    if (!look_into_item (inside, ((const SteadRecipeNeed *) needs->pdata[i])->item_id, depth, error))
      return FALSE;
  return needs != NULL;
}

/* --- recipes and batches ----------------------------------------------------------------- */

static SteadCheckFood
food_of_recipe (SteadCheckMenu    *menu,
                const SteadRecipe *recipe)
{
  return (SteadCheckFood) {
    .form = STEAD_CHECK_FORM_DISH, .recipe = TRUE, .kept = (SteadCheckKept) recipe->kept, .sealed = recipe->sealed,
    .acid_added = recipe->acid_added, .tomato = recipe->tomato, .ph = recipe->ph, .aw = recipe->aw,
    .authority = recipe->authority_on != STEAD_DAY_NONE ? stead_check_menu_keep (menu, recipe->authority) : NULL,
  };
}

/* Steps without a word of the tables are left out, but tell that there are steps. */
static void
add_step (SteadCheckMenu *menu,
          GArray         *steps,
          SteadCheckStep  step)
{
  step.step = stead_check_menu_keep (menu, step.step);
  step.food = stead_check_menu_keep (menu, step.food);
  g_array_append_val (steps, step);
}

static void
set_steps (SteadCheckMenu *menu,
           SteadCheckFood *food,
           GArray         *steps)
{
  food->n_steps = steps->len;
  food->steps = g_memdup2 (steps->data, steps->len * sizeof (SteadCheckStep));
  g_ptr_array_add (menu->blocks, (gpointer) food->steps);
}

gboolean
stead_check_menu_read_recipe (SteadCheckMenu  *menu,
                              SteadStore      *store,
                              gint64           recipe_id,
                              SteadCheckFood  *out,
                              GError         **error)
{
  g_autoptr(GPtrArray) inside = stead_recipe_repo_inside (store, recipe_id, error);
  g_autoptr(GArray) steps = g_array_new (FALSE, FALSE, sizeof (SteadCheckStep));
  g_autoptr(GPtrArray) parts = g_ptr_array_new ();
  g_autoptr(GPtrArray) allergens = g_ptr_array_new ();
  Inside look = { menu, store, parts, allergens };

  if (inside == NULL || inside->len == 0 || !look_into_recipe (&look, recipe_id, 0, error))
    return FALSE;
  *out = food_of_recipe (menu, inside->pdata[0]);
  for (guint i = 0; i < inside->len; i++)
    {
      g_autoptr(SteadRecipe) recipe = stead_recipe_repo_get (store, ((const SteadRecipe *) inside->pdata[i])->id, error);

      if (recipe == NULL)
        return FALSE;
      for (guint s = 0; s < recipe->steps->len; s++)
        {
          const SteadRecipeStep *step = recipe->steps->pdata[s];

          /* How a part of it is kept until it goes in is not how the whole is kept. */
          if (i == 0 || g_strcmp0 (step->step, "cook") == 0)
            add_step (menu, steps, (SteadCheckStep) { step->step, step->food, step->least_c, step->most_c, step->hold_s });
        }
    }
  set_steps (menu, out, steps);
  out->parts = stead_check_menu_keep_words (menu, parts);
  out->allergens = stead_check_menu_keep_words (menu, allergens);
  return TRUE;
}

SteadCheckMenu *
stead_check_menu_new_recipe (SteadStore  *store,
                             gint64       recipe_id,
                             GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = stead_check_menu_new_empty ();
  g_autoptr(SteadRecipe) recipe = NULL;
  SteadCheckFood food;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  recipe = stead_recipe_repo_get (store, recipe_id, error);
  if (recipe == NULL || !stead_check_menu_read_recipe (menu, store, recipe_id, &food, error))
    return NULL;
  stead_check_menu_add (menu, food, recipe->name);
  return g_steal_pointer (&menu);
}

SteadCheckMenu *
stead_check_menu_new_kitchen (SteadStore  *store,
                              gint64       batch_id,
                              GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = stead_check_menu_new_empty ();
  g_autoptr(GArray) steps = g_array_new (FALSE, FALSE, sizeof (SteadCheckStep));
  g_autoptr(GPtrArray) parts = g_ptr_array_new ();
  g_autoptr(GPtrArray) allergens = g_ptr_array_new ();
  Inside look = { menu, store, parts, allergens };
  g_autoptr(SteadKitchen) kitchen = NULL;
  g_autoptr(SteadRecipe) recipe = NULL;
  SteadCheckFood food;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  kitchen = stead_kitchen_repo_get (store, batch_id, error);
  recipe = kitchen != NULL ? stead_recipe_repo_get (store, kitchen->recipe_id, error) : NULL;
  if (recipe == NULL)
    return NULL;
  for (guint i = 0; i < kitchen->parts->len; i++)
    if (!look_into_item (&look, ((const SteadKitchenPart *) kitchen->parts->pdata[i])->item_id, 0, error))
      return NULL;
  for (guint i = 0; i < kitchen->steps->len; i++)
    {
      const SteadKitchenStep *step = kitchen->steps->pdata[i];

      add_step (menu, steps, (SteadCheckStep) { step->step, step->food, step->least_c, step->most_c, step->hold_s });
    }
  food = food_of_recipe (menu, recipe);
  set_steps (menu, &food, steps);
  food.parts = stead_check_menu_keep_words (menu, parts);
  food.allergens = stead_check_menu_keep_words (menu, allergens);
  stead_check_menu_add (menu, food, kitchen->recipe_name);
  return g_steal_pointer (&menu);
}

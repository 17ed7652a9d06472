/* stead-check-menu.c - what is made or sold, out of recipes, batches, products and words. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-menu-private.h"
#include "store/stead-batch-repo.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-product-repo.h"
#include "store/stead-sale-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

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

static SteadCheckMenu *
menu_new (void)
{
  SteadCheckMenu *menu = g_new0 (SteadCheckMenu, 1);

  menu->foods = g_array_new (FALSE, TRUE, sizeof (SteadCheckFood));
  menu->unknown = g_ptr_array_new ();
  menu->strings = g_string_chunk_new (1024);
  menu->blocks = g_ptr_array_new_with_free_func (g_free);
  return menu;
}

static const char *
keep (SteadCheckMenu *menu,
      const char     *text)
{
  return text != NULL ? g_string_chunk_insert_const (menu->strings, text) : NULL;
}

/* A list of words that are kept, ended by NULL; NULL for an empty one. */
static const char * const *
keep_words (SteadCheckMenu *menu,
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

static void
add_food (SteadCheckMenu *menu,
          SteadCheckFood  food,
          const char     *name)
{
  if (food_named (menu, name) != NULL || menu->foods->len >= MOST_FOODS)
    return;
  food.name = keep (menu, name);
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

static void
add_allergens (GPtrArray  *allergens,
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
  add_allergens (inside->allergens, item->allergens);
  if (item->food != NULL && depth == 0)
    add_word (inside->parts, keep (inside->menu, item->food));
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
    .authority = recipe->authority_on != STEAD_DAY_NONE ? keep (menu, recipe->authority) : NULL,
  };
}

/* Steps without a word of the tables are left out, but tell that there are steps. */
static void
add_step (SteadCheckMenu *menu,
          GArray         *steps,
          SteadCheckStep  step)
{
  step.step = keep (menu, step.step);
  step.food = keep (menu, step.food);
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

static gboolean
read_recipe (SteadCheckMenu  *menu,
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
  out->parts = keep_words (menu, parts);
  out->allergens = keep_words (menu, allergens);
  return TRUE;
}

SteadCheckMenu *
stead_check_menu_new_recipe (SteadStore  *store,
                             gint64       recipe_id,
                             GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = menu_new ();
  g_autoptr(SteadRecipe) recipe = NULL;
  SteadCheckFood food;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  recipe = stead_recipe_repo_get (store, recipe_id, error);
  if (recipe == NULL || !read_recipe (menu, store, recipe_id, &food, error))
    return NULL;
  add_food (menu, food, recipe->name);
  return g_steal_pointer (&menu);
}

SteadCheckMenu *
stead_check_menu_new_kitchen (SteadStore  *store,
                              gint64       batch_id,
                              GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = menu_new ();
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
  food.parts = keep_words (menu, parts);
  food.allergens = keep_words (menu, allergens);
  add_food (menu, food, kitchen->recipe_name);
  return g_steal_pointer (&menu);
}

/* --- products ------------------------------------------------------------------------------ */

/* What comes out of a batch as it is. */
static gboolean
read_batch (SteadStore          *store,
            const SteadProduct  *product,
            SteadCheckFood      *out,
            GError             **error)
{
  static const char * const egg[] = { "egg", NULL };
  static const char * const fish[] = { "fish", NULL };
  g_autoptr(SteadBatch) batch = stead_batch_repo_get (store, product->batch_id, error);

  if (batch == NULL)
    return FALSE;
  if (batch->kind == STEAD_BATCH_FLOCK)
    {
      out->form = STEAD_CHECK_FORM_SHELL_EGGS;
      out->allergens = egg;
    }
  else if (batch->kind == STEAD_BATCH_FISH)
    {
      out->form = STEAD_CHECK_FORM_RAW_ANIMAL;
      out->allergens = fish;
    }
  else if (batch->kind == STEAD_BATCH_CROP)
    out->form = STEAD_CHECK_FORM_WHOLE_PRODUCE;
  return TRUE;
}

static gboolean
read_item_food (SteadCheckMenu  *menu,
                SteadStore      *store,
                gint64           item_id,
                SteadCheckFood  *out,
                GError         **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, item_id, error);
  g_autoptr(GPtrArray) allergens = g_ptr_array_new ();

  if (item == NULL)
    return FALSE;
  if (g_strcmp0 (item->food, "raw_shell_eggs") == 0)
    out->form = STEAD_CHECK_FORM_SHELL_EGGS;
  add_allergens (allergens, item->allergens);
  if (allergens->len > 0)
    out->allergens = keep_words (menu, allergens);
  return TRUE;
}

static void
set_lots (SteadCheckMenu  *menu,
          const GPtrArray *lots,
          gint64           item_id,
          SteadCheckFood  *food)
{
  g_autoptr(GArray) found = g_array_new (FALSE, FALSE, sizeof (SteadCheckLot));

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      /* Of what was bought only its own date is known. */
      SteadCheckLot known = { NULL, lot->receipt_id == 0 ? lot->day : STEAD_DAY_NONE, lot->best_by };

      if (lot->item_id != item_id)
        continue;
      known.code = keep (menu, lot->code);
      g_array_append_val (found, known);
    }
  if (found->len == 0)
    return;
  food->n_lots = found->len;
  food->lots = g_memdup2 (found->data, found->len * sizeof (SteadCheckLot));
  g_ptr_array_add (menu->blocks, (gpointer) food->lots);
}

static gboolean
read_product (SteadCheckMenu      *menu,
              SteadStore          *store,
              const SteadProduct  *product,
              const GPtrArray     *lots,
              SteadCheckFood      *out,
              GError             **error)
{
  gint64 recipe_id = product->item_id != 0 ? stead_recipe_repo_of_item (store, product->item_id, error) : 0;

  *out = (SteadCheckFood) { .form = STEAD_CHECK_FORM_UNKNOWN, .kept = STEAD_CHECK_KEPT_UNKNOWN, .ph = NAN, .aw = NAN };
  if (recipe_id < 0)
    return FALSE;
  if (recipe_id > 0)
    {
      if (!read_recipe (menu, store, recipe_id, out, error))
        return FALSE;
    }
  else if (product->batch_id != 0)
    {
      if (!read_batch (store, product, out, error))
        return FALSE;
    }
  else if (product->item_id != 0 && !read_item_food (menu, store, product->item_id, out, error))
    return FALSE;
  if (out->form == STEAD_CHECK_FORM_UNKNOWN)
    {
      SteadCheckFood common;

      if (stead_check_common_find (product->name, &common))
        *out = common;
    }
  if (product->item_id != 0)
    set_lots (menu, lots, product->item_id, out);
  return TRUE;
}

static const SteadProduct *
product_of (const GPtrArray *products,
            gint64           id)
{
  for (guint i = 0; i < products->len; i++)
    if (((const SteadProduct *) products->pdata[i])->id == id)
      return products->pdata[i];
  return NULL;
}

/* Of the lots on hand those that go along; all of the item if none was named. */
static GPtrArray *
lots_along (const SteadSaleGood *good,
            const GPtrArray     *lots)
{
  GPtrArray *along = g_ptr_array_new ();

  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      gboolean named = good->lots->len == 0;

      for (guint n = 0; n < good->lots->len; n++)
        named |= g_array_index (good->lots, SteadSaleLot, n).lot_id == lot->id;
      if (named)
        g_ptr_array_add (along, lots->pdata[i]);
    }
  return along;
}

/* What the plan of a sale day brings along. */
static gboolean
read_sale (SteadCheckMenu   *menu,
           SteadStore       *store,
           gint64            sale_id,
           const GPtrArray  *products,
           const GPtrArray  *lots,
           GError          **error)
{
  g_autoptr(SteadSale) sale = stead_sale_repo_get (store, sale_id, error);

  for (guint i = 0; sale != NULL && i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      const SteadProduct *product = product_of (products, good->product_id);
      g_autoptr(GPtrArray) along = lots_along (good, lots);
      SteadCheckFood food;

      if (product == NULL)
        continue;
      if (!read_product (menu, store, product, along, &food, error))
        return FALSE;
      add_food (menu, food, product->name);
    }
  if (sale != NULL && menu->foods->len > 0)
    return TRUE;
  if (sale != NULL)
    g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                         _("Nothing is planned to be sold on that day yet. Plan it in Sell first."));
  return FALSE;
}

SteadCheckMenu *
stead_check_menu_new_sale_day (SteadStore  *store,
                               gint64       sale_id,
                               GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = menu_new ();
  g_autoptr(GPtrArray) products = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  gboolean planned = FALSE;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  products = stead_product_repo_list (store, sale_id != 0, error);
  lots = products != NULL ? stead_lot_repo_list (store, FALSE, error) : NULL;
  if (lots == NULL)
    return NULL;
  if (sale_id != 0)
    return read_sale (menu, store, sale_id, products, lots, error) ? g_steal_pointer (&menu) : NULL;
  for (guint i = 0; i < products->len; i++)
    planned |= ((const SteadProduct *) products->pdata[i])->planned_units > 0;
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      SteadCheckFood food;

      if (planned && product->planned_units <= 0)
        continue;
      if (!read_product (menu, store, product, lots, &food, error))
        return NULL;
      add_food (menu, food, product->name);
    }
  return g_steal_pointer (&menu);
}

/* --- a typed menu ------------------------------------------------------------------------------ */

/* Folded, single blanks, without a plural s: "Breakfast  Bowls" is "breakfast bowl". */
static char *
fold (const char *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);
  g_auto(GStrv) words = g_strsplit_set (folded, " \t", -1);
  GString *out = g_string_new (NULL);

  for (gsize i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0')
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", words[i]);
  if (out->len > 3 && out->str[out->len - 1] == 's')
    g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

static gboolean
same_name (const char *a,
           const char *b)
{
  g_autofree char *x = fold (a);
  g_autofree char *y = fold (b);

  return g_str_equal (x, y);
}

/* The farm file, read once for all names. */
typedef struct
{
  GPtrArray *recipes;
  GPtrArray *products;
  GPtrArray *lots;
} Known;

static gboolean
read_name (SteadCheckMenu  *menu,
           SteadStore      *store,
           const Known     *known,
           const char      *name,
           GError         **error)
{
  SteadCheckFood food;

  for (guint i = 0; i < known->recipes->len; i++)
    {
      const SteadRecipe *recipe = known->recipes->pdata[i];

      if (!same_name (recipe->name, name))
        continue;
      if (!read_recipe (menu, store, recipe->id, &food, error))
        return FALSE;
      add_food (menu, food, recipe->name);
      return TRUE;
    }
  for (guint i = 0; i < known->products->len; i++)
    {
      const SteadProduct *product = known->products->pdata[i];

      if (!same_name (product->name, name))
        continue;
      if (!read_product (menu, store, product, known->lots, &food, error))
        return FALSE;
      add_food (menu, food, product->name);
      return TRUE;
    }
  if (!stead_check_common_find (name, &food))
    {
      food = (SteadCheckFood) { .form = STEAD_CHECK_FORM_UNKNOWN, .kept = STEAD_CHECK_KEPT_UNKNOWN, .ph = NAN, .aw = NAN };
      g_ptr_array_add (menu->unknown, (gpointer) keep (menu, name));
    }
  add_food (menu, food, name);
  return TRUE;
}

SteadCheckMenu *
stead_check_menu_new_text (SteadStore  *store,
                           const char  *text,
                           GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = menu_new ();
  g_auto(GStrv) names = NULL;
  g_autoptr(GPtrArray) recipes = NULL;
  g_autoptr(GPtrArray) products = NULL;
  g_autoptr(GPtrArray) lots = NULL;
  Known known;

  g_return_val_if_fail (STEAD_IS_STORE (store) && text != NULL, NULL);
  recipes = stead_recipe_repo_list (store, FALSE, error);
  products = recipes != NULL ? stead_product_repo_list (store, FALSE, error) : NULL;
  lots = products != NULL ? stead_lot_repo_list (store, FALSE, error) : NULL;
  if (lots == NULL)
    return NULL;
  known = (Known) { recipes, products, lots };
  names = g_strsplit_set (text, ",;\n\r", -1);
  for (gsize i = 0; names[i] != NULL; i++)
    if (g_strstrip (names[i])[0] != '\0' && !read_name (menu, store, &known, names[i], error))
      return NULL;
  if (menu->foods->len == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                           _("Enter what is made or sold, with commas between: breakfast bowls, tomato sauce."));
      return NULL;
    }
  return g_steal_pointer (&menu);
}

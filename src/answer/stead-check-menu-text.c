/* stead-check-menu-text.c - what is made or sold, out of a menu that was typed in. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-menu-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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

static const SteadRecipe *
recipe_named (const Known *known,
              const char  *name)
{
  for (guint i = 0; i < known->recipes->len; i++)
    if (same_name (((const SteadRecipe *) known->recipes->pdata[i])->name, name))
      return known->recipes->pdata[i];
  return NULL;
}

static const SteadProduct *
product_named (const Known *known,
               const char  *name)
{
  for (guint i = 0; i < known->products->len; i++)
    if (same_name (((const SteadProduct *) known->products->pdata[i])->name, name))
      return known->products->pdata[i];
  return NULL;
}

static gboolean
read_name (SteadCheckMenu  *menu,
           SteadStore      *store,
           const Known     *known,
           const char      *name,
           GError         **error)
{
  const SteadRecipe *recipe = recipe_named (known, name);
  const SteadProduct *product = product_named (known, name);
  SteadCheckFood food;

  if (recipe != NULL)
    {
      if (!stead_check_menu_read_recipe (menu, store, recipe->id, &food, error))
        return FALSE;
      stead_check_menu_add (menu, food, recipe->name);
      return TRUE;
    }
  if (product != NULL)
    {
      if (!stead_check_menu_read_product (menu, store, product, known->lots, &food, error))
        return FALSE;
      stead_check_menu_add (menu, food, product->name);
      return TRUE;
    }
  if (!stead_check_common_find (name, &food))
    {
      food = (SteadCheckFood) { .form = STEAD_CHECK_FORM_UNKNOWN, .kept = STEAD_CHECK_KEPT_UNKNOWN, .ph = NAN, .aw = NAN };
      g_ptr_array_add (menu->unknown, (gpointer) stead_check_menu_keep (menu, name));
    }
  stead_check_menu_add (menu, food, name);
  return TRUE;
}

/* A name with commas in it has no more parts. */
#define MOST_PARTS 4

/* How many of the @parts from the first on are one name that the farm knows: "Tomato sauce, pint".
 * @out: (out): the name, NULL for 0 */
static guint
find_joined (const Known  *known,
             char * const *parts,
             char        **out)
{
  guint most = MIN (g_strv_length ((char **) parts), MOST_PARTS);

  for (guint n = most; n > 1; n--)
    {
      g_autoptr(GString) name = g_string_new (parts[0]);

      for (guint i = 1; i < n; i++)
        g_string_append_printf (name, ", %s", parts[i]);
      if (recipe_named (known, name->str) == NULL && product_named (known, name->str) == NULL)
        continue;
      *out = g_strdup (name->str);
      return n;
    }
  *out = NULL;
  return 0;
}

/* Names with commas between. */
static gboolean
read_names (SteadCheckMenu  *menu,
            SteadStore      *store,
            const Known     *known,
            const char      *text,
            GError         **error)
{
  g_auto(GStrv) parts = g_strsplit (text, ",", -1);
  guint n;

  for (guint i = 0; parts[i] != NULL; i++)
    g_strstrip (parts[i]);
  for (guint i = 0; parts[i] != NULL; i += MAX (n, 1))
    {
      g_autofree char *joined = NULL;

      n = find_joined (known, parts + i, &joined);
      if ((n > 0 || *parts[i] != '\0') && !read_name (menu, store, known, n > 0 ? joined : parts[i], error))
        return FALSE;
    }
  return TRUE;
}

SteadCheckMenu *
stead_check_menu_new_text (SteadStore  *store,
                           const char  *text,
                           GError     **error)
{
  g_autoptr(SteadCheckMenu) menu = stead_check_menu_new_empty ();
  g_auto(GStrv) lines = NULL;
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
  lines = g_strsplit_set (text, ";\n\r", -1);
  for (gsize i = 0; lines[i] != NULL; i++)
    if (!read_names (menu, store, &known, lines[i], error))
      return NULL;
  if (menu->foods->len == 0)
    {
      g_set_error_literal (error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING,
                           _("Enter what is made or sold, with commas between: breakfast bowls, tomato sauce."));
      return NULL;
    }
  return g_steal_pointer (&menu);
}

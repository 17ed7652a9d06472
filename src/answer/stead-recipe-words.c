/* stead-recipe-words.c - what a recipe costs, holds and lacks, in words. */
#include "config.h"

#include "answer/stead-recipe-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* --- allergens --------------------------------------------------------------------------- */

/* Recipes that make what goes into others: deeper than this is a damaged file. */
#define DEEPEST 16

static gboolean
has_name (const GPtrArray *names,
          const char      *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *other = g_utf8_casefold (names->pdata[i], -1);

      if (g_str_equal (folded, other))
        return TRUE;
    }
  return FALSE;
}

static void
add_name (GPtrArray  *names,
          const char *name)
{
  if (name[0] != '\0' && !has_name (names, name))
    g_ptr_array_add (names, g_strdup (name));
}

/* "milk, egg; wheat": each on its own. */
static void
add_allergens (GPtrArray  *allergens,
               const char *text)
{
  g_auto(GStrv) names = g_strsplit_set (text, ",;\n", -1);

  for (gsize i = 0; names[i] != NULL; i++)
    add_name (allergens, g_strstrip (names[i]));
}

static gboolean
is_food (SteadItemKind kind)
{
  return kind == STEAD_ITEM_INGREDIENT || kind == STEAD_ITEM_PRODUCE;
}

static gboolean read_recipe (SteadRecipeAnswer  *self,
                             SteadStore         *store,
                             gint64              recipe_id,
                             int                 depth,
                             GPtrArray          *unsaid,
                             GError            **error);

/* What the farm cooked itself has what went into it. */
static gboolean
read_item (SteadRecipeAnswer  *self,
           SteadStore         *store,
           gint64              item_id,
           int                 depth,
           GPtrArray          *unsaid,
           GError            **error)
{
  g_autoptr(SteadItem) item = stead_item_repo_get (store, item_id, error);
  gint64 recipe_id = item != NULL ? stead_recipe_repo_of_item (store, item_id, error) : -1;

  if (recipe_id < 0)
    return FALSE;
  if (item->allergens != NULL)
    add_allergens (self->allergens, item->allergens);
  else if (recipe_id == 0 && is_food (item->kind))
    add_name (unsaid, item->name);
  return recipe_id == 0 || recipe_id == self->recipe->id || depth > DEEPEST
         || read_recipe (self, store, recipe_id, depth + 1, unsaid, error);
}

static gboolean
read_recipe (SteadRecipeAnswer  *self,
             SteadStore         *store,
             gint64              recipe_id,
             int                 depth,
             GPtrArray          *unsaid,
             GError            **error)
{
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (store, recipe_id, 1, error);

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    if (!read_item (self, store, ((const SteadRecipeNeed *) needs->pdata[i])->item_id, depth, unsaid, error))
      return FALSE;
  return needs != NULL;
}

static int
compare_names (gconstpointer a,
               gconstpointer b)
{
  return g_utf8_collate (*(const char * const *) a, *(const char * const *) b);
}

gboolean
stead_recipe_read_allergens (SteadRecipeAnswer  *self,
                             SteadStore         *store,
                             GPtrArray          *unsaid,
                             GError            **error)
{
  if (!read_recipe (self, store, self->recipe->id, 0, unsaid, error))
    return FALSE;
  g_ptr_array_sort (self->allergens, compare_names);
  g_ptr_array_sort (unsaid, compare_names);
  return TRUE;
}

/* --- sentences ----------------------------------------------------------------------------- */

char *
stead_recipe_amount (double           base,
                     const SteadUnit *unit,
                     const char      *name)
{
  g_autofree char *amount = stead_quantity_format (base, unit);

  if (unit->dimension == STEAD_DIMENSION_COUNT)
    return g_steal_pointer (&amount);
  /* Translators: "2 qt", name of what is made. */
  return g_strdup_printf (C_("amount of a thing", "%s of %s"), amount, name);
}

static char *
list_of (const GPtrArray *names)
{
  g_autoptr(GPtrArray) strv = g_ptr_array_new ();

  for (guint i = 0; i < names->len; i++)
    g_ptr_array_add (strv, names->pdata[i]);
  g_ptr_array_add (strv, NULL);
  return stead_words_list ((const char * const *) strv->pdata);
}

/* "One “Bowl” costs $0.42", "1 qt of “Sauce” costs $3.10". */
static char *
cost_sentence (const SteadRecipeAnswer *self)
{
  const SteadRecipe *recipe = self->recipe;
  double one_base = stead_quantity_to_base (1, recipe->unit);
  g_autofree char *one = stead_quantity_format (one_base, recipe->unit);
  g_autofree char *cost = stead_money_format (stead_money_round (self->unit_cents * one_base), self->farm->currency);

  if (g_str_equal (recipe->unit->id, "ea"))
    return g_markup_printf_escaped (_("One “%s” costs <b>%s</b> at today's prices."), recipe->item_name, cost);
  /* Translators: "1 qt", name of what is made, money. */
  return g_markup_printf_escaped (_("%s of “%s” costs <b>%s</b> at today's prices."), one, recipe->item_name, cost);
}

static char *
dearest_sentence (const SteadRecipeAnswer *self)
{
  g_autofree char *cost = NULL;
  g_autofree char *share = NULL;
  g_autofree char *amount = NULL;

  if (self->dearest == NULL)
    return NULL;
  cost = stead_money_format (self->dearest->cents, self->farm->currency);
  share = stead_words_percent (self->dearest->share_frac, 0);
  amount = stead_recipe_amount (self->wanted_base, self->recipe->unit, self->recipe->item_name);
  /* Translators: name of an ingredient, money, amount that is made, "36 %". */
  return g_markup_printf_escaped (_("The dearest ingredient is %s: %s for %s, which is %s of it."), self->dearest->name, cost, amount,
                                  share);
}

static char *
work_sentence (const SteadRecipeAnswer *self)
{
  g_autofree char *minutes = stead_number_format (self->minutes, 0);
  g_autofree char *left = NULL;

  if (!(self->minutes > 0))
    return NULL;
  if (isnan (self->return_cents))
    return g_markup_printf_escaped (_("It takes %s minutes of work."), minutes);
  left = stead_money_format (stead_money_round (self->return_cents), self->farm->currency);
  /* Translators: minutes, money. */
  return g_markup_printf_escaped (_("It takes %s minutes of work, and at today's price leaves <b>%s</b> for each hour."),
                                  minutes, left);
}

static char *
sentence_of (const SteadRecipeAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *cost = self->dearest != NULL ? cost_sentence (self)
                          : g_strdup (_("What it costs is not known yet: no ingredient was ever bought."));
  g_autofree char *dearest = dearest_sentence (self);
  g_autofree char *work = work_sentence (self);

  stead_words_add (text, cost);
  stead_words_add (text, dearest);
  stead_words_add (text, work);
  return stead_words_end (text);
}

static char *
missing_sentence (const SteadRecipeAnswer *self)
{
  g_autoptr(GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  g_autofree char *amount = stead_recipe_amount (self->wanted_base, self->recipe->unit, self->recipe->item_name);

  for (guint i = 0; i < self->stocks->len; i++)
    {
      const SteadRecipeStock *stock = self->stocks->pdata[i];

      if (stock->missing != NULL)
        /* Translators: what is missing: "0.4 lb", "Flour". */
        g_ptr_array_add (texts, g_strdup_printf (C_("missing", "%s %s"), stock->missing, stock->name));
    }
  if (texts->len == 0)
    return g_markup_printf_escaped (_("All that is needed for %s is in the store room."), amount);
  list = list_of (texts);
  return g_markup_printf_escaped (_("For %s the store room lacks <b>%s</b>."), amount, list);
}

static char *
makes_sentence (const SteadRecipeAnswer *self)
{
  g_autofree char *amount = NULL;

  if (self->limiting == NULL)
    return NULL;
  if (!(self->makes_base > 0))
    /* Translators: name of an ingredient. */
    return g_markup_printf_escaped (_("Nothing can be made now: there is not enough %s."), self->limiting->name);
  amount = stead_recipe_amount (self->makes_base, self->recipe->unit, self->recipe->item_name);
  /* Translators: an amount that is made, name of an ingredient. */
  return g_markup_printf_escaped (_("What is there makes %s; the first to run out is %s."), amount, self->limiting->name);
}

static char *
stock_sentence (const SteadRecipeAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *missing = missing_sentence (self);
  g_autofree char *makes = makes_sentence (self);

  stead_words_add (text, missing);
  stead_words_add (text, makes);
  return stead_words_end (text);
}

static char *
allergen_sentence (const SteadRecipeAnswer *self)
{
  g_autofree char *list = list_of (self->allergens);

  if (self->allergens->len == 0)
    return g_strdup (_("No ingredient names an allergen."));
  return g_strdup_printf (_("Contains %s."), list);
}

static void
add_prices (const SteadRecipeAnswer *self,
            GString                 *text)
{
  g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = NULL;
  g_autofree char *sentence = NULL;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadRecipeLine *line = self->lines->pdata[i];

      if (isnan (line->unit_cents))
        add_name (names, line->name);
    }
  if (names->len == 0)
    return;
  list = list_of (names);
  sentence = g_strdup_printf (_("No price is known yet for: %s. The real cost is higher."), list);
  stead_words_add (text, sentence);
}

static void
add_unsaid (const GPtrArray *unsaid,
            GString         *text)
{
  g_autofree char *list = list_of (unsaid);
  g_autofree char *sentence = NULL;

  if (unsaid->len == 0)
    return;
  sentence = g_strdup_printf (_("Allergens are not written down for: %s. Read their labels before you sell it."), list);
  stead_words_add (text, sentence);
}

void
stead_recipe_put_words (SteadRecipeAnswer *self,
                        const GPtrArray   *unsaid)
{
  GString *caution = g_string_new (NULL);

  self->sentence = sentence_of (self);
  self->stock_text = stock_sentence (self);
  self->allergen_text = allergen_sentence (self);
  add_prices (self, caution);
  add_unsaid (unsaid, caution);
  self->caution = stead_words_end (caution);
}

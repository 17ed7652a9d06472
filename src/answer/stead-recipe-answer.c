/* stead-recipe-answer.c - "What does one of it cost, what is in it, and what is missing?" */
#include "config.h"

#include "answer/stead-recipe-private.h"
#include "core/stead-money.h"
#include "core/stead-recipe.h"
#include "core/stead-sensible.h"
#include "store/stead-lot-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The rate of use does not matter here. */
#define USE_DAYS 28

/* Below this an amount is nothing: a microgram. */
#define NOTHING 1e-7

#define MINUTES_PER_HOUR 60

void
stead_recipe_line_free (SteadRecipeLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line->amount);
  g_free (line->rounding);
  g_free (line->note);
  g_free (line->inside);
  g_free (line->bought);
  g_free (line);
}

void
stead_recipe_stock_free (SteadRecipeStock *stock)
{
  if (stock == NULL)
    return;
  g_free (stock->name);
  g_free (stock->missing);
  g_free (stock);
}

void
stead_recipe_answer_free (SteadRecipeAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->recipe, stead_recipe_free);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->stocks, g_ptr_array_unref);
  g_clear_pointer (&self->allergens, g_ptr_array_unref);
  g_clear_pointer (&self->sauce, stead_sauce_answer_free);
  g_free (self->sentence);
  g_free (self->stock_text);
  g_free (self->allergen_text);
  g_free (self->caution);
  g_free (self);
}

/* --- lines ------------------------------------------------------------------------- */

/* "13 instead of 12.5", where the rounding can be seen. */
static char *
rounding_text (const SteadRecipeNeed *need,
               const SteadSensible   *sensible)
{
  g_autofree char *measured = NULL;
  g_autofree char *exact = NULL;

  if (fabs (sensible->effect - 1) < 0.02 || need->unit->dimension != STEAD_DIMENSION_COUNT)
    return NULL;
  measured = stead_number_format (stead_quantity_to_base (sensible->amount, sensible->unit), 0);
  exact = stead_number_format (stead_quantity_to_base (need->amount, need->unit), 2);
  /* Translators: whole eggs, the exact number of eggs. */
  return g_strdup_printf (_("%s instead of %s"), measured, exact);
}

static SteadRecipeLine *
new_line (const SteadRecipeAnswer *self,
          const SteadRecipeNeed   *need,
          double                   unit_cents)
{
  SteadRecipeLine *line = g_new0 (SteadRecipeLine, 1);
  SteadSensible sensible;

  stead_sensible_amount (need->amount, need->unit, &sensible);
  line->item_id = need->item_id;
  line->name = g_strdup (need->item_name);
  line->kind = need->item_kind;
  line->amount = stead_sensible_format (sensible.amount, sensible.unit);
  line->effect = sensible.effect;
  line->rounding = rounding_text (need, &sensible);
  line->note = g_strdup (need->note);
  line->inside = need->recipe_id == self->recipe->id ? NULL : g_strdup (need->recipe_name);
  line->need_base = need->need_base;
  line->bought = stead_quantity_format (need->need_base, need->item_unit);
  line->unit_cents = unit_cents;
  line->share_frac = NAN;
  if (!isnan (unit_cents))
    line->cents = stead_money_round (stead_recipe_line_cents (need->need_base, unit_cents, STEAD_LINES_ROUNDED));
  return line;
}

/* The row of an item; a new one the first time. */
static SteadRecipeStock *
stock_of (SteadRecipeAnswer     *self,
          const SteadRecipeNeed *need,
          double                 on_hand)
{
  SteadRecipeStock *stock;

  for (guint i = 0; i < self->stocks->len; i++)
    {
      stock = self->stocks->pdata[i];
      if (stock->item_id == need->item_id)
        return stock;
    }
  stock = g_new0 (SteadRecipeStock, 1);
  stock->item_id = need->item_id;
  stock->name = g_strdup (need->item_name);
  stock->unit = need->item_unit;
  stock->on_hand_base = on_hand;
  g_ptr_array_add (self->stocks, stock);
  return stock;
}

static gboolean
read_lines (SteadRecipeAnswer  *self,
            SteadStore         *store,
            GError            **error)
{
  SteadDay today = stead_store_get_today (store);
  g_autoptr(GPtrArray) needs = stead_recipe_repo_needs (store, self->recipe->id, self->factor, error);
  double exact = 0;

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const SteadRecipeNeed *need = needs->pdata[i];
      SteadRecipeStock *row;
      SteadStock stock;

      if (!stead_lot_repo_stock (store, need->item_id, today, USE_DAYS, &stock, error))
        return FALSE;
      g_ptr_array_add (self->lines, new_line (self, need, stock.next_unit_cents));
      row = stock_of (self, need, stock.on_hand_base);
      row->need_base += need->need_base;
      row->missing_base = MAX (0, row->need_base - row->on_hand_base);
      g_free (row->missing);
      row->missing = row->missing_base > NOTHING ? stead_quantity_format (row->missing_base, need->item_unit) : NULL;
      if (row->missing == NULL)
        row->missing_base = 0;
      if (isnan (stock.next_unit_cents))
        self->all_priced = FALSE;
      else
        exact += need->need_base * stock.next_unit_cents;
    }
  self->unit_cents = exact / self->wanted_base;
  return needs != NULL;
}

static void
sum_up (SteadRecipeAnswer *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadRecipeLine *line = self->lines->pdata[i];

      self->cents += line->cents;
      if (line->cents > 0 && (self->dearest == NULL || line->cents > self->dearest->cents))
        self->dearest = line;
    }
  for (guint i = 0; self->cents > 0 && i < self->lines->len; i++)
    {
      SteadRecipeLine *line = self->lines->pdata[i];

      if (!isnan (line->unit_cents))
        line->share_frac = (double) line->cents / (double) self->cents;
    }
}

/* --- what is on hand --------------------------------------------------------------------- */

static void
find_limiting (SteadRecipeAnswer *self)
{
  g_autofree double *need = g_new (double, MAX (self->stocks->len, 1));
  g_autofree double *on_hand = g_new (double, MAX (self->stocks->len, 1));
  gsize limiting = 0;
  double times;

  for (guint i = 0; i < self->stocks->len; i++)
    {
      const SteadRecipeStock *stock = self->stocks->pdata[i];

      need[i] = stock->need_base;
      on_hand[i] = stock->on_hand_base;
    }
  times = stead_scale_on_hand (need, on_hand, self->stocks->len, &limiting);
  self->makes_base = times * self->wanted_base;
  if (!isnan (times))
    self->limiting = self->stocks->pdata[limiting];
  /* Only whole pieces are made. */
  if (self->recipe->unit->dimension == STEAD_DIMENSION_COUNT)
    self->makes_base = floor (self->makes_base + 1e-9);
}

/* The first ingredient that comes in pieces says at which factor it is whole. */
static void
find_whole (SteadRecipeAnswer *self)
{
  self->whole_factor = NAN;
  for (guint i = 0; i < self->recipe->parts->len; i++)
    {
      const SteadRecipePart *part = self->recipe->parts->pdata[i];

      if (part->sub_id != 0 || part->unit->dimension != STEAD_DIMENSION_COUNT)
        continue;
      self->whole_factor = stead_scale_whole (stead_quantity_to_base (part->amount, part->unit), self->factor);
      return;
    }
}

/* --- work and price ---------------------------------------------------------------------- */

static gboolean
read_work (SteadRecipeAnswer  *self,
           SteadStore         *store,
           GError            **error)
{
  double hours;

  if (!stead_recipe_repo_minutes (store, self->recipe->id, self->factor, &self->minutes, error)
      || !stead_recipe_repo_price (store, self->recipe->item_id, stead_store_get_today (store), &self->price_cents,
                                   error))
    return FALSE;
  hours = self->minutes / MINUTES_PER_HOUR;
  self->labor_cents = stead_money_round ((double) self->farm->labor_cents_hour * hours);
  self->return_cents = hours > 0 && self->all_priced
                       ? (self->price_cents - self->unit_cents) * self->wanted_base / hours : NAN;
  return TRUE;
}

SteadRecipeAnswer *
stead_recipe_answer_new (SteadStore  *store,
                         gint64       recipe_id,
                         double       wanted_base,
                         GError     **error)
{
  g_autoptr(SteadRecipeAnswer) self = g_new0 (SteadRecipeAnswer, 1);
  g_autoptr(GPtrArray) unsaid = g_ptr_array_new_with_free_func (g_free);

  g_return_val_if_fail (STEAD_IS_STORE (store) && wanted_base >= 0, NULL);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_line_free);
  self->stocks = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_recipe_stock_free);
  self->allergens = g_ptr_array_new_with_free_func (g_free);
  self->all_priced = TRUE;
  self->farm = stead_farm_repo_get (store, error);
  self->recipe = self->farm != NULL ? stead_recipe_repo_get (store, recipe_id, error) : NULL;
  if (self->recipe == NULL)
    return NULL;
  self->wanted_base = wanted_base > 0 ? wanted_base : self->recipe->yield_base;
  self->factor = stead_recipe_scale (self->recipe->yield_base, 1, self->wanted_base, 1);
  if (!read_lines (self, store, error))
    return NULL;
  sum_up (self);
  find_limiting (self);
  find_whole (self);
  if (!read_work (self, store, error) || !stead_recipe_read_allergens (self, store, unsaid, error))
    return NULL;
  self->sauce = stead_sauce_answer_new (self->recipe, self->farm);
  stead_recipe_put_words (self, unsaid);
  return g_steal_pointer (&self);
}

/* stead-recipe-whys.c - how the figures of a recipe come about. */
#include "config.h"

#include "answer/stead-recipe-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Rounded cents of an amount of what is made. */
static char *
money (const SteadRecipeAnswer *self,
       double                   cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

static SteadWhy *
cost_why (const SteadRecipeAnswer *self)
{
  const SteadUnit *unit = self->recipe->unit;
  double one_base = stead_quantity_to_base (1, unit);
  g_autoptr(GString) sum = g_string_new (NULL);
  g_autofree char *total = stead_money_format (self->cents, self->farm->currency);
  g_autofree char *made = stead_number_format (stead_quantity_from_base (self->wanted_base, unit), 2);
  g_autofree char *one = money (self, self->unit_cents * one_base);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadRecipeLine *line = self->lines->pdata[i];
      g_autofree char *cents = stead_money_format (line->cents, self->farm->currency);

      g_string_append_printf (sum, "%s%s", sum->len > 0 ? " + " : "", cents);
    }
  return stead_why_new (g_strdup (_("What one costs")),
                        _("Each ingredient: what is bought for it, peel and cores too, × the price of the next lot in "
                          "the store room. All of them together ÷ what is made."),
                        g_strdup_printf ("%s = %s; %s ÷ %s = %s", sum->str, total, total, made, one),
                        _("Bought = needed ÷ the share that trimming leaves: Bakery and Business Math, yield percents. "
                          "Rounding each line: common practice, no source."));
}

static SteadWhy *
work_why (const SteadRecipeAnswer *self)
{
  double one_base = stead_quantity_to_base (1, self->recipe->unit);
  g_autofree char *price = money (self, self->price_cents * one_base);
  g_autofree char *cost = money (self, self->unit_cents * one_base);
  g_autofree char *made = stead_number_format (stead_quantity_from_base (self->wanted_base, self->recipe->unit), 2);
  g_autofree char *hours = stead_number_format (self->minutes / 60, 2);
  g_autofree char *left = money (self, self->return_cents);

  return stead_why_new (g_strdup (_("What is left for an hour of work")),
                        _("(Price − cost of one) × how many are made ÷ hours of work"),
                        /* Translators: price, cost, number made, hours, money for one hour. */
                        g_strdup_printf (_("(%s − %s) × %s ÷ %s h = %s"), price, cost, made, hours, left),
                        _("Contribution for each unit of what is scarce, here an hour: common practice, no source. "
                          "Nobody is paid it; it shows which product pays for the work best."));
}

/* Of the ingredient that runs out first. */
static SteadWhy *
makes_why (const SteadRecipeAnswer *self)
{
  const SteadRecipeStock *first = self->limiting;
  const SteadUnit *unit = self->recipe->unit;
  double frac = first->on_hand_base / first->need_base;
  /* Of very much the share is small, and with no digit after the point it would be none. */
  g_autofree char *share = stead_words_percent (frac, frac < .001 ? 4 : frac < .1 ? 2 : 0);
  g_autofree char *wanted = stead_number_format (stead_quantity_from_base (self->wanted_base, unit), 2);
  g_autofree char *makes = stead_number_format (stead_quantity_from_base (self->makes_base, unit), 2);

  return stead_why_new (g_strdup (_("How much can be made")),
                        _("For each ingredient: on hand ÷ needed × what is wanted. The smallest of them decides, "
                          "rounded down."),
                        /* Translators: an ingredient, "75%", amount wanted, amount that can be made. */
                        g_strdup_printf (_("%s: %s of what is needed × %s, so %s"), first->name, share, wanted, makes),
                        _("Common practice, no source."));
}

/* "100 ÷ 50 = 2", then an item a line: "Eggs: 150 needed, 120 on hand" */
static SteadWhy *
need_why (const SteadRecipeAnswer *self)
{
  const SteadUnit *unit = self->recipe->unit;
  g_autofree char *wanted = stead_quantity_format (self->wanted_base, unit);
  g_autofree char *yield = stead_quantity_format (self->recipe->yield_base, unit);
  g_autofree char *factor = stead_number_format (self->factor, 2);
  GString *worked = g_string_new (NULL);

  g_string_append_printf (worked, "%s ÷ %s = %s", wanted, yield, factor);
  for (guint i = 0; i < self->stocks->len; i++)
    {
      const SteadRecipeStock *stock = self->stocks->pdata[i];
      g_autofree char *need = stead_quantity_format (stock->need_base, stock->unit);
      g_autofree char *on_hand = stead_quantity_format (stock->on_hand_base, stock->unit);

      /* Translators: on a line of its own: an ingredient, two amounts of it. */
      g_string_append_printf (worked, _("\n%1$s: %2$s needed, %3$s on hand"), stock->name, need, on_hand);
    }
  return stead_why_new (g_strdup (_("What is needed, and what is missing")),
                        _("How much is wanted ÷ what the recipe makes: so many times the recipe, with what trimming takes away. "
                          "Missing: needed − on hand."),
                        g_string_free (worked, FALSE), _("Common practice, no source."));
}

static void
add_makes (GPtrArray               *whys,
           const SteadRecipeAnswer *self)
{
  if (self->limiting != NULL && self->limiting->need_base > 0 && !isnan (self->makes_base))
    g_ptr_array_add (whys, makes_why (self));
}

GPtrArray *
stead_recipe_answer_stock_whys (const SteadRecipeAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->stocks->len > 0)
    g_ptr_array_add (whys, need_why (self));
  add_makes (whys, self);
  return whys;
}

GPtrArray *
stead_recipe_answer_whys (const SteadRecipeAnswer *self)
{
  GPtrArray *whys;

  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  if (self->dearest != NULL)
    g_ptr_array_add (whys, cost_why (self));
  if (!isnan (self->return_cents))
    g_ptr_array_add (whys, work_why (self));
  add_makes (whys, self);
  return whys;
}

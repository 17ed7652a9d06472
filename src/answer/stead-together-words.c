/* stead-together-words.c - products sold together, in words and worked out. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-together-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

const char *
stead_together_order_name (SteadTogetherOrder order)
{
  switch (order)
    {
    case STEAD_TOGETHER_BEST_FIRST: return _("Best margin first");
    case STEAD_TOGETHER_WORST_FIRST: return _("Poorest margin first");
    case STEAD_TOGETHER_AS_LISTED: return _("As listed");
    default: g_return_val_if_reached ("");
    }
}

static char *
money (const SteadTogether *self,
       double               cents)
{
  return stead_money_format (isfinite (cents) ? stead_money_round (cents) : 0, self->currency);
}

/* A share that does not exist is not said; its sentence is another one. */
static char *
percent (double frac,
         int    digits)
{
  return stead_words_percent (isfinite (frac) ? frac : 0, digits);
}

static char *
even_sentence (const SteadTogether *self)
{
  g_autofree char *share = percent (self->even_frac, 0);
  g_autofree char *sales = money (self, ceil (self->even_sales_cents - 1e-6));

  if (isnan (self->margin_frac))
    return g_strdup (_("Nothing is planned for sale, so there is nothing to cover the costs with."));
  if (self->margin_frac <= 0)
    return g_strdup (_("In this mix what is sold does not pay for itself, so no number of sales covers the day."));
  if (isnan (self->even_frac))
    return g_strdup (_("In this mix no number of sales covers the day's costs."));
  if (self->even_frac <= 0)
    return g_strdup (_("The day has no costs of its own, so every sale of this mix brings money."));
  /* Translators: money taken in, and its share of the plan ("62%"). */
  return g_strdup_printf (_("Sold together as planned, <b>%s</b> of sales cover the day: <b>%s</b> of the plan."),
                          sales, share);
}

static char *
plan_sentence (const SteadTogether *self)
{
  g_autofree char *profit = money (self, fabs (self->profit_cents));
  g_autofree char *spare = money (self, floor (fabs (self->safety_cents)));

  if (isnan (self->margin_frac))
    return NULL;
  if (self->profit_cents < 0)
    return g_strdup_printf (_("The plan loses <b>%s</b>."), profit);
  if (isnan (self->even_frac) || self->even_frac <= 0)
    return g_strdup_printf (_("The plan clears <b>%s</b>."), profit);
  /* Translators: money that is left, and sales that may be missing. */
  return g_strdup_printf (_("The plan clears <b>%s</b>; sales can fall short by %s before the day loses money."),
                          profit, spare);
}

static char *
target_sentence (const SteadTogether *self)
{
  g_autofree char *target = money (self, self->target_cents);
  g_autofree char *share = percent (self->target_frac, 0);

  if (!(self->target_cents > 0) || isnan (self->margin_frac))
    return NULL;
  if (self->profit_cents >= self->target_cents)
    return g_strdup_printf (_("The target of %s is reached."), target);
  if (isnan (self->target_frac))
    return g_strdup_printf (_("No number of sales in this mix reaches the target of %s."), target);
  /* Translators: a profit, and the share of the plan that it takes ("130%"). */
  return g_strdup_printf (_("The target of %s takes <b>%s</b> of the plan."), target, share);
}

static char *
fund_sentence (const SteadTogether *self)
{
  g_autofree char *share = percent (self->fund_frac, 0);
  g_autofree char *cents = money (self, floor (self->fund_cents));

  if (!(self->fund_cents > 0))
    return NULL;
  return g_strdup_printf (_("With %s of it for the fund, <b>%s</b> go there."), share, cents);
}

/* A product that is sold below its cost pulls the others down. */
static char *
drag_sentence (const SteadTogether *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTogetherLine *line = self->lines->pdata[i];
      g_autofree char *loss = money (self, -line->margin_cents);

      if (line->margin_cents < 0 && line->planned > 0)
        return g_strdup_printf (_("Each “%s” sold loses %s: raise its price or sell less of it."), line->name, loss);
    }
  return NULL;
}

void
stead_together_put_in_words (SteadTogether *self)
{
  GString *sentence = g_string_new (NULL), *advice = g_string_new (NULL);
  g_autofree char *even = even_sentence (self);
  g_autofree char *plan = plan_sentence (self);
  g_autofree char *target = target_sentence (self);
  g_autofree char *fund = fund_sentence (self);
  g_autofree char *drag = drag_sentence (self);
  g_autofree char *drag_safe = drag != NULL ? g_markup_escape_text (drag, -1) : NULL;

  stead_words_add (sentence, even);
  stead_words_add (sentence, plan);
  stead_words_add (advice, target);
  stead_words_add (advice, fund);
  stead_words_add (advice, drag_safe);
  g_free (self->sentence);
  g_free (self->advice);
  self->sentence = stead_words_end (sentence);
  self->advice = stead_words_end (advice);
}

/* --- worked out -------------------------------------------------------------------------- */

static const char *source = N_("OpenStax, Principles of Accounting, vol. 2, sections 2.2, 3.4 and 3.5.");

/* "Eggs: 72 × ($4.50 − $2.41) = $150.48", one a product, and their sum. */
static SteadWhy *
margin_why (const SteadTogether *self)
{
  GString *lines = g_string_new (NULL);
  g_autofree char *sales = money (self, self->sales_cents);
  g_autofree char *all = money (self, self->margin_frac * self->sales_cents);
  g_autofree char *share = percent (self->margin_frac, 1);

  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadTogetherLine *line = self->lines->pdata[i];
      g_autofree char *units = stead_number_format (line->planned, 0);
      g_autofree char *price = money (self, line->price_cents);
      g_autofree char *cost = money (self, line->unit_cents);
      g_autofree char *left = money (self, line->margin_cents * line->planned);

      g_string_append_printf (lines, "%s: %s × (%s − %s) = %s\n", line->name, units, price, cost, left);
    }
  g_string_append_printf (lines, "%s ÷ %s = %s", all, sales, share);
  return stead_why_new (g_strdup (_("What is left of the sales, weighted by the mix")),
                        _("Units × (price − cost of one), added up over the products, ÷ all sales."),
                        g_string_free (lines, FALSE), _(source));
}

static SteadWhy *
even_why (const SteadTogether *self)
{
  double steps = self->margin_frac * self->sales_cents * self->even_frac - self->fixed_cents;
  g_autofree char *fixed = money (self, self->fixed_cents);
  g_autofree char *open = money (self, steps);
  g_autofree char *share = percent (self->margin_frac, 2);
  g_autofree char *sales = money (self, self->even_sales_cents);
  char *worked = stead_money_round (steps) > 0 ? g_strdup_printf ("(%s + %s) ÷ %s = %s", fixed, open, share, sales)
                                               : g_strdup_printf ("%s ÷ %s = %s", fixed, share, sales);

  return stead_why_new (g_strdup (_("Sales that cover the day")),
                        _("(Fixed costs of the day + costs in steps that are open) ÷ the share of the sales that is "
                          "left. Another mix has another break-even."), worked, _(source));
}

static SteadWhy *
safety_why (const SteadTogether *self)
{
  g_autofree char *sales = money (self, self->sales_cents);
  g_autofree char *even = money (self, self->even_sales_cents);
  g_autofree char *safety = money (self, self->safety_cents);
  g_autofree char *share = percent (self->safety_frac, 1);

  return stead_why_new (g_strdup (_("How far sales can fall short")), _("Planned sales − sales at the break-even."),
                        g_strdup_printf (_("%s − %s = %s, which is %s of the plan"), sales, even, safety, share),
                        _(source));
}

static SteadWhy *
leverage_why (const SteadTogether *self)
{
  g_autofree char *margin = money (self, self->margin_frac * self->sales_cents);
  g_autofree char *profit = money (self, self->profit_cents);
  g_autofree char *times = stead_number_format (self->leverage, 2);

  return stead_why_new (g_strdup (_("How hard all sales together pull on the profit")),
                        _("What is left of all sales before fixed costs ÷ profit. A tenth more of everything sold moves "
                          "the profit by so many tenths."), g_strdup_printf ("%s ÷ %s = %s", margin, profit, times),
                        _(source));
}

GPtrArray *
stead_together_whys (const SteadTogether *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (isnan (self->margin_frac))
    return whys;
  g_ptr_array_add (whys, margin_why (self));
  if (!isnan (self->even_frac) && self->margin_frac > 0)
    {
      g_ptr_array_add (whys, even_why (self));
      g_ptr_array_add (whys, safety_why (self));
    }
  if (isfinite (self->leverage) && self->profit_cents > 0)
    g_ptr_array_add (whys, leverage_why (self));
  return whys;
}

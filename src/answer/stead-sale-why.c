/* stead-sale-why.c - the figures of a planned sale day, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-sale-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-demand-learn.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadSaleAnswer *self,
       double                 cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

static char *
units (const SteadSaleLineAnswer *line,
       double                     n)
{
  return stead_words_units (line->good->pack, n);
}

/* What people may ask for, as the plan or past days have it. */
static char *
demand_text (const SteadSaleLineAnswer *line)
{
  const SteadDemand *demand = &line->demand;
  g_autofree char *mean = stead_words_number (line->demand_units);
  g_autofree char *low = NULL, *likely = NULL, *high = NULL;

  if (demand->shape == STEAD_DEMAND_NORMAL)
    {
      g_autofree char *sd = stead_words_number (demand->sd);

      /* Translators: a number of past days, how many are asked for on average, and their spread. */
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                           "The guess and %u past day: a bell curve with mean %s and spread %s.",
                                           "The guess and %u past days: a bell curve with mean %s and spread %s.",
                                           line->n_days), line->n_days, mean, sd);
    }
  low = stead_words_number (demand->low);
  high = stead_words_number (demand->high);
  if (demand->shape == STEAD_DEMAND_UNIFORM)
    /* Translators: two numbers. */
    return g_strdup_printf (_("The guess: any number from %s to %s is as likely."), low, high);
  likely = stead_words_number (demand->likely);
  /* Translators: four numbers. */
  return g_strdup_printf (_("The guess: a triangle from %s over %s to %s, with mean %s."), low, likely, high, mean);
}

/* "$4.50 − $2.63", and what a customer who goes without costs besides. */
static char *
short_text (const SteadSaleAnswer     *self,
            const SteadSaleLineAnswer *line)
{
  g_autofree char *price = money (self, (double) line->good->price_cents);
  g_autofree char *cost = money (self, line->unit_cents);
  g_autofree char *missed = money (self, (double) line->good->missed_cents);

  return line->good->missed_cents != 0 ? g_strdup_printf ("%s − %s + %s", price, cost, missed)
                                       : g_strdup_printf ("%s − %s", price, cost);
}

static SteadWhy *
best_why (const SteadSaleAnswer     *self,
          const SteadSaleLineAnswer *line)
{
  const SteadSaleGood *good = line->good;
  double few = (double) good->price_cents - line->unit_cents + (double) good->missed_cents;
  double many = line->unit_cents - (double) good->left_cents;
  g_autofree char *few_text = short_text (self, line);
  g_autofree char *few_sum = money (self, few);
  g_autofree char *cost = money (self, line->unit_cents);
  g_autofree char *left = money (self, (double) good->left_cents);
  g_autofree char *many_sum = money (self, many);
  g_autofree char *ratio = stead_words_percent (line->ratio, 1);
  g_autofree char *demand = demand_text (line);
  g_autofree char *best = units (line, line->best_units);

  return stead_why_new (
    /* Translators: the name of a product. */
    g_strdup_printf (_("%s: the number that pays best"), good->name),
    _("Critical ratio = loss by one too few ÷ (loss by one too few + loss by one too many). The number that pays best is "
      "enough on that share of days."),
    /* Translators: price − cost, its sum, cost, worth of a left-over, their difference, the two losses again, a
     * percentage, a sentence on what people may ask for, an amount. */
    g_strdup_printf (_("One too few loses %1$s = %2$s. One too many loses %3$s − %4$s = %5$s. "
                       "%2$s ÷ (%2$s + %5$s) = %6$s. %7$s That many or fewer are asked for on %6$s of such days: %8$s."),
                     few_text, few_sum, cost, left, many_sum, ratio, demand, best),
    _("Making once for one sale (newsvendor): Cachon and Terwiesch, Matching Supply with Demand, chapter 12."));
}

static SteadWhy *
chance_why (const SteadSaleLineAnswer *line)
{
  const SteadSaleGood *good = line->good;
  g_autofree char *demand = demand_text (line);
  g_autofree char *planned = units (line, good->planned);
  g_autofree char *chance = stead_words_percent (line->sold_out_frac, 1);
  g_autofree char *brought = stead_words_number (good->planned);
  g_autofree char *asked = stead_words_number (line->demand_units);
  g_autofree char *missed = stead_words_number (line->missed_units);
  g_autofree char *left = stead_words_number (line->left_units);

  return stead_why_new (
    /* Translators: the name of a product. */
    g_strdup_printf (_("%s: sold out, or left over"), good->name),
    _("Chance to sell out = chance that as many or more are asked for. Left over = brought − asked for + asked for in vain, "
      "each as the mean of all such days."),
    /* Translators: a sentence on what people may ask for, an amount, a percentage, and four numbers. */
    g_strdup_printf (_("%1$s The chance that %2$s or more are asked for is %3$s. %4$s − %5$s + %6$s = %7$s left over."),
                     demand, planned, chance, brought, asked, missed, left),
    _("Loss functions: Snyder and Shen, Fundamentals of Supply Chain Theory. Days that sold out count as that much or more: "
      "Dempster, Laird and Rubin (1977). That the guess weighs as two days is common practice."));
}

static void
add_even (const SteadSaleAnswer *self,
          GPtrArray             *whys)
{
  g_autofree char *fixed = NULL, *margin = NULL, *full = NULL, *share = NULL, *even = NULL;

  if (isnan (self->even_cents) || self->full_cents <= 0)
    return;
  fixed = money (self, (double) self->fixed_cents);
  margin = money (self, self->margin_cents);
  full = money (self, (double) self->full_cents);
  share = stead_words_percent (self->margin_cents / (double) self->full_cents, 1);
  even = money (self, self->even_cents);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Takings that cover all costs")),
    _("The day's own costs ÷ the share of the takings that is left after the cost of the goods, with products sold in the "
      "proportion of the plan."),
    g_strdup_printf ("%s ÷ %s = %s. %s ÷ %s = %s.", margin, full, share, fixed, share, even),
    _("Break-even with several products: OpenStax, Principles of Accounting, vol. 2, section 3.4.")));
}

static void
add_band (const SteadSaleAnswer *self,
          GPtrArray             *whys)
{
  g_autofree char *low = NULL, *high = NULL, *n = NULL, *together = NULL;

  if (!self->has_band)
    return;
  low = money (self, self->takings.low);
  high = money (self, self->takings.high);
  n = stead_number_format (STEAD_SALE_DRAWS, 0);
  together = stead_words_percent (STEAD_SALE_TOGETHER, 0);
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("Taken on 8 of 10 such days")),
    _("The day is drawn many times. Of each product people ask for as many as its curve gives, and what is there is sold. "
      "The weather moves all products together."),
    /* Translators: a number of days, a percentage, two sums of money. */
    g_strdup_printf (_("%s days are drawn; products move together by %s. One day in ten takes less than %s, and one in ten "
                       "more than %s."), n, together, low, high),
    _("Monte Carlo simulation; how far products move together is a rule of this program, no source.")));
}

GPtrArray *
stead_sale_answer_whys (const SteadSaleAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadSaleLineAnswer *line = self->lines->pdata[i];

      if (!isnan (line->best_units))
        g_ptr_array_add (whys, best_why (self, line));
      if (line->has_demand && line->good->planned > 0)
        g_ptr_array_add (whys, chance_why (line));
    }
  add_even (self, whys);
  add_band (self, whys);
  return whys;
}

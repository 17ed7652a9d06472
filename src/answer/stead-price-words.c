/* stead-price-words.c - the price answer's sentence and advice.
 *
 * Each variant is a few whole sentences, each translated whole; every number in
 * them is a figure of the answer.  Runs at each step of a drag: no query here.
 */
#include "config.h"

#include "answer/stead-price-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadPriceAnswer *self,
       double                  cents)
{
  return stead_money_format (stead_money_round (cents), self->cost->farm->currency);
}

static char *
units (const SteadPriceAnswer *self,
       gint64                  count)
{
  return stead_words_units (self->cost->product->pack, (double) count);
}

static char *
plan_number (const SteadPriceAnswer *self)
{
  return stead_number_format (self->cvp.planned_units, 0);
}

/* "To cover the plan of 72, the price must rise by $1.74 to $4.15." */
static char *
rise_sentence (const SteadPriceAnswer *self)
{
  gint64 needed = stead_price_for_plan (&self->cvp, 0);
  g_autofree char *plan = plan_number (self);
  g_autofree char *rise = money (self, (double) needed - self->cvp.price_cents);
  g_autofree char *price = money (self, (double) needed);

  if (needed < 0 || (double) needed <= self->cvp.price_cents)
    return NULL;
  /* Translators: the units planned for a day, and the price that pays all costs of that day. */
  return g_strdup_printf (_("To cover the plan of %s, the price must rise by <b>%s</b> to <b>%s</b>."),
                          plan, rise, price);
}

/* The price does not pay for the thing itself. */
static char *
below_cost_sentence (const SteadPriceAnswer *self)
{
  GString *text = g_string_new (NULL);
  const char *unit = stead_words_per_unit (self->cost->product->pack);
  g_autofree char *price = money (self, self->cvp.price_cents);
  g_autofree char *loss = money (self, -self->figures.margin_cents);
  g_autofree char *first = NULL;
  g_autofree char *rise = rise_sentence (self);
  g_autofree char *least = NULL;

  first = g_strdup_printf (_("At <b>%s</b> %s, each one sold loses <b>%s</b>, so no number of sales covers the costs."),
                           price, unit, loss);
  stead_words_add (text, first);
  if (rise == NULL)
    {
      least = g_strdup_printf (_("The price must rise by more than %s."), loss);
      stead_words_add (text, least);
    }
  stead_words_add (text, rise);
  return stead_words_end (text);
}

/* The price pays for the thing itself and not a cent more. */
static char *
at_cost_sentence (const SteadPriceAnswer *self)
{
  GString *text = g_string_new (NULL);
  const char *unit = stead_words_per_unit (self->cost->product->pack);
  g_autofree char *price = money (self, self->cvp.price_cents);
  g_autofree char *first = NULL;
  g_autofree char *rise = rise_sentence (self);

  first = g_strdup_printf (_("At <b>%s</b> %s, the price only pays what each one costs; nothing is left for the day."),
                           price, unit);
  stead_words_add (text, first);
  stead_words_add (text, rise);
  return stead_words_end (text);
}

/* Each further step of costs takes more than its units bring. */
static char *
steps_eat_all_sentence (const SteadPriceAnswer *self)
{
  GString *text = g_string_new (NULL);
  const char *unit = stead_words_per_unit (self->cost->product->pack);
  g_autofree char *price = money (self, self->cvp.price_cents);
  g_autofree char *step = money (self, self->cvp.step_cents);
  g_autofree char *size = units (self, (gint64) self->cvp.step_units);
  g_autofree char *first = NULL;
  g_autofree char *second = NULL;
  g_autofree char *rise = rise_sentence (self);

  first = g_strdup_printf (_("At <b>%s</b> %s, no number of sales covers the day's costs."), price, unit);
  second = g_strdup_printf (_("Each further %s cost %s more and do not bring it in."), size, step);
  stead_words_add (text, first);
  stead_words_add (text, second);
  stead_words_add (text, rise);
  return stead_words_end (text);
}

/* "At $4.50 a dozen, 46 dozen cover the day's costs." */
static char *
even_sentence (const SteadPriceAnswer *self)
{
  const char *unit = stead_words_per_unit (self->cost->product->pack);
  g_autofree char *price = money (self, self->cvp.price_cents);
  g_autofree char *even = units (self, self->figures.even_whole_units);

  if (self->figures.even_whole_units == 0)
    return g_strdup_printf (_("At <b>%s</b> %s, every sale brings money, since the day has no costs of its own."),
                            price, unit);
  /* Translators: a price ("$4.50"), "a dozen", and the number of units ("46 dozen") that pays for the day. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "At <b>%s</b> %s, <b>%s</b> covers the day's costs.",
                                       "At <b>%s</b> %s, <b>%s</b> cover the day's costs.",
                                       stead_words_plural (self->figures.even_whole_units)),
                          price, unit, even);
}

/* Several crossings: a loss comes back after the first break-even. */
static char *
steps_sentence (const SteadPriceAnswer *self)
{
  g_autofree char *size = units (self, (gint64) self->cvp.step_units);
  g_autofree char *lasting = NULL;

  if (self->figures.lasting_whole_units == self->figures.even_whole_units)
    return NULL;
  if (self->figures.lasting_whole_units < 0)
    return g_strdup_printf (_("After each %s the costs step up, and the day can lose money again."), size);
  lasting = units (self, self->figures.lasting_whole_units);
  return g_strdup_printf (_("After each %s the costs step up; only from <b>%s</b> on is the day safe from a loss."),
                          size, lasting);
}

static char *
gain_sentence (const SteadPriceAnswer *self,
               const char             *plan,
               const char             *profit)
{
  g_autofree char *spare = units (self, self->figures.safety_whole_units);

  if (self->figures.even_whole_units == 0)
    /* Translators: the units planned for the day and the money that is left. */
    return g_strdup_printf (_("The plan of %s clears <b>%s</b>."), plan, profit);
  if (self->figures.safety_whole_units < 1)
    return g_strdup_printf (_("The plan of %s clears <b>%s</b>, but one less already loses money."), plan, profit);
  /* Translators: planned units, the money that is left, and the units ("26 dozen") that may stay unsold. */
  return g_strdup_printf (_("The plan of %s clears <b>%s</b>; it can fall short by %s before the stall loses money."),
                          plan, profit, spare);
}

static char *
loss_sentence (const SteadPriceAnswer *self,
               const char             *plan,
               const char             *loss)
{
  g_autofree char *missing = NULL;

  /* With steps there may be no number beyond the plan that covers the costs. */
  if (self->figures.safety_whole_units >= 0)
    return g_strdup_printf (_("The plan of %s loses <b>%s</b>."), plan, loss);
  missing = units (self, -self->figures.safety_whole_units);
  return g_strdup_printf (_("The plan of %s misses by <b>%s</b> and loses <b>%s</b>."), plan, missing, loss);
}

static char *
plan_sentence (const SteadPriceAnswer *self)
{
  g_autofree char *plan = plan_number (self);
  g_autofree char *margin = money (self, self->figures.margin_cents);
  g_autofree char *profit = money (self, fabs (self->figures.profit_cents));
  gint64 cents = stead_money_round (self->figures.profit_cents);

  if (!(self->cvp.planned_units > 0))
    return g_strdup_printf (_("Each one after that brings in <b>%s</b>."), margin);
  if (cents == 0)
    return g_strdup_printf (_("The plan of %s comes out exactly even."), plan);
  return cents > 0 ? gain_sentence (self, plan, profit) : loss_sentence (self, plan, profit);
}

char *
stead_price_sentence (const SteadPriceAnswer *self)
{
  GString *text;
  g_autofree char *even = NULL;
  g_autofree char *steps = NULL;
  g_autofree char *plan = NULL;

  if (self->figures.margin_cents < 0)
    return below_cost_sentence (self);
  if (!(self->figures.margin_cents > 0))
    return at_cost_sentence (self);
  if (self->figures.even_whole_units < 0)
    return steps_eat_all_sentence (self);

  even = even_sentence (self);
  steps = steps_sentence (self);
  plan = plan_sentence (self);
  text = g_string_sized_new (256);
  stead_words_add (text, even);
  stead_words_add (text, steps);
  stead_words_add (text, plan);
  return stead_words_end (text);
}

static char *
target_sentence (const SteadPriceAnswer *self)
{
  gint64 needed = stead_price_for_plan (&self->cvp, self->cvp.target_cents);
  g_autofree char *target = money (self, self->cvp.target_cents);
  g_autofree char *sell = units (self, MAX (0, self->figures.target_whole_units));
  g_autofree char *plan = plan_number (self);
  g_autofree char *price = money (self, (double) needed);

  if (!(self->cvp.target_cents > 0))
    return NULL;
  if (self->cvp.planned_units > 0 && self->figures.profit_cents >= self->cvp.target_cents)
    return g_strdup_printf (_("The target of %s is reached."), target);
  if (self->figures.target_whole_units >= 0 && needed >= 0)
    return g_strdup_printf (_("To reach the target of %s, sell <b>%s</b>, or ask <b>%s</b> with the plan of %s."),
                            target, sell, price, plan);
  if (self->figures.target_whole_units >= 0)
    return g_strdup_printf (_("To reach the target of %s, sell <b>%s</b>."), target, sell);
  if (needed >= 0)
    return g_strdup_printf (_("To reach the target of %s with the plan of %s, ask <b>%s</b>."), target, plan, price);
  return g_strdup_printf (_("At this price no number of sales reaches the target of %s."), target);
}

/* A price that works only because the students' work is free is called so. */
static char *
labor_sentence (const SteadPriceAnswer *self)
{
  gint64 labor = self->cost->sheet.parts[STEAD_COST_LABOR].shown_cents;
  double with = self->cvp.variable_cents + (double) labor;
  g_autofree char *cost = NULL;

  if (labor <= 0 || self->cvp.price_cents >= with || self->figures.margin_cents < 0)
    return NULL;
  cost = money (self, with);
  /* Translators: a cost ("$3.16") and "a dozen". */
  return g_strdup_printf (_("This price works only because the students' work is free; with it the cost is %s %s."),
                          cost, stead_words_per_unit (self->cost->product->pack));
}

static void
add_differences (const SteadPriceAnswer *self,
                 GString                *text)
{
  const char *unit = stead_words_per_unit (self->cost->product->pack);
  g_autofree char *price = money (self, self->plan.price_cents);
  g_autofree char *variable = money (self, self->plan.variable_cents);
  g_autofree char *fixed = money (self, self->plan.fixed_cents);
  g_autofree char *planned = stead_number_format (self->plan.planned_units, 0);
  g_autofree char *of_price = g_strdup_printf (_("The price on file is %s %s."), price, unit);
  g_autofree char *of_variable = g_strdup_printf (_("The farm's own cost is %s %s."), variable, unit);
  g_autofree char *of_fixed = g_strdup_printf (_("The day's own fixed costs are %s."), fixed);
  g_autofree char *of_plan = g_strdup_printf (_("The plan on file is %s."), planned);

  if (self->price_on_file >= 0 && self->cvp.price_cents != self->plan.price_cents)
    stead_words_add (text, of_price);
  if (self->cvp.variable_cents != self->plan.variable_cents)
    stead_words_add (text, of_variable);
  if (self->cvp.fixed_cents != self->plan.fixed_cents)
    stead_words_add (text, of_fixed);
  if (self->cvp.planned_units != self->plan.planned_units)
    stead_words_add (text, of_plan);
}

char *
stead_price_advice (const SteadPriceAnswer *self)
{
  GString *text = g_string_sized_new (256);
  g_autofree char *target = target_sentence (self);
  g_autofree char *labor = labor_sentence (self);

  if (self->price_on_file < 0)
    stead_words_add (text, _("No price is on file yet: this one is a proposal until you set it."));
  stead_words_add (text, target);
  stead_words_add (text, labor);
  add_differences (self, text);
  return stead_words_end (text);
}

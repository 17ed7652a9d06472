/* stead-harvest-why.c - what a harvest carries of the cost, worked out while it is typed. */
#include "config.h"

#include "answer/stead-harvest-answer.h"

#include "answer/stead-batch-cost-why-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

#define NO_SOURCE N_("Common practice, no source.")

static char *
money (const SteadHarvestAnswer *self,
       double                    cents)
{
  return stead_money_format (stead_money_round (cents), self->farm->currency);
}

/* "($197.00 + $66.00) ÷ 60 kg × 20 kg = $87.67"; and what is there to be carried, where that is less. */
static char *
share_worked (const SteadHarvestAnswer *self)
{
  const SteadBatchCost *cost = &self->money.cost;
  double output = cost->good_base + MAX (cost->expected_base, self->quantity_base);
  double share_cents = (cost->so_far_cents + cost->to_come_cents) / output * self->quantity_base;
  g_autofree char *terms = stead_batch_cost_terms (&self->money, self->farm->currency);
  g_autofree char *all = stead_quantity_format (output, self->lot_unit);
  g_autofree char *now = stead_quantity_format (self->quantity_base, self->lot_unit);
  g_autofree char *share = money (self, share_cents), *left = NULL;
  /* Translators: a sum of money in brackets, two amounts of what is harvested, money: "($197.00) ÷ 60 kg × 20 kg = $65.67". */
  g_autofree char *worked = g_strdup_printf (_("%1$s ÷ %2$s × %3$s = %4$s"), terms, all, now, share);

  if (stead_money_round (share_cents) <= self->cost_cents)
    return g_steal_pointer (&worked);
  left = stead_batch_left_sum (cost, self->farm->currency);
  /* Translators: what was worked out, then on a line of its own: money − money = money. */
  return g_strdup_printf (_("%1$s\nIn no lot yet, and so no more than that: %2$s"), worked, left);
}

static SteadWhy *
carries_why (const SteadHarvestAnswer *self)
{
  if (self->takes_rest)
    return stead_why_new (g_strdup (_("What the lot carries")),
                          _("Cost in so far − what the lots before carry. The last harvest takes all that is left, so that cents in "
                            "are cents out."),
                          stead_batch_left_sum (&self->money.cost, self->farm->currency), _(NO_SOURCE));
  return stead_why_new (g_strdup (_("What the lot carries")),
                        self->money.salvage_cents > 0
                        ? _("(Cost in so far + what will finish it − what the birds are worth at the end) ÷ (what came and is good "
                            "+ what is still expected, or what comes now if that is more) × what comes now. All lots together carry "
                            "no more than went in so far.")
                        : _("(Cost in so far + what will finish it) ÷ (what came and is good + what is still expected, or what comes "
                            "now if that is more) × what comes now. All lots together carry no more than went in so far."),
                        share_worked (self), stead_batch_cost_source ());
}

static SteadWhy *
each_why (const SteadHarvestAnswer *self)
{
  g_autofree char *cost = money (self, (double) self->cost_cents), *each = money (self, (double) self->each_cents);
  g_autofree char *amount = stead_quantity_format (self->quantity_base, self->lot_unit);
  g_autofree char *one = stead_quantity_format (stead_quantity_to_base (1, self->lot_unit), self->lot_unit);

  return stead_why_new (g_strdup (_("Cost of one")), _("What the lot carries ÷ how much is in it."),
                        /* Translators: money, an amount, money, an amount: "$83.67 ÷ 20 kg = $4.18 for 1 kg". */
                        g_strdup_printf (_("%1$s ÷ %2$s = %3$s for %4$s"), cost, amount, each, one), _(NO_SOURCE));
}

static SteadWhy *
best_by_why (const SteadHarvestAnswer *self)
{
  g_autofree char *day = stead_day_format (self->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *best_by = stead_day_format (self->best_by, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *days = stead_words_days (self->best_by - self->day);

  return stead_why_new (g_strdup (_("Best by")),
                        _("Day of the harvest + the days that the item keeps, as entered with it."),
                        /* Translators: a day, "7 days", a day. */
                        g_strdup_printf (_("%1$s + %2$s = %3$s"), day, days, best_by),
                        _("The farm’s own shelf life: no source of the program’s."));
}

GPtrArray *
stead_harvest_answer_whys (const SteadHarvestAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (!(self->quantity_base > 0))
    return whys;
  g_ptr_array_add (whys, carries_why (self));
  g_ptr_array_add (whys, each_why (self));
  stead_whys_add (whys, stead_batch_spent_why (&self->money, self->farm->currency));
  if (self->keeps)
    g_ptr_array_add (whys, best_by_why (self));
  return whys;
}

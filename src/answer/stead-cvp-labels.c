/* stead-cvp-labels.c - the words on the break-even chart. */
#include "config.h"

#include "answer/stead-cvp-labels.h"

#include <glib/gi18n-lib.h>

#include "core/stead-money.h"
#include "core/stead-quantity.h"

static char *
units_text (const SteadPriceAnswer *answer,
            gint64                  units)
{
  return stead_words_units (answer->cost->product->pack, (double) units);
}

static char *
money_text (const SteadPriceAnswer *answer,
            double                  cents)
{
  return stead_money_format (stead_money_round (cents), answer->cost->farm->currency);
}

static char *
even_label (const SteadPriceAnswer *answer)
{
  g_autofree char *units = NULL;

  if (answer->figures.even_whole_units < 0)
    return NULL;
  units = units_text (answer, answer->figures.even_whole_units);
  /* Translators: on the chart, where the lines meet: "break-even 46 dozen". */
  return g_strdup_printf (_("break-even %s"), units);
}

static char *
lasting_label (const SteadPriceAnswer *answer)
{
  g_autofree char *units = NULL;

  if (answer->figures.lasting_whole_units <= answer->figures.even_whole_units)
    return NULL;
  units = units_text (answer, answer->figures.lasting_whole_units);
  /* Translators: on the chart, where the lines meet for the last time: "no loss from 61 dozen on". */
  return g_strdup_printf (_("no loss from %s on"), units);
}

static char *
plan_label (const SteadPriceAnswer *answer)
{
  g_autofree char *number = NULL;

  if (!(answer->cvp.planned_units > 0))
    return NULL;
  number = stead_number_format (answer->cvp.planned_units, 0);
  /* Translators: on the chart, at the line of the plan: "plan 72". */
  return g_strdup_printf (C_("label on a chart", "plan %s"), number);
}

static char *
plan_gap_label (const SteadPriceAnswer *answer)
{
  g_autofree char *money = NULL;

  if (!(answer->cvp.planned_units > 0))
    return NULL;
  money = money_text (answer, ABS (answer->figures.profit_cents));
  if (answer->figures.profit_cents < 0)
    /* Translators: on the chart, by how much the plan loses: "$12.00 short". */
    return g_strdup_printf (C_("label on a chart", "%s short"), money);
  /* Translators: on the chart, what the plan leaves after all costs: "$54.48 left". */
  return g_strdup_printf (C_("label on a chart", "%s left"), money);
}

SteadCvpLabels *
stead_cvp_labels_new (const SteadPriceAnswer *answer)
{
  SteadCvpLabels *self;

  g_return_val_if_fail (answer != NULL, NULL);

  self = g_new0 (SteadCvpLabels, 1);
  /* Translators: title of the axis: "dozens sold on the sale day". */
  self->axis = g_strdup_printf (_("%s sold on the sale day"),
                                stead_words_unit_plural (answer->cost->product->pack));
  self->even = even_label (answer);
  self->lasting = lasting_label (answer);
  self->plan = plan_label (answer);
  self->plan_gap = plan_gap_label (answer);
  self->money_in = g_strdup (C_("label on a chart", "money in"));
  self->all_costs = g_strdup (C_("label on a chart", "all costs"));
  self->fixed_costs = g_strdup (C_("label on a chart", "fixed costs"));
  return self;
}

void
stead_cvp_labels_free (SteadCvpLabels *self)
{
  g_free (self->axis);
  g_free (self->even);
  g_free (self->lasting);
  g_free (self->plan);
  g_free (self->plan_gap);
  g_free (self->money_in);
  g_free (self->all_costs);
  g_free (self->fixed_costs);
  g_free (self);
}

char *
stead_cvp_labels_point (const SteadPriceAnswer *answer,
                        gint64                  units)
{
  g_autofree char *count = NULL, *revenue = NULL, *cost = NULL, *gap = NULL;
  double profit;

  g_return_val_if_fail (answer != NULL, NULL);

  profit = stead_cvp_profit_cents (&answer->cvp, (double) units);
  count = units_text (answer, units);
  revenue = money_text (answer, stead_cvp_revenue_cents (&answer->cvp, (double) units));
  cost = money_text (answer, stead_cvp_cost_cents (&answer->cvp, (double) units));
  gap = money_text (answer, ABS (profit));
  if (profit < 0)
    /* Translators: units, money in, all costs, loss, at one point of the chart. */
    return g_strdup_printf (_("%s: %s in, %s of costs, %s short"), count, revenue, cost, gap);
  /* Translators: units, money in, all costs, what is left, at one point of the chart. */
  return g_strdup_printf (_("%s: %s in, %s of costs, %s left"), count, revenue, cost, gap);
}

/* stead-cost-steps-why.c - why one costs more or less than it did, and what the next one costs, worked out. */
#include "config.h"

#include "answer/stead-cost-steps.h"

#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* "$2.60 + $0.15 (Prices) − $0.04 (Output) = $2.71" */
static SteadWhy *
change_why (const SteadCostSteps *self)
{
  const char *currency = self->cost->farm->currency;
  g_autofree char *before = stead_money_format (self->before->sheet.unit_cents, currency);
  g_autofree char *now = stead_money_format (self->now->sheet.unit_cents, currency);
  GString *worked = g_string_new (before);

  for (int k = 0; k < STEAD_N_CHANGE_KINDS; k++)
    {
      g_autofree char *money = stead_money_format (ABS (self->shown[k]), currency);

      if (self->shown[k] != 0)
        g_string_append_printf (worked, " %s %s (%s)", self->shown[k] < 0 ? "−" : "+", money,
                                stead_change_name ((SteadChangeKind) k));
    }
  g_string_append_printf (worked, " = %s", now);
  return stead_why_new (g_strdup (_("Why it costs more or less than in the four weeks before")),
                        _("Each part of the cost is price × use ÷ output ÷ volume. What changed goes in one after the other: use, "
                          "output and volume at the former price, then the price on what is used now. So all of them add up to the "
                          "change."),
                        g_string_free (worked, FALSE),
                        _("Change of price × what is used now, change of use × former price: OpenStax, Principles of Accounting, vol. "
                          "2, sections 8.2 and 8.3."));
}

static SteadWhy *
next_why (const SteadCostSteps *self)
{
  const SteadCostAnswer *cost = self->cost;
  const char *currency = cost->farm->currency;
  g_autofree char *unit = stead_money_format (cost->sheet.unit_cents, currency);
  g_autofree char *more = stead_money_format (stead_money_round (fabs (self->next_more_cents)), currency);
  g_autofree char *units = stead_words_units_exact (cost->product->pack, cost->sheet.good_units, 1);
  g_autofree char *next = stead_money_format (stead_money_round (self->next_cents), currency);

  return stead_why_new (g_strdup (_("What the next one costs")),
                        _("Cost of one + (what all that was used would cost at the prices of the next lots − what it did cost) ÷ what "
                          "came and can be sold"),
                        /* Translators: money, money, "95.4 dozen", money. */
                        g_strdup_printf (self->next_more_cents < 0 ? _("%1$s − %2$s ÷ %3$s = %4$s") : _("%1$s + %2$s ÷ %3$s = %4$s"),
                                         unit, more, units, next), _("Common practice, no source."));
}

GPtrArray *
stead_cost_steps_whys (const SteadCostSteps *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->before != NULL && self->now != NULL)
    g_ptr_array_add (whys, change_why (self));
  if (isfinite (self->next_cents) && stead_money_round (self->next_cents) != self->cost->sheet.unit_cents)
    g_ptr_array_add (whys, next_why (self));
  return whys;
}

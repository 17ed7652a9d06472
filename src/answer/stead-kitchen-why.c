/* stead-kitchen-why.c - what a kitchen batch cost and gave, worked with the farm's numbers. */
#include "config.h"

#include "answer/stead-kitchen-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define STORE_ROOM N_("What leaves the store room: OpenStax, Principles of Accounting, vol. 1, section 10.2.")
#define NO_SOURCE N_("Common practice, no source.")

static char *
amount (const SteadKitchenAnswer *self,
        double                    base)
{
  return stead_quantity_format (base, self->kitchen->item_unit);
}

static SteadWhy *
taken_why (const SteadKitchenAnswer *self)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->taken->len; i++)
    stead_sum_take (sum, ((const SteadMove *) self->taken->pdata[i])->cost_cents, self->farm->currency);
  stead_sum_total (sum, self->used_cents, self->farm->currency);
  return stead_why_new (g_strdup (_("What went in")),
                        _("What each lot carries for what was taken out of it, in the order in which it was taken. What leaves a lot "
                          "last takes all that is left of its cost."),
                        g_string_free (sum, FALSE), _(STORE_ROOM));
}

static SteadWhy *
unit_why (const SteadKitchenAnswer *self)
{
  g_autofree char *all = stead_money_format (self->harvest->cost_cents, self->farm->currency);
  g_autofree char *made = amount (self, self->harvest->quantity_base);
  g_autofree char *one = stead_kitchen_unit_money (self, self->unit_cents);

  return stead_why_new (g_strdup (_("What one costs")),
                        _("What went in ÷ what came out and is good. What was tasted or lost is carried by the rest."),
                        g_strdup_printf ("%s ÷ %s = %s", all, made, one), _(STORE_ROOM));
}

static SteadWhy *
plan_why (const SteadKitchenAnswer *self)
{
  g_autofree char *all = stead_money_format (stead_money_round (self->planned_cents), self->farm->currency);
  g_autofree char *wanted = amount (self, self->kitchen->wanted_base);
  g_autofree char *one = stead_kitchen_unit_money (self, self->planned_unit_cents);

  return stead_why_new (g_strdup (_("What one costs by the plan")),
                        _("What all parts of the recipe cost, each at what it costs next out of the store room today ÷ what is planned "
                          "to come out."),
                        g_strdup_printf ("%s ÷ %s = %s", all, wanted, one), _(NO_SOURCE));
}

static SteadWhy *
yield_why (const SteadKitchenAnswer *self)
{
  g_autofree char *made = amount (self, self->harvest->quantity_base);
  g_autofree char *wanted = amount (self, self->kitchen->wanted_base);
  g_autofree char *share = stead_words_percent (self->yield_frac, 0);

  return stead_why_new (g_strdup (_("How much of the plan came out")), _("What came out and is good ÷ what was planned to come out."),
                        g_strdup_printf ("%s ÷ %s = %s", made, wanted, share), _(NO_SOURCE));
}

GPtrArray *
stead_kitchen_answer_whys (const SteadKitchenAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->taken->len > 0)
    g_ptr_array_add (whys, taken_why (self));
  if (!isnan (self->unit_cents))
    g_ptr_array_add (whys, unit_why (self));
  if (!isnan (self->planned_unit_cents))
    g_ptr_array_add (whys, plan_why (self));
  if (!isnan (self->yield_frac))
    g_ptr_array_add (whys, yield_why (self));
  return whys;
}

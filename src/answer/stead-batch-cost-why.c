/* stead-batch-cost-why.c - what went into a batch, as every "Why?" about its money begins. */
#include "config.h"

#include "answer/stead-batch-cost-why-private.h"

#include "answer/stead-cost-in-private.h"
#include "answer/stead-sum-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>

const char *
stead_batch_cost_source (void)
{
  return _("Weighted average of equivalent units: OpenStax, Principles of Accounting, vol. 2, sections 5.3 and 5.4.");
}

SteadWhy *
stead_batch_spent_why (const SteadBatchMoney *money,
                       const char            *currency)
{
  SteadCostIn cost;

  stead_cost_in_of_money (money, &cost);
  return stead_cost_in_why (&cost, money->batch->kind, currency);
}

double
stead_batch_finish_cents (const SteadBatchMoney *money)
{
  return money->cost.to_come_cents + money->salvage_cents;
}

char *
stead_batch_cost_terms (const SteadBatchMoney *money,
                        const char            *currency)
{
  g_autoptr(GString) terms = g_string_new (NULL);

  stead_sum_add (terms, stead_money_round (money->cost.so_far_cents), currency);
  if (stead_money_round (stead_batch_finish_cents (money)) != 0)
    stead_sum_add (terms, stead_money_round (stead_batch_finish_cents (money)), currency);
  if (stead_money_round (money->salvage_cents) != 0)
    stead_sum_take (terms, stead_money_round (money->salvage_cents), currency);
  return g_strdup_printf ("(%s)", terms->str);
}

char *
stead_batch_left_sum (const SteadBatchCost *cost,
                      const char           *currency)
{
  GString *sum = g_string_new (NULL);

  stead_sum_add (sum, stead_money_round (cost->so_far_cents), currency);
  stead_sum_take (sum, cost->carried_cents, currency);
  stead_sum_total (sum, stead_batch_left_cents (cost), currency);
  return g_string_free (sum, FALSE);
}

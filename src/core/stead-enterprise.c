/* stead-enterprise.c - the result of a student's or a group's enterprise, and its shares. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-enterprise.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MOST_CENTS G_GINT64_CONSTANT (9000000000000000)
#define MOST_MINUTES G_GINT64_CONSTANT (1000000000)

static gint64
change (SteadSpanCents span)
{
  return span.end_cents - span.begin_cents;
}

static gboolean
are_sums (const SteadEnterprise *period)
{
  const gint64 sums[] = {
    period->receipts_cents, period->costs_cents, period->stock.begin_cents, period->stock.end_cents,
    period->owed_to_us.begin_cents, period->owed_to_us.end_cents, period->owed_by_us.begin_cents,
    period->owed_by_us.end_cents, period->prepaid.begin_cents, period->prepaid.end_cents,
    period->depreciation_cents, period->gifts_cents, period->taken_out_cents, period->worth.begin_cents,
    period->worth.end_cents,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    if (sums[i] > MOST_CENTS || sums[i] < -MOST_CENTS)
      return FALSE;
  return period->unpaid_min >= 0;
}

void
stead_enterprise_result (const SteadEnterprise  *period,
                         SteadEnterpriseResult  *out)
{
  SteadEnterpriseResult result;

  g_return_if_fail (period != NULL && out != NULL);
  g_return_if_fail (are_sums (period));

  result = (SteadEnterpriseResult) {
    .cash_net_cents = period->receipts_cents - period->costs_cents,
    .stock_change_cents = change (period->stock),
    .other_change_cents = change (period->owed_to_us) + change (period->prepaid) - change (period->owed_by_us),
    .worth_change_cents = change (period->worth),
  };
  result.net_cents = result.cash_net_cents + result.stock_change_cents + result.other_change_cents
                     - period->depreciation_cents;
  result.unexplained_cents = result.worth_change_cents
                             - (result.net_cents + period->gifts_cents - period->taken_out_cents);
  result.per_hour_cents = period->unpaid_min > 0
                          ? (double) result.net_cents * 60 / (double) period->unpaid_min : NAN;
  *out = result;
}

static double
weight_of (const SteadSharer *sharer,
           SteadShareRule     rule)
{
  switch (rule)
    {
    case STEAD_SHARE_BY_HOURS:
      return (double) sharer->minutes;
    case STEAD_SHARE_BY_WEIGHT:
      return sharer->weight;
    case STEAD_SHARE_EQUAL:
    default:
      return 1;
    }
}

static gboolean
is_sharer (const SteadSharer *sharer)
{
  return sharer->minutes >= 0 && sharer->minutes <= MOST_MINUTES && sharer->weight >= 0 && sharer->weight <= 1e6
         && sharer->fixed_cents >= 0 && sharer->fixed_cents <= MOST_CENTS / 1000;
}

static gboolean
set_error (GError         **error,
           SteadCoreError   code,
           const char      *message)
{
  g_set_error_literal (error, STEAD_CORE_ERROR, code, message);
  return FALSE;
}

gboolean
stead_enterprise_share (gint64              total_cents,
                        const SteadSharer  *sharers,
                        gsize               n,
                        SteadShareRule      rule,
                        gint64             *out_cents,
                        GError            **error)
{
  g_autofree double *weights = NULL;
  gint64 rest_cents = total_cents;
  double sum = 0;

  g_return_val_if_fail (sharers != NULL && n > 0 && n <= 1000, FALSE);
  g_return_val_if_fail (out_cents != NULL, FALSE);
  g_return_val_if_fail (total_cents <= MOST_CENTS / 1000 && total_cents >= -MOST_CENTS / 1000, FALSE);

  weights = g_new (double, n);
  for (gsize i = 0; i < n; i++)
    {
      if (!is_sharer (&sharers[i]))
        return set_error (error, STEAD_CORE_ERROR_RANGE,
                          _("Hours, shares and fixed sums cannot be below 0. Check who shares."));
      weights[i] = weight_of (&sharers[i], rule);
      sum += weights[i];
      rest_cents -= sharers[i].fixed_cents;
    }
  if (rest_cents < 0 && rest_cents != total_cents)
    return set_error (error, STEAD_CORE_ERROR_RANGE,
                      _("The fixed sums are more than there is to share. Lower them."));
  if (!(sum > 0))
    return set_error (error, STEAD_CORE_ERROR_NONE,
                      _("Nobody has hours or a share, so nothing can be divided by them. Choose another way."));
  stead_money_split (rest_cents, weights, n, out_cents);
  for (gsize i = 0; i < n; i++)
    out_cents[i] += sharers[i].fixed_cents;
  return TRUE;
}

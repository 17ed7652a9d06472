/* stead-cost-in.c - what went into a batch so far, part by part, and the sum of it. */
#include "config.h"

#include "answer/stead-cost-in-private.h"

#include "answer/stead-batch-private.h"
#include "answer/stead-cost-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
add_up (SteadCostIn *self)
{
  double cents = 0;

  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    cents += self->cents[kind];
  self->total_cents = stead_money_round (cents - (double) self->moved_out_cents);
}

gboolean
stead_cost_in_read (SteadStore      *store,
                    SteadBatchKind   kind,
                    gint64           batch_id,
                    SteadDay         from,
                    SteadDay         to,
                    gint64           start_cents,
                    gint64           moved_out_cents,
                    SteadCostIn     *out,
                    GError         **error)
{
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (store, batch_id, from, to, error);
  g_autoptr(GPtrArray) charges = uses != NULL ? stead_asset_charges (store, batch_id, from, to, error) : NULL;

  if (charges == NULL)
    return FALSE;
  *out = (SteadCostIn) { .cents[STEAD_COST_START] = (double) start_cents, .moved_out_cents = moved_out_cents };
  for (guint i = 0; i < uses->len; i++)
    {
      const SteadUse *use = uses->pdata[i];
      double *cents = &out->cents[stead_cost_kind_of_use (kind, use->kind)];

      *cents += (double) use->cost_cents;
      if (use->uncovered_base > 0 && isfinite (use->uncovered_cents))
        *cents += use->uncovered_cents;
    }
  for (guint i = 0; i < charges->len; i++)
    out->cents[STEAD_COST_ASSETS] += ((const SteadAssetCharge *) charges->pdata[i])->cents;
  add_up (out);
  return TRUE;
}

void
stead_cost_in_of_money (const SteadBatchMoney *money,
                        SteadCostIn           *out)
{
  *out = (SteadCostIn) { .moved_out_cents = 0 };
  for (int kind = 0; kind < STEAD_COST_LABOR; kind++)
    if (kind != STEAD_COST_PACKAGING)
      out->cents[kind] = money->so_far[kind];
  out->total_cents = stead_money_round (money->cost.so_far_cents);
}

static const char *
part_name (SteadCostKind  part,
           SteadBatchKind batch)
{
  switch (part)
    {
    case STEAD_COST_FEED:     return C_("line of a cost sheet", "Feed");
    case STEAD_COST_START:    return stead_batch_start_name (batch);
    case STEAD_COST_BEDDING:  return C_("line of a cost sheet", "Bedding, litter");
    case STEAD_COST_ASSETS:   return C_("line of a cost sheet", "Equipment");
    case STEAD_COST_OVERHEAD: return C_("line of a cost sheet", "Overhead");
    case STEAD_COST_SUPPLIES:
    case STEAD_COST_PACKAGING:
    case STEAD_COST_LABOR:
    default:                  return C_("line of a cost sheet", "Other supplies");
    }
}

void
stead_cost_in_add_parts (GString        *sum,
                         const double   *cents,
                         gint64          total_cents,
                         SteadBatchKind  batch,
                         const char     *currency)
{
  double weights[STEAD_N_COST_KINDS];
  gint64 parts[STEAD_N_COST_KINDS];

  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    weights[kind] = MAX (0, cents[kind]);
  stead_money_split (total_cents, weights, STEAD_N_COST_KINDS, parts);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    if (parts[kind] != 0)
      {
        g_autofree char *money = stead_money_format (parts[kind], currency);

        stead_sum_add_named (sum, part_name ((SteadCostKind) kind, batch), money);
      }
}

static char *
worked_of (const SteadCostIn *self,
           SteadBatchKind     batch,
           const char        *currency)
{
  GString *sum = g_string_new (NULL);

  stead_cost_in_add_parts (sum, self->cents, self->total_cents + self->moved_out_cents, batch, currency);
  if (self->moved_out_cents != 0)
    stead_sum_take (sum, self->moved_out_cents, currency);
  stead_sum_total (sum, self->total_cents, currency);
  return g_string_free (sum, FALSE);
}

static gboolean
is_empty (const SteadCostIn *self)
{
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    if (self->cents[kind] > 0)
      return FALSE;
  return TRUE;
}

SteadWhy *
stead_cost_in_why (const SteadCostIn *self,
                   SteadBatchKind     kind,
                   const char        *currency)
{
  g_return_val_if_fail (self != NULL && currency != NULL, NULL);

  if (is_empty (self))
    return NULL;
  return stead_why_new (g_strdup (_("Cost in, so far")),
                        kind == STEAD_BATCH_FISH
                        ? _("The fingerlings + what was used out of the store room, at what it cost + the share of what is used "
                            "for years − what fish took along that moved to another group. Unpaid work is not in it. Feed "
                            "without a receipt counts at the nearest known price.")
                        : _("What it began with + what was used out of the store room, at what it cost + the share of what is "
                            "used for years. Unpaid work is not in it. Feed without a receipt counts at the nearest known "
                            "price."),
                        worked_of (self, kind, currency),
                        _("What leaves the store room, and wear: OpenStax, Principles of Accounting, vol. 1, sections 10.2 "
                          "and 11.3. What is counted: common practice, no source."));
}

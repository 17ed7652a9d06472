/* stead-cost-in-private.h - what went into a batch so far, part by part, and the sum of it. */
#pragma once

#include "answer/stead-batch-money.h"
#include "answer/stead-words.h"

G_BEGIN_DECLS

/* Without unpaid work. */
typedef struct
{
  double cents[STEAD_N_COST_KINDS];   /* unrounded, each 0 or more */
  gint64 moved_out_cents;             /* carried away by fish that moved to another group */
  gint64 total_cents;                 /* of all these less what was carried away: rounded once */
} SteadCostIn;

/**
 * stead_cost_in_read:
 * @start_cents: the animals at their full price, with those that moved in
 * @moved_out_cents: what moved away carried off
 * @out: (out): feed at the nearest known price where no receipt covers it
 */
gboolean stead_cost_in_read (SteadStore      *store,
                             SteadBatchKind   kind,
                             gint64           batch_id,
                             SteadDay         from,
                             SteadDay         to,
                             gint64           start_cents,
                             gint64           moved_out_cents,
                             SteadCostIn     *out,
                             GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same out of the money of a batch. */
void stead_cost_in_of_money (const SteadBatchMoney *money,
                             SteadCostIn           *out);

/* (nullable): %NULL where nothing went in */
SteadWhy *stead_cost_in_why (const SteadCostIn *self,
                             SteadBatchKind     kind,
                             const char        *currency) G_GNUC_WARN_UNUSED_RESULT;

/* "Feed $510.20 + Bedding, litter $33.00": each part in whole cents, so that they add up to @total_cents.
 * @cents: (array fixed-size=STEAD_N_COST_KINDS): each 0 or more, not all 0 */
void stead_cost_in_add_parts (GString        *sum,
                              const double   *cents,
                              gint64          total_cents,
                              SteadBatchKind  batch,
                              const char     *currency);

G_END_DECLS

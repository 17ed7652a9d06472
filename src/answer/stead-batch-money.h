/* stead-batch-money.h - what went into a batch so far, and what will still go in.
 *
 * So far: what was used out of the store room, oldest lot first, feed without a
 * receipt at the nearest known price; animals or seed; the share of what is used
 * for years, by days.  To come, until the day on which the batch is expected to end:
 *  - feed: what the forecast says will be fed, else what the plan has left, at the
 *    price of the next bag; else as much a day as in the last four weeks;
 *  - bedding and supplies: what the plan has left for other costs, else as much a
 *    day as in the last four weeks;
 *  - the share of what is used for years: by its own rule.
 * A plan that is used up before the end says nothing of the days that are left: they
 * cost as much as those of the last four weeks.
 * A batch that is over has nothing to come.  (Common practice, no source; the rule of
 * the unit cost is in core/stead-batch-cost.h.)
 */
#pragma once

#include "answer/stead-batch-outlook.h"
#include "core/stead-batch-cost.h"
#include "core/stead-cost.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"
#include "store/stead-harvest-repo.h"

G_BEGIN_DECLS

/* What the feed still to come is reckoned by. */
typedef enum
{
  STEAD_TO_COME_NOTHING,    /* over, or no end is known */
  STEAD_TO_COME_FORECAST,
  STEAD_TO_COME_PLAN,
  STEAD_TO_COME_LATE,       /* as in the last four weeks */
} SteadToComeBasis;

typedef struct
{
  SteadBatch         *batch;
  SteadBatchPlan      plan;
  SteadBatchOutlook   outlook;
  SteadHarvestTotals  harvested;
  SteadFlockTotals    laid;                          /* of a flock; else 0 */
  SteadDay            from, to;                      /* days that money went in, both included */
  int                 days, days_left;
  GPtrArray          *uses;                          /* of SteadUse, from @from to @to */
  double              fed_kg;                        /* by the log */
  double              so_far[STEAD_N_COST_KINDS];    /* cents; packaging 0, labor at the farm's rate */
  double              gift[STEAD_N_COST_KINDS];      /* of it given, at fair value */
  double              to_come[STEAD_N_COST_KINDS];   /* cents */
  double              start_cents;                   /* price of the animals, the seed or plants */
  double              moved_in_cents;                /* carried here by fish that moved in */
  double              moved_out_cents;               /* carried away by fish that moved out */
  double              kept_frac;                     /* share of all that stayed, 0 to 1; in the figures already */
  double              salvage_cents;                 /* worth at the end that comes off: old hens */
  SteadToComeBasis    feed_basis;
  double              feed_to_come_kg;               /* NAN: by money alone */
  double              good_base;                     /* good output so far */
  SteadBatchCost      cost;                          /* all of the above without labor */
} SteadBatchMoney;

void stead_batch_money_clear (SteadBatchMoney *money);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadBatchMoney, stead_batch_money_clear)

/**
 * stead_batch_money_read:
 * @farm: whose rate of pay unpaid work is valued at
 * @out: (out): to be cleared with stead_batch_money_clear()
 */
gboolean stead_batch_money_read (SteadStore       *store,
                                 const SteadFarm  *farm,
                                 gint64            batch_id,
                                 SteadBatchMoney  *out,
                                 GError          **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

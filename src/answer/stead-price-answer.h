/* stead-price-answer.h - "What price covers it, and how many must we sell?"
 *
 * The answer is read from the farm once; while a handle is dragged only
 * stead_price_answer_set() runs, which reads nothing from the store.
 */
#pragma once

#include "answer/stead-cost-answer.h"
#include "core/stead-breakeven.h"

G_BEGIN_DECLS

typedef struct
{
  SteadCostAnswer *cost;
  SteadCvp         plan;       /* as the farm has it: price, sheet's unit cost, stall costs, plan */
  SteadCvp         cvp;        /* as it stands under the handles */
  SteadCvpFigures  figures;    /* of cvp */
  gint64           price_on_file;  /* in force today; -1: none yet (plan.price is then a proposal) */
  GPtrArray       *prices;     /* of SteadPrice, oldest first */
  char            *sentence;   /* markup: the one sentence over the chart */
  char            *advice;     /* (nullable) markup: what to do, or what differs from the farm's record */
} SteadPriceAnswer;

void stead_price_answer_free (SteadPriceAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPriceAnswer, stead_price_answer_free)

SteadPriceAnswer *stead_price_answer_new (SteadStore   *store,
                                          gint64        product_id,
                                          SteadPeriod   period,
                                          GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* New handles: figures and sentences follow.  Whole cents and whole units. */
void stead_price_answer_set (SteadPriceAnswer *self,
                             const SteadCvp   *cvp);

/* (transfer full) (element-type SteadWhy): break-even, margin, safety, leverage, target, steps */
GPtrArray *stead_price_answer_whys (const SteadPriceAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* The figures that have a "Why?", in the order of stead_price_answer_whys(). */
typedef enum
{
  STEAD_PRICE_WHY_MARGIN,
  STEAD_PRICE_WHY_EVEN,
  STEAD_PRICE_WHY_SAFETY,
  STEAD_PRICE_WHY_LEVERAGE,
  STEAD_PRICE_WHY_TARGET,
  STEAD_PRICE_WHY_STEPS,
} SteadPriceWhy;

/* The title that its "Why?" bears whenever there is one. */
const char *stead_price_why_title (SteadPriceWhy why);

/* The numbers of the chart as rows, for "Show as table": units, money in, all costs, what is left. */
typedef struct
{
  gint64 units;
  gint64 revenue_cents;
  gint64 cost_cents;
  gint64 profit_cents;
} SteadPriceRow;

/* (transfer full): of SteadPriceRow; round steps of units, the break-even and the plan among them */
GArray *stead_price_answer_table (const SteadPriceAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-sale-result-answer.h - "What did the sale bring, and why more or less than planned?"
 *
 * The difference is taken apart by core/stead-sale-variance.h; its parts add up.
 */
#pragma once

#include "answer/stead-sale-answer.h"
#include "core/stead-sale-variance.h"

G_BEGIN_DECLS

typedef struct
{
  SteadSaleGood *good;
  SteadSaleSum   sum;
  double         plan_sold;      /* of the plan: what was likely, or all that was planned */
  double         plan_cents;     /* what one was thought to cost; 0 where nobody knew */
  double         cost_cents;     /* what one did cost */
  double         price_cents;    /* mean of what was sold; the plan's if nothing was */
  double         plan_lost_cents; /* of the plan: what is left over costs more than it is worth then */
  double         lost_units;     /* nobody paid for: tasted, given away, spoiled, thrown away */
  double         lost_cents;     /* what these cost */
} SteadResultLine;

typedef struct
{
  SteadFarm         *farm;
  SteadSale         *sale;
  GPtrArray         *lines;       /* of SteadResultLine */
  GPtrArray         *lefts;       /* of SteadSaleLeft */
  GPtrArray         *hours;       /* of SteadWorkSpan */
  SteadCashCount    *count;       /* (nullable): not cashed up yet */
  SteadSaleTill      till;
  gint64             over_cents;
  gboolean           has_variance;
  SteadSaleVariance  variance;
  GPtrArray         *reasons;     /* of char *: plain sentences, the largest first */
  GPtrArray         *prices;      /* of char *: plain, prices that were changed on the day, and when */
  char              *sentence;    /* markup */
  char              *caution;     /* (nullable) */
} SteadResultAnswer;

void stead_result_answer_free (SteadResultAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadResultAnswer, stead_result_answer_free)

SteadResultAnswer *stead_result_answer_new (SteadStore  *store,
                                            gint64       sale_id,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): what was taken and is left, each part of the difference from
 * the plan, what was left over, and the money in the box. */
GPtrArray *stead_result_answer_whys (const SteadResultAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

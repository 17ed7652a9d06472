/* stead-batch-cost-why-private.h - what went into a batch, as every "Why?" about its money begins. */
#pragma once

#include "answer/stead-batch-money.h"
#include "answer/stead-words.h"

G_BEGIN_DECLS

/* Source of the cost of one. */
const char *stead_batch_cost_source (void);

/* What went in so far, part by part; (nullable): %NULL where nothing went in */
SteadWhy *stead_batch_spent_why (const SteadBatchMoney *money,
                                 const char            *currency) G_GNUC_WARN_UNUSED_RESULT;

/* What finishes it, with what the animals are worth at the end still in it. */
double    stead_batch_finish_cents (const SteadBatchMoney *money);

/* What a unit is worked out of, in brackets: "($197.00 + $28.00 − $20.00)". */
char     *stead_batch_cost_terms (const SteadBatchMoney *money,
                                  const char            *currency) G_GNUC_WARN_UNUSED_RESULT;

/* "$197.00 − $118.20 = $78.80": what went in and no lot carries yet. */
char     *stead_batch_left_sum (const SteadBatchCost *cost,
                                const char           *currency) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

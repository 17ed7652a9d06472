/* stead-price-private.h - the words of the price answer. */
#pragma once

#include "answer/stead-price-answer.h"

G_BEGIN_DECLS

/* The sentence over the chart, from cvp and figures alone; markup. */
char *stead_price_sentence (const SteadPriceAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (nullable): what to do, or what differs from the farm's record; markup. */
char *stead_price_advice (const SteadPriceAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* The price, in whole minor units, at which the plan just pays all its costs
 * (and @target_cents on top); -1 without a plan. */
gint64 stead_price_for_plan (const SteadCvp *cvp,
                             double          target_cents);

G_END_DECLS

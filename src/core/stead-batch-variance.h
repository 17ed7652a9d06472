/* stead-batch-variance.h - why a batch brought more or less money than was planned.
 *
 * The difference between plan and result is taken apart so that the parts add up
 * to all of it:
 *
 *   price        (actual - planned price) x actual output
 *   volume       (actual - planned output) x (planned price - planned feed cost of a unit)
 *   feed price   (planned - actual feed price) x actual feed
 *   feed use     (feed that the actual output should have taken - actual feed) x planned feed price
 *   other        planned - actual other cost
 *
 * What raises the result is above 0.
 * Sources: OpenStax Principles of Accounting vol. 2, section 8.2: price and quantity
 * variance of a material, its standard quantity that of the actual output; volume and
 * sales price against a flexible budget: from memory.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Plan or result of a whole batch. */
typedef struct
{
  double output;          /* good output, base units */
  double price_cents;     /* for one of them */
  double feed_kg;
  double feed_cents_kg;
  double other_cents;     /* all cost but feed; animals and seed among them */
} SteadBatchResult;

/* Cents; above 0 is better than planned. */
typedef struct
{
  double planned_cents;     /* left over by plan: sales less all cost */
  double actual_cents;
  double price_cents;
  double volume_cents;
  double feed_price_cents;
  double feed_use_cents;
  double other_cents;
  double feed_allowed_kg;   /* that the actual output should have taken */
} SteadBatchVariance;

/**
 * stead_batch_result_cents:
 *
 * Returns: output x price - feed x its price - other cost
 */
double stead_batch_result_cents (const SteadBatchResult *result);

/**
 * stead_batch_variance:
 * @planned: with an output above 0
 * @actual: what came
 * @out: (out): actual - planned = price + volume + feed price + feed use + other
 *
 * Returns: %FALSE, with @out left alone, if nothing was planned to come: there is
 *   no feed for one unit then
 */
gboolean stead_batch_variance (const SteadBatchResult *planned,
                               const SteadBatchResult *actual,
                               SteadBatchVariance     *out);

G_END_DECLS

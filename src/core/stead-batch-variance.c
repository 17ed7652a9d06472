/* stead-batch-variance.c - why a batch brought more or less money than was planned. */
#include "config.h"

#include "core/stead-batch-variance.h"
#include "core/stead-overhead.h"

#include <math.h>

double
stead_batch_result_cents (const SteadBatchResult *result)
{
  g_return_val_if_fail (result != NULL, NAN);
  return result->output * result->price_cents - result->feed_kg * result->feed_cents_kg - result->other_cents;
}

gboolean
stead_batch_variance (const SteadBatchResult *planned,
                      const SteadBatchResult *actual,
                      SteadBatchVariance     *out)
{
  double unit_feed_kg;

  g_return_val_if_fail (planned != NULL && actual != NULL && out != NULL, FALSE);
  if (!(planned->output > 0))
    return FALSE;
  unit_feed_kg = planned->feed_kg / planned->output;
  *out = (SteadBatchVariance) {
    .planned_cents = stead_batch_result_cents (planned),
    .actual_cents = stead_batch_result_cents (actual),
    .price_cents = (actual->price_cents - planned->price_cents) * actual->output,
    .volume_cents = (actual->output - planned->output)
                    * (planned->price_cents - unit_feed_kg * planned->feed_cents_kg),
    .feed_allowed_kg = unit_feed_kg * actual->output,
    .other_cents = planned->other_cents - actual->other_cents,
  };
  out->feed_price_cents = stead_price_variance_cents (planned->feed_cents_kg, actual->feed_cents_kg, actual->feed_kg);
  out->feed_use_cents = stead_quantity_variance_cents (planned->feed_cents_kg, out->feed_allowed_kg, actual->feed_kg);
  return TRUE;
}

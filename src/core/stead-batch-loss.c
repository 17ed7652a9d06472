/* stead-batch-loss.c - what is lost of a batch, and who carries its cost. */
#include "config.h"

#include "core/stead-batch-loss.h"

#include <math.h>

void
stead_batch_loss_figures (const SteadBatchLoss  *batch,
                          SteadBatchLossFigures *out)
{
  double normal;
  double expected;
  double short_units;

  g_return_if_fail (batch != NULL && out != NULL);

  normal = batch->input_units * batch->normal_loss_frac;
  expected = batch->input_units - normal;
  short_units = expected - batch->output_units;
  *out = (SteadBatchLossFigures) { .abnormal_loss_units = MAX (0, short_units),
                                   .abnormal_gain_units = MAX (0, -short_units) };
  if (batch->rule == STEAD_LOSS_EXPECTED_OUTPUT)
    {
      out->unit_cents = expected > 0
                        ? (batch->input_cents - normal * batch->scrap_price_cents) / expected : NAN;
      out->output_cents = batch->output_units * out->unit_cents;
    }
  else
    {
      out->unit_cents = batch->input_units > 0 ? batch->input_cents / batch->input_units : NAN;
      out->output_cents = batch->input_cents - short_units * out->unit_cents;
    }
  out->abnormal_loss_cents = out->abnormal_loss_units * out->unit_cents;
  out->abnormal_gain_cents = out->abnormal_gain_units * out->unit_cents;
}

double
stead_units_lost (double begin_units,
                  double started_units,
                  double completed_units,
                  double end_units)
{
  return begin_units + started_units - completed_units - end_units;
}

/* stead-batch-loss.h - what is lost of a batch, and who carries its cost.
 *
 * Normal loss (usual trim, cracked eggs, usual deaths) is carried by the good
 * units; abnormal loss (a predator, a power failure) stands on its own line.
 * Source: process costing lecture notes for an accounting qualification,
 * pp. 146 to 154.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Which units an abnormal loss is measured against: published texts differ. */
typedef enum
{
  STEAD_LOSS_EXPECTED_OUTPUT,  /* it carries its share of normal loss: the default */
  STEAD_LOSS_ALL_UNITS,        /* it does not */
} SteadLossRule;

typedef struct
{
  SteadLossRule rule;
  double        input_units;
  double        input_cents;         /* all cost of the batch */
  double        normal_loss_frac;    /* of the input */
  double        scrap_price_cents;   /* money for a unit of normal loss */
  double        output_units;        /* good units that came */
} SteadBatchLoss;

/* Cents.  A better output than expected is a gain, a worse one a loss. */
typedef struct
{
  double unit_cents;            /* NAN without expected output */
  double output_cents;
  double abnormal_loss_units;
  double abnormal_loss_cents;
  double abnormal_gain_units;
  double abnormal_gain_cents;
} SteadBatchLossFigures;

void stead_batch_loss_figures (const SteadBatchLoss  *batch,
                               SteadBatchLossFigures *out);

/**
 * stead_units_lost:
 * Returns: begin + started - completed - end
 */
double stead_units_lost (double begin_units,
                         double started_units,
                         double completed_units,
                         double end_units);

G_END_DECLS

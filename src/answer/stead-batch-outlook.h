/* stead-batch-outlook.h - what a batch is still expected to give, until when, and on how much feed. */
#pragma once

#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

/* Where the expectation comes from. */
typedef enum
{
  STEAD_OUTLOOK_NONE,       /* nothing is known: the figures are NAN */
  STEAD_OUTLOOK_PLAN,       /* the plan's output, less what came */
  STEAD_OUTLOOK_FORECAST,   /* of the fish, the crop or the flock */
  STEAD_OUTLOOK_OVER,       /* nothing more comes: the figures are 0 */
} SteadOutlookBasis;

/* Good output as it goes to the store room: pieces (eggs), or kg. */
typedef struct
{
  SteadOutlookBasis basis;
  double            expected_base;   /* still to come; NAN */
  double            low_base;        /* with a chance of 8 in 10 between the two; NAN: no band */
  double            high_base;
  SteadDay          ends_on;         /* the last of it; STEAD_DAY_NONE: not known */
  double            feed_kg;         /* still to be fed until then; NAN: not known */
  gboolean          is_live;         /* of fish: as they weigh alive, since no harvest tells yet what is left of it */
} SteadBatchOutlook;

/**
 * stead_batch_outlook_read:
 *
 * Asks the forecast of the batch's kind; where there is none, its plan.
 *
 * Returns: %FALSE with @error, and @out left alone, only if the farm cannot be read
 */
gboolean stead_batch_outlook_read (SteadStore         *store,
                                   const SteadBatch   *batch,
                                   SteadBatchOutlook  *out,
                                   GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* What to say beside figures that are live weight. */
const char *stead_batch_outlook_live (void);

/**
 * stead_batch_output_unit:
 * @out: (out) (transfer none): the unit that what comes of @batch is shown in: that of
 *   the item harvested last; before the first harvest pieces of a flock, else the farm's
 *   unit of weight
 */
gboolean stead_batch_output_unit (SteadStore         *store,
                                  const SteadBatch   *batch,
                                  const SteadUnit   **out,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

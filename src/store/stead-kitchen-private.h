/* stead-kitchen-private.h - what the parts of the kitchen repository share. */
#pragma once

#include "store/stead-batch-private.h"
#include "store/stead-kitchen-repo.h"

G_BEGIN_DECLS

/**
 * stead_kitchen_settle_cost:
 * @batch_id: a kitchen batch, finished or not
 *
 * Sets the cents of what the batch made to the cents of what it used, split by
 * amount over several lots.  To be called whenever the cents of a movement "used" of
 * the batch changed.  What left the made lots since carries its old cents: whoever
 * calls has them to settle.
 */
gboolean stead_kitchen_settle_cost (SteadStore  *store,
                                    gint64       batch_id,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The batch's row, if it is a kitchen batch that is not finished; NULL with a reason. */
SteadBatch *stead_kitchen_open_batch (SteadStore  *store,
                                      gint64       batch_id,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Moves the first day of a batch that was planned for later to @day. */
gboolean stead_kitchen_begin_by (SteadStore  *store,
                                 SteadBatch  *batch,
                                 SteadDay     day,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the copies of the recipe's parts and steps of an empty batch. */
gboolean stead_kitchen_copy_recipe (SteadStore  *store,
                                    gint64       batch_id,
                                    gint64       recipe_id,
                                    double       factor,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

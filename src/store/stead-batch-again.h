/* stead-batch-again.h - the next batch, made after the model of a former one. */
#pragma once

#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

/* What is new; all else is taken from the model. */
typedef struct
{
  char     *name;         /* unique among batches, not empty */
  SteadDay  started_on;   /* up to today */
  gint64    count;        /* hens, fish or plants; 1 or more */
  gint64    cost_cents;   /* of all of them */
} SteadBatchStart;

/**
 * stead_batch_repo_start_read:
 * @out: (out): how many the model began with and what they cost, and @name unset
 */
gboolean stead_batch_repo_start_read (SteadStore       *store,
                                      gint64            model_id,
                                      SteadBatchStart  *out,
                                      GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_batch_repo_start_again:
 * @model_id: a flock, fish or a crop, over or not
 * @out_id: (out): the new batch
 *
 * Copies how it is kept and what is expected of it, its plan and its routines; days go
 * along with the new first day, and birds are as old as the former were when they came.
 * Its log, harvests, notes and treatments stay with the model.
 */
gboolean stead_batch_repo_start_again (SteadStore             *store,
                                       gint64                  model_id,
                                       const SteadBatchStart  *start,
                                       gint64                 *out_id,
                                       GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

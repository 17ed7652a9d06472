/* stead-batch-end.h - "What would be left behind if this batch ended?" */
#pragma once

#include "answer/stead-batch-answer.h"

G_BEGIN_DECLS

typedef struct
{
  SteadBatch *batch;
  gint64      alive;        /* fish by the log; 0 of anything else */
  gint64      left_cents;   /* of its cost that no lot carries, where its lots carry cost; 0: nothing */
  char       *text;         /* (nullable): both, and what is to be done about them */
  GPtrArray  *whys;         /* of SteadWhy: how the two come about; empty with nothing left */
} SteadBatchEnd;

void stead_batch_end_free (SteadBatchEnd *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatchEnd, stead_batch_end_free)

SteadBatchEnd *stead_batch_end_new (SteadStore  *store,
                                    gint64       batch_id,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

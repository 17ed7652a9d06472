/* stead-batch-private.h - what the repositories of all kinds of batches do the same way. */
#pragma once

#include "store/stead-batch-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* Columns of a row of batch AS b, to stand first in a SELECT. */
#define BATCH_COLUMNS \
  "b.id, b.kind, b.name, b.place_id, b.started_on, b.ended_on, b.feed_item_id, b.care_minutes_day, b.note"
#define BATCH_N_COLUMNS 9

/* The words of SteadBatchKind in the file, in its order; %NULL at the end. */
extern const char * const stead_batch_kind_words[];

/* Fills in @out, whose texts must be unset, from BATCH_COLUMNS. */
void stead_batch_read_row (SteadStmt  *stmt,
                           SteadBatch *out);

/**
 * stead_batch_check:
 *
 * Refuses a name that is empty or taken, a first day that is missing or to come, an
 * end before it or to come, a feed that is not weighed, care outside 0 to 1440
 * minutes, and days that leave an entry, a harvest or a move of fish outside.
 */
gboolean stead_batch_check (SteadStore        *store,
                            const SteadBatch  *batch,
                            GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the row of batch; an id of 0 inserts and fills in the id. */
gboolean stead_batch_write (SteadStore  *store,
                            SteadBatch  *batch,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses while a product, a lot or a harvest names the batch. */
gboolean stead_batch_check_unused (SteadStore  *store,
                                   gint64       id,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Deletes the batch with its log, its notes and their pictures. */
gboolean stead_batch_remove (SteadStore  *store,
                             gint64       id,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-wait.h - what must wait after a treatment, in words.
 *
 * A withdrawal time is a veterinarian's order: the program keeps it and shows it
 * wherever something of the batch may be sold, and never works one out.
 */
#pragma once

#include "store/stead-batch-repo.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/**
 * stead_wait_read:
 * @batch_id: a batch
 * @day: as seen on this day
 * @out_until: (out): last day of the wait, or %STEAD_DAY_NONE
 *
 * Returns: %FALSE with @error if the farm cannot be read
 */
gboolean stead_wait_read (SteadStore  *store,
                          gint64       batch_id,
                          SteadDay     day,
                          SteadDay    *out_until,
                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* "“Catfish 1” waits after a treatment …": what comes of it now. */
char *stead_wait_batch_caution (const char *batch_name,
                                SteadDay    until) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_wait_lot_caution:
 * @lot: a lot in the store room
 * @out: (out) (nullable): a sentence if it was harvested while its batch waited
 */
gboolean stead_wait_lot_caution (SteadStore      *store,
                                 const SteadLot  *lot,
                                 char           **out,
                                 GError         **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-flock-private.h - what the parts of the flock repository share. */
#pragma once

#include "store/stead-flock-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

#define ENTRY_COLUMNS "id, batch_id, day, eggs, cracked, deaths, culled, feed_kg, note, person_id, left_out"

/* Returns: (transfer full): a SteadFlockEntry of ENTRY_COLUMNS */
gpointer stead_flock_entry_from_row (SteadStmt *stmt);

/**
 * stead_flock_write_entry:
 * @flock: the entry's flock
 * @before: (nullable): the entry as it was
 *
 * Checks against the rest of the log and writes; feed is not settled yet.
 */
gboolean stead_flock_write_entry (SteadStore             *store,
                                  SteadFlockEntry        *entry,
                                  const SteadFlock       *flock,
                                  const SteadFlockEntry  *before,
                                  GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

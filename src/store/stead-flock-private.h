/* stead-flock-private.h - what the parts of the flock repository share. */
#pragma once

#include "store/stead-flock-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

#define ENTRY_COLUMNS "id, batch_id, day, eggs, cracked, deaths, culled, feed_kg, note, person_id, left_out, reason"

/* Returns: (transfer full): a SteadFlockEntry of ENTRY_COLUMNS */
gpointer stead_flock_entry_from_row (SteadStmt *stmt);

/* What the other entries of the flock say beside one entry. */
typedef struct
{
  gint64 lost_before;  /* hens lost before its day */
  gint64 lost_day;     /* on its day */
  gint64 lost_ever;
  gint64 eggs_day;     /* eggs of its day */
} SteadFlockOthers;

/**
 * stead_flock_write_entry:
 * @flock: the entry's flock
 * @others: what else stands in its log
 * @today: the store's today
 *
 * Checks and writes: an id of 0 inserts and fills in the id.  Feed is not
 * settled yet.
 */
gboolean stead_flock_write_entry (SteadStore              *store,
                                  SteadFlockEntry         *entry,
                                  const SteadFlock        *flock,
                                  const SteadFlockOthers  *others,
                                  SteadDay                 today,
                                  GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

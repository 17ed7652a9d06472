/* stead-rescue.h - what can still be read of a damaged farm, in a new farm. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/**
 * SteadRescue:
 * @n_rows: rows that the new farm took over
 * @n_refused: rows that could be read, but hold what a farm cannot hold
 * @n_orphans: rows that were left out because what they belong to is lost
 * @lost: (element-type utf8): what could not be read, a sentence each; empty if all could
 * @faults: (element-type utf8): what --verify finds in the new farm; empty if sound
 */
typedef struct
{
  guint64    n_rows;
  guint64    n_refused;
  guint64    n_orphans;
  GPtrArray *lost;
  GPtrArray *faults;
} SteadRescue;

void stead_rescue_free (SteadRescue *rescue);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRescue, stead_rescue_free)

/**
 * stead_rescue_run:
 * @from: a file that cannot be opened as a farm; open nowhere in this process.
 *   Only read, never written to
 * @to: a file that does not exist yet
 * @cancellable: (nullable): stops it
 * @error: return location for a #GError in %STEAD_STORE_ERROR
 *
 * Nothing of the file's own schema is believed or run: the tables are read as
 * this program lays them out, without its triggers, views and indexes.  Steps of
 * undo are not taken over.  A sound farm comes out as it went in.  May run in
 * any thread.
 *
 * Returns: (transfer full): what was found, or %NULL with nothing left at @to
 */
SteadRescue *stead_rescue_run (const char    *from,
                               const char    *to,
                               GCancellable  *cancellable,
                               GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether a farm that was refused for @error may be worth a rescue. */
gboolean     stead_rescue_may_help (const GError *error);

G_END_DECLS

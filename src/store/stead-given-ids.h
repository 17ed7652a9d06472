/* stead-given-ids.h - ids that new things were given, until it is sure that they are kept.
 *
 * A failed call leaves what it was given as it was: a thing that was not saved has no id,
 * or whoever saves it once more would change a row that is not there.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _SteadGivenIds SteadGivenIds;

/* Made before the first row is written; @id: (inout): must outlive it. */
SteadGivenIds *stead_given_ids_new (gint64 *id) G_GNUC_WARN_UNUSED_RESULT;
void           stead_given_ids_add (SteadGivenIds *self,
                                    gint64        *id);
/* Ends it, with the last row, and frees @self: each id is again what it was, unless all is @done.
 * Returns: @done */
gboolean       stead_given_ids_end (SteadGivenIds *self,
                                    gboolean       done);

G_END_DECLS

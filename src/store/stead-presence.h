/* stead-presence.h - who has a farm open: a mark beside the file. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _SteadPresence SteadPresence;

/**
 * stead_presence_take:
 * @path: a farm file
 * @out_holder: (out) (transfer full): who has it, a sentence for the person; %NULL if
 *   nobody else has
 *
 * Puts the hidden file ".NAME.in-use" beside the farm and holds a lock on it.  The
 * system drops the lock with the program, however that ends, so a mark that a crash
 * left is no obstacle.
 *
 * Returns: (nullable): to be let go with stead_presence_free(); %NULL if somebody else
 *   has the farm, or if no mark can be left there
 */
SteadPresence *stead_presence_take (const char  *path,
                                    char       **out_holder) G_GNUC_WARN_UNUSED_RESULT;

/* Takes the mark away. */
void           stead_presence_free (SteadPresence *presence);

/* Where the mark of @path stands. */
char          *stead_presence_path (const char *path) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

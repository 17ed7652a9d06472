/* stead-store-watch.h - things that outlive the action that saves them. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/* Of a thing that outlives the action, as one that is written in a dialog: unless the action is
 * kept, *@id is again what it is now, so that the thing can be saved once more. */
void stead_store_watch_id (SteadStore *self,
                           gint64     *id);

G_END_DECLS

/* stead-backup.h - the dated copy at the first change of a day. */
#pragma once

#include "store/stead-store-internal.h"

G_BEGIN_DECLS

/* Makes the copy of today if there is none yet.  A failure becomes the store's
 * notice: it never stops the change that is about to be made. */
void stead_backup_of_day (SteadStore *self);

G_END_DECLS

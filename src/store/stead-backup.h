/* stead-backup.h - the dated copy at the first change of a day. */
#pragma once

#include "store/stead-store-internal.h"

G_BEGIN_DECLS

#define STEAD_BACKUP_DAILY 14
#define STEAD_BACKUP_MONTHLY 12

/* Makes the copy of today if there is none yet.  Checking it goes on in a thread.
 * A failure becomes the store's notice: it never stops the change to come. */
void stead_backup_of_day (SteadStore *self);

/* Waits for the thread and takes over what it has to say. */
void stead_backup_wait   (SteadStore *self);

/* As stead_backup_wait(), but only if the thread is through. */
void stead_backup_settle (SteadStore *self);

G_END_DECLS

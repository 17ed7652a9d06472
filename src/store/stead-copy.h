/* stead-copy.h - a whole, checked copy of an open farm under another name. */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

#define STEAD_COPY_ENDING ".steading"

/* What @path is called: its last part without the ending of a farm. */
char     *stead_copy_stem   (const char    *path) G_GNUC_WARN_UNUSED_RESULT;

/* "FOLDER/STEM WORDS.steading" beside @path, with " (2)" and so on if it is taken. */
char     *stead_copy_beside (const char    *path,
                             const char    *words) G_GNUC_WARN_UNUSED_RESULT;

/* All pages of one connection to another, whatever was there. */
gboolean  stead_copy_pages  (sqlite3       *from,
                             sqlite3       *to,
                             GCancellable  *cancellable,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_copy_write:
 * @db: an open farm
 * @target: where the copy is to stand in the end
 * @cancellable: (nullable): stops it
 *
 * First: all pages to a new file beside @target, through the online
 * backup API.  Not yet on the disk for sure, not yet checked.
 *
 * Returns: (transfer full): the name of that file, or %NULL with nothing left
 */
char     *stead_copy_write  (sqlite3       *db,
                             const char    *target,
                             GCancellable  *cancellable,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_copy_settle:
 * @part: what stead_copy_write() returned
 *
 * Then: onto the disk for sure, and integrity_check.  May run in another thread.
 * On failure @part is deleted.
 */
gboolean  stead_copy_settle (const char    *part,
                             GCancellable  *cancellable,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* At last: replaces @target in one rename.  On failure @part is deleted and
 * @target is as it was. */
gboolean  stead_copy_place  (const char    *part,
                             const char    *target,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* All three. */
gboolean  stead_copy_make   (sqlite3       *db,
                             const char    *target,
                             GCancellable  *cancellable,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Deletes what a crash left half copied in @folder, a day or more ago. */
void      stead_copy_sweep  (const char    *folder);

/* Makes a rename or a new name in @path's folder last through a power cut. */
void      stead_copy_sync_folder (const char *path);

G_END_DECLS

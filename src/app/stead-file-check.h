/* stead-file-check.h - the check of a farm file, begun while the screen is still being opened. */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* Whether the quick check of the file can be felt.  By its size alone: reading the file
 * ourselves would drop SQLite's locks on it. */
gboolean stead_file_check_is_large (const char *path);

/**
 * stead_file_check_begin:
 * @path: a file, absolute; one that is large, or not there, is left alone
 *
 * Begins the check in a thread.  One at a time: a former one is ended.
 */
void stead_file_check_begin (const char *path);

/**
 * stead_file_check_passed:
 *
 * Waits for what stead_file_check_begin() began.  Its result serves once.
 *
 * Returns: %TRUE if @path is the file that was checked, was found whole, and is as it was
 *   when the check began; else it must be checked as it is opened
 */
gboolean stead_file_check_passed (const char *path);

/* Ends what nobody asked for. */
void stead_file_check_end (void);

G_END_DECLS

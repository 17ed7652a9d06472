/* stead-first-look.h - a farm file checked, and what is new in it found, while the screen is still being opened. */
#pragma once

#include <gio/gio.h>

#include "answer/stead-due-answer.h"

G_BEGIN_DECLS

/* Whether the quick check of the file can be felt.  By its size alone: reading the file
 * ourselves would drop SQLite's locks on it. */
gboolean stead_first_look_is_large (const char *path);

/**
 * stead_first_look_begin:
 * @path: a file, absolute; one that is not there is left alone
 *
 * Begins in a thread: first the check, which a large file is spared, then what is due and
 * what the posts say, on a connection of its own that can only read.  One at a time: a former one is ended.
 */
void stead_first_look_begin (const char *path);

/**
 * stead_first_look_passed:
 *
 * Waits for what stead_first_look_begin() began.
 *
 * Returns: %TRUE once, if @path is the file that was checked, was found whole, and is as it
 *   was when the check began; else it must be checked as it is opened
 */
gboolean stead_first_look_passed (const char *path);

/**
 * stead_first_look_take_due:
 * @store: the farm as it was opened now
 *
 * Waits, as above.
 *
 * Returns: (transfer full) (nullable): what is due today, once, if it was found in the file of
 *   @store as that still is; else it must be found anew
 */
SteadDueAnswer   *stead_first_look_take_due (SteadStore *store) G_GNUC_WARN_UNUSED_RESULT;

/* Likewise: what the posts of the strip say, while no product is selected. */
SteadStripAnswer *stead_first_look_take_strip (SteadStore *store) G_GNUC_WARN_UNUSED_RESULT;

/* Ends what nobody asked for. */
void stead_first_look_end (void);

G_END_DECLS

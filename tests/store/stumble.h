/* stumble.h - a farm whose file fails at one chosen moment of reading or writing.
 *
 * Stands before what prepares and steps a statement in SQLite.  A place is a way
 * of calls that leads there; each place fails once in a program, so that however
 * often a loop runs, a round for each place is enough.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* From now on: the next place that has not failed before fails with @rc, once. */
void     stumble_arm    (int rc);
/* Ends that.  Returns: whether a place failed; if not, all of them have had their turn */
gboolean stumble_disarm (void);

/**
 * stumble_check:
 * @what: for the message, if the check fails
 * @worked: whether the work was told to be done
 *
 * Ends an armed round.  If a place failed, the work must have been refused, and with
 * a message; an error of the file that is swallowed would leave an answer of half a farm.
 *
 * Returns: whether a place failed
 */
gboolean stumble_check  (const char   *what,
                         gboolean      worked,
                         const GError *error);

/**
 * stumble_fork:
 *
 * For long work in memory.  It is done once; at each call that leads to a statement for the first
 * time, a child is made in which that statement fails, and that ends with stumble_join().  For
 * the parent nothing fails.
 */
void     stumble_fork  (int           rc);
/* Does not return in a child.  Returns: how many there were */
guint    stumble_join  (const char   *what,
                        gboolean      worked,
                        const GError *error);

G_END_DECLS

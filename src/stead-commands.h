/* stead-commands.h - what the program does without a window. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_commands_run:
 * @argv: (array zero-terminated=1): the command line, the program first
 * @out_status: (out): what the program is to end with: 0 done, 1 not done, 2 not understood
 *
 * Needs no display and never touches GTK.  What was asked for goes to standard
 * output; why it could not be done is one line on standard error.
 *
 * Returns: %TRUE if the program is to end with @out_status, %FALSE if it is to open its window
 */
gboolean stead_commands_run (const char * const *argv,
                             int                *out_status);

G_END_DECLS

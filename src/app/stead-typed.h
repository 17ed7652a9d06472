/* stead-typed.h - what a person has entered, to tell whether there is anything to lose. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * stead_typed_in:
 * @root: a dialog, say
 *
 * Returns: (transfer full): all that stands in the texts, choices and check boxes below @root,
 *   as one text that is only good to be compared with a later one
 */
char *stead_typed_in (GtkWidget *root) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

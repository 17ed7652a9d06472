/* stead-scheme.h - which set of colours the windows wear. */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Puts the style sheets on the default display and keeps them right: the
 * person's choice first, else the desktop's (asked over the session bus). */
void     stead_scheme_start   (void);
/* The person chose another look: wears it. */
void     stead_scheme_update  (void);
/* Whether the dark set is worn now. */
gboolean stead_scheme_is_dark (void);

G_END_DECLS

/* stead-shown-act.h - the act that keeps what a thermometer showed. */
#pragma once

#include "store/stead-shown-repo.h"

G_BEGIN_DECLS

/* For stead_desk_act().
 * @shown: a #SteadShown.  One that corrects another is put beside that, which stays; then the
 *   kind is that of the wrong one, whatever is said here */
gboolean stead_shown_act (SteadStore  *store,
                          gpointer     shown,
                          GError     **error);

G_END_DECLS

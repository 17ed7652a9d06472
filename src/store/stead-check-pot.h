/* stead-check-pot.h - to which line a pot that cools belongs. */
#pragma once

#include "store/stead-check-repo.h"

G_BEGIN_DECLS

/* Returns: the id of the line; 0 with @error if there is no such pot, -1 with @error */
gint64 stead_check_pot_line (SteadStore *store, gint64 pot_id, GError **error);

G_END_DECLS

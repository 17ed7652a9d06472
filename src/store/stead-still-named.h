/* stead-still-named.h - what still names a thing that is to be deleted. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/**
 * stead_still_named:
 * @table: that the row was to be deleted from
 *
 * Returns: (transfer full) (nullable): "the cash book, a build": where a person finds what
 *   names the row; %NULL if that cannot be told
 */
char *stead_still_named (SteadStore *store,
                         const char *table,
                         gint64      id) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

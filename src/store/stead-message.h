/* stead-message.h - what an SQLite result says to the person at the screen. */
#pragma once

#include "store/stead-store-private.h"

G_BEGIN_DECLS

/**
 * stead_message_set:
 * @db: (nullable): the connection on which it happened, asked for the rule that broke
 * @rc: an extended result code, not %SQLITE_OK
 * @error: return location for a #GError in %STEAD_STORE_ERROR
 */
void stead_message_set (sqlite3  *db,
                        int       rc,
                        GError  **error);

/* Sets @text, which is translated, with @code. Returns: %FALSE */
gboolean stead_message_refuse (GError          **error,
                               SteadStoreError   code,
                               const char       *text);

G_END_DECLS

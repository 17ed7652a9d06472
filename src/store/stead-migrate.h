/* stead-migrate.h - an older farm is brought to this program's schema. */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

/**
 * stead_migrate:
 * @db: a farm of version @from, whole, open for writing
 * @path: (nullable): its file; %NULL in memory
 * @schema: where to
 *
 * Copies it to "NAME before version N.steading" beside it, then changes it in
 * one transaction that ends with quick_check, foreign_key_check and a look at
 * the new schema.  Steps of undo are dropped: they speak of the old tables.
 *
 * Returns: %TRUE, or %FALSE with the file as it was
 */
gboolean stead_migrate (sqlite3            *db,
                        const char         *path,
                        const SteadSchema  *schema,
                        int                 from,
                        GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

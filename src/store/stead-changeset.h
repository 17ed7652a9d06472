/* stead-changeset.h - is a recorded step well formed, and does it fit this farm? */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

/**
 * stead_changeset_check:
 * @db: the farm that the step is to be applied to
 * @bytes: the step as it stands in the file
 * @size: how many bytes
 *
 * Returns: %TRUE if every byte has its place, and every table is a recorded one
 *   with the columns and the key that it has in @db; %FALSE with @error INVALID
 *   if not, or with what kept it from being looked at
 */
gboolean stead_changeset_check (sqlite3       *db,
                                const guint8  *bytes,
                                gsize          size,
                                GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

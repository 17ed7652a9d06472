/* stead-people-private.h - what the files on people share. */
#pragma once

#include "store/stead-people-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* @sql: deletes or changes the row with the id ?1, within an action. */
gboolean   stead_people_remove (SteadStore *store, const char *sql, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* All rows of @sql; @id: its ?1, if there is one. */
GPtrArray *stead_people_list   (SteadStore *store, const char *sql, gint64 id, SteadRowFunc row, GDestroyNotify free_row,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-connection-private.h - what opening a file asks about its kind. */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

/* Whether there is a plain file at @path. */
gboolean stead_connection_check_path (const char  *path,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether the first hundred bytes are those of a farm, of no newer version than @schema. */
gboolean stead_connection_sniff (sqlite3            *db,
                                 const SteadSchema  *schema,
                                 GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* What is said about a schema that could not be read: too much of it is not ours; always %FALSE. */
gboolean stead_connection_tell_schema (sqlite3  *db,
                                       int       rc,
                                       GError  **error);

/* Reading the schema ends with %SQLITE_INTERRUPT once it takes longer than any farm's.
 * @patience: is filled in, and must outlive the work */
void stead_connection_bound_schema (sqlite3       *db,
                                    SteadPatience *patience);

/* The schema is ours: values may be as long as a farm's are. */
void stead_connection_trust (sqlite3 *db);

G_END_DECLS

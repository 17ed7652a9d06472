/* stead-connection.h - one SQLite connection, made safe against a stranger's file. */
#pragma once

#include "store/stead-schema.h"
#include "store/stead-store-private.h"

G_BEGIN_DECLS

G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3, sqlite3_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (sqlite3_stmt, sqlite3_finalize)

/**
 * stead_connection_open:
 * @path: an existing file
 * @writable: %FALSE to open for reading
 * @schema: what a farm looks like
 * @error: return location for a #GError in %STEAD_STORE_ERROR
 *
 * Looks at the header before anything of the file is believed, then sets every
 * limit and guard.  The content is not looked at yet.
 *
 * Returns: (transfer full): the connection, or %NULL with a message for the person
 */
sqlite3 *stead_connection_open   (const char         *path,
                                  gboolean            writable,
                                  const SteadSchema  *schema,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* As stead_connection_open(), on a copy of @size bytes kept in memory; changes stay there. */
sqlite3 *stead_connection_open_bytes (gconstpointer       bytes,
                                      gsize               size,
                                      const SteadSchema  *schema,
                                      GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same without a look at the header: a copy of ours that is being checked. */
sqlite3 *stead_connection_open_any (const char         *path,
                                    gboolean            writable,
                                    GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* An empty file where there was none, so that no other is ever written over. */
gboolean stead_connection_claim  (const char         *path,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* A connection on a file that is empty, or in memory if @path is %NULL. */
sqlite3 *stead_connection_create (const char         *path,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether a farm here could be changed: the rollback journal needs the folder, too. */
gboolean stead_connection_may_write (const char *path);

/* Runs SQL that gives no rows, or whose rows do not matter. */
gboolean stead_connection_exec   (sqlite3            *db,
                                  const char         *sql,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* The whole number that @sql, one row of one column, gives. */
gboolean stead_connection_number (sqlite3            *db,
                                  const char         *sql,
                                  gint64             *out,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Runs "PRAGMA quick_check(1)" or another check that answers "ok". */
gboolean stead_connection_check  (sqlite3            *db,
                                  const char         *pragma,
                                  GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a check of SQLite said, without its heading. */
const char *stead_connection_finding (sqlite3_stmt *stmt);

/* A check also lists pages that it could not read for want of memory or of a
 * working disk: the result code then, which says nothing about the file, else
 * %SQLITE_OK. */
int         stead_connection_finding_code (sqlite3_stmt *stmt);

/* Long work on @db ends with %SQLITE_INTERRUPT once @cancellable is cancelled. */
void     stead_connection_watch  (sqlite3            *db,
                                  GCancellable       *cancellable);

/* How long one is ready to wait for a file that may be made to have no end. */
typedef struct
{
  GCancellable *cancellable;   /* (nullable) */
  gint64        looks_left;    /* 20,000 steps of SQLite each */
} SteadPatience;

/* Work on @db ends with %SQLITE_INTERRUPT once @patience has run out, which must outlive
 * the work; %NULL: there is no bound any more. */
void     stead_connection_bound   (sqlite3             *db,
                                   SteadPatience       *patience);
gboolean stead_connection_ran_out (const SteadPatience *patience);

/**
 * stead_connection_recognize:
 * @out_version: (out): the version of its schema, 1 to that of @schema
 *
 * Application id, version and every table, index and trigger must be as this
 * program writes them.  Comes before any other SQL on the file, its checks too: they
 * would run what the file's own schema says.  Ends what stead_connection_watch() set.
 */
gboolean stead_connection_recognize (sqlite3            *db,
                                     const SteadSchema  *schema,
                                     int                *out_version,
                                     GError            **error) G_GNUC_WARN_UNUSED_RESULT;

/* Sets up version @to on a connection that holds version @from; no transaction
 * of its own. */
gboolean stead_connection_lay_out (sqlite3            *db,
                                   const SteadSchema  *schema,
                                   int                 from,
                                   int                 to,
                                   GError            **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

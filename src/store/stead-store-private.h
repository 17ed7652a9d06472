/* stead-store-private.h - what the repositories share. */
#pragma once

/* The session extension, which Debian's library is built with. */
#define SQLITE_ENABLE_SESSION 1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#include "store/stead-store-error.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* A prepared statement is kept by the store and only reset when it goes out of
 * scope, so a statement must not be asked for again while it is still in use. */
typedef sqlite3_stmt SteadStmt;
void stead_stmt_release (SteadStmt *stmt);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStmt, stead_stmt_release)

/**
 * stead_store_prepare:
 * @sql: a literal; its address is the key under which the statement is kept
 *
 * Returns: (transfer full): to be let go by g_autoptr(SteadStmt), or %NULL with @error
 */
SteadStmt *stead_store_prepare (SteadStore  *self,
                                const char  *sql,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Steps a statement that returns no rows.  Turns triggers, CHECKs, UNIQUE and
 * FOREIGN KEY into messages of STEAD_STORE_ERROR. */
gboolean stead_store_run (SteadStore  *self,
                          SteadStmt   *stmt,
                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Steps to the first row: 1 a row, 0 none, -1 with @error. */
int stead_store_step (SteadStore  *self,
                      SteadStmt   *stmt,
                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The message for an SQLite result, in the words of the table in the code. */
void stead_store_set_error (SteadStore  *self,
                            int          rc,
                            GError     **error);

/* For deleting a person: neither this action nor any before it can be undone, and
 * nothing in the file remembers them.  Only between begin and commit. */
void      stead_store_forget_steps (SteadStore *self);

gboolean  stead_store_in_action (SteadStore *self);   /* between begin and commit */
sqlite3  *stead_store_get_db    (SteadStore *self);
gint64    stead_store_last_id   (SteadStore *self);

/* Binding and reading with our own nulls: STEAD_DAY_NONE, NAN, 0 ids, NULL or
 * empty texts and STEAD_COUNT_NONE become SQL NULL and come back as such. */
void     stead_stmt_bind_day   (SteadStmt *stmt, int at, SteadDay day);
void     stead_stmt_bind_real  (SteadStmt *stmt, int at, double value);
void     stead_stmt_bind_id    (SteadStmt *stmt, int at, gint64 id);
void     stead_stmt_bind_text  (SteadStmt *stmt, int at, const char *text);
/* As stead_stmt_bind_text(), but an empty text stays one. */
void     stead_stmt_bind_exactly (SteadStmt *stmt, int at, const char *text);
SteadDay stead_stmt_day        (SteadStmt *stmt, int at);
double   stead_stmt_real       (SteadStmt *stmt, int at);
char    *stead_stmt_text       (SteadStmt *stmt, int at) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-repo-private.h - what every repository does the same way. */
#pragma once

#include "store/stead-given-ids.h"
#include "store/stead-store-private.h"

G_BEGIN_DECLS

/* Amounts nearer to zero than this are nothing: a microgram of feed. */
#define STEAD_AMOUNT_EPSILON 1e-7

/* Longest name that the file takes. */
#define STEAD_NAME_MAX 200

/* Longest note, reason or other free text; a page and a half. */
#define STEAD_NOTE_MAX 4000

/* Sums of money and amounts that a farm can mean; beyond it is a slip of typing. */
#define STEAD_CENTS_MAX G_GINT64_CONSTANT (100000000000)
#define STEAD_AMOUNT_MAX 1e9

/* Makes a struct of the row that @stmt stands on. */
typedef gpointer (*SteadRowFunc) (SteadStmt *stmt);

/* Sets INVALID with a sentence for the person. Returns: %FALSE */
gboolean stead_repo_refuse (GError     **error,
                            const char  *format,
                            ...) G_GNUC_PRINTF (2, 3);

/* Sets NOT_FOUND. Returns: %FALSE */
gboolean stead_repo_missing (GError **error);

/* Returns: (transfer full) (nullable): @text without blanks at its ends; %NULL if nothing is left */
char *stead_repo_tidy (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Binds @text without blanks at its ends; nothing left is SQL NULL. */
void stead_repo_bind_tidy (SteadStmt  *stmt,
                           int         at,
                           const char *text);

/* Refuses a note that is too long or has signs that cannot be read; %NULL is none. */
gboolean stead_repo_check_note (const char  *note,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses an empty name, one too long, and signs that cannot be read. */
gboolean stead_repo_check_name (const char  *name,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_repo_check_unique:
 * @sql: a literal that selects a row with name ?1 and another id than ?2
 */
gboolean stead_repo_check_unique (SteadStore  *store,
                                  const char  *sql,
                                  const char  *name,
                                  gint64       id,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* @what names the field, as in "Cost": refuses a sum below zero or beyond all sense. */
gboolean stead_repo_check_cents (const char  *what,
                                 gint64       cents,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_repo_word:
 * @words: (array zero-terminated=1): the words of an enum, in its order
 *
 * Returns: the value that the text of column @at stands for; 0 if it is none of them
 */
int stead_repo_word (SteadStmt          *stmt,
                     int                 at,
                     const char * const *words);

/**
 * stead_repo_save_row:
 * @stmt: an INSERT, or an UPDATE whose last parameter is the id; all else is bound
 * @id: (inout): 0 for a new row, filled in
 *
 * Returns: %TRUE, or %FALSE with what the file says, or that there is no such row
 */
gboolean stead_repo_save_row (SteadStore  *store,
                              SteadStmt   *stmt,
                              gint64      *id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_repo_rows:
 * @stmt: with everything bound
 *
 * Returns: (transfer full): all rows, or %NULL with @error: half a list is never returned
 */
GPtrArray *stead_repo_rows (SteadStore      *store,
                            SteadStmt       *stmt,
                            SteadRowFunc     row,
                            GDestroyNotify   free_row,
                            GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full): the first row, or %NULL with @error, NOT_FOUND if there is none */
gpointer stead_repo_row (SteadStore    *store,
                         SteadStmt     *stmt,
                         SteadRowFunc   row,
                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* The two above for @sql, a literal whose only parameter is a whole number: an id, a flag. */
GPtrArray *stead_repo_rows_of (SteadStore      *store,
                               const char      *sql,
                               gint64           number,
                               SteadRowFunc     row,
                               GDestroyNotify   free_row,
                               GError         **error) G_GNUC_WARN_UNUSED_RESULT;
gpointer   stead_repo_row_of  (SteadStore    *store,
                               const char    *sql,
                               gint64         number,
                               SteadRowFunc   row,
                               GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Adds the integer in the first column of each row to @ids, of gint64. */
gboolean stead_repo_add_ids (SteadStore  *store,
                             SteadStmt   *stmt,
                             GArray      *ids,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (element-type gint64): the same in a new array, or %NULL with @error */
GArray *stead_repo_ids (SteadStore  *store,
                        SteadStmt   *stmt,
                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for @sql, a literal whose only parameter is an id. */
GArray *stead_repo_ids_of (SteadStore  *store,
                           const char  *sql,
                           gint64       id,
                           GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The integer in the first column of the first row; @none if there is no row or it is NULL. */
gboolean stead_repo_number (SteadStore  *store,
                            SteadStmt   *stmt,
                            gint64       none,
                            gint64      *out,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Runs @sql, a literal whose only parameter is an id. */
gboolean stead_repo_run_id (SteadStore  *store,
                            const char  *sql,
                            gint64       id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for a row that must be there: refuses an id that no row has. */
gboolean stead_repo_change_row (SteadStore  *store,
                                const char  *sql,
                                gint64       id,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Runs @stmt, which must change exactly one row: refuses one that found none. */
gboolean stead_repo_run_one (SteadStore  *store,
                             SteadStmt   *stmt,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The number that @sql, a literal whose only parameter is an id, gives; -1 with @error. */
gint64 stead_repo_count_id (SteadStore  *store,
                            const char  *sql,
                            gint64       id,
                            GError     **error);

G_END_DECLS

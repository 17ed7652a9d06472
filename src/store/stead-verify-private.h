/* stead-verify-private.h - what the parts of stead-verify.c share. */
#pragma once

#include "store/stead-connection.h"

G_BEGIN_DECLS

/* Findings of one kind; a farm with more has said enough. */
#define STEAD_VERIFY_MOST 20

/* SQL that writes a column of days as a date. */
#define STEAD_VERIFY_DAY(column) "date (" column " * 86400, 'unixepoch')"

typedef struct
{
  sqlite3   *db;
  GPtrArray *found;   /* of sentences */
} SteadVerifyReport;

/* The text of a column; "?" for NULL. */
const char *stead_verify_text (sqlite3_stmt *stmt,
                               int           at);

/* What damage keeps from being looked at is a finding of its own.  That the disk, the
 * memory or another program failed us says nothing about the farm: %FALSE with @error. */
gboolean stead_verify_note_failure (SteadVerifyReport  *report,
                                    int                 rc,
                                    GError            **error);

/* What SQLite itself says of the trees, the indexes and the values. */
gboolean stead_verify_structure (SteadVerifyReport  *report,
                                 GError            **error);

/* The rules between rows. */
gboolean stead_verify_rules (SteadVerifyReport  *report,
                             GError            **error);

/* What was signed is as it was, and none of it is missing. */
gboolean stead_verify_seals (SteadVerifyReport  *report,
                             GError            **error);

G_END_DECLS

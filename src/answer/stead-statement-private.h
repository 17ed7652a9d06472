/* stead-statement-private.h - postings of time, the lines of the statements, and their words. */
#pragma once

#include "answer/stead-statement-answer.h"

G_BEGIN_DECLS

/* Adds to @postings (of SteadPosting) what time changes: wear of things, a flock that lays,
 * batches that ended, things that are gone. */
gboolean stead_statement_add_time (SteadStore  *store,
                                   SteadDay     from,
                                   SteadDay     to,
                                   GArray      *postings,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Makes lines and figures out of @postings. */
gboolean stead_statement_add_lines (SteadStore            *store,
                                    SteadStatementAnswer  *self,
                                    const GArray          *postings,
                                    GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

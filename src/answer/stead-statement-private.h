/* stead-statement-private.h - postings of time, the lines of the statements, and their words. */
#pragma once

#include "answer/stead-statement-answer.h"

G_BEGIN_DECLS

/* What the lines are made of. */
typedef struct
{
  SteadStatementAnswer *answer;
  const GArray         *postings;    /* of SteadPosting */
  GHashTable           *flocks;      /* set of ids of batches that are flocks */
} SteadStatementMaker;

/* Sums at first and at the end. */
typedef struct
{
  gint64 before;
  gint64 end;
} SteadSumPair;

/* Which postings a line takes; @data is the line's own. */
typedef gboolean (*SteadTakeFunc) (const SteadStatementMaker *self,
                  const SteadPosting                         *posting,
                  gint64                                      data);

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

/* The lines of what the farm owns and owes; of one enterprise only its goods. */
gboolean stead_statement_add_balance (SteadStore          *store,
                                      SteadStatementMaker *self,
                                      GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/* The figures that stand beside the lines: where the cost is, the bridge from cash to
 * income, what is not paid. */
void stead_statement_add_figures (SteadStatementMaker *self);

/* --- one line (stead-statement-line.c) ---------------------------------------------------- */

/* Whether the statement is of all the farm, or of the enterprise of @posting. */
gboolean stead_maker_asks (const SteadStatementMaker *self,
                           const SteadPosting        *posting);

/* (transfer none): a new line at the end, without entries */
SteadStatementLine *stead_maker_line (SteadStatementMaker *self,
                                      SteadStatementPart   part,
                                      const char          *name,
                                      const char          *label);
void stead_maker_total (SteadStatementMaker *self,
                        SteadStatementPart   part,
                        const char          *name,
                        const char          *label,
                        gint64               before_cents,
                        gint64               cents);
void stead_maker_entry (SteadStatementLine *line,
                        const SteadPosting *posting,
                        int                 sign);

/* Adds a line of what happened in the period; none if nothing did.  Returns: its cents */
gint64 stead_maker_flow (SteadStatementMaker *self,
                         SteadStatementPart   part,
                         const char          *name,
                         const char          *label,
                         int                  sign,
                         SteadTakeFunc        take,
                         gint64               data);

/* Adds a line of what was there; none if nothing was, at first or at the end. */
SteadSumPair stead_maker_stand (SteadStatementMaker *self,
                                const char          *name,
                                const char          *label,
                                SteadTakeFunc        take,
                                gint64               data);

/* (transfer full): of each key of @head, its SteadSumPair.  A key below zero is owed, one
 * above is paid ahead. */
GHashTable *stead_maker_sums (const SteadStatementMaker *self,
                              SteadHead                  head);

/* Take the postings of a head; of the store room; of what grows, with @flocks 0 all but
 * flocks, else flocks alone. */
gboolean stead_take_head    (const SteadStatementMaker *self, const SteadPosting *posting, gint64 head);
gboolean stead_take_stock   (const SteadStatementMaker *self, const SteadPosting *posting, gint64 data);
gboolean stead_take_growing (const SteadStatementMaker *self, const SteadPosting *posting, gint64 flocks);

G_END_DECLS

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
} SteadMaking;

/* Sums at first and at the end. */
typedef struct
{
  gint64 before;
  gint64 end;
} SteadSumPair;

/* Which postings a line takes; @data is the line's own. */
typedef gboolean (*SteadTakeFunc) (const SteadMaking  *self,
                                   const SteadPosting *posting,
                                   gint64              data);

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
gboolean stead_statement_add_balance (SteadStore   *store,
                                      SteadMaking  *self,
                                      GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* The figures that stand beside the lines: where the cost is, the bridge from cash to
 * income, what is not paid. */
void stead_statement_add_figures (SteadMaking *self);

/* --- one line (stead-statement-line.c) ---------------------------------------------------- */

/* Whether the statement is of all the farm, or of the enterprise of @posting. */
gboolean stead_making_asks (const SteadMaking  *self,
                            const SteadPosting *posting);

/* (transfer none): a new line at the end, without entries */
SteadStatementLine *stead_making_line (SteadMaking        *self,
                                       SteadStatementPart  part,
                                       const char         *name,
                                       const char         *label);
void stead_making_total (SteadMaking        *self,
                         SteadStatementPart  part,
                         const char         *name,
                         const char         *label,
                         gint64              before_cents,
                         gint64              cents);
void stead_making_entry (SteadStatementLine *line,
                         const SteadPosting *posting,
                         int                 sign);

/* Adds a line of what happened in the period; none if nothing did.  Returns: its cents */
gint64 stead_making_flow (SteadMaking        *self,
                          SteadStatementPart  part,
                          const char         *name,
                          const char         *label,
                          int                 sign,
                          SteadTakeFunc       take,
                          gint64              data);

/* Adds a line of what was there; none if nothing was, at first or at the end. */
SteadSumPair stead_making_stand (SteadMaking   *self,
                                 const char    *name,
                                 const char    *label,
                                 SteadTakeFunc  take,
                                 gint64         data);

/* (transfer full): of each key of @head, its SteadSumPair.  A key below zero is owed, one
 * above is paid ahead. */
GHashTable *stead_making_sums (const SteadMaking *self,
                               SteadHead          head);

/* Take the postings of a head; of the store room; of what grows, with @flocks 0 all but
 * flocks, else flocks alone. */
gboolean stead_take_head    (const SteadMaking *self, const SteadPosting *posting, gint64 head);
gboolean stead_take_stock   (const SteadMaking *self, const SteadPosting *posting, gint64 data);
gboolean stead_take_growing (const SteadMaking *self, const SteadPosting *posting, gint64 flocks);

G_END_DECLS

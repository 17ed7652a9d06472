/* stead-statement-answer.h - "What came in, what did we earn, and what is the farm worth?"
 *
 * The statements of any period, for one enterprise or for all: cash flow, income with the
 * change of stock and of what is growing, balance sheet, and change in net worth.
 *
 * Invariants:
 *  1. Every figure is a sum of postings (store/stead-journal-repo.h), and each posting has
 *     its counterpart: the balance sheet balances by construction.
 *  2. worth at the end = worth at first + put in + net - taken out, to the cent.
 *  3. The lines of all enterprises and of what belongs to none sum to those of the farm.
 *
 * How things are valued (common practice, no source, where none is named):
 *  - Stock: what it cost, by the movements of its lots.
 *  - What grows: what went in less what harvests carried off.  What is left when a batch
 *    has ended is a cost of that day.
 *  - A flock that lays: its birds (reared ones with what went in before lay), less an equal
 *    part for each egg of those expected; all else that goes in is a cost of its day
 *    (the rule of core/stead-flock.h).
 *  - Things that last: book value (OpenStax Principles of Accounting vol. 1, section 11.3).
 *    What a batch that is harvested bears of their wear goes into the batch.
 *  - Receipts count as owed from their day on until lines of the cash book pay them.
 */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-statement.h"
#include "store/stead-farm-repo.h"
#include "store/stead-journal-repo.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_STATEMENT_CASH,      /* money in and out */
  STEAD_STATEMENT_INCOME,    /* earned and used up */
  STEAD_STATEMENT_BALANCE,   /* owned and owed */
  STEAD_STATEMENT_WORTH,     /* from the worth at first to the worth at the end */
} SteadStatementPart;

#define STEAD_N_STATEMENT_PARTS (STEAD_STATEMENT_WORTH + 1)

/* What a line is made of. */
typedef struct
{
  SteadDay  day;
  SteadFact fact;       /* STEAD_FACT_BEFORE: summed up, from before the period */
  gint64    fact_id;
  gint64    cents;      /* as it counts in the line */
} SteadStatementEntry;

typedef struct
{
  SteadStatementPart part;
  char     *name;        /* for programs, never translated: "sales", "stock" */
  char     *label;       /* in words */
  gint64    before_cents; /* of a balance: at the end of the day before the period; else 0 */
  gint64    cents;       /* of the period; of a balance: at its end */
  gboolean  is_total;    /* a sum of lines above it */
  gboolean  is_apart;    /* told beside the sums, in none of them */
  GArray   *entries;     /* of SteadStatementEntry, oldest first; of a total empty */
} SteadStatementLine;

typedef struct
{
  SteadFarm *farm;
  SteadDay   from, to;
  gint64     enterprise_id;     /* 0: the whole farm */
  char      *enterprise_name;   /* (nullable) */
  GPtrArray *lines;             /* of SteadStatementLine, by part, in the order of the page */

  /* Cents.  Of an enterprise the worths, the cash at first and at the end, and what was put
   * in and taken out are of the lines that name it alone and do not balance. */
  gint64     operating, investing, financing;
  gint64     cash_before, cash_end;
  gint64     sales, net;
  gint64     in_kind;           /* gifts in kind, in no net */
  gint64     put_in;            /* own money, grants, opening balances and gifts in kind */
  gint64     taken_out;
  gint64     owned_before, owned_end, owed_before, owed_end;   /* owed: 0 or more */
  gint64     worth_before, worth_end;
  gint64     restricted_end;    /* money in funds, part of the cash */
  int        n_unpaid;          /* receipts that are not paid, or not all, by @to */
  gint64     unpaid_cents;
  gboolean   has_accounts;      /* without one there is no cash book, and no sale is in the figures */

  /* Where all cost that was ever put in is by @to: put = stock + growing + sold + eggs + lost +
   * given + counted + left.  Counts and corrections that found more are below 0. */
  struct { gint64 put, stock, growing, sold, eggs, lost, given, counted, left; } cost;

  /* The same net by the method of farm books: cash, and what cash does not show.  Gifts of
   * goods and animals count among the costs.  stead_accrual_net_cents() of it is @net less
   * gains on things that are gone; of the whole farm. */
  SteadAccrual accrual;
  gint64     gone;              /* gain on things that are gone; below 0: loss */

  char      *sentence;          /* markup */
  char      *caution;
} SteadStatementAnswer;

void stead_statement_line_free   (SteadStatementLine *line);
void stead_statement_answer_free (SteadStatementAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStatementAnswer, stead_statement_answer_free)

/**
 * stead_statement_answer_new:
 * @from: first day of the period
 * @to: last day, not before @from
 * @enterprise_id: 0: the whole farm
 */
SteadStatementAnswer *stead_statement_answer_new (SteadStore  *store,
                                                  SteadDay     from,
                                                  SteadDay     to,
                                                  gint64       enterprise_id,
                                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer none) (nullable): the line of that name in that part */
const SteadStatementLine *stead_statement_answer_line (const SteadStatementAnswer *self,
                                                       SteadStatementPart          part,
                                                       const char                 *name);

/* (transfer full) (element-type SteadWhy): the cash, what was earned, what the farm is worth, and how
 * that changed. */
GPtrArray *stead_statement_answer_whys (const SteadStatementAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of these, what was earned; and how the worth changed. */
SteadWhy *stead_statement_net_why   (const SteadStatementAnswer *self) G_GNUC_WARN_UNUSED_RESULT;
SteadWhy *stead_statement_worth_why (const SteadStatementAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* Title of a part: "Cash flow". */
const char *stead_statement_part_title (SteadStatementPart part);

/* What an entry is, for a list: "Cash book: Sales, Winter market", "Store room: Layer feed, 50 lb used
 * by Brown hens, lot F26062-1". */
char *stead_statement_entry_text (SteadStore                 *store,
                                  const SteadStatementEntry  *entry,
                                  GError                    **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

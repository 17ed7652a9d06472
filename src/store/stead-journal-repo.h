/* stead-journal-repo.h - what happened to money, each fact on its two sides.
 *
 * Nothing of this is stored: it is a view over receipts, movements, batches, things and
 * the cash book, made anew each time.
 *
 * Invariants:
 *  1. The postings of each fact sum to zero, so all of them do on any day.
 *  2. What the farm owns, what has been used up and what was taken out is positive;
 *     what it owes, earned and was given is negative.
 *  3. The worth of what is used for years, and of a flock that lays, changes with time
 *     and not by facts: it is not in here (answer/stead-statement-answer.h adds it).
 */
#pragma once

#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

/* Which pot a side belongs to. */
typedef enum
{
  /* Owned and owed.  What the key of each names stands beside it. */
  STEAD_HEAD_CASH,         /* account; category holds nothing */
  STEAD_HEAD_TRANSIT,      /* 0: between the two lines of a transfer */
  STEAD_HEAD_STOCK,        /* item */
  STEAD_HEAD_GROWING,      /* batch: what went in and has not come out */
  STEAD_HEAD_THINGS,       /* asset */
  STEAD_HEAD_DUE,          /* asset that was sold and is not paid for yet */
  STEAD_HEAD_OWED_RECEIPT, /* the receipt at the end of its corrections; below 0: to be paid */
  STEAD_HEAD_OWED_BATCH,   /* batch: animals or seed that it began with */
  STEAD_HEAD_OWED_ASSET,   /* asset */
  STEAD_HEAD_LOAN,         /* 0 */
  /* Earned and used up. */
  STEAD_HEAD_SALES,        /* product, or 0 */
  STEAD_HEAD_OTHER_IN,     /* 0 */
  STEAD_HEAD_SOLD,         /* item: cost of goods that were sold */
  STEAD_HEAD_EGGS,         /* batch: a flock's costs of the days in which it laid */
  STEAD_HEAD_COSTS,        /* category of the cash book: paid, and bought of no receipt */
  STEAD_HEAD_WEAR,         /* asset: worn down, and borne by no batch that is harvested */
  STEAD_HEAD_LOST,         /* item */
  STEAD_HEAD_GIVEN,        /* item */
  STEAD_HEAD_COUNTED,      /* item: counts and corrections */
  STEAD_HEAD_LEFT,         /* batch: cost that no harvest carried when it ended */
  STEAD_HEAD_OVER_SHORT,   /* account */
  STEAD_HEAD_GONE,         /* asset: sold or broken, for more or less than it was worth */
  /* Put in and taken out. */
  STEAD_HEAD_OPENING,      /* account: what it held at first */
  STEAD_HEAD_PUT_IN,       /* 0 */
  STEAD_HEAD_GRANT,        /* fund, or 0 */
  STEAD_HEAD_IN_KIND,      /* 0: gifts of goods and things, at their fair value */
  STEAD_HEAD_TAKEN_OUT,    /* 0 */
} SteadHead;

#define STEAD_N_HEADS (STEAD_HEAD_TAKEN_OUT + 1)

/* What a posting came of. */
typedef enum
{
  STEAD_FACT_BEFORE,       /* all before the days that were asked for, summed up */
  STEAD_FACT_ACCOUNT,
  STEAD_FACT_CASH_LINE,
  STEAD_FACT_MOVEMENT,
  STEAD_FACT_RECEIPT,      /* that another corrects */
  STEAD_FACT_BATCH,        /* what it began with, or what was left at its end */
  STEAD_FACT_FISH_MOVE,
  STEAD_FACT_ASSET,
} SteadFact;

typedef struct
{
  SteadHead  head;
  gint64     key;            /* see the head */
  gint64     enterprise_id;  /* 0: the whole farm's */
  int        category;       /* SteadCashCategory of a line of the cash book; -1: none */
  SteadDay   day;
  SteadFact  fact;
  gint64     fact_id;
  gint64     cents;          /* signed */
} SteadPosting;

/**
 * stead_journal_repo_read:
 * @from: facts of earlier days come summed up, a posting of the day before for each head,
 *   key, enterprise and category
 * @to: not before @from - 1
 *
 * Returns: (transfer full) (element-type SteadPosting): in order of day, then as read
 */
GArray *stead_journal_repo_read (SteadStore  *store,
                                 SteadDay     from,
                                 SteadDay     to,
                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The lot of a movement, the group that fish moved to: where it is seen.  0: there is none,
 * or @fact is of another kind.  -1 with @error. */
gint64 stead_journal_repo_holder (SteadStore *store, SteadFact fact, gint64 fact_id, GError **error);

/* Money of funds before and after: (element-type SteadCashBalance) with account 0, a fund a row. */
GPtrArray *stead_journal_repo_funds (SteadStore  *store,
                                     SteadDay     day,
                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

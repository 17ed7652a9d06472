/* stead-cash-answer.h - "What money is there, and what in the cash book needs a look?" */
#pragma once

#include "answer/stead-cost-answer.h"
#include "store/stead-bank-repo.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-cash-repo.h"
#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

/* What one account holds on the day. */
typedef struct
{
  SteadAccount *account;
  gint64        cents;
  gint64        restricted_cents;  /* of it in funds */
  gint64        before_cents;      /* at the end of the day before @from */
  gint64        opened_cents;      /* that it opened with, if that was from @from on */
  SteadDay      counted_on;        /* last count by two people; STEAD_DAY_NONE: never */
  SteadDay      agreed_to;         /* last statement that agrees; STEAD_DAY_NONE: none */
} SteadAccountState;

typedef struct
{
  SteadFund *fund;
  gint64     cents;
  gint64     in_cents, out_cents;  /* of all its lines; out: 0 or more */
} SteadFundState;

/* What needs a look, one kind an entry. */
typedef enum
{
  STEAD_CASH_LOOK_BELOW_ZERO,     /* id: account: a till or bank below zero */
  STEAD_CASH_LOOK_FUND_SHORT,     /* id: fund: more was spent than is in it */
  STEAD_CASH_LOOK_PAID_TWICE,     /* id: receipt: more was paid than it says */
  STEAD_CASH_LOOK_TWIN,           /* id: cash line: the same as one shortly before */
  STEAD_CASH_LOOK_COUNT_OPEN,     /* id: count: differs, without a reason */
  STEAD_CASH_LOOK_SHEET_OPEN,     /* id: statement: does not agree yet */
  STEAD_CASH_LOOK_NOT_DEPOSITED,  /* id: count: more than three days later (a weekend) its money is still in the box */
} SteadCashLookKind;

typedef struct
{
  SteadCashLookKind kind;
  gint64            id;
  SteadDay          day;      /* of the entry; STEAD_DAY_NONE: none */
  char             *text;     /* a sentence, plain */
} SteadCashLook;

typedef struct
{
  SteadFarm *farm;
  SteadDay   day;
  GPtrArray *accounts;        /* of SteadAccountState, in use first */
  GPtrArray *funds;           /* of SteadFundState, those in use or with money */
  GPtrArray *lines;           /* of SteadCashLine, oldest first: the book from @from on */
  SteadDay   from;
  gint64     account_id;      /* that the lines are of; 0: all */
  gint64     total_cents;
  gint64     restricted_cents;
  gint64     in_cents, out_cents;   /* of the lines, without transfers; out: 0 or more */
  SteadDay   closed_to;       /* STEAD_DAY_NONE: no day is closed */
  guint      n_unpaid;        /* receipts that no line, or not enough, has paid */
  gint64     unpaid_cents;
  gint64     unpaid_total_cents;    /* that those receipts say */
  GPtrArray *looks;           /* of SteadCashLook */
  char      *sentence;        /* markup */
  char      *caution;
} SteadCashAnswer;

void stead_cash_answer_free (SteadCashAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCashAnswer, stead_cash_answer_free)

/**
 * stead_cash_answer_new:
 * @from: first day of the lines that are listed
 * @to: last day; what is there is told at its end
 * @account_id: 0: all; else the lines, and their balances, are of this account
 */
SteadCashAnswer *stead_cash_answer_new (SteadStore  *store,
                                        SteadDay     from,
                                        SteadDay     to,
                                        gint64       account_id,
                                        GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): what is there and how it came to be so, what is kept apart, and
 * what is not paid. */
GPtrArray *stead_cash_answer_whys (const SteadCashAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cash_period_start:
 * @out_from: the first day of the period that ends today; of the whole batch it is the day
 *   on which the first account was opened, or the start of the school year without one
 */
gboolean stead_cash_period_start (SteadStore   *store,
                                  SteadPeriod   period,
                                  SteadDay     *out_from,
                                  GError      **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

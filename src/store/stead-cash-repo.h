/* stead-cash-repo.h - the cash book: where money lies, what it is for, and each line.
 *
 * Invariants:
 *  1. What an account holds on a day is what it opened with and the sum of its lines
 *     up to that day.  What it opened with belongs to no fund.
 *  2. Money that goes from one account or fund to another is two lines of one day that
 *     name each other and sum to zero.
 *  3. A line of a closed day is never changed: a correction is a new line, of a later
 *     day, that names what it corrects.
 *  4. Cash says when money moved.  It never makes cost.
 * The money itself goes through the school's books and its bookkeeper; this is the
 * farm's own record.  Cents are minor units, signed: into the account is positive.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/* --- accounts, funds, enterprises ------------------------------------------------ */

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_ACCOUNT_TILL,       /* coins and notes in a box */
  STEAD_ACCOUNT_ACTIVITY,   /* the farm's account in the school's books */
  STEAD_ACCOUNT_BANK,
} SteadAccountKind;

typedef struct
{
  gint64            id;             /* 0: not saved yet */
  char             *name;           /* unique, not empty */
  SteadAccountKind  kind;
  SteadDay          opened_on;
  gint64            opening_cents;  /* that it held at the start of that day */
  SteadDay          closed_on;      /* STEAD_DAY_NONE: in use */
} SteadAccount;

void stead_account_free (SteadAccount *account);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAccount, stead_account_free)

/* Money that may be used for one thing only; what is in no fund may be used for anything. */
typedef struct
{
  gint64    id;             /* 0: not saved yet */
  char     *name;           /* unique, not empty */
  char     *purpose;        /* (nullable): what the giver said it is for */
  SteadDay  closed_on;      /* STEAD_DAY_NONE: in use */
} SteadFund;

void stead_fund_free (SteadFund *fund);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFund, stead_fund_free)

/* A part of the farm that is looked at on its own: eggs, fish, tomatoes, sauces. */
typedef struct
{
  gint64  id;               /* 0: not saved yet */
  char   *name;             /* unique, not empty */
} SteadEnterprise;

void stead_enterprise_free (SteadEnterprise *enterprise);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEnterprise, stead_enterprise_free)

/* Lists: (transfer full): in use first, then by name.  Saving: an id of 0 inserts and
 * fills in the id.  Deleting is refused while something names it. */
GPtrArray *stead_account_repo_list      (SteadStore *store, gboolean closed, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_account_repo_save      (SteadStore *store, SteadAccount *account, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_account_repo_delete    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_fund_repo_list         (SteadStore *store, gboolean closed, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Closing a fund is refused while there is money in it. */
gboolean   stead_fund_repo_save         (SteadStore *store, SteadFund *fund, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_fund_repo_delete       (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_enterprise_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_enterprise_repo_save   (SteadStore *store, SteadEnterprise *enterprise, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_enterprise_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* To which enterprise a batch or a product belongs; 0: to none.  -1 with @error. */
gint64     stead_enterprise_repo_of_batch    (SteadStore *store, gint64 batch_id, GError **error);
gint64     stead_enterprise_repo_of_product  (SteadStore *store, gint64 product_id, GError **error);
gboolean   stead_enterprise_repo_set_batch   (SteadStore *store, gint64 batch_id, gint64 enterprise_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_enterprise_repo_set_product (SteadStore *store, gint64 product_id, gint64 enterprise_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- what money was for ------------------------------------------------------------ */

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_CASH_SALES,        /* in: goods sold */
  STEAD_CASH_REFUND,       /* out: given back to a customer */
  STEAD_CASH_OTHER_IN,     /* in: a prize, interest, a deposit that came back */
  STEAD_CASH_SUPPLIES,     /* out: feed, bedding, ingredients, packaging */
  STEAD_CASH_ANIMALS,      /* out: young animals, seed, plants that a batch began with */
  STEAD_CASH_ENERGY,       /* out: power, water, fuel */
  STEAD_CASH_FEES,         /* out: a table at the market, permits, tests */
  STEAD_CASH_PAY,          /* out: paid work */
  STEAD_CASH_OTHER_OUT,    /* out: everything else that the farm needs to run */
  STEAD_CASH_OVER_SHORT,   /* either way: a count found more or less */
  STEAD_CASH_THING_BOUGHT, /* out: a thing that lasts for years */
  STEAD_CASH_THING_SOLD,   /* in: the same sold */
  STEAD_CASH_PUT_IN,       /* in: own money of the group */
  STEAD_CASH_GRANT,        /* in: grants and gifts of money */
  STEAD_CASH_LOAN,         /* in: borrowed */
  STEAD_CASH_LOAN_PAID,    /* out: given back to the lender */
  STEAD_CASH_TAKEN_OUT,    /* out: for the group, not for the farm */
  STEAD_CASH_TRANSFER,     /* either way: to another account or fund of the farm */
} SteadCashCategory;

#define STEAD_N_CASH_CATEGORIES (STEAD_CASH_TRANSFER + 1)

/* Where the category stands in a statement of cash. */
typedef enum
{
  STEAD_CASH_ACTIVITY_OPERATING,
  STEAD_CASH_ACTIVITY_INVESTING,
  STEAD_CASH_ACTIVITY_FINANCING,
  STEAD_CASH_ACTIVITY_NONE,        /* moved within the farm */
} SteadCashActivity;

SteadCashActivity stead_cash_category_activity (SteadCashCategory category);
/* 1: money in; -1: money out; 0: either way. */
int       stead_cash_category_sign (SteadCashCategory category);

/* --- lines ------------------------------------------------------------------------- */

typedef struct
{
  gint64             id;             /* 0: not saved yet */
  SteadDay           day;
  gint64             account_id;
  gint64             cents;          /* signed, not 0 */
  SteadCashCategory  category;
  gint64             fund_id;        /* 0: none */
  gint64             enterprise_id;  /* 0: that of the batch or product, or the whole farm's */
  char              *who;            /* (nullable): paid by or paid to */
  char              *reference;      /* (nullable): number of the check or slip */
  char              *note;           /* (nullable) */
  gint64             receipt_id;     /* what it paid; 0: none */
  gint64             batch_id;
  gint64             product_id;
  gint64             asset_id;
  gint64             picture_id;
  gint64             person_id;      /* who handled it; 0: not said */
  gint64             second_id;      /* who watched; 0: not said */
  gint64             corrects_id;    /* the line that this one corrects; 0: none */
  gint64             sale_id;        /* the sale day whose cash-up wrote it; 0: none */
  /* Read only: */
  gint64             pair_id;        /* the other half of a transfer; 0: none */
  gint64             pair_account_id; /* that of the other half; 0: none */
  gint64             corrected_by;   /* the first line that corrects it; 0: none */
  gint64             bank_line_id;   /* what the bank shows of it; 0: nothing yet */
  gint64             balance_cents;  /* after it, of what was asked for; see the list */
} SteadCashLine;

SteadCashLine *stead_cash_line_new  (void) G_GNUC_WARN_UNUSED_RESULT;
SteadCashLine *stead_cash_line_copy (const SteadCashLine *line) G_GNUC_WARN_UNUSED_RESULT;
void           stead_cash_line_free (SteadCashLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCashLine, stead_cash_line_free)

/* In place of an id of a fund: money of any. */
#define STEAD_FUND_ANY (-1)

/* Which lines are wanted; what is left at its start value lets everything through. */
typedef struct
{
  SteadDay from, to;        /* STEAD_DAY_NONE: no bound */
  gint64   account_id;      /* 0: all */
  gint64   fund_id;         /* STEAD_FUND_ANY; 0: in no fund */
  int      category;        /* -1: any */
  gint64   receipt_id;      /* 0: any */
} SteadCashFilter;

void stead_cash_filter_init (SteadCashFilter *filter);

/**
 * stead_cash_repo_list:
 *
 * balance_cents of each line is what the account and fund of @filter held after it: what
 * they held before the first line, what accounts opened with since, and the lines listed
 * up to it.  With a category or receipt in the filter it is the sum of the lines alone.
 *
 * Returns: (transfer full) (element-type SteadCashLine): oldest first
 */
GPtrArray     *stead_cash_repo_list   (SteadStore *store, const SteadCashFilter *filter, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCashLine *stead_cash_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cash_repo_save:
 *
 * Refused: a day to come or before the account was opened, nothing, a sign that the
 * category does not have (a correction may), the same person twice, half of a transfer
 * (see stead_cash_repo_transfer()), and a change of amount, day or account of a line that
 * the bank's line is matched with or that a count wrote.
 */
gboolean       stead_cash_repo_save   (SteadStore *store, SteadCashLine *line, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes both halves of a transfer.  Refused for a line that was corrected, is matched
 * with the bank's, or that a count wrote. */
gboolean       stead_cash_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cash_repo_correct:
 * @id: a line that is wrong, of any day
 * @day: of the correction, not before the line's
 * @right: (nullable): what it should have said; day and corrects_id are filled in
 * @reason: why; not empty
 *
 * Writes a line that takes the wrong one back, and the right one beside it.  A transfer
 * is taken back on both sides and has no @right.  Refused if it was corrected before.
 */
gboolean       stead_cash_repo_correct (SteadStore *store, gint64 id, SteadDay day, SteadCashLine *right,
                                        const char *reason, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* From one account and fund to another. */
typedef struct
{
  gint64      id;                           /* of either half; 0: not saved yet */
  SteadDay    day;
  gint64      cents;                        /* above 0 */
  gint64      from_account, from_fund;      /* fund 0: none */
  gint64      to_account, to_fund;
  const char *reference;                    /* (nullable): number of the slip */
  const char *note;                         /* (nullable) */
  gint64      person_id, second_id;
} SteadTransfer;

/* Refused as stead_cash_repo_save() is.  Returns: the id of the line that goes out, 0 with @error */
gint64         stead_cash_repo_transfer (SteadStore *store, const SteadTransfer *transfer, GError **error);

/**
 * stead_cash_repo_halves:
 * @id: of either half; a line that is no half is not found
 * @out: (out) (transfer full): the half with the minus sign
 * @in: (out) (transfer full): the other
 */
gboolean       stead_cash_repo_halves   (SteadStore *store, gint64 id, SteadCashLine **out, SteadCashLine **in,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- what is there ------------------------------------------------------------------ */

typedef struct
{
  gint64 account_id;
  gint64 fund_id;       /* 0: in no fund */
  gint64 cents;
} SteadCashBalance;

/* (transfer full) (element-type SteadCashBalance): at the end of @day, those that are not zero. */
GPtrArray *stead_cash_repo_balances (SteadStore *store, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* At the end of @day; @account_id 0: all, @fund_id as in a filter. */
gboolean   stead_cash_repo_balance  (SteadStore *store, gint64 account_id, gint64 fund_id, SteadDay day,
                                     gint64 *out_cents, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- receipts ----------------------------------------------------------------------- */

typedef struct
{
  gint64    receipt_id;
  SteadDay  day;
  gint64    total_cents;  /* of the receipt, or of the one that corrects it */
  gint64    paid_cents;   /* by lines that name it or a receipt that it corrects */
  int       n_lines;      /* that paid; what was taken back and its correction do not count */
  gboolean  is_gift;
} SteadReceiptPaid;

/* "Paid twice" is paid_cents above total_cents. */
gboolean   stead_cash_repo_receipt_paid (SteadStore *store, gint64 receipt_id, SteadReceiptPaid *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadReceiptPaid): bought, not corrected by another, and paid more or less than they say. */
GPtrArray *stead_cash_repo_receipts_off (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadCashLine): lines that may be the same as @line: other id, same account and
 * amount, at most @days apart, and neither corrects the other. */
GPtrArray *stead_cash_repo_twins        (SteadStore *store, const SteadCashLine *line, int days, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Ids (of gint64) of receipts with the same day and sum, or the same reference, from one supplier. */
GArray    *stead_receipt_repo_twins     (SteadStore *store, gint64 receipt_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Scans of a receipt: ids (of gint64) for stead_picture_repo_get(), oldest first. */
GArray    *stead_receipt_picture_repo_list   (SteadStore *store, gint64 receipt_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_receipt_picture_repo_add    (SteadStore *store, gint64 receipt_id, gint64 picture_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes the picture itself along, if nothing else shows it. */
gboolean   stead_receipt_picture_repo_remove (SteadStore *store, gint64 receipt_id, gint64 picture_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

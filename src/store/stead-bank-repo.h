/* stead-bank-repo.h - what the bank, or the school's bookkeeper, says happened.
 *
 * Lines of a statement are kept beside the farm's own and matched with them, one to one.
 * A sheet agrees when every line of the bank up to its day is matched and both sides of
 * the check (core/stead-cash.h) are equal.  What it covers stays as it is from then on.
 */
#pragma once

#include "core/stead-cash.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    account_id;
  SteadDay  through_day;    /* last day of the statement; one sheet a day and account */
  gint64    closing_cents;  /* what it says is there at the end of that day */
  SteadDay  agreed_on;      /* STEAD_DAY_NONE: open.  Read only */
  gint64    person_id;      /* who agreed.  Read only */
} SteadBankSheet;

void stead_bank_sheet_free (SteadBankSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBankSheet, stead_bank_sheet_free)

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    account_id;
  SteadDay  day;
  gint64    cents;          /* signed, not 0: into the account is positive */
  char     *text;           /* (nullable): as the statement has it */
  gint64    line_id;        /* of the cash book; 0: not matched */
} SteadBankLine;

void stead_bank_line_free (SteadBankLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBankLine, stead_bank_line_free)

/* Newest first; @account_id 0: all. */
GPtrArray      *stead_bank_repo_sheets       (SteadStore *store, gint64 account_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadBankSheet *stead_bank_repo_sheet        (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused once it was agreed to, for a till, and for a day that an agreed sheet covers. */
gboolean        stead_bank_repo_save_sheet   (SteadStore *store, SteadBankSheet *sheet, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean        stead_bank_repo_delete_sheet (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Oldest first, up to @to. */
GPtrArray      *stead_bank_repo_lines        (SteadStore *store, gint64 account_id, SteadDay to, gboolean unmatched,
                                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* How many lines there are of this account, day, amount and text; -1 with @error. */
gint64          stead_bank_repo_count_same   (SteadStore *store, const SteadBankLine *line, GError **error);
gboolean        stead_bank_repo_add_line     (SteadStore *store, SteadBankLine *line, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean        stead_bank_repo_delete_line  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_bank_repo_match:
 * @line_id: a line of the cash book of the same account and amount; 0: of none any more
 *
 * Refused if the cash book's line is matched with another, and for what an agreed sheet covers.
 */
gboolean        stead_bank_repo_match        (SteadStore *store, gint64 bank_line_id, gint64 line_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64 bank_line_id;
  gint64 line_id;         /* of the cash book */
  int    days;            /* bank's day less the book's */
} SteadBankPair;

/**
 * stead_bank_repo_proposals:
 * @days: most days apart, 0 or more
 *
 * Same account and amount, nearest days first; no line is proposed twice.  Checks take
 * longer than deposits, so ten days are a good start (common practice, no source).
 *
 * Returns: (transfer full) (element-type SteadBankPair)
 */
GArray         *stead_bank_repo_proposals    (SteadStore *store, gint64 account_id, SteadDay to, int days,
                                              GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_bank_repo_check:
 *
 * Both sides for stead_bank_side_cents() and stead_book_side_cents().  What the book has
 * and the bank does not show by the sheet's day is in transit or outstanding; what the
 * bank shows and the book does not have is an addition or a deduction.
 */
gboolean        stead_bank_repo_check        (SteadStore *store, gint64 sheet_id, SteadBankCheck *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refused unless both sides are equal and nothing of the bank is left unmatched. */
gboolean        stead_bank_repo_agree        (SteadStore *store, gint64 sheet_id, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

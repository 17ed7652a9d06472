/* stead-cash-count-repo.h - two people count an account's money together.
 *
 * What the book says is read when the count is saved.  A difference gets a line "over or
 * short" of its own once it has a reason; until then the count is open, and the days up
 * to it cannot be closed.  Deposit exactly what is there above the float; never top up
 * from a pocket, never hide an over.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64 face_cents;   /* of one coin or note, above 0 */
  gint64 pieces;       /* 0 or more */
} SteadCashPiece;

typedef struct
{
  gint64    id;              /* 0: not saved yet */
  SteadDay  day;
  gint64    account_id;
  gint64    float_cents;     /* that stays in the box for change, 0 or more */
  gint64    first_id;        /* who counted … */
  gint64    second_id;       /* … and counted again; another person */
  char     *reason;          /* (nullable): of a difference */
  char     *note;            /* (nullable) */
  GArray   *pieces;          /* of SteadCashPiece, each face once */
  gint64    sale_id;         /* the sale day that it closes; 0: none */
  /* Filled in when saved or read: */
  gint64    expected_cents;  /* by the book, without the count's own line */
  gint64    line_id;         /* "over or short"; 0: none */
} SteadCashCount;

SteadCashCount *stead_cash_count_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void            stead_cash_count_free (SteadCashCount *count);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCashCount, stead_cash_count_free)

/* Sum of the pieces; the same less what the book says (below 0: short); less the float, not below 0. */
gint64   stead_cash_count_total_cents   (const SteadCashCount *count);
gint64   stead_cash_count_over_cents    (const SteadCashCount *count);
gint64   stead_cash_count_deposit_cents (const SteadCashCount *count);
/* A difference without a reason. */
gboolean stead_cash_count_is_open       (const SteadCashCount *count);

/* Newest first; @account_id 0: all. */
GPtrArray      *stead_cash_count_repo_list   (SteadStore *store, gint64 account_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadCashCount *stead_cash_count_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused: one person twice, no pieces, a day to come, a float above what was counted; and
 * any change of the count of a sale, which is posted once. */
gboolean        stead_cash_count_repo_save   (SteadStore *store, SteadCashCount *count, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes its line along. */
gboolean        stead_cash_count_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cash_count_repo_deposit:
 * @count_id: a count above its float, without an open difference
 * @to_account: another account
 * @day: not before the count
 * @reference: (nullable): number of the slip
 *
 * The money above the float goes from the one account to the other, as a transfer that
 * both people of the count stand for.
 *
 * Returns: the id of the line that goes out, 0 with @error
 */
gint64          stead_cash_count_repo_deposit (SteadStore *store, gint64 count_id, gint64 to_account, SteadDay day,
                                               const char *reference, GError **error);

G_END_DECLS

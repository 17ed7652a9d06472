/* stead-cash-private.h - what the files of the cash book share. */
#pragma once

#include "store/stead-cash-repo.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* The columns of stead_cash_line_from_row(), and where they come from. */
#define STEAD_CASH_COLUMNS \
  "c.id, c.day, c.account_id, c.cents, c.category, c.fund_id, c.enterprise_id, c.who, c.reference, c.note," \
  " c.receipt_id, c.batch_id, c.product_id, c.asset_id, c.pair_id, c.picture_id, c.person_id, c.second_id," \
  " c.corrects_id, (SELECT min (x.id) FROM cash_line x WHERE x.corrects_id = c.id), b.id, c.sale_id," \
  " (SELECT p.account_id FROM cash_line p WHERE p.id = c.pair_id)"
#define STEAD_CASH_LINES "cash_line c LEFT JOIN bank_line b ON b.line_id = c.id"

/* Receipts that another corrects.  A list made once: receipts have no index by what they
 * correct, so "NOT EXISTS" would walk through all of them for each. */
#define STEAD_RECEIPTS_CORRECTED "(SELECT corrects_id FROM receipt WHERE corrects_id IS NOT NULL)"

/* Each receipt, and the one at the end of its corrections. */
#define STEAD_RECEIPT_CHAIN \
  "WITH RECURSIVE chain (id, last) AS" \
  " (SELECT r.id, r.id FROM receipt r WHERE r.id NOT IN " STEAD_RECEIPTS_CORRECTED \
  "  UNION ALL SELECT r.corrects_id, chain.last FROM chain JOIN receipt r ON r.id = chain.id" \
  "   WHERE r.corrects_id IS NOT NULL)"

gpointer stead_cash_line_from_row (SteadStmt *stmt);

/* The word in the file; a word that is not known is an "other" cost. */
const char        *stead_cash_category_word      (SteadCashCategory category);
SteadCashCategory  stead_cash_category_from_word (const char *word);

/* Refuses an account that is not there, or not open on @day. */
gboolean stead_cash_check_account (SteadStore  *store,
                                   gint64       account_id,
                                   SteadDay     day,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses a fund that is not there, or closed before @day; 0 is none. */
gboolean stead_cash_check_fund (SteadStore  *store,
                                gint64       fund_id,
                                SteadDay     day,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses no day, and one to come. */
gboolean stead_cash_check_day (SteadStore  *store,
                               SteadDay     day,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses no amount, and one beyond all sense. */
gboolean stead_cash_check_amount (gint64   cents,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Writes the line as it stands, unchecked; fills in the id of a new one. */
gboolean stead_cash_write (SteadStore     *store,
                           SteadCashLine  *line,
                           GError        **error) G_GNUC_WARN_UNUSED_RESULT;

/* Refuses, with the reason, a line whose money must stay: matched with the bank's,
 * written by a count, corrected. */
gboolean stead_cash_check_free (SteadStore           *store,
                                const SteadCashLine  *line,
                                GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* Deletes the row of one line. */
gboolean stead_cash_remove (SteadStore  *store,
                            gint64       id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-cash-words.h - the words of the cash book, of accounts and of shares. */
#pragma once

#include "store/stead-asset-repo.h"
#include "store/stead-cash-repo.h"

G_BEGIN_DECLS

/* (transfer none): as a choice in a list and as a line of a statement: "Sales". */
const char *stead_cash_words_category (SteadCashCategory category);
/* "Running the farm", "Things that last", "Money put in and taken out", "Moved within the farm". */
const char *stead_cash_words_activity (SteadCashActivity activity);
/* "Till box", "School activity account", "Bank account". */
const char *stead_cash_words_account  (SteadAccountKind kind);
/* "By fixed parts", "By days", "By space", "By use". */
const char *stead_cash_words_share_by (SteadShareBy share_by);

/* (transfer none): what two people, deposits and the bookkeeper are for; whole sentences. */
const char *stead_cash_words_caution  (void);

/**
 * stead_cash_faces:
 * @currency: a known currency
 * @n_faces: (out): how many
 *
 * Coins and notes that are in use, largest first, in minor units.  (US: United States
 * Mint and Bureau of Engraving and Printing, circulating denominations; from memory.)
 *
 * Returns: (transfer none): of another currency the round ones of one, two and five
 */
const gint64 *stead_cash_faces (const char *currency,
                                gsize      *n_faces);

G_END_DECLS

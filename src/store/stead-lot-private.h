/* stead-lot-private.h - what makes a lot, and what takes out of it. */
#pragma once

#include "store/stead-ledger-private.h"

G_BEGIN_DECLS

/* The words of SteadMoveKind in the file; NULL ends them. */
extern const char * const stead_move_words[];

/**
 * stead_lot_new_code:
 * @letter: of what was bought, by its kind: F B P I S U L R; of what a batch made,
 *   by the batch: H for hens, W for fish, C for a crop, K for the kitchen
 *
 * Returns: (transfer full): "F26062-1": letter, two digits of the year, day of the
 *   year, number of the day
 */
char *stead_lot_new_code (SteadStore  *store,
                          char         letter,
                          SteadDay     day,
                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes -@move->quantity out of its lot, as the facts say, and settles what follows from
 * it.  Refused if the lot holds less on that day, or had not come yet. */
gboolean stead_lot_take (SteadStore            *store,
                         const SteadMoveFacts  *move,
                         GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

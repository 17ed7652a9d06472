/* stead-ledger-private.h - the lots of one item in memory, for taking first in, first out.
 *
 * Invariants:
 *  1. No lot is below zero at the end of any day, past or to come: what is
 *     taken on a day is at most the least that the lot holds from then on.
 *  2. Cents out of a lot are whole, in proportion to what is taken, and the
 *     last piece takes all that is left: cents in = cents out + cents on hand.
 *  3. Movements made by hand stay where they are.  Feed from the log is laid
 *     around them anew whenever something before it changes, always in order of
 *     day and id; so the order in which facts were typed does not matter.
 */
#pragma once

#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* A movement that an entry of a log made. */
typedef struct
{
  gint64    id;        /* 0: not in the file yet */
  gint64    entry_id;
  gint64    batch_id;
  gint64    lot_id;
  SteadDay  day;
  double    quantity;  /* above 0: taken out */
  gint64    cents;
} SteadFeedPiece;

typedef struct _SteadLedger SteadLedger;

/**
 * stead_ledger_load:
 * @from: entries' movements of this day and later are lifted out of the lots
 *
 * Returns: (transfer full): the lots of @item_id as they stand then
 */
SteadLedger *stead_ledger_load (SteadStore  *store,
                                gint64       item_id,
                                SteadDay     from,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;
void stead_ledger_free (SteadLedger *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLedger, stead_ledger_free)

/* The movements that were lifted out, of SteadFeedPiece; (transfer full), once. */
GArray *stead_ledger_steal_lifted (SteadLedger *self) G_GNUC_WARN_UNUSED_RESULT;

/* What can be taken on @day in all; of one lot. */
double stead_ledger_available     (SteadLedger *self,
                                   SteadDay     day);
double stead_ledger_lot_available (SteadLedger *self,
                                   gint64       lot_id,
                                   SteadDay     day);

/**
 * stead_ledger_take:
 * @day: not before the day of the call before
 * @quantity: above 0
 * @piece: lot_id, day, quantity and cents are filled in
 *
 * Takes from the oldest lot that has something, at most @quantity.
 *
 * Returns: %FALSE if nothing is left on that day
 */
gboolean stead_ledger_take (SteadLedger    *self,
                            SteadDay        day,
                            double          quantity,
                            SteadFeedPiece *piece);

/* The same out of one lot; all or nothing. */
gboolean stead_ledger_take_lot (SteadLedger    *self,
                                gint64          lot_id,
                                SteadDay        day,
                                double          quantity,
                                SteadFeedPiece *piece);

/* --- in the file (only within an action) -------------------------------------- */

/* Writes one movement by hand. */
typedef struct
{
  gint64      lot_id;
  SteadDay    day;
  const char *kind;
  double      quantity;   /* signed */
  gint64      cents;      /* signed */
  gint64      batch_id;
  gint64      entry_id;
  const char *reason;
  gint64      person_id;
  gint64      sale_id;    /* 0: at no sale day */
  gint64      sale_line_id;
} SteadMoveFacts;

gboolean stead_ledger_write (SteadStore            *store,
                             const SteadMoveFacts  *move,
                             GError               **error) G_GNUC_WARN_UNUSED_RESULT;

/* Takes the movements that entries made in one lot, on @from or later, out of the file. */
gboolean stead_ledger_unsettle_lot (SteadStore  *store,
                                    gint64       lot_id,
                                    SteadDay     from,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_ledger_lay_feed:
 * @item_id: 0 or an item
 * @from: the first day that something changed on
 *
 * Lays the feed of all logs that feed @item_id anew from @from on, and writes
 * only what came out otherwise than before.  Days whose books are closed stay as
 * they are: it begins after them.
 */
gboolean stead_ledger_lay_feed (SteadStore  *store,
                                gint64       item_id,
                                SteadDay     from,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same; and on a farm that averages, what went out from @from on is recosted. */
gboolean stead_ledger_settle (SteadStore  *store,
                              gint64       item_id,
                              SteadDay     from,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

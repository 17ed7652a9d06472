/* stead-coins.h - bills and coins: counting a drawer, and giving change from it.
 *
 * Bills and coins in everyday use only; what else lies in a drawer is counted as a sum.
 * Source: faces of the U.S. Currency Education Program and of the European Central
 * Bank, from memory.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_COINS_MOST_FACES 20

/* Change beyond this is not given at a stall: 1,000.00. */
#define STEAD_COINS_MOST_CHANGE 100000

/* More pieces of one kind are not counted by hand. */
#define STEAD_COINS_MOST_PIECES 100000

/**
 * stead_coins_faces:
 * @currency: a known currency
 * @out_n: (out): how many
 *
 * Returns: (transfer none) (array length=out_n) (nullable): faces in minor units, the
 *   highest first; %NULL with 0 for a currency whose faces are not known here
 */
const gint64 *stead_coins_faces (const char *currency,
                                 gsize      *out_n);

/**
 * stead_coins_sum:
 * @faces: (array length=n): minor units, each above 0
 * @pieces: (array length=n): 0 to %STEAD_COINS_MOST_PIECES each
 *
 * Returns: what they are worth; -1 for a number that cannot be
 */
gint64 stead_coins_sum (const gint64 *faces,
                        const gint64 *pieces,
                        gsize         n);

/**
 * stead_coins_change:
 * @amount: to give, minor units, 0 to %STEAD_COINS_MOST_CHANGE
 * @faces: (array length=n): as above, up to %STEAD_COINS_MOST_FACES
 * @drawer: (nullable) (array length=n): pieces that are there; %NULL: enough of all
 * @out_pieces: (out) (array length=n): what to give, as few pieces as can be
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with @out_pieces left alone if the drawer cannot give it
 */
gboolean stead_coins_change (gint64         amount,
                             const gint64  *faces,
                             const gint64  *drawer,
                             gsize          n,
                             gint64        *out_pieces,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

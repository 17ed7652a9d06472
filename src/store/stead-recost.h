/* stead-recost.h - what goods out of the store room cost, when something before them changed.
 *
 * First in, first out: a movement out of a lot carries its share of the lot's
 * cents.  Weighted average: it carries its share of the cents of all lots of the
 * item that are on hand, in order of day, what comes in on a day first; which lot
 * it came from is still recorded.  Either way
 *  1. the last piece takes what is left, so no cents are left where nothing is;
 *  2. what a kitchen batch made carries exactly the cents of what it used, split
 *     by quantity; batches of hens, fish and crops keep the cost of their harvests;
 *  3. days that are closed keep their cents;
 *  4. only what differs is written.
 * Each ends on a damaged file too, one where a batch uses what it made itself.
 */
#pragma once

#include "core/stead-stock-cost.h"
#include "store/stead-repo-private.h"

G_BEGIN_DECLS

/* %STEAD_STOCK_FIFO or %STEAD_STOCK_AVERAGE_MOVING, as the farm chose. */
gboolean stead_recost_method (SteadStore        *store,
                              SteadStockMethod  *out,
                              GError           **error) G_GNUC_WARN_UNUSED_RESULT;

/* The first day that is not closed; before any day if none is. */
gboolean stead_recost_first_open (SteadStore  *store,
                                  SteadDay    *out,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_recost_item:
 * @item_id: 0 or an item
 * @from: the first day that something changed on
 *
 * For a farm that averages: all that went out of @item_id from @from on, and what
 * was made of it, and so on.  Does nothing on a farm that costs lot by lot.
 */
gboolean stead_recost_item   (SteadStore  *store,
                              gint64       item_id,
                              SteadDay     from,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_recost_batch:
 * @batch_id: a kitchen batch, after anything that it used or made has changed
 *
 * Puts the cents of what it used on what it made, and recosts what was made of that.
 */
gboolean stead_recost_batch  (SteadStore  *store,
                              gint64       batch_id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for every kitchen batch that used something of the lots; their own
 * movements have been recosted before. */
gboolean stead_recost_users  (SteadStore    *store,
                              const gint64  *lot_ids,
                              gsize          n,
                              GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Every movement of every open day, by the farm's method. */
gboolean stead_recost_all    (SteadStore  *store,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

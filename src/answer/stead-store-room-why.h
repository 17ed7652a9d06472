/* stead-store-room-why.h - what is on hand, what was wasted and what was spent, added up before one's eyes. */
#pragma once

#include "answer/stead-store-room-answer.h"
#include "store/stead-count-repo.h"
#include "store/stead-receipt-repo.h"

G_BEGIN_DECLS

/* (transfer full): of SteadWhy: what is on hand, how long it lasts, what was lost, what was given away */
GPtrArray *stead_store_room_answer_whys (const SteadStoreRoomAnswer *self,
                                         const char                 *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_lots_whys:
 * @lots: (element-type SteadLot)
 *
 * Returns: (transfer full): of SteadWhy: what they cost, by the place; empty without lots
 */
GPtrArray *stead_lots_whys (const GPtrArray *lots,
                            const char      *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_on_hand_whys:
 * @base: what all lots of the item hold together
 *
 * Returns: (transfer full): of SteadWhy: what each lot holds; empty without a lot
 */
GPtrArray *stead_on_hand_whys (SteadStore      *store,
                               gint64           item_id,
                               double           base,
                               const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_counts_whys:
 * @counts: (element-type SteadStockCount)
 *
 * Returns: (transfer full): of SteadWhy: what counts found, lot by lot; empty where all was as on record
 */
GPtrArray *stead_counts_whys (const GPtrArray *counts,
                              const char      *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_count_sheet_whys:
 * @count: as far as it is typed
 *
 * Returns: (transfer full): of SteadWhy: what should be there, and what is missing or more, of the first lots
 *   that are counted; empty without lots
 */
GPtrArray *stead_count_sheet_whys (SteadStore            *store,
                                   const SteadStockCount *count) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_receipts_whys:
 * @receipts: (element-type SteadReceipt)
 *
 * Returns: (transfer full): of SteadWhy: what was paid, what gifts are worth, by whom it came from
 */
GPtrArray *stead_receipts_whys (const GPtrArray *receipts,
                                const char      *currency) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

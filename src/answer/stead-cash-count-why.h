/* stead-cash-count-why.h - money that two people count, worked out while they type. */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-cash-count-repo.h"
#include "store/stead-sale-cash-up.h"

G_BEGIN_DECLS

/**
 * stead_cash_count_whys:
 * @count: as far as it is typed; with an id what the book says is as it was saved
 * @is_known: what the book says can be told; it is in @count
 *
 * Returns: (transfer full): of SteadWhy: what was counted, what the book says, what is over or short, and
 *   what lies there above the change
 */
GPtrArray *stead_cash_count_whys (SteadStore           *store,
                                  const SteadCashCount *count,
                                  gboolean              is_known,
                                  const char           *currency) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_cash_up_whys:
 * @sums: (element-type SteadSaleSum): what became of the goods of @sale
 * @till: its box
 * @pieces: (element-type SteadCashPiece): that were counted in it
 *
 * Returns: (transfer full): of SteadWhy: what must be in the box, what was counted, what is over or short,
 *   and how many must be left
 */
GPtrArray *stead_cash_up_whys (const SteadSale      *sale,
                               const GArray         *sums,
                               const SteadSaleTill  *till,
                               const GArray         *pieces,
                               const char           *currency) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-hand-why-private.h - how much of something is on hand, lot by lot. */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

/* Lots of @item_id with something on hand: (transfer full) (element-type SteadLot) */
GPtrArray *stead_hand_lots (SteadStore  *store,
                            gint64       item_id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_hand_why:
 * @title: translated: "Feed on hand"
 * @lots: (nullable): of one item, as stead_hand_lots() finds them
 * @base: what they hold together
 *
 * Returns: (nullable): %NULL without a lot
 */
SteadWhy *stead_hand_why (const char      *title,
                          const GPtrArray *lots,
                          double           base,
                          const SteadUnit *unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

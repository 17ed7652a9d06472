/* stead-item-private.h - how a row tells an item's kind and unit. */
#pragma once

#include "store/stead-item-repo.h"
#include "store/stead-store-private.h"

G_BEGIN_DECLS

/* The words of SteadItemKind in the file, in its order; %NULL at the end. */
extern const char * const stead_item_kind_words[];

/* Returns: (transfer none): the unit whose id stands in column @at */
const SteadUnit *stead_item_unit (SteadStmt *stmt,
                                  int        at);

G_END_DECLS

/* stead-product-chips.h - the products side by side, for one of them to be chosen. */
#pragma once

#include "app/stead-chips.h"

G_BEGIN_DECLS

/* @a: (nullable): SteadProducts as they were shown; @b: as they are now
 * Returns: whether their chips would look the same */
gboolean stead_product_chips_same (GPtrArray *a, GPtrArray *b);
/* A chip for each SteadProduct, by its id; the former ones go. */
void     stead_product_chips_fill (SteadChips *chips, GPtrArray *products);

G_END_DECLS

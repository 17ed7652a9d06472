/* stead-sale-cash-up-private.h - what the two halves of a cash-up share: money and goods. */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-sale-cash-up.h"
#include "store/stead-sale-private.h"

G_BEGIN_DECLS

/**
 * stead_sale_put_away:
 * @sums: of the sale's tally
 * @fault: its line is filled in when something does not add up
 *
 * Checks that brought = tallied + left over, writes the left-overs, and takes out of the
 * lots what did not come back.
 */
gboolean stead_sale_put_away (SteadStore             *store,
                              const SteadSaleCashUp  *self,
                              const SteadSale        *sale,
                              const GArray           *sums,
                              SteadCashUpFault       *fault,
                              GError                **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-sell-page.h - the place Sell: sale days from their plan to the cash-up. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_SELL_PAGE (stead_sell_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadSellPage, stead_sell_page, STEAD, SELL_PAGE, SteadPage)

G_END_DECLS

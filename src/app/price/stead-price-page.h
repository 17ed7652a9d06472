/* stead-price-page.h - the place Price: what one unit costs, and how many to sell at which price. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PRICE_PAGE (stead_price_page_get_type ())
G_DECLARE_FINAL_TYPE (SteadPricePage, stead_price_page, STEAD, PRICE_PAGE, SteadPage)

GtkWidget *stead_price_page_new (SteadDesk *desk);

G_END_DECLS

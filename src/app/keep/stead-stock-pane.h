/* stead-stock-pane.h - Keep: what is in the store room, item by item. */
#pragma once

#include "app/keep/stead-pane.h"

G_BEGIN_DECLS

#define STEAD_TYPE_STOCK_PANE (stead_stock_pane_get_type ())
G_DECLARE_FINAL_TYPE (SteadStockPane, stead_stock_pane, STEAD, STOCK_PANE, SteadPane)

G_END_DECLS

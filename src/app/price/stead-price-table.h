/* stead-price-table.h - the numbers of the break-even chart as a table. */
#pragma once

#include "app/price/stead-price-model.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

/* A table that follows the model while it can be seen. */
GtkWidget *stead_price_table_new (SteadPriceModel *model);

G_END_DECLS

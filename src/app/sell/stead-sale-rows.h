/* stead-sale-rows.h - rows of the plan of a sale day: a product, a cost, a shift.
 *
 * A row is a box of fields; what it reads is a new struct, or NULL after a field said
 * what is wrong.
 */
#pragma once

#include "app/sell/stead-sell-parts.h"

G_BEGIN_DECLS

/* @day: of the sale, for the lots; STEAD_DAY_NONE: lots are not chosen any more. */
GtkWidget      *stead_good_row_new   (SteadStore *store, const char *currency, const SteadSaleGood *good, SteadDay day);
/**
 * stead_good_rows_share:
 * @list: its children are rows of goods
 * @day: of the sale; STEAD_DAY_NONE: lots are not chosen any more
 * @others: (nullable) (element-type SteadSaleLot): what other sales take
 *
 * Shares the lots among the rows, the first row first; the rows do it again on their own
 * when one of them changes or is taken off.
 */
void            stead_good_rows_share (GtkWidget *list, SteadDay day, const GArray *others);
SteadSaleGood  *stead_good_row_read  (GtkWidget *row);
GtkWidget      *stead_cost_row_new   (const char *currency, const SteadSaleCost *cost);
SteadSaleCost  *stead_cost_row_read  (GtkWidget *row);
GtkWidget      *stead_shift_row_new  (SteadStore *store, const SteadSaleShift *shift);
SteadSaleShift *stead_shift_row_read (GtkWidget *row);
/* Shows @message at the row's first field. */
void            stead_sale_row_complain (GtkWidget *row, const char *message);
/* Reads an hour; FALSE with the message at the field. */
gboolean        stead_sale_read_clock (SteadField *field, int *out_minute);

G_END_DECLS

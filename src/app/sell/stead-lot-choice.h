/* stead-lot-choice.h - out of which lots a product is brought: proposed, or by hand. */
#pragma once

#include "app/sell/stead-sell-parts.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOT_CHOICE (stead_lot_choice_get_type ())
G_DECLARE_FINAL_TYPE (SteadLotChoice, stead_lot_choice, STEAD, LOT_CHOICE, GtkBox)

GtkWidget *stead_lot_choice_new     (SteadStore *store);
/* @lots: (nullable) (element-type SteadSaleLot): chosen by hand; empty or %NULL: as proposed */
void       stead_lot_choice_set     (SteadLotChoice *self, const GArray *lots);
/* Shows the lots of a product for a day and a number of units; what was chosen stays.
 * @day: STEAD_DAY_NONE: nothing is shown, and what was chosen is kept */
void       stead_lot_choice_propose (SteadLotChoice *self, gint64 product_id, SteadDay day, double units);
/* Adds what was chosen by hand to @lots; FALSE after a field said what is wrong. */
gboolean   stead_lot_choice_read    (SteadLotChoice *self, GArray *lots);

G_END_DECLS

/* stead-lot-choice.h - out of which lots a product is brought: proposed, or by hand.
 *
 * "changed" (typed) tells that lots were chosen by hand, or are to be proposed again; if it
 * was typed into a field, the widget shows it already.
 */
#pragma once

#include "app/sell/stead-sell-parts.h"

G_BEGIN_DECLS

#define STEAD_TYPE_LOT_CHOICE (stead_lot_choice_get_type ())
G_DECLARE_FINAL_TYPE (SteadLotChoice, stead_lot_choice, STEAD, LOT_CHOICE, GtkBox)

GtkWidget *stead_lot_choice_new     (SteadStore *store);
/* @lots: (nullable) (element-type SteadSaleLot): chosen by hand; empty or %NULL: as proposed */
void       stead_lot_choice_set     (SteadLotChoice *self, const GArray *lots);
/* Shows the lots of a product for a day and a number of units; what was chosen stays.
 * @day: STEAD_DAY_NONE: nothing is shown, and what was chosen is kept
 * @claims: (nullable) (element-type SteadSaleLot): what others take */
void       stead_lot_choice_propose (SteadLotChoice *self, gint64 product_id, SteadDay day, double units,
                                     const GArray *claims);
/* Adds what it takes of each lot to @claims, @times times: 1, or −1 to take it off again. */
void       stead_lot_choice_claim   (SteadLotChoice *self, GArray *claims, int times);
gboolean   stead_lot_choice_is_by_hand (SteadLotChoice *self);
/* Of the store room; 0: none. */
gint64     stead_lot_choice_get_item (SteadLotChoice *self);
/* Adds what was chosen by hand to @lots; FALSE after a field said what is wrong. */
gboolean   stead_lot_choice_read    (SteadLotChoice *self, GArray *lots);

G_END_DECLS

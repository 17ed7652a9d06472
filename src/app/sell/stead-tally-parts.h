/* stead-tally-parts.h - the card of a product at the stall, and the row of an order.
 *
 * Their buttons activate actions of the tally around them; each takes an id (int64).
 */
#pragma once

#include "answer/stead-sale-tally-answer.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Of a line of the sale. */
#define STEAD_TALLY_SOLD "tally.sold"
#define STEAD_TALLY_SAMPLE "tally.sample"
#define STEAD_TALLY_GIVEN "tally.given"
#define STEAD_TALLY_SPOILED "tally.spoiled"
#define STEAD_TALLY_CHANGE "tally.change"

/* Of an order. */
#define STEAD_TALLY_COLLECT "tally.collect"
#define STEAD_TALLY_EDIT_ORDER "tally.edit-order"

/* A card; its first child is the large button. */
GtkWidget *stead_tally_good_new  (const SteadFarm      *farm,
                                  const SteadTallyLine *line);
/* Shows on a card what the line says now: a tap changes one figure, and nothing else is laid
 * out anew.  Returns: %FALSE if the card is of another product or key; it shows what it did */
gboolean   stead_tally_good_show (GtkWidget            *card,
                                  const SteadFarm      *farm,
                                  const SteadTallyLine *line);
/* @good: (nullable): what was ordered */
GtkWidget *stead_tally_order_new (const SteadSaleOrder *order,
                                  const SteadSaleGood  *good);
/* What a button is about; 0: it is none of these. */
gint64     stead_tally_button_get_id (GtkWidget *button);

G_END_DECLS

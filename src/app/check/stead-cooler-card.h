/* stead-cooler-card.h - one place that is to be cold: its air over time, its limit, the next reading. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-days-answer.h"
#include "app/stead-person-pick.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COOLER_CARD (stead_cooler_card_get_type ())
G_DECLARE_FINAL_TYPE (SteadCoolerCard, stead_cooler_card, STEAD, COOLER_CARD, GtkWidget)

/* @person: who reads; of the whole pane */
GtkWidget *stead_cooler_card_new  (SteadDesk *desk, SteadPersonPick *person, gint64 place_id, const char *name);
gint64     stead_cooler_card_get  (SteadCoolerCard *self);
/* Takes @air over. */
void       stead_cooler_card_show (SteadCoolerCard *self, SteadPlaceAirAnswer *air);

G_END_DECLS

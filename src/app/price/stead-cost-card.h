/* stead-cost-card.h - "What one dozen costs": the sheet, part by part. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-cost-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COST_CARD (stead_cost_card_get_type ())
G_DECLARE_FINAL_TYPE (SteadCostCard, stead_cost_card, STEAD, COST_CARD, GtkWidget)

GtkWidget *stead_cost_card_new (SteadDesk *desk);
/* @answer: (nullable): not owned; must stay until the next call */
void       stead_cost_card_set (SteadCostCard         *self,
                                const SteadCostAnswer *answer);
/* Beside the heading. */
void       stead_cost_card_add_button (SteadCostCard *self,
                                       GtkWidget     *button);

G_END_DECLS

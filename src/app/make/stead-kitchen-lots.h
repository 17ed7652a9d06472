/* stead-kitchen-lots.h - what a kitchen batch takes out of the store room, lot by lot. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-kitchen-answer.h"
#include "app/stead-person-pick.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_KITCHEN_LOTS (stead_kitchen_lots_get_type ())
G_DECLARE_FINAL_TYPE (SteadKitchenLots, stead_kitchen_lots, STEAD, KITCHEN_LOTS, GtkWidget)

GtkWidget *stead_kitchen_lots_new        (void);
void       stead_kitchen_lots_show       (SteadKitchenLots *self, SteadDesk *desk, const SteadKitchenAnswer *answer);
/* Who takes it is asked of @person, which lives as long as this. */
void       stead_kitchen_lots_set_person (SteadKitchenLots *self, SteadPersonPick *person);

G_END_DECLS

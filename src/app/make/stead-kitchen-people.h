/* stead-kitchen-people.h - who worked in a kitchen batch, and for how many minutes. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-kitchen-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_KITCHEN_PEOPLE (stead_kitchen_people_get_type ())
G_DECLARE_FINAL_TYPE (SteadKitchenPeople, stead_kitchen_people, STEAD, KITCHEN_PEOPLE, GtkWidget)

GtkWidget *stead_kitchen_people_new  (void);
void       stead_kitchen_people_show (SteadKitchenPeople *self, SteadDesk *desk, const SteadKitchenAnswer *answer);

G_END_DECLS

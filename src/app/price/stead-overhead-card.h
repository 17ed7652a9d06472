/* stead-overhead-card.h - by what overhead is charged, and how much of it there is. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_OVERHEAD_CARD (stead_overhead_card_get_type ())
G_DECLARE_FINAL_TYPE (SteadOverheadCard, stead_overhead_card, STEAD, OVERHEAD_CARD, GtkWidget)

GtkWidget *stead_overhead_card_new  (SteadDesk *desk);
/* Shows the farm's rate. */
void       stead_overhead_card_load (SteadOverheadCard *self);

G_END_DECLS

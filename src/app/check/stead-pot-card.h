/* stead-pot-card.h - one pot that cools: its chart, what to do and until when, and the next reading. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-answer.h"
#include "app/stead-person-pick.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_POT_CARD (stead_pot_card_get_type ())
G_DECLARE_FINAL_TYPE (SteadPotCard, stead_pot_card, STEAD, POT_CARD, GtkWidget)

GtkWidget *stead_pot_card_new  (SteadDesk *desk, SteadPersonPick *person);
/* All must live until the next call. */
void       stead_pot_card_show (SteadPotCard *self, SteadCheckAnswer *answer, const SteadCheckedLine *line,
                                const SteadCheckPotRead *pot);

G_END_DECLS

/* stead-cooler-entry.h - where the air of one cooler is typed, or taken from a logger's table. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-check-days-answer.h"
#include "app/stead-person-pick.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_COOLER_ENTRY (stead_cooler_entry_get_type ())
G_DECLARE_FINAL_TYPE (SteadCoolerEntry, stead_cooler_entry, STEAD, COOLER_ENTRY, GtkWidget)

/* @person: who reads; of the whole pane */
GtkWidget *stead_cooler_entry_new  (SteadDesk *desk, SteadPersonPick *person, gint64 place_id, const char *name);
/* @air: must outlive the next call; what is typed is held against it */
void       stead_cooler_entry_show (SteadCoolerEntry *self, const SteadPlaceAirAnswer *air);
/* What is recorded next corrects the reading @id, which stays beside it; 0: nothing.
 * @text: (nullable): that reading in words */
void       stead_cooler_entry_correct (SteadCoolerEntry *self, gint64 id, const char *text);

G_END_DECLS

/* stead-origin-pick.h - where animals come from: paid for as entered here, or out of the store room. */
#pragma once

#include <gtk/gtk.h>

#include "store/stead-store.h"

G_BEGIN_DECLS

#define STEAD_TYPE_ORIGIN_PICK (stead_origin_pick_get_type ())
G_DECLARE_FINAL_TYPE (SteadOriginPick, stead_origin_pick, STEAD, ORIGIN_PICK, GtkWidget)

/* Emits "changed" when another one is chosen. */
GtkWidget *stead_origin_pick_new  (void);
/* Offers the animals that receipts brought and that are still on hand.
 * Returns: whether there are any; else there is nothing to choose */
gboolean   stead_origin_pick_fill (SteadOriginPick *self, SteadStore *store);
/* 0: none of them, the cost is entered by hand */
gint64     stead_origin_pick_get_item    (SteadOriginPick *self);
/* Whole animals of the chosen one that are on hand; 0 without one. */
gint64     stead_origin_pick_get_on_hand (SteadOriginPick *self);

G_END_DECLS

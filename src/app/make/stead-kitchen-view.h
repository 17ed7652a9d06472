/* stead-kitchen-view.h - one kitchen batch: its lots, its run sheet, its people, what came out. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_KITCHEN_VIEW (stead_kitchen_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadKitchenView, stead_kitchen_view, STEAD, KITCHEN_VIEW, GtkWidget)

/* Reads the batch anew; what is being typed stays while it is the same one. */
void stead_kitchen_view_show (SteadKitchenView *self, SteadDesk *desk, gint64 batch_id);

G_END_DECLS

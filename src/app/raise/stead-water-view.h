/* stead-water-view.h - one water in Raise: its test sheet, its trends, its doses. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WATER_VIEW (stead_water_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadWaterView, stead_water_view, STEAD, WATER_VIEW, GtkWidget)

GtkWidget *stead_water_view_new     (SteadDesk *desk);
/* Reads its answer anew; what stands typed for the same water stays. */
void       stead_water_view_show    (SteadWaterView *self, gint64 water_id);
void       stead_water_view_refresh (SteadWaterView *self);
/* Puts the cursor where the first reading goes. */
void       stead_water_view_focus   (SteadWaterView *self);

G_END_DECLS

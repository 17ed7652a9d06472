/* stead-crop-view.h - one crop in Raise: its day, its picks, its thermometer, its heat. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CROP_VIEW (stead_crop_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadCropView, stead_crop_view, STEAD, CROP_VIEW, GtkWidget)

GtkWidget *stead_crop_view_new   (SteadDesk *desk);
void       stead_crop_view_show  (SteadCropView *self, gint64 crop_id);
/* Puts the cursor where the day's first number goes. */
void       stead_crop_view_focus (SteadCropView *self);

G_END_DECLS

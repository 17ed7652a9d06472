/* stead-feeding-view.h - what feeds the plants: the fish on their water, two stocks, or a bag. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-crop-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FEEDING_VIEW (stead_feeding_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadFeedingView, stead_feeding_view, STEAD, FEEDING_VIEW, GtkWidget)

/* What was typed stays for as long as the same crop is shown. */
void stead_feeding_view_show (SteadFeedingView *self, const SteadCropAnswer *answer);

G_END_DECLS

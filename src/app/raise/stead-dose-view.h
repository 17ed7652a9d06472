/* stead-dose-view.h - one dose sheet: numbers that can be changed, and what they come to. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-water-dose-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_DOSE_VIEW (stead_dose_view_get_type ())
G_DECLARE_FINAL_TYPE (SteadDoseView, stead_dose_view, STEAD, DOSE_VIEW, GtkWidget)

GtkWidget *stead_dose_view_new  (SteadDoseSheet sheet);
/* Starts from the last tests where they, or the water, are others than before.
 * @answer: (transfer none): used until the next call */
void       stead_dose_view_show (SteadDoseView *self, const SteadWaterAnswer *answer);

G_END_DECLS

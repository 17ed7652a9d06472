/* stead-day-form.h - the form of a day: eggs, feed, hens lost. */
#pragma once

#include <gtk/gtk.h>

#include "app/stead-desk.h"
#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

#define STEAD_TYPE_DAY_FORM (stead_day_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadDayForm, stead_day_form, STEAD, DAY_FORM, GtkWidget)

/* Serves @flock; what was typed for the same flock stays. */
void stead_day_form_show  (SteadDayForm     *self,
                           SteadDesk        *desk,
                           const SteadFlock *flock);
/* Puts the cursor where the day's first number goes. */
void stead_day_form_focus (SteadDayForm *self);

G_END_DECLS

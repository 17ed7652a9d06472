/* stead-fish-form.h - the form of a day of fish: feed, warmth of the water, fish lost. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-fish-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_FISH_FORM (stead_fish_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadFishForm, stead_fish_form, STEAD, FISH_FORM, GtkWidget)

/* What stands typed stays, as long as it is the same group and the same day. */
void stead_fish_form_show   (SteadFishForm         *self,
                             SteadDesk             *desk,
                             const SteadFishAnswer *answer);
void stead_fish_form_focus  (SteadFishForm *self);
/* Saves what stands typed; the button for it is the view's, so that it is always in sight. */
void stead_fish_form_record (SteadFishForm *self);

G_END_DECLS

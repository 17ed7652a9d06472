/* stead-crop-form.h - the form of a crop's day: what was picked, how warm it was, plants lost. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-crop-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CROP_FORM (stead_crop_form_get_type ())
G_DECLARE_FINAL_TYPE (SteadCropForm, stead_crop_form, STEAD, CROP_FORM, GtkWidget)

/* What stands typed for the same crop and day stays. */
void stead_crop_form_show  (SteadCropForm *self, SteadDesk *desk, const SteadCropAnswer *answer);
void stead_crop_form_focus (SteadCropForm *self);

G_END_DECLS

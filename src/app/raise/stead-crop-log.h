/* stead-crop-log.h - what was written down of a crop: picks, plants lost, notes. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-crop-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CROP_LOG (stead_crop_log_get_type ())
G_DECLARE_FINAL_TYPE (SteadCropLog, stead_crop_log, STEAD, CROP_LOG, GtkWidget)

void stead_crop_log_show (SteadCropLog *self, SteadDesk *desk, const SteadCropAnswer *answer);

G_END_DECLS

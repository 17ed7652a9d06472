/* stead-crop-weeks.h - a crop's weeks of picking as a table, and a week in words. */
#pragma once

#include "answer/stead-crop-answer.h"
#include "app/stead-table.h"

G_BEGIN_DECLS

/* @units: (transfer none): must outlive the table; read when cells are shown */
GtkWidget *stead_crop_weeks_new  (const SteadUnitSystem *units);
/* Latest week first. */
void       stead_crop_weeks_show (SteadTable *table, const SteadCropAnswer *answer);

/* (transfer full): "Week of May 12: 12 lb picked", or what is expected */
char      *stead_crop_weeks_words (const SteadPickWeek *week, SteadUnitSystem units);

G_END_DECLS

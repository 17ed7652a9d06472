/* stead-water-log.h - the tests of a water as a table that can be edited. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-water-answer.h"
#include "app/stead-desk.h"

G_BEGIN_DECLS

#define STEAD_TYPE_WATER_LOG (stead_water_log_get_type ())
G_DECLARE_FINAL_TYPE (SteadWaterLog, stead_water_log, STEAD, WATER_LOG, GtkWidget)

/* @answer: (transfer none): used until the next call */
void stead_water_log_show (SteadWaterLog *self, SteadDesk *desk, const SteadWaterAnswer *answer);

G_END_DECLS

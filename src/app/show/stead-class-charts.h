/* stead-class-charts.h - three small charts over the class: hours, skills, packets. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-class-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CLASS_CHARTS (stead_class_charts_get_type ())
G_DECLARE_FINAL_TYPE (SteadClassCharts, stead_class_charts, STEAD, CLASS_CHARTS, GtkWidget)

GtkWidget *stead_class_charts_new        (void);
/* Students alone are shown; nothing is shown of a class without any. */
void       stead_class_charts_show       (SteadClassCharts *self, const SteadClassAnswer *answer);
/* How many sections of a student's packet are there, as soon as it is known. */
void       stead_class_charts_set_packet (SteadClassCharts *self, gint64 person_id, int n_there, int n_all);

G_END_DECLS

/* stead-over-chart.h - cash over and short by sale day, as a chart to look at. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-season-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_OVER_CHART (stead_over_chart_get_type ())
G_DECLARE_FINAL_TYPE (SteadOverChart, stead_over_chart, STEAD, OVER_CHART, GtkBox)

GtkWidget *stead_over_chart_new (void);
/* @season: read, not kept */
void       stead_over_chart_set (SteadOverChart          *self,
                                 const SteadSeasonAnswer *season);

G_END_DECLS

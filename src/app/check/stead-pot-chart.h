/* stead-pot-chart.h - how a pot cools: its readings, what they foretell, the marks it must reach. */
#pragma once

#include <gtk/gtk.h>

#include "answer/stead-cooling-answer.h"

G_BEGIN_DECLS

#define STEAD_TYPE_POT_CHART (stead_pot_chart_get_type ())
G_DECLARE_FINAL_TYPE (SteadPotChart, stead_pot_chart, STEAD, POT_CHART, GtkWidget)

GtkWidget *stead_pot_chart_new  (void);
/* Hides itself while nothing was read.  @cooling: (nullable): must live until the next call */
void       stead_pot_chart_show (SteadPotChart *self, const SteadCoolingAnswer *cooling, const char *pot_name,
                                 gboolean celsius);

G_END_DECLS

/* stead-chart-area-private.h - the chart, for the files that make it: its widget, and the
 * menu that takes its picture along.
 */
#pragma once

#include "app/stead-chart-area.h"

G_BEGIN_DECLS

struct _SteadChartArea
{
  GtkWidget        parent_instance;

  SteadChartPaint  paint;
  SteadChartHint   hint;
  SteadChartStep   step;
  gpointer         data;

  char            *label;
  char            *sentence;
  char            *file_name;
  char            *currency;

  char            *said;          /* (nullable): the words at said_x, said_y */
  double           said_x, said_y;
  int              at;            /* the place that the arrow keys are at; NOWHERE: none */

  GtkWidget       *menu;
};

/* The actions of the menu, and the keys that open it; @widget_class is that of the chart. */
void stead_chart_area_install_menu (GtkWidgetClass *widget_class);

/* Opens the menu by the secondary button. */
void stead_chart_area_add_menu (SteadChartArea *self);

G_END_DECLS

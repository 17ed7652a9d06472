/* stead-plot.h - a card with a question, a chart that answers it, and the same as a table. */
#pragma once

#include "app/stead-chart-area.h"
#include "paper/stead-figure.h"

G_BEGIN_DECLS

#define STEAD_TYPE_PLOT (stead_plot_get_type ())
G_DECLARE_FINAL_TYPE (SteadPlot, stead_plot, STEAD, PLOT, GtkWidget)

/* @question: "What one dozen costs"; @label: what the chart is; @columns: (array
 * zero-terminated=1): heads of the table, the first left-aligned */
GtkWidget      *stead_plot_new       (const char *question, const char *label, const char * const *columns);
/* (transfer none): one without a figure is given its paint, hint and step functions. */
SteadChartArea *stead_plot_get_chart (SteadPlot *self);
/* The least height of the chart. */
void            stead_plot_set_height (SteadPlot *self, int height);
/* @markup: the sentence that the chart is described by; @rows: (transfer full)
 * (element-type GStrv): its numbers.  Paints anew. */
void            stead_plot_show      (SteadPlot *self, const char *markup, const char *currency, GPtrArray *rows);
/* (transfer full) (nullable): what is painted from now on, in the place of the one before. */
void            stead_plot_take_figure (SteadPlot *self, SteadFigure *figure);
/* Beside the heading. */
void            stead_plot_add       (SteadPlot *self, GtkWidget *widget);

G_END_DECLS

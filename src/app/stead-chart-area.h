/* stead-chart-area.h - a drawn chart as a widget: sentence for screen readers,
 * values under the pointer, copy and save, and the table beside it.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHART_AREA (stead_chart_area_get_type ())
G_DECLARE_FINAL_TYPE (SteadChartArea, stead_chart_area, STEAD, CHART_AREA, GtkWidget)

/* Paints into @cr at @width × @height in @style. */
typedef void (*SteadChartPaint) (cairo_t *cr, const SteadDrawStyle *style, double width, double height, gpointer data);
/* What stands at a point: (transfer full) (nullable). */
typedef char *(*SteadChartHint) (double x, double y, gpointer data);

GtkWidget *stead_chart_area_new (void);
/* Properties: "label" (what it is), "description" (the sentence, plain). */
void stead_chart_area_set_paint (SteadChartArea *self, SteadChartPaint paint, SteadChartHint hint, gpointer data);
void stead_chart_area_describe  (SteadChartArea *self, const char *label, const char *sentence);
/* The style that fits the widget now: scheme, text size, currency. */
void stead_chart_area_get_style (SteadChartArea *self, const char *currency, SteadDrawStyle *out);
/* Name put forward for "Save picture". */
void stead_chart_area_set_file_name (SteadChartArea *self, const char *name);
void stead_chart_area_set_currency (SteadChartArea *self, const char *currency);

G_END_DECLS

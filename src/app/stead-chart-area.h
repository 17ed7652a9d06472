/* stead-chart-area.h - a drawn chart as a widget: sentence for screen readers,
 * values under the pointer and under the arrow keys, copy and save.
 */
#pragma once

#include <gtk/gtk.h>

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_TYPE_CHART_AREA (stead_chart_area_get_type ())
G_DECLARE_FINAL_TYPE (SteadChartArea, stead_chart_area, STEAD, CHART_AREA, GtkWidget)

/* Paints into @cr at @width × @height in @style.  A picture is painted through
 * the same function at another size, so nothing may be kept from one call to the next. */
typedef void (*SteadChartPaint) (cairo_t *cr, const SteadDrawStyle *style, double width, double height, gpointer data);
/* What stands at a point: (transfer full) (nullable). */
typedef char *(*SteadChartHint) (double x, double y, gpointer data);
/* What stands at place @index, counted from 0 at the left, and where that is:
 * (transfer full), NULL past either end. */
typedef char *(*SteadChartStep) (int index, double *x, double *y, gpointer data);

GtkWidget *stead_chart_area_new (void);
/* Properties: "label" (what it is), "description" (the sentence, plain). */
void stead_chart_area_set_paint (SteadChartArea *self, SteadChartPaint paint, SteadChartHint hint, gpointer data);
/* Lets Left, Right, Home and End go from value to value; each is said in words. */
void stead_chart_area_set_step (SteadChartArea *self, SteadChartStep step);
void stead_chart_area_describe  (SteadChartArea *self, const char *label, const char *sentence);
/* The style that fits the widget now: scheme, text size, currency.  Made anew for each painting. */
void stead_chart_area_get_style (SteadChartArea *self, const char *currency, SteadDrawStyle *out);
/* Name put forward for "Save picture", without an ending. */
void stead_chart_area_set_file_name (SteadChartArea *self, const char *name);
void stead_chart_area_set_currency (SteadChartArea *self, const char *currency);

G_END_DECLS

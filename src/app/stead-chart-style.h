/* stead-chart-style.h - the style in which a widget's drawing fits its surroundings. */
#pragma once

#include <gtk/gtk.h>

#include "draw/stead-draw.h"

G_BEGIN_DECLS

/**
 * stead_chart_style:
 * @widget: where it will be painted
 * @currency: ISO 4217
 * @out: (out): scheme by the widget's color, size of text by its font; its strings
 *   are @currency and the widget's own, so it is made anew for each painting
 */
void stead_chart_style (GtkWidget      *widget,
                        const char     *currency,
                        SteadDrawStyle *out);

G_END_DECLS

/* stead-chart-style.c - the style in which a widget's drawing fits its surroundings.
 *
 * The theme is not asked for its name: light text means a dark ground, also in
 * high contrast and in themes to come.
 */
#include "config.h"

#include "app/stead-chart-style.h"

/* Labels of a chart are a little smaller than the text around it. */
#define LABEL_SCALE 0.92

static SteadScheme
find_scheme (GtkWidget *widget)
{
  GdkRGBA ink;
  double light;

  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  light = 0.2126 * (double) ink.red + 0.7152 * (double) ink.green + 0.0722 * (double) ink.blue;
  return light > 0.5 ? STEAD_SCHEME_DARK : STEAD_SCHEME_LIGHT;
}

/* 13.3 for 10 points at 96 dpi. */
static double
font_px (PangoContext               *context,
         const PangoFontDescription *font)
{
  double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;
  double dpi = pango_cairo_context_get_resolution (context);

  if (pango_font_description_get_size_is_absolute (font))
    return size;
  return size * (dpi > 0 ? dpi : 96) / 72;
}

void
stead_chart_style (GtkWidget      *widget,
                   const char     *currency,
                   SteadDrawStyle *out)
{
  PangoContext *context;
  const PangoFontDescription *font;

  g_return_if_fail (GTK_IS_WIDGET (widget) && currency != NULL && out != NULL);

  context = gtk_widget_get_pango_context (widget);
  font = pango_context_get_font_description (context);
  *out = (SteadDrawStyle) {
    .scheme = find_scheme (widget),
    .font_size = font_px (context, font) * LABEL_SCALE,
    .font_family = pango_font_description_get_family (font),
    .currency = currency,
  };
}

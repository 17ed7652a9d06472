/* stead-chart-picture.h - a chart as the bytes of a picture file. */
#pragma once

#include "app/stead-chart-area.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_PICTURE_PNG,
  STEAD_PICTURE_SVG,
  STEAD_PICTURE_PDF,
} SteadPictureFormat;

/* ".png": what the name of such a file ends in. */
const char *stead_picture_ending (SteadPictureFormat format);

/**
 * stead_chart_picture_texture:
 *
 * Returns: (transfer full): the chart at twice its size, for the clipboard
 */
GdkTexture *stead_chart_picture_texture (SteadChartPaint       paint,
                                         gpointer              data,
                                         const SteadDrawStyle *style,
                                         double                width,
                                         double                height);

/**
 * stead_chart_picture_bytes:
 * @title: (nullable): what the picture shows
 * @sentence: (nullable): what it says
 *
 * Returns: (transfer full): the file, or %NULL with @error if cairo cannot make it
 */
GBytes *stead_chart_picture_bytes (SteadChartPaint        paint,
                                   gpointer               data,
                                   const SteadDrawStyle  *style,
                                   double                 width,
                                   double                 height,
                                   SteadPictureFormat     format,
                                   const char            *title,
                                   const char            *sentence,
                                   GError               **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

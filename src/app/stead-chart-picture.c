/* stead-chart-picture.c - paints a chart into memory as PNG, SVG or PDF.
 *
 * The picture shows what the screen shows, in the light colors, and is made
 * whole before a byte of it is written anywhere.
 */
#include "config.h"

#include "app/stead-chart-picture.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#define PNG_SCALE 2.0

const char *
stead_picture_ending (SteadPictureFormat format)
{
  static const char * const endings[] = { ".png", ".svg", ".pdf" };

  return endings[format];
}

static cairo_status_t
append_cb (void                *closure,
           const unsigned char *data,
           unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* A card under the chart, so that it can be put on any ground. */
static void
paint_all (cairo_surface_t      *surface,
           SteadChartPaint       paint,
           gpointer              data,
           const SteadDrawStyle *style,
           double                width,
           double                height)
{
  cairo_t *cr = cairo_create (surface);

  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_CARD, 1);
  cairo_paint (cr);
  paint (cr, style, width, height, data);
  cairo_destroy (cr);
}

static cairo_surface_t *
paint_image (SteadChartPaint       paint,
             gpointer              data,
             const SteadDrawStyle *style,
             double                width,
             double                height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32,
                                                         (int) (width * PNG_SCALE),
                                                         (int) (height * PNG_SCALE));

  cairo_surface_set_device_scale (surface, PNG_SCALE, PNG_SCALE);
  paint_all (surface, paint, data, style, width, height);
  cairo_surface_flush (surface);
  return surface;
}

GdkTexture *
stead_chart_picture_texture (SteadChartPaint       paint,
                             gpointer              data,
                             const SteadDrawStyle *style,
                             double                width,
                             double                height)
{
  cairo_surface_t *surface;
  g_autoptr(GBytes) bytes = NULL;
  GdkTexture *texture;
  int stride, rows;

  g_return_val_if_fail (paint != NULL && style != NULL && width >= 1 && height >= 1, NULL);

  surface = paint_image (paint, data, style, width, height);
  stride = cairo_image_surface_get_stride (surface);
  rows = cairo_image_surface_get_height (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface), (gsize) stride * (gsize) rows);
  texture = gdk_memory_texture_new (cairo_image_surface_get_width (surface), rows,
                                    GDK_MEMORY_DEFAULT, bytes, (gsize) stride);
  cairo_surface_destroy (surface);
  return texture;
}

static cairo_status_t
write_png (GByteArray           *out,
           SteadChartPaint       paint,
           gpointer              data,
           const SteadDrawStyle *style,
           double                width,
           double                height)
{
  cairo_surface_t *surface = paint_image (paint, data, style, width, height);
  cairo_status_t status = cairo_surface_write_to_png_stream (surface, append_cb, out);

  cairo_surface_destroy (surface);
  return status;
}

static cairo_status_t
write_vector (GByteArray           *out,
              SteadChartPaint       paint,
              gpointer              data,
              const SteadDrawStyle *style,
              double                width,
              double                height,
              SteadPictureFormat    format,
              const char           *title,
              const char           *sentence)
{
  cairo_surface_t *surface;
  cairo_status_t status;

  if (format == STEAD_PICTURE_PDF)
    {
      surface = cairo_pdf_surface_create_for_stream (append_cb, out, width, height);
      if (title != NULL)
        cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
      if (sentence != NULL)
        cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, sentence);
    }
  else
    {
      surface = cairo_svg_surface_create_for_stream (append_cb, out, width, height);
    }
  paint_all (surface, paint, data, style, width, height);
  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return status;
}

GBytes *
stead_chart_picture_bytes (SteadChartPaint        paint,
                           gpointer               data,
                           const SteadDrawStyle  *style,
                           double                 width,
                           double                 height,
                           SteadPictureFormat     format,
                           const char            *title,
                           const char            *sentence,
                           GError               **error)
{
  g_autoptr(GByteArray) out = g_byte_array_new ();
  cairo_status_t status;

  g_return_val_if_fail (paint != NULL && style != NULL && width >= 1 && height >= 1, NULL);

  if (format == STEAD_PICTURE_PNG)
    status = write_png (out, paint, data, style, width, height);
  else
    status = write_vector (out, paint, data, style, width, height, format, title, sentence);

  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (g_steal_pointer (&out));
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED,
               /* Translators: %s is what the drawing library said. */
               _("The picture could not be made (%s)."), cairo_status_to_string (status));
  return NULL;
}

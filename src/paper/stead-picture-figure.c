/* stead-picture-figure.c - a picture out of the farm file, as a figure on pages. */
#include "config.h"

#include "paper/stead-picture-figure.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <gio/gio.h>

#include "core/stead-jpeg.h"

#define POINTS_A_DOT (72.0 / 96.0)
#define MOST_WIDTH 480.0

/* For the screen.  A PDF holds the picture as it was taken, byte by byte. */
#define MOST_DOTS 900

/* (transfer full) (nullable): small enough to be shown, so that large pictures take little memory */
static GdkPixbuf *
decode (GBytes *jpeg,
        int     width,
        int     height)
{
  g_autoptr(GInputStream) stream = g_memory_input_stream_new_from_bytes (jpeg);

  if (MAX (width, height) <= MOST_DOTS)
    return gdk_pixbuf_new_from_stream (stream, NULL, NULL);
  return gdk_pixbuf_new_from_stream_at_scale (stream, MOST_DOTS, MOST_DOTS, TRUE, NULL, NULL);
}

/* Both hold rows of bytes; cairo's dots are words, and know no transparency here. */
static void
copy_dots (const GdkPixbuf *picture,
           cairo_surface_t *surface)
{
  const guchar *from = gdk_pixbuf_read_pixels (picture);
  unsigned char *to = cairo_image_surface_get_data (surface);
  int channels = gdk_pixbuf_get_n_channels (picture);
  int width = gdk_pixbuf_get_width (picture);

  for (int y = 0; y < gdk_pixbuf_get_height (picture); y++)
    {
      const guchar *dot = from + (gsize) y * (gsize) gdk_pixbuf_get_rowstride (picture);
      guint32 *row = (guint32 *) (gpointer) (to + (gsize) y * (gsize) cairo_image_surface_get_stride (surface));

      for (int x = 0; x < width; x++, dot += channels)
        row[x] = (guint32) dot[0] << 16 | (guint32) dot[1] << 8 | dot[2];
    }
  cairo_surface_mark_dirty (surface);
}

static void
free_bytes (gpointer data)
{
  g_bytes_unref (data);
}

/* (transfer full) (nullable) */
static cairo_surface_t *
make_surface (GBytes *jpeg,
              int     width,
              int     height)
{
  g_autoptr(GdkPixbuf) picture = decode (jpeg, width, height);
  cairo_surface_t *surface;
  const unsigned char *data;
  gsize size;

  if (picture == NULL)
    return NULL;
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, gdk_pixbuf_get_width (picture),
                                        gdk_pixbuf_get_height (picture));
  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    {
      cairo_surface_destroy (surface);
      return NULL;
    }
  cairo_surface_flush (surface);
  copy_dots (picture, surface);
  data = g_bytes_get_data (jpeg, &size);
  if (cairo_surface_set_mime_data (surface, CAIRO_MIME_TYPE_JPEG, data, size, free_bytes, g_bytes_ref (jpeg))
      != CAIRO_STATUS_SUCCESS)
    g_bytes_unref (jpeg);
  return surface;
}

static double
scale_of (cairo_surface_t *surface,
          double           height)
{
  return height / cairo_image_surface_get_height (surface);
}

static void
print (cairo_t  *cr,
       double    width,
       double    height,
       gpointer  data)
{
  cairo_surface_t *surface = data;
  double scale = scale_of (surface, height);

  cairo_save (cr);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_paint (cr);
  cairo_restore (cr);
}

static void
drop (gpointer data)
{
  cairo_surface_destroy (data);
}

gboolean
stead_picture_figure_add (SteadPages *pages,
                          GBytes     *jpeg,
                          double      most_height)
{
  cairo_surface_t *surface = NULL;
  const guint8 *data;
  gsize size;
  int width, height;

  g_return_val_if_fail (pages != NULL && jpeg != NULL && most_height > 0, FALSE);
  data = g_bytes_get_data (jpeg, &size);
  if (stead_jpeg_read_size (data, size, &width, &height))
    surface = make_surface (jpeg, width, height);
  if (surface == NULL)
    return FALSE;
  stead_pages_add_figure (pages, height * MIN (MIN (POINTS_A_DOT, most_height / height), MOST_WIDTH / width), print,
                          surface, drop);
  return TRUE;
}

/* draw-probe.h - looks at a drawing from outside: its ink, its pixels, its texts. */
#pragma once

#include <math.h>

#include "draw/stead-draw.h"

/* A context whose drawing can be measured. */
static inline cairo_t *
probe_record (void)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  return cr;
}

/* The ink of a recording lies in the box; half a pixel is what smoothing may spill. */
static inline void
probe_assert_inside (cairo_t *cr,
                     double   width,
                     double   height)
{
  double x, y, w, h;

  cairo_recording_surface_ink_extents (cairo_get_target (cr), &x, &y, &w, &h);
  g_assert_cmpfloat (w, >, 0);
  g_assert_cmpfloat (x, >=, -0.5);
  g_assert_cmpfloat (y, >=, -0.5);
  g_assert_cmpfloat (x + w, <=, width + 0.5);
  g_assert_cmpfloat (y + h, <=, height + 0.5);
}

/* An image with the card as ground. */
static inline cairo_t *
probe_image (SteadScheme scheme,
             int         width,
             int         height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  stead_palette_set_source (cr, scheme, STEAD_ROLE_CARD, 1);
  cairo_paint (cr);
  return cr;
}

static inline guint32
probe_pixel (cairo_t *cr,
             double   x,
             double   y)
{
  cairo_surface_t *surface = cairo_get_target (cr);
  const guchar *data;

  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  g_assert_cmpint ((int) x, >=, 0);
  g_assert_cmpint ((int) x, <, cairo_image_surface_get_width (surface));
  g_assert_cmpint ((int) y, >=, 0);
  g_assert_cmpint ((int) y, <, cairo_image_surface_get_height (surface));
  return *(const guint32 *) (gconstpointer) (data + (int) y * cairo_image_surface_get_stride (surface)
                                             + (int) x * 4) & 0xffffff;
}

/* How far a pixel is from a role's colour, 0 to 255 in the worst channel. */
static inline int
probe_distance (guint32 a,
                guint32 b)
{
  int most = 0;

  for (int shift = 0; shift <= 16; shift += 8)
    most = MAX (most, ABS ((int) (a >> shift & 0xff) - (int) (b >> shift & 0xff)));
  return most;
}

static inline void
probe_assert_role (cairo_t     *cr,
                   SteadScheme  scheme,
                   SteadRole    role,
                   double       x,
                   double       y)
{
  guint32 pixel = probe_pixel (cr, x, y), want = stead_palette_rgb (scheme, role);

  g_test_message ("at %.1f, %.1f: %06x, role %d is %06x", x, y, pixel, role, want);
  g_assert_cmpint (probe_distance (pixel, want), <=, 40);
}

/* Names each pair of boxes that touch; text boxes have leading, so a hair is let pass. */
static inline void
probe_assert_apart (const SteadBox *boxes,
                    int             n)
{
  for (int i = 0; i < n; i++)
    for (int j = i + 1; j < n; j++)
      {
        const SteadBox *a = &boxes[i], *b = &boxes[j];
        double dx = MIN (a->x + a->width, b->x + b->width) - MAX (a->x, b->x);
        double dy = MIN (a->y + a->height, b->y + b->height) - MAX (a->y, b->y);

        if (a->width <= 0 || b->width <= 0 || dx <= 0.5 || dy <= 0.5)
          continue;
        g_test_message ("%d (%.1f %.1f %.1f %.1f) covers %d (%.1f %.1f %.1f %.1f)",
                        i, a->x, a->y, a->width, a->height, j, b->x, b->y, b->width, b->height);
        g_test_fail ();
      }
}

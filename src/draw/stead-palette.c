/* stead-palette.c - the roles of colour.
 *
 * Measured: egg has 2.0:1 on the page and so never stands without an ink
 * outline; water and tomato are one grey in print, so no series is told from
 * another by colour alone.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-palette.h"

static const guint32 colours[STEAD_N_SCHEMES][STEAD_N_ROLES] = {
  [STEAD_SCHEME_LIGHT] = {
    [STEAD_ROLE_PAGE] = 0xf4f3ef, [STEAD_ROLE_CARD] = 0xffffff, [STEAD_ROLE_INK] = 0x1d2733,
    [STEAD_ROLE_SOFT] = 0x5b6570, [STEAD_ROLE_RULE] = 0xdcdad2, [STEAD_ROLE_SHELL] = 0xf6d3ae,
    [STEAD_ROLE_WATER] = 0x0f6f78, [STEAD_ROLE_TOMATO] = 0xb8431c, [STEAD_ROLE_EGG] = 0xe0a526,
    [STEAD_ROLE_FISH] = 0x1e7fa0, [STEAD_ROLE_CROP] = 0xcf3f2b, [STEAD_ROLE_SAUCE] = 0x7a2e4d,
  },
  [STEAD_SCHEME_DARK] = {
    [STEAD_ROLE_PAGE] = 0x161c23, [STEAD_ROLE_CARD] = 0x1f2730, [STEAD_ROLE_INK] = 0xeceae4,
    [STEAD_ROLE_SOFT] = 0xaab3bc, [STEAD_ROLE_RULE] = 0x3a444f, [STEAD_ROLE_SHELL] = 0x6b4a2a,
    [STEAD_ROLE_WATER] = 0x5cc0c8, [STEAD_ROLE_TOMATO] = 0xf08a62, [STEAD_ROLE_EGG] = 0xe8b64a,
    [STEAD_ROLE_FISH] = 0x5fb4d2, [STEAD_ROLE_CROP] = 0xf07c6a, [STEAD_ROLE_SAUCE] = 0xd083a3,
  },
  [STEAD_SCHEME_PRINT] = {
    [STEAD_ROLE_PAGE] = 0xffffff, [STEAD_ROLE_CARD] = 0xffffff, [STEAD_ROLE_INK] = 0x000000,
    [STEAD_ROLE_SOFT] = 0x4a4a4a, [STEAD_ROLE_RULE] = 0xc8c8c8, [STEAD_ROLE_SHELL] = 0xf0e2d2,
    [STEAD_ROLE_WATER] = 0x0f6f78, [STEAD_ROLE_TOMATO] = 0xb8431c, [STEAD_ROLE_EGG] = 0xe0a526,
    [STEAD_ROLE_FISH] = 0x1e7fa0, [STEAD_ROLE_CROP] = 0xcf3f2b, [STEAD_ROLE_SAUCE] = 0x7a2e4d,
  },
};

guint32
stead_palette_rgb (SteadScheme scheme,
                   SteadRole   role)
{
  return colours[scheme][role];
}

void
stead_palette_set_source (cairo_t     *cr,
                          SteadScheme  scheme,
                          SteadRole    role,
                          double       alpha)
{
  guint32 rgb = colours[scheme][role];

  cairo_set_source_rgba (cr, (rgb >> 16 & 0xff) / 255.0, (rgb >> 8 & 0xff) / 255.0,
                         (rgb & 0xff) / 255.0, alpha);
}

static double
luminance (guint32 rgb)
{
  static const double weight[3] = { 0.2126, 0.7152, 0.0722 };
  double sum = 0;

  for (int i = 0; i < 3; i++)
    {
      double share = (rgb >> (16 - 8 * i) & 0xff) / 255.0;

      sum += weight[i] * (share <= 0.04045 ? share / 12.92 : pow ((share + 0.055) / 1.055, 2.4));
    }
  return sum;
}

double
stead_palette_contrast (guint32 rgb_a,
                        guint32 rgb_b)
{
  double a = luminance (rgb_a), b = luminance (rgb_b);

  return (MAX (a, b) + 0.05) / (MIN (a, b) + 0.05);
}

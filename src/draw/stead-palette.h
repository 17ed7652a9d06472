/* stead-palette.h - the roles of colour, one set each for light, dark and print.
 *
 * The same hex values stand in ui/steading.css; a test holds the two together
 * and checks every pair (text 4.5:1, marks 3:1).
 */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_SCHEME_LIGHT,
  STEAD_SCHEME_DARK,
  STEAD_SCHEME_PRINT,   /* white paper, safe without colour */
} SteadScheme;

#define STEAD_N_SCHEMES (STEAD_SCHEME_PRINT + 1)

typedef enum
{
  STEAD_ROLE_PAGE,      /* behind the cards */
  STEAD_ROLE_CARD,
  STEAD_ROLE_INK,
  STEAD_ROLE_SOFT,      /* soft text */
  STEAD_ROLE_RULE,      /* hairlines, grid */
  STEAD_ROLE_SHELL,     /* selection; only ink text stands on it */
  STEAD_ROLE_WATER,     /* money in, good */
  STEAD_ROLE_TOMATO,    /* costs, warning */
  STEAD_ROLE_EGG,       /* always with an ink outline */
  STEAD_ROLE_FISH,
  STEAD_ROLE_CROP,      /* the hue of tomatoes as a product */
  STEAD_ROLE_SAUCE,
} SteadRole;

#define STEAD_N_ROLES (STEAD_ROLE_SAUCE + 1)

/**
 * stead_palette_rgb:
 * Returns: the colour as 0xRRGGBB
 */
guint32 stead_palette_rgb (SteadScheme scheme,
                           SteadRole   role);

/**
 * stead_palette_set_source:
 * @cr: a context
 * @scheme: which set
 * @role: which role
 * @alpha: 0 to 1
 */
void stead_palette_set_source (cairo_t     *cr,
                               SteadScheme  scheme,
                               SteadRole    role,
                               double       alpha);

/**
 * stead_palette_contrast:
 * Returns: the contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)
 */
double stead_palette_contrast (guint32 rgb_a,
                               guint32 rgb_b);

G_END_DECLS

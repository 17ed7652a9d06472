/* stead-draw.h - what every drawing shares: style, text, ticks, patterns.
 *
 * A drawing is laid out from numbers (no cairo_t needed, except for text, which
 * is measured through a PangoContext) and then painted.  Lengths are in points
 * on paper and in pixels on screen.
 */
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include "draw/stead-palette.h"

G_BEGIN_DECLS

typedef struct
{
  SteadScheme  scheme;
  double       font_size;    /* of axis labels; 12 on screen, 9 on paper; grows with the person's text size */
  const char  *font_family;  /* (nullable): "Sans" */
  const char  *currency;     /* ISO 4217 */
} SteadDrawStyle;

typedef struct
{
  double x, y, width, height;
} SteadBox;

/* Round steps for an axis: 1, 2, 5 times a power of ten (2.5 for money allowed). */
typedef struct
{
  double first, step, last;
  int    n;
} SteadTicks;

/**
 * stead_ticks:
 * @low: lowest value
 * @high: highest value, above @low
 * @max_ticks: at most so many, 2 or more
 * @whole: whether steps must be whole numbers
 */
SteadTicks stead_ticks (double   low,
                        double   high,
                        int      max_ticks,
                        gboolean whole);

typedef enum
{
  STEAD_ALIGN_LEFT,
  STEAD_ALIGN_CENTER,
  STEAD_ALIGN_RIGHT,
} SteadAlign;

/* Width and height of a text in the style (times @scale), bold or not. */
void stead_text_measure (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         const char           *text,
                         double                scale,
                         gboolean              bold,
                         double               *width,
                         double               *height);

/* Paints one line, its vertical middle at @y, aligned at @x; returns the box it covers. */
SteadBox stead_text_paint (cairo_t              *cr,
                           const SteadDrawStyle *style,
                           SteadRole             role,
                           const char           *text,
                           double                scale,
                           gboolean              bold,
                           SteadAlign            align,
                           double                x,
                           double                y);

/* Patterns that tell series apart without colour. */
typedef enum
{
  STEAD_PATTERN_SOLID,
  STEAD_PATTERN_RISING,    /* hatch / */
  STEAD_PATTERN_FALLING,   /* hatch \ */
  STEAD_PATTERN_DOTS,
  STEAD_PATTERN_CROSS,
  STEAD_PATTERN_LINES,     /* horizontal */
} SteadPattern;

/* Fills the current path with the role's colour and the pattern over it, outline in ink if @outline. */
void stead_fill_pattern (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         SteadRole             role,
                         SteadPattern          pattern,
                         gboolean              outline);

G_END_DECLS

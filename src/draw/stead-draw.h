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

/**
 * stead_draw_style_fit:
 * @style: what the person asked for
 * @width: of the drawing's box
 * @height: of the drawing's box
 *
 * In a box that is too small for its text a chart would be all labels and no
 * plot.  The text then gives way, but never below 60 % of what was asked for.
 *
 * Returns: the style with the text size that this box carries
 */
SteadDrawStyle stead_draw_style_fit (const SteadDrawStyle *style,
                                     double                width,
                                     double                height);

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

/* Takes away what was painted in @box, so that no rule runs through words that go there. */
void stead_ground_clear (cairo_t              *cr,
                         const SteadDrawStyle *style,
                         const SteadBox       *box);

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

/**
 * stead_text_measure_block:
 * stead_text_paint_block:
 * @max_width: lines break there, inside a word where nothing else helps; 0: one line
 * @y: the vertical middle of the whole block
 *
 * As stead_text_measure() and stead_text_paint(), in as many lines as it takes.
 */
void stead_text_measure_block (cairo_t              *cr,
                               const SteadDrawStyle *style,
                               const char           *text,
                               double                scale,
                               gboolean              bold,
                               double                max_width,
                               double               *width,
                               double               *height);

SteadBox stead_text_paint_block (cairo_t              *cr,
                                 const SteadDrawStyle *style,
                                 SteadRole             role,
                                 const char           *text,
                                 double                scale,
                                 gboolean              bold,
                                 SteadAlign            align,
                                 double                max_width,
                                 double                x,
                                 double                y);

/* Tabular figures; and no ligatures, since cairo writes one into a PDF as a marked
 * span within the tagged text, after which some readers lose the rest of it. */
#define STEAD_FONT_FEATURES "tnum=1, liga=0, clig=0, dlig=0"

/**
 * stead_text_show_layout:
 * @layout: laid out for @cr, in one line or several
 *
 * As pango_cairo_show_layout() at the current point, but the spaces at which lines
 * break stay characters: in a PDF, text that is read aloud is not run together.
 */
void stead_text_show_layout (cairo_t     *cr,
                             PangoLayout *layout);

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

/* Washes the current path with a little of the role's colour and hatches it: an
 * area that lines and labels can stand on. */
void stead_fill_area (cairo_t              *cr,
                      const SteadDrawStyle *style,
                      SteadRole             role,
                      SteadPattern          pattern);

/* How a line is drawn.  On a screen the dashes are kept for what is not measured;
 * in print every series has its own. */
typedef enum
{
  STEAD_LINE_SOLID,
  STEAD_LINE_DASHED,
  STEAD_LINE_DOTTED,
} SteadLine;

/* Strokes the current path in the role's colour, ends and joins round. */
void stead_stroke_line (cairo_t              *cr,
                        const SteadDrawStyle *style,
                        SteadRole             role,
                        SteadLine             line,
                        double                width);

/* The mark that stands on a series in print, and in keys. */
typedef enum
{
  STEAD_MARK_NONE,
  STEAD_MARK_DOT,
  STEAD_MARK_SQUARE,
  STEAD_MARK_RING,
  STEAD_MARK_CROSS,
  STEAD_MARK_BAR,
  STEAD_MARK_HATCHED_BAR,   /* as what is thrown out stands on a bar */
} SteadMark;

void stead_mark_paint (cairo_t              *cr,
                       const SteadDrawStyle *style,
                       SteadRole             role,
                       SteadMark             mark,
                       double                x,
                       double                y,
                       double                radius);

/* A horizontal hairline, sharp on a screen. */
void stead_rule_paint (cairo_t              *cr,
                       const SteadDrawStyle *style,
                       SteadRole             role,
                       double                x0,
                       double                x1,
                       double                y);

G_END_DECLS

/* stead-key.h - a line of keys over a chart, for boxes too narrow to name lines at their ends. */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_MAX_KEYS 8

typedef struct
{
  const char *text;
  SteadRole   role;      /* of the sample */
  SteadLine   line;
  SteadMark   mark;      /* on the line, or alone if line_width is 0 */
  double      line_width;
  gboolean    area;      /* over a plot: a patch of the hatched area lies under line and mark */
  gboolean    bold;      /* beside a plot: in bold ink, the one that the chart is looked at for */
  SteadBox    box;       /* (out): sample and text */
} SteadKey;

/**
 * stead_keys_layout:
 * @keys: (array length=n): their boxes are filled in
 * @n: at most %STEAD_MAX_KEYS
 * @x: left end
 * @y: top
 * @width: rows break there; a text that is wider breaks too
 *
 * Returns: the height that all rows take
 */
double stead_keys_layout (cairo_t              *cr,
                          const SteadDrawStyle *style,
                          SteadKey             *keys,
                          int                   n,
                          double                x,
                          double                y,
                          double                width);

void stead_keys_paint (cairo_t              *cr,
                       const SteadDrawStyle *style,
                       const SteadKey       *keys,
                       int                   n);

/* --- beside the plot, each name at the height of what it names ------------------- */

/* The width that the texts take, which break at @max_width. */
double stead_keys_measure_right (cairo_t              *cr,
                                 const SteadDrawStyle *style,
                                 const SteadKey       *keys,
                                 int                   n,
                                 double                max_width);

/**
 * stead_keys_layout_right:
 * @keys: (array length=n): their boxes are filled in
 * @want_y: (array length=n): the height that each would like
 * @x: left end of the texts
 * @width: they break there
 * @top: none starts above it
 * @bottom: none ends below it, if there is room for all
 */
void stead_keys_layout_right (cairo_t              *cr,
                              const SteadDrawStyle *style,
                              SteadKey             *keys,
                              const double         *want_y,
                              int                   n,
                              double                x,
                              double                width,
                              double                top,
                              double                bottom);

/* Each text, with the mark of what it names before it, if it has one. */
void stead_keys_paint_right (cairo_t              *cr,
                             const SteadDrawStyle *style,
                             const SteadKey       *keys,
                             int                   n,
                             double                width);

G_END_DECLS

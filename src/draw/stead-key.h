/* stead-key.h - a line of keys over a chart, for boxes too narrow to name lines at their ends. */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

#define STEAD_MAX_KEYS 6

typedef struct
{
  const char *text;
  SteadRole   role;      /* of the sample */
  SteadLine   line;
  SteadMark   mark;      /* on the line, or alone if line_width is 0 */
  double      line_width;
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

G_END_DECLS

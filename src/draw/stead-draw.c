/* stead-draw.c - what every drawing shares: round steps of an axis, patterns, lines, marks.
 *
 * Everything is vector: a hatch is lines under a clip, so that paper stays sharp.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-draw.h"

#define HATCH_GAP 7.0      /* between hatch lines, for text of 12 */
#define LEAST_TEXT 0.6     /* of the text size asked for */
#define BOX_WIDTH_EM 26.0  /* a box this many text sizes wide carries its text */
#define BOX_HEIGHT_EM 17.0

SteadDrawStyle
stead_draw_style_fit (const SteadDrawStyle *style,
                      double                width,
                      double                height)
{
  SteadDrawStyle fit = *style;
  double share = MIN (width / (BOX_WIDTH_EM * style->font_size),
                      height / (BOX_HEIGHT_EM * style->font_size));

  fit.font_size *= CLAMP (share, LEAST_TEXT, 1.0);
  return fit;
}

/* Ticks that a step gives within the range; the slack keeps 0.3 / 0.1 at 3. */
static int
count_ticks (double  low,
             double  high,
             double  step,
             double *out_first)
{
  double first = ceil (low / step - 1e-9);
  double last = floor (high / step + 1e-9);

  *out_first = first * step + 0.0;
  return last - first > 1e6 ? G_MAXINT : (int) (last - first) + 1;
}

SteadTicks
stead_ticks (double   low,
             double   high,
             int      max_ticks,
             gboolean whole)
{
  static const double multiples[] = { 1, 2, 2.5, 5 };
  SteadTicks ticks = { low, 1, low, 1 };
  double power;

  if (!(high > low) || !isfinite (high - low) || max_ticks < 2)
    return ticks;
  for (power = pow (10, floor (log10 ((high - low) / max_ticks))); ; power *= 10)
    for (gsize i = 0; i < G_N_ELEMENTS (multiples); i++)
      {
        double step = multiples[i] * power;

        if (whole && (step < 1 || fabs (step - round (step)) > 1e-9 * step))
          continue;
        ticks.step = step;
        ticks.n = count_ticks (low, high, step, &ticks.first);
        if (ticks.n > max_ticks)
          continue;
        ticks.last = ticks.first + (MAX (ticks.n, 1) - 1) * step;
        return ticks;
      }
}

/* Ink or card, whichever is the clearer on the role's colour. */
static SteadRole
clear_role_on (SteadScheme scheme,
               SteadRole   role)
{
  guint32 under = stead_palette_rgb (scheme, role);
  double ink = stead_palette_contrast (under, stead_palette_rgb (scheme, STEAD_ROLE_INK));
  double card = stead_palette_contrast (under, stead_palette_rgb (scheme, STEAD_ROLE_CARD));

  return ink >= card ? STEAD_ROLE_INK : STEAD_ROLE_CARD;
}

static void
hatch_slanted (cairo_t *cr,
               double   x0,
               double   y0,
               double   x1,
               double   y1,
               double   gap,
               int      slope)
{
  double reach = y1 - y0;
  /* Lines keep their place on the sheet while the area moves under a drag. */
  double start = floor ((slope > 0 ? x0 + y0 : x0 - y1) / gap) * gap;
  double end = slope > 0 ? x1 + y1 : x1 - y0;

  for (double c = start; c <= end; c += gap)
    {
      if (slope > 0)
        {
          cairo_move_to (cr, c - y0, y0);
          cairo_line_to (cr, c - y0 - reach, y1);
        }
      else
        {
          cairo_move_to (cr, c + y0, y0);
          cairo_line_to (cr, c + y0 + reach, y1);
        }
    }
}

static void
hatch_level (cairo_t *cr,
             double   x0,
             double   y0,
             double   x1,
             double   y1,
             double   gap)
{
  for (double y = floor (y0 / gap) * gap + gap / 2; y <= y1; y += gap)
    {
      cairo_move_to (cr, x0, y);
      cairo_line_to (cr, x1, y);
    }
}

static void
hatch_dots (cairo_t *cr,
            double   x0,
            double   y0,
            double   x1,
            double   y1,
            double   gap)
{
  gboolean odd = FALSE;

  for (double y = floor (y0 / gap) * gap + gap / 2; y <= y1; y += gap / 2, odd = !odd)
    for (double x = floor (x0 / gap) * gap + (odd ? gap / 2 : 0); x <= x1; x += gap)
      {
        cairo_move_to (cr, x, y);
        cairo_line_to (cr, x, y);   /* a round cap makes the dot */
      }
}

/* Puts the pattern's lines over the box into the path. */
static void
hatch_path (cairo_t      *cr,
            SteadPattern  pattern,
            double        x0,
            double        y0,
            double        x1,
            double        y1,
            double        gap)
{
  if (pattern == STEAD_PATTERN_RISING || pattern == STEAD_PATTERN_CROSS)
    hatch_slanted (cr, x0, y0, x1, y1, gap, 1);
  if (pattern == STEAD_PATTERN_FALLING || pattern == STEAD_PATTERN_CROSS)
    hatch_slanted (cr, x0, y0, x1, y1, gap, -1);
  if (pattern == STEAD_PATTERN_LINES)
    hatch_level (cr, x0, y0, x1, y1, gap * 0.7);
  if (pattern == STEAD_PATTERN_DOTS)
    hatch_dots (cr, x0, y0, x1, y1, gap);
}

/* Strokes the pattern inside the current path with the source that is set; the path is kept. */
static void
hatch_current (cairo_t      *cr,
               SteadPattern  pattern,
               double        gap,
               double        line_width)
{
  cairo_path_t *path;
  double x0, y0, x1, y1;

  if (pattern == STEAD_PATTERN_SOLID)
    return;
  path = cairo_copy_path (cr);
  cairo_save (cr);
  cairo_clip (cr);
  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  if (x1 > x0 && y1 > y0)
    {
      hatch_path (cr, pattern, x0, y0, x1, y1, gap);
      cairo_set_dash (cr, NULL, 0, 0);
      cairo_set_line_cap (cr, pattern == STEAD_PATTERN_DOTS ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
      cairo_set_line_width (cr, pattern == STEAD_PATTERN_DOTS ? line_width * 2 : line_width);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
  cairo_new_path (cr);
  cairo_append_path (cr, path);
  cairo_path_destroy (path);
}

void
stead_fill_pattern (cairo_t              *cr,
                    const SteadDrawStyle *style,
                    SteadRole             role,
                    SteadPattern          pattern,
                    gboolean              outline)
{
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_fill_preserve (cr);
  stead_palette_set_source (cr, style->scheme, clear_role_on (style->scheme, role), 0.85);
  hatch_current (cr, pattern, style->font_size / 2, style->font_size / 14);
  if (outline)
    {
      stead_palette_set_source (cr, style->scheme, STEAD_ROLE_INK, 1);
      cairo_set_dash (cr, NULL, 0, 0);
      cairo_set_line_width (cr, style->font_size / 12);
      cairo_stroke_preserve (cr);
    }
  cairo_new_path (cr);
}

void
stead_fill_area (cairo_t              *cr,
                 const SteadDrawStyle *style,
                 SteadRole             role,
                 SteadPattern          pattern)
{
  stead_palette_set_source (cr, style->scheme, role, style->scheme == STEAD_SCHEME_PRINT ? 0.08 : 0.12);
  cairo_fill_preserve (cr);
  stead_palette_set_source (cr, style->scheme, role, style->scheme == STEAD_SCHEME_PRINT ? 0.55 : 0.30);
  hatch_current (cr, pattern, style->font_size / 12 * HATCH_GAP, style->font_size / 16);
  cairo_new_path (cr);
}

void
stead_stroke_line (cairo_t              *cr,
                   const SteadDrawStyle *style,
                   SteadRole             role,
                   SteadLine             line,
                   double                width)
{
  const double dashed[] = { width * 3.2, width * 2.2 };
  const double dotted[] = { 0, width * 2.6 };

  cairo_save (cr);
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, line == STEAD_LINE_DASHED ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
  if (line == STEAD_LINE_DASHED)
    cairo_set_dash (cr, dashed, G_N_ELEMENTS (dashed), 0);
  else if (line == STEAD_LINE_DOTTED)
    cairo_set_dash (cr, dotted, G_N_ELEMENTS (dotted), 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
cross_paint (cairo_t              *cr,
             const SteadDrawStyle *style,
             SteadRole             role,
             double                x,
             double                y,
             double                radius)
{
  double r = radius * 0.85;

  cairo_move_to (cr, x - r, y - r);
  cairo_line_to (cr, x + r, y + r);
  cairo_move_to (cr, x + r, y - r);
  cairo_line_to (cr, x - r, y + r);
  stead_stroke_line (cr, style, role, STEAD_LINE_SOLID, radius * 0.5);
}

void
stead_mark_paint (cairo_t              *cr,
                  const SteadDrawStyle *style,
                  SteadRole             role,
                  SteadMark             mark,
                  double                x,
                  double                y,
                  double                radius)
{
  cairo_new_path (cr);
  switch (mark)
    {
    case STEAD_MARK_NONE:
      return;
    case STEAD_MARK_CROSS:
      cross_paint (cr, style, role, x, y, radius);
      return;
    case STEAD_MARK_SQUARE:
      cairo_rectangle (cr, x - radius * 0.9, y - radius * 0.9, radius * 1.8, radius * 1.8);
      break;
    case STEAD_MARK_BAR:
      cairo_rectangle (cr, x - radius * 0.6, y - radius, radius * 1.2, radius * 2);
      break;
    case STEAD_MARK_DOT:
    case STEAD_MARK_RING:
    default:
      cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
      break;
    }
  stead_palette_set_source (cr, style->scheme, mark == STEAD_MARK_RING ? STEAD_ROLE_CARD : role, 1);
  cairo_fill_preserve (cr);
  stead_stroke_line (cr, style, mark == STEAD_MARK_RING ? role : STEAD_ROLE_INK, STEAD_LINE_SOLID,
                     MAX (0.8, radius * 0.28));
}

void
stead_rule_paint (cairo_t              *cr,
                  const SteadDrawStyle *style,
                  SteadRole             role,
                  double                x0,
                  double                x1,
                  double                y)
{
  double sharp = style->scheme == STEAD_SCHEME_PRINT ? y : floor (y) + 0.5;

  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, style->scheme == STEAD_SCHEME_PRINT ? 0.5 : 1);
  cairo_new_path (cr);
  cairo_move_to (cr, x0, sharp);
  cairo_line_to (cr, x1, sharp);
  cairo_stroke (cr);
}

/* stead-draw.c - what every drawing shares: round steps of an axis, patterns, lines, marks.
 *
 * Everything is vector: a hatch is lines cut to the shape, so that paper stays sharp.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-draw.h"

#define HATCH_GAP 9.0      /* between hatch lines, for text of 12; each line costs time in a drag */
#define PRINT_HATCH_GAP 7.0
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

/* The hatch lines of one slant are those where across_x * x + across_y * y is a
 * multiple of the gap.  They are cut to the path by arithmetic: a clip of the same
 * shape is several times slower, and this runs at each step of a drag. */
typedef struct
{
  double across_x, across_y;
} Slant;

static const Slant rising = { 1, 1 }, falling = { -1, 1 }, level = { 0, 1 };

#define MAX_CROSSINGS 256

typedef struct
{
  double at[MAX_CROSSINGS];   /* x of each crossing with one hatch line, rising */
  int    n;
} Crossings;

static void
crossings_add (Crossings *self,
               double     x)
{
  int i = self->n;

  if (self->n == MAX_CROSSINGS)
    return;
  for (self->n++; i > 0 && self->at[i - 1] > x; i--)
    self->at[i] = self->at[i - 1];
  self->at[i] = x;
}

static void
crossings_add_edge (Crossings   *self,
                    const Slant *slant,
                    double       c,
                    double       x0,
                    double       y0,
                    double       x1,
                    double       y1)
{
  double over0 = slant->across_x * x0 + slant->across_y * y0 - c;
  double over1 = slant->across_x * x1 + slant->across_y * y1 - c;

  if ((over0 < 0) != (over1 < 0))
    crossings_add (self, x0 + (x1 - x0) * over0 / (over0 - over1));
}

/* Walks the edges of a flat path; each part of it is closed, as filling would. */
static void
crossings_find (Crossings          *self,
                const cairo_path_t *path,
                const Slant        *slant,
                double              c)
{
  double x = 0, y = 0, start_x = 0, start_y = 0;

  self->n = 0;
  for (int i = 0; i < path->num_data; i += path->data[i].header.length)
    {
      const cairo_path_data_t *data = &path->data[i];
      gboolean line = data->header.type == CAIRO_PATH_LINE_TO;
      double to_x = line ? data[1].point.x : start_x, to_y = line ? data[1].point.y : start_y;

      crossings_add_edge (self, slant, c, x, y, to_x, to_y);
      x = to_x;
      y = to_y;
      if (data->header.type == CAIRO_PATH_MOVE_TO)
        {
          x = start_x = data[1].point.x;
          y = start_y = data[1].point.y;
        }
    }
  crossings_add_edge (self, slant, c, x, y, start_x, start_y);
}

/* Adds the lines of one slant, cut to @path, to the context's path. */
static void
hatch_lines (cairo_t            *cr,
             const cairo_path_t *path,
             const Slant        *slant,
             const double        extents[4],
             double              gap,
             double              line_width)
{
  double low = INFINITY, high = -INFINITY;
  Crossings crossings;

  for (int corner = 0; corner < 4; corner++)
    {
      double c = slant->across_x * extents[corner & 1 ? 2 : 0] + slant->across_y * extents[corner & 2 ? 3 : 1];

      low = MIN (low, c);
      high = MAX (high, c);
    }
  /* Multiples of the gap, so that lines keep their place on the sheet while the area moves under a drag. */
  for (double c = ceil ((low + line_width) / gap) * gap; c <= high - line_width; c += gap)
    {
      crossings_find (&crossings, path, slant, c);
      for (int i = 0; i + 1 < crossings.n; i += 2)
        {
          /* Half a line short, so that no corner of a slanted end looks out of the shape. */
          double x0 = crossings.at[i] + line_width / 2, x1 = crossings.at[i + 1] - line_width / 2;

          if (x0 >= x1)
            continue;
          cairo_move_to (cr, x0, (c - slant->across_x * x0) / slant->across_y);
          cairo_line_to (cr, x1, (c - slant->across_x * x1) / slant->across_y);
        }
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

/* Dots stand in keys and bars only: a clip is fast enough there. */
static void
hatch_with_dots (cairo_t *cr,
                 double   gap,
                 double   line_width)
{
  double x0, y0, x1, y1;

  cairo_save (cr);
  cairo_clip (cr);
  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  if (x1 > x0 && y1 > y0)
    hatch_dots (cr, x0, y0, x1, y1, gap);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, line_width * 2);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Strokes the pattern inside the current path with the source that is set; the path is kept. */
static void
hatch_current (cairo_t      *cr,
               SteadPattern  pattern,
               double        gap,
               double        line_width)
{
  double extents[4];
  cairo_path_t *path;

  if (pattern == STEAD_PATTERN_SOLID)
    return;
  path = cairo_copy_path_flat (cr);
  cairo_path_extents (cr, &extents[0], &extents[1], &extents[2], &extents[3]);
  cairo_set_dash (cr, NULL, 0, 0);
  if (pattern == STEAD_PATTERN_DOTS)
    hatch_with_dots (cr, gap, line_width);
  cairo_new_path (cr);
  if (pattern == STEAD_PATTERN_RISING || pattern == STEAD_PATTERN_CROSS)
    hatch_lines (cr, path, &rising, extents, gap, line_width);
  if (pattern == STEAD_PATTERN_FALLING || pattern == STEAD_PATTERN_CROSS)
    hatch_lines (cr, path, &falling, extents, gap, line_width);
  if (pattern == STEAD_PATTERN_LINES)
    hatch_lines (cr, path, &level, extents, gap * 0.6, line_width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, line_width);
  cairo_stroke (cr);
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
  hatch_current (cr, pattern,
                 style->font_size / 12 * (style->scheme == STEAD_SCHEME_PRINT ? PRINT_HATCH_GAP : HATCH_GAP),
                 style->font_size / 16);
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

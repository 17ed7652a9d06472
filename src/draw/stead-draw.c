/* stead-draw.c - what every drawing shares: round steps of an axis, lines, marks. */
#include "config.h"

#include <math.h>

#include "draw/stead-draw.h"

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

void
stead_stroke_line (cairo_t              *cr,
                   const SteadDrawStyle *style,
                   SteadRole             role,
                   SteadLine             line,
                   double                width)
{
  const double dashed[] = { width * 3.2, width * 2.2 };
  /* Square dots: round ones look the same at this size and take seven times as long. */
  const double dotted[] = { width, width * 1.6 };

  cairo_save (cr);
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_set_line_width (cr, width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, line == STEAD_LINE_SOLID ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
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
    case STEAD_MARK_HATCHED_BAR:
      cairo_rectangle (cr, x - radius * 1.1, y - radius, radius * 2.2, radius * 2);
      stead_fill_pattern (cr, style, STEAD_ROLE_CARD, STEAD_PATTERN_FALLING, TRUE);
      return;
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

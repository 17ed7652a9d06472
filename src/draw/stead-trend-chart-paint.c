/* stead-trend-chart-paint.c - paints the trend chart that was laid out.
 *
 * Outside the published limits the ground is hatched, where harm begins it is
 * crossed.  A reading within the limits is a dot, one to be watched a ring, one that
 * calls for action a square; none of it is said by color alone.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-trend-chart-private.h"

/* The part of the plot between two values; FALSE if there is none. */
static gboolean
band_path (cairo_t                *cr,
           const SteadTrendLayout *layout,
           double                  from,
           double                  to)
{
  double low = fmax (from, layout->low);
  double high = fmin (to, layout->high);

  if (!(low < high))
    return FALSE;
  cairo_new_path (cr);
  cairo_rectangle (cr, layout->plot.x, stead_trend_chart_y (layout, high), layout->plot.width,
                   stead_trend_chart_y (layout, low) - stead_trend_chart_y (layout, high));
  return TRUE;
}

/* What is to be watched lies between the end of the range and the end at which harm begins. */
static void
paint_zones (cairo_t                  *cr,
             const SteadReadingSeries *series,
             const SteadDrawStyle     *style,
             const SteadTrendLayout   *layout)
{
  double above = isnan (series->act_above) ? INFINITY : series->act_above;
  double below = isnan (series->act_below) ? -INFINITY : series->act_below;

  if (!isnan (series->max) && band_path (cr, layout, series->max, above))
    stead_fill_area (cr, style, STEAD_ROLE_EGG, STEAD_PATTERN_FALLING);
  if (!isnan (series->min) && band_path (cr, layout, below, series->min))
    stead_fill_area (cr, style, STEAD_ROLE_EGG, STEAD_PATTERN_FALLING);
  if (band_path (cr, layout, above, INFINITY))
    stead_fill_area (cr, style, STEAD_ROLE_TOMATO, STEAD_PATTERN_CROSS);
  if (band_path (cr, layout, -INFINITY, below))
    stead_fill_area (cr, style, STEAD_ROLE_TOMATO, STEAD_PATTERN_CROSS);
}

static void
paint_end (cairo_t                *cr,
           const SteadDrawStyle   *style,
           const SteadTrendLayout *layout,
           double                  value,
           SteadRole               role,
           SteadLine               line)
{
  double y;

  if (!(value >= layout->low && value <= layout->high))
    return;
  y = stead_trend_chart_y (layout, value);
  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, y);
  cairo_line_to (cr, layout->plot.x + layout->plot.width, y);
  stead_stroke_line (cr, style, role, line, MAX (1, style->font_size / 9));
}

static void
paint_ends (cairo_t                  *cr,
            const SteadReadingSeries *series,
            const SteadDrawStyle     *style,
            const SteadTrendLayout   *layout)
{
  paint_end (cr, style, layout, series->max, STEAD_ROLE_INK, STEAD_LINE_DASHED);
  paint_end (cr, style, layout, series->min, STEAD_ROLE_INK, STEAD_LINE_DASHED);
  paint_end (cr, style, layout, series->act_above, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID);
  paint_end (cr, style, layout, series->act_below, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID);
}

/* One edge of the band of 80 %, out or back. */
static void
add_edge (cairo_t                  *cr,
          const SteadReadingSeries *series,
          const SteadTrendLayout   *layout,
          double                    side,
          int                       from,
          int                       to)
{
  int step = from < to ? 1 : -1;

  for (int ahead = from; ahead != to + step; ahead += step)
    {
      double value = stead_trend_at (series->trend, ahead)
                     + side * STEAD_TREND_BAND * stead_trend_sd (series->trend, ahead);

      cairo_line_to (cr, stead_trend_chart_x (layout, series->trend_day + ahead),
                     stead_trend_chart_y (layout, MAX (0, value)));
    }
}

static void
paint_ahead (cairo_t                  *cr,
             const SteadReadingSeries *series,
             const SteadDrawStyle     *style,
             const SteadTrendLayout   *layout)
{
  const SteadBox *plot = &layout->plot;

  if (series->trend == NULL || series->ahead_days < 1)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, plot->x, plot->y, plot->width, plot->height);
  cairo_clip (cr);
  cairo_new_path (cr);
  add_edge (cr, series, layout, 1, 0, series->ahead_days);
  add_edge (cr, series, layout, -1, series->ahead_days, 0);
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_FISH, STEAD_PATTERN_LINES);
  cairo_new_path (cr);
  add_edge (cr, series, layout, 0, 0, series->ahead_days);
  stead_stroke_line (cr, style, STEAD_ROLE_FISH, STEAD_LINE_DOTTED, MAX (1.2, style->font_size / 7));
  cairo_restore (cr);
}

/* Readings that lie too far apart are not joined: nobody knows what was between. */
static void
paint_line (cairo_t                  *cr,
            const SteadReadingSeries *series,
            const SteadDrawStyle     *style,
            const SteadTrendLayout   *layout)
{
  cairo_new_path (cr);
  for (gsize i = 0; i < series->n_points; i++)
    {
      double x, y;

      stead_trend_chart_point (layout, &series->points[i], &x, &y);
      if (i == 0 || series->points[i].day - series->points[i - 1].day > series->gap_days)
        cairo_move_to (cr, x, y);
      else
        cairo_line_to (cr, x, y);
    }
  stead_stroke_line (cr, style, STEAD_ROLE_FISH, STEAD_LINE_SOLID, MAX (1.2, style->font_size / 8));
}

static void
paint_point (cairo_t                 *cr,
             const SteadDrawStyle    *style,
             const SteadTrendLayout  *layout,
             const SteadReadingPoint *point)
{
  double x, y;

  stead_trend_chart_point (layout, point, &x, &y);
  if (point->verdict == STEAD_WATER_ACT)
    stead_mark_paint (cr, style, STEAD_ROLE_TOMATO, STEAD_MARK_SQUARE, x, y, layout->point_radius * 1.15);
  else if (point->verdict == STEAD_WATER_WATCH)
    stead_mark_paint (cr, style, STEAD_ROLE_TOMATO, STEAD_MARK_RING, x, y, layout->point_radius);
  else
    stead_mark_paint (cr, style, STEAD_ROLE_FISH, STEAD_MARK_DOT, x, y, layout->point_radius);
}

static void
paint_points (cairo_t                  *cr,
              const SteadReadingSeries *series,
              const SteadDrawStyle     *style,
              const SteadTrendLayout   *layout,
              int                       marked)
{
  for (gsize i = 0; i < series->n_points; i++)
    {
      double x, y;

      paint_point (cr, style, layout, &series->points[i]);
      if ((int) i != marked)
        continue;
      stead_trend_chart_point (layout, &series->points[i], &x, &y);
      cairo_new_path (cr);
      cairo_arc (cr, x, y, layout->point_radius + layout->font_size * 0.32, 0, 2 * G_PI);
      stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (1.5, layout->font_size / 8));
    }
}

static void
paint_today (cairo_t                *cr,
             const SteadTrendWords  *words,
             const SteadDrawStyle   *style,
             const SteadTrendLayout *layout)
{
  double x = style->scheme == STEAD_SCHEME_PRINT ? layout->today_x : floor (layout->today_x) + 0.5;

  if (words->today == NULL)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y - style->font_size * 0.15);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.75, style->font_size / 12));
  stead_text_paint (cr, style, STEAD_ROLE_INK, words->today, 1, TRUE, STEAD_ALIGN_LEFT,
                    layout->today_box.x, layout->today_box.y + layout->today_box.height / 2);
}

/* A small triangle before a name: what it names lies that way. */
static void
paint_arrow (cairo_t              *cr,
             const SteadDrawStyle *style,
             SteadRole             role,
             double                x,
             double                y,
             int                   way)
{
  double r = style->font_size * 0.3;

  cairo_new_path (cr);
  cairo_move_to (cr, x - r, y + way * r * 0.8);
  cairo_line_to (cr, x + r, y + way * r * 0.8);
  cairo_line_to (cr, x, y - way * r * 0.8);
  cairo_close_path (cr);
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_fill (cr);
}

static void
paint_names (cairo_t                *cr,
             const SteadDrawStyle   *style,
             const SteadTrendLayout *layout)
{
  if (layout->narrow)
    {
      stead_keys_paint (cr, style, layout->keys, layout->n_keys);
      return;
    }
  for (int i = 0; i < layout->n_keys; i++)
    {
      const SteadKey *key = &layout->keys[i];
      SteadRole role = key->role == STEAD_ROLE_TOMATO ? STEAD_ROLE_TOMATO : STEAD_ROLE_SOFT;
      double y = key->box.y + key->box.height / 2;

      if (layout->arrows[i] != 0)
        paint_arrow (cr, style, role, key->box.x - style->font_size * 0.6, y, layout->arrows[i]);
      stead_text_paint_block (cr, style, role, key->text, 1, FALSE, STEAD_ALIGN_LEFT, layout->right_labels_width,
                              key->box.x, y);
    }
}

void
stead_trend_chart_paint (cairo_t                  *cr,
                         const SteadReadingSeries *series,
                         const SteadTrendWords    *words,
                         const SteadDrawStyle     *style,
                         const SteadTrendLayout   *layout,
                         int                       marked)
{
  SteadDrawStyle fit;
  SteadAxis y_axis;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  y_axis = stead_trend_chart_y_axis (layout);
  cairo_save (cr);
  paint_zones (cr, series, &fit, layout);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, STEAD_TREND_TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &layout->days, &layout->plot, STEAD_TREND_TICK_GAP);
  if (words->unit != NULL)
    stead_text_paint (cr, &fit, STEAD_ROLE_SOFT, words->unit, 1, FALSE, STEAD_ALIGN_LEFT,
                      layout->unit_box.x, layout->unit_box.y + layout->unit_box.height / 2);
  paint_ends (cr, series, &fit, layout);
  paint_ahead (cr, series, &fit, layout);
  paint_today (cr, words, &fit, layout);
  paint_line (cr, series, &fit, layout);
  paint_points (cr, series, &fit, layout, marked);
  paint_names (cr, &fit, layout);
  cairo_restore (cr);
}

/* stead-path-chart.c - lines over a plane of two numbers, with marks, points and a band. */
#include "config.h"

#include "draw/stead-path-chart.h"

#include <math.h>

#include "draw/stead-labels.h"

#define NARROW_EM 40.0
#define RIGHT_SHARE 0.22
#define TICK_GAP 6.0

static SteadAxis
x_axis (const SteadPathSeries *series,
        const SteadPathLayout *layout)
{
  return (SteadAxis) { layout->x_low, layout->x_high, layout->x_ticks,
                       series->x_money ? stead_axis_text_money : stead_axis_text_number };
}

static SteadAxis
y_axis (const SteadPathSeries *series,
        const SteadPathLayout *layout)
{
  return (SteadAxis) { layout->y_low, layout->y_high, layout->y_ticks,
                       series->y_money ? stead_axis_text_money : stead_axis_text_number };
}

double
stead_path_chart_x (const SteadPathLayout *layout,
                    double                 value)
{
  return layout->plot.x + (value - layout->x_low) / (layout->x_high - layout->x_low) * layout->plot.width;
}

double
stead_path_chart_y (const SteadPathLayout *layout,
                    double                 value)
{
  return layout->plot.y + layout->plot.height
         - (value - layout->y_low) / (layout->y_high - layout->y_low) * layout->plot.height;
}

double
stead_path_chart_at (const SteadPathLayout *layout,
                     double                 x)
{
  return layout->x_low + (x - layout->plot.x) / layout->plot.width * (layout->x_high - layout->x_low);
}

/* --- layout -------------------------------------------------------------------------- */

static void
take_in (SteadPathLayout *out,
         double           x,
         double           y)
{
  if (!isfinite (x) || !isfinite (y))
    return;
  out->x_low = MIN (out->x_low, x);
  out->x_high = MAX (out->x_high, x);
  out->y_low = MIN (out->y_low, y);
  out->y_high = MAX (out->y_high, y);
}

static void
take_points (SteadPathLayout      *out,
             const SteadPathPoint *points,
             int                   n)
{
  for (int i = 0; points != NULL && i < n; i++)
    take_in (out, points[i].x, points[i].y);
}

static void
find_range (const SteadPathSeries *series,
            SteadPathLayout       *out)
{
  double span;

  out->x_low = out->y_low = INFINITY;
  out->x_high = out->y_high = -INFINITY;
  for (int i = 0; i < series->n_paths; i++)
    take_points (out, series->paths[i].points, series->paths[i].n);
  take_points (out, series->band_low, series->n_band);
  take_points (out, series->band_high, series->n_band);
  take_points (out, series->dots, series->n_dots);
  for (int i = 0; i < series->n_marks; i++)
    take_in (out, series->marks[i].x, series->marks[i].y);
  if (!isfinite (out->x_low))
    out->x_low = out->x_high = out->y_low = out->y_high = 0;
  if (series->zero || out->y_low > 0)
    out->y_low = MIN (out->y_low, 0);
  if (series->zero)
    out->y_high = MAX (out->y_high, 0);
  span = MAX (out->y_high - out->y_low, 1);
  out->y_high += span * 0.08;
  if (out->y_low < 0)
    out->y_low -= span * 0.05;
  if (out->x_high - out->x_low < 1)
    out->x_high = out->x_low + 1;
}

static void
lay_keys (const SteadPathSeries *series,
          const SteadDrawStyle  *style,
          SteadPathLayout       *out)
{
  for (int i = 0; i < series->n_paths; i++)
    out->keys[i] = (SteadKey) { .text = series->paths[i].name, .role = series->paths[i].role,
                                .line = series->paths[i].line, .line_width = MAX (1.5, style->font_size / 6) };
}

static void
lay_plot (cairo_t               *cr,
          const SteadPathSeries *series,
          const SteadDrawStyle  *style,
          double                 width,
          double                 height,
          SteadPathLayout       *out)
{
  double em = style->font_size, top = 1, w, line, last;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  if (out->narrow)
    top += stead_keys_layout (cr, style, out->keys, series->n_paths, 2, top, width - 4) + em * 0.4;
  else
    {
      out->right_width = ceil (stead_keys_measure_right (cr, style, out->keys, series->n_paths, width * RIGHT_SHARE)) + 1;
      out->right_x = width - out->right_width;
    }
  if (series->y_name != NULL)
    top += line + em * 0.3;
  out->plot.y = top + line * 0.5;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - 2 * line - em * 0.4, 1);
  out->y_ticks = stead_ticks (out->y_low, out->y_high, (int) CLAMP (out->plot.height / (line * 2.2), 2, 7), FALSE);
  axis = y_axis (series, out);
  stead_axis_measure (cr, style, &axis, &w, &line);
  out->plot.x = ceil (w) + TICK_GAP + 2;
  out->plot.width = MAX (width - out->plot.x - (out->narrow ? em * 2.5 : out->right_width + em * 1.2), 1);
  out->x_ticks = stead_ticks (out->x_low, out->x_high, (int) CLAMP (out->plot.width / (em * 6), 2, 8), FALSE);
  axis = x_axis (series, out);
  stead_axis_measure (cr, style, &axis, &last, &line);
  out->x_ticks = stead_ticks (out->x_low, out->x_high, (int) CLAMP (out->plot.width / (last * 1.7), 2, 8), FALSE);
}

static void
lay_names (cairo_t               *cr,
           const SteadPathSeries *series,
           const SteadDrawStyle  *style,
           SteadPathLayout       *out)
{
  double want[STEAD_MAX_PATHS];

  for (int i = 0; i < series->n_paths; i++)
    want[i] = series->paths[i].n > 0
              ? stead_path_chart_y (out, series->paths[i].points[series->paths[i].n - 1].y) : out->plot.y;
  stead_keys_layout_right (cr, style, out->keys, want, series->n_paths, out->right_x, out->right_width,
                           out->plot.y - style->font_size * 0.6, out->plot.y + out->plot.height + style->font_size);
}

static void
add_obstacles (const SteadPathSeries *series,
               const SteadPathLayout *layout,
               SteadObstacles        *obstacles)
{
  obstacles->inside = layout->plot;
  for (int i = 0; i < series->n_marks; i++)
    stead_obstacles_add_box (obstacles, (SteadBox) { stead_path_chart_x (layout, series->marks[i].x) - 8,
                                                     stead_path_chart_y (layout, series->marks[i].y) - 8, 16, 16 });
  for (int i = 0; i < series->n_paths; i++)
    for (int j = 1; j < series->paths[i].n; j++)
      {
        const SteadPathPoint *a = &series->paths[i].points[j - 1], *b = &series->paths[i].points[j];

        stead_obstacles_add_stroke (obstacles, stead_path_chart_x (layout, a->x), stead_path_chart_y (layout, a->y),
                                    stead_path_chart_x (layout, b->x), stead_path_chart_y (layout, b->y));
      }
}

/* The bold mark is placed first: it is what the chart is looked at for. */
static void
lay_marks (cairo_t               *cr,
           const SteadPathSeries *series,
           const SteadDrawStyle  *style,
           SteadPathLayout       *out)
{
  SteadObstacles obstacles = { 0 };

  add_obstacles (series, out, &obstacles);
  for (int pass = 0; pass < 2; pass++)
    for (int i = 0; i < series->n_marks; i++)
      {
        const SteadPathMark *mark = &series->marks[i];
        double w, h;

        if (mark->text == NULL || mark->bold != (pass == 0))
          continue;
        stead_text_measure (cr, style, mark->text, 1, mark->bold, &w, &h);
        if (mark->bold)
          w += style->font_size * 1.2, h += style->font_size * 0.5;
        stead_labels_place (&obstacles, stead_path_chart_x (out, mark->x), stead_path_chart_y (out, mark->y), w, h,
                            style->font_size * 0.9, &out->marks[i]);
        stead_obstacles_add_box (&obstacles, out->marks[i]);
      }
}

void
stead_path_chart_layout (cairo_t               *cr,
                         const SteadPathSeries *series,
                         const SteadDrawStyle  *style,
                         double                 width,
                         double                 height,
                         SteadPathLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && out != NULL);
  g_return_if_fail (series->n_paths <= STEAD_MAX_PATHS && series->n_marks <= STEAD_MAX_PATH_MARKS);

  *out = (SteadPathLayout) { 0 };
  fit = stead_draw_style_fit (style, width, height);
  out->font_size = fit.font_size;
  out->narrow = width < fit.font_size * NARROW_EM;
  find_range (series, out);
  lay_keys (series, &fit, out);
  lay_plot (cr, series, &fit, width, height, out);
  if (!out->narrow)
    lay_names (cr, series, &fit, out);
  lay_marks (cr, series, &fit, out);
}

/* --- paint ------------------------------------------------------------------------------ */

static void
line_to (cairo_t               *cr,
         const SteadPathLayout *layout,
         const SteadPathPoint  *point)
{
  cairo_line_to (cr, stead_path_chart_x (layout, point->x), stead_path_chart_y (layout, point->y));
}

static void
paint_band (cairo_t               *cr,
            const SteadPathSeries *series,
            const SteadDrawStyle  *style,
            const SteadPathLayout *layout)
{
  if (series->n_band < 2)
    return;
  cairo_new_path (cr);
  for (int i = 0; i < series->n_band; i++)
    line_to (cr, layout, &series->band_low[i]);
  for (int i = series->n_band - 1; i >= 0; i--)
    line_to (cr, layout, &series->band_high[i]);
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_FISH, STEAD_PATTERN_LINES);
}

/* What lies under zero is a loss. */
static void
paint_loss (cairo_t               *cr,
            const SteadPathSeries *series,
            const SteadDrawStyle  *style,
            const SteadPathLayout *layout)
{
  double zero = stead_path_chart_y (layout, 0);

  if (!series->zero || layout->y_low >= 0)
    return;
  cairo_new_path (cr);
  cairo_rectangle (cr, layout->plot.x, zero, layout->plot.width, layout->plot.y + layout->plot.height - zero);
  stead_fill_area (cr, style, STEAD_ROLE_TOMATO, STEAD_PATTERN_FALLING);
}

static void
paint_drop (cairo_t               *cr,
            const SteadDrawStyle  *style,
            const SteadPathLayout *layout,
            const SteadPathMark   *mark)
{
  double x = stead_path_chart_x (layout, mark->x);

  if (!mark->drop)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, stead_path_chart_y (layout, mark->y));
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_DOTTED, 1.5);
}

static void
paint_words (cairo_t               *cr,
             const SteadDrawStyle  *style,
             const SteadPathMark   *mark,
             const SteadBox        *box)
{
  if (box->width <= 0)
    return;
  if (mark->bold)
    {
      cairo_new_path (cr);
      cairo_rectangle (cr, box->x, box->y, box->width, box->height);
      stead_palette_set_source (cr, style->scheme, STEAD_ROLE_INK, 1);
      cairo_fill (cr);
    }
  else
    {
      stead_ground_clear (cr, style, box);
    }
  stead_text_paint (cr, style, mark->bold ? STEAD_ROLE_CARD : STEAD_ROLE_INK, mark->text, 1, mark->bold,
                    STEAD_ALIGN_CENTER, box->x + box->width / 2, box->y + box->height / 2);
}

/* The words take away what is under them, so the points come last. */
static void
paint_marks (cairo_t               *cr,
             const SteadPathSeries *series,
             const SteadDrawStyle  *style,
             const SteadPathLayout *layout)
{
  for (int i = 0; i < series->n_marks; i++)
    paint_drop (cr, style, layout, &series->marks[i]);
  for (int i = 0; i < series->n_marks; i++)
    paint_words (cr, style, &series->marks[i], &layout->marks[i]);
  for (int i = 0; i < series->n_marks; i++)
    {
      const SteadPathMark *mark = &series->marks[i];

      stead_mark_paint (cr, style, STEAD_ROLE_INK, mark->bold ? STEAD_MARK_RING : STEAD_MARK_DOT,
                        stead_path_chart_x (layout, mark->x), stead_path_chart_y (layout, mark->y),
                        style->font_size * (mark->bold ? 0.45 : 0.3));
    }
}

static void
paint_axes (cairo_t               *cr,
            const SteadPathSeries *series,
            const SteadDrawStyle  *style,
            const SteadPathLayout *layout)
{
  SteadAxis across = x_axis (series, layout), up = y_axis (series, layout);
  double w, h;

  stead_axis_paint_left (cr, style, &up, &layout->plot, TICK_GAP);
  stead_axis_paint_bottom (cr, style, &across, &layout->plot, TICK_GAP);
  stead_text_measure (cr, style, "0", 1, FALSE, &w, &h);
  stead_text_paint (cr, style, STEAD_ROLE_SOFT, series->x_name, 1, FALSE, STEAD_ALIGN_CENTER,
                    layout->plot.x + layout->plot.width / 2,
                    layout->plot.y + layout->plot.height + TICK_GAP + h * 1.5 + 2);
  if (series->y_name != NULL)
    stead_text_paint (cr, style, STEAD_ROLE_SOFT, series->y_name, 1, FALSE, STEAD_ALIGN_LEFT, 2,
                      layout->plot.y - h - style->font_size * 0.3);
}

void
stead_path_chart_paint (cairo_t               *cr,
                        const SteadPathSeries *series,
                        const SteadDrawStyle  *style,
                        const SteadPathLayout *layout)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  cairo_save (cr);
  paint_loss (cr, series, &fit, layout);
  paint_band (cr, series, &fit, layout);
  paint_axes (cr, series, &fit, layout);
  for (int i = series->n_paths - 1; i >= 0; i--)
    {
      cairo_new_path (cr);
      for (int j = 0; j < series->paths[i].n; j++)
        line_to (cr, layout, &series->paths[i].points[j]);
      stead_stroke_line (cr, &fit, series->paths[i].role, series->paths[i].line, MAX (1.5, fit.font_size / 6));
    }
  for (int i = 0; i < series->n_dots; i++)
    stead_mark_paint (cr, &fit, STEAD_ROLE_INK, STEAD_MARK_DOT, stead_path_chart_x (layout, series->dots[i].x),
                      stead_path_chart_y (layout, series->dots[i].y), fit.font_size * 0.3);
  paint_marks (cr, series, &fit, layout);
  if (layout->narrow)
    stead_keys_paint (cr, &fit, layout->keys, series->n_paths);
  else
    stead_keys_paint_right (cr, &fit, layout->keys, series->n_paths, layout->right_width);
  cairo_restore (cr);
}

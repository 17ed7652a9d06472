/* stead-score-chart.c - scores of practices over time, a line for each part and person. */
#include "config.h"

#include <math.h>

#include "draw/stead-day-axis.h"
#include "draw/stead-score-chart.h"

#define TICK_GAP 7.0
#define RIGHT_SHARE 0.34
#define NARROW_EMS 34    /* below this width the names stand over the plot */

static const SteadRole roles[STEAD_SCORE_MOST_LINES] = {
  STEAD_ROLE_WATER, STEAD_ROLE_TOMATO, STEAD_ROLE_SAUCE, STEAD_ROLE_FISH, STEAD_ROLE_INK, STEAD_ROLE_CROP,
};
static const SteadMark marks[STEAD_SCORE_MOST_LINES] = {
  STEAD_MARK_DOT, STEAD_MARK_SQUARE, STEAD_MARK_RING, STEAD_MARK_CROSS, STEAD_MARK_DOT, STEAD_MARK_SQUARE,
};

void
stead_score_chart_point (const SteadScoreLayout *layout,
                         const SteadScorePoint  *point,
                         double                 *x,
                         double                 *y)
{
  *x = stead_day_axis_x (&layout->days, &layout->plot, point->day);
  *y = stead_axis_y (&layout->shares, &layout->plot, point->frac);
}

/* --- layout ----------------------------------------------------------------------------- */

static void
find_days (const SteadScoreSeries *series,
           SteadDay               *first,
           SteadDay               *last)
{
  *first = series->lines[0].points[0].day;
  *last = series->event != STEAD_DAY_NONE ? series->event : *first;
  for (int i = 0; i < series->n; i++)
    {
      const SteadScoreLine *line = &series->lines[i];

      *first = MIN (*first, line->points[0].day);
      *last = MAX (*last, line->points[line->n - 1].day);
    }
  *last = MAX (*last, *first + 7);
}

/* Those over the plot take its room; those beside it that of the right edge. */
static void
lay_names (cairo_t              *cr,
           const SteadDrawStyle *style,
           int                   n,
           double                width,
           SteadScoreLayout     *out)
{
  if (out->narrow)
    out->plot.y += stead_keys_layout (cr, style, out->keys, n, 1, out->plot.y, width - 2) + 4;
  else
    out->names_width = stead_keys_measure_right (cr, style, out->keys, n, width * RIGHT_SHARE);
}

static void
lay_plot (cairo_t                *cr,
          const SteadScoreSeries *series,
          const SteadDrawStyle   *style,
          double                  width,
          double                  height,
          SteadScoreLayout       *out)
{
  double w, line, right = style->font_size * 2.4;
  SteadDay first, last;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  out->unit_box = (SteadBox) { 1, out->plot.y, 0, line };
  stead_text_measure (cr, style, series->unit, 1, FALSE, &out->unit_box.width, &line);
  out->plot.y += line * 1.7;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - line - 3, 8);
  out->shares = (SteadAxis) { 0, 1, { 0, 0.25, 1, 5 }, stead_axis_text_hundred };
  if (out->plot.height < line * 7)
    out->shares.ticks = (SteadTicks) { 0, 0.5, 1, 3 };
  stead_axis_measure (cr, style, &out->shares, &w, &line);
  out->plot.x = ceil (w) + TICK_GAP + 2;
  if (!out->narrow)
    right = MAX (right, out->names_width + style->font_size * 1.4);
  out->plot.width = MAX (width - out->plot.x - right, 8);
  find_days (series, &first, &last);
  out->days = stead_day_axis (cr, style, first, last, out->plot.width);
}

/* At the head of its line, where the unit leaves room. */
static void
lay_event (cairo_t                *cr,
           const SteadScoreSeries *series,
           const SteadDrawStyle   *style,
           double                  width,
           SteadScoreLayout       *out)
{
  double w, h, x;

  if (series->event == STEAD_DAY_NONE || series->event_name == NULL
      || series->event < out->days.low || series->event > out->days.high)
    return;
  stead_text_measure (cr, style, series->event_name, 1, FALSE, &w, &h);
  x = stead_day_axis_x (&out->days, &out->plot, series->event);
  x = MIN (x - w / 2, width - w - 1);
  if (x > out->unit_box.x + out->unit_box.width + style->font_size)
    out->event_box = (SteadBox) { x, out->unit_box.y, w, h };
}

void
stead_score_chart_layout (cairo_t                *cr,
                          const SteadScoreSeries *series,
                          const SteadDrawStyle   *style,
                          double                  width,
                          double                  height,
                          SteadScoreLayout       *out)
{
  SteadDrawStyle fit;
  double want[STEAD_SCORE_MOST_LINES];

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && out != NULL);
  g_return_if_fail (series->n >= 1 && series->n <= STEAD_SCORE_MOST_LINES);
  fit = stead_draw_style_fit (style, width, height * 1.5);
  *out = (SteadScoreLayout) { .font_size = fit.font_size, .narrow = width < NARROW_EMS * fit.font_size,
                              .plot = { 0, 1, 0, 0 } };
  for (int i = 0; i < series->n; i++)
    out->keys[i] = (SteadKey) { series->lines[i].name, roles[i], STEAD_LINE_SOLID, marks[i],
                                MAX (1, fit.font_size / 9), FALSE, FALSE, { 0 } };
  lay_names (cr, &fit, series->n, width, out);
  lay_plot (cr, series, &fit, width, height, out);
  lay_event (cr, series, &fit, width, out);
  if (out->narrow)
    return;
  for (int i = 0; i < series->n; i++)
    want[i] = stead_axis_y (&out->shares, &out->plot, series->lines[i].points[series->lines[i].n - 1].frac);
  stead_keys_layout_right (cr, &fit, out->keys, want, series->n, width - out->names_width - 1, out->names_width, 0, height);
}

/* --- paint ------------------------------------------------------------------------------ */

static void
paint_event (cairo_t                *cr,
             const SteadScoreSeries *series,
             const SteadDrawStyle   *style,
             const SteadScoreLayout *layout)
{
  const SteadBox *box = &layout->event_box;
  double x;

  if (series->event == STEAD_DAY_NONE || series->event < layout->days.low || series->event > layout->days.high)
    return;
  x = stead_day_axis_x (&layout->days, &layout->plot, series->event);
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_DASHED, 1);
  if (box->width > 0)
    stead_text_paint (cr, style, STEAD_ROLE_SOFT, series->event_name, 1, FALSE, STEAD_ALIGN_LEFT, box->x,
                      box->y + box->height / 2);
}

static void
paint_line (cairo_t                *cr,
            const SteadScoreLine   *line,
            const SteadKey         *key,
            const SteadDrawStyle   *style,
            const SteadScoreLayout *layout)
{
  double x, y;

  cairo_new_path (cr);
  for (gsize i = 0; i < line->n; i++)
    {
      stead_score_chart_point (layout, &line->points[i], &x, &y);
      cairo_line_to (cr, x, y);
    }
  stead_stroke_line (cr, style, key->role, key->line, MAX (1.2, style->font_size / 8));
  for (gsize i = 0; i < line->n; i++)
    {
      stead_score_chart_point (layout, &line->points[i], &x, &y);
      if (line->points[i].is_final)
        stead_mark_paint (cr, style, STEAD_ROLE_INK, STEAD_MARK_RING, x, y, style->font_size * 0.6);
      stead_mark_paint (cr, style, key->role, key->mark, x, y, style->font_size * 0.32);
    }
}

void
stead_score_chart_paint (cairo_t                *cr,
                         const SteadScoreSeries *series,
                         const SteadDrawStyle   *style,
                         const SteadScoreLayout *layout)
{
  const SteadBox *unit = &layout->unit_box;
  SteadDrawStyle fit = *style;

  fit.font_size = layout->font_size;
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &layout->shares, &layout->plot, TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &layout->days, &layout->plot, TICK_GAP);
  stead_text_paint (cr, &fit, STEAD_ROLE_SOFT, series->unit, 1, FALSE, STEAD_ALIGN_LEFT, unit->x, unit->y + unit->height / 2);
  paint_event (cr, series, &fit, layout);
  for (int i = 0; i < series->n; i++)
    paint_line (cr, &series->lines[i], &layout->keys[i], &fit, layout);
  if (layout->narrow)
    stead_keys_paint (cr, &fit, layout->keys, series->n);
  else
    stead_keys_paint_right (cr, &fit, layout->keys, series->n, layout->names_width);
  cairo_restore (cr);
}

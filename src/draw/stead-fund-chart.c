/* stead-fund-chart.c - money for a goal over time. */
#include "config.h"

#include <math.h>

#include "draw/stead-day-axis.h"
#include "draw/stead-fund-chart.h"
#include "draw/stead-labels.h"

#define TICK_GAP 7.0
#define DATE_GAP 5.0    /* between a date and its line */

static double
x_of (const SteadFundLayout *layout,
      SteadDay               day)
{
  return stead_day_axis_x (&layout->days, &layout->plot, day);
}

static double
y_of (const SteadFundLayout *layout,
      double                 cents)
{
  return stead_axis_y (&layout->money, &layout->plot, cents);
}

/* A day that the axis shows. */
static gboolean
is_shown (const SteadFundLayout *layout,
          SteadDay               day)
{
  return day != STEAD_DAY_NONE && day >= layout->days.low && day <= layout->days.high;
}

/* --- layout ----------------------------------------------------------------------------- */

static void
lay_axes (cairo_t              *cr,
          const SteadFundPath  *path,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          SteadFundLayout      *out)
{
  double most = MAX (path->goal_cents, 100), w, line;
  SteadDay first = path->points[0].day, last = MAX (path->points[path->n - 1].day, first + 7);

  for (gsize i = 0; i < path->n; i++)
    most = MAX (most, path->points[i].wide.high);
  most = MIN (most, MAX (path->goal_cents, 100) * 2);
  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  out->plot.y = line * 1.6;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - line - 3, 8);
  out->money = (SteadAxis) { 0, most * 1.08, stead_ticks (0, most * 1.08, (int) CLAMP (out->plot.height / (line * 2.2) + 1, 2, 7), TRUE),
                             stead_axis_text_money };
  stead_axis_measure (cr, style, &out->money, &w, &line);
  out->plot.x = ceil (w) + TICK_GAP + 2;
  out->plot.width = MAX (width - out->plot.x - style->font_size * 2.5, 8);
  if (path->wanted != STEAD_DAY_NONE && path->wanted > first && path->wanted < first + 3 * 366)
    last = MAX (last, path->wanted);
  out->days = stead_day_axis (cr, style, first, last, out->plot.width);
}

static void
lay_name (cairo_t              *cr,
          const SteadDrawStyle *style,
          SteadObstacles       *obstacles,
          const char           *text,
          double                x,
          double                y,
          double                gap,
          SteadBox             *box)
{
  double w, h;

  if (text == NULL)
    return;
  stead_text_measure (cr, style, text, 1, TRUE, &w, &h);
  if (stead_labels_place (obstacles, x, y, w, h, gap, box))
    stead_obstacles_add_box (obstacles, *box);
  else
    *box = (SteadBox) { 0 };
}

/* Each date stands beside its own line, near the foot, the surer the higher. */
static void
lay_dates (cairo_t              *cr,
           const SteadFundPath  *path,
           const SteadFundWords *words,
           const SteadDrawStyle *style,
           SteadObstacles       *obstacles,
           SteadFundLayout      *out)
{
  double goal_y = y_of (out, path->goal_cents), foot = out->plot.y + out->plot.height;
  double w, line;

  stead_text_measure (cr, style, "0", 1, TRUE, &w, &line);
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    if (path->days[i] != STEAD_DAY_NONE)
      stead_obstacles_add_stroke (obstacles, x_of (out, path->days[i]), goal_y, x_of (out, path->days[i]), foot);
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    if (path->days[i] != STEAD_DAY_NONE)
      lay_name (cr, style, obstacles, words->dates[i], x_of (out, path->days[i]), foot - (i + 1) * line * 1.5 + line / 2,
                DATE_GAP, &out->date_boxes[i]);
}

void
stead_fund_chart_layout (cairo_t              *cr,
                         const SteadFundPath  *path,
                         const SteadFundWords *words,
                         const SteadDrawStyle *style,
                         double                width,
                         double                height,
                         SteadFundLayout      *out)
{
  SteadDrawStyle fit = stead_draw_style_fit (style, width, height);
  SteadObstacles obstacles = { .inside = { 0, 0, width, height } };
  double w, h, goal_y;

  g_return_if_fail (path->n >= 1);
  *out = (SteadFundLayout) { .font_size = fit.font_size };
  lay_axes (cr, path, &fit, width, height, out);
  obstacles.inside = (SteadBox) { out->plot.x, 0, width - out->plot.x, out->plot.y + out->plot.height };
  goal_y = y_of (out, path->goal_cents);
  stead_text_measure (cr, &fit, words->goal, 1, TRUE, &w, &h);
  out->goal_box = (SteadBox) { out->plot.x + 4, goal_y - h - 2, MIN (w, out->plot.width), h };
  stead_obstacles_add_box (&obstacles, out->goal_box);
  stead_obstacles_add_stroke (&obstacles, out->plot.x, goal_y, out->plot.x + out->plot.width, goal_y);
  if (is_shown (out, path->wanted))
    {
      double x = x_of (out, path->wanted);

      stead_obstacles_add_stroke (&obstacles, x, out->plot.y, x, out->plot.y + out->plot.height);
      lay_name (cr, &fit, &obstacles, words->wanted, x, 0, 0, &out->wanted_box);
    }
  lay_dates (cr, path, words, &fit, &obstacles, out);
}

/* --- paint ------------------------------------------------------------------------------ */

static void
paint_band (cairo_t               *cr,
            const SteadFundPath   *path,
            const SteadDrawStyle  *style,
            const SteadFundLayout *layout,
            gboolean               wide)
{
  cairo_save (cr);
  cairo_rectangle (cr, layout->plot.x, layout->plot.y, layout->plot.width, layout->plot.height);
  cairo_clip (cr);
  cairo_new_path (cr);
  for (gsize i = 0; i < path->n; i++)
    {
      const SteadBand *band = wide ? &path->points[i].wide : &path->points[i].narrow;

      cairo_line_to (cr, x_of (layout, path->points[i].day), y_of (layout, MAX (band->high, 0)));
    }
  for (gsize i = path->n; i > 0; i--)
    {
      const SteadBand *band = wide ? &path->points[i - 1].wide : &path->points[i - 1].narrow;

      cairo_line_to (cr, x_of (layout, path->points[i - 1].day), y_of (layout, MAX (band->low, 0)));
    }
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_WATER, wide ? STEAD_PATTERN_SOLID : STEAD_PATTERN_RISING);
  cairo_restore (cr);
}

static void
paint_middle (cairo_t               *cr,
              const SteadFundPath   *path,
              const SteadDrawStyle  *style,
              const SteadFundLayout *layout)
{
  cairo_save (cr);
  cairo_rectangle (cr, layout->plot.x, layout->plot.y, layout->plot.width, layout->plot.height);
  cairo_clip (cr);
  cairo_new_path (cr);
  for (gsize i = 0; i < path->n; i++)
    cairo_line_to (cr, x_of (layout, path->points[i].day), y_of (layout, MAX (path->points[i].wide.likely, 0)));
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, MAX (1.5, style->font_size / 6));
  cairo_restore (cr);
}

static void
paint_dates (cairo_t               *cr,
             const SteadFundPath   *path,
             const SteadFundWords  *words,
             const SteadDrawStyle  *style,
             const SteadFundLayout *layout)
{
  double goal_y = y_of (layout, path->goal_cents), foot = layout->plot.y + layout->plot.height;

  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    {
      double x;

      if (path->days[i] == STEAD_DAY_NONE)
        continue;
      x = x_of (layout, path->days[i]);
      cairo_new_path (cr);
      cairo_move_to (cr, x, goal_y);
      cairo_line_to (cr, x, foot);
      stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_DOTTED, 1.2);
      stead_mark_paint (cr, style, STEAD_ROLE_INK, i == 0 ? STEAD_MARK_RING : i == 1 ? STEAD_MARK_DOT : STEAD_MARK_SQUARE,
                        x, goal_y, style->font_size * 0.35);
    }
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    {
      const SteadBox *box = &layout->date_boxes[i];

      if (box->width <= 0)
        continue;
      stead_ground_clear (cr, style, box);
      stead_text_paint (cr, style, STEAD_ROLE_INK, words->dates[i], 1, TRUE, STEAD_ALIGN_LEFT, box->x, box->y + box->height / 2);
    }
}

static void
paint_wanted (cairo_t               *cr,
              const SteadFundPath   *path,
              const SteadFundWords  *words,
              const SteadDrawStyle  *style,
              const SteadFundLayout *layout)
{
  const SteadBox *box = &layout->wanted_box;
  double x;

  if (!is_shown (layout, path->wanted))
    return;
  x = x_of (layout, path->wanted);
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_DASHED, 1.5);
  if (box->width > 0)
    stead_text_paint (cr, style, STEAD_ROLE_TOMATO, words->wanted, 1, TRUE, STEAD_ALIGN_LEFT, box->x, box->y + box->height / 2);
}

void
stead_fund_chart_paint (cairo_t               *cr,
                        const SteadFundPath   *path,
                        const SteadFundWords  *words,
                        const SteadDrawStyle  *style,
                        const SteadFundLayout *layout)
{
  SteadDrawStyle fit = *style;
  double goal_y = y_of (layout, path->goal_cents);

  fit.font_size = layout->font_size;
  paint_band (cr, path, &fit, layout, TRUE);
  paint_band (cr, path, &fit, layout, FALSE);
  stead_axis_paint_left (cr, &fit, &layout->money, &layout->plot, TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &layout->days, &layout->plot, TICK_GAP);
  paint_middle (cr, path, &fit, layout);
  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, goal_y);
  cairo_line_to (cr, layout->plot.x + layout->plot.width, goal_y);
  stead_stroke_line (cr, &fit, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, 2);
  stead_text_paint (cr, &fit, STEAD_ROLE_TOMATO, words->goal, 1, TRUE, STEAD_ALIGN_LEFT, layout->goal_box.x,
                    layout->goal_box.y + layout->goal_box.height / 2);
  paint_dates (cr, path, words, &fit, layout);
  paint_wanted (cr, path, words, &fit, layout);
}

int
stead_fund_chart_nearest (const SteadFundLayout *layout,
                          const SteadFundPath   *path,
                          double                 x)
{
  int best = -1;
  double nearest = 0;

  for (gsize i = 0; i < path->n; i++)
    {
      double distance = fabs (x_of (layout, path->points[i].day) - x);

      if (best >= 0 && distance >= nearest)
        continue;
      best = (int) i;
      nearest = distance;
    }
  return best;
}

void
stead_fund_chart_point (const SteadFundLayout *layout,
                        const SteadFundPath   *path,
                        int                    point,
                        double                *x,
                        double                *y)
{
  g_return_if_fail (point >= 0 && (gsize) point < path->n);
  *x = x_of (layout, path->points[point].day);
  *y = y_of (layout, CLAMP (path->points[point].wide.likely, 0, layout->money.high));
}

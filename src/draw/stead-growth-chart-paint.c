/* stead-growth-chart-paint.c - paints the growth chart that was laid out.
 *
 * A weighing is a dot with an ink outline and a bar of the spread of its fish, hollow
 * if it does not count; what was learned is a line, solid up to today and dashed in
 * its band ahead; lost fish are crosses; the sale weight is a line, and a bar on it
 * spans the likely days of sale.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-growth-chart-private.h"

static double
sharp (const SteadDrawStyle *style,
       double                at)
{
  return style->scheme == STEAD_SCHEME_PRINT ? at : floor (at) + 0.5;
}

static gboolean
is_ahead (const SteadGrowthSeries *series,
          gsize                    i)
{
  return series->today != STEAD_DAY_NONE && series->steps[i].day >= series->today && i + 1 < series->n_steps
         && series->steps[i + 1].day > series->today;
}

/* The band of the days to come. */
static void
paint_band (cairo_t                 *cr,
            const SteadGrowthSeries *series,
            const SteadDrawStyle    *style,
            const SteadGrowthLayout *layout)
{
  gsize first = series->n_steps;

  for (gsize i = series->n_steps; i > 0 && series->steps[i - 1].day >= series->today; i--)
    first = i - 1;
  if (!layout->has_ahead || first + 1 >= series->n_steps)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, layout->plot.x, layout->plot.y, layout->plot.width, layout->plot.height);
  cairo_clip (cr);
  cairo_new_path (cr);
  for (gsize i = first; i < series->n_steps; i++)
    cairo_line_to (cr, stead_growth_chart_x (layout, series->steps[i].day),
                   stead_growth_chart_y (layout, series->steps[i].high_g));
  for (gsize i = series->n_steps; i > first; i--)
    cairo_line_to (cr, stead_growth_chart_x (layout, series->steps[i - 1].day),
                   stead_growth_chart_y (layout, series->steps[i - 1].low_g));
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_FISH, STEAD_PATTERN_RISING);
  cairo_restore (cr);
}

static void
add_line (cairo_t                 *cr,
          const SteadGrowthSeries *series,
          const SteadGrowthLayout *layout,
          gboolean                 ahead)
{
  cairo_new_path (cr);
  for (gsize i = 0; i + 1 < series->n_steps; i++)
    {
      const SteadGrowthStep *a = &series->steps[i], *b = a + 1;

      /* Two points of one day are a jump, where fish came or went. */
      if (is_ahead (series, i) != ahead || a->day == b->day)
        continue;
      cairo_move_to (cr, stead_growth_chart_x (layout, a->day), stead_growth_chart_y (layout, a->likely_g));
      cairo_line_to (cr, stead_growth_chart_x (layout, b->day), stead_growth_chart_y (layout, b->likely_g));
    }
}

static void
paint_lines (cairo_t                 *cr,
             const SteadGrowthSeries *series,
             const SteadDrawStyle    *style,
             const SteadGrowthLayout *layout)
{
  double width = MAX (1.5, style->font_size / 7);

  add_line (cr, series, layout, FALSE);
  stead_stroke_line (cr, style, STEAD_ROLE_FISH, STEAD_LINE_SOLID, width);
  add_line (cr, series, layout, TRUE);
  stead_stroke_line (cr, style, STEAD_ROLE_FISH, STEAD_LINE_DASHED, width);
}

/* The sale weight, the likely days of sale on it, and the day up to the line of the mean. */
static void
paint_sale (cairo_t                 *cr,
            const SteadGrowthWords  *words,
            const SteadGrowthSeries *series,
            const SteadDrawStyle    *style,
            const SteadGrowthLayout *layout)
{
  double right = layout->plot.x + layout->plot.width, y, x, cap = style->font_size * 0.35;

  if (!layout->has_sale)
    return;
  y = sharp (style, stead_growth_chart_y (layout, series->sale_g));
  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, y);
  cairo_line_to (cr, right, y);
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, MAX (1, style->font_size / 12));
  if (!layout->has_sale_day)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, layout->soonest_x, y - cap);
  cairo_line_to (cr, layout->soonest_x, y + cap);
  cairo_move_to (cr, layout->soonest_x, y);
  cairo_line_to (cr, MIN (layout->latest_x, right), y);
  if (layout->latest_x < right)
    {
      cairo_move_to (cr, layout->latest_x, y - cap);
      cairo_line_to (cr, layout->latest_x, y + cap);
    }
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, MAX (2.5, style->font_size / 4));
  x = sharp (style, layout->sale_x);
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_DOTTED, MAX (1, style->font_size / 12));
  if (words->sale_day == NULL)
    return;
  stead_text_paint (cr, style, STEAD_ROLE_WATER, words->sale_day, 1, TRUE, STEAD_ALIGN_LEFT, layout->sale_day_box.x,
                    layout->sale_day_box.y + layout->sale_day_box.height / 2);
}

static void
paint_spread (cairo_t                 *cr,
              const SteadGrowthMark   *mark,
              const SteadDrawStyle    *style,
              const SteadGrowthLayout *layout,
              double                   x)
{
  double cap = layout->font_size * 0.25;
  double high = stead_growth_chart_y (layout, mark->mean_g + mark->sd_g);
  double low = stead_growth_chart_y (layout, MAX (0, mark->mean_g - mark->sd_g));

  if (!(mark->sd_g > 0))
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x - cap, high);
  cairo_line_to (cr, x + cap, high);
  cairo_move_to (cr, x, high);
  cairo_line_to (cr, x, low);
  cairo_move_to (cr, x - cap, low);
  cairo_line_to (cr, x + cap, low);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.75, style->font_size / 12));
}

static void
paint_marks (cairo_t                 *cr,
             const SteadGrowthSeries *series,
             const SteadDrawStyle    *style,
             const SteadGrowthLayout *layout)
{
  for (gsize i = 0; i < series->n_losses; i++)
    stead_mark_paint (cr, style, STEAD_ROLE_TOMATO, STEAD_MARK_CROSS,
                      stead_growth_chart_x (layout, series->losses[i].day), layout->lost_y, layout->font_size * 0.3);
  for (gsize i = 0; i < series->n_marks; i++)
    {
      const SteadGrowthMark *mark = &series->marks[i];
      gboolean counts = !mark->left_out && !mark->far_off;
      double x = stead_growth_chart_x (layout, mark->day);

      paint_spread (cr, mark, style, layout, x);
      stead_mark_paint (cr, style, counts ? STEAD_ROLE_FISH : STEAD_ROLE_INK,
                        counts ? STEAD_MARK_DOT : STEAD_MARK_RING, x, stead_growth_chart_y (layout, mark->mean_g),
                        layout->font_size * 0.36);
    }
}

static void
paint_today (cairo_t                 *cr,
             const SteadGrowthWords  *words,
             const SteadDrawStyle    *style,
             const SteadGrowthLayout *layout)
{
  double x = sharp (style, layout->today_x);

  if (!layout->has_today || words->today == NULL)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y - style->font_size * 0.15);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.75, style->font_size / 12));
  stead_text_paint (cr, style, STEAD_ROLE_INK, words->today, 1, TRUE, STEAD_ALIGN_LEFT,
                    layout->today_box.x, layout->today_box.y + layout->today_box.height / 2);
}

void
stead_growth_chart_paint (cairo_t                 *cr,
                          const SteadGrowthSeries *series,
                          const SteadGrowthWords  *words,
                          const SteadDrawStyle    *style,
                          const SteadGrowthLayout *layout)
{
  SteadDrawStyle fit;
  SteadAxis y_axis;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  y_axis = stead_growth_chart_y_axis (layout);
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, STEAD_GROWTH_TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &layout->x_axis, &layout->plot, STEAD_GROWTH_TICK_GAP);
  if (words->weight != NULL)
    stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->weight, 1, FALSE, STEAD_ALIGN_LEFT,
                            layout->weight_box.width + 1, layout->weight_box.x,
                            layout->weight_box.y + layout->weight_box.height / 2);
  paint_band (cr, series, &fit, layout);
  paint_sale (cr, words, series, &fit, layout);
  paint_today (cr, words, &fit, layout);
  paint_lines (cr, series, &fit, layout);
  paint_marks (cr, series, &fit, layout);
  if (layout->narrow)
    stead_keys_paint (cr, &fit, layout->keys, layout->n_keys);
  else
    stead_keys_paint_right (cr, &fit, layout->keys, layout->n_keys, layout->right_labels_width);
  cairo_restore (cr);
}

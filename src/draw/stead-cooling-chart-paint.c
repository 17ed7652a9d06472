/* stead-cooling-chart-paint.c - paints the cooling chart that was laid out.
 *
 * Where the pot must not be is hatched: over the first mark once its time is up, over the
 * second likewise, with a corner that is marked and named over the plot.  A reading is a
 * dot, square where something was done before it; the curve is solid up to now and dashed
 * in its band ahead.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-cooling-chart-private.h"

static double
sharp (const SteadDrawStyle *style,
       double                at)
{
  return style->scheme == STEAD_SCHEME_PRINT ? at : floor (at) + 0.5;
}

static double
right_of (const SteadCoolingLayout *layout)
{
  return layout->plot.x + layout->plot.width;
}

static void
clip_plot (cairo_t                  *cr,
           const SteadCoolingLayout *layout)
{
  cairo_rectangle (cr, layout->plot.x, layout->plot.y, layout->plot.width, layout->plot.height);
  cairo_clip (cr);
}

/* The stairs: along each mark from its minute to the next one's. */
static void
add_stairs (cairo_t                  *cr,
            const SteadCoolingSeries *series,
            const SteadDrawStyle     *style,
            const SteadCoolingLayout *layout)
{
  cairo_new_path (cr);
  cairo_move_to (cr, sharp (style, layout->due_x[0]), layout->plot.y);
  for (gsize i = 0; i < series->n_marks; i++)
    {
      double y = sharp (style, layout->due_y[i]);

      cairo_line_to (cr, sharp (style, layout->due_x[i]), y);
      cairo_line_to (cr, i + 1 < series->n_marks ? sharp (style, layout->due_x[i + 1]) : right_of (layout), y);
    }
}

static void
paint_too_warm (cairo_t                  *cr,
                const SteadCoolingSeries *series,
                const SteadDrawStyle     *style,
                const SteadCoolingLayout *layout)
{
  if (series->n_marks == 0)
    return;
  cairo_save (cr);
  clip_plot (cr, layout);
  add_stairs (cr, series, style, layout);
  cairo_line_to (cr, right_of (layout), layout->plot.y);
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_TOMATO, STEAD_PATTERN_FALLING);
  add_stairs (cr, series, style, layout);
  stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, MAX (1.5, style->font_size / 8));
  cairo_restore (cr);
}

static void
paint_marks (cairo_t                  *cr,
             const SteadCoolingSeries *series,
             const SteadCoolingWords  *words,
             const SteadDrawStyle     *style,
             const SteadCoolingLayout *layout)
{
  for (gsize i = 0; i < series->n_marks; i++)
    {
      const SteadBox *box = &layout->mark_box[i];
      double x = sharp (style, layout->due_x[i]);

      stead_mark_paint (cr, style, STEAD_ROLE_TOMATO, STEAD_MARK_SQUARE, layout->due_x[i], layout->due_y[i],
                        style->font_size * 0.32);
      if (words->marks[i] == NULL)
        continue;
      cairo_new_path (cr);
      cairo_move_to (cr, x, box->y + box->height);
      cairo_line_to (cr, x, layout->plot.y);
      stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, MAX (0.75, style->font_size / 14));
      stead_text_paint (cr, style, STEAD_ROLE_TOMATO, words->marks[i], 1, FALSE, STEAD_ALIGN_LEFT, box->x,
                        box->y + box->height / 2);
    }
}

/* --- the curve --------------------------------------------------------------------------- */

static gboolean
is_ahead (const SteadCoolingSeries *series,
          gsize                     i)
{
  return !isnan (series->now_min) && series->steps[i].minute >= series->now_min;
}

static void
paint_band (cairo_t                  *cr,
            const SteadCoolingSeries *series,
            const SteadDrawStyle     *style,
            const SteadCoolingLayout *layout)
{
  if (series->n_steps < 2)
    return;
  cairo_save (cr);
  clip_plot (cr, layout);
  cairo_new_path (cr);
  for (gsize i = 0; i < series->n_steps; i++)
    cairo_line_to (cr, stead_cooling_chart_x (layout, series, series->steps[i].minute),
                   stead_cooling_chart_y (layout, series->steps[i].high_f));
  for (gsize i = series->n_steps; i > 0; i--)
    cairo_line_to (cr, stead_cooling_chart_x (layout, series, series->steps[i - 1].minute),
                   stead_cooling_chart_y (layout, series->steps[i - 1].low_f));
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_FISH, STEAD_PATTERN_RISING);
  cairo_restore (cr);
}

static void
paint_curve (cairo_t                  *cr,
             const SteadCoolingSeries *series,
             const SteadDrawStyle     *style,
             const SteadCoolingLayout *layout,
             gboolean                  ahead)
{
  cairo_save (cr);
  clip_plot (cr, layout);
  cairo_new_path (cr);
  for (gsize i = 0; i + 1 < series->n_steps; i++)
    if (is_ahead (series, i) == ahead)
      {
        cairo_move_to (cr, stead_cooling_chart_x (layout, series, series->steps[i].minute),
                       stead_cooling_chart_y (layout, series->steps[i].likely_f));
        cairo_line_to (cr, stead_cooling_chart_x (layout, series, series->steps[i + 1].minute),
                       stead_cooling_chart_y (layout, series->steps[i + 1].likely_f));
      }
  stead_stroke_line (cr, style, STEAD_ROLE_FISH, ahead ? STEAD_LINE_DASHED : STEAD_LINE_SOLID,
                     MAX (1.5, style->font_size / 7));
  cairo_restore (cr);
}

static void
paint_readings (cairo_t                  *cr,
                const SteadCoolingSeries *series,
                const SteadDrawStyle     *style,
                const SteadCoolingLayout *layout)
{
  for (gsize i = 0; i < series->n_readings; i++)
    stead_mark_paint (cr, style, STEAD_ROLE_FISH, series->readings[i].changed ? STEAD_MARK_SQUARE : STEAD_MARK_DOT,
                      stead_cooling_chart_x (layout, series, series->readings[i].minute),
                      stead_cooling_chart_y (layout, series->readings[i].temp_f), layout->font_size * 0.36);
}

/* --- now --------------------------------------------------------------------------------- */

static void
paint_upright (cairo_t                  *cr,
               const SteadDrawStyle     *style,
               const SteadCoolingLayout *layout,
               const char               *text,
               const SteadBox           *box,
               double                    x,
               SteadRole                 role,
               SteadLine                 line)
{
  x = sharp (style, x);
  cairo_new_path (cr);
  cairo_move_to (cr, x, box->y + box->height);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, role, line, MAX (0.75, style->font_size / 12));
  stead_text_paint (cr, style, role, text, 1, TRUE, STEAD_ALIGN_LEFT, box->x, box->y + box->height / 2);
}

void
stead_cooling_chart_paint (cairo_t                  *cr,
                           const SteadCoolingSeries *series,
                           const SteadCoolingWords  *words,
                           const SteadDrawStyle     *style,
                           const SteadCoolingLayout *layout)
{
  SteadDrawStyle fit;
  SteadAxis y_axis;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  y_axis = stead_cooling_chart_y_axis (layout);
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, STEAD_COOLING_TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &layout->x_axis, &layout->plot, STEAD_COOLING_TICK_GAP);
  if (words->unit != NULL)
    stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->unit, 1, FALSE, STEAD_ALIGN_LEFT, layout->unit_box.width + 1,
                            layout->unit_box.x, layout->unit_box.y + layout->unit_box.height / 2);
  paint_too_warm (cr, series, &fit, layout);
  paint_band (cr, series, &fit, layout);
  if (layout->has_now && words->now != NULL)
    paint_upright (cr, &fit, layout, words->now, &layout->now_box, layout->now_x, STEAD_ROLE_INK, STEAD_LINE_SOLID);
  if (layout->has_act)
    paint_upright (cr, &fit, layout, words->act, &layout->act_box, layout->act_x, STEAD_ROLE_INK, STEAD_LINE_DOTTED);
  paint_curve (cr, series, &fit, layout, FALSE);
  paint_curve (cr, series, &fit, layout, TRUE);
  paint_marks (cr, series, words, &fit, layout);
  paint_readings (cr, series, &fit, layout);
  if (layout->narrow)
    stead_keys_paint (cr, &fit, layout->keys, layout->n_keys);
  else
    stead_keys_paint_right (cr, &fit, layout->keys, layout->n_keys, layout->right_labels_width);
  cairo_restore (cr);
}

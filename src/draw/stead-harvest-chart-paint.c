/* stead-harvest-chart-paint.c - paints the harvest chart that was laid out.
 *
 * A week is a bar of what was picked, with what was thrown out hatched on top; a
 * week ahead is a bar with a broken outline and a line over its band.  The first
 * pick is a line, and a bar on the zero line spans its likely days.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-harvest-chart-private.h"

static double
sharp (const SteadDrawStyle *style,
       double                at)
{
  return style->scheme == STEAD_SCHEME_PRINT ? at : floor (at) + 0.5;
}

static double
thin (const SteadDrawStyle *style)
{
  return MAX (0.75, style->font_size / 12);
}

/* What is expected of a week, as a bar over what it has already. */
static void
paint_expected (cairo_t                  *cr,
                const SteadPickWeek      *week,
                const SteadDrawStyle     *style,
                const SteadHarvestLayout *layout)
{
  double x = stead_harvest_chart_week_x (layout, week), half = layout->bar_width / 2;
  double zero = layout->plot.y + layout->plot.height;
  double top = stead_harvest_chart_y (layout, week->likely_kg), cap = MIN (half * 0.5, style->font_size * 0.35);
  double low = stead_harvest_chart_y (layout, week->low_kg);
  double high = MAX (stead_harvest_chart_y (layout, week->high_kg), layout->plot.y);

  if (!(week->high_kg > 0))
    return;
  cairo_new_path (cr);
  cairo_rectangle (cr, x - half, top, 2 * half, zero - top);
  stead_fill_area (cr, style, STEAD_ROLE_CROP, STEAD_PATTERN_RISING);
  cairo_new_path (cr);
  cairo_move_to (cr, x - half, zero);
  cairo_line_to (cr, x - half, top);
  cairo_line_to (cr, x + half, top);
  cairo_line_to (cr, x + half, zero);
  stead_stroke_line (cr, style, STEAD_ROLE_CROP, STEAD_LINE_DASHED, thin (style) * 1.3);
  cairo_new_path (cr);
  cairo_move_to (cr, x, low);
  cairo_line_to (cr, x, high);
  cairo_move_to (cr, x - cap, low);
  cairo_line_to (cr, x + cap, low);
  cairo_move_to (cr, x - cap, high);
  cairo_line_to (cr, x + cap, high);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, thin (style));
}

static void
paint_picked (cairo_t                  *cr,
              const SteadPickWeek      *week,
              const SteadDrawStyle     *style,
              const SteadHarvestLayout *layout)
{
  SteadBox bar;

  if (stead_harvest_chart_bar (layout, week, &bar))
    {
      cairo_new_path (cr);
      cairo_rectangle (cr, bar.x, bar.y, bar.width, bar.height);
      stead_fill_pattern (cr, style, STEAD_ROLE_CROP, STEAD_PATTERN_SOLID, TRUE);
    }
  if (week->lost_kg > 0)
    {
      double top = stead_harvest_chart_y (layout, week->picked_kg + week->lost_kg);

      cairo_new_path (cr);
      cairo_rectangle (cr, bar.x, top, bar.width, bar.y - top);
      stead_fill_pattern (cr, style, STEAD_ROLE_CARD, STEAD_PATTERN_FALLING, TRUE);
    }
}

/* A frame round the week that the pointer or the keys are at. */
static void
paint_marked (cairo_t                  *cr,
              const SteadPickWeek      *week,
              const SteadDrawStyle     *style,
              const SteadHarvestLayout *layout)
{
  double x = stead_harvest_chart_week_x (layout, week), half = layout->bar_width / 2 + style->font_size * 0.25;
  double most = MAX (week->picked_kg + week->lost_kg, isnan (week->likely_kg) ? 0 : week->likely_kg);
  double zero = layout->plot.y + layout->plot.height;
  double top = MAX (stead_harvest_chart_y (layout, most) - style->font_size * 0.3, layout->plot.y);

  cairo_new_path (cr);
  cairo_rectangle (cr, x - half, top, 2 * half, zero - top);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (1.5, style->font_size / 8));
}

static void
paint_ripe (cairo_t                  *cr,
            const SteadHarvestWords  *words,
            const SteadDrawStyle     *style,
            const SteadHarvestLayout *layout)
{
  double zero = layout->plot.y + layout->plot.height, x = sharp (style, layout->ripe_x);

  if (!layout->has_ripe)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y);
  cairo_line_to (cr, x, zero);
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_DOTTED, MAX (1, style->font_size / 10));
  if (layout->ripe_late_x > layout->ripe_early_x)
    {
      cairo_new_path (cr);
      cairo_move_to (cr, layout->ripe_early_x, zero);
      cairo_line_to (cr, layout->ripe_late_x, zero);
      stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, MAX (2.5, style->font_size / 4));
    }
  if (words->ripe != NULL)
    stead_text_paint (cr, style, STEAD_ROLE_WATER, words->ripe, 1, TRUE, STEAD_ALIGN_LEFT, layout->ripe_box.x,
                      layout->ripe_box.y + layout->ripe_box.height / 2);
}

static void
paint_today (cairo_t                  *cr,
             const SteadHarvestWords  *words,
             const SteadDrawStyle     *style,
             const SteadHarvestLayout *layout)
{
  double x = sharp (style, layout->today_x);

  if (!layout->has_today || words->today == NULL)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y - style->font_size * 0.15);
  cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, thin (style));
  stead_text_paint (cr, style, STEAD_ROLE_INK, words->today, 1, TRUE, STEAD_ALIGN_LEFT, layout->today_box.x,
                    layout->today_box.y + layout->today_box.height / 2);
}

void
stead_harvest_chart_paint (cairo_t                  *cr,
                           const SteadHarvestSeries *series,
                           const SteadHarvestWords  *words,
                           const SteadDrawStyle     *style,
                           const SteadHarvestLayout *layout,
                           int                       marked)
{
  SteadDrawStyle fit;
  SteadAxis x_axis, y_axis;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  x_axis = stead_harvest_chart_x_axis (layout);
  y_axis = stead_harvest_chart_y_axis (layout);
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, STEAD_HARVEST_TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &x_axis, &layout->plot, STEAD_HARVEST_TICK_GAP);
  if (words->amount != NULL)
    stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->amount, 1, FALSE, STEAD_ALIGN_LEFT,
                            layout->amount_box.width + 1, layout->amount_box.x,
                            layout->amount_box.y + layout->amount_box.height / 2);
  for (gsize i = 0; i < series->n_weeks; i++)
    if (!isnan (series->weeks[i].likely_kg))
      paint_expected (cr, &series->weeks[i], &fit, layout);
  for (gsize i = 0; i < series->n_weeks; i++)
    paint_picked (cr, &series->weeks[i], &fit, layout);
  if (marked >= 0 && (gsize) marked < series->n_weeks)
    paint_marked (cr, &series->weeks[marked], &fit, layout);
  paint_ripe (cr, words, &fit, layout);
  paint_today (cr, words, &fit, layout);
  stead_keys_paint (cr, &fit, layout->keys, layout->n_keys);
  cairo_restore (cr);
}

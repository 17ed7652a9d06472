/* stead-run-plot.c - cash over and short by sale day, as a run chart.
 *
 * Over, short and what agrees differ in shape as well as in color; sums and days that
 * have no room are left out, the latest last.
 */
#include "config.h"

#include <math.h>

#include "core/stead-money.h"
#include "draw/stead-axis.h"
#include "draw/stead-labels.h"
#include "draw/stead-run-plot.h"

#define TICK_GAP 7.0
#define RIGHT_SHARE 0.24

/* Even where all agrees the axis spans a dollar each way. */
#define LEAST_CENTS 100.0

static SteadAxis
money_axis (const SteadRunLayout *layout)
{
  return (SteadAxis) { layout->low_cents, layout->high_cents, layout->y_ticks, stead_axis_text_money };
}

double
stead_run_plot_x (const SteadRunPlot   *plot,
                  const SteadRunLayout *layout,
                  gsize                 i)
{
  return layout->plot.x + layout->plot.width * ((double) i + 0.5) / (double) plot->n;
}

double
stead_run_plot_y (const SteadRunLayout *layout,
                  double                cents)
{
  SteadAxis axis = money_axis (layout);

  return stead_axis_y (&axis, &layout->plot, cents);
}

static char *
sum_text (const SteadDrawStyle *style,
          double                cents)
{
  return stead_money_format (stead_money_round (cents), style->currency != NULL ? style->currency : "USD");
}

static void
find_range (const SteadRunPlot *plot,
            SteadRunLayout     *out)
{
  double low = -LEAST_CENTS, high = LEAST_CENTS;
  SteadTicks ticks;

  for (gsize i = 0; i < plot->n; i++)
    {
      low = MIN (low, plot->cents[i]);
      high = MAX (high, plot->cents[i]);
    }
  /* Room beyond the outermost points for their sums. */
  ticks = stead_ticks (1.3 * low, 1.3 * high, 8, TRUE);
  out->low_cents = floor (1.3 * low / ticks.step) * ticks.step;
  out->high_cents = ceil (1.3 * high / ticks.step) * ticks.step;
  out->first_named = plot->n > STEAD_RUN_MOST_NAMES ? plot->n - STEAD_RUN_MOST_NAMES : 0;
}

static void
lay_plot (cairo_t              *cr,
          const char           *median,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          SteadRunLayout       *out)
{
  double w, line, right = style->font_size;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  out->plot.y = line / 2 + 1;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (out->low_cents, out->high_cents, (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 7), TRUE);
  axis = money_axis (out);
  stead_axis_measure (cr, style, &axis, &w, &line);
  out->plot.x = ceil (w) + TICK_GAP + 2;
  if (median != NULL)
    {
      stead_text_measure_block (cr, style, median, 1, FALSE, width * RIGHT_SHARE, &out->median_box.width,
                                &out->median_box.height);
      right = out->median_box.width + style->font_size * 0.8 + 2;
    }
  out->plot.width = MAX (width - out->plot.x - right, 1);
}

static void
lay_names (cairo_t              *cr,
           const SteadRunPlot   *plot,
           const SteadDrawStyle *style,
           double                width,
           SteadRunLayout       *out)
{
  SteadObstacles obstacles = { .inside = out->plot };
  double axis_y = out->plot.y + out->plot.height + TICK_GAP, free_until = width - 1;

  for (gsize i = out->first_named; i + 1 < plot->n; i++)
    stead_obstacles_add_stroke (&obstacles, stead_run_plot_x (plot, out, i), stead_run_plot_y (out, plot->cents[i]),
                                stead_run_plot_x (plot, out, i + 1), stead_run_plot_y (out, plot->cents[i + 1]));
  for (gsize i = plot->n; i > out->first_named; i--)
    {
      SteadBox *day = &out->day_boxes[i - 1 - out->first_named];
      SteadBox *sum = &out->sum_boxes[i - 1 - out->first_named];
      double cents = plot->cents[i - 1], x = stead_run_plot_x (plot, out, i - 1), y = stead_run_plot_y (out, cents), w, h;
      g_autofree char *day_words = stead_day_format (plot->days[i - 1], STEAD_DAY_STYLE_SHORT);
      g_autofree char *sum_words = sum_text (style, cents);

      stead_text_measure (cr, style, sum_words, 1, TRUE, &w, &h);
      if (fabs (cents) >= 0.5
          && stead_labels_place (&obstacles, x, y + (cents > 0 ? -h : h) * 0.9, w, h, 1, sum))
        stead_obstacles_add_box (&obstacles, *sum);
      else
        *sum = (SteadBox) { 0 };
      stead_text_measure (cr, style, day_words, 1, FALSE, &w, &h);
      x = CLAMP (x - w / 2, 1, width - w - 1);
      if (x + w > free_until)
        continue;
      *day = (SteadBox) { x, axis_y, w, h };
      free_until = x - style->font_size * 0.8;
    }
}

void
stead_run_plot_layout (cairo_t              *cr,
                       const SteadRunPlot   *plot,
                       const char           *median,
                       const SteadDrawStyle *style,
                       double                width,
                       double                height,
                       SteadRunLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && plot != NULL && plot->n > 0 && style != NULL && out != NULL);
  /* A strip: it is used at a third of a chart's height. */
  fit = stead_draw_style_fit (style, width, height * 2);
  *out = (SteadRunLayout) { .font_size = fit.font_size };
  find_range (plot, out);
  lay_plot (cr, median, &fit, width, height, out);
  if (median != NULL)
    {
      out->median_box.x = width - out->median_box.width - 1;
      out->median_box.y = CLAMP (stead_run_plot_y (out, plot->run.median) - out->median_box.height / 2, 0,
                                 MAX (0, out->plot.y + out->plot.height - out->median_box.height));
    }
  lay_names (cr, plot, &fit, width, out);
}

static void
paint_line (cairo_t              *cr,
            const SteadRunPlot   *plot,
            const SteadDrawStyle *style,
            const SteadRunLayout *layout)
{
  cairo_new_path (cr);
  for (gsize i = 0; i < plot->n; i++)
    cairo_line_to (cr, stead_run_plot_x (plot, layout, i), stead_run_plot_y (layout, plot->cents[i]));
  stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_SOLID, MAX (1, style->font_size / 9));
}

static void
paint_median (cairo_t              *cr,
              const SteadRunPlot   *plot,
              const char           *median,
              const SteadDrawStyle *style,
              const SteadRunLayout *layout)
{
  double y = stead_run_plot_y (layout, plot->run.median);

  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, y);
  cairo_line_to (cr, layout->plot.x + layout->plot.width, y);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_DASHED, MAX (1, style->font_size / 9));
  if (median != NULL)
    stead_text_paint_block (cr, style, STEAD_ROLE_INK, median, 1, FALSE, STEAD_ALIGN_LEFT, layout->median_box.width + 1,
                            layout->median_box.x, layout->median_box.y + layout->median_box.height / 2);
}

static gboolean
is_sign (const SteadRunPlot *plot,
         gsize               i)
{
  const SteadRunChart *run = &plot->run;

  return run->can_tell && ((run->shift.found && i >= run->shift.first && i <= run->shift.last)
                           || (run->trend.found && i >= run->trend.first && i <= run->trend.last));
}

static void
paint_points (cairo_t              *cr,
              const SteadRunPlot   *plot,
              const SteadDrawStyle *style,
              const SteadRunLayout *layout)
{
  for (gsize i = 0; i < plot->n; i++)
    {
      double x = stead_run_plot_x (plot, layout, i), y = stead_run_plot_y (layout, plot->cents[i]);
      gboolean over = plot->cents[i] >= 0.5, is_short = plot->cents[i] <= -0.5;

      stead_mark_paint (cr, style, is_short ? STEAD_ROLE_TOMATO : STEAD_ROLE_WATER,
                        over ? STEAD_MARK_DOT : is_short ? STEAD_MARK_SQUARE : STEAD_MARK_RING, x, y,
                        style->font_size * 0.32);
      if (is_sign (plot, i))
        stead_mark_paint (cr, style, STEAD_ROLE_INK, STEAD_MARK_RING, x, y, style->font_size * 0.6);
    }
}

static void
paint_names (cairo_t              *cr,
             const SteadRunPlot   *plot,
             const SteadDrawStyle *style,
             const SteadRunLayout *layout)
{
  for (gsize i = layout->first_named; i < plot->n; i++)
    {
      const SteadBox *day = &layout->day_boxes[i - layout->first_named];
      const SteadBox *sum = &layout->sum_boxes[i - layout->first_named];
      g_autofree char *day_words = stead_day_format (plot->days[i], STEAD_DAY_STYLE_SHORT);
      g_autofree char *sum_words = sum_text (style, plot->cents[i]);

      if (day->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_SOFT, day_words, 1, FALSE, STEAD_ALIGN_LEFT, day->x,
                          day->y + day->height / 2);
      if (sum->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_INK, sum_words, 1, TRUE, STEAD_ALIGN_LEFT, sum->x,
                          sum->y + sum->height / 2);
    }
}

void
stead_run_plot_paint (cairo_t              *cr,
                      const SteadRunPlot   *plot,
                      const char           *median,
                      const SteadDrawStyle *style,
                      const SteadRunLayout *layout)
{
  SteadDrawStyle fit;
  SteadAxis axis;

  g_return_if_fail (cr != NULL && plot != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  axis = money_axis (layout);
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &axis, &layout->plot, TICK_GAP);
  paint_median (cr, plot, median, &fit, layout);
  paint_line (cr, plot, &fit, layout);
  paint_points (cr, plot, &fit, layout);
  paint_names (cr, plot, &fit, layout);
  cairo_restore (cr);
}

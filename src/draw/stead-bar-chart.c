/* stead-bar-chart.c - named bars between two values of money, one under the other. */
#include "config.h"

#include "draw/stead-bar-chart.h"

#include <math.h>

#define ROW_EM 2.5          /* room for one bar and the gap to the next */
#define BAR_SHARE 0.62      /* of the row */
#define NAMES_SHARE 0.36    /* of the width at most */
#define TICK_GAP 6.0
#define LEAST_BAR 1.5       /* so that a cent is seen too */

static SteadAxis
money_axis (const SteadBarLayout *layout)
{
  return (SteadAxis) { layout->low, layout->high, layout->ticks, stead_axis_text_money };
}

double
stead_bar_chart_height (const SteadBarSeries *series,
                        const SteadDrawStyle *style)
{
  g_return_val_if_fail (series != NULL && style != NULL, 0);
  return ceil (style->font_size * (ROW_EM * series->n + (series->base_name != NULL ? 4.5 : 3)));
}

static void
find_range (const SteadBarSeries *series,
            SteadBarLayout       *out)
{
  double low = 0, high = 0, span;

  if (!isnan (series->base))
    low = high = series->base;
  for (int i = 0; i < series->n; i++)
    {
      low = MIN (low, MIN (series->bars[i].from, series->bars[i].to));
      high = MAX (high, MAX (series->bars[i].from, series->bars[i].to));
    }
  span = MAX (high - low, 1);
  out->low = low < 0 ? low - span * 0.03 : 0;
  out->high = high + span * 0.03;
}

static void
lay_texts (cairo_t              *cr,
           const SteadBarSeries *series,
           const SteadDrawStyle *style,
           double                width,
           double               *names,
           double               *values,
           SteadBarLayout       *out)
{
  *names = *values = 0;
  for (int i = 0; i < series->n; i++)
    {
      const SteadBar *bar = &series->bars[i];

      stead_text_measure_block (cr, style, bar->name, 1, bar->total, width * NAMES_SHARE,
                                &out->names[i].width, &out->names[i].height);
      stead_text_measure (cr, style, bar->value, 1, bar->total, &out->values[i].width, &out->values[i].height);
      *names = MAX (*names, out->names[i].width);
      *values = MAX (*values, out->values[i].width);
    }
}

static void
lay_rows (const SteadBarSeries *series,
          double                em,
          SteadBarLayout       *out)
{
  SteadAxis axis = money_axis (out);
  double row = out->plot.height / MAX (series->n, 1);
  double thick = MIN (row * BAR_SHARE, em * 2.2);

  for (int i = 0; i < series->n; i++)
    {
      double x0 = stead_axis_x (&axis, &out->plot, MIN (series->bars[i].from, series->bars[i].to));
      double x1 = stead_axis_x (&axis, &out->plot, MAX (series->bars[i].from, series->bars[i].to));
      double middle = out->plot.y + row * (i + 0.5);

      out->bars[i] = (SteadBox) { x0, middle - thick / 2, MAX (x1 - x0, LEAST_BAR), thick };
      out->names[i].x = out->plot.x - em * 0.7 - out->names[i].width;
      out->names[i].y = middle - out->names[i].height / 2;
      out->values[i].x = out->bars[i].x + out->bars[i].width + em * 0.4;
      out->values[i].y = middle - out->values[i].height / 2;
    }
  out->base_x = stead_axis_x (&axis, &out->plot, isnan (series->base) ? 0 : series->base);
}

void
stead_bar_chart_layout (cairo_t              *cr,
                        const SteadBarSeries *series,
                        const SteadDrawStyle *style,
                        double                width,
                        double                height,
                        SteadBarLayout       *out)
{
  SteadDrawStyle fit;
  double names, values, w, line, em;
  SteadAxis axis;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && out != NULL);
  g_return_if_fail (series->n <= STEAD_MAX_BARS);

  *out = (SteadBarLayout) { 0 };
  fit = stead_draw_style_fit (style, width, height);
  fit.font_size = MIN (fit.font_size, MAX (height / (ROW_EM * 0.62 * series->n + 3), style->font_size * 0.6));
  em = out->font_size = fit.font_size;
  find_range (series, out);
  lay_texts (cr, series, &fit, width, &names, &values, out);
  stead_text_measure (cr, &fit, "0", 1, FALSE, &w, &line);
  out->plot.x = ceil (names + em * 0.7) + 2;
  out->plot.width = MAX (width - out->plot.x - values - em, 1);
  out->plot.y = series->base_name != NULL ? line + em * 0.5 : 1;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - line - 2, 1);
  out->ticks = stead_ticks (out->low, out->high, (int) CLAMP (out->plot.width / (em * 6), 2, 7), FALSE);
  axis = money_axis (out);
  stead_axis_measure (cr, &fit, &axis, &w, &line);
  out->ticks = stead_ticks (out->low, out->high, (int) CLAMP (out->plot.width / (w * 1.6), 2, 7), FALSE);
  lay_rows (series, em, out);
}

static void
paint_grid (cairo_t              *cr,
            const SteadDrawStyle *style,
            const SteadBarLayout *layout)
{
  SteadAxis axis = money_axis (layout);

  for (int i = 0; i < layout->ticks.n; i++)
    {
      double value = layout->ticks.first + i * layout->ticks.step;
      double x = floor (stead_axis_x (&axis, &layout->plot, value)) + 0.5;
      gboolean zero = fabs (value) < layout->ticks.step * 1e-9;

      cairo_new_path (cr);
      cairo_move_to (cr, x, layout->plot.y);
      cairo_line_to (cr, x, layout->plot.y + layout->plot.height);
      stead_stroke_line (cr, style, zero ? STEAD_ROLE_SOFT : STEAD_ROLE_RULE, STEAD_LINE_SOLID, 1);
    }
  stead_axis_paint_bottom (cr, style, &axis, &layout->plot, TICK_GAP);
}

/* From the end of each bar to the start of the next. */
static void
paint_joins (cairo_t              *cr,
             const SteadBarSeries *series,
             const SteadDrawStyle *style,
             const SteadBarLayout *layout)
{
  SteadAxis axis = money_axis (layout);

  for (int i = 0; i + 1 < series->n; i++)
    {
      double x = stead_axis_x (&axis, &layout->plot, series->bars[i].to);

      cairo_new_path (cr);
      cairo_move_to (cr, x, layout->bars[i].y + layout->bars[i].height);
      cairo_line_to (cr, x, layout->bars[i + 1].y);
      stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_SOLID, 1);
    }
}

static void
paint_base (cairo_t              *cr,
            const SteadBarSeries *series,
            const SteadDrawStyle *style,
            const SteadBarLayout *layout,
            double                right)
{
  double w, h, x;

  if (isnan (series->base))
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, layout->base_x, layout->plot.y - style->font_size * 0.2);
  cairo_line_to (cr, layout->base_x, layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (1, style->font_size / 10));
  if (series->base_name == NULL)
    return;
  stead_text_measure (cr, style, series->base_name, 1, TRUE, &w, &h);
  x = CLAMP (layout->base_x - w / 2, 2, MAX (2, right - w));
  stead_text_paint (cr, style, STEAD_ROLE_INK, series->base_name, 1, TRUE, STEAD_ALIGN_LEFT, x, h / 2 + 1);
}

static void
paint_bar (cairo_t              *cr,
           const SteadDrawStyle *style,
           const SteadBarLayout *layout,
           const SteadBar       *bar,
           int                   i,
           gboolean              marked)
{
  const SteadBox *box = &layout->bars[i];

  cairo_new_path (cr);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  stead_fill_pattern (cr, style, bar->role, bar->pattern, TRUE);
  if (marked)
    {
      cairo_new_path (cr);
      cairo_rectangle (cr, box->x - 2.5, box->y - 2.5, box->width + 5, box->height + 5);
      stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, 2);
    }
  stead_text_paint_block (cr, style, STEAD_ROLE_INK, bar->name, 1, bar->total, STEAD_ALIGN_RIGHT,
                          layout->names[i].width + 1, layout->names[i].x + layout->names[i].width,
                          layout->names[i].y + layout->names[i].height / 2);
  stead_ground_clear (cr, style, &layout->values[i]);
  stead_text_paint (cr, style, STEAD_ROLE_INK, bar->value, 1, bar->total, STEAD_ALIGN_LEFT,
                    layout->values[i].x, layout->values[i].y + layout->values[i].height / 2);
}

void
stead_bar_chart_paint (cairo_t              *cr,
                       const SteadBarSeries *series,
                       const SteadDrawStyle *style,
                       const SteadBarLayout *layout,
                       int                   marked)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  cairo_save (cr);
  paint_grid (cr, &fit, layout);
  if (series->steps)
    paint_joins (cr, series, &fit, layout);
  for (int i = 0; i < series->n; i++)
    paint_bar (cr, &fit, layout, &series->bars[i], i, i == marked);
  paint_base (cr, series, &fit, layout, layout->plot.x + layout->plot.width);
  cairo_restore (cr);
}

int
stead_bar_chart_at (const SteadBarSeries *series,
                    const SteadBarLayout *layout,
                    double                y)
{
  double row = layout->plot.height / MAX (series->n, 1);
  int i = (int) floor ((y - layout->plot.y) / row);

  return y < layout->plot.y || i >= series->n ? -1 : i;
}

/* stead-month-chart.c - columns over months. */
#include "config.h"

#include "draw/stead-month-chart.h"

#include <math.h>

#define GAP 4.0
#define COLUMN_SHARE 0.68   /* of a month's width */

static double
highest (const SteadMonthSeries *series)
{
  double high = 0;

  for (int i = 0; i < series->n; i++)
    {
      high = MAX (high, series->values[i]);
      if (series->others != NULL)
        high = MAX (high, series->others[i]);
    }
  return high > 0 ? high : 1;
}

static SteadBox
column_box (const SteadMonthLayout *layout,
            double                  left,
            double                  width,
            double                  value)
{
  double top = stead_axis_y (&layout->axis, &layout->plot, value);

  return (SteadBox) { left, top, width, layout->plot.y + layout->plot.height - top };
}

void
stead_month_chart_layout (cairo_t                *cr,
                          const SteadMonthSeries *series,
                          const SteadDrawStyle   *asked,
                          double                  width,
                          double                  height,
                          SteadMonthLayout       *out)
{
  SteadDrawStyle style = stead_draw_style_fit (asked, width, height);
  double high = highest (series);
  double text_width, text_height, each;

  g_return_if_fail (series->n >= 1 && series->n <= STEAD_MONTHS_MAX);
  *out = (SteadMonthLayout) { .font_size = style.font_size };
  out->axis.ticks = stead_ticks (0, high, MAX (2, (int) (height / (style.font_size * 3))), !series->money);
  out->axis.high = MAX (out->axis.ticks.last, high);
  out->axis.text = series->money ? stead_axis_text_money : stead_axis_text_number;
  stead_axis_measure (cr, &style, &out->axis, &text_width, &text_height);
  out->plot = (SteadBox) { text_width + 2 * GAP, text_height / 2, MAX (width - text_width - 3 * GAP, 10),
                           MAX (height - 2 * text_height - GAP, 10) };
  each = out->plot.width / series->n;
  for (int i = 0; i < series->n; i++)
    {
      double share = series->others != NULL ? COLUMN_SHARE / 2 : COLUMN_SHARE;
      double left = out->plot.x + each * (i + (1 - COLUMN_SHARE) / 2);

      out->columns[i] = column_box (out, left, each * share, series->values[i]);
      if (series->others != NULL)
        out->others[i] = column_box (out, left + each * share, each * share, series->others[i]);
    }
}

static void
paint_column (cairo_t              *cr,
              const SteadDrawStyle *style,
              const SteadBox       *box,
              SteadRole             role,
              SteadPattern          pattern)
{
  if (box->height <= 0)
    return;
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  stead_fill_pattern (cr, style, role, pattern, TRUE);
}

/* As many names as have room; the first always. */
static int
name_step (cairo_t                *cr,
           const SteadMonthSeries *series,
           const SteadDrawStyle   *style,
           double                  each)
{
  double widest = 0;

  for (int i = 0; i < series->n; i++)
    {
      double width, height;

      stead_text_measure (cr, style, series->names[i], 1, FALSE, &width, &height);
      widest = MAX (widest, width + GAP);
    }
  return MAX (1, (int) ceil (widest / each));
}

void
stead_month_chart_paint (cairo_t                *cr,
                         const SteadMonthSeries *series,
                         const SteadDrawStyle   *asked,
                         const SteadMonthLayout *layout)
{
  SteadDrawStyle style = *asked;
  double each = layout->plot.width / series->n;
  int step;

  style.font_size = layout->font_size;
  step = name_step (cr, series, &style, each);
  stead_axis_paint_left (cr, &style, &layout->axis, &layout->plot, GAP);
  for (int i = 0; i < series->n; i++)
    {
      paint_column (cr, &style, &layout->columns[i], series->role, series->pattern);
      if (series->others != NULL)
        paint_column (cr, &style, &layout->others[i], series->other_role, series->other_pattern);
      if (i % step == 0)
        stead_text_paint (cr, &style, STEAD_ROLE_SOFT, series->names[i], 1, FALSE, STEAD_ALIGN_CENTER,
                          layout->plot.x + each * (i + 0.5),
                          layout->plot.y + layout->plot.height + GAP + style.font_size * 0.8);
    }
}

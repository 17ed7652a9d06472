/* stead-price-history-chart.c - the prices of one product over time, as steps.
 *
 * Each price is named over its step and each day of change under the axis, the
 * latest first; a name that has no room is left out, never laid over another.
 */
#include "config.h"

#include <math.h>

#include "core/stead-money.h"
#include "draw/stead-axis.h"
#include "draw/stead-labels.h"
#include "draw/stead-price-history-chart.h"

#define TICK_GAP 7.0
#define RIGHT_SHARE 0.24
#define LONG_SPAN_DAYS 300    /* the days then need their year */

static SteadAxis
money_axis (const SteadPriceHistoryLayout *layout)
{
  return (SteadAxis) { 0, layout->max_cents, layout->y_ticks, stead_axis_text_money };
}

double
stead_price_history_chart_x (const SteadPriceHistoryLayout *layout,
                             SteadDay                       day)
{
  return layout->plot.x + (double) (day - layout->min_day) / (layout->max_day - layout->min_day)
                          * layout->plot.width;
}

double
stead_price_history_chart_y (const SteadPriceHistoryLayout *layout,
                             double                         cents)
{
  SteadAxis axis = money_axis (layout);

  return stead_axis_y (&axis, &layout->plot, cents);
}

static char *
day_text (const SteadPriceHistoryLayout *layout,
          SteadDay                       day)
{
  gboolean far = layout->max_day - layout->min_day > LONG_SPAN_DAYS;

  return stead_day_format (day, far ? STEAD_DAY_STYLE_MEDIUM : STEAD_DAY_STYLE_SHORT);
}

static char *
price_text (const SteadDrawStyle *style,
            gint64                cents)
{
  return stead_money_format (cents, style->currency != NULL ? style->currency : "USD");
}

static void
find_ranges (const SteadPriceHistory *history,
             SteadPriceHistoryLayout *out)
{
  gint64 most = MAX (history->cost_cents, 1);
  SteadTicks ticks;

  for (gsize i = 0; i < history->n; i++)
    most = MAX (most, history->cents[i]);
  /* Room over the highest step for its name. */
  ticks = stead_ticks (0, (double) most * 1.25, 8, TRUE);
  out->max_cents = ceil ((double) most * 1.25 / ticks.step) * ticks.step;
  out->min_day = history->n > 0 ? history->days[0] : history->today - 1;
  out->max_day = history->today;
  if (history->n > 0)
    out->max_day = MAX (out->max_day, history->days[history->n - 1] + 1);
  if (out->max_day - out->min_day < 7)
    out->max_day = out->min_day + 7;
  out->first_named = history->n > STEAD_PRICE_MAX_NAMES ? history->n - STEAD_PRICE_MAX_NAMES : 0;
}

static void
lay_plot (cairo_t                       *cr,
          const SteadPriceHistoryWords  *words,
          const SteadDrawStyle          *style,
          double                         width,
          double                         height,
          SteadPriceHistoryLayout       *out)
{
  double w, line, right = style->font_size;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  out->plot.y = line / 2 + 1;
  out->plot.height = MAX (height - out->plot.y - TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (0, out->max_cents, (int) CLAMP (out->plot.height / (line * 2.4) + 1, 2, 6), TRUE);
  axis = money_axis (out);
  stead_axis_measure (cr, style, &axis, &w, &line);
  out->plot.x = ceil (w) + TICK_GAP + 2;
  if (words->cost != NULL)
    {
      stead_text_measure_block (cr, style, words->cost, 1, FALSE, width * RIGHT_SHARE,
                                &out->cost_box.width, &out->cost_box.height);
      right = out->cost_box.width + style->font_size * 0.8 + 2;
    }
  out->plot.width = MAX (width - out->plot.x - right, 1);
}

static void
add_steps (const SteadPriceHistory       *history,
           const SteadPriceHistoryLayout *layout,
           SteadObstacles                *obstacles)
{
  for (gsize i = 0; i < history->n; i++)
    {
      SteadDay end = i + 1 < history->n ? history->days[i + 1] : layout->max_day;
      double y = stead_price_history_chart_y (layout, (double) history->cents[i]);
      double x = stead_price_history_chart_x (layout, end);

      stead_obstacles_add_stroke (obstacles, stead_price_history_chart_x (layout, history->days[i]), y, x, y);
      if (i + 1 < history->n)
        stead_obstacles_add_stroke (obstacles, x, y, x,
                                    stead_price_history_chart_y (layout, (double) history->cents[i + 1]));
    }
}

/* The names of prices and days, the latest first. */
static void
lay_names (cairo_t                 *cr,
           const SteadPriceHistory *history,
           const SteadDrawStyle    *style,
           double                   width,
           SteadPriceHistoryLayout *out)
{
  SteadObstacles obstacles = { .inside = out->plot };
  double axis_y = out->plot.y + out->plot.height + TICK_GAP, free_until = width - 1;

  add_steps (history, out, &obstacles);
  for (gsize i = history->n; i > out->first_named; i--)
    {
      SteadBox *price = &out->price_boxes[i - 1 - out->first_named];
      SteadBox *day = &out->day_boxes[i - 1 - out->first_named];
      g_autofree char *price_words = price_text (style, history->cents[i - 1]);
      g_autofree char *day_words = day_text (out, history->days[i - 1]);
      double x = stead_price_history_chart_x (out, history->days[i - 1]);
      double y = stead_price_history_chart_y (out, (double) history->cents[i - 1]);
      double w, h;

      stead_text_measure (cr, style, price_words, 1, TRUE, &w, &h);
      if (stead_labels_place (&obstacles, x + w / 2, y - h / 2 - 2, w, h, 1, price))
        stead_obstacles_add_box (&obstacles, *price);
      else
        *price = (SteadBox) { 0 };
      stead_text_measure (cr, style, day_words, 1, FALSE, &w, &h);
      x = CLAMP (x - w / 2, 1, width - w - 1);
      if (x + w > free_until)
        continue;
      *day = (SteadBox) { x, axis_y, w, h };
      free_until = x - style->font_size * 0.8;
    }
}

void
stead_price_history_chart_layout (cairo_t                       *cr,
                                  const SteadPriceHistory       *history,
                                  const SteadPriceHistoryWords  *words,
                                  const SteadDrawStyle          *style,
                                  double                         width,
                                  double                         height,
                                  SteadPriceHistoryLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && history != NULL && words != NULL && style != NULL && out != NULL);
  /* A strip: it is used at a third of a chart's height. */
  fit = stead_draw_style_fit (style, width, height * 2);
  *out = (SteadPriceHistoryLayout) { .font_size = fit.font_size };
  find_ranges (history, out);
  lay_plot (cr, words, &fit, width, height, out);
  if (words->cost != NULL)
    {
      out->cost_box.x = width - out->cost_box.width - 1;
      out->cost_box.y = stead_price_history_chart_y (out, (double) MAX (history->cost_cents, 0))
                        - out->cost_box.height / 2;
      out->cost_box.y = CLAMP (out->cost_box.y, 0,
                               MAX (0, out->plot.y + out->plot.height + TICK_GAP - out->cost_box.height));
    }
  lay_names (cr, history, &fit, width, out);
}

static void
paint_steps (cairo_t                       *cr,
             const SteadPriceHistory       *history,
             const SteadDrawStyle          *style,
             const SteadPriceHistoryLayout *layout)
{
  cairo_new_path (cr);
  for (gsize i = 0; i < history->n; i++)
    {
      SteadDay end = i + 1 < history->n ? history->days[i + 1] : layout->max_day;
      double y = stead_price_history_chart_y (layout, (double) history->cents[i]);

      cairo_line_to (cr, stead_price_history_chart_x (layout, history->days[i]), y);
      cairo_line_to (cr, stead_price_history_chart_x (layout, end), y);
    }
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, MAX (1.5, style->font_size / 6));
  for (gsize i = 0; i < history->n; i++)
    stead_mark_paint (cr, style, STEAD_ROLE_WATER, STEAD_MARK_DOT,
                      stead_price_history_chart_x (layout, history->days[i]),
                      stead_price_history_chart_y (layout, (double) history->cents[i]), style->font_size * 0.28);
}

static void
paint_names (cairo_t                       *cr,
             const SteadPriceHistory       *history,
             const SteadDrawStyle          *style,
             const SteadPriceHistoryLayout *layout)
{
  for (gsize i = layout->first_named; i < history->n; i++)
    {
      const SteadBox *price = &layout->price_boxes[i - layout->first_named];
      const SteadBox *day = &layout->day_boxes[i - layout->first_named];
      g_autofree char *price_words = price_text (style, history->cents[i]);
      g_autofree char *day_words = day_text (layout, history->days[i]);

      if (price->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_INK, price_words, 1, TRUE, STEAD_ALIGN_LEFT,
                          price->x, price->y + price->height / 2);
      if (day->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_SOFT, day_words, 1, FALSE, STEAD_ALIGN_LEFT,
                          day->x, day->y + day->height / 2);
    }
}

static void
paint_cost (cairo_t                       *cr,
            const SteadPriceHistory       *history,
            const SteadPriceHistoryWords  *words,
            const SteadDrawStyle          *style,
            const SteadPriceHistoryLayout *layout)
{
  double y = stead_price_history_chart_y (layout, (double) history->cost_cents);

  if (history->cost_cents < 0)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, y);
  cairo_line_to (cr, layout->plot.x + layout->plot.width, y);
  stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_DASHED, MAX (1, style->font_size / 9));
  if (words->cost != NULL)
    stead_text_paint_block (cr, style, STEAD_ROLE_TOMATO, words->cost, 1, FALSE, STEAD_ALIGN_LEFT,
                            layout->cost_box.width + 1, layout->cost_box.x,
                            layout->cost_box.y + layout->cost_box.height / 2);
}

void
stead_price_history_chart_paint (cairo_t                       *cr,
                                 const SteadPriceHistory       *history,
                                 const SteadPriceHistoryWords  *words,
                                 const SteadDrawStyle          *style,
                                 const SteadPriceHistoryLayout *layout)
{
  SteadDrawStyle fit;
  SteadAxis axis;

  g_return_if_fail (cr != NULL && history != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  axis = money_axis (layout);
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &axis, &layout->plot, TICK_GAP);
  paint_cost (cr, history, words, &fit, layout);
  paint_steps (cr, history, &fit, layout);
  paint_names (cr, history, &fit, layout);
  cairo_restore (cr);
}

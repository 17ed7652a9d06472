/* stead-spread-chart.c - how often each result came. */
#include "config.h"

#include "draw/stead-spread-chart.h"

#include <math.h>

#define TICK_GAP 6.0
#define ROW_EM 1.5      /* of the words over the columns */

static SteadAxis
money_axis (const SteadSpreadSeries *series,
            const SteadSpreadLayout *layout)
{
  return (SteadAxis) { series->low, layout->high, layout->ticks, stead_axis_text_money };
}

static void
lay_columns (const SteadSpreadSeries *series,
             SteadSpreadLayout       *out)
{
  double most = 1, each = out->plot.width / series->n;

  for (int i = 0; i < series->n; i++)
    most = MAX (most, series->counts[i]);
  for (int i = 0; i < series->n; i++)
    {
      double tall = out->plot.height * series->counts[i] / most;

      out->columns[i] = (SteadBox) { out->plot.x + each * i, out->plot.y + out->plot.height - tall, each, tall };
      out->below[i] = series->low + series->step * (i + 0.5) < 0;
    }
}

/* Whether the lines above row @i, which go down through it, leave words at @x alone. */
static gboolean
is_free (const SteadSpreadLayout *layout,
         int                      i,
         double                   x,
         double                   width,
         double                   gap)
{
  for (int k = 0; k < i; k++)
    if (layout->lines[k] > x - gap && layout->lines[k] < x + width + gap)
      return FALSE;
  return TRUE;
}

/* The left end of the words of row @i: over their line, or beside the lines that would cross them. */
static double
words_x (const SteadSpreadLayout *layout,
         int                      i,
         double                   width,
         double                   gap)
{
  double left = layout->plot.x, right = MAX (left, left + layout->plot.width - width);
  double centered = CLAMP (layout->lines[i] - width / 2, left, right), found = centered, least = HUGE_VAL;

  if (is_free (layout, i, centered, width, gap))
    return centered;
  for (int k = 0; k < i; k++)
    for (int side = 0; side < 2; side++)
      {
        double x = side == 0 ? layout->lines[k] - gap - width : layout->lines[k] + gap;

        if (isnan (x) || x < left || x > right || fabs (x - centered) >= least || !is_free (layout, i, x, width, gap))
          continue;
        found = x;
        least = fabs (x - centered);
      }
  return found;
}

/* Each line has its words in a row of its own, so that none stands on another. */
static void
lay_lines (cairo_t                 *cr,
           const SteadSpreadSeries *series,
           const SteadDrawStyle    *style,
           SteadSpreadLayout       *out)
{
  SteadAxis axis = money_axis (series, out);

  for (int i = 0; i < series->n_lines; i++)
    {
      const SteadSpreadLine *line = &series->lines[i];
      double width, height;

      out->lines[i] = NAN;
      if (line->cents < series->low || line->cents > out->high)
        continue;
      out->lines[i] = stead_axis_x (&axis, &out->plot, line->cents);
      stead_text_measure (cr, style, line->text, 1, line->bold, &width, &height);
      out->texts[i] = (SteadBox) { words_x (out, i, width, style->font_size / 3), style->font_size * ROW_EM * i, width, height };
    }
}

void
stead_spread_chart_layout (cairo_t                 *cr,
                           const SteadSpreadSeries *series,
                           const SteadDrawStyle    *asked,
                           double                   width,
                           double                   height,
                           SteadSpreadLayout       *out)
{
  SteadDrawStyle style;
  double text_width, text_height, top;
  SteadAxis axis;

  g_return_if_fail (cr != NULL && series != NULL && asked != NULL && out != NULL);
  g_return_if_fail (series->n >= 1 && series->n <= STEAD_MAX_SPREAD && series->step > 0);

  style = stead_draw_style_fit (asked, width, height);
  *out = (SteadSpreadLayout) { .font_size = style.font_size, .high = series->low + series->step * series->n };
  out->ticks = stead_ticks (series->low, out->high, 5, FALSE);
  axis = money_axis (series, out);
  stead_axis_measure (cr, &style, &axis, &text_width, &text_height);
  top = style.font_size * ROW_EM * series->n_lines + 4;
  out->plot = (SteadBox) { text_width / 2 + 2, top, MAX (width - text_width - 4, 10),
                           MAX (height - top - 2 * text_height - TICK_GAP - 4, 10) };
  out->ticks = stead_ticks (series->low, out->high, (int) CLAMP (out->plot.width / (text_width * 1.6), 2, 9), FALSE);
  lay_columns (series, out);
  lay_lines (cr, series, &style, out);
}

static void
paint_line (cairo_t                 *cr,
            const SteadDrawStyle    *style,
            const SteadSpreadLayout *layout,
            const SteadSpreadLine   *line,
            int                      i)
{
  const SteadBox *text = &layout->texts[i];

  if (isnan (layout->lines[i]))
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, layout->lines[i], text->y + text->height);
  cairo_line_to (cr, layout->lines[i], layout->plot.y + layout->plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, line->bold ? STEAD_LINE_SOLID : STEAD_LINE_DASHED, MAX (1, style->font_size / 9));
  stead_text_paint (cr, style, STEAD_ROLE_INK, line->text, 1, line->bold, STEAD_ALIGN_LEFT, text->x, text->y + text->height / 2);
}

void
stead_spread_chart_paint (cairo_t                 *cr,
                          const SteadSpreadSeries *series,
                          const SteadDrawStyle    *asked,
                          const SteadSpreadLayout *layout)
{
  SteadDrawStyle style;
  SteadAxis axis;
  double bottom;

  g_return_if_fail (cr != NULL && series != NULL && asked != NULL && layout != NULL);

  style = *asked;
  style.font_size = layout->font_size;
  axis = money_axis (series, layout);
  bottom = layout->plot.y + layout->plot.height;
  cairo_save (cr);
  for (int i = 0; i < series->n; i++)
    {
      const SteadBox *box = &layout->columns[i];

      if (box->height < 0.25)
        continue;
      cairo_new_path (cr);
      cairo_rectangle (cr, box->x, box->y, box->width, box->height);
      stead_fill_pattern (cr, &style, layout->below[i] ? STEAD_ROLE_TOMATO : STEAD_ROLE_WATER,
                          layout->below[i] ? STEAD_PATTERN_RISING : STEAD_PATTERN_SOLID, TRUE);
    }
  stead_rule_paint (cr, &style, STEAD_ROLE_SOFT, layout->plot.x, layout->plot.x + layout->plot.width, bottom);
  stead_axis_paint_bottom (cr, &style, &axis, &layout->plot, TICK_GAP);
  stead_text_paint (cr, &style, STEAD_ROLE_SOFT, series->x_name, 1, FALSE, STEAD_ALIGN_CENTER,
                    layout->plot.x + layout->plot.width / 2, bottom + TICK_GAP + style.font_size * 2);
  for (int i = 0; i < series->n_lines; i++)
    paint_line (cr, &style, layout, &series->lines[i], i);
  cairo_restore (cr);
}

int
stead_spread_chart_at (const SteadSpreadSeries *series,
                       const SteadSpreadLayout *layout,
                       double                   x)
{
  int i;

  g_return_val_if_fail (series != NULL && layout != NULL, -1);

  i = (int) floor ((x - layout->plot.x) / layout->plot.width * series->n);
  return i < 0 || i >= series->n ? -1 : i;
}

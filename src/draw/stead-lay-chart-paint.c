/* stead-lay-chart-paint.c - paints the laying chart that was laid out.
 *
 * A week is a dot with an ink outline, hollow if it was left out, in a ring if it is
 * far off; hens lost are crosses; feed is bars in a band of its own; the curve is a
 * line, dashed where it lies ahead, with a hatched band round it.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-lay-chart-private.h"

static void
add_curve (cairo_t              *cr,
           const SteadLaySeries *series,
           const SteadLayLayout *layout,
           double                from_age,
           double                to_age)
{
  gboolean begun = FALSE;

  cairo_new_path (cr);
  for (gsize i = 0; i + 1 < series->n_curve; i++)
    {
      double age0 = series->curve_age[i], age1 = series->curve_age[i + 1];
      double frac0 = series->curve_frac[i], run = series->curve_frac[i + 1] - frac0;
      double low = MAX (age0, from_age), high = MIN (age1, to_age);

      if (!(low < high))
        continue;
      if (!begun)
        cairo_move_to (cr, stead_lay_chart_x (layout, low),
                       stead_lay_chart_y (layout, frac0 + run * (low - age0) / (age1 - age0)));
      cairo_line_to (cr, stead_lay_chart_x (layout, high),
                     stead_lay_chart_y (layout, frac0 + run * (high - age0) / (age1 - age0)));
      begun = TRUE;
    }
}

static void
paint_curve (cairo_t              *cr,
             const SteadLaySeries *series,
             const SteadDrawStyle *style,
             const SteadLayLayout *layout)
{
  double today = layout->has_today ? series->today_age_weeks : layout->max_age;
  double width = MAX (1, style->font_size / 9);

  add_curve (cr, series, layout, layout->min_age, today);
  stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_SOLID, width);
  add_curve (cr, series, layout, today, layout->max_age);
  if (series->n_ahead > 0)
    stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_DASHED, width * 1.3);
  else
    stead_stroke_line (cr, style, STEAD_ROLE_SOFT, STEAD_LINE_DASHED, width);
}

/* There along the upper side, back along the lower one. */
static void
paint_band (cairo_t              *cr,
            const SteadLaySeries *series,
            const SteadDrawStyle *style,
            const SteadLayLayout *layout)
{
  if (series->n_ahead < 2)
    return;
  cairo_new_path (cr);
  for (gsize i = 0; i < series->n_ahead; i++)
    cairo_line_to (cr, stead_lay_chart_x (layout, series->ahead_age[i]),
                   stead_lay_chart_y (layout, series->ahead_frac[i].high));
  for (gsize i = series->n_ahead; i-- > 0;)
    cairo_line_to (cr, stead_lay_chart_x (layout, series->ahead_age[i]),
                   stead_lay_chart_y (layout, series->ahead_frac[i].low));
  cairo_close_path (cr);
  stead_fill_area (cr, style, STEAD_ROLE_EGG, STEAD_PATTERN_RISING);
}

/* The bar of one week's feed; %FALSE without feed. */
static gboolean
feed_bar (const SteadLayLayout *layout,
          const SteadLayWeek   *week,
          double                width,
          SteadBox             *out)
{
  const SteadBox *plot = &layout->feed_plot;
  double share = stead_lay_feed_kg (week) / layout->max_feed;

  out->width = width;
  out->height = plot->height * share;
  out->x = CLAMP (stead_lay_chart_x (layout, week->age_weeks) - width / 2, plot->x, plot->x + plot->width - width);
  out->y = plot->y + plot->height - out->height;
  return share > 0;
}

/* Puts all bars, or only their upper ends, into one path: filled together, bars that
 * touch show no seam. */
static void
add_feed_bars (cairo_t              *cr,
               const SteadLaySeries *series,
               const SteadLayLayout *layout,
               double                width,
               gboolean              ends)
{
  SteadBox bar;

  cairo_new_path (cr);
  for (gsize i = 0; i < series->n_weeks; i++)
    {
      if (!feed_bar (layout, &series->weeks[i], width, &bar))
        continue;
      if (!ends)
        cairo_rectangle (cr, bar.x, bar.y, bar.width, bar.height);
      else
        {
          cairo_move_to (cr, bar.x, bar.y);
          cairo_line_to (cr, bar.x + bar.width, bar.y);
        }
    }
}

static void
paint_feed (cairo_t              *cr,
            const SteadLaySeries *series,
            const SteadLayWords  *words,
            const SteadDrawStyle *style,
            const SteadLayLayout *layout)
{
  double apart = layout->plot.width / MAX (layout->max_age - layout->min_age, 1);
  /* Where weeks stand close, outlines would be all that is seen: only upper ends are inked. */
  gboolean close = apart < style->font_size * 0.5;
  double width = close ? apart : apart * 0.62;
  SteadAxis axis = stead_lay_chart_feed_axis (layout, words);

  if (layout->feed_plot.height <= 0)
    return;
  stead_axis_paint_left (cr, style, &axis, &layout->feed_plot, STEAD_LAY_TICK_GAP);
  add_feed_bars (cr, series, layout, width, FALSE);
  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_EGG, 1);
  cairo_fill (cr);
  add_feed_bars (cr, series, layout, width, close);
  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_INK, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, close ? 1 : style->font_size / 14);
  cairo_stroke (cr);
}

static void
paint_points (cairo_t              *cr,
              const SteadLaySeries *series,
              const SteadDrawStyle *style,
              const SteadLayLayout *layout,
              int                   marked)
{
  for (gsize i = 0; i < series->n_weeks; i++)
    {
      const SteadLayWeek *week = &series->weeks[i];
      double x, y;

      if (week->deaths > 0)
        stead_mark_paint (cr, style, STEAD_ROLE_TOMATO, STEAD_MARK_CROSS,
                          stead_lay_chart_x (layout, week->age_weeks), layout->lost_y,
                          MIN (layout->font_size * 0.34, layout->point_radius * 1.3));
      if (!stead_lay_chart_point (layout, week, &x, &y))
        continue;
      stead_mark_paint (cr, style, week->left_out ? STEAD_ROLE_INK : STEAD_ROLE_EGG,
                        week->left_out ? STEAD_MARK_RING : STEAD_MARK_DOT, x, y, layout->point_radius);
      if ((int) i != marked)
        continue;
      cairo_new_path (cr);
      cairo_arc (cr, x, y, layout->point_radius + layout->font_size * 0.32, 0, 2 * G_PI);
      stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (1.5, layout->font_size / 8));
    }
}

static void
paint_notes (cairo_t              *cr,
             const SteadLaySeries *series,
             const SteadDrawStyle *style,
             const SteadLayLayout *layout)
{
  for (gsize i = 0; i < series->n_notes; i++)
    {
      const SteadLayNote *note = &series->notes[i];
      double x, y;

      if (!note->far_off || note->first >= series->n_weeks
          || !stead_lay_chart_point (layout, &series->weeks[note->first], &x, &y))
        continue;
      cairo_new_path (cr);
      cairo_arc (cr, x, y, layout->point_radius + layout->font_size * 0.22, 0, 2 * G_PI);
      stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, MAX (1.2, layout->font_size / 10));
    }
  for (int i = 0; i < layout->n_notes; i++)
    {
      const SteadBox *box = &layout->note_boxes[i];

      stead_text_paint_block (cr, style, STEAD_ROLE_TOMATO, series->notes[layout->notes[i]].text, 1, FALSE,
                              STEAD_ALIGN_LEFT, layout->note_width, box->x, box->y + box->height / 2);
    }
}

static void
paint_today (cairo_t              *cr,
             const SteadLayWords  *words,
             const SteadDrawStyle *style,
             const SteadLayLayout *layout)
{
  double x = style->scheme == STEAD_SCHEME_PRINT ? layout->today_x : floor (layout->today_x) + 0.5;

  if (!layout->has_today || words->today == NULL)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y - style->font_size * 0.15);
  cairo_line_to (cr, x, layout->feed_plot.y + layout->feed_plot.height);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.75, style->font_size / 12));
  stead_text_paint (cr, style, STEAD_ROLE_INK, words->today, 1, TRUE, STEAD_ALIGN_LEFT,
                    layout->today_box.x, layout->today_box.y + layout->today_box.height / 2);
}

static void
paint_names (cairo_t              *cr,
             const SteadDrawStyle *style,
             const SteadLayLayout *layout)
{
  if (layout->narrow)
    stead_keys_paint (cr, style, layout->keys, layout->n_keys);
  else
    stead_keys_paint_right (cr, style, layout->keys, layout->n_keys, layout->right_labels_width);
}

void
stead_lay_chart_paint (cairo_t              *cr,
                       const SteadLaySeries *series,
                       const SteadLayWords  *words,
                       const SteadDrawStyle *style,
                       const SteadLayLayout *layout,
                       int                   marked)
{
  SteadDrawStyle fit;
  SteadAxis x_axis, y_axis;
  SteadBox both;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  x_axis = stead_lay_chart_x_axis (layout);
  y_axis = stead_lay_chart_y_axis (layout);
  both = layout->plot;
  both.height = layout->feed_plot.y + layout->feed_plot.height - both.y;
  cairo_save (cr);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, STEAD_LAY_TICK_GAP);
  stead_axis_paint_bottom (cr, &fit, &x_axis, &both, STEAD_LAY_TICK_GAP);
  paint_feed (cr, series, words, &fit, layout);
  if (words->rate != NULL)
    stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->rate, 1, FALSE, STEAD_ALIGN_LEFT,
                            layout->rate_box.width + 1, layout->rate_box.x,
                            layout->rate_box.y + layout->rate_box.height / 2);
  stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->axis, 1, FALSE, STEAD_ALIGN_CENTER,
                          layout->axis_box.width + 1, layout->axis_box.x + layout->axis_box.width / 2,
                          layout->axis_box.y + layout->axis_box.height / 2);
  paint_band (cr, series, &fit, layout);
  paint_today (cr, words, &fit, layout);
  paint_curve (cr, series, &fit, layout);
  paint_points (cr, series, &fit, layout, marked);
  paint_notes (cr, series, &fit, layout);
  paint_names (cr, &fit, layout);
  cairo_restore (cr);
}

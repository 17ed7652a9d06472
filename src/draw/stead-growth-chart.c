/* stead-growth-chart.c - the weight of a fish over time: where everything stands. */
#include "config.h"

#include <math.h>

#include "draw/stead-day-axis.h"
#include "draw/stead-growth-chart-private.h"

#define NARROW_EM 40.0
#define RIGHT_LABELS_SHARE 0.2
#define LOST_ABOVE_EM 0.8      /* the crosses stand so far over the zero line */

/* A band that opens wide does not press the weighings down: it leaves the plot. */
#define BAND_SHARE_MOST 1.4

#define LEAST_DAYS 28

double
stead_growth_chart_x (const SteadGrowthLayout *layout,
                      SteadDay                 day)
{
  return stead_day_axis_x (&layout->x_axis, &layout->plot, day);
}

SteadAxis
stead_growth_chart_y_axis (const SteadGrowthLayout *layout)
{
  return (SteadAxis) { 0, layout->max_g * layout->factor, layout->y_ticks, stead_axis_text_number };
}

double
stead_growth_chart_y (const SteadGrowthLayout *layout,
                      double                   weight_g)
{
  return layout->plot.y + layout->plot.height * (1 - weight_g / layout->max_g);
}

int
stead_growth_chart_nearest_mark (const SteadGrowthLayout *layout,
                                 const SteadGrowthSeries *series,
                                 double                   x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_marks; i++)
    if (fabs (stead_growth_chart_x (layout, series->marks[i].day) - x) < least)
      {
        least = fabs (stead_growth_chart_x (layout, series->marks[i].day) - x);
        nearest = (int) i;
      }
  return nearest;
}

int
stead_growth_chart_nearest_step (const SteadGrowthLayout *layout,
                                 const SteadGrowthSeries *series,
                                 double                   x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_steps; i++)
    if (fabs (stead_growth_chart_x (layout, series->steps[i].day) - x) < least)
      {
        least = fabs (stead_growth_chart_x (layout, series->steps[i].day) - x);
        nearest = (int) i;
      }
  return nearest;
}

/* --- ranges -------------------------------------------------------------------------- */

static void
find_what_there_is (const SteadGrowthSeries *series,
                    SteadGrowthLayout       *out)
{
  out->has_today = series->today != STEAD_DAY_NONE;
  out->has_ahead = out->has_today && series->n_steps > 0 && series->steps[series->n_steps - 1].day > series->today;
  out->has_lost = series->n_losses > 0;
  out->has_sale = series->sale_g > 0;
  out->has_sale_day = out->has_sale && series->sale_day != STEAD_DAY_NONE;
  for (gsize i = 0; i < series->n_marks; i++)
    out->has_not_counted |= series->marks[i].left_out || series->marks[i].far_off;
}

/* The heaviest that is to be seen: weighings with their spread, the line, the sale weight. */
static double
find_most (const SteadGrowthSeries *series)
{
  double most = series->sale_g > 0 ? series->sale_g * 1.08 : 0, band = 0;

  for (gsize i = 0; i < series->n_marks; i++)
    {
      const SteadGrowthMark *mark = &series->marks[i];

      most = MAX (most, mark->mean_g + (isnan (mark->sd_g) ? 0 : mark->sd_g));
    }
  for (gsize i = 0; i < series->n_steps; i++)
    {
      most = MAX (most, series->steps[i].likely_g);
      band = MAX (band, series->steps[i].high_g);
    }
  most = MAX (most, MIN (band, most * BAND_SHARE_MOST));
  return most > 0 ? most * 1.02 : 1;
}

static SteadDay
find_last (const SteadGrowthSeries *series)
{
  SteadDay last = MAX (series->first + LEAST_DAYS, series->today == STEAD_DAY_NONE ? series->first : series->today);

  if (series->n_steps > 0)
    last = MAX (last, series->steps[series->n_steps - 1].day);
  if (series->n_marks > 0)
    last = MAX (last, series->marks[series->n_marks - 1].day);
  if (series->n_losses > 0)
    last = MAX (last, series->losses[series->n_losses - 1].day);
  if (series->sale_g > 0 && series->sale_day != STEAD_DAY_NONE)
    last = MAX (last, series->sale_day);
  return last;
}

/* --- names --------------------------------------------------------------------------- */

static void
add_key (SteadGrowthLayout *out,
         gboolean           there,
         SteadKey           key)
{
  if (there && key.text != NULL)
    out->keys[out->n_keys++] = key;
}

static void
fill_keys (const SteadGrowthWords *words,
           const SteadDrawStyle   *style,
           SteadGrowthLayout      *out)
{
  double line = MAX (1, style->font_size / 9);

  add_key (out, out->has_ahead, (SteadKey) { .text = words->expected, .role = STEAD_ROLE_FISH,
                                             .line = STEAD_LINE_DASHED, .line_width = line });
  add_key (out, out->has_sale, (SteadKey) { .text = words->sale, .role = STEAD_ROLE_WATER,
                                            .line = STEAD_LINE_SOLID, .line_width = line });
  add_key (out, out->has_not_counted, (SteadKey) { .text = words->not_counted, .role = STEAD_ROLE_INK,
                                                   .mark = STEAD_MARK_RING });
  add_key (out, out->has_lost, (SteadKey) { .text = words->lost, .role = STEAD_ROLE_TOMATO,
                                            .mark = STEAD_MARK_CROSS });
}

static void
name_boxes (const SteadGrowthWords *words,
            SteadGrowthLayout      *out)
{
  for (int i = 0; i < out->n_keys; i++)
    {
      const SteadKey *key = &out->keys[i];

      if (key->text == words->expected)
        out->expected_box = key->box;
      else if (key->text == words->sale)
        out->sale_box = key->box;
      else if (key->text == words->lost)
        out->lost_box = key->box;
      else
        out->not_counted_box = key->box;
    }
}

/* --- the plot -------------------------------------------------------------------------- */

static double
right_room (cairo_t              *cr,
            const SteadDrawStyle *style,
            double                width,
            SteadGrowthLayout    *out)
{
  if (out->narrow || out->n_keys == 0)
    return style->font_size * 2;
  out->right_labels_width = stead_keys_measure_right (cr, style, out->keys, out->n_keys, width * RIGHT_LABELS_SHARE);
  return out->right_labels_width + style->font_size * 1.7;
}

/* From top to bottom: name of the axis, keys, the sale day, today, the plot, its dates. */
static void
lay_plot (cairo_t                *cr,
          const SteadGrowthWords *words,
          const SteadDrawStyle   *style,
          double                  width,
          double                  height,
          SteadGrowthLayout      *out)
{
  double em = style->font_size, top = 1, w, line, title = 0;
  SteadAxis y_axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  if (words->weight != NULL)
    {
      stead_text_measure_block (cr, style, words->weight, 1, FALSE, width - 4, &w, &title);
      out->weight_box = (SteadBox) { 2, top, w, title };
      top += title + em * 0.2;
    }
  if (out->narrow && out->n_keys > 0)
    top += stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4) + em * 0.2;
  if (out->has_sale_day && words->sale_day != NULL)
    {
      stead_text_measure (cr, style, words->sale_day, 1, TRUE, &out->sale_day_box.width, &out->sale_day_box.height);
      out->sale_day_box.y = top;
      top += out->sale_day_box.height + em * 0.1;
    }
  out->plot.y = top + line + em * 0.4;      /* the name of today stands in this row */
  out->plot.height = MAX (height - out->plot.y - STEAD_GROWTH_TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (0, out->max_g * out->factor, (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 6), FALSE);
  y_axis = stead_growth_chart_y_axis (out);
  stead_axis_measure (cr, style, &y_axis, &w, &line);
  out->plot.x = ceil (w) + STEAD_GROWTH_TICK_GAP + 2;
  out->plot.width = MAX (width - out->plot.x - right_room (cr, style, width, out), 1);
  out->right_labels_x = width - out->right_labels_width;
}

/* A date in the middle of its tick may reach over the left end of the box. */
static void
lay_days (cairo_t                 *cr,
          const SteadGrowthSeries *series,
          const SteadDrawStyle    *style,
          double                   width,
          SteadGrowthLayout       *out)
{
  double w, h;

  out->x_axis = stead_day_axis (cr, style, series->first, find_last (series), out->plot.width);
  stead_axis_measure (cr, style, &out->x_axis, &w, &h);
  if (out->plot.x < w / 2 + 1)
    {
      out->plot.width = MAX (out->plot.width - (w / 2 + 1 - out->plot.x), 1);
      out->plot.x = w / 2 + 1;
    }
  if (out->plot.x + out->plot.width + w / 2 + 1 > width)
    out->plot.width = MAX (width - w / 2 - 1 - out->plot.x, 1);
  out->x_axis = stead_day_axis (cr, style, series->first, find_last (series), out->plot.width);
}

static void
lay_right_labels (cairo_t                 *cr,
                  const SteadGrowthSeries *series,
                  const SteadGrowthWords  *words,
                  const SteadDrawStyle    *style,
                  SteadGrowthLayout       *out)
{
  double want_y[STEAD_MAX_KEYS];

  for (int i = 0; i < out->n_keys; i++)
    {
      const SteadKey *key = &out->keys[i];

      want_y[i] = out->plot.y + out->plot.height / 2;
      if (key->text == words->lost)
        want_y[i] = out->lost_y;
      else if (key->text == words->sale)
        want_y[i] = stead_growth_chart_y (out, series->sale_g);
      else if (key->text == words->expected)
        want_y[i] = stead_growth_chart_y (out, series->steps[series->n_steps - 1].likely_g);
    }
  stead_keys_layout_right (cr, style, out->keys, want_y, out->n_keys, out->right_labels_x, out->right_labels_width,
                           out->plot.y - style->font_size * 0.3,
                           out->plot.y + out->plot.height + STEAD_GROWTH_TICK_GAP - 1);
}

/* Over the plot, with its middle over @x, inside the box. */
static void
lay_over (SteadGrowthLayout *out,
          double             x,
          double             width,
          SteadBox          *box)
{
  box->x = MIN (MAX (x - box->width / 2, out->plot.x - 2), width - box->width - 2);
  box->x = MAX (box->x, 2);
}

static void
lay_sale (const SteadGrowthSeries *series,
          double                   width,
          SteadGrowthLayout       *out)
{
  if (!out->has_sale_day)
    return;
  out->sale_x = stead_growth_chart_x (out, series->sale_day);
  out->sale_y = stead_growth_chart_y (out, series->sale_g);
  out->soonest_x = series->sale_soonest != STEAD_DAY_NONE ? stead_growth_chart_x (out, series->sale_soonest) : out->sale_x;
  out->latest_x = series->sale_latest != STEAD_DAY_NONE ? stead_growth_chart_x (out, series->sale_latest)
                                                        : out->plot.x + out->plot.width;
  lay_over (out, out->sale_x, width, &out->sale_day_box);
}

void
stead_growth_chart_layout (cairo_t                 *cr,
                           const SteadGrowthSeries *series,
                           const SteadGrowthWords  *words,
                           const SteadDrawStyle    *style,
                           double                   width,
                           double                   height,
                           SteadGrowthLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && out != NULL);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadGrowthLayout) { .font_size = fit.font_size, .narrow = width < NARROW_EM * fit.font_size,
                               .factor = words->factor > 0 ? words->factor : 1 };
  find_what_there_is (series, out);
  out->max_g = find_most (series);
  fill_keys (words, &fit, out);
  lay_plot (cr, words, &fit, width, height, out);
  lay_days (cr, series, &fit, width, out);
  out->lost_y = out->plot.y + out->plot.height - fit.font_size * LOST_ABOVE_EM;
  out->today_x = stead_growth_chart_x (out, out->has_today ? series->today : series->first);
  lay_sale (series, width, out);
  if (!out->narrow)
    lay_right_labels (cr, series, words, &fit, out);
  name_boxes (words, out);
  if (out->has_today && words->today != NULL)
    {
      stead_text_measure (cr, &fit, words->today, 1, TRUE, &out->today_box.width, &out->today_box.height);
      out->today_box.y = out->plot.y - out->today_box.height - fit.font_size * 0.2;
      lay_over (out, out->today_x, width, &out->today_box);
    }
}

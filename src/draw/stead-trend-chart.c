/* stead-trend-chart.c - one reading over time: where everything stands. */
#include "config.h"

#include <math.h>

#include "core/stead-quantity.h"
#include "draw/stead-labels.h"
#include "draw/stead-trend-chart-private.h"

#define NARROW_EM 40.0
#define RIGHT_LABELS_SHARE 0.24

/* An end of the limits so many times above (below) all readings is far off. */
#define FAR_TIMES 4.0
/* An end at which harm begins may stretch the axis by this share. */
#define HARM_STRETCH 0.5

/* Room over and under what is shown, and the share from which on the axis starts at 0. */
#define PAD_SHARE 0.08
#define ZERO_SHARE 0.35

/* As many digits as the steps need: 0.005 is not "0.01". */
static char *
text_reading (const SteadAxis      *axis,
              const SteadDrawStyle *style,
              double                value)
{
  int digits = 0;

  for (double step = axis->ticks.step; digits < 4 && fabs (step - round (step)) > 1e-6; step *= 10)
    digits++;
  return stead_number_format (value, digits);
}

SteadAxis
stead_trend_chart_y_axis (const SteadTrendLayout *layout)
{
  return (SteadAxis) { layout->low, layout->high, layout->y_ticks, text_reading };
}

double
stead_trend_chart_x (const SteadTrendLayout *layout,
                     double                  day)
{
  return layout->plot.x + (day - layout->from) / (layout->to - layout->from) * layout->plot.width;
}

double
stead_trend_chart_y (const SteadTrendLayout *layout,
                     double                  value)
{
  SteadAxis axis = stead_trend_chart_y_axis (layout);

  return stead_axis_y (&axis, &layout->plot, value);
}

void
stead_trend_chart_point (const SteadTrendLayout  *layout,
                         const SteadReadingPoint *point,
                         double                  *x,
                         double                  *y)
{
  *x = stead_trend_chart_x (layout, point->day);
  *y = stead_trend_chart_y (layout, point->value);
}

int
stead_trend_chart_nearest (const SteadTrendLayout   *layout,
                           const SteadReadingSeries *series,
                           double                    x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_points; i++)
    {
      double away = fabs (stead_trend_chart_x (layout, series->points[i].day) - x);

      if (away < least)
        {
          least = away;
          nearest = (int) i;
        }
    }
  return nearest;
}

/* --- ranges ------------------------------------------------------------------------ */

static void
take_in (double  value,
         double *low,
         double *high)
{
  *low = fmin (*low, value);      /* NAN is passed over */
  *high = fmax (*high, value);
}

/* What was read, and where the line leads. */
static void
find_readings (const SteadReadingSeries *series,
               double                   *low,
               double                   *high)
{
  *low = INFINITY;
  *high = -INFINITY;
  for (gsize i = 0; i < series->n_points; i++)
    take_in (series->points[i].value, low, high);
  if (series->trend != NULL)
    take_in (MAX (0, stead_trend_at (series->trend, series->ahead_days)), low, high);
}

static void
find_range (const SteadReadingSeries *series,
            SteadTrendLayout         *out)
{
  double low, high, read_low, read_high, span;

  find_readings (series, &read_low, &read_high);
  low = read_low;
  high = read_high;
  if (series->n_points == 0)
    {
      take_in (series->min, &low, &high);
      take_in (series->max, &low, &high);
      take_in (series->act_below, &low, &high);
      take_in (series->act_above, &low, &high);
    }
  if (series->max <= FAR_TIMES * read_high || read_high <= 0)
    take_in (series->max, &low, &high);
  if (series->min >= read_low / FAR_TIMES)
    take_in (series->min, &low, &high);
  span = isfinite (low) ? high - low : 0;
  if (series->act_above <= high + HARM_STRETCH * span)
    take_in (series->act_above, &low, &high);
  if (series->act_below >= low - HARM_STRETCH * span)
    take_in (series->act_below, &low, &high);
  if (!isfinite (low))
    low = high = 0;
  span = MAX (high - low, MAX (fabs (high) * 0.1, 1e-3));
  out->high = high + span * PAD_SHARE;
  out->low = low - span * PAD_SHARE;
  if (low >= 0 && (out->low < 0 || low < ZERO_SHARE * high))
    out->low = 0;
}

static void
find_days (const SteadReadingSeries *series,
           SteadTrendLayout         *out)
{
  out->from = series->from;
  out->to = MAX (series->to, series->from + 7) + 1;   /* the end of the last day */
  if (series->n_points > 0)
    out->from = MIN (out->from, (SteadDay) floor (series->points[0].day));
}

/* --- names of the ends ---------------------------------------------------------------- */

static gboolean
is_inside (const SteadTrendLayout *layout,
           double                  value)
{
  return value >= layout->low && value <= layout->high;
}

/* A name, with an arrow if what it names lies outside; keys over a narrow plot name
 * only what is in it. */
static void
add_end (const char           *text,
         double                value,
         SteadRole             role,
         SteadLine             line,
         const SteadDrawStyle *style,
         SteadTrendLayout     *out)
{
  int i = out->n_keys;

  if (text == NULL || isnan (value) || (out->narrow && !is_inside (out, value)))
    return;
  out->arrows[i] = value > out->high ? 1 : value < out->low ? -1 : 0;
  out->keys[i] = (SteadKey) { .text = text, .role = role, .line = line, .line_width = MAX (1, style->font_size / 9) };
  out->n_keys++;
}

/* From the top of the plot to its bottom, as far as they stand so. */
static void
fill_keys (const SteadReadingSeries *series,
           const SteadTrendWords    *words,
           const SteadDrawStyle     *style,
           SteadTrendLayout         *out)
{
  add_end (words->harm_above, series->act_above, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, style, out);
  add_end (words->most, series->max, STEAD_ROLE_INK, STEAD_LINE_DASHED, style, out);
  if (series->trend != NULL && words->ahead != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->ahead, .role = STEAD_ROLE_FISH, .line = STEAD_LINE_DOTTED,
                                            .line_width = MAX (1, style->font_size / 7) };
  add_end (words->least, series->min, STEAD_ROLE_INK, STEAD_LINE_DASHED, style, out);
  add_end (words->harm_below, series->act_below, STEAD_ROLE_TOMATO, STEAD_LINE_SOLID, style, out);
}

static double
key_y (const SteadReadingSeries *series,
       const SteadTrendWords    *words,
       const SteadTrendLayout   *layout,
       int                       key)
{
  const char *text = layout->keys[key].text;
  const char *ends[] = { words->harm_above, words->most, words->least, words->harm_below };
  double values[] = { series->act_above, series->max, series->min, series->act_below };

  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    if (text == ends[i])
      return stead_trend_chart_y (layout, CLAMP (values[i], layout->low, layout->high));
  return stead_trend_chart_y (layout, CLAMP (stead_trend_at (series->trend, series->ahead_days),
                                             layout->low, layout->high));
}

static void
lay_right_labels (cairo_t                  *cr,
                  const SteadReadingSeries *series,
                  const SteadTrendWords    *words,
                  const SteadDrawStyle     *style,
                  SteadTrendLayout         *out)
{
  SteadEndLabel labels[STEAD_MAX_KEYS];

  for (int i = 0; i < out->n_keys; i++)
    {
      SteadKey *key = &out->keys[i];

      stead_text_measure_block (cr, style, key->text, 1, FALSE, out->right_labels_width,
                                &key->box.width, &key->box.height);
      labels[i] = (SteadEndLabel) { .want_y = key_y (series, words, out, i), .height = key->box.height };
    }
  stead_labels_spread (labels, out->n_keys, out->plot.y - style->font_size * 0.3,
                       out->plot.y + out->plot.height + STEAD_TREND_TICK_GAP - 1);
  for (int i = 0; i < out->n_keys; i++)
    {
      out->keys[i].box.x = out->right_labels_x;
      out->keys[i].box.y = labels[i].y - labels[i].height / 2;
    }
}

/* --- boxes ------------------------------------------------------------------------------ */

/* Half of a date may stand beyond either end of the plot. */
static double
half_date (cairo_t                *cr,
           const SteadDrawStyle   *style,
           double                  width,
           const SteadTrendLayout *layout)
{
  SteadAxis days = stead_day_axis (cr, style, layout->from, layout->to, width);
  double w, h;

  stead_axis_measure (cr, style, &days, &w, &h);
  return ceil (w / 2) + 2;
}

static double
right_room (cairo_t              *cr,
            const SteadDrawStyle *style,
            double                width,
            SteadTrendLayout     *out)
{
  double widest = 0;

  if (out->narrow)
    return half_date (cr, style, width, out);
  for (int i = 0; i < out->n_keys; i++)
    {
      double w, h;

      stead_text_measure_block (cr, style, out->keys[i].text, 1, FALSE, width * RIGHT_LABELS_SHARE, &w, &h);
      widest = MAX (widest, w);
    }
  out->right_labels_width = ceil (widest) + 1;
  return out->right_labels_width + style->font_size * 1.2;
}

static void
lay_plot (cairo_t               *cr,
          const SteadTrendWords *words,
          const SteadDrawStyle  *style,
          double                 width,
          double                 height,
          SteadTrendLayout      *out)
{
  double em = style->font_size, top = 1, w, line, h;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  if (out->narrow && out->n_keys > 0)
    top += stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4) + em * 0.3;
  if (words->unit != NULL)
    {
      stead_text_measure (cr, style, words->unit, 1, FALSE, &w, &h);
      out->unit_box = (SteadBox) { 2, top, w, h };
    }
  out->plot.y = top + line + em * 0.4;      /* the unit and the name of today stand in this row */
  out->plot.height = MAX (height - out->plot.y - STEAD_TREND_TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (out->low, out->high, (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 7), FALSE);
  axis = stead_trend_chart_y_axis (out);
  stead_axis_measure (cr, style, &axis, &w, &h);
  out->plot.x = MAX (ceil (w) + STEAD_TREND_TICK_GAP + 2, half_date (cr, style, width, out));
  out->plot.width = MAX (width - out->plot.x - right_room (cr, style, width, out), 1);
  out->right_labels_x = width - out->right_labels_width;
}

static void
lay_today (cairo_t               *cr,
           const SteadTrendWords *words,
           const SteadDrawStyle  *style,
           double                 width,
           SteadTrendLayout      *out)
{
  SteadBox *box = &out->today_box;
  double least = out->unit_box.x + out->unit_box.width + style->font_size * 0.6;

  if (words->today == NULL)
    return;
  stead_text_measure (cr, style, words->today, 1, TRUE, &box->width, &box->height);
  box->x = MIN (out->today_x - box->width / 2, width - box->width - 2);
  box->x = MAX (box->x, least);
  box->y = out->plot.y - box->height - style->font_size * 0.2;
}

static double
point_radius (const SteadReadingSeries *series,
              const SteadDrawStyle     *style,
              const SteadTrendLayout   *layout)
{
  double apart = layout->plot.width / MAX ((double) series->n_points, 1);

  return CLAMP (apart * 0.42, style->font_size * 0.2, style->font_size * 0.36);
}

void
stead_trend_chart_layout (cairo_t                  *cr,
                          const SteadReadingSeries *series,
                          const SteadTrendWords    *words,
                          const SteadDrawStyle     *style,
                          double                    width,
                          double                    height,
                          SteadTrendLayout         *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && out != NULL);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadTrendLayout) { .font_size = fit.font_size, .narrow = width < NARROW_EM * fit.font_size };
  find_days (series, out);
  find_range (series, out);
  fill_keys (series, words, &fit, out);
  lay_plot (cr, words, &fit, width, height, out);
  out->days = stead_day_axis (cr, &fit, out->from, out->to, out->plot.width);
  out->point_radius = point_radius (series, &fit, out);
  out->today_x = stead_trend_chart_x (out, series->today + 0.5);
  if (!out->narrow)
    lay_right_labels (cr, series, words, &fit, out);
  lay_today (cr, words, &fit, width, out);
}

/* stead-cooling-chart.c - a pot that cools: where everything stands. */
#include "config.h"

#include <math.h>

#include "core/stead-clock.h"
#include "draw/stead-cooling-chart-private.h"

#define NARROW_EM 40.0
#define RIGHT_LABELS_SHARE 0.18
#define DAY_MIN (24 * 60)

/* Room over and under all that is shown, °F. */
#define PAD_F 5.0

/* Colder than this a pot is not shown unless it was. */
#define USUAL_LOW_F 36.0

static char *
text_clock (const SteadAxis      *axis,
            const SteadDrawStyle *style,
            double                value)
{
  return stead_minute_format ((int) fmod (value, DAY_MIN));
}

static double
shown (const SteadCoolingLayout *layout,
       double                    temp_f)
{
  return layout->celsius ? (temp_f - 32) / 1.8 : temp_f;
}

SteadAxis
stead_cooling_chart_y_axis (const SteadCoolingLayout *layout)
{
  return (SteadAxis) { shown (layout, layout->low_f), shown (layout, layout->high_f), layout->y_ticks,
                       stead_axis_text_number };
}

double
stead_cooling_chart_x (const SteadCoolingLayout *layout,
                       const SteadCoolingSeries *series,
                       double                    minute)
{
  return stead_axis_x (&layout->x_axis, &layout->plot, series->first_of_day + minute);
}

double
stead_cooling_chart_y (const SteadCoolingLayout *layout,
                       double                    temp_f)
{
  return layout->plot.y + layout->plot.height * (layout->high_f - temp_f) / (layout->high_f - layout->low_f);
}

int
stead_cooling_chart_nearest (const SteadCoolingLayout *layout,
                             const SteadCoolingSeries *series,
                             double                    x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_readings; i++)
    {
      double away = fabs (stead_cooling_chart_x (layout, series, series->readings[i].minute) - x);

      if (away < least)
        {
          least = away;
          nearest = (int) i;
        }
    }
  return nearest;
}

/* --- ranges -------------------------------------------------------------------------- */

static void
find_range (const SteadCoolingSeries *series,
            SteadCoolingLayout       *out)
{
  double low = USUAL_LOW_F, high = 0;

  for (gsize i = 0; i < series->n_marks; i++)
    {
      low = MIN (low, series->marks[i].temp_f);
      high = MAX (high, series->marks[i].temp_f);
    }
  for (gsize i = 0; i < series->n_readings; i++)
    {
      low = MIN (low, series->readings[i].temp_f);
      high = MAX (high, series->readings[i].temp_f);
    }
  out->low_f = low - PAD_F;
  out->high_f = MAX (high, low + 10) + PAD_F;
}

/* Whole quarters of an hour, as few as stand apart. */
static void
lay_hours (cairo_t                  *cr,
           const SteadCoolingSeries *series,
           const SteadDrawStyle     *style,
           SteadCoolingLayout       *out)
{
  static const double steps[] = { 15, 30, 60, 120, 240, 480, 1440 };
  double low = series->first_of_day, high = low + MAX (series->end_min, 60);
  double w, h;

  out->x_axis = (SteadAxis) { low, high, { 0 }, text_clock };
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      SteadTicks *ticks = &out->x_axis.ticks;

      ticks->step = steps[i];
      ticks->first = ceil (low / steps[i]) * steps[i];
      ticks->n = (int) floor ((high - ticks->first) / steps[i]) + 1;
      ticks->last = ticks->first + (ticks->n - 1) * steps[i];
      stead_axis_measure (cr, style, &out->x_axis, &w, &h);
      if ((w + style->font_size) * (high - low) / steps[i] <= out->plot.width)
        return;
    }
}

/* --- names ------------------------------------------------------------------------------ */

static void
fill_keys (const SteadCoolingSeries *series,
           const SteadCoolingWords  *words,
           const SteadDrawStyle     *style,
           SteadCoolingLayout       *out)
{
  double line = MAX (1, style->font_size / 9);

  if (series->n_marks > 0 && words->too_warm != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->too_warm, .role = STEAD_ROLE_TOMATO,
                                            .line = STEAD_LINE_SOLID, .line_width = line };
  if (series->n_steps > 0 && words->expected != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->expected, .role = STEAD_ROLE_FISH,
                                            .line = STEAD_LINE_DASHED, .line_width = line };
}

static void
lay_right_labels (cairo_t                  *cr,
                  const SteadCoolingSeries *series,
                  const SteadCoolingWords  *words,
                  const SteadDrawStyle     *style,
                  SteadCoolingLayout       *out)
{
  double want_y[STEAD_MAX_KEYS];

  for (int i = 0; i < out->n_keys; i++)
    want_y[i] = out->keys[i].text == words->too_warm
                ? out->plot.y + out->plot.height * 0.25
                : stead_cooling_chart_y (out, CLAMP (series->steps[series->n_steps - 1].likely_f, out->low_f, out->high_f));
  stead_keys_layout_right (cr, style, out->keys, want_y, out->n_keys, out->right_labels_x, out->right_labels_width,
                           out->plot.y - style->font_size * 0.3,
                           out->plot.y + out->plot.height + STEAD_COOLING_TICK_GAP - 1);
}

/* --- boxes ------------------------------------------------------------------------------ */

static double
right_room (cairo_t              *cr,
            const SteadDrawStyle *style,
            double                width,
            SteadCoolingLayout   *out)
{
  double w, h;
  SteadAxis day = { 0, DAY_MIN, { 720, 720, 1440, 2 }, text_clock };

  stead_axis_measure (cr, style, &day, &w, &h);
  if (out->narrow || out->n_keys == 0)
    return w / 2 + style->font_size;
  out->right_labels_width = stead_keys_measure_right (cr, style, out->keys, out->n_keys, width * RIGHT_LABELS_SHARE);
  return MAX (out->right_labels_width + style->font_size * 1.7, w / 2 + style->font_size);
}

/* Rows over the plot: the unit, keys, the two marks (one under the other where they would
 * touch), and the row of now and of the last minute to act. */
static void
lay_plot (cairo_t                  *cr,
          const SteadCoolingSeries *series,
          const SteadCoolingWords  *words,
          const SteadDrawStyle     *style,
          double                    width,
          double                    height,
          SteadCoolingLayout       *out)
{
  double em = style->font_size, top = 1, w, line, h = 0;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  if (words->unit != NULL)
    {
      stead_text_measure_block (cr, style, words->unit, 1, FALSE, width - 4, &w, &h);
      out->unit_box = (SteadBox) { 2, top, w, h };
      top += h + em * 0.2;
    }
  if (out->narrow && out->n_keys > 0)
    top += stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4) + em * 0.2;
  for (gsize i = 0; i < series->n_marks; i++)
    if (words->marks[i] != NULL)
      {
        SteadBox *box = &out->mark_box[i];

        stead_text_measure (cr, style, words->marks[i], 1, FALSE, &box->width, &box->height);
        box->y = top;
        top += box->height + em * 0.1;
      }
  if (words->act != NULL && !isnan (series->act_min))
    {
      stead_text_measure (cr, style, words->act, 1, TRUE, &out->act_box.width, &out->act_box.height);
      out->act_box.y = top;
      top += out->act_box.height + em * 0.1;
    }
  out->plot.y = top + line + em * 0.4;      /* the name of now stands in this row */
  out->plot.height = MAX (height - out->plot.y - STEAD_COOLING_TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (shown (out, out->low_f), shown (out, out->high_f),
                              (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 7), FALSE);
  axis = stead_cooling_chart_y_axis (out);
  stead_axis_measure (cr, style, &axis, &w, &h);
  out->plot.x = ceil (w) + STEAD_COOLING_TICK_GAP + 2;
  out->plot.width = MAX (width - out->plot.x - right_room (cr, style, width, out), 1);
  out->right_labels_x = width - out->right_labels_width;
}

/* A clock in the middle of its tick may reach over the left end of the box. */
static void
make_room_left (cairo_t              *cr,
                const SteadDrawStyle *style,
                SteadCoolingLayout   *out)
{
  double w, h, least;

  stead_axis_measure (cr, style, &out->x_axis, &w, &h);
  least = w / 2 + 2;
  if (out->plot.x >= least)
    return;
  out->plot.width = MAX (out->plot.width - (least - out->plot.x), 1);
  out->plot.x = least;
}

/* With its middle over @x, inside the box. */
static void
lay_over (double    x,
          double    width,
          SteadBox *box)
{
  box->x = MAX (MIN (x - box->width / 2, width - box->width - 2), 2);
}

/* Off a line that runs down through the row of @box, to the side where most of it stands. */
static void
keep_off (double    line_x,
          double    gap,
          double    width,
          SteadBox *box)
{
  if (box->width <= 0 || line_x <= box->x - gap || line_x >= box->x + box->width + gap)
    return;
  if (line_x >= box->x + box->width / 2)
    box->x = MAX (line_x - gap - box->width, 2);
  else
    box->x = MIN (line_x + gap, width - box->width - 2);
}

static void
lay_marks (const SteadCoolingSeries *series,
           const SteadDrawStyle     *style,
           double                    width,
           SteadCoolingLayout       *out)
{
  for (gsize i = 0; i < series->n_marks; i++)
    {
      out->due_x[i] = stead_cooling_chart_x (out, series, series->marks[i].due_min);
      out->due_y[i] = stead_cooling_chart_y (out, series->marks[i].temp_f);
      lay_over (out->due_x[i], width, &out->mark_box[i]);
    }
  /* The second name stands in the row under the first. */
  if (series->n_marks > 1 && out->mark_box[0].width > 0)
    keep_off (out->due_x[0], style->font_size * 0.4, width, &out->mark_box[1]);
}

static void
keep_off_marks (const SteadCoolingSeries *series,
                const SteadDrawStyle     *style,
                double                    width,
                const SteadCoolingLayout *layout,
                SteadBox                 *box)
{
  for (gsize i = 0; i < series->n_marks; i++)
    if (layout->mark_box[i].width > 0)
      keep_off (layout->due_x[i], style->font_size * 0.4, width, box);
}

static void
lay_now (cairo_t                  *cr,
         const SteadCoolingSeries *series,
         const SteadCoolingWords  *words,
         const SteadDrawStyle     *style,
         double                    width,
         SteadCoolingLayout       *out)
{
  SteadBox *box = &out->now_box;

  out->has_now = !isnan (series->now_min) && series->now_min <= series->end_min;
  out->has_act = out->act_box.width > 0;
  out->has_ahead = series->n_steps > 0;
  if (out->has_act)
    {
      out->act_x = stead_cooling_chart_x (out, series, series->act_min);
      lay_over (out->act_x, width, &out->act_box);
      keep_off_marks (series, style, width, out, &out->act_box);
    }
  if (!out->has_now || words->now == NULL)
    return;
  out->now_x = stead_cooling_chart_x (out, series, series->now_min);
  stead_text_measure (cr, style, words->now, 1, TRUE, &box->width, &box->height);
  box->y = out->plot.y - box->height - style->font_size * 0.2;
  lay_over (out->now_x, width, box);
  keep_off_marks (series, style, width, out, box);
  if (out->has_act && out->act_x != out->now_x)
    keep_off (out->act_x, style->font_size * 0.4, width, box);
}

void
stead_cooling_chart_layout (cairo_t                  *cr,
                            const SteadCoolingSeries *series,
                            const SteadCoolingWords  *words,
                            const SteadDrawStyle     *style,
                            double                    width,
                            double                    height,
                            SteadCoolingLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && out != NULL);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadCoolingLayout) { .font_size = fit.font_size, .narrow = width < NARROW_EM * fit.font_size,
                                .celsius = words->celsius };
  find_range (series, out);
  fill_keys (series, words, &fit, out);
  lay_plot (cr, series, words, &fit, width, height, out);
  lay_hours (cr, series, &fit, out);
  make_room_left (cr, &fit, out);
  lay_marks (series, &fit, width, out);
  lay_now (cr, series, words, &fit, width, out);
  if (!out->narrow)
    lay_right_labels (cr, series, words, &fit, out);
}

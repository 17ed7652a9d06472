/* stead-harvest-chart.c - what is picked of a crop week by week: where everything stands. */
#include "config.h"

#include <math.h>

#include "draw/stead-harvest-chart-private.h"

#define LEAST_WEEKS 8
#define BAR_SHARE 0.66       /* of a week's width */

/* A band that opens wide does not press the bars down: it leaves the plot. */
#define BAND_SHARE_MOST 1.6

static char *
text_day (const SteadAxis      *axis,
          const SteadDrawStyle *style,
          double                value)
{
  return stead_day_format ((SteadDay) value, STEAD_DAY_STYLE_SHORT);
}

SteadAxis
stead_harvest_chart_x_axis (const SteadHarvestLayout *layout)
{
  return (SteadAxis) { layout->first, layout->last, layout->x_ticks, text_day };
}

SteadAxis
stead_harvest_chart_y_axis (const SteadHarvestLayout *layout)
{
  return (SteadAxis) { 0, layout->max_kg * layout->factor, layout->y_ticks, stead_axis_text_number };
}

double
stead_harvest_chart_x (const SteadHarvestLayout *layout,
                       SteadDay                  day)
{
  return layout->plot.x + layout->plot.width * (double) (day - layout->first) / (double) (layout->last - layout->first);
}

double
stead_harvest_chart_y (const SteadHarvestLayout *layout,
                       double                    kg)
{
  return layout->plot.y + layout->plot.height * (1 - kg / layout->max_kg);
}

double
stead_harvest_chart_week_x (const SteadHarvestLayout *layout,
                            const SteadPickWeek      *week)
{
  return (stead_harvest_chart_x (layout, week->first_day) + stead_harvest_chart_x (layout, week->first_day + 7)) / 2;
}

gboolean
stead_harvest_chart_bar (const SteadHarvestLayout *layout,
                         const SteadPickWeek      *week,
                         SteadBox                 *out)
{
  double top = stead_harvest_chart_y (layout, week->picked_kg);

  out->x = stead_harvest_chart_week_x (layout, week) - layout->bar_width / 2;
  out->width = layout->bar_width;
  out->y = top;
  out->height = layout->plot.y + layout->plot.height - top;
  return week->picked_kg > 0;
}

int
stead_harvest_chart_nearest (const SteadHarvestLayout *layout,
                             const SteadHarvestSeries *series,
                             double                    x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_weeks; i++)
    {
      double far = fabs (stead_harvest_chart_week_x (layout, &series->weeks[i]) - x);

      if (far < least)
        {
          least = far;
          nearest = (int) i;
        }
    }
  return nearest;
}

/* --- ranges -------------------------------------------------------------------------- */

static void
find_ranges (const SteadHarvestSeries *series,
             SteadHarvestLayout       *out)
{
  double most = 0, band = 0;

  for (gsize i = 0; i < series->n_weeks; i++)
    {
      const SteadPickWeek *week = &series->weeks[i];

      most = MAX (most, week->picked_kg + week->lost_kg);
      out->has_picked |= week->picked_kg > 0;
      out->has_lost |= week->lost_kg > 0;
      if (isnan (week->likely_kg))
        continue;
      most = MAX (most, week->likely_kg);
      band = MAX (band, week->high_kg);
      out->has_ahead |= week->high_kg > 0;
    }
  most = MAX (most, MIN (band, most * BAND_SHARE_MOST));
  out->max_kg = most > 0 ? most * 1.06 : 1 / out->factor;
  out->has_today = series->today != STEAD_DAY_NONE;
  out->has_ripe = series->first_ripe != STEAD_DAY_NONE;
  out->first = series->n_weeks > 0 ? series->weeks[0].first_day : out->has_today ? series->today : 0;
  out->last = out->first + 7 * (SteadDay) MAX (series->n_weeks, LEAST_WEEKS);
}

static void
fill_keys (const SteadHarvestWords *words,
           SteadHarvestLayout      *out)
{
  if (out->has_picked && words->picked != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->picked, .role = STEAD_ROLE_CROP, .mark = STEAD_MARK_BAR };
  if (out->has_lost && words->lost != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->lost, .role = STEAD_ROLE_INK,
                                            .mark = STEAD_MARK_HATCHED_BAR };
  if (out->has_ahead && words->expected != NULL)
    out->keys[out->n_keys++] = (SteadKey) { .text = words->expected, .role = STEAD_ROLE_CROP,
                                            .line = STEAD_LINE_DASHED, .line_width = 2 };
}

/* --- the plot -------------------------------------------------------------------------- */

/* From top to bottom: name of the axis, keys, the first pick, today, the plot, its dates. */
static void
lay_plot (cairo_t                 *cr,
          const SteadHarvestWords *words,
          const SteadDrawStyle    *style,
          double                   width,
          double                   height,
          SteadHarvestLayout      *out)
{
  double em = style->font_size, top = 1, w, line, title = 0;
  SteadAxis y_axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  if (words->amount != NULL)
    {
      stead_text_measure_block (cr, style, words->amount, 1, FALSE, width - 4, &w, &title);
      out->amount_box = (SteadBox) { 2, top, w, title };
      top += title + em * 0.2;
    }
  if (out->n_keys > 0)
    top += stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4) + em * 0.2;
  if (out->has_ripe && words->ripe != NULL)
    {
      stead_text_measure (cr, style, words->ripe, 1, TRUE, &out->ripe_box.width, &out->ripe_box.height);
      out->ripe_box.y = top;
      top += out->ripe_box.height + em * 0.1;
    }
  out->plot.y = top + line + em * 0.4;      /* the name of today stands in this row */
  out->plot.height = MAX (height - out->plot.y - STEAD_HARVEST_TICK_GAP - line - 2, 1);
  out->y_ticks = stead_ticks (0, out->max_kg * out->factor, (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 6),
                              FALSE);
  y_axis = stead_harvest_chart_y_axis (out);
  stead_axis_measure (cr, style, &y_axis, &w, &line);
  out->plot.x = ceil (w) + STEAD_HARVEST_TICK_GAP + 2;
  out->plot.width = MAX (width - out->plot.x - em, 1);
}

/* Dates of every first, second, fourth, … week, as many as have room. */
static void
lay_days (cairo_t              *cr,
          const SteadDrawStyle *style,
          double                width,
          SteadHarvestLayout   *out)
{
  int weeks = (out->last - out->first) / 7;
  double w, h;

  for (int step = 1;; step *= 2)
    {
      SteadAxis axis;

      out->x_ticks = (SteadTicks) { out->first, step * 7, out->first + weeks / step * step * 7, weeks / step + 1 };
      axis = stead_harvest_chart_x_axis (out);
      stead_axis_measure (cr, style, &axis, &w, &h);
      if ((w + style->font_size) * weeks / step <= out->plot.width || step > weeks)
        break;
    }
  /* A date in the middle of its tick may reach over the ends of the box. */
  if (out->plot.x < w / 2 + 1)
    {
      out->plot.width = MAX (out->plot.width - (w / 2 + 1 - out->plot.x), 1);
      out->plot.x = w / 2 + 1;
    }
  if (out->plot.x + out->plot.width + w / 2 + 1 > width)
    out->plot.width = MAX (width - w / 2 - 1 - out->plot.x, 1);
}

/* Over the plot, with its middle over @x, inside the box. */
static void
lay_over (const SteadHarvestLayout *layout,
          double                    x,
          double                    width,
          SteadBox                 *box)
{
  box->x = MIN (MAX (x - box->width / 2, layout->plot.x - 2), width - box->width - 2);
  box->x = MAX (box->x, 2);
}

static double
inside_x (const SteadHarvestLayout *layout,
          SteadDay                  day,
          double                    otherwise)
{
  double x = day == STEAD_DAY_NONE ? otherwise : stead_harvest_chart_x (layout, day);

  return CLAMP (x, layout->plot.x, layout->plot.x + layout->plot.width);
}

static void
lay_marks (cairo_t                  *cr,
           const SteadHarvestSeries *series,
           const SteadHarvestWords  *words,
           const SteadDrawStyle     *style,
           double                    width,
           SteadHarvestLayout       *out)
{
  out->today_x = inside_x (out, series->today, out->plot.x);
  out->ripe_x = inside_x (out, series->first_ripe, out->plot.x);
  out->ripe_early_x = inside_x (out, series->ripe_early, out->ripe_x);
  out->ripe_late_x = inside_x (out, series->ripe_late, out->plot.x + out->plot.width);
  lay_over (out, out->ripe_x, width, &out->ripe_box);
  if (!out->has_today || words->today == NULL)
    return;
  stead_text_measure (cr, style, words->today, 1, TRUE, &out->today_box.width, &out->today_box.height);
  out->today_box.y = out->plot.y - out->today_box.height - style->font_size * 0.2;
  lay_over (out, out->today_x, width, &out->today_box);
}

void
stead_harvest_chart_layout (cairo_t                  *cr,
                            const SteadHarvestSeries *series,
                            const SteadHarvestWords  *words,
                            const SteadDrawStyle     *style,
                            double                    width,
                            double                    height,
                            SteadHarvestLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && out != NULL);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadHarvestLayout) { .font_size = fit.font_size, .factor = words->factor > 0 ? words->factor : 1 };
  find_ranges (series, out);
  fill_keys (words, out);
  lay_plot (cr, words, &fit, width, height, out);
  lay_days (cr, &fit, width, out);
  out->bar_width = BAR_SHARE * out->plot.width * 7 / (double) (out->last - out->first);
  lay_marks (cr, series, words, &fit, width, out);
}

/* stead-lay-chart.c - eggs per 100 hens a day by age: where everything stands. */
#include "config.h"

#include <math.h>

#include "draw/stead-lay-chart-private.h"

#define NARROW_EM 40.0
#define RIGHT_LABELS_SHARE 0.18
#define FEED_SHARE 0.18        /* of the height of both plots */
#define KEYS_SHARE_MOST 0.3    /* of the whole height, over the plot */
#define FEED_GAP_EM 1.0
#define LOST_ABOVE_EM 0.8      /* the crosses stand so far over the zero line */

gboolean
stead_lay_chart_point (const SteadLayLayout *layout,
                       const SteadLayWeek   *week,
                       double               *x,
                       double               *y)
{
  double frac = stead_flock_hen_day_frac (week->eggs, week->hen_days);

  if (!isfinite (frac) || week->days_logged <= 0)
    return FALSE;
  *x = stead_lay_chart_x (layout, week->age_weeks);
  *y = stead_lay_chart_y (layout, frac);
  return TRUE;
}

int
stead_lay_chart_nearest (const SteadLayLayout *layout,
                         const SteadLaySeries *series,
                         double                x)
{
  double least = INFINITY;
  int nearest = -1;

  for (gsize i = 0; i < series->n_weeks; i++)
    {
      double px, py;

      if (stead_lay_chart_point (layout, &series->weeks[i], &px, &py) && fabs (px - x) < least)
        {
          least = fabs (px - x);
          nearest = (int) i;
        }
    }
  return nearest;
}

double
stead_lay_feed_kg (const SteadLayWeek *week)
{
  return week->feed_kg > 0 && week->hen_days > 0 ? week->feed_kg / week->hen_days : 0;
}

SteadAxis
stead_lay_chart_x_axis (const SteadLayLayout *layout)
{
  return (SteadAxis) { layout->min_age, layout->max_age, layout->x_ticks, stead_axis_text_number };
}

SteadAxis
stead_lay_chart_y_axis (const SteadLayLayout *layout)
{
  return (SteadAxis) { 0, layout->max_frac, layout->y_ticks, stead_axis_text_hundred };
}

/* In the unit that feed is shown in. */
SteadAxis
stead_lay_chart_feed_axis (const SteadLayLayout *layout,
                           const SteadLayWords  *words)
{
  return (SteadAxis) { 0, layout->max_feed * stead_lay_feed_factor (words), layout->feed_ticks,
                       stead_axis_text_number };
}

double
stead_lay_feed_factor (const SteadLayWords *words)
{
  return words->feed_factor > 0 ? words->feed_factor : 1;
}

double
stead_lay_chart_x (const SteadLayLayout *layout,
                   double                age_weeks)
{
  SteadAxis axis = stead_lay_chart_x_axis (layout);

  return stead_axis_x (&axis, &layout->plot, age_weeks);
}

double
stead_lay_chart_y (const SteadLayLayout *layout,
                   double                frac)
{
  SteadAxis axis = stead_lay_chart_y_axis (layout);

  return stead_axis_y (&axis, &layout->plot, frac);
}

double
stead_lay_chart_age (const SteadLayLayout *layout,
                     double                x)
{
  return layout->min_age
         + (x - layout->plot.x) / MAX (layout->plot.width, 1) * (layout->max_age - layout->min_age);
}

/* The ranges that show every week, the whole curve and today. */
static void
find_ranges (const SteadLaySeries *series,
             SteadLayLayout       *out)
{
  double low = INFINITY, high = -INFINITY, most = 1;

  for (gsize i = 0; i < series->n_weeks; i++)
    {
      const SteadLayWeek *week = &series->weeks[i];
      double frac = stead_flock_hen_day_frac (week->eggs, week->hen_days);

      low = MIN (low, week->age_weeks);
      high = MAX (high, week->age_weeks);
      if (frac > most)
        most = frac;
      out->max_feed = MAX (out->max_feed, stead_lay_feed_kg (week));
      out->has_lost |= week->deaths > 0;
      out->has_left_out |= week->left_out && isfinite (frac);
    }
  if (series->n_curve > 0)
    {
      low = MIN (low, series->curve_age[0]);
      high = MAX (high, series->curve_age[series->n_curve - 1]);
      out->has_curve = TRUE;
    }
  for (gsize i = 0; i < series->n_notes; i++)
    out->has_far_off |= series->notes[i].far_off;
  out->has_today = isfinite (series->today_age_weeks);
  if (out->has_today)
    {
      low = MIN (low, series->today_age_weeks);
      high = MAX (high, series->today_age_weeks);
    }
  out->min_age = low < high ? floor (low) : isfinite (low) ? floor (low) - 1 : 18;
  out->max_age = low < high ? ceil (high) : out->min_age + 10;
  out->max_frac = ceil (most * 5 - 1e-9) / 5;
}

static void
add_key (SteadLayLayout *out,
         SteadKey        key)
{
  if (key.text != NULL && out->n_keys < STEAD_MAX_KEYS)
    out->keys[out->n_keys++] = key;
}

/* Beside the plot both ends of the band have a name, over it the band has one. */
static void
fill_ahead_keys (const SteadLayWords  *words,
                 double                line,
                 SteadLayLayout       *out)
{
  if (!out->narrow)
    add_key (out, (SteadKey) { .text = words->band_high, .role = STEAD_ROLE_SOFT });
  add_key (out, (SteadKey) { .text = words->forecast, .role = STEAD_ROLE_INK, .line = STEAD_LINE_DASHED,
                             .line_width = line * 1.3, .bold = TRUE });
  if (!out->narrow)
    add_key (out, (SteadKey) { .text = words->band_low, .role = STEAD_ROLE_SOFT });
  else
    add_key (out, (SteadKey) { .text = words->band, .role = STEAD_ROLE_EGG, .area = TRUE });
}

static void
fill_keys (const SteadLaySeries *series,
           const SteadLayWords  *words,
           const SteadDrawStyle *style,
           SteadLayLayout       *out)
{
  double line = MAX (1, style->font_size / 9);

  if (out->has_curve)
    add_key (out, (SteadKey) { .text = words->expected, .role = STEAD_ROLE_SOFT, .line_width = line });
  if (series->n_ahead > 0)
    fill_ahead_keys (words, line, out);
  if (out->has_left_out)
    add_key (out, (SteadKey) { .text = words->left_out, .role = STEAD_ROLE_INK, .mark = STEAD_MARK_RING });
  if (out->has_far_off)
    add_key (out, (SteadKey) { .text = words->far_off, .role = STEAD_ROLE_TOMATO, .mark = STEAD_MARK_RING });
  if (out->has_lost)
    add_key (out, (SteadKey) { .text = words->lost, .role = STEAD_ROLE_TOMATO, .mark = STEAD_MARK_CROSS });
  if (out->max_feed > 0)
    add_key (out, (SteadKey) { .text = words->feed, .role = STEAD_ROLE_EGG, .mark = STEAD_MARK_BAR });
}

static double
right_room (cairo_t              *cr,
            const SteadDrawStyle *style,
            double                width,
            SteadLayLayout       *out)
{
  if (out->narrow)
    return style->font_size;
  out->right_labels_width = stead_keys_measure_right (cr, style, out->keys, out->n_keys, width * RIGHT_LABELS_SHARE);
  return out->right_labels_width + style->font_size * 1.7;
}

static double
left_room (cairo_t              *cr,
           const SteadDrawStyle *style,
           const SteadLayWords  *words,
           const SteadLayLayout *out)
{
  SteadAxis y = stead_lay_chart_y_axis (out), feed = stead_lay_chart_feed_axis (out, words);
  double w, feed_w = 0, h;

  stead_axis_measure (cr, style, &y, &w, &h);
  if (out->feed_plot.height > 0)
    stead_axis_measure (cr, style, &feed, &feed_w, &h);
  return ceil (MAX (w, feed_w)) + STEAD_LAY_TICK_GAP + 2;
}

/* Keys that would leave no plot give way, the ones that points and hints explain first. */
static double
lay_keys (cairo_t              *cr,
          const SteadLayWords  *words,
          const SteadDrawStyle *style,
          double                top,
          double                width,
          double                height,
          SteadLayLayout       *out)
{
  const char *dispensable[] = { words->left_out, words->far_off, words->lost };
  double taken = stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4);

  for (gsize i = 0; i < G_N_ELEMENTS (dispensable) && taken > height * KEYS_SHARE_MOST; i++)
    {
      int kept = 0;

      for (int k = 0; k < out->n_keys; k++)
        if (out->keys[k].text != dispensable[i])
          out->keys[kept++] = out->keys[k];
      out->n_keys = kept;
      taken = stead_keys_layout (cr, style, out->keys, out->n_keys, 2, top, width - 4);
    }
  return taken;
}

/* The plots take what the texts round them leave. */
static void
lay_plots (cairo_t              *cr,
           const SteadLayWords  *words,
           const SteadDrawStyle *style,
           double                width,
           double                height,
           SteadLayLayout       *out)
{
  double em = style->font_size, top = 1, w, line, rate = 0, title, both;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  stead_text_measure_block (cr, style, words->axis, 1, FALSE, width - 4, &w, &title);
  if (words->rate != NULL)
    {
      stead_text_measure_block (cr, style, words->rate, 1, FALSE, width - 4, &w, &rate);
      out->rate_box = (SteadBox) { 2, top, w, rate };
      top += rate + em * 0.2;
    }
  if (out->narrow && out->n_keys > 0)
    top += lay_keys (cr, words, style, top, width, height, out) + em * 0.2;
  out->plot.y = top + line + em * 0.4;      /* the name of today stands in this row */
  both = MAX (height - out->plot.y - STEAD_LAY_TICK_GAP - line - em * 0.2 - title - 2, 2);
  out->feed_plot.height = out->max_feed > 0 ? both * FEED_SHARE : 0;
  out->plot.height = both - out->feed_plot.height - (out->max_feed > 0 ? em * FEED_GAP_EM : 0);
  out->plot.height = MAX (out->plot.height, 1);
  out->feed_plot.y = out->plot.y + both - out->feed_plot.height;
  out->y_ticks = stead_ticks (0, out->max_frac, (int) CLAMP (out->plot.height / (line * 2) + 1, 2, 6), FALSE);
  if (out->max_feed > 0)
    out->feed_ticks = stead_ticks (0, out->max_feed * stead_lay_feed_factor (words),
                                   (int) CLAMP (out->feed_plot.height / (line * 1.2) + 1, 2, 4), FALSE);
  out->plot.x = left_room (cr, style, words, out);
  out->plot.width = MAX (width - out->plot.x - right_room (cr, style, width, out), 1);
  out->feed_plot.x = out->plot.x;
  out->feed_plot.width = out->plot.width;
  out->right_labels_x = width - out->right_labels_width;
  stead_text_measure_block (cr, style, words->axis, 1, FALSE, width - 4, &w, &title);
  out->axis_box = (SteadBox) { out->plot.x + (out->plot.width - w) / 2, height - title - 1, w, title };
  out->axis_box.x = CLAMP (out->axis_box.x, 2, MAX (2, width - w - 2));
}

static void
lay_x_ticks (cairo_t              *cr,
             const SteadDrawStyle *style,
             SteadLayLayout       *out)
{
  int most = 12;
  double w, h;

  do
    {
      SteadAxis axis;

      out->x_ticks = stead_ticks (out->min_age, out->max_age, most, TRUE);
      axis = stead_lay_chart_x_axis (out);
      stead_axis_measure (cr, style, &axis, &w, &h);
      w = (w + style->font_size * 1.4) * (out->x_ticks.n - 1);
    }
  while (w > out->plot.width && --most >= 2);
}

/* The height of the last week of a kind, where its name stands beside. */
static double
last_of_kind_y (const SteadLaySeries *series,
                const SteadLayLayout *layout,
                gboolean              far_off)
{
  double x, y;

  for (gsize i = series->n_weeks; !far_off && i > 0; i--)
    if (series->weeks[i - 1].left_out && stead_lay_chart_point (layout, &series->weeks[i - 1], &x, &y))
      return y;
  for (gsize i = series->n_notes; far_off && i > 0; i--)
    if (series->notes[i - 1].far_off && series->notes[i - 1].last < series->n_weeks
        && stead_lay_chart_point (layout, &series->weeks[series->notes[i - 1].last], &x, &y))
      return y;
  return layout->plot.y;
}

/* The height that a name beside the plot would like. */
static double
name_y (const SteadLaySeries *series,
        const SteadLayWords  *words,
        const char           *text,
        const SteadLayLayout *layout)
{
  const SteadBand *end = series->n_ahead > 0 ? &series->ahead_frac[series->n_ahead - 1] : NULL;

  if (text == words->feed)
    return layout->feed_plot.y + layout->feed_plot.height / 2;
  if (text == words->lost)
    return layout->lost_y;
  if (text == words->left_out || text == words->far_off)
    return last_of_kind_y (series, layout, text == words->far_off);
  if (end != NULL && text == words->band_high)
    return stead_lay_chart_y (layout, end->high);
  if (end != NULL && text == words->band_low)
    return stead_lay_chart_y (layout, end->low);
  return layout->curve_end_y;
}

/* What stands by its points needs no name beside the plot. */
static void
drop_noted_keys (const SteadLaySeries *series,
                 const SteadLayWords  *words,
                 SteadLayLayout       *out)
{
  int kept = 0;

  for (int i = 0; i < out->n_keys; i++)
    {
      const char *text = out->keys[i].text;
      gboolean named = (text == words->left_out || text == words->far_off)
                       && stead_lay_chart_all_noted (series, out, text == words->far_off);

      if (!named)
        out->keys[kept++] = out->keys[i];
    }
  out->n_keys = kept;
}

/* Beside the plot, each name at the height of what it names. */
static void
lay_right_labels (cairo_t              *cr,
                  const SteadLaySeries *series,
                  const SteadLayWords  *words,
                  const SteadDrawStyle *style,
                  SteadLayLayout       *out)
{
  double want_y[STEAD_MAX_KEYS];

  drop_noted_keys (series, words, out);
  for (int i = 0; i < out->n_keys; i++)
    want_y[i] = name_y (series, words, out->keys[i].text, out);
  stead_keys_layout_right (cr, style, out->keys, want_y, out->n_keys, out->right_labels_x, out->right_labels_width,
                           out->plot.y - style->font_size * 0.3,
                           out->feed_plot.y + out->feed_plot.height + STEAD_LAY_TICK_GAP - 1);
}

/* Where the curve is at the right end of the plot. */
static void
lay_curve_end (const SteadLaySeries *series,
               SteadLayLayout       *out)
{
  if (!out->has_curve)
    return;
  out->curve_end_x = stead_lay_chart_x (out, series->curve_age[series->n_curve - 1]);
  out->curve_end_y = stead_lay_chart_y (out, series->curve_frac[series->n_curve - 1]);
}

/* Weeks stand apart where there is room, and shrink where there is not. */
static double
point_radius (const SteadLaySeries *series,
              const SteadDrawStyle *style,
              const SteadLayLayout *layout)
{
  double apart = layout->plot.width / MAX (layout->max_age - layout->min_age, 1);

  return CLAMP (apart * 0.42, style->font_size * 0.15, style->font_size * 0.36);
}

static void
name_boxes (const SteadLayWords *words,
            SteadLayLayout      *out)
{
  const struct { const char *text; SteadBox *box; } named[] = {
    { words->expected, &out->expected_box }, { words->lost, &out->lost_box }, { words->feed, &out->feed_box },
    { words->left_out, &out->left_out_box }, { words->far_off, &out->far_off_box },
    { words->forecast, &out->forecast_box }, { words->band_high, &out->band_high_box },
    { words->band_low, &out->band_low_box }, { words->band, &out->band_box },
  };

  for (int i = 0; i < out->n_keys; i++)
    for (gsize n = 0; n < G_N_ELEMENTS (named); n++)
      if (out->keys[i].text == named[n].text)
        *named[n].box = out->keys[i].box;
}

void
stead_lay_chart_layout (cairo_t              *cr,
                        const SteadLaySeries *series,
                        const SteadLayWords  *words,
                        const SteadDrawStyle *style,
                        double                width,
                        double                height,
                        SteadLayLayout       *out)
{
  SteadDrawStyle fit;

  g_return_if_fail (cr != NULL && series != NULL && words != NULL && style != NULL && out != NULL);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadLayLayout) { .font_size = fit.font_size, .narrow = width < NARROW_EM * fit.font_size };
  find_ranges (series, out);
  fill_keys (series, words, &fit, out);
  lay_plots (cr, words, &fit, width, height, out);
  lay_x_ticks (cr, &fit, out);
  out->point_radius = point_radius (series, &fit, out);
  out->lost_y = out->plot.y + out->plot.height - fit.font_size * LOST_ABOVE_EM;
  out->today_x = stead_lay_chart_x (out, out->has_today ? series->today_age_weeks : out->min_age);
  lay_curve_end (series, out);
  stead_lay_chart_place_notes (cr, series, &fit, out);
  if (!out->narrow)
    lay_right_labels (cr, series, words, &fit, out);
  name_boxes (words, out);
  if (out->has_today && words->today != NULL)
    {
      SteadBox *box = &out->today_box;

      stead_text_measure (cr, &fit, words->today, 1, TRUE, &box->width, &box->height);
      /* Not over the texts of the left axis, the topmost of which reaches up beside it. */
      box->x = MIN (MAX (out->today_x - box->width / 2, out->plot.x - 2), width - box->width - 2);
      box->x = MAX (box->x, 2);
      box->y = out->plot.y - box->height - fit.font_size * 0.2;
    }
}

/* stead-cvp-chart.c - money in against all costs: where everything stands.
 *
 * Invariants:
 *  1. Everything laid out is inside the box, whatever the numbers are.
 *  2. No text covers another, and none covers the ring of the break-even.
 *  3. A point on a line stands where its units and cents say; only labels, and
 *     handles along their line, are moved.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-cvp-chart-private.h"
#include "draw/stead-labels.h"

#define NARROW_EM 38.0         /* under this many text sizes the lines are named by keys */
#define RIGHT_LABELS_SHARE 0.24
#define HANDLES_APART 36.0     /* px between the middles of two handles */

/* How much the axis shows past the plan and past the break-even. */
#define PAST_PLAN 1.4
#define PAST_EVEN 1.25
#define FAR_EVEN 4.0           /* plans; a break-even beyond is not worth flattening the plan for */

static double
rounded_up (double   value,
            gboolean whole)
{
  SteadTicks ticks = stead_ticks (0, value, 9, whole);

  return ceil (value / ticks.step - 1e-9) * ticks.step;
}

void
stead_cvp_chart_range (const SteadCvp *cvp,
                       double         *max_units,
                       double         *max_cents)
{
  SteadCvpFigures figures;
  double far, units;

  g_return_if_fail (cvp != NULL && max_units != NULL && max_cents != NULL);
  stead_cvp_figures (cvp, &figures);
  units = cvp->planned_units * PAST_PLAN;
  far = cvp->planned_units > 0 ? cvp->planned_units * FAR_EVEN : INFINITY;
  if (figures.even_units <= far)
    units = MAX (units, figures.even_units * PAST_EVEN);
  if (figures.lasting_whole_units > 0 && (double) figures.lasting_whole_units <= far)
    units = MAX (units, (double) figures.lasting_whole_units * PAST_EVEN);
  if (!(units >= 4))
    units = cvp->step_units > 0 ? MAX (4, 2 * cvp->step_units) : 10;
  *max_units = rounded_up (units, TRUE);
  *max_cents = rounded_up (MAX (100, MAX (stead_cvp_revenue_cents (cvp, *max_units),
                                          stead_cvp_cost_cents (cvp, *max_units))), TRUE);
}

gboolean
stead_cvp_piece_next (const SteadCvp       *cvp,
                      const SteadCvpLayout *layout,
                      SteadCvpPiece        *piece)
{
  double least = layout->max_units * 2 / MAX (layout->plot.width, 2);
  double from = piece->units1, to = layout->max_units;

  if (from >= layout->max_units * (1 - 1e-12))
    return FALSE;
  if (cvp->step_units > 0 && cvp->step_cents > 0)
    to = MAX ((floor (from / cvp->step_units + 1e-9) + 1) * cvp->step_units, from + least);
  if (to > layout->max_units - least / 2)
    to = layout->max_units;
  piece->units0 = from;
  piece->units1 = to;
  piece->fixed = stead_cvp_fixed_cents (cvp, (from + to) / 2);
  piece->cost0 = piece->fixed + cvp->variable_cents * from;
  piece->cost1 = piece->fixed + cvp->variable_cents * to;
  return TRUE;
}

SteadAxis
stead_cvp_chart_x_axis (const SteadCvpLayout *layout)
{
  return (SteadAxis) { 0, layout->max_units, layout->x_ticks, stead_axis_text_number };
}

SteadAxis
stead_cvp_chart_y_axis (const SteadCvpLayout *layout)
{
  return (SteadAxis) { layout->min_cents, layout->max_cents, layout->y_ticks, stead_axis_text_money };
}

double
stead_cvp_line_width (const SteadDrawStyle *style)
{
  return style->scheme == STEAD_SCHEME_PRINT ? style->font_size / 6 : MAX (2, style->font_size / 5);
}

double
stead_cvp_ring_radius (const SteadDrawStyle *style)
{
  return MAX (style->scheme == STEAD_SCHEME_PRINT ? 3.5 : 6, style->font_size / 2.2);
}

double
stead_cvp_tick_gap (const SteadDrawStyle *style)
{
  return style->scheme == STEAD_SCHEME_PRINT ? MAX (5, style->font_size * 0.5) : STEAD_CVP_HANDLE_RADIUS + 3;
}

double
stead_cvp_chip_text_width (const SteadCvpLayout *layout)
{
  return MAX (layout->plot.width - 2 * STEAD_CVP_CHIP_PAD_X_EM * layout->font_size - 4, layout->font_size);
}

double
stead_cvp_chart_x (const SteadCvpLayout *layout,
                   double                units)
{
  return layout->plot.x + units / layout->max_units * layout->plot.width;
}

double
stead_cvp_chart_y (const SteadCvpLayout *layout,
                   double                cents)
{
  return layout->plot.y + layout->plot.height
         - (cents - layout->min_cents) / (layout->max_cents - layout->min_cents) * layout->plot.height;
}

double
stead_cvp_chart_units_at (const SteadCvpLayout *layout,
                          double                x)
{
  return (x - layout->plot.x) / layout->plot.width * layout->max_units;
}

double
stead_cvp_chart_cents_at (const SteadCvpLayout *layout,
                          double                y)
{
  return layout->min_cents
         + (layout->plot.y + layout->plot.height - y) / layout->plot.height
           * (layout->max_cents - layout->min_cents);
}

/* A value that may lie over the plot, brought to its upper edge. */
static double
y_in_plot (const SteadCvpLayout *layout,
           double                cents)
{
  return CLAMP (stead_cvp_chart_y (layout, cents), layout->plot.y, layout->plot.y + layout->plot.height);
}

static void
fill_keys (const SteadCvpWords  *words,
           const SteadDrawStyle *style,
           SteadCvpLayout       *out)
{
  gboolean print = style->scheme == STEAD_SCHEME_PRINT;
  double width = stead_cvp_line_width (style);

  out->keys[0] = (SteadKey) { .text = words->money_in, .role = STEAD_ROLE_WATER, .line = STEAD_LINE_SOLID,
                              .mark = print ? STEAD_MARK_DOT : STEAD_MARK_NONE, .line_width = width };
  out->keys[1] = (SteadKey) { .text = words->all_costs, .role = STEAD_ROLE_TOMATO,
                              .line = print ? STEAD_LINE_DASHED : STEAD_LINE_SOLID,
                              .mark = print ? STEAD_MARK_SQUARE : STEAD_MARK_NONE, .line_width = width };
  out->keys[2] = (SteadKey) { .text = words->fixed_costs, .role = STEAD_ROLE_SOFT,
                              .line = STEAD_LINE_DOTTED, .line_width = width * 0.75 };
}

static void
measure_key (cairo_t              *cr,
             const SteadDrawStyle *style,
             const SteadCvpLayout *out,
             int                   i,
             double                max_width,
             double               *width,
             double               *height)
{
  stead_text_measure_block (cr, style, out->keys[i].text, 1, i < 2, max_width, width, height);
}

/* The room right of the plot: for the names of the lines, or for half a handle and
 * half a text of the bottom axis. */
static double
right_room (cairo_t              *cr,
            const SteadDrawStyle *style,
            double                width,
            SteadCvpLayout       *out)
{
  double room = style->scheme == STEAD_SCHEME_PRINT ? 8 : STEAD_CVP_HANDLE_RADIUS + 8;
  double widest = 0;

  if (out->narrow)
    {
      SteadAxis axis = { 0, out->max_units, { out->max_units, 1, out->max_units, 1 }, stead_axis_text_number };
      double w, h;

      stead_axis_measure (cr, style, &axis, &w, &h);
      return MAX (room, w / 2 + 2);
    }
  for (int i = 0; i < 3; i++)
    {
      double w, h;

      measure_key (cr, style, out, i, width * RIGHT_LABELS_SHARE, &w, &h);
      widest = MAX (widest, w);
    }
  out->right_labels_width = ceil (widest) + 1;
  return room + out->right_labels_width + 2;
}

/* The plot takes what the texts round it leave. */
static void
lay_plot (cairo_t              *cr,
          const SteadCvpWords  *words,
          const SteadDrawStyle *style,
          double                width,
          double                height,
          SteadCvpLayout       *out)
{
  double em = style->font_size, gap = stead_cvp_tick_gap (style);
  double top = 0, w, h, line, title;
  SteadAxis axis;

  stead_text_measure (cr, style, "0", 1, FALSE, &w, &line);
  stead_text_measure_block (cr, style, words->axis, 1, FALSE, width - 4, &w, &title);
  if (out->narrow)
    top = stead_keys_layout (cr, style, out->keys, 3, 2, 1, width - 4) + em * 0.4;
  out->plot.y = top + line + em * 0.5;
  out->plot.height = MAX (height - out->plot.y - gap - line - em * 0.25 - title - 2, 1);
  out->y_ticks = stead_ticks (out->min_cents, out->max_cents,
                              (int) CLAMP (out->plot.height / (line * 2.6) + 1, 2, 7), TRUE);
  axis = stead_cvp_chart_y_axis (out);
  stead_axis_measure (cr, style, &axis, &w, &h);
  out->plot.x = MAX (ceil (w) + gap + 2, em);
  out->plot.width = MAX (width - out->plot.x - right_room (cr, style, width, out), 1);
  out->right_labels_x = width - out->right_labels_width - 2;
}

/* The title of the axis stands under the middle of the plot, or where it fits. */
static void
lay_axis_title (cairo_t              *cr,
                const SteadCvpWords  *words,
                const SteadDrawStyle *style,
                double                width,
                double                height,
                SteadCvpLayout       *out)
{
  double w, h;

  stead_text_measure_block (cr, style, words->axis, 1, FALSE, width - 4, &w, &h);
  out->axis_box = (SteadBox) { out->plot.x + (out->plot.width - w) / 2, height - h - 1, w, h };
  out->axis_box.x = CLAMP (out->axis_box.x, 2, MAX (2, width - w - 2));
}

static void
lay_x_ticks (cairo_t              *cr,
             const SteadDrawStyle *style,
             SteadCvpLayout       *out)
{
  int most = 10;
  double w, h;

  do
    {
      SteadAxis axis;

      out->x_ticks = stead_ticks (0, out->max_units, most, TRUE);
      axis = stead_cvp_chart_x_axis (out);
      stead_axis_measure (cr, style, &axis, &w, &h);
      w = (w + style->font_size * 1.2) * (out->x_ticks.n - 1);
    }
  while (w > out->plot.width && --most >= 2);
}

/* Where a rising line reaches the right or the upper edge. */
static double
units_where_cost_leaves (const SteadCvp       *cvp,
                         const SteadCvpLayout *layout)
{
  double low = 0, high = layout->max_units;

  if (stead_cvp_cost_cents (cvp, high) <= layout->max_cents)
    return high;
  for (int i = 0; i < 48; i++)
    {
      double middle = (low + high) / 2;

      *(stead_cvp_cost_cents (cvp, middle) <= layout->max_cents ? &low : &high) = middle;
    }
  return low;
}

static gboolean
too_near (double x0,
          double y0,
          double x1,
          double y1)
{
  return hypot (x1 - x0, y1 - y0) < HANDLES_APART;
}

static void
lay_handles (const SteadCvp *cvp,
             SteadCvpLayout *out)
{
  double units = out->max_units;
  double apart = HANDLES_APART / out->plot.width * out->max_units;
  double fixed = stead_cvp_fixed_cents (cvp, 0);

  if (stead_cvp_revenue_cents (cvp, units) > out->max_cents)
    units = out->max_cents / cvp->price_cents;
  out->price_x = stead_cvp_chart_x (out, units);
  out->price_y = y_in_plot (out, stead_cvp_revenue_cents (cvp, units));
  units = units_where_cost_leaves (cvp, out);
  out->cost_x = stead_cvp_chart_x (out, units);
  out->cost_y = y_in_plot (out, stead_cvp_cost_cents (cvp, units));
  if (too_near (out->price_x, out->price_y, out->cost_x, out->cost_y))
    {
      units = MAX (units - apart, 0);
      out->cost_x = stead_cvp_chart_x (out, units);
      out->cost_y = y_in_plot (out, stead_cvp_cost_cents (cvp, units));
    }
  out->plan_y = out->plot.y + out->plot.height;
  out->fixed_x = out->plot.x;
  out->fixed_y = y_in_plot (out, fixed);
  if (out->has_plan && too_near (out->plan_x, out->plan_y, out->fixed_x, out->fixed_y))
    out->fixed_x = MIN (out->plan_x + HANDLES_APART, out->plot.x + out->plot.width);
}

static void
lay_points (const SteadCvp        *cvp,
            const SteadCvpWords   *words,
            const SteadCvpFigures *figures,
            SteadCvpLayout        *out)
{
  double lasting = (double) figures->lasting_whole_units;
  double margin = cvp->price_cents - cvp->variable_cents;
  double top = out->max_cents * (1 + 1e-9);

  out->has_even = figures->even_units >= 0 && figures->even_units <= out->max_units
                  && stead_cvp_revenue_cents (cvp, figures->even_units) <= top;
  if (out->has_even)
    {
      out->even_x = stead_cvp_chart_x (out, figures->even_units);
      out->even_y = stead_cvp_chart_y (out, stead_cvp_revenue_cents (cvp, figures->even_units));
    }
  /* The crossing that lasts, exactly: in its step the costs are straight. */
  if (lasting > 0 && margin > 0)
    lasting = stead_cvp_fixed_cents (cvp, lasting) / margin;
  out->has_lasting = words->lasting != NULL && out->has_even
                     && figures->lasting_whole_units > figures->even_whole_units
                     && lasting <= out->max_units && stead_cvp_revenue_cents (cvp, lasting) <= top;
  if (out->has_lasting)
    {
      out->lasting_x = stead_cvp_chart_x (out, lasting);
      out->lasting_y = stead_cvp_chart_y (out, stead_cvp_revenue_cents (cvp, lasting));
    }
  out->has_plan = words->plan != NULL && cvp->planned_units <= out->max_units;
  out->plan_x = stead_cvp_chart_x (out, MIN (cvp->planned_units, out->max_units));
  out->plan_revenue_y = y_in_plot (out, stead_cvp_revenue_cents (cvp, cvp->planned_units));
  out->plan_cost_y = y_in_plot (out, stead_cvp_cost_cents (cvp, cvp->planned_units));
}

static void
lay_right_labels (cairo_t              *cr,
                  const SteadCvp       *cvp,
                  const SteadDrawStyle *style,
                  SteadCvpLayout       *out)
{
  SteadBox *boxes[] = { &out->money_in_box, &out->all_costs_box, &out->fixed_box };
  double want[] = { out->price_y, y_in_plot (out, stead_cvp_cost_cents (cvp, out->max_units)),
                    y_in_plot (out, stead_cvp_fixed_cents (cvp, out->max_units)) };
  SteadEndLabel labels[3];

  for (int i = 0; i < 3; i++)
    {
      measure_key (cr, style, out, i, out->right_labels_width, &boxes[i]->width, &boxes[i]->height);
      labels[i] = (SteadEndLabel) { .want_y = want[i], .height = boxes[i]->height };
    }
  /* Texts of the bottom axis begin a gap under the plot; the plan's stands over it. */
  stead_labels_spread (labels, 3, out->plot.y - style->font_size * 0.3,
                       out->plot.y + out->plot.height + stead_cvp_tick_gap (style) - 1);
  for (int i = 0; i < 3; i++)
    {
      boxes[i]->x = out->right_labels_x;
      boxes[i]->y = labels[i].y - labels[i].height / 2;
    }
  out->label_money_in_y = labels[0].y;
  out->label_all_costs_y = labels[1].y;
  out->label_fixed_y = labels[2].y;
}

/* In a narrow box the names are the keys' own boxes over the plot. */
static void
take_keys (SteadCvpLayout *out)
{
  SteadBox *boxes[] = { &out->money_in_box, &out->all_costs_box, &out->fixed_box };
  double *ys[] = { &out->label_money_in_y, &out->label_all_costs_y, &out->label_fixed_y };

  for (int i = 0; i < 3; i++)
    {
      *boxes[i] = out->keys[i].box;
      *ys[i] = boxes[i]->y + boxes[i]->height / 2;
    }
}

static void
lay_plan_label (cairo_t              *cr,
                const SteadCvpWords  *words,
                const SteadDrawStyle *style,
                double                width,
                SteadCvpLayout       *out)
{
  SteadBox *box = &out->plan_box;

  if (!out->has_plan)
    return;
  stead_text_measure (cr, style, words->plan, 1, FALSE, &box->width, &box->height);
  /* Not over the texts of the left axis, the topmost of which reaches up beside it. */
  box->x = MIN (MAX (out->plan_x - box->width / 2, out->plot.x - 2), width - box->width - 2);
  box->x = MAX (box->x, 2);
  box->y = out->plot.y - box->height - style->font_size * 0.25;
}

static SteadBox
box_round (double x,
           double y,
           double radius)
{
  return (SteadBox) { x - radius, y - radius, 2 * radius, 2 * radius };
}

static void
find_obstacles (const SteadCvp       *cvp,
                const SteadDrawStyle *style,
                const SteadCvpLayout *layout,
                SteadObstacles       *out)
{
  double ring = stead_cvp_ring_radius (style) + 3;
  double handle = style->scheme == STEAD_SCHEME_PRINT ? 3 : STEAD_CVP_HANDLE_RADIUS + 2;
  SteadCvpPiece piece = { 0 };

  out->n_boxes = out->n_strokes = 0;
  out->inside = (SteadBox) { layout->plot.x + 3, layout->plot.y + 2,
                             layout->plot.width - 5, layout->plot.height - 4 };
  if (layout->has_even)
    stead_obstacles_add_box (out, box_round (layout->even_x, layout->even_y, ring));
  if (layout->has_lasting)
    stead_obstacles_add_box (out, box_round (layout->lasting_x, layout->lasting_y, ring));
  stead_obstacles_add_box (out, box_round (layout->price_x, layout->price_y, handle));
  stead_obstacles_add_box (out, box_round (layout->cost_x, layout->cost_y, handle));
  stead_obstacles_add_box (out, box_round (layout->fixed_x, layout->fixed_y, handle));
  if (layout->has_plan)
    {
      stead_obstacles_add_box (out, box_round (layout->plan_x, layout->plan_y, handle));
      stead_obstacles_add_stroke (out, layout->plan_x, layout->plot.y,
                                  layout->plan_x, layout->plot.y + layout->plot.height);
    }
  stead_obstacles_add_stroke (out, layout->plot.x, layout->plot.y + layout->plot.height,
                              layout->price_x, layout->price_y);
  while (stead_cvp_piece_next (cvp, layout, &piece))
    {
      double x0 = stead_cvp_chart_x (layout, piece.units0), x1 = stead_cvp_chart_x (layout, piece.units1);

      stead_obstacles_add_stroke (out, x0, stead_cvp_chart_y (layout, piece.cost0),
                                  x1, stead_cvp_chart_y (layout, piece.cost1));
      stead_obstacles_add_stroke (out, x0, stead_cvp_chart_y (layout, piece.fixed),
                                  x1, stead_cvp_chart_y (layout, piece.fixed));
    }
}

/* A text that speaks of a point in the plot; later ones keep clear of it.  One that
 * can be done without is left out where it would cover something. */
static void
lay_chip (cairo_t              *cr,
          const SteadDrawStyle *style,
          const SteadCvpLayout *layout,
          const char           *text,
          double                x,
          double                y,
          gboolean              needed,
          SteadObstacles       *obstacles,
          SteadBox             *out)
{
  double w, h;

  stead_text_measure_block (cr, style, text, 1, TRUE, stead_cvp_chip_text_width (layout), &w, &h);
  w += 2 * STEAD_CVP_CHIP_PAD_X_EM * style->font_size;
  h += 2 * STEAD_CVP_CHIP_PAD_Y_EM * style->font_size;
  if (!stead_labels_place (obstacles, x, y, w, h, stead_cvp_ring_radius (style) + 4, out) && !needed)
    *out = (SteadBox) { 0 };
  stead_obstacles_add_box (obstacles, *out);
}

static void
lay_chips (cairo_t              *cr,
           const SteadCvp       *cvp,
           const SteadCvpWords  *words,
           const SteadDrawStyle *style,
           SteadCvpLayout       *out)
{
  SteadObstacles obstacles;
  double bottom = out->plot.y + out->plot.height;

  find_obstacles (cvp, style, out, &obstacles);
  if (out->has_even)
    stead_obstacles_add_stroke (&obstacles, out->even_x, out->even_y, out->even_x, bottom);
  if (out->has_lasting)
    stead_obstacles_add_stroke (&obstacles, out->lasting_x, out->lasting_y, out->lasting_x, bottom);
  if (out->has_even && words->even != NULL)
    lay_chip (cr, style, out, words->even, out->even_x, out->even_y, TRUE, &obstacles, &out->even_box);
  if (out->has_lasting)
    lay_chip (cr, style, out, words->lasting, out->lasting_x, out->lasting_y, FALSE, &obstacles,
              &out->lasting_box);
  if (out->has_plan && words->plan_gap != NULL)
    lay_chip (cr, style, out, words->plan_gap, out->plan_x, (out->plan_revenue_y + out->plan_cost_y) / 2,
              FALSE, &obstacles, &out->gap_box);
}

void
stead_cvp_chart_layout (cairo_t              *cr,
                        const SteadCvp       *cvp,
                        const SteadCvpWords  *words,
                        const SteadDrawStyle *style,
                        double                max_units,
                        double                max_cents,
                        double                width,
                        double                height,
                        SteadCvpLayout       *out)
{
  SteadDrawStyle fit;
  SteadCvpFigures figures;

  g_return_if_fail (cr != NULL && cvp != NULL && words != NULL && style != NULL && out != NULL);
  g_return_if_fail (max_units > 0 && max_cents > 0);
  fit = stead_draw_style_fit (style, width, height);
  *out = (SteadCvpLayout) { .max_units = max_units, .max_cents = max_cents, .font_size = fit.font_size,
                            .narrow = width < NARROW_EM * fit.font_size };
  stead_cvp_figures (cvp, &figures);
  fill_keys (words, &fit, out);
  lay_plot (cr, words, &fit, width, height, out);
  lay_axis_title (cr, words, &fit, width, height, out);
  lay_x_ticks (cr, &fit, out);
  lay_points (cvp, words, &figures, out);
  lay_handles (cvp, out);
  if (out->narrow)
    take_keys (out);
  else
    lay_right_labels (cr, cvp, &fit, out);
  lay_plan_label (cr, words, &fit, width, out);
  lay_chips (cr, cvp, words, &fit, out);
}

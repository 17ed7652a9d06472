/* stead-cvp-chart-paint.c - paints the break-even chart that was laid out.
 *
 * The loss is hatched one way, the gain the other; in print the lines have their
 * own dash and mark.  So nothing is told by colour alone.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-cvp-chart-private.h"

static void
clip_to_plot (cairo_t              *cr,
              const SteadCvpLayout *layout,
              double                over)
{
  cairo_rectangle (cr, layout->plot.x - over, layout->plot.y - over,
                   layout->plot.width + 2 * over, layout->plot.height + 2 * over);
  cairo_clip (cr);
}

static void
add_quad (cairo_t              *cr,
          const SteadCvpLayout *layout,
          double                units0,
          double                revenue0,
          double                cost0,
          double                units1,
          double                revenue1,
          double                cost1)
{
  double x0 = stead_cvp_chart_x (layout, units0), x1 = stead_cvp_chart_x (layout, units1);

  cairo_move_to (cr, x0, stead_cvp_chart_y (layout, revenue0));
  cairo_line_to (cr, x1, stead_cvp_chart_y (layout, revenue1));
  cairo_line_to (cr, x1, stead_cvp_chart_y (layout, cost1));
  cairo_line_to (cr, x0, stead_cvp_chart_y (layout, cost0));
  cairo_close_path (cr);
}

/* The part of the piece where the sign of money in less costs is @sign. */
static void
add_piece_area (cairo_t              *cr,
                const SteadCvp       *cvp,
                const SteadCvpLayout *layout,
                const SteadCvpPiece  *piece,
                double                sign)
{
  double revenue0 = cvp->price_cents * piece->units0, revenue1 = cvp->price_cents * piece->units1;
  double left0 = (revenue0 - piece->cost0) * sign, left1 = (revenue1 - piece->cost1) * sign;
  double units, revenue;

  if (left0 <= 0 && left1 <= 0)
    return;
  if (left0 >= 0 && left1 >= 0)
    {
      add_quad (cr, layout, piece->units0, revenue0, piece->cost0, piece->units1, revenue1, piece->cost1);
      return;
    }
  units = piece->units0 + (piece->units1 - piece->units0) * left0 / (left0 - left1);
  revenue = cvp->price_cents * units;
  if (left0 > 0)
    add_quad (cr, layout, piece->units0, revenue0, piece->cost0, units, revenue, revenue);
  else
    add_quad (cr, layout, units, revenue, revenue, piece->units1, revenue1, piece->cost1);
}

static void
paint_area (cairo_t              *cr,
            const SteadCvp       *cvp,
            const SteadDrawStyle *style,
            const SteadCvpLayout *layout,
            double                sign)
{
  SteadCvpPiece piece = { 0 };

  cairo_save (cr);
  clip_to_plot (cr, layout, 0);
  cairo_new_path (cr);
  while (stead_cvp_piece_next (cvp, layout, &piece))
    add_piece_area (cr, cvp, layout, &piece, sign);
  stead_fill_area (cr, style, sign > 0 ? STEAD_ROLE_WATER : STEAD_ROLE_TOMATO,
                   sign > 0 ? STEAD_PATTERN_RISING : STEAD_PATTERN_FALLING);
  cairo_restore (cr);
}

/* The costs, or the fixed part of them, step by step; where they jump only a thin
 * dotted line goes up, since no number of units costs what lies between. */
static void
paint_cost_line (cairo_t              *cr,
                 const SteadCvp       *cvp,
                 const SteadDrawStyle *style,
                 const SteadCvpLayout *layout,
                 gboolean              fixed_only)
{
  const SteadKey *key = &layout->keys[fixed_only ? 2 : 1];
  SteadCvpPiece piece = { 0 };
  double last = NAN;

  cairo_new_path (cr);
  while (stead_cvp_piece_next (cvp, layout, &piece))
    {
      double from = fixed_only ? piece.fixed : piece.cost0;
      double to = fixed_only ? piece.fixed : piece.cost1;
      double x = stead_cvp_chart_x (layout, piece.units0);

      if (!(fabs (from - last) < 1e-6 * layout->max_cents))
        cairo_move_to (cr, x, stead_cvp_chart_y (layout, from));
      cairo_line_to (cr, stead_cvp_chart_x (layout, piece.units1), stead_cvp_chart_y (layout, to));
      last = to;
    }
  stead_stroke_line (cr, style, key->role, key->line, key->line_width);
}

static void
paint_jumps (cairo_t              *cr,
             const SteadCvp       *cvp,
             const SteadDrawStyle *style,
             const SteadCvpLayout *layout)
{
  SteadCvpPiece piece = { 0 };
  double last = NAN;

  cairo_new_path (cr);
  while (stead_cvp_piece_next (cvp, layout, &piece))
    {
      double x = stead_cvp_chart_x (layout, piece.units0);

      if (piece.cost0 > last + 1e-6 * layout->max_cents)
        {
          cairo_move_to (cr, x, stead_cvp_chart_y (layout, last));
          cairo_line_to (cr, x, stead_cvp_chart_y (layout, piece.cost0));
        }
      last = piece.cost1;
    }
  stead_stroke_line (cr, style, STEAD_ROLE_TOMATO, STEAD_LINE_DOTTED, layout->keys[1].line_width * 0.5);
}

/* In print a mark at each tick of the axis tells the two lines apart. */
static void
paint_marks (cairo_t              *cr,
             const SteadCvp       *cvp,
             const SteadDrawStyle *style,
             const SteadCvpLayout *layout)
{
  for (int i = 1; i < layout->x_ticks.n; i++)
    {
      double units = layout->x_ticks.first + i * layout->x_ticks.step;
      double values[] = { stead_cvp_revenue_cents (cvp, units), stead_cvp_cost_cents (cvp, units) };

      for (int line = 0; line < 2; line++)
        if (values[line] <= layout->max_cents)
          stead_mark_paint (cr, style, layout->keys[line].role, layout->keys[line].mark,
                            stead_cvp_chart_x (layout, units), stead_cvp_chart_y (layout, values[line]),
                            layout->font_size * 0.25);
    }
}

static void
paint_lines (cairo_t              *cr,
             const SteadCvp       *cvp,
             const SteadDrawStyle *style,
             const SteadCvpLayout *layout)
{
  cairo_save (cr);
  clip_to_plot (cr, layout, layout->keys[0].line_width);
  paint_cost_line (cr, cvp, style, layout, TRUE);
  paint_jumps (cr, cvp, style, layout);
  paint_cost_line (cr, cvp, style, layout, FALSE);
  cairo_new_path (cr);
  cairo_move_to (cr, layout->plot.x, layout->plot.y + layout->plot.height);
  cairo_line_to (cr, layout->price_x, layout->price_y);
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, layout->keys[0].line_width);
  cairo_restore (cr);
  paint_marks (cr, cvp, style, layout);
}

/* The plan: a line through the plot, and between the two lines what it leaves. */
static void
paint_plan (cairo_t              *cr,
            const SteadCvp       *cvp,
            const SteadCvpWords  *words,
            const SteadDrawStyle *style,
            const SteadCvpLayout *layout)
{
  double bottom = layout->plot.y + layout->plot.height;
  double x = style->scheme == STEAD_SCHEME_PRINT ? layout->plan_x : floor (layout->plan_x) + 0.5;
  gboolean gains = layout->plan_revenue_y <= layout->plan_cost_y;

  if (!layout->has_plan)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y - layout->font_size * 0.2);
  cairo_line_to (cr, x, bottom);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.75, layout->font_size / 12));
  cairo_move_to (cr, x, layout->plan_revenue_y);
  cairo_line_to (cr, x, layout->plan_cost_y);
  stead_stroke_line (cr, style, gains ? STEAD_ROLE_WATER : STEAD_ROLE_TOMATO, STEAD_LINE_SOLID,
                     layout->keys[0].line_width * 1.6);
  stead_text_paint (cr, style, STEAD_ROLE_INK, words->plan, 1, FALSE, STEAD_ALIGN_LEFT,
                    layout->plan_box.x, layout->plan_box.y + layout->plan_box.height / 2);
}

static void
rounded_box (cairo_t        *cr,
             const SteadBox *box,
             double          radius)
{
  double r = MIN (radius, MIN (box->width, box->height) / 2);

  cairo_new_path (cr);
  cairo_arc (cr, box->x + box->width - r, box->y + r, r, -G_PI / 2, 0);
  cairo_arc (cr, box->x + box->width - r, box->y + box->height - r, r, 0, G_PI / 2);
  cairo_arc (cr, box->x + r, box->y + box->height - r, r, G_PI / 2, G_PI);
  cairo_arc (cr, box->x + r, box->y + r, r, G_PI, 3 * G_PI / 2);
  cairo_close_path (cr);
}

/* @loud: card on ink; else ink on card with a hairline round it */
static void
paint_chip (cairo_t              *cr,
            const SteadDrawStyle *style,
            const SteadCvpLayout *layout,
            const char           *text,
            const SteadBox       *box,
            gboolean              loud)
{
  if (box->width <= 0)
    return;
  rounded_box (cr, box, layout->font_size * 0.35);
  stead_palette_set_source (cr, style->scheme, loud ? STEAD_ROLE_INK : STEAD_ROLE_CARD, 1);
  cairo_fill_preserve (cr);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, MAX (0.5, layout->font_size / 16));
  stead_text_paint_block (cr, style, loud ? STEAD_ROLE_CARD : STEAD_ROLE_INK, text, 1, TRUE,
                          STEAD_ALIGN_CENTER, stead_cvp_chip_text_width (layout),
                          box->x + box->width / 2, box->y + box->height / 2);
}

/* A ring on the crossing, and a dotted line down to the units. */
static void
paint_crossing (cairo_t              *cr,
                const SteadDrawStyle *style,
                const SteadCvpLayout *layout,
                double                x,
                double                y)
{
  cairo_new_path (cr);
  cairo_move_to (cr, x, layout->plot.y + layout->plot.height);
  cairo_line_to (cr, x, y);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_DOTTED, MAX (1, layout->font_size / 8));
  stead_mark_paint (cr, style, STEAD_ROLE_INK, STEAD_MARK_RING, x, y, stead_cvp_ring_radius (style) - 1);
}

/* From the end of a line to a label that had to move away from it. */
static void
paint_leader (cairo_t              *cr,
              const SteadDrawStyle *style,
              const SteadCvpLayout *layout,
              SteadRole             role,
              double                from_y,
              double                to_y)
{
  double right = layout->plot.x + layout->plot.width;

  if (fabs (to_y - from_y) < layout->font_size * 0.5)
    return;
  cairo_new_path (cr);
  cairo_move_to (cr, right + 2, from_y);
  cairo_line_to (cr, layout->right_labels_x - 3, to_y);
  stead_stroke_line (cr, style, role, STEAD_LINE_SOLID, MAX (0.5, layout->font_size / 16));
}

static void
paint_right_labels (cairo_t              *cr,
                    const SteadCvp       *cvp,
                    const SteadDrawStyle *style,
                    const SteadCvpLayout *layout)
{
  const SteadBox *boxes[] = { &layout->money_in_box, &layout->all_costs_box, &layout->fixed_box };
  double ends[] = { layout->price_y, stead_cvp_chart_y (layout, stead_cvp_cost_cents (cvp, layout->max_units)),
                    stead_cvp_chart_y (layout, stead_cvp_fixed_cents (cvp, layout->max_units)) };

  for (int i = 0; i < 3; i++)
    {
      const SteadKey *key = &layout->keys[i];
      double y = boxes[i]->y + boxes[i]->height / 2;

      paint_leader (cr, style, layout, key->role, MAX (ends[i], layout->plot.y), y);
      stead_text_paint_block (cr, style, key->role, key->text, 1, i < 2, STEAD_ALIGN_LEFT,
                              layout->right_labels_width, boxes[i]->x, y);
    }
}

void
stead_cvp_chart_paint (cairo_t              *cr,
                       const SteadCvp       *cvp,
                       const SteadCvpWords  *words,
                       const SteadDrawStyle *style,
                       const SteadCvpLayout *layout)
{
  SteadDrawStyle fit;
  SteadAxis x_axis, y_axis;

  g_return_if_fail (cr != NULL && cvp != NULL && words != NULL && style != NULL && layout != NULL);
  fit = *style;
  fit.font_size = layout->font_size;
  x_axis = stead_cvp_chart_x_axis (layout);
  y_axis = stead_cvp_chart_y_axis (layout);
  cairo_save (cr);
  paint_area (cr, cvp, &fit, layout, -1);
  paint_area (cr, cvp, &fit, layout, 1);
  stead_axis_paint_left (cr, &fit, &y_axis, &layout->plot, stead_cvp_tick_gap (&fit));
  stead_axis_paint_bottom (cr, &fit, &x_axis, &layout->plot, stead_cvp_tick_gap (&fit));
  stead_text_paint_block (cr, &fit, STEAD_ROLE_SOFT, words->axis, 1, FALSE, STEAD_ALIGN_CENTER,
                          layout->axis_box.width + 1, layout->axis_box.x + layout->axis_box.width / 2,
                          layout->axis_box.y + layout->axis_box.height / 2);
  paint_plan (cr, cvp, words, &fit, layout);
  paint_lines (cr, cvp, &fit, layout);
  if (layout->narrow)
    stead_keys_paint (cr, &fit, layout->keys, 3);
  else
    paint_right_labels (cr, cvp, &fit, layout);
  if (layout->has_lasting)
    paint_crossing (cr, &fit, layout, layout->lasting_x, layout->lasting_y);
  if (layout->has_even)
    paint_crossing (cr, &fit, layout, layout->even_x, layout->even_y);
  paint_chip (cr, &fit, layout, words->plan_gap, &layout->gap_box, FALSE);
  paint_chip (cr, &fit, layout, words->lasting, &layout->lasting_box, FALSE);
  paint_chip (cr, &fit, layout, words->even, &layout->even_box, TRUE);
  cairo_restore (cr);
}

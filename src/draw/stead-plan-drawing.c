/* stead-plan-drawing.c - the plan of a pen to scale. */
#include "config.h"

#include <math.h>

#include "draw/stead-labels.h"
#include "draw/stead-plan-drawing.h"

#define HANDLE_PX 12.0     /* radius: 24 px across */
#define GAP 6.0

/* How far a gate's leaf stands open, of the gate's width. */
#define LEAF 0.12

void
stead_plan_drawing_place (const SteadPlanLayout *layout,
                          double                 x_m,
                          double                 y_m,
                          double                *x,
                          double                *y)
{
  *x = layout->origin_x + x_m * layout->scale;
  *y = layout->origin_y + y_m * layout->scale;
}

void
stead_plan_drawing_back (const SteadPlanLayout *layout,
                         double                 x,
                         double                 y,
                         double                *x_m,
                         double                *y_m)
{
  *x_m = (x - layout->origin_x) / layout->scale;
  *y_m = (y - layout->origin_y) / layout->scale;
}

int
stead_plan_drawing_handle (const SteadPlanLayout *layout,
                           const SteadPlan       *plan,
                           double                 x,
                           double                 y)
{
  int best = -1;
  double nearest = layout->handle_radius + 4;

  for (gsize i = 0; i < plan->n; i++)
    {
      double hx, hy;

      stead_plan_drawing_place (layout, plan->corners[i].x_m, plan->corners[i].y_m, &hx, &hy);
      if (hypot (hx - x, hy - y) >= nearest)
        continue;
      nearest = hypot (hx - x, hy - y);
      best = (int) i;
    }
  return best;
}

/* --- layout ----------------------------------------------------------------------------- */

static SteadBox
bounds (const SteadPlan *plan)
{
  double x0 = 0, y0 = 0, x1 = 1, y1 = 1;

  for (gsize i = 0; i < plan->n; i++)
    {
      const SteadCorner *c = &plan->corners[i];

      x0 = i == 0 ? c->x_m : MIN (x0, c->x_m);
      y0 = i == 0 ? c->y_m : MIN (y0, c->y_m);
      x1 = i == 0 ? c->x_m : MAX (x1, c->x_m);
      y1 = i == 0 ? c->y_m : MAX (y1, c->y_m);
    }
  if (plan->has_shelter)
    {
      x0 = MIN (x0, plan->shelter_m.x);
      y0 = MIN (y0, plan->shelter_m.y);
      x1 = MAX (x1, plan->shelter_m.x + plan->shelter_m.width);
      y1 = MAX (y1, plan->shelter_m.y + plan->shelter_m.height);
    }
  return (SteadBox) { x0, y0, MAX (x1 - x0, 0.1), MAX (y1 - y0, 0.1) };
}

static void
fit (const SteadPlan *plan,
     double           side_space,
     double           width,
     double           height,
     double           bar_height,
     SteadPlanLayout *out)
{
  SteadBox box = bounds (plan);

  out->plot = (SteadBox) { side_space, side_space * 0.6, MAX (width - 2 * side_space, 8),
                           MAX (height - 1.2 * side_space - bar_height, 8) };
  out->scale = MIN (out->plot.width / box.width, out->plot.height / box.height);
  out->origin_x = out->plot.x + (out->plot.width - box.width * out->scale) / 2 - box.x * out->scale;
  out->origin_y = out->plot.y + (out->plot.height - box.height * out->scale) / 2 - box.y * out->scale;
}

/* 1 where corners go round with the clock on the plan. */
static double
turn (const SteadPlan *plan)
{
  double sum = 0;

  for (gsize i = 0; i < plan->n; i++)
    {
      const SteadCorner *a = &plan->corners[i], *b = &plan->corners[(i + 1) % plan->n];

      sum += a->x_m * b->y_m - b->x_m * a->y_m;
    }
  return sum >= 0 ? 1 : -1;
}

/* A point of a side, @along m from its start, @out pixels outside of the pen. */
static void
side_point (const SteadPlan       *plan,
            const SteadPlanLayout *layout,
            gsize                  side,
            double                 along_m,
            double                 out_px,
            double                *x,
            double                *y)
{
  const SteadCorner *a = &plan->corners[side], *b = &plan->corners[(side + 1) % plan->n];
  double length = hypot (b->x_m - a->x_m, b->y_m - a->y_m);
  double dx = length > 0 ? (b->x_m - a->x_m) / length : 1, dy = length > 0 ? (b->y_m - a->y_m) / length : 0;
  double way = turn (plan);

  stead_plan_drawing_place (layout, a->x_m + dx * along_m, a->y_m + dy * along_m, x, y);
  *x += way * dy * out_px;
  *y -= way * dx * out_px;
}

static double
side_length (const SteadPlan *plan,
             gsize            side)
{
  const SteadCorner *a = &plan->corners[side], *b = &plan->corners[(side + 1) % plan->n];

  return hypot (b->x_m - a->x_m, b->y_m - a->y_m);
}

/* Room that the open leaves of a side's gates take outside of it. */
static double
leaf_px (const SteadPlan       *plan,
         const SteadPlanLayout *layout,
         gsize                  side)
{
  double most = 0;

  for (gsize i = 0; i < plan->n_gates; i++)
    if (plan->gates[i].side == side)
      most = MAX (most, plan->gates[i].width_m * layout->scale * LEAF);
  return most;
}

/* A text half its own size away from the side, its handles and its open gates; @sign: 1
 * outside of the pen, -1 inside. */
static void
lay_text (cairo_t              *cr,
          const SteadPlan      *plan,
          const SteadDrawStyle *style,
          SteadPlanLayout      *out,
          SteadObstacles       *obstacles,
          gsize                 side,
          double                along_m,
          double                sign,
          const char           *text,
          gboolean              bold,
          SteadBox             *box)
{
  double w, h, x, y, x2, y2, nx, ny;
  double leaf = sign > 0 ? leaf_px (plan, out, side) : 0;

  stead_text_measure (cr, style, text, 1, bold, &w, &h);
  side_point (plan, out, side, along_m, 0, &x, &y);
  side_point (plan, out, side, along_m, sign, &x2, &y2);
  nx = x2 - x;
  ny = y2 - y;
  x += nx * (MAX (out->handle_radius, leaf) + GAP + w / 2);
  y += ny * (MAX (out->handle_radius * 0.6, leaf) + GAP + h / 2);
  *box = (SteadBox) { CLAMP (x - w / 2, 1, MAX (obstacles->inside.width - w - 1, 1)),
                      CLAMP (y - h / 2, 1, MAX (obstacles->inside.height - h - 1, 1)), w, h };
  for (int i = 0; i < obstacles->n_boxes; i++)
    if (stead_box_overlaps (box, &obstacles->boxes[i]))
      {
        *box = (SteadBox) { 0 };
        return;
      }
  stead_obstacles_add_box (obstacles, *box);
}

void
stead_plan_drawing_layout (cairo_t               *cr,
                           const SteadPlan       *plan,
                           const SteadDrawStyle  *style,
                           double                 width,
                           double                 height,
                           const SteadPlanLayout *hold,
                           SteadPlanLayout       *out)
{
  SteadDrawStyle fitted = stead_draw_style_fit (style, width, height);
  SteadObstacles obstacles = { .inside = { 0, 0, width, height } };
  double w, line;

  g_return_if_fail (plan->n >= 1 && plan->n <= STEAD_OUTLINE_MOST);
  *out = (SteadPlanLayout) { .font_size = fitted.font_size, .handle_radius = plan->handles ? HANDLE_PX : 3 };
  stead_text_measure (cr, &fitted, "000 ft", 1, TRUE, &w, &line);
  fit (plan, w + out->handle_radius + 2 * GAP, width, height, line * 1.6, out);
  if (hold != NULL)
    {
      out->scale = hold->scale;
      out->origin_x = hold->origin_x;
      out->origin_y = hold->origin_y;
    }
  stead_text_measure (cr, &fitted, plan->bar_text, 1, FALSE, &w, &line);
  out->bar_box = (SteadBox) { 1, height - line - 2, plan->bar_m * out->scale + GAP + w, line };
  stead_obstacles_add_box (&obstacles, out->bar_box);
  for (gsize i = 0; i < MIN (plan->n, STEAD_PLAN_MOST_NAMED); i++)
    lay_text (cr, plan, &fitted, out, &obstacles, i, side_length (plan, i) / 2, 1, plan->side_texts[i], TRUE,
              &out->side_boxes[i]);
  for (gsize i = 0; i < MIN (plan->n_gates, STEAD_PLAN_MOST_NAMED); i++)
    if (plan->gates[i].side < plan->n)
      lay_text (cr, plan, &fitted, out, &obstacles, plan->gates[i].side, plan->gates[i].offset_m + plan->gates[i].width_m / 2,
                -1, plan->gate_texts[i], FALSE, &out->gate_boxes[i]);
}

/* --- paint ------------------------------------------------------------------------------ */

static void
paint_outline (cairo_t               *cr,
               const SteadPlan       *plan,
               const SteadDrawStyle  *style,
               const SteadPlanLayout *layout)
{
  cairo_new_path (cr);
  for (gsize i = 0; i < plan->n; i++)
    {
      double x, y;

      stead_plan_drawing_place (layout, plan->corners[i].x_m, plan->corners[i].y_m, &x, &y);
      cairo_line_to (cr, x, y);
    }
  cairo_close_path (cr);
  stead_palette_set_source (cr, style->scheme, STEAD_ROLE_SHELL, 0.25);
  cairo_fill_preserve (cr);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, 2);
}

/* A gap in the side, and the leaf as a line out of the pen. */
static void
paint_gate (cairo_t               *cr,
            const SteadPlan       *plan,
            const SteadDrawStyle  *style,
            const SteadPlanLayout *layout,
            const SteadFenceGate  *gate)
{
  double x0, y0, x1, y1, x2, y2;

  if (gate->side >= plan->n)
    return;
  side_point (plan, layout, gate->side, gate->offset_m, 0, &x0, &y0);
  side_point (plan, layout, gate->side, gate->offset_m + gate->width_m, 0, &x1, &y1);
  side_point (plan, layout, gate->side, gate->offset_m + gate->width_m * 0.5, gate->width_m * layout->scale * LEAF, &x2, &y2);
  cairo_new_path (cr);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  stead_stroke_line (cr, style, STEAD_ROLE_CARD, STEAD_LINE_SOLID, 5);
  cairo_new_path (cr);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x2, y2);
  stead_stroke_line (cr, style, STEAD_ROLE_WATER, STEAD_LINE_SOLID, 2.5);
  stead_mark_paint (cr, style, STEAD_ROLE_INK, STEAD_MARK_SQUARE, x0, y0, 3);
  stead_mark_paint (cr, style, STEAD_ROLE_INK, STEAD_MARK_SQUARE, x1, y1, 3);
}

static void
paint_shelter (cairo_t               *cr,
               const SteadPlan       *plan,
               const SteadDrawStyle  *style,
               const SteadPlanLayout *layout)
{
  const SteadBox *m = &plan->shelter_m;
  double x, y, w = m->width * layout->scale, h = m->height * layout->scale, tw, th;
  const double ox[] = { 0, 0, 0, w }, oy[] = { h, 0, 0, 0 }, px[] = { w, 0, w, w }, py[] = { h, h, 0, h };

  stead_plan_drawing_place (layout, m->x, m->y, &x, &y);
  cairo_new_path (cr);
  cairo_rectangle (cr, x, y, w, h);
  stead_fill_area (cr, style, STEAD_ROLE_EGG, STEAD_PATTERN_RISING);
  cairo_new_path (cr);
  cairo_rectangle (cr, x, y, w, h);
  stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, 2);
  /* The open side is no wall. */
  cairo_new_path (cr);
  cairo_move_to (cr, x + ox[plan->shelter_open & 3], y + oy[plan->shelter_open & 3]);
  cairo_line_to (cr, x + px[plan->shelter_open & 3], y + py[plan->shelter_open & 3]);
  stead_stroke_line (cr, style, STEAD_ROLE_CARD, STEAD_LINE_SOLID, 3);
  if (plan->shelter_text == NULL)
    return;
  stead_text_measure (cr, style, plan->shelter_text, 1, FALSE, &tw, &th);
  if (tw + 4 < w && th + 2 < h)
    stead_text_paint (cr, style, STEAD_ROLE_INK, plan->shelter_text, 1, FALSE, STEAD_ALIGN_CENTER, x + w / 2, y + h / 2);
}

static void
paint_handles (cairo_t               *cr,
               const SteadPlan       *plan,
               const SteadDrawStyle  *style,
               const SteadPlanLayout *layout,
               int                    chosen)
{
  for (gsize i = 0; i < plan->n; i++)
    {
      double x, y;

      stead_plan_drawing_place (layout, plan->corners[i].x_m, plan->corners[i].y_m, &x, &y);
      cairo_new_path (cr);
      cairo_arc (cr, x, y, layout->handle_radius - 1, 0, 2 * G_PI);
      stead_palette_set_source (cr, style->scheme, (int) i == chosen ? STEAD_ROLE_SHELL : STEAD_ROLE_CARD, 1);
      cairo_fill_preserve (cr);
      stead_stroke_line (cr, style, STEAD_ROLE_INK, STEAD_LINE_SOLID, (int) i == chosen ? 3 : 1.5);
    }
}

static void
paint_names (cairo_t               *cr,
             const SteadPlan       *plan,
             const SteadDrawStyle  *style,
             const SteadPlanLayout *layout)
{
  for (gsize i = 0; i < MIN (plan->n, STEAD_PLAN_MOST_NAMED); i++)
    {
      const SteadBox *box = &layout->side_boxes[i];

      if (box->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_INK, plan->side_texts[i], 1, TRUE, STEAD_ALIGN_LEFT, box->x,
                          box->y + box->height / 2);
    }
  for (gsize i = 0; i < MIN (plan->n_gates, STEAD_PLAN_MOST_NAMED); i++)
    {
      const SteadBox *box = &layout->gate_boxes[i];

      if (box->width > 0)
        stead_text_paint (cr, style, STEAD_ROLE_WATER, plan->gate_texts[i], 1, FALSE, STEAD_ALIGN_LEFT, box->x,
                          box->y + box->height / 2);
    }
}

void
stead_plan_drawing_paint (cairo_t               *cr,
                          const SteadPlan       *plan,
                          const SteadDrawStyle  *style,
                          const SteadPlanLayout *layout,
                          int                    chosen)
{
  SteadDrawStyle fitted = *style;
  double bar = plan->bar_m * layout->scale, y = layout->bar_box.y + layout->bar_box.height / 2;

  fitted.font_size = layout->font_size;
  paint_outline (cr, plan, &fitted, layout);
  if (plan->has_shelter)
    paint_shelter (cr, plan, &fitted, layout);
  for (gsize i = 0; i < plan->n_gates; i++)
    paint_gate (cr, plan, &fitted, layout, &plan->gates[i]);
  paint_handles (cr, plan, &fitted, layout, chosen);
  paint_names (cr, plan, &fitted, layout);
  cairo_new_path (cr);
  cairo_move_to (cr, layout->bar_box.x + 1, y - 4);
  cairo_rel_line_to (cr, 0, 8);
  cairo_move_to (cr, layout->bar_box.x + 1, y);
  cairo_rel_line_to (cr, bar, 0);
  cairo_move_to (cr, layout->bar_box.x + 1 + bar, y - 4);
  cairo_rel_line_to (cr, 0, 8);
  stead_stroke_line (cr, &fitted, STEAD_ROLE_SOFT, STEAD_LINE_SOLID, 1.5);
  stead_text_paint (cr, &fitted, STEAD_ROLE_SOFT, plan->bar_text, 1, FALSE, STEAD_ALIGN_LEFT,
                    layout->bar_box.x + bar + GAP, y);
}

/* test-plan-drawing.c - the plan of a pen, checked from outside. */
#include <locale.h>

#include "draw-probe.h"
#include "draw/stead-plan-drawing.h"

/* 48 by 24 ft, written as 48 by 24 m: a plan knows no feet. */
static const SteadCorner corners[] = { { 0, 0 }, { 48, 0 }, { 48, 24 }, { 0, 24 } };
static const SteadFenceGate gates[] = { { 1, 6, 12 } };
static const char * const sides[] = { "48 ft", "24 ft", "48 ft", "24 ft" };
static const char * const names[] = { "gate 12 ft" };

static SteadPlan
make_plan (void)
{
  return (SteadPlan) { .corners = corners, .n = 4, .gates = gates, .n_gates = 1, .has_shelter = TRUE,
                       .shelter_m = { 2, 2, 12, 8 }, .side_texts = sides, .gate_texts = names,
                       .shelter_text = "12 ft by 8 ft", .bar_m = 10, .bar_text = "10 ft", .handles = TRUE };
}

static double
apart (const SteadPlanLayout *layout,
       int                    a,
       int                    b)
{
  double x0, y0, x1, y1;

  stead_plan_drawing_place (layout, corners[a].x_m, corners[a].y_m, &x0, &y0);
  stead_plan_drawing_place (layout, corners[b].x_m, corners[b].y_m, &x1, &y1);
  return hypot (x1 - x0, y1 - y0);
}

/* To scale: a side twice as long is twice as long on the plan, and the diagonal is that of a
 * right triangle (3-4-5 rule of squaring: sqrt (48 x 48 + 24 x 24)). */
static void
test_scale (void)
{
  SteadPlan plan = make_plan ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, NULL };
  cairo_t *cr = probe_record ();
  SteadPlanLayout layout;

  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &layout);
  g_assert_cmpfloat_with_epsilon (apart (&layout, 0, 1), 2 * apart (&layout, 1, 2), 1e-6);
  g_assert_cmpfloat_with_epsilon (apart (&layout, 0, 2), sqrt (48 * 48 + 24 * 24) * layout.scale, 1e-6);
  g_assert_cmpfloat (apart (&layout, 0, 1), >, 400);
  cairo_destroy (cr);
}

static void
test_back (void)
{
  SteadPlan plan = make_plan ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, NULL };
  cairo_t *cr = probe_record ();
  SteadPlanLayout layout;
  double x, y, x_m, y_m;

  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &layout);
  stead_plan_drawing_place (&layout, 17, 5, &x, &y);
  stead_plan_drawing_back (&layout, x, y, &x_m, &y_m);
  g_assert_cmpfloat_with_epsilon (x_m, 17, 1e-9);
  g_assert_cmpfloat_with_epsilon (y_m, 5, 1e-9);
  cairo_destroy (cr);
}

/* The handle under the pointer is that of the nearest corner; in the middle there is none. */
static void
test_handle (void)
{
  SteadPlan plan = make_plan ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, NULL };
  cairo_t *cr = probe_record ();
  SteadPlanLayout layout;
  double x, y;

  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &layout);
  for (int i = 0; i < 4; i++)
    {
      stead_plan_drawing_place (&layout, corners[i].x_m, corners[i].y_m, &x, &y);
      g_assert_cmpint (stead_plan_drawing_handle (&layout, &plan, x + 5, y - 5), ==, i);
    }
  stead_plan_drawing_place (&layout, 24, 12, &x, &y);
  g_assert_cmpint (stead_plan_drawing_handle (&layout, &plan, x, y), ==, -1);
  /* 24 px across, so that a finger finds it. */
  g_assert_cmpfloat (layout.handle_radius, >=, 12);
  cairo_destroy (cr);
}

/* While a corner is dragged nothing else moves. */
static void
test_hold (void)
{
  SteadCorner moved[4];
  SteadPlan plan = make_plan ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, NULL };
  cairo_t *cr = probe_record ();
  SteadPlanLayout before, held, free_one;

  memcpy (moved, corners, sizeof moved);
  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &before);
  moved[1].x_m = 96;
  plan.corners = moved;
  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, &before, &held);
  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &free_one);
  g_assert_cmpfloat (held.scale, ==, before.scale);
  g_assert_cmpfloat (held.origin_x, ==, before.origin_x);
  g_assert_cmpfloat (free_one.scale, <, before.scale);
  cairo_destroy (cr);
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 1000, 500 }, { 560, 300 }, { 300, 260 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
      {
        SteadPlan plan = make_plan ();
        SteadDrawStyle style = { scheme, i == 0 ? 22 : 12, NULL, NULL };
        cairo_t *cr = probe_record ();
        SteadPlanLayout layout;
        SteadBox boxes[6];

        stead_plan_drawing_layout (cr, &plan, &style, sizes[i][0], sizes[i][1], NULL, &layout);
        stead_plan_drawing_paint (cr, &plan, &style, &layout, 2);
        probe_assert_inside (cr, sizes[i][0], sizes[i][1]);
        memcpy (boxes, layout.side_boxes, 4 * sizeof *boxes);
        boxes[4] = layout.gate_boxes[0];
        boxes[5] = layout.bar_box;
        probe_assert_apart (boxes, 6);
        cairo_destroy (cr);
      }
}

/* The fence is a line in ink; in the gate there is a gap. */
static void
test_gate (void)
{
  SteadPlan plan = make_plan ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, NULL };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 700, 400);
  SteadPlanLayout layout;
  double x, y;

  plan.handles = FALSE;
  stead_plan_drawing_layout (cr, &plan, &style, 700, 400, NULL, &layout);
  stead_plan_drawing_paint (cr, &plan, &style, &layout, -1);
  stead_plan_drawing_place (&layout, 48, 3, &x, &y);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_INK, x, y);
  stead_plan_drawing_place (&layout, 48, 16, &x, &y);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, x, y);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/plan-drawing/scale", test_scale);
  g_test_add_func ("/draw/plan-drawing/back", test_back);
  g_test_add_func ("/draw/plan-drawing/handle", test_handle);
  g_test_add_func ("/draw/plan-drawing/hold", test_hold);
  g_test_add_func ("/draw/plan-drawing/inside", test_inside);
  g_test_add_func ("/draw/plan-drawing/gate", test_gate);
  return g_test_run ();
}

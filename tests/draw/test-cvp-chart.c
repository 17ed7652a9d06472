/* test-cvp-chart.c - the break-even chart, checked from outside.
 *
 * Where things must stand is worked out here again, from the numbers and the
 * plot's rectangle alone; then the drawing's pixels are looked at.
 */
#include <locale.h>
#include <malloc.h>

#include "core/stead-money.h"
#include "core/stead-quantity.h"
#include "draw-probe.h"
#include "draw/stead-cvp-chart.h"

static const SteadCvpWords english = {
  .axis = "dozens sold on the sale day", .even = "break-even 46 dozen", .lasting = "no loss from 61 dozen on",
  .plan = "plan 72", .plan_gap = "$54.48 left", .money_in = "money in", .all_costs = "all costs",
  .fixed_costs = "fixed costs",
};

static const SteadCvpWords spanish = {
  .axis = "docenas de huevos vendidas durante el día de venta", .even = "punto de equilibrio: 46 docenas",
  .lasting = "sin pérdidas a partir de 61 docenas", .plan = "planificado: 72", .plan_gap = "quedan $54.48",
  .money_in = "dinero que entra", .all_costs = "todos los costos", .fixed_costs = "costos fijos del puesto de venta",
};

static const SteadCvp plain = { .price_cents = 450, .variable_cents = 241, .fixed_cents = 9600, .planned_units = 72 };
static const SteadCvp steps = { .price_cents = 450, .variable_cents = 241, .fixed_cents = 4000, .step_cents = 2500,
                                .step_units = 40, .planned_units = 72 };

static const SteadCvp odd[] = {
  { .price_cents = 0, .variable_cents = 241, .fixed_cents = 9600, .planned_units = 72 },
  { .price_cents = 450, .variable_cents = 241, .fixed_cents = 9600, .planned_units = 0 },
  { .price_cents = 450, .variable_cents = 449, .fixed_cents = 96000, .planned_units = 72 },
  { .price_cents = 0 },
  { .price_cents = 4.5e11, .variable_cents = 2.41e11, .fixed_cents = 9.6e12, .planned_units = 72 },
  { .price_cents = 250, .variable_cents = 250, .fixed_cents = 0, .planned_units = 72 },
  { .price_cents = 450, .variable_cents = 41, .fixed_cents = 4000, .step_cents = 100, .step_units = 1,
    .planned_units = 3000 },
  { .price_cents = 450, .variable_cents = 0, .fixed_cents = 0, .planned_units = 1 },
  { .price_cents = 1, .variable_cents = 0, .fixed_cents = 5, .planned_units = 1e9 },
};

static void
lay (cairo_t             *cr,
     const SteadCvp      *cvp,
     const SteadCvpWords *words,
     SteadScheme          scheme,
     double               font_size,
     double               width,
     double               height,
     SteadCvpLayout      *out)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  double max_units, max_cents;

  stead_cvp_chart_range (cvp, &max_units, &max_cents);
  stead_cvp_chart_layout (cr, cvp, words, &style, max_units, max_cents, width, height, out);
  stead_cvp_chart_paint (cr, cvp, words, &style, out);
}

/* The test's own arithmetic. */
static double
own_x (const SteadCvpLayout *layout,
       double                units)
{
  return layout->plot.x + layout->plot.width * units / layout->max_units;
}

static double
own_y (const SteadCvpLayout *layout,
       double                cents)
{
  return layout->plot.y + layout->plot.height * (1 - cents / layout->max_cents);
}

static double
own_step_cost (double units,
               int    step)
{
  return 4000 + 2500 * step + 241 * units;
}

static void
test_positions (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  double even = 9600.0 / (450 - 241);   /* fixed cost over margin */
  SteadCvpLayout layout;

  lay (cr, &plain, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  g_assert_true (layout.has_even);
  g_assert_cmpfloat_with_epsilon (layout.even_x, own_x (&layout, even), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.even_y, own_y (&layout, 450 * even), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.even_y, own_y (&layout, 9600 + 241 * even), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.plan_x, own_x (&layout, 72), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.plan_revenue_y, own_y (&layout, 72 * 450), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.plan_cost_y, own_y (&layout, 9600 + 72 * 241), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.price_y, own_y (&layout, 450 * layout.max_units), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.cost_y, own_y (&layout, 9600 + 241 * layout.max_units), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.fixed_y, own_y (&layout, 9600), 0.01);
  g_assert_cmpfloat (layout.fixed_x, ==, layout.plot.x);
  cairo_destroy (cr);
}

static void
test_pixels (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  double even = 9600.0 / 209;
  SteadCvpLayout layout;

  lay (cr, &plain, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  for (int units = 10; units < 110; units += 7)
    {
      if (fabs (units - even) < 4 || ABS (units - 72) < 2)
        continue;
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, own_x (&layout, units), own_y (&layout, 450 * units));
      probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, units),
                         own_y (&layout, 9600 + 241 * units));
    }
  /* The ring: card in its middle, ink where its line runs, on four sides or where nothing else lies. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, own_x (&layout, even), own_y (&layout, 450 * even));
  {
    gboolean ink = FALSE;

    for (double r = 3; r < 9; r += 0.5)
      ink |= probe_distance (probe_pixel (cr, own_x (&layout, even) + r, own_y (&layout, 450 * even)),
                             stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_INK)) < 60;
    g_assert_true (ink);
  }
  /* The plan's line, over the lines and under them. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_INK, layout.plan_x, own_y (&layout, 500));
  cairo_destroy (cr);
}

/* Left of the break-even the wash is the costs' colour, right of it the money's. */
static void
test_areas (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  double red = 0, green = 0;
  SteadCvpLayout layout;

  lay (cr, &plain, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  for (int i = 0; i < 40; i++)
    {
      guint32 loss = probe_pixel (cr, own_x (&layout, 6) + i % 8, own_y (&layout, 7000) + i / 8.0);
      guint32 gain = probe_pixel (cr, own_x (&layout, 110) + i % 8, own_y (&layout, 43000) + i / 8.0);

      red += (double) (loss >> 16 & 0xff) - (loss & 0xff);
      green += (double) (gain & 0xff) - (gain >> 16 & 0xff);
    }
  g_assert_cmpfloat (red / 40, >, 10);
  g_assert_cmpfloat (green / 40, >, 10);
  cairo_destroy (cr);
}

static void
test_steps (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 900, 560);
  SteadCvpLayout layout;

  lay (cr, &steps, &english, STEAD_SCHEME_LIGHT, 12, 900, 560, &layout);
  /* Two crossings: 6500 / 209 in the first step; 9000 / 209 = 43.1 in the second, past its start at 40. */
  g_assert_true (layout.has_even);
  g_assert_cmpfloat_with_epsilon (layout.even_x, own_x (&layout, 6500.0 / 209), 0.01);
  g_assert_true (layout.has_lasting);
  g_assert_cmpfloat_with_epsilon (layout.lasting_x, own_x (&layout, 9000.0 / 209), 0.01);
  g_assert_cmpfloat_with_epsilon (layout.lasting_y, own_y (&layout, 450 * 9000.0 / 209), 0.01);
  /* The costs just before and just after each jump. */
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, 39.6), own_y (&layout, own_step_cost (39.6, 1)));
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, 79.5), own_y (&layout, own_step_cost (79.5, 2)));
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, own_x (&layout, 80.5), own_y (&layout, own_step_cost (80.5, 3)));
  /* The handle stands at what the day costs before anything is sold, the first step included. */
  g_assert_cmpfloat_with_epsilon (layout.fixed_y, own_y (&layout, 6500), 0.01);
  cairo_destroy (cr);
}

static void
add_tick_boxes (cairo_t              *cr,
                const SteadDrawStyle *style,
                const SteadCvpLayout *layout,
                SteadBox             *boxes,
                int                  *n)
{
  double gap = style->scheme == STEAD_SCHEME_PRINT ? MAX (5, style->font_size * 0.5) : STEAD_CVP_HANDLE_RADIUS + 3;

  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      double value = layout->x_ticks.first + i * layout->x_ticks.step, w, h;
      g_autofree char *text = stead_number_format (value, 0);

      stead_text_measure (cr, style, text, 1, FALSE, &w, &h);
      boxes[(*n)++] = (SteadBox) { own_x (layout, value) - w / 2, layout->plot.y + layout->plot.height + gap, w, h };
    }
  for (int i = 0; i < layout->y_ticks.n; i++)
    {
      double value = layout->y_ticks.first + i * layout->y_ticks.step, w, h;
      g_autofree char *text = stead_money_format_short ((gint64) value, "USD");

      stead_text_measure (cr, style, text, 1, FALSE, &w, &h);
      /* Its ink is lower than its line is high. */
      boxes[(*n)++] = (SteadBox) { layout->plot.x - gap - w, own_y (layout, value) - h * 0.35, w, h * 0.7 };
    }
}

static void
check_whole (const SteadCvp      *cvp,
             const SteadCvpWords *words,
             SteadScheme          scheme,
             double               font_size,
             double               width,
             double               height)
{
  cairo_t *cr = probe_record ();
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  SteadCvpLayout layout;
  SteadBox boxes[64];
  int n = 0;

  lay (cr, cvp, words, scheme, font_size, width, height, &layout);
  g_test_message ("price %g cost %g fixed %g plan %g, scheme %d, text %g, %g x %g", cvp->price_cents,
                  cvp->variable_cents, cvp->fixed_cents, cvp->planned_units, scheme, font_size, width, height);
  probe_assert_inside (cr, width, height);
  g_assert_cmpfloat (layout.plot.width, >, width * 0.3);
  g_assert_cmpfloat (layout.plot.height, >, height * 0.2);
  boxes[n++] = layout.money_in_box;
  boxes[n++] = layout.all_costs_box;
  boxes[n++] = layout.fixed_box;
  boxes[n++] = layout.axis_box;
  boxes[n++] = layout.plan_box;
  boxes[n++] = layout.even_box;
  boxes[n++] = layout.lasting_box;
  boxes[n++] = layout.gap_box;
  if (layout.has_even)
    boxes[n++] = (SteadBox) { layout.even_x - 4, layout.even_y - 4, 8, 8 };
  style.font_size = layout.font_size;
  add_tick_boxes (cr, &style, &layout, boxes, &n);
  /* The ring may lie on a text of the axis: then the break-even is at 0. */
  probe_assert_apart (boxes, n);
  if (layout.has_even && words->even != NULL)
    {
      g_assert_cmpfloat (layout.even_box.x, >=, layout.plot.x);
      g_assert_cmpfloat (layout.even_box.y, >=, layout.plot.y);
      g_assert_cmpfloat (layout.even_box.x + layout.even_box.width, <=, layout.plot.x + layout.plot.width);
      g_assert_cmpfloat (layout.even_box.y + layout.even_box.height, <=, layout.plot.y + layout.plot.height);
    }
  cairo_destroy (cr);
}

static void
test_whole_at_all_sizes (void)
{
  static const double widths[] = { 320, 640, 1000 };
  static const double fonts[] = { 12, 24 };
  const SteadCvpWords *words[] = { &english, &spanish };

  for (gsize w = 0; w < G_N_ELEMENTS (widths); w++)
    for (gsize f = 0; f < G_N_ELEMENTS (fonts); f++)
      for (gsize l = 0; l < G_N_ELEMENTS (words); l++)
        for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
          {
            double height = MAX (widths[w] * 0.6, 300);

            check_whole (&plain, words[l], (SteadScheme) scheme, fonts[f], widths[w], height);
            check_whole (&steps, words[l], (SteadScheme) scheme, fonts[f], widths[w], height);
          }
}

static void
test_whole_with_odd_numbers (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      check_whole (&odd[i], &english, STEAD_SCHEME_LIGHT, 12, 640, 400);
      check_whole (&odd[i], &spanish, STEAD_SCHEME_LIGHT, 24, 1000, 600);
      check_whole (&odd[i], &english, STEAD_SCHEME_LIGHT, 12, 320, 300);
    }
}

static void
test_handles_can_be_taken (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (odd) + 2; i++)
    {
      const SteadCvp *cvp = i == 0 ? &plain : i == 1 ? &steps : &odd[i - 2];
      cairo_t *cr = probe_record ();
      SteadCvpLayout layout;
      double at[4][2];

      lay (cr, cvp, &english, STEAD_SCHEME_LIGHT, 12, 640, 420, &layout);
      memcpy (at, (double[4][2]) { { layout.price_x, layout.price_y }, { layout.cost_x, layout.cost_y },
                                   { layout.fixed_x, layout.fixed_y }, { layout.plan_x, layout.plan_y } }, sizeof at);
      for (int a = 0; a < 4; a++)
        {
          g_assert_cmpfloat (at[a][0], >=, STEAD_CVP_HANDLE_RADIUS);
          g_assert_cmpfloat (at[a][0], <=, 640 - STEAD_CVP_HANDLE_RADIUS);
          g_assert_cmpfloat (at[a][1], >=, STEAD_CVP_HANDLE_RADIUS);
          g_assert_cmpfloat (at[a][1], <=, 420 - STEAD_CVP_HANDLE_RADIUS);
          for (int b = a + 1; b < 4; b++)
            {
              g_test_message ("case %zu: handles %d and %d", i, a, b);
              g_assert_cmpfloat (hypot (at[a][0] - at[b][0], at[a][1] - at[b][1]), >=, 24);
            }
        }
      cairo_destroy (cr);
    }
}

/* While a handle is dragged the range stays: a dearer line leaves through the top,
 * and the handle still means the price. */
static void
test_price_beyond_the_range (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadCvp dear = plain;
  double max_units, max_cents;
  SteadCvpLayout layout;

  stead_cvp_chart_range (&plain, &max_units, &max_cents);
  dear.price_cents = 900;
  stead_cvp_chart_layout (cr, &dear, &english, &style, max_units, max_cents, 640, 420, &layout);
  stead_cvp_chart_paint (cr, &dear, &english, &style, &layout);
  g_assert_cmpfloat (layout.max_units, ==, max_units);
  g_assert_cmpfloat (layout.price_x, <, layout.plot.x + layout.plot.width - 20);
  g_assert_cmpfloat_with_epsilon (stead_cvp_chart_cents_at (&layout, layout.price_y)
                                  / stead_cvp_chart_units_at (&layout, layout.price_x), 900, 1e-6);
  probe_assert_inside (cr, 640, 420);
  cairo_destroy (cr);
}

static void
test_pixel_and_back (void)
{
  cairo_t *cr = probe_record ();
  SteadCvpLayout layout;

  lay (cr, &plain, &english, STEAD_SCHEME_LIGHT, 12, 640, 420, &layout);
  for (int units = 0; units <= 120; units += 13)
    g_assert_cmpfloat_with_epsilon (stead_cvp_chart_units_at (&layout, own_x (&layout, units)), units, 1e-9);
  for (int cents = 0; cents <= 50000; cents += 1234)
    g_assert_cmpfloat_with_epsilon (stead_cvp_chart_cents_at (&layout, own_y (&layout, cents)), cents, 1e-6);
  cairo_destroy (cr);
}

static void
test_range_shows_what_matters (void)
{
  double max_units, max_cents;

  stead_cvp_chart_range (&plain, &max_units, &max_cents);
  g_assert_cmpfloat (max_units, >, 72);
  g_assert_cmpfloat (max_units, <, 144);
  g_assert_cmpfloat (max_cents, >=, 450 * max_units);
  g_assert_cmpfloat (max_cents, <, 450 * max_units * 1.3);
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      stead_cvp_chart_range (&odd[i], &max_units, &max_cents);
      g_assert_true (isfinite (max_units) && isfinite (max_cents));
      g_assert_cmpfloat (max_units, >, odd[i].planned_units);
      g_assert_cmpfloat (max_cents, >=, odd[i].price_cents * max_units);
      g_assert_cmpfloat (max_cents, >=, odd[i].fixed_cents + odd[i].variable_cents * max_units);
    }
  /* A break-even fifty plans away would flatten the plan: it is left out. */
  stead_cvp_chart_range (&(SteadCvp) { .price_cents = 10, .variable_cents = 9, .fixed_cents = 5000, .planned_units = 100 },
                         &max_units, &max_cents);
  g_assert_cmpfloat (max_units, <, 300);
}

static void
test_without_words_that_may_lack (void)
{
  SteadCvpWords few = english;
  cairo_t *cr = probe_record ();
  SteadCvpLayout layout;

  few.even = few.lasting = few.plan = few.plan_gap = NULL;
  lay (cr, &steps, &few, STEAD_SCHEME_PRINT, 9, 500, 300, &layout);
  g_assert_false (layout.has_plan);
  g_assert_false (layout.has_lasting);
  g_assert_cmpfloat (layout.even_box.width, ==, 0);
  probe_assert_inside (cr, 500, 300);
  cairo_destroy (cr);
}

/* Two prints in grey: the lines still differ, for the costs are broken. */
static void
test_print_tells_lines_by_dash (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_PRINT, 900, 560);
  int gaps[2] = { 0, 0 };
  SteadCvpLayout layout;

  lay (cr, &plain, &english, STEAD_SCHEME_PRINT, 12, 900, 560, &layout);
  for (double units = 80; units < 118; units += 0.25)
    {
      double cents[] = { 450 * units, 9600 + 241 * units };

      for (int line = 0; line < 2; line++)
        gaps[line] += probe_distance (probe_pixel (cr, own_x (&layout, units), own_y (&layout, cents[line])),
                                      0xffffff) < 60;
    }
  g_assert_cmpint (gaps[0], ==, 0);
  g_assert_cmpint (gaps[1], >, 20);
  cairo_destroy (cr);
}

static void
drag (cairo_t *cr,
      int      from,
      int      to)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  double max_units, max_cents;
  SteadCvp cvp = steps;

  stead_cvp_chart_range (&cvp, &max_units, &max_cents);
  for (int i = from; i < to; i++)
    {
      g_autofree char *even = g_strdup_printf ("break-even %d dozen", i);
      SteadCvpWords words = english;
      SteadCvpLayout layout;

      words.even = even;
      cvp.price_cents = 300 + i % 300;
      stead_cvp_chart_layout (cr, &cvp, &words, &style, max_units, max_cents, 320, 240, &layout);
      stead_cvp_chart_paint (cr, &cvp, &words, &style, &layout);
    }
}

static void
test_drag_holds_no_more (void)
{
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 320, 240);
  gsize before, after;

  drag (cr, 0, 300);
  before = mallinfo2 ().uordblks;
  drag (cr, 300, 1500);
  after = mallinfo2 ().uordblks;
  g_test_message ("%zu bytes before, %zu after 1,200 more steps", before, after);
  g_assert_cmpuint (after, <, before + 100000);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cvp-chart/positions", test_positions);
  g_test_add_func ("/draw/cvp-chart/pixels", test_pixels);
  g_test_add_func ("/draw/cvp-chart/areas", test_areas);
  g_test_add_func ("/draw/cvp-chart/steps", test_steps);
  g_test_add_func ("/draw/cvp-chart/whole-at-all-sizes", test_whole_at_all_sizes);
  g_test_add_func ("/draw/cvp-chart/whole-with-odd-numbers", test_whole_with_odd_numbers);
  g_test_add_func ("/draw/cvp-chart/handles-can-be-taken", test_handles_can_be_taken);
  g_test_add_func ("/draw/cvp-chart/price-beyond-the-range", test_price_beyond_the_range);
  g_test_add_func ("/draw/cvp-chart/pixel-and-back", test_pixel_and_back);
  g_test_add_func ("/draw/cvp-chart/range-shows-what-matters", test_range_shows_what_matters);
  g_test_add_func ("/draw/cvp-chart/words-that-may-lack", test_without_words_that_may_lack);
  g_test_add_func ("/draw/cvp-chart/print-tells-lines-by-dash", test_print_tells_lines_by_dash);
  g_test_add_func ("/draw/cvp-chart/drag-holds-no-more", test_drag_holds_no_more);
  return g_test_run ();
}

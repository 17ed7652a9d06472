/* test-cost-bar.c - the parts of the bar are in proportion and never look alike. */
#include "draw-probe.h"
#include "draw/stead-cost-bar.h"

static void
test_proportions (void)
{
  SteadCostSheet sheet = { 0 };
  SteadCostBarLayout layout;

  sheet.parts[STEAD_COST_FEED].shown_cents = 146;
  sheet.parts[STEAD_COST_ASSETS].shown_cents = 42;
  sheet.parts[STEAD_COST_PACKAGING].shown_cents = 12;
  sheet.parts[STEAD_COST_LABOR].shown_cents = 500;
  stead_cost_bar_layout (&sheet, 400, 24, &layout);
  g_assert_cmpint (layout.n, ==, 3);
  g_assert_cmpint (layout.kinds[1], ==, STEAD_COST_ASSETS);
  g_assert_cmpfloat (layout.boxes[0].x, ==, 0);
  g_assert_cmpfloat_with_epsilon (layout.boxes[0].width, 292, 1e-9);   /* 146 of 200 */
  g_assert_cmpfloat_with_epsilon (layout.boxes[1].width, 84, 1e-9);
  g_assert_cmpfloat_with_epsilon (layout.boxes[2].width, 24, 1e-9);
  for (int i = 1; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (layout.boxes[i].x, layout.boxes[i - 1].x + layout.boxes[i - 1].width, 1e-9);
  g_assert_cmpfloat_with_epsilon (layout.boxes[2].x + layout.boxes[2].width, 400, 1e-9);
}

static void
test_nothing_costs_nothing (void)
{
  SteadCostSheet sheet = { 0 };
  SteadCostBarLayout layout;

  stead_cost_bar_layout (&sheet, 400, 24, &layout);
  g_assert_cmpint (layout.n, ==, 0);
}

static void
test_looks_differ (void)
{
  for (int a = 0; a < STEAD_N_COST_KINDS; a++)
    for (int b = a + 1; b < STEAD_N_COST_KINDS; b++)
      {
        SteadRole role_a = stead_cost_kind_role ((SteadCostKind) a), role_b = stead_cost_kind_role ((SteadCostKind) b);
        double grey = stead_palette_contrast (stead_palette_rgb (STEAD_SCHEME_PRINT, role_a),
                                              stead_palette_rgb (STEAD_SCHEME_PRINT, role_b));

        g_assert_true (role_a != role_b);
        /* The same pattern only where a grey printer tells the two apart. */
        if (stead_cost_kind_pattern ((SteadCostKind) a) == stead_cost_kind_pattern ((SteadCostKind) b))
          g_assert_cmpfloat (grey, >=, 2.5);
      }
}

static void
test_paint_inside (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_PRINT, 12, NULL, "USD" };
  SteadCostSheet sheet = { 0 };
  SteadCostBarLayout layout;
  cairo_t *cr = probe_record ();

  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    sheet.parts[kind].shown_cents = 1 + 200 * (kind == 0);
  stead_cost_bar_layout (&sheet, 300, 24, &layout);
  stead_cost_bar_paint (cr, &style, &layout);
  probe_assert_inside (cr, 300, 24);
  cairo_destroy (cr);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      cr = probe_record ();
      stead_cost_key_paint (cr, &style, (SteadCostKind) kind, 12);
      probe_assert_inside (cr, 12, 12);
      cairo_destroy (cr);
    }
}

static void
test_colors_stand_where_they_belong (void)
{
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  SteadCostSheet sheet = { 0 };
  SteadCostBarLayout layout;
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 200, 20);

  sheet.parts[STEAD_COST_FEED].shown_cents = 50;
  sheet.parts[STEAD_COST_PACKAGING].shown_cents = 50;
  stead_cost_bar_layout (&sheet, 200, 20, &layout);
  stead_cost_bar_paint (cr, &style, &layout);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_EGG, 50, 10);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_WATER, 150, 10);
  probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_INK, 0, 10);
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cost-bar/proportions", test_proportions);
  g_test_add_func ("/draw/cost-bar/nothing-costs-nothing", test_nothing_costs_nothing);
  g_test_add_func ("/draw/cost-bar/looks-differ", test_looks_differ);
  g_test_add_func ("/draw/cost-bar/paints-inside", test_paint_inside);
  g_test_add_func ("/draw/cost-bar/colors-stand-where-they-belong", test_colors_stand_where_they_belong);
  return g_test_run ();
}

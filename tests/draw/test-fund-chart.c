/* test-fund-chart.c - money for a goal over time, checked from outside. */
#include <locale.h>
#include <math.h>

#include "draw-probe.h"
#include "draw/stead-day-axis.h"
#include "draw/stead-fund-chart.h"

#define DAY 20500

static const SteadFundPoint points[] = {
  { DAY, { 40000, 40000, 40000 }, { 40000, 40000, 40000 } },
  { DAY + 30, { 44000, 52000, 61000 }, { 49000, 52000, 55000 } },
  { DAY + 60, { 55000, 70000, 88000 }, { 65000, 70000, 76000 } },
  { DAY + 120, { 78000, 104000, 131000 }, { 95000, 104000, 113000 } },
};

static SteadFundPath
make_path (void)
{
  return (SteadFundPath) { points, G_N_ELEMENTS (points), 95975, { DAY + 100, DAY + 112, DAY + 120 }, DAY + 90 };
}

static SteadFundWords
make_words (void)
{
  return (SteadFundWords) { "goal $959.75", { "50 of 100: Apr 3", "80 of 100: Apr 15", "95 of 100: Apr 23" },
                            "wanted by Mar 24" };
}

/* Money goes up, time goes right, and zero is at the foot: a share of the goal is that share
 * of its height. */
static void
test_places (void)
{
  SteadFundPath path = make_path ();
  SteadFundWords words = make_words ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadFundLayout layout;
  double x[4], y[4], foot, goal;

  stead_fund_chart_layout (cr, &path, &words, &style, 700, 300, &layout);
  foot = layout.plot.y + layout.plot.height;
  goal = stead_axis_y (&layout.money, &layout.plot, path.goal_cents);
  for (int i = 0; i < 4; i++)
    stead_fund_chart_point (&layout, &path, i, &x[i], &y[i]);
  g_assert_cmpfloat_with_epsilon (x[2] - x[0], (x[3] - x[0]) / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon ((foot - y[0]) / (foot - goal), 40000.0 / 95975, 1e-6);
  g_assert_cmpfloat (y[3], <, goal);
  g_assert_cmpfloat (goal, >, layout.plot.y);
  cairo_destroy (cr);
}

static void
test_nearest (void)
{
  SteadFundPath path = make_path ();
  SteadFundWords words = make_words ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadFundLayout layout;
  double x, y;

  stead_fund_chart_layout (cr, &path, &words, &style, 700, 300, &layout);
  for (int i = 0; i < 4; i++)
    {
      stead_fund_chart_point (&layout, &path, i, &x, &y);
      g_assert_cmpint (stead_fund_chart_nearest (&layout, &path, x + 2), ==, i);
    }
  cairo_destroy (cr);
}

static void
test_inside (void)
{
  static const double sizes[][2] = { { 1000, 500 }, { 560, 300 }, { 320, 240 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
      {
        SteadFundPath path = make_path ();
        SteadFundWords words = make_words ();
        SteadDrawStyle style = { scheme, i == 0 ? 22 : 12, NULL, "USD" };
        cairo_t *cr = probe_record ();
        SteadFundLayout layout;
        SteadBox boxes[5];

        stead_fund_chart_layout (cr, &path, &words, &style, sizes[i][0], sizes[i][1], &layout);
        stead_fund_chart_paint (cr, &path, &words, &style, &layout);
        probe_assert_inside (cr, sizes[i][0], sizes[i][1]);
        memcpy (boxes, layout.date_boxes, 3 * sizeof *boxes);
        boxes[3] = layout.goal_box;
        boxes[4] = layout.wanted_box;
        probe_assert_apart (boxes, 5);
        cairo_destroy (cr);
      }
}

/* The date of a line stands beside it, and no line runs through a date. */
static void
test_dates (void)
{
  SteadFundPath path = make_path ();
  SteadFundWords words = make_words ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadFundLayout layout;

  path.days[0] = DAY + 60;
  path.days[1] = DAY + 72;
  stead_fund_chart_layout (cr, &path, &words, &style, 700, 300, &layout);
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    {
      const SteadBox *box = &layout.date_boxes[i];
      double own = stead_day_axis_x (&layout.days, &layout.plot, path.days[i]);

      g_assert_cmpfloat (box->width, >, 0);
      g_assert_cmpfloat (MIN (fabs (own - box->x), fabs (own - box->x - box->width)), <, 2 * style.font_size);
      for (int j = 0; j < STEAD_FUND_MOST_DATES; j++)
        {
          double x = stead_day_axis_x (&layout.days, &layout.plot, path.days[j]);

          g_assert_true (x < box->x || x > box->x + box->width);
        }
    }
  cairo_destroy (cr);
}

/* What is not reached has no date, and one point alone is a path, too. */
static void
test_short (void)
{
  SteadFundPath path = { points, 1, 95975, { STEAD_DAY_NONE, STEAD_DAY_NONE, STEAD_DAY_NONE }, STEAD_DAY_NONE };
  SteadFundWords words = { .goal = "goal $959.75" };
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_record ();
  SteadFundLayout layout;

  stead_fund_chart_layout (cr, &path, &words, &style, 500, 240, &layout);
  stead_fund_chart_paint (cr, &path, &words, &style, &layout);
  probe_assert_inside (cr, 500, 240);
  for (int i = 0; i < STEAD_FUND_MOST_DATES; i++)
    g_assert_cmpfloat (layout.date_boxes[i].width, ==, 0);
  cairo_destroy (cr);
}

/* The goal is a line right across. */
static void
test_goal (void)
{
  SteadFundPath path = make_path ();
  SteadFundWords words = make_words ();
  SteadDrawStyle style = { STEAD_SCHEME_LIGHT, 12, NULL, "USD" };
  cairo_t *cr = probe_image (STEAD_SCHEME_LIGHT, 700, 300);
  SteadFundLayout layout;

  stead_fund_chart_layout (cr, &path, &words, &style, 700, 300, &layout);
  stead_fund_chart_paint (cr, &path, &words, &style, &layout);
  for (int i = 1; i < 8; i += 2)
    probe_assert_role (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_TOMATO, layout.plot.x + layout.plot.width * i / 10,
                       stead_axis_y (&layout.money, &layout.plot, path.goal_cents));
  cairo_destroy (cr);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/fund-chart/places", test_places);
  g_test_add_func ("/draw/fund-chart/nearest", test_nearest);
  g_test_add_func ("/draw/fund-chart/inside", test_inside);
  g_test_add_func ("/draw/fund-chart/dates", test_dates);
  g_test_add_func ("/draw/fund-chart/short", test_short);
  g_test_add_func ("/draw/fund-chart/goal", test_goal);
  return g_test_run ();
}

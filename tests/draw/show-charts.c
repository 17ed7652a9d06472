/* show-charts.c - paints every chart into PNG files, for the eye.
 *
 * usage: show-charts FOLDER
 */
#include <math.h>

#include "core/stead-lay.h"
#include "draw/stead-cooling-chart.h"
#include "draw/stead-cost-bar.h"
#include "draw/stead-cvp-chart.h"
#include "draw/stead-growth-chart.h"
#include "draw/stead-lay-chart.h"
#include "draw/stead-price-history-chart.h"
#include "draw/stead-trend-chart.h"

static const char *scheme_names[] = { "light", "dark", "print" };

static cairo_t *
begin (SteadScheme scheme,
       double      width,
       double      height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  stead_palette_set_source (cr, scheme, STEAD_ROLE_CARD, 1);
  cairo_paint (cr);
  return cr;
}

static void
end (cairo_t    *cr,
     const char *folder,
     const char *name,
     const char *variant)
{
  g_autofree char *file = g_strdup_printf ("%s-%s.png", name, variant);
  g_autofree char *path = g_build_filename (folder, file, NULL);

  cairo_surface_write_to_png (cairo_get_target (cr), path);
  cairo_destroy (cr);
}

static const SteadCvpWords cvp_words = {
  .axis = "dozens sold on the sale day", .even = "break-even 46 dozen", .lasting = "no loss from 61 dozen on",
  .plan = "plan 72", .plan_gap = "$54.48 left", .money_in = "money in", .all_costs = "all costs", .fixed_costs = "fixed costs",
};

static const SteadCvpWords cvp_words_es = {
  .axis = "docenas vendidas en el día de venta", .even = "punto de equilibrio: 46 docenas",
  .lasting = "sin pérdida desde 61 docenas", .plan = "plan: 72", .plan_gap = "quedan $54.48",
  .money_in = "dinero que entra", .all_costs = "todos los costos", .fixed_costs = "costos fijos del puesto",
};

static void
show_cvp (const char          *folder,
          const char          *name,
          const SteadCvp      *cvp,
          const SteadCvpWords *words,
          SteadScheme          scheme,
          double               width,
          double               height,
          double               font_size,
          gboolean             handles)
{
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  cairo_t *cr = begin (scheme, width, height);
  SteadCvpLayout layout;
  double max_units, max_cents;

  stead_cvp_chart_range (cvp, &max_units, &max_cents);
  stead_cvp_chart_layout (cr, cvp, words, &style, max_units, max_cents, width, height, &layout);
  stead_cvp_chart_paint (cr, cvp, words, &style, &layout);
  if (handles)
    {
      double at[][2] = { { layout.price_x, layout.price_y }, { layout.cost_x, layout.cost_y },
                         { layout.fixed_x, layout.fixed_y }, { layout.plan_x, layout.plan_y } };

      for (int i = 0; i < 4; i++)
        stead_mark_paint (cr, &style, i == 0 ? STEAD_ROLE_WATER : i == 3 ? STEAD_ROLE_INK : STEAD_ROLE_TOMATO,
                          STEAD_MARK_RING, at[i][0], at[i][1], 12);
    }
  end (cr, folder, name, scheme_names[scheme]);
}

static void
show_lay (const char *folder,
          const char *name,
          gsize       n_weeks,
          SteadScheme scheme,
          double      width,
          double      height,
          double      font_size)
{
  static const SteadLayWords words = {
    .rate = "eggs per 100 hens a day", .axis = "age of the flock, weeks", .expected = "expected",
    .today = "today", .lost = "hens lost", .feed = "feed, lb a hen a day", .left_out = "left out", .feed_factor = 1 / 0.45359237,
  };
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  cairo_t *cr = begin (scheme, width, height);
  SteadLayWeek *weeks = g_new0 (SteadLayWeek, n_weeks);
  double ages[300], fracs[300];
  SteadLaySeries series = { weeks, n_weeks, ages, fracs, G_N_ELEMENTS (ages), 18 + (double) n_weeks };
  SteadLayLayout layout;
  SteadLayCurve curve;

  stead_lay_curve_default (&curve);
  for (int i = 0; i < 300; i++)
    {
      ages[i] = 18 + i * MAX ((double) n_weeks * 1.25, 54) / 299;
      fracs[i] = stead_lay_curve_frac (&curve, ages[i]);
    }
  for (gsize i = 0; i < n_weeks; i++)
    {
      double age = 18.5 + (double) i, wobble = sin ((double) i * 2.3) * 0.03 + sin ((double) i * 0.7) * 0.02;

      weeks[i] = (SteadLayWeek) { .age_weeks = age, .days_logged = 7, .hen_days = 210, .feed_kg = 21 + 3 * wobble * 30 };
      weeks[i].left_out = i == 20 || i == 21;
      weeks[i].eggs = (gint64) (210 * CLAMP (stead_lay_curve_frac (&curve, age) + wobble - (weeks[i].left_out ? 0.17 : 0), 0, 1));
      weeks[i].deaths = i % 13 == 9;
    }
  stead_lay_chart_layout (cr, &series, &words, &style, width, height, &layout);
  stead_lay_chart_paint (cr, &series, &words, &style, &layout, n_weeks > 12 ? 12 : -1);
  g_free (weeks);
  end (cr, folder, name, scheme_names[scheme]);
}

/* Catfish from 45 g, weighed each three weeks, in water of 26 °C. */
static void
show_growth (const char *folder,
             const char *name,
             SteadScheme scheme,
             double      width,
             double      height,
             double      font_size)
{
  static const SteadGrowthWords words = {
    .weight = "weight of a fish, lb", .expected = "expected", .today = "today", .sale = "sale weight",
    .sale_day = "80 in 100: Nov 3", .lost = "fish lost", .not_counted = "weighing not counted", .factor = 1 / 453.59237,
  };
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  cairo_t *cr = begin (scheme, width, height);
  SteadDay first = stead_day_new (2026, 3, 1), today = first + 120;
  SteadGrowthMark marks[6];
  SteadGrowthStep steps[46];
  SteadGrowthLoss losses[] = { { first + 3, 2 }, { first + 60, 1 }, { first + 64, 1 } };
  SteadGrowthSeries series = { marks, G_N_ELEMENTS (marks), steps, G_N_ELEMENTS (steps), losses,
                               G_N_ELEMENTS (losses), first, today, 600, first + 247, first + 226, first + 275 };
  SteadGrowthLayout layout;

  for (int i = 0; i < 46; i++)
    {
      int day = i < 18 ? 7 * i : 120 + 7 * (i - 18);
      double likely = pow (cbrt (45) + 0.0008 * 26 * day, 3);
      double open = likely * 0.006 * MAX (0, i - 18);

      steps[i] = (SteadGrowthStep) { first + day, likely - open, likely, likely + open };
    }
  for (int i = 0; i < 6; i++)
    {
      double mean = pow (cbrt (45) + 0.0008 * 26 * 21 * i, 3) * (1 + 0.03 * sin (i * 2.0));

      marks[i] = (SteadGrowthMark) { first + 21 * i, 30, mean, mean * 0.22, FALSE, FALSE };
    }
  marks[4].mean_g *= 0.6;
  marks[4].far_off = TRUE;
  stead_growth_chart_layout (cr, &series, &words, &style, width, height, &layout);
  stead_growth_chart_paint (cr, &series, &words, &style, &layout);
  end (cr, folder, name, scheme_names[scheme]);
}

static void
show_bar (const char *folder,
          SteadScheme scheme)
{
  SteadDrawStyle style = { scheme, 12, NULL, "USD" };
  cairo_t *cr = begin (scheme, 420, 120);
  SteadCostSheet sheet = { .parts = { { .shown_cents = 146 }, { .shown_cents = 42 }, { .shown_cents = 15 },
                                      { .shown_cents = 9 }, { .shown_cents = 28 }, { .shown_cents = 38 },
                                      { .shown_cents = 75 } } };
  SteadCostBarLayout layout;

  stead_cost_bar_layout (&sheet, 380, 30, &layout);
  cairo_translate (cr, 20, 20);
  stead_cost_bar_paint (cr, &style, &layout);
  for (int kind = 0; kind < STEAD_N_COST_KINDS; kind++)
    {
      cairo_save (cr);
      cairo_translate (cr, kind * 40, 50);
      stead_cost_key_paint (cr, &style, (SteadCostKind) kind, 14);
      cairo_restore (cr);
    }
  end (cr, folder, "bar", scheme_names[scheme]);
}

static void
show_history (const char *folder,
              SteadScheme scheme)
{
  static const SteadDay days[] = { 20000, 20090, 20210, 20216, 20470 };
  static const gint64 cents[] = { 350, 400, 375, 450, 425 };
  static const SteadPriceHistoryWords words = { "costs $2.41 now" };
  SteadPriceHistory history = { days, cents, G_N_ELEMENTS (days), 20520, 241 };
  SteadDrawStyle style = { scheme, 12, NULL, "USD" };
  cairo_t *cr = begin (scheme, 700, 180);
  SteadPriceHistoryLayout layout;

  stead_price_history_chart_layout (cr, &history, &words, &style, 700, 180, &layout);
  stead_price_history_chart_paint (cr, &history, &words, &style, &layout);
  end (cr, folder, "history", scheme_names[scheme]);
}

static void
show_trend (const char *folder,
            const char *name,
            double      far,
            SteadScheme scheme,
            double      width,
            double      height,
            double      font_size)
{
  static const SteadTrendWords words = {
    .unit = "mg/L", .today = "today", .most = "most 1 mg/L for plants", .least = "least 0.3 mg/L",
    .harm_above = "harm to fish above 1.6 mg/L", .ahead = "if it goes on so",
  };
  static const SteadTrend line = { .level = 1.25, .slope = 0.02, .level_var = 0.008, .slope_var = 8e-5, .span_days = 28 };
  SteadReadingPoint points[26];
  SteadReadingSeries series = { .points = points, .n_points = 26, .from = 20400, .to = 20600, .today = 20588,
                                .gap_days = 17, .min = 0.3, .max = far, .act_below = NAN, .act_above = far * 1.6,
                                .trend = &line, .trend_day = 20587.6, .ahead_days = 12 };
  SteadDrawStyle style = { scheme, font_size, NULL, "USD" };
  cairo_t *cr = begin (scheme, width, height);
  SteadTrendLayout layout;

  for (int i = 0; i < 26; i++)
    {
      double value = 0.55 + 0.2 * sin (i * 0.9) + (i > 20 ? 0.12 * (i - 20) : 0);

      points[i] = (SteadReadingPoint) { 20405.6 + 7 * i + (i > 9 ? 7 : 0), value,
                                        value > far * 1.6 ? STEAD_WATER_ACT : value > far ? STEAD_WATER_WATCH : STEAD_WATER_OK };
    }
  stead_trend_chart_layout (cr, &series, &words, &style, width, height, &layout);
  stead_trend_chart_paint (cr, &series, &words, &style, &layout, 22);
  end (cr, folder, name, scheme_names[scheme]);
}

/* A pot at 38 °F, read every quarter of an hour, that misses the first mark. */
static void
show_cooling (const char  *folder,
              const char  *name,
              double       rate,
              gboolean     celsius,
              SteadScheme  scheme,
              double       width,
              double       height,
              double       font)
{
  SteadCoolingReading readings[5];
  SteadCoolingStep steps[40];
  SteadCoolingSeries series = {
    .readings = readings, .n_readings = 5, .steps = steps, .n_steps = 40,
    .marks = { { 70, 120, STEAD_COOLING_MARK_OPEN }, { 41, 360, STEAD_COOLING_MARK_OPEN } }, .n_marks = 2,
    .now_min = 66, .act_min = rate < 0.01 ? 82 : NAN, .end_min = 375, .first_of_day = 10 * 60,
  };
  SteadCoolingWords words = {
    .unit = celsius ? "°C in the middle of the pot" : "°F in the middle of the pot", .celsius = celsius,
    .expected = "expected", .too_warm = "too warm", .now = "now", .act = rate < 0.01 ? "act by 11:22 AM" : NULL,
    .marks = { "70 °F by 12:00 PM", "41 °F by 4:00 PM" },
  };
  SteadDrawStyle style = { scheme, font, NULL, "USD" };
  cairo_t *cr = begin (scheme, width, height);
  SteadCoolingLayout layout;

  for (int i = 0; i < 5; i++)
    readings[i] = (SteadCoolingReading) { 15 * i, 38 + 97 * exp (-rate * 15 * i), i == 3 };
  for (int i = 0; i < 40; i++)
    {
      double minute = 375.0 * i / 39, spread = 0.04 * MAX (0, minute - 60);

      steps[i] = (SteadCoolingStep) { minute, 0, 38 + 97 * exp (-rate * minute), 0 };
      steps[i].low_f = steps[i].likely_f - spread;
      steps[i].high_f = steps[i].likely_f + spread;
    }
  stead_cooling_chart_layout (cr, &series, &words, &style, width, height, &layout);
  stead_cooling_chart_paint (cr, &series, &words, &style, &layout);
  end (cr, folder, name, scheme_names[scheme]);
}

int
main (int    argc,
      char **argv)
{
  const SteadCvp plain = { .price_cents = 450, .variable_cents = 241, .fixed_cents = 9600, .planned_units = 72 };
  const SteadCvp steps = { .price_cents = 450, .variable_cents = 241, .fixed_cents = 4000, .step_cents = 2500,
                           .step_units = 40, .planned_units = 72 };
  const SteadCvp dense = { .price_cents = 450, .variable_cents = 41, .fixed_cents = 4000, .step_cents = 100,
                           .step_units = 1, .planned_units = 3000 };
  const SteadCvp free_of_charge = { .price_cents = 0, .variable_cents = 241, .fixed_cents = 9600, .planned_units = 72 };
  const SteadCvp nothing = { 0 };
  const SteadCvp huge = { .price_cents = 4.5e11, .variable_cents = 2.41e11, .fixed_cents = 9.6e12, .planned_units = 72 };
  const SteadCvp same = { .price_cents = 250, .variable_cents = 241, .fixed_cents = 100, .planned_units = 72 };

  if (argc != 2)
    return 2;
  g_mkdir_with_parents (argv[1], 0755);
  for (int s = 0; s < STEAD_N_SCHEMES; s++)
    {
      SteadScheme scheme = (SteadScheme) s;
      double font = scheme == STEAD_SCHEME_PRINT ? 9 : 12;

      show_cvp (argv[1], "cvp", &plain, &cvp_words, scheme, 880, 560, font, s < 2);
      show_cvp (argv[1], "cvp-steps", &steps, &cvp_words, scheme, 880, 560, font, s < 2);
      show_lay (argv[1], "lay", 29, scheme, 900, 560, font);
      show_growth (argv[1], "growth", scheme, 900, 480, font);
      show_bar (argv[1], scheme);
      show_cooling (argv[1], "cooling", 0.007, FALSE, scheme, 880, 480, font);
      show_history (argv[1], scheme);
      show_trend (argv[1], "trend", 1, scheme, 880, 480, font);
    }
  show_cvp (argv[1], "cvp-small", &plain, &cvp_words, STEAD_SCHEME_LIGHT, 320, 280, 12, TRUE);
  show_cvp (argv[1], "cvp-small-big", &plain, &cvp_words_es, STEAD_SCHEME_LIGHT, 320, 280, 24, TRUE);
  show_cvp (argv[1], "cvp-es", &steps, &cvp_words_es, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cvp (argv[1], "cvp-big", &plain, &cvp_words_es, STEAD_SCHEME_LIGHT, 1000, 640, 24, TRUE);
  show_cvp (argv[1], "cvp-dense", &dense, &cvp_words, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cvp (argv[1], "cvp-free", &free_of_charge, &cvp_words, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cvp (argv[1], "cvp-nothing", &nothing, &cvp_words, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cvp (argv[1], "cvp-huge", &huge, &cvp_words, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cvp (argv[1], "cvp-same", &same, &cvp_words, STEAD_SCHEME_LIGHT, 640, 420, 12, TRUE);
  show_cooling (argv[1], "cooling-small", 0.02, TRUE, STEAD_SCHEME_LIGHT, 320, 300, 12);
  show_cooling (argv[1], "cooling-big", 0.007, FALSE, STEAD_SCHEME_LIGHT, 900, 560, 24);
  show_cooling (argv[1], "cooling-act-small", 0.007, FALSE, STEAD_SCHEME_DARK, 320, 320, 12);
  show_trend (argv[1], "trend-far", 40, STEAD_SCHEME_LIGHT, 640, 360, 12);
  show_trend (argv[1], "trend-small", 1, STEAD_SCHEME_LIGHT, 320, 300, 12);
  show_trend (argv[1], "trend-big", 1, STEAD_SCHEME_LIGHT, 900, 560, 24);
  show_lay (argv[1], "lay-small", 29, STEAD_SCHEME_LIGHT, 320, 300, 12);
  show_lay (argv[1], "lay-long", 150, STEAD_SCHEME_LIGHT, 700, 420, 12);
  show_lay (argv[1], "lay-none", 0, STEAD_SCHEME_LIGHT, 640, 420, 12);
  show_lay (argv[1], "lay-big", 29, STEAD_SCHEME_LIGHT, 640, 520, 24);
  show_growth (argv[1], "growth-small", STEAD_SCHEME_LIGHT, 420, 300, 12);
  show_growth (argv[1], "growth-big", STEAD_SCHEME_LIGHT, 760, 520, 24);
  return 0;
}

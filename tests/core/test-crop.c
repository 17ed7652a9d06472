/* Plants, yields, the harvest by weeks. */
#include "core/stead-crop.h"
#include "core/stead-harvest.h"
#include "core/stead-husbandry.h"

#include <math.h>

#define POUND_KG 0.45359237
#define SQFT_M2 0.09290304

/* FAO Technical Paper 589, component calculations (derived); greenhouse tomato
 * review for Mexico, introduction (derived). */
static void
test_plants (void)
{
  double least;
  double most;

  stead_crop_density_range (STEAD_CROP_KIND_LEAFY, &least, &most);
  g_assert_cmpfloat (least, ==, 20);
  g_assert_cmpfloat (stead_crop_plants (10, most), ==, 250);
  stead_crop_density_range (STEAD_CROP_KIND_FRUITING, &least, NULL);
  stead_crop_density_range (STEAD_CROP_KIND_FRUITING, NULL, &most);
  g_assert_cmpfloat (least, <=, 3);
  g_assert_cmpfloat (most, ==, 4);
  g_assert_cmpfloat (stead_crop_plants (10, 3), ==, 30);
  g_assert_cmpfloat_with_epsilon (stead_crop_area_m2 (30, 3), 10, 1e-12);
  g_assert_true (isnan (stead_crop_area_m2 (30, 0)));
}

static void
test_spacing (void)
{
  g_assert_cmpfloat_with_epsilon (stead_crop_density (0.2, 0.25), 20, 1e-9);
  g_assert_true (isnan (stead_crop_density (0, 0.25)));
  g_assert_true (isnan (stead_crop_density (0.2, -1)));
  /* 1.2 m of 0.3 m rows are four, not three by binary noise. */
  g_assert_cmpint (stead_crop_bed_plants (10, 1.2, 0.3, 0.25), ==, 160);
  g_assert_cmpint (stead_crop_bed_plants (9.99, 1.19, 0.3, 0.25), ==, 117);
  g_assert_cmpint (stead_crop_bed_plants (10, 0.29, 0.3, 0.25), ==, 0);
  g_assert_cmpint (stead_crop_bed_plants (0, 1.2, 0.3, 0.25), ==, 0);
  /* Whole plants are never more than the density gives. */
  for (double width = 0.1; width < 3; width += 0.13)
    for (double plant = 0.1; plant < 1; plant += 0.17)
      g_assert_cmpfloat ((double) stead_crop_bed_plants (6, width, 0.4, plant), <=,
                         stead_crop_plants (6 * width, stead_crop_density (0.4, plant)) + 1e-9);
}

/* Uniformity trial with tomatoes of 1941, yield verification: 26,001 lb from 384
 * plots of 144 square feet are 10.24 tons an acre (read). */
static void
test_yield (void)
{
  double m2 = stead_crop_yield_m2_kg (26001 * POUND_KG, 384 * 144 * SQFT_M2);

  g_assert_cmpfloat_with_epsilon (stead_crop_tons_per_acre (m2), 10.24, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_crop_yield_plant_kg (300, 30), 10, 1e-12);
  g_assert_true (isnan (stead_crop_yield_plant_kg (300, 0)));
  g_assert_true (isnan (stead_crop_yield_m2_kg (300, 0)));
}

/* News report on extreme heat and tomato flowers, University of Maryland; county
 * extension column on tomato blossom drop, Oklahoma 2021 (derived). °F. */
static void
test_fruit_set (void)
{
  static const struct { double day_f, night_f; SteadFruitSet set; } table[] = {
    { 80, 65, STEAD_FRUIT_SET_GOOD }, { 97, 82, STEAD_FRUIT_SET_POOR },
    { 85, 78, STEAD_FRUIT_SET_POOR }, { 80, 52, STEAD_FRUIT_SET_POOR },
    /* Both sides of each limit. */
    { 90, 60, STEAD_FRUIT_SET_GOOD }, { 90, 70, STEAD_FRUIT_SET_GOOD },
    { 90.1, 65, STEAD_FRUIT_SET_UNSURE }, { 95, 65, STEAD_FRUIT_SET_UNSURE },
    { 95.1, 65, STEAD_FRUIT_SET_POOR },
    { 80, 59.9, STEAD_FRUIT_SET_UNSURE }, { 80, 55, STEAD_FRUIT_SET_UNSURE },
    { 80, 54.9, STEAD_FRUIT_SET_POOR },
    { 80, 70.1, STEAD_FRUIT_SET_UNSURE }, { 80, 75, STEAD_FRUIT_SET_UNSURE },
    { 80, 75.1, STEAD_FRUIT_SET_POOR },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_test_message ("%g and %g F", table[i].day_f, table[i].night_f);
      g_assert_cmpint (stead_fruit_set ((table[i].day_f - 32) / 1.8, (table[i].night_f - 32) / 1.8),
                       ==, table[i].set);
    }
  g_assert_cmpint (stead_fruit_set (NAN, 18), ==, STEAD_FRUIT_SET_UNSURE);
  g_assert_cmpint (stead_fruit_set (25, NAN), ==, STEAD_FRUIT_SET_UNSURE);
}

/* Ranges of handbooks (see tests/reference/crop.csv for each source). */
static void
test_defaults (void)
{
  static const struct { SteadHusbandryDefault which; double low, high; } ranges[] = {
    { STEAD_DEFAULT_TOMATO_PLANTS, 2, 4 },
    { STEAD_DEFAULT_TOMATO_RIPE, 1000 / 1.8, 1800 / 1.8 },
    { STEAD_DEFAULT_TOMATO_DEFICIT, 0.4, 1.2 },
    { STEAD_DEFAULT_TOMATO_LIGHT, 20, 30 },
    { STEAD_DEFAULT_TOMATO_NITROGEN, 60, 70 },
    { STEAD_DEFAULT_TOMATO_YIELD, 20 * POUND_KG, 25 * POUND_KG },
  };
  SteadDegreeDayRule rule;

  for (gsize i = 0; i < G_N_ELEMENTS (ranges); i++)
    {
      g_assert_cmpfloat (stead_husbandry_default (ranges[i].which), >=, ranges[i].low);
      g_assert_cmpfloat (stead_husbandry_default (ranges[i].which), <=, ranges[i].high);
    }
  stead_crop_tomato_rule (&rule);
  g_assert_cmpfloat (rule.base_c, ==, 10);
  g_assert_cmpint (rule.method, ==, STEAD_DEGREE_DAYS_AVERAGE);
}

static void
test_shapes (void)
{
  for (int shape = STEAD_HARVEST_EVEN; shape <= STEAD_HARVEST_PLATEAU; shape++)
    {
      double before = 0;
      double steepest = 0;

      g_assert_cmpfloat (stead_harvest_share (shape, -1), ==, 0);
      g_assert_cmpfloat (stead_harvest_share (shape, 0), ==, 0);
      g_assert_cmpfloat_with_epsilon (stead_harvest_share (shape, 1), 1, 1e-12);
      g_assert_cmpfloat_with_epsilon (stead_harvest_share (shape, 2), 1, 1e-12);
      for (int i = 1; i <= 1000; i++)
        {
          double share = stead_harvest_share (shape, i / 1000.0);

          g_assert_cmpfloat (share, >=, before);
          steepest = MAX (steepest, (share - before) * 1000);
          before = share;
        }
      /* No jump: the best day is not more than twice the mean day. */
      g_assert_cmpfloat (steepest, <, 2);
      g_assert_cmpfloat (steepest, >=, 1 - 1e-9);
    }
  /* The bell is the same from both ends. */
  g_assert_cmpfloat_with_epsilon (stead_harvest_share (STEAD_HARVEST_BELL, 0.5), 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (stead_harvest_share (STEAD_HARVEST_BELL, 0.2)
                                  + stead_harvest_share (STEAD_HARVEST_BELL, 0.8), 1, 1e-12);
  /* The plateau is level between its ends. */
  g_assert_cmpfloat_with_epsilon (stead_harvest_share (STEAD_HARVEST_PLATEAU, 0.4)
                                  - stead_harvest_share (STEAD_HARVEST_PLATEAU, 0.3),
                                  stead_harvest_share (STEAD_HARVEST_PLATEAU, 0.8)
                                  - stead_harvest_share (STEAD_HARVEST_PLATEAU, 0.7), 1e-12);
}

static SteadHarvestPlan
plan_of (SteadHarvestShape shape)
{
  SteadDay start = stead_day_new (2026, 7, 6);

  return (SteadHarvestPlan) {
    .shape = shape, .plants = 100,
    .plant_kg = 5, .plant_low_kg = 4, .plant_high_kg = 6,
    .start = start, .start_early = start - 5, .start_late = start + 5,
    .last_day = start + 400, .span = 70,
  };
}

static void
test_weeks (void)
{
  for (int shape = STEAD_HARVEST_EVEN; shape <= STEAD_HARVEST_PLATEAU; shape++)
    {
      const SteadHarvestPlan plan = plan_of (shape);
      SteadHarvestSpan weeks[14];
      double sum = 0;

      stead_harvest_weeks (&plan, plan.start - 14, weeks, G_N_ELEMENTS (weeks));
      for (gsize i = 0; i < G_N_ELEMENTS (weeks); i++)
        {
          g_assert_cmpint (weeks[i].first_day, ==, plan.start - 14 + 7 * (int) i);
          g_assert_cmpfloat (weeks[i].low_kg, <=, weeks[i].kg);
          g_assert_cmpfloat (weeks[i].kg, <=, weeks[i].high_kg);
          sum += weeks[i].kg;
        }
      /* All of it is picked, and nothing before the early start or after the late end. */
      g_assert_cmpfloat_with_epsilon (sum, 500, 1e-9);
      g_assert_cmpfloat (weeks[0].high_kg, ==, 0);
      g_assert_cmpfloat (weeks[1].kg, ==, 0);
      g_assert_cmpfloat (weeks[1].high_kg, >, 0);
      g_assert_cmpfloat (weeks[2].kg, >, 0);
      g_assert_cmpfloat (weeks[2].low_kg, <, weeks[2].kg);
      g_assert_cmpfloat (weeks[12].kg, ==, 0);
      g_assert_cmpfloat (weeks[13].high_kg, ==, 0);
    }
}

static void
test_season_end (void)
{
  SteadHarvestPlan plan = plan_of (STEAD_HARVEST_EVEN);
  SteadHarvestSpan span;

  /* Frost in the middle: 35 of 70 days. */
  plan.last_day = plan.start + 34;
  stead_harvest_between (&plan, plan.start, plan.start + 100, &span);
  g_assert_cmpfloat_with_epsilon (span.kg, 250, 1e-9);
  g_assert_cmpfloat_with_epsilon (span.low_kg, 400 * 30 / 70.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (span.high_kg, 600 * 35 / 70.0, 1e-9);
  stead_harvest_between (&plan, plan.start - 5, plan.start + 100, &span);
  g_assert_cmpfloat_with_epsilon (span.high_kg, 600 * 40 / 70.0, 1e-9);
  /* All at once. */
  plan = plan_of (STEAD_HARVEST_EVEN);
  plan.span = 1;
  stead_harvest_between (&plan, plan.start, plan.start, &span);
  g_assert_cmpfloat_with_epsilon (span.kg, 500, 1e-9);
  g_assert_cmpfloat (span.low_kg, ==, 0);
  /* Never ripe: nothing is expected; late by so much that it may come to nothing. */
  plan.start_late = STEAD_DAY_NONE;
  stead_harvest_between (&plan, plan.start, plan.start + 100, &span);
  g_assert_cmpfloat_with_epsilon (span.kg, 500, 1e-9);
  g_assert_cmpfloat (span.low_kg, ==, 0);
  plan.start = plan.start_early = STEAD_DAY_NONE;
  stead_harvest_between (&plan, stead_day_new (2026, 1, 1), stead_day_new (2026, 12, 31), &span);
  g_assert_cmpfloat (span.kg, ==, 0);
  g_assert_cmpfloat (span.high_kg, ==, 0);
}

static void
test_by_warmth (void)
{
  SteadHarvestPlan plan = plan_of (STEAD_HARVEST_PLATEAU);
  SteadHarvestPlan warm = plan;
  double daily[200];
  SteadHarvestSpan by_days;
  SteadHarvestSpan by_warmth;

  /* The same warmth each day comes to the same as counting days. */
  for (gsize i = 0; i < G_N_ELEMENTS (daily); i++)
    daily[i] = 12;
  warm.daily_c = daily;
  warm.n_daily = G_N_ELEMENTS (daily);
  warm.daily_day = plan.start - 20;
  warm.span = 70 * 12;
  for (SteadDay day = plan.start - 7; day < plan.start + 90; day += 7)
    {
      stead_harvest_between (&plan, day, day + 6, &by_days);
      stead_harvest_between (&warm, day, day + 6, &by_warmth);
      g_assert_cmpfloat_with_epsilon (by_warmth.kg, by_days.kg, 1e-9);
      g_assert_cmpfloat_with_epsilon (by_warmth.low_kg, by_days.low_kg, 1e-9);
      g_assert_cmpfloat_with_epsilon (by_warmth.high_kg, by_days.high_kg, 1e-9);
    }
  /* A cool week brings less, and its share comes later. */
  for (int i = 20 + 28; i < 20 + 35; i++)
    daily[i] = 3;
  stead_harvest_between (&plan, plan.start + 28, plan.start + 34, &by_days);
  stead_harvest_between (&warm, plan.start + 28, plan.start + 34, &by_warmth);
  g_assert_cmpfloat_with_epsilon (by_warmth.kg, by_days.kg / 4, 1e-6);
  stead_harvest_between (&warm, plan.start, plan.start + 100, &by_warmth);
  g_assert_cmpfloat_with_epsilon (by_warmth.kg, 500, 1e-9);
  /* Days of which no warmth is known bring nothing. */
  warm.n_daily = 20 + 35;
  stead_harvest_between (&warm, plan.start + 35, plan.start + 100, &by_warmth);
  g_assert_cmpfloat (by_warmth.kg, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/crop/plants", test_plants);
  g_test_add_func ("/core/crop/spacing", test_spacing);
  g_test_add_func ("/core/crop/yield", test_yield);
  g_test_add_func ("/core/crop/fruit-set", test_fruit_set);
  g_test_add_func ("/core/crop/defaults-in-range", test_defaults);
  g_test_add_func ("/core/harvest/shapes", test_shapes);
  g_test_add_func ("/core/harvest/weeks", test_weeks);
  g_test_add_func ("/core/harvest/season-end", test_season_end);
  g_test_add_func ("/core/harvest/by-warmth", test_by_warmth);
  return g_test_run ();
}

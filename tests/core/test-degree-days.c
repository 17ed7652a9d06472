/* Warmth and cold summed over days, by hand and in a typical year. */
#include "core/stead-core-error.h"
#include "core/stead-degree-days.h"
#include "core/stead-typical-year.h"

#include "weather.h"

#include <math.h>

static double
f_to_c (double f)
{
  return (f - 32) / 1.8;
}

/* Three worked days of garden answers on how long tomatoes take to ripen and one of
 * a column for Klamath County (average, all read); Iowa State University, Agronomy
 * 541 lesson 2b, equation 2.1 (substitute; 70/50 and 95/88 read, the others derived
 * from its rules).  °F, base 50, upper 86. */
static void
test_published_f (void)
{
  static const struct { SteadDegreeDayMethod method; double max_f, min_f, f_days; } table[] = {
    { STEAD_DEGREE_DAYS_AVERAGE, 92, 68, 30 },
    { STEAD_DEGREE_DAYS_AVERAGE, 68, 42, 5 },
    { STEAD_DEGREE_DAYS_AVERAGE, 66, 34, 0 },
    { STEAD_DEGREE_DAYS_AVERAGE, 66, 38, 2 },
    { STEAD_DEGREE_DAYS_SUBSTITUTE, 70, 50, 10 },
    { STEAD_DEGREE_DAYS_SUBSTITUTE, 92, 68, 27 },
    { STEAD_DEGREE_DAYS_SUBSTITUTE, 66, 34, 8 },
    { STEAD_DEGREE_DAYS_SUBSTITUTE, 95, 88, 36 },
    { STEAD_DEGREE_DAYS_SUBSTITUTE, 50, 20, 0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SteadDegreeDayRule rule = { table[i].method, f_to_c (50), f_to_c (86) };
      double c_days = stead_degree_day (&rule, f_to_c (table[i].max_f), f_to_c (table[i].min_f));

      g_assert_cmpfloat_with_epsilon (c_days * STEAD_F_DAYS_PER_C_DAY, table[i].f_days, 1e-9);
    }
}

/* Table of degree-day methods, Heliyon 6(10) e05114, table 3, methods VIII and IX
 * (derived from its rules).  °C, base 10, upper 30. */
static void
test_ceiling (void)
{
  const SteadDegreeDayRule substitute = { STEAD_DEGREE_DAYS_SUBSTITUTE, 10, 30 };
  const SteadDegreeDayRule reduced = { STEAD_DEGREE_DAYS_REDUCED_CEILING, 10, 30 };

  g_assert_cmpfloat_with_epsilon (stead_degree_day (&substitute, 34, 18), 14, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_degree_day (&reduced, 34, 18), 12, 1e-9);
  /* At the ceiling they agree; below it the second is the plain average. */
  g_assert_cmpfloat_with_epsilon (stead_degree_day (&reduced, 30, 18), 14, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_degree_day (&reduced, 22, 4), 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_degree_day (&substitute, 22, 4), 6, 1e-9);
  /* So hot that nothing grows. */
  g_assert_cmpfloat (stead_degree_day (&reduced, 60, 10), ==, 0);
}

/* What is true of every day. */
static void
test_properties (void)
{
  for (int method = STEAD_DEGREE_DAYS_AVERAGE; method <= STEAD_DEGREE_DAYS_REDUCED_CEILING; method++)
    {
      const SteadDegreeDayRule rule = { (SteadDegreeDayMethod) method, 10, 30 };

      for (double min_c = -20; min_c <= 30; min_c += 2.5)
        for (double max_c = min_c; max_c <= 45; max_c += 2.5)
          {
            double days = stead_degree_day (&rule, max_c, min_c);

            g_assert_cmpfloat (days, >=, 0);
            if (method == STEAD_DEGREE_DAYS_SUBSTITUTE)
              g_assert_cmpfloat (days, <=, 20);
            /* Between the limits all methods are one. */
            if (min_c >= 10 && max_c <= 30)
              g_assert_cmpfloat_with_epsilon (days, (max_c + min_c) / 2 - 10, 1e-9);
            /* A warmer night never takes warmth away. */
            if (min_c + 1 <= max_c)
              g_assert_cmpfloat (stead_degree_day (&rule, max_c, min_c + 1), >=, days);
          }
    }
}

/* Weather glossary and two entries on heating degree days (read, °F); Statistics
 * Netherlands, definition (read, °C); Midwestern Regional Climate Center (read, mean). */
static void
test_heating (void)
{
  g_assert_cmpfloat_with_epsilon (1.8 * stead_heating_degree_day (f_to_c (65),
                                                                  stead_day_mean_c (f_to_c (55), f_to_c (35))),
                                  20, 1e-9);
  g_assert_cmpfloat_with_epsilon (1.8 * stead_heating_degree_day (f_to_c (65), f_to_c (50)), 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_heating_degree_day (18, 10), 8, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_heating_degree_day (18, -4), 22, 1e-9);
  g_assert_cmpfloat (stead_heating_degree_day (18, 20), ==, 0);
  g_assert_cmpfloat (stead_heating_degree_day (18, 18), ==, 0);
  g_assert_cmpfloat_with_epsilon (1.8 * stead_degree_day_of_mean (f_to_c (65), f_to_c (75)), 10, 1e-9);
  g_assert_cmpfloat (stead_degree_day_of_mean (10, 9), ==, 0);
}

/* A gap is told; it is never a day without warmth. */
static void
test_gaps (void)
{
  const SteadDegreeDayRule rule = { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };
  const SteadDayTemps days[] = {
    { 30, 20 }, { NAN, 20 }, { 30, NAN }, { NAN, NAN }, { 12, 25 }, { 8, 2 }, { 20, 10 },
  };
  SteadDegreeDaySum sum;

  g_assert_true (isnan (stead_degree_day (&rule, NAN, 20)));
  g_assert_true (isnan (stead_degree_day (&rule, 30, NAN)));
  g_assert_true (isnan (stead_degree_day (&rule, 12, 25)));
  g_assert_true (isnan (stead_day_mean_c (12, 25)));
  g_assert_true (isnan (stead_heating_degree_day (18, NAN)));
  g_assert_true (isnan (stead_degree_day_of_mean (10, NAN)));
  stead_degree_day_sum (&rule, days, G_N_ELEMENTS (days), &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c, 15 + 0 + 5, 1e-9);
  g_assert_cmpuint (sum.n_days, ==, 3);
  g_assert_cmpuint (sum.n_gaps, ==, 4);
  stead_heating_degree_day_sum (18, days, G_N_ELEMENTS (days), &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c, 0 + 13 + 3, 1e-9);
  g_assert_cmpuint (sum.n_days, ==, 3);
  g_assert_cmpuint (sum.n_gaps, ==, 4);
  stead_degree_day_sum (&rule, NULL, 0, &sum);
  g_assert_cmpfloat (sum.sum_c, ==, 0);
  g_assert_cmpuint (sum.n_gaps, ==, 0);
}

/* Means that go up and down through the year, as they do outdoors. */
static SteadTypicalYear
wave_year (void)
{
  SteadTypicalYear year = { .spread_c = 0 };

  for (int month = 0; month < 12; month++)
    {
      year.max_c[month] = 15 - 12 * cos (2 * G_PI * month / 12);
      year.min_c[month] = year.max_c[month] - 9;
    }
  return year;
}

static void
test_typical_day (void)
{
  const SteadTypicalYear year = wave_year ();
  SteadDayTemps temps;
  double before = 0;
  double sums[12] = { 0 };
  int n[12] = { 0 };

  g_assert_true (stead_typical_year_is_valid (&year));
  /* No jump anywhere, in a leap year either: the wave's slope is at most 6.3 °C a month. */
  for (SteadDay day = stead_day_new (2024, 1, 1); day <= stead_day_new (2025, 12, 31); day++)
    {
      int month;

      stead_typical_year_day (&year, day, &temps);
      g_assert_cmpfloat_with_epsilon (temps.max_c - temps.min_c, 9, 1e-9);
      if (day > stead_day_new (2024, 1, 1))
        g_assert_cmpfloat (fabs (temps.max_c - before), <=, 7 / 28.0);
      before = temps.max_c;
      stead_day_split (day, NULL, &month, NULL);
      sums[month - 1] += temps.max_c;
      n[month - 1]++;
    }
  /* The days of a month have its mean, the coldest and the warmest month too. */
  for (int month = 0; month < 12; month++)
    g_assert_cmpfloat_with_epsilon (sums[month] / n[month], year.max_c[month], 0.05);
  /* The last and the first day of the year lie side by side. */
  stead_typical_year_day (&year, stead_day_new (2025, 12, 31), &temps);
  before = temps.max_c;
  stead_typical_year_day (&year, stead_day_new (2026, 1, 1), &temps);
  g_assert_cmpfloat_with_epsilon (temps.max_c, before, 0.1);
}

/* The same all year, and means that no weather has. */
static void
test_typical_odd (void)
{
  SteadTypicalYear flat = { .spread_c = 0 };
  SteadTypicalYear jagged = { .spread_c = 0 };
  SteadDayTemps temps;

  for (int month = 0; month < 12; month++)
    {
      flat.max_c[month] = 21;
      flat.min_c[month] = 9;
      jagged.max_c[month] = month % 2 == 0 ? 30 : 0;
    }
  for (SteadDay day = 0; day < 366; day++)
    {
      stead_typical_year_day (&flat, day, &temps);
      g_assert_cmpfloat_with_epsilon (temps.max_c, 21, 1e-9);
      g_assert_cmpfloat_with_epsilon (temps.min_c, 9, 1e-9);
      stead_typical_year_day (&jagged, day, &temps);
      g_assert_cmpfloat (temps.max_c, >=, temps.min_c);
    }
}

static void
test_typical_refuses (void)
{
  g_autoptr(GError) error = NULL;
  SteadTypicalYear year = wave_year ();
  SteadDayTemps days[300];

  year.min_c[4] = year.max_c[4] + 0.1;
  g_assert_false (stead_typical_year_is_valid (&year));
  year = wave_year ();
  year.max_c[11] = NAN;
  g_assert_false (stead_typical_year_is_valid (&year));
  year = wave_year ();
  year.spread_c = -1;
  g_assert_false (stead_typical_year_is_valid (&year));
  /* From January to October: two months are missing. */
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i] = (SteadDayTemps) { 20, 10 };
  year.spread_c = -1;
  g_assert_false (stead_typical_year_from_days (stead_day_new (2025, 1, 1), days,
                                                G_N_ELEMENTS (days), &year, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpfloat (year.spread_c, ==, -1);
}

/* The mean loss below a base of a bell curve has a closed form:
 * (base - mean) P((base - mean)/sd) + sd p((base - mean)/sd); values of P and p from
 * printed tables of the normal curve (0: 0.5, 0.39894; 1: 0.84134, 0.24197). */
static void
test_spread (void)
{
  SteadTypicalYear year = { .spread_c = 4 };

  for (int month = 0; month < 12; month++)
    {
      year.max_c[month] = 20;
      year.min_c[month] = 10;
    }
  g_assert_cmpfloat_with_epsilon (stead_typical_year_heating_degree_day (&year, 15, 0),
                                  4 * 0.39894, 0.05);
  g_assert_cmpfloat_with_epsilon (stead_typical_year_heating_degree_day (&year, 19, 0),
                                  4 * 0.84134 + 4 * 0.24197, 0.05);
  /* Far from the base the straying cancels out. */
  g_assert_cmpfloat_with_epsilon (stead_typical_year_heating_degree_day (&year, 40, 0), 25, 1e-9);
  year.spread_c = 0;
  g_assert_cmpfloat (stead_typical_year_heating_degree_day (&year, 15, 0), ==, 0);
  g_assert_cmpfloat_with_epsilon (stead_typical_year_heating_degree_day (&year, 19, 0), 4, 1e-9);
}

/* Three years of real readings (tests/reference/weather/new-york.csv).  The means of
 * months and the yearly sums stand as another program found them in exact fractions
 * (Python, fractions.Fraction): base 65 °F for heating, 10 °C for growing. */
static void
test_real_years (void)
{
  const SteadDegreeDayRule average = { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };
  const SteadDegreeDayRule substitute = { STEAD_DEGREE_DAYS_SUBSTITUTE, 10, 30 };
  const SteadDay first = stead_day_new (2012, 1, 1);
  const gsize n = (gsize) (stead_day_new (2015, 1, 1) - first);
  g_autofree SteadDayTemps *days = weather_read ("new-york.csv", first, n);
  SteadTypicalYear year;
  SteadDegreeDaySum sum;
  double heating = 0;
  double heating_of_means = 0;
  double growing = 0;
  double growing_substitute = 0;

  stead_degree_day_sum (&average, days, n, &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c / 3, 2037.45, 0.005);
  g_assert_cmpuint (sum.n_gaps, ==, 0);
  stead_degree_day_sum (&substitute, days, n, &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c / 3, 2123.98, 0.005);
  stead_heating_degree_day_sum (f_to_c (65), days, 366, &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c * 1.8, 4112.1, 0.005);
  stead_heating_degree_day_sum (f_to_c (65), days + 366, 365, &sum);
  g_assert_cmpfloat_with_epsilon (sum.sum_c * 1.8, 4861.68, 0.005);

  g_assert_true (stead_typical_year_from_days (first, days, n, &year, NULL));
  g_assert_cmpfloat_with_epsilon (year.max_c[0], 4.850538, 1e-6);
  g_assert_cmpfloat_with_epsilon (year.min_c[1], -1.789412, 1e-6);
  g_assert_cmpfloat_with_epsilon (year.max_c[6], 29.468817, 1e-6);
  g_assert_cmpfloat (year.spread_c, >, 2);
  g_assert_cmpfloat (year.spread_c, <, 6);
  for (SteadDay day = stead_day_new (2013, 1, 1); day <= stead_day_new (2013, 12, 31); day++)
    {
      heating += stead_typical_year_heating_degree_day (&year, f_to_c (65), day);
      growing += stead_typical_year_degree_day (&year, &average, day);
      growing_substitute += stead_typical_year_degree_day (&year, &substitute, day);
    }
  year.spread_c = 0;
  for (SteadDay day = stead_day_new (2013, 1, 1); day <= stead_day_new (2013, 12, 31); day++)
    heating_of_means += stead_typical_year_heating_degree_day (&year, f_to_c (65), day);
  /* The typical year gives a year's sum within 1.5 %, and without the straying less. */
  g_assert_cmpfloat_with_epsilon (heating, (2284.5 + 2700.93 + 2784.52) / 3, 0.015 * 2590);
  g_assert_cmpfloat_with_epsilon (growing, 2037.45, 0.015 * 2037);
  g_assert_cmpfloat_with_epsilon (growing_substitute, 2123.98, 0.015 * 2124);
  g_assert_cmpfloat (heating_of_means, <, heating);
}

static void
test_misuse (void)
{
  const SteadDegreeDayRule rule = { STEAD_DEGREE_DAYS_SUBSTITUTE, 30, 10 };

  if (g_test_subprocess ())
    {
      g_assert_true (isnan (stead_degree_day (&rule, 20, 10)));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*upper_c*");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/degree-days/published-f", test_published_f);
  g_test_add_func ("/core/degree-days/ceiling", test_ceiling);
  g_test_add_func ("/core/degree-days/properties", test_properties);
  g_test_add_func ("/core/degree-days/heating", test_heating);
  g_test_add_func ("/core/degree-days/gaps-are-told", test_gaps);
  g_test_add_func ("/core/typical-year/day", test_typical_day);
  g_test_add_func ("/core/typical-year/odd", test_typical_odd);
  g_test_add_func ("/core/typical-year/refuses", test_typical_refuses);
  g_test_add_func ("/core/typical-year/spread", test_spread);
  g_test_add_func ("/core/typical-year/real-years", test_real_years);
  g_test_add_func ("/core/degree-days/misuse", test_misuse);
  return g_test_run ();
}

/* When a crop will be ripe. */
#include "core/stead-core-error.h"
#include "core/stead-crop.h"
#include "core/stead-husbandry.h"
#include "core/stead-ripening.h"

#include "weather.h"

#include <math.h>

/* 10 °C-days a day. */
#define EACH { 25, 15 }
#define GAP { NAN, NAN }

static const SteadDegreeDayRule rule = { STEAD_DEGREE_DAYS_AVERAGE, 10, 30 };

static SteadRipeLog
log_of (const SteadDayTemps *days,
        gsize                n)
{
  return (SteadRipeLog) { rule, stead_day_new (2026, 5, 1), days, n };
}

/* Garden answers on how long tomatoes take to ripen: 1,300 °F-days at 20 a day (derived). */
static void
test_days (void)
{
  g_assert_cmpfloat_with_epsilon (stead_ripe_days (1300, 20), 65, 1e-9);
  g_assert_cmpfloat (stead_ripe_days (0, 20), ==, 0);
  g_assert_true (isnan (stead_ripe_days (1300, 0)));
  g_assert_true (isnan (stead_ripe_days (-1, 20)));
}

/* Needs of @mean, of which 8 of 10 lie within 15 % (test-learn.c). */
static SteadLearned
need_of (double mean)
{
  SteadLearned need;

  g_assert_true (stead_learn (mean, NULL, 0, &need, NULL));
  return need;
}

static void
test_date (void)
{
  const SteadDayTemps days[20] = {
    EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH,
    EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH, EACH,
  };
  SteadRipeLog log = log_of (days, G_N_ELEMENTS (days));
  const SteadLearned need = need_of (300);
  const SteadLearned past = need_of (100);
  SteadRipeDate date;

  /* 200 so far; 10 a day: the 30th day, the 26th and the 35th for the band. */
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  g_assert_cmpfloat_with_epsilon (date.sum_c, 200, 1e-9);
  g_assert_cmpfloat_with_epsilon (date.coming_c, 10, 1e-9);
  g_assert_cmpfloat (date.assumed_c, ==, 0);
  g_assert_cmpuint (date.n_gaps, ==, 0);
  g_assert_cmpint (date.outlook, ==, STEAD_RIPE_BY_RECENT);
  g_assert_cmpint (date.day, ==, log.first_day + 29);
  g_assert_cmpint (date.early, ==, log.first_day + 25);
  g_assert_cmpint (date.late, ==, log.first_day + 34);
  /* What lies behind is a day of the log: the 10th.  It is not ripe yet, so it will be soon. */
  g_assert_true (stead_ripe_date (&log, &past, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  g_assert_cmpint (date.day, ==, log.first_day + 9);
  g_assert_cmpint (date.early, ==, log.first_day + 20);
  g_assert_cmpint (date.late, >, date.early);
  /* Recent days only: a hot start does not count as what is to come. */
  {
    SteadDayTemps changing[28];

    for (gsize i = 0; i < G_N_ELEMENTS (changing); i++)
      changing[i] = i < 14 ? (SteadDayTemps) { 35, 25 } : (SteadDayTemps) EACH;
    log = log_of (changing, G_N_ELEMENTS (changing));
    g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
    g_assert_cmpfloat_with_epsilon (date.coming_c, 10, 1e-9);
  }
}

static void
test_gaps (void)
{
  SteadDayTemps days[20];
  SteadRipeLog log = log_of (days, G_N_ELEMENTS (days));
  const SteadLearned need = need_of (300);
  SteadRipeDate date;

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i] = (SteadDayTemps) EACH;
  /* At both ends and in the middle. */
  days[0] = days[9] = days[10] = days[19] = (SteadDayTemps) GAP;
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  g_assert_cmpuint (date.n_gaps, ==, 4);
  g_assert_cmpfloat_with_epsilon (date.sum_c, 160, 1e-9);
  g_assert_cmpfloat_with_epsilon (date.assumed_c, 40, 1e-9);
  g_assert_cmpint (date.day, ==, log.first_day + 29);
  /* Between 10 and 16 lie 12 and 14. */
  days[11] = (SteadDayTemps) { 31, 21 };
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  g_assert_cmpfloat_with_epsilon (date.assumed_c, 10 + 12 + 14 + date.coming_c, 1e-9);
}

static void
test_outlook (void)
{
  SteadTypicalYear normals = { .spread_c = 0 };
  SteadDayTemps days[10];
  SteadRipeLog log = log_of (days, G_N_ELEMENTS (days));
  const SteadLearned need = need_of (300);
  g_autoptr(GError) error = NULL;
  SteadRipeDate date = { .day = 7 };

  for (int month = 0; month < 12; month++)
    {
      normals.max_c[month] = 35;
      normals.min_c[month] = 25;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i] = (SteadDayTemps) EACH;
  /* 100 so far and 20 a day to come. */
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_NORMALS, &normals, &date, NULL));
  g_assert_cmpint (date.outlook, ==, STEAD_RIPE_BY_NORMALS);
  g_assert_cmpint (date.day, ==, log.first_day + 19);
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, &normals, &date, NULL));
  g_assert_cmpint (date.outlook, ==, STEAD_RIPE_BY_RECENT);
  g_assert_cmpint (date.day, ==, log.first_day + 29);
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_NORMALS, NULL, &date, NULL));
  g_assert_cmpint (date.outlook, ==, STEAD_RIPE_BY_RECENT);
  /* Before transplanting there are only normals. */
  log = log_of (NULL, 0);
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, &normals, &date, NULL));
  g_assert_cmpint (date.outlook, ==, STEAD_RIPE_BY_NORMALS);
  g_assert_cmpint (date.day, ==, log.first_day + 14);
  /* Four days of the last fourteen are too few, five are enough. */
  log = log_of (days, 4);
  date.day = 7;
  g_assert_false (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_NONE);
  g_assert_cmpint (date.day, ==, 7);
  log = log_of (days, 5);
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
}

static void
test_never (void)
{
  SteadDayTemps days[14];
  SteadRipeLog log = log_of (days, G_N_ELEMENTS (days));
  const SteadLearned need = need_of (300);
  const SteadLearned slow = need_of (360);
  SteadRipeDate date;

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i] = (SteadDayTemps) { 9, 1 };
  g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  g_assert_cmpint (date.day, ==, STEAD_DAY_NONE);
  g_assert_cmpint (date.early, ==, STEAD_DAY_NONE);
  g_assert_cmpfloat (date.coming_c, ==, 0);
  /* One °C-day a day: the late end of the band lies beyond the horizon. */
  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    days[i] = (SteadDayTemps) { 16, 6 };
  g_assert_true (stead_ripe_date (&log, &slow, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
  /* 85 % of 360, and a day for those needs that have been met already. */
  g_assert_cmpint (date.early - (log.first_day + 305), >=, 0);
  g_assert_cmpint (date.early - (log.first_day + 305), <=, 1);
  g_assert_cmpint (date.day, ==, log.first_day + 359);
  g_assert_cmpint (date.late, ==, STEAD_DAY_NONE);
}

/* Real readings of New York (tests/reference/weather): transplanted on May 15, the
 * day when 1,300 °F-days over 50 were reached, as another program found it in exact
 * fractions (Python).  Forecast on June 15 from the three other years' mean. */
static void
test_real_seasons (void)
{
  static const struct { int year, month, mday; } reached[] = {
    { 2012, 7, 13 }, { 2013, 7, 16 }, { 2014, 7, 16 }, { 2015, 7, 15 },
  };
  const SteadDay first = stead_day_new (2012, 1, 1);
  const gsize n = (gsize) (stead_day_new (2016, 1, 1) - first);
  g_autofree SteadDayTemps *days = weather_read ("new-york.csv", first, n);
  const SteadLearned need = need_of (stead_husbandry_default (STEAD_DEFAULT_TOMATO_RIPE));

  for (gsize i = 0; i < G_N_ELEMENTS (reached); i++)
    {
      SteadDay day = stead_day_new (reached[i].year, reached[i].month, reached[i].mday);
      SteadDay start = stead_day_new (reached[i].year, 5, 15);
      g_autofree SteadDayTemps *others = g_memdup2 (days, n * sizeof *days);
      SteadRipeLog log = { .first_day = start, .days = days + (start - first) };
      SteadTypicalYear normals;
      SteadRipeDate date;

      stead_crop_tomato_rule (&log.rule);
      /* The whole season read. */
      log.n_days = 100;
      g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_RECENT, NULL, &date, NULL));
      g_assert_cmpint (date.day, ==, day);
      /* The year itself is hidden from the normals. */
      for (gsize k = 0; k < n; k++)
        {
          int year;

          stead_day_split (first + (SteadDay) k, &year, NULL, NULL);
          if (year == reached[i].year)
            others[k] = (SteadDayTemps) GAP;
        }
      g_assert_true (stead_typical_year_from_days (first, others, n, &normals, NULL));
      log.n_days = (gsize) (stead_day_new (reached[i].year, 6, 15) - start + 1);
      g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_NORMALS, &normals, &date, NULL));
      g_test_message ("%d: %d days off", reached[i].year, date.day - day);
      g_assert_cmpint (ABS (date.day - day), <=, 4);
      g_assert_cmpint (date.early, <=, day);
      g_assert_cmpint (date.late, >=, day);
      /* Also before the first reading. */
      log.n_days = 0;
      g_assert_true (stead_ripe_date (&log, &need, STEAD_RIPE_BY_NORMALS, &normals, &date, NULL));
      g_assert_cmpint (ABS (date.day - day), <=, 7);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/ripening/days", test_days);
  g_test_add_func ("/core/ripening/date", test_date);
  g_test_add_func ("/core/ripening/gaps", test_gaps);
  g_test_add_func ("/core/ripening/outlook", test_outlook);
  g_test_add_func ("/core/ripening/never", test_never);
  g_test_add_func ("/core/ripening/real-seasons", test_real_seasons);
  return g_test_run ();
}

/* Hours of work, and what comes before digging. */
#include "core/stead-core-error.h"
#include "core/stead-dig.h"
#include "core/stead-hours.h"

#include <math.h>

static SteadWork
work (int      start_hour,
      int      start_minute,
      int      end_hour,
      int      end_minute,
      gboolean next_day)
{
  return (SteadWork) { .day = stead_day_new (2025, 3, 8), .start = 60 * start_hour + start_minute,
                       .end = 60 * end_hour + end_minute, .next_day = next_day };
}

static int
minutes_of (SteadWork  stretch,
            GTimeZone *zone)
{
  g_autoptr(GError) error = NULL;
  int minutes = -9999;

  g_assert_true (stead_work_minutes (&stretch, zone, &minutes, NULL, &error));
  g_assert_no_error (error);
  return minutes;
}

/* Clock arithmetic by hand. */
static void
test_minutes (void)
{
  SteadWork with_meal = work (21, 50, 2, 20, TRUE);
  SteadWork rested = work (13, 0, 16, 0, FALSE);

  g_assert_cmpint (minutes_of (work (8, 15, 11, 40, FALSE), NULL), ==, 205);
  g_assert_cmpint (minutes_of (work (22, 40, 1, 10, TRUE), NULL), ==, 150);
  with_meal.meal_min = 20;
  g_assert_cmpint (minutes_of (with_meal, NULL), ==, 250);
  /* 29 CFR 785.18 (read): a rest of 5 to 20 min is work; a longer one is not. */
  rested.rest_min = 20;
  g_assert_cmpint (minutes_of (rested, NULL), ==, 180);
  rested.rest_min = 21;
  g_assert_cmpint (minutes_of (rested, NULL), ==, 159);
  /* An end before the start is not moved to the next day. */
  g_assert_cmpint (minutes_of (work (10, 0, 9, 0, FALSE), NULL), ==, -60);
  g_assert_false (stead_work_is_likely (-60));
  g_assert_false (stead_work_is_likely (0));
  g_assert_true (stead_work_is_likely (16 * 60));
  g_assert_false (stead_work_is_likely (16 * 60 + 1));
}

/* New York: clocks went from 2 to 3 on 2025-03-09, and from 2 back to 1 on 2025-11-02. */
static void
test_clock_changes (void)
{
  g_autoptr(GTimeZone) zone = g_time_zone_new_identifier ("America/New_York");
  SteadWork spring = work (22, 0, 6, 0, TRUE);
  SteadWork gap = work (22, 0, 2, 30, TRUE);
  SteadWork fall = { .day = stead_day_new (2025, 11, 1), .start = 22 * 60, .end = 90, .next_day = TRUE };
  SteadWork whole = { .day = stead_day_new (2025, 11, 2), .start = 0, .end = 0, .next_day = TRUE };
  SteadWork plain = { .day = stead_day_new (2025, 7, 1), .start = 480, .end = 540 };
  SteadWork inside = { .day = stead_day_new (2025, 11, 2), .start = 90, .end = 75, .end_second = TRUE };
  g_autoptr(GError) error = NULL;
  gboolean twice = FALSE;
  int minutes = 77;

  g_assert_nonnull (zone);
  g_assert_cmpint (minutes_of (spring, zone), ==, 7 * 60);
  g_assert_cmpint (minutes_of (spring, NULL), ==, 8 * 60);
  g_assert_false (stead_work_minutes (&gap, zone, &minutes, &twice, &error));
  g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
  g_assert_cmpint (minutes, ==, 77);
  g_clear_error (&error);
  /* Half past one came twice: 3.5 h later, and 4.5 h. */
  g_assert_true (stead_work_minutes (&fall, zone, &minutes, &twice, &error));
  g_assert_cmpint (minutes, ==, 210);
  g_assert_true (twice);
  fall.end_second = TRUE;
  g_assert_cmpint (minutes_of (fall, zone), ==, 270);
  g_assert_cmpint (minutes_of (whole, zone), ==, 25 * 60);
  /* From the first half past one to the second quarter past: three quarters of an hour. */
  g_assert_cmpint (minutes_of (inside, zone), ==, 45);
  /* A time that comes once is not changed by asking for the second. */
  spring.start_second = TRUE;
  spring.end_second = TRUE;
  g_assert_true (stead_work_minutes (&spring, zone, &minutes, &twice, &error));
  g_assert_cmpint (minutes, ==, 7 * 60);
  g_assert_false (twice);
  plain.end_second = TRUE;
  twice = TRUE;
  g_assert_true (stead_work_minutes (&plain, zone, &minutes, &twice, &error));
  g_assert_cmpint (minutes, ==, 60);
  g_assert_false (twice);
  twice = TRUE;
  g_assert_true (stead_work_minutes (&plain, NULL, &minutes, &twice, &error));
  g_assert_false (twice);
}

/* Every stretch of a year, against the calendar of GLib. */
static void
test_against_glib (void)
{
  static const char * const zones[] = { "America/New_York", "America/Denver", "Europe/Madrid", "Australia/Lord_Howe",
                                        "America/Phoenix", "Asia/Kathmandu" };

  for (gsize z = 0; z < G_N_ELEMENTS (zones); z++)
    {
      g_autoptr(GTimeZone) zone = g_time_zone_new_identifier (zones[z]);

      g_assert_nonnull (zone);
      for (SteadDay day = stead_day_new (2026, 1, 1); day < stead_day_new (2027, 1, 1); day++)
        {
          SteadWork stretch = { .day = day, .start = 12 * 60, .end = 12 * 60, .next_day = TRUE };
          int year, month, mday;
          g_autoptr(GDateTime) from = NULL;
          g_autoptr(GDateTime) to = NULL;

          stead_day_split (day, &year, &month, &mday);
          from = g_date_time_new (zone, year, month, mday, 12, 0, 0);
          stead_day_split (day + 1, &year, &month, &mday);
          to = g_date_time_new (zone, year, month, mday, 12, 0, 0);
          g_assert_cmpint (minutes_of (stretch, zone), ==, (int) (g_date_time_difference (to, from) / 60000000));
        }
    }
}

static void
test_refused (void)
{
  SteadWork bad[] = { work (24, 0, 9, 0, FALSE), work (8, 0, 9, 60 * 24, FALSE), work (0, -1, 9, 0, FALSE),
                      work (8, 0, 9, 0, FALSE), work (8, 0, 9, 0, FALSE), work (8, 0, 9, 0, FALSE) };

  bad[3].meal_min = -1;
  bad[4].rest_min = G_MAXINT;
  bad[5].day = STEAD_DAY_NONE;
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr(GError) error = NULL;
      int minutes = 77;

      g_assert_false (stead_work_minutes (&bad[i], NULL, &minutes, NULL, &error));
      g_assert_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE);
      g_assert_cmpint (minutes, ==, 77);
    }
}

/* University of Arizona payroll, rounding reported hours (read). */
static void
test_quarters (void)
{
  SteadWork early = work (7, 50, 17, 0, FALSE);

  early.meal_min = 60;
  g_assert_cmpint (stead_quarter_round (7), ==, 0);
  g_assert_cmpint (stead_quarter_round (8), ==, 15);
  g_assert_cmpint (stead_quarter_round (16 * 60 + 59), ==, 17 * 60);
  g_assert_cmpint (stead_quarter_minutes (&early), ==, 8 * 60 + 15);
}

static void
test_overlap (void)
{
  SteadWork works[] = { work (14, 0, 15, 0, FALSE), work (8, 0, 12, 0, FALSE), work (12, 0, 13, 0, FALSE),
                        work (25, 0, 9, 0, FALSE), work (10, 0, 10, 0, FALSE), work (23, 0, 1, 0, TRUE) };
  gsize first = 99, second = 99;

  /* Ends as the next begins; not to be read; of no length: none of them overlaps. */
  g_assert_false (stead_work_find_overlap (works, G_N_ELEMENTS (works), NULL, &first, &second));
  g_assert_cmpuint (first, ==, 99);
  works[0].start = 12 * 60 + 59;
  g_assert_true (stead_work_find_overlap (works, G_N_ELEMENTS (works), NULL, &first, &second));
  g_assert_cmpuint (first, ==, 2);
  g_assert_cmpuint (second, ==, 0);
  works[0] = (SteadWork) { .day = stead_day_new (2025, 3, 9), .start = 30, .end = 120 };
  g_assert_true (stead_work_find_overlap (works, G_N_ELEMENTS (works), NULL, &first, &second));
  g_assert_cmpuint (first, ==, 5);
  g_assert_cmpuint (second, ==, 0);
}

/* Thousands of lists: an overlap is found if and only if two of a list overlap. */
static void
test_overlap_pairs (void)
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (11);

  for (int round = 0; round < 5000; round++)
    {
      SteadWork works[5];
      gboolean any = FALSE;
      gsize first, second;

      for (gsize i = 0; i < 5; i++)
        {
          int start = g_rand_int_range (rand, 0, 1300);

          works[i] = (SteadWork) { .day = 20000, .start = start, .end = start + g_rand_int_range (rand, 1, 130) };
        }
      for (gsize i = 0; i < 5; i++)
        for (gsize j = 0; j < i; j++)
          any |= works[i].start < works[j].end && works[j].start < works[i].end;
      g_assert_true (any == stead_work_find_overlap (works, 5, NULL, &first, &second));
      if (any)
        g_assert_true (works[first].start <= works[second].start && works[second].start < works[first].end);
    }
}

static void
test_sums (void)
{
  const SteadHoursEntry thirds[] = { { 20, FALSE, 0 }, { 20, FALSE, 0 }, { 20, FALSE, 0 } };
  const SteadHoursEntry mixed[] = { { 90, FALSE, 0 }, { 45, FALSE, 0 }, { 180, FALSE, 0 }, { 60, TRUE, 800 },
                                    { 60, TRUE, 800 } };
  SteadHoursSum sum;
  g_autofree char *text = stead_hours_format (205);

  stead_hours_sum (thirds, 3, 0, &sum);
  g_assert_cmpfloat (stead_hours_of_minutes (sum.unpaid_min), ==, 1);
  /* Worked by hand: 5.25 h at 31.80 and 2 h at 8.00 (derived). */
  stead_hours_sum (mixed, 5, 3180, &sum);
  g_assert_cmpint (sum.value_cents, ==, 16695);
  g_assert_cmpint (sum.wages_cents, ==, 1600);
  g_assert_cmpint (sum.paid_min, ==, 120);
  g_assert_cmpstr (text, ==, "3:25");
  g_assert_cmpint (stead_hours_late_days (stead_day_new (2025, 4, 1), stead_day_new (2025, 4, 9)), ==, 8);
}

/* A calendar of June 2025: the 19th, a Thursday, is a holiday. */
static void
test_dig (void)
{
  const SteadDay holidays[] = { stead_day_new (2025, 6, 19) };

  g_assert_cmpint (stead_dig_latest_call (stead_day_new (2025, 6, 12), 2, NULL, 0), ==, stead_day_new (2025, 6, 9));
  g_assert_cmpint (stead_dig_latest_call (stead_day_new (2025, 6, 16), 2, NULL, 0), ==, stead_day_new (2025, 6, 11));
  g_assert_cmpint (stead_dig_latest_call (stead_day_new (2025, 6, 23), 2, holidays, 1), ==,
                   stead_day_new (2025, 6, 17));
  /* No day between: the last business day before. */
  g_assert_cmpint (stead_dig_latest_call (stead_day_new (2025, 6, 16), 0, NULL, 0), ==, stead_day_new (2025, 6, 13));
  g_assert_cmpint (stead_dig_latest_call (stead_day_new (1900, 1, 2), 3, NULL, 0), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_dig_latest_call (STEAD_DAY_NONE, 2, NULL, 0), ==, STEAD_DAY_NONE);
  g_assert_cmpint (stead_dig_latest_call (stead_day_new (2025, 6, 12), 61, NULL, 0), ==, STEAD_DAY_NONE);
  g_assert_true (stead_dig_by_hand (0.4572, 18 * 0.0254));
  g_assert_false (stead_dig_by_hand (0.46, 18 * 0.0254));
  g_assert_true (stead_permit_by_size (200.1, 200));
  g_assert_false (stead_permit_by_size (200, 200));
  /* What cannot be is never the freer answer. */
  g_assert_true (stead_dig_by_hand (NAN, 1) && stead_dig_by_hand (1, NAN));
  g_assert_true (stead_permit_by_size (NAN, 1) && stead_permit_by_size (1, NAN));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/hours/minutes", test_minutes);
  g_test_add_func ("/core/hours/clock-changes", test_clock_changes);
  g_test_add_func ("/core/hours/against-glib", test_against_glib);
  g_test_add_func ("/core/hours/refused", test_refused);
  g_test_add_func ("/core/hours/quarters", test_quarters);
  g_test_add_func ("/core/hours/overlap", test_overlap);
  g_test_add_func ("/core/hours/overlap-pairs", test_overlap_pairs);
  g_test_add_func ("/core/hours/sums", test_sums);
  g_test_add_func ("/core/hours/dig", test_dig);
  return g_test_run ();
}

/* Days: counting and text. */
#include "core/stead-calendar.h"
#include "core/stead-core-error.h"

#include <locale.h>

/* Against GLib's own calendar, every day of 300 years. */
static void
test_count (void)
{
  g_autoptr(GDate) date = g_date_new_dmy (1, G_DATE_JANUARY, 1900);
  SteadDay day = stead_day_new (1900, 1, 1);

  g_assert_cmpint (stead_day_new (1970, 1, 1), ==, 0);
  for (; g_date_get_year (date) < 2200; g_date_add_days (date, 1), day++)
    {
      int year, month, mday;

      stead_day_split (day, &year, &month, &mday);
      g_assert_cmpint (year, ==, g_date_get_year (date));
      g_assert_cmpint (month, ==, (int) g_date_get_month (date));
      g_assert_cmpint (mday, ==, g_date_get_day (date));
      g_assert_cmpint (stead_day_new (year, month, mday), ==, day);
      g_assert_cmpint (stead_day_weekday (day), ==, (int) g_date_get_weekday (date));
      g_assert_cmpint (stead_day_of_year (day), ==, (int) g_date_get_day_of_year (date));
    }
  g_assert_false (stead_day_is_valid (day));
  g_assert_cmpint (stead_day_new (2026, 2, 29), ==, STEAD_DAY_NONE);
}

static void
test_parse (void)
{
  static const struct { const char *text; SteadDateOrder order; int y, m, d; } cases[] = {
    { "2026-03-03", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "3/3/2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "3.3.26", STEAD_DATE_ORDER_DMY, 2026, 3, 3 },
    { "03/04/2026", STEAD_DATE_ORDER_MDY, 2026, 3, 4 },
    { "03/04/2026", STEAD_DATE_ORDER_DMY, 2026, 4, 3 },
    { "26-03-04", STEAD_DATE_ORDER_YMD, 2026, 3, 4 },
    { "13/4/2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 4, 13 },
    { "Mar 3", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "Mar 12", STEAD_DATE_ORDER_UNKNOWN, 2025, 3, 12 },
    { "3 March 2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "3 de marzo de 2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "Tuesday, March 3", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "today", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 4 },
    { "Yesterday", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "12/31", STEAD_DATE_ORDER_UNKNOWN, 2025, 12, 31 },
    { "1/1/99", STEAD_DATE_ORDER_MDY, 1999, 1, 1 },
    { "1/1/75", STEAD_DATE_ORDER_MDY, 2075, 1, 1 }, { "1/1/77", STEAD_DATE_ORDER_MDY, 1977, 1, 1 },
    { "Mar 11", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 11 },
    { "29 Feb", STEAD_DATE_ORDER_UNKNOWN, 2024, 2, 29 },
    { "3rd of March, 2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "2026 Mar 3", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "2026/3/3", STEAD_DATE_ORDER_DMY, 2026, 3, 3 }, { "sept 1", STEAD_DATE_ORDER_MDY, 2025, 9, 1 },
    { "5 mayo", STEAD_DATE_ORDER_UNKNOWN, 2025, 5, 5 }, { "1 ene 2026", STEAD_DATE_ORDER_UNKNOWN, 2026, 1, 1 },
    { "miércoles 4 de marzo", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 4 },
    { "martes 3 marzo", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "hoy", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 4 }, { "AYER", STEAD_DATE_ORDER_UNKNOWN, 2026, 3, 3 },
    { "3\u22123\u22122026", STEAD_DATE_ORDER_MDY, 2026, 3, 3 }, { "12.31.", STEAD_DATE_ORDER_MDY, 2025, 12, 31 },
    { "5/5", STEAD_DATE_ORDER_UNKNOWN, 2025, 5, 5 }, { "03/04", STEAD_DATE_ORDER_YMD, 2026, 3, 4 },
  };
  SteadDay today = stead_day_new (2026, 3, 4);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      SteadDay day = 1;

      g_test_message ("%s", cases[i].text);
      g_assert_true (stead_day_parse (cases[i].text, today, cases[i].order, &day, &error));
      g_assert_no_error (error);
      g_assert_cmpint (day, ==, stead_day_new (cases[i].y, cases[i].m, cases[i].d));
    }
}

static void
test_refused (void)
{
  static const struct { const char *text; SteadDateOrder order; SteadCoreError code; } cases[] = {
    { "", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "soon", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "03/04/2026", STEAD_DATE_ORDER_UNKNOWN, STEAD_CORE_ERROR_PARSE },
    { "2026-02-30", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "13/4/2026", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "0000-03-03", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "22", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "3 4 2026", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "Mar Apr 3", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "March", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "Mar 3 4 5", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "3/0/2026", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "2200-01-01", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "1899-12-31", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "03/04/2026", STEAD_DATE_ORDER_YMD, STEAD_CORE_ERROR_PARSE },
    { "20260303", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "3/3/2026/1", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
    { "feb 30", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_RANGE },
    { "\xff", STEAD_DATE_ORDER_MDY, STEAD_CORE_ERROR_PARSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr(GError) error = NULL;
      SteadDay day = 77;

      g_test_message ("%s", cases[i].text);
      g_assert_false (stead_day_parse (cases[i].text, 0, cases[i].order, &day, &error));
      g_assert_error (error, STEAD_CORE_ERROR, (int) cases[i].code);
      g_assert_cmpint (day, ==, 77);
    }
}

static void
test_format (void)
{
  SteadDay day = stead_day_new (2026, 3, 3);
  g_autofree char *iso = stead_day_format (day, STEAD_DAY_STYLE_ISO);
  g_autofree char *brief = stead_day_format (day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *medium = stead_day_format (day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *full = stead_day_format (day, STEAD_DAY_STYLE_LONG);
  g_autofree char *english = stead_day_format (day, STEAD_DAY_STYLE_ENGLISH);
  g_autofree char *code = stead_day_code (day);

  g_assert_cmpstr (english, ==, "Mar 3, 2026");
  g_assert_cmpstr (iso, ==, "2026-03-03");
  g_assert_cmpstr (brief, ==, "Mar 3");
  g_assert_cmpstr (medium, ==, "Mar 3, 2026");
  g_assert_cmpstr (full, ==, "Tuesday, March 3");
  g_assert_cmpstr (code, ==, "26062");
}

static void
test_school_year (void)
{
  g_assert_cmpint (stead_school_year_start (stead_day_new (2026, 3, 3), 8, 1), ==, stead_day_new (2025, 8, 1));
  g_assert_cmpint (stead_school_year_start (stead_day_new (2026, 8, 1), 8, 1), ==, stead_day_new (2026, 8, 1));
  g_assert_cmpint (stead_school_year_start (stead_day_new (2026, 7, 31), 8, 1), ==, stead_day_new (2025, 8, 1));
  g_assert_cmpint (stead_school_year_start (stead_day_new (2026, 3, 3), 2, 29), ==, stead_day_new (2026, 2, 28));
  g_assert_cmpfloat (stead_age_weeks (0, 10), ==, 10 / 7.0);
}

/* Day-of-year numbers of egg cartons: 1 to 365 or 366 (7 CFR 56.37, from memory). */
static void
test_codes (void)
{
  g_autofree char *first = stead_day_code (stead_day_new (2024, 1, 1));
  g_autofree char *last = stead_day_code (stead_day_new (2024, 12, 31));
  g_autofree char *of_2100 = stead_day_code (stead_day_new (2100, 12, 31));

  g_assert_cmpstr (first, ==, "24001");
  g_assert_cmpstr (last, ==, "24366");
  g_assert_cmpstr (of_2100, ==, "00365");
}

static void
test_misuse (void)
{
  if (g_test_subprocess ())
    {
      g_assert_null (stead_day_format (STEAD_DAY_NONE, STEAD_DAY_STYLE_ISO));
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_failed ();
  g_test_trap_assert_stderr ("*CRITICAL*stead_day_is_valid*");
}

int
main (int   argc,
      char *argv[])
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/calendar/count", test_count);
  g_test_add_func ("/core/calendar/parse", test_parse);
  g_test_add_func ("/core/calendar/refused", test_refused);
  g_test_add_func ("/core/calendar/format", test_format);
  g_test_add_func ("/core/calendar/school-year", test_school_year);
  g_test_add_func ("/core/calendar/codes", test_codes);
  g_test_add_func ("/core/calendar/misuse", test_misuse);
  return g_test_run ();
}

/* weather.h - real daily temperatures for tests; see the heads of the files. */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-degree-days.h"

#include <glib.h>

/* The readings of @n days from @first on out of tests/reference/weather/@name.  A day
 * that the file does not have fails the test. */
static inline SteadDayTemps *
weather_read (const char *name,
              SteadDay    first,
              gsize       n)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "reference", "weather", name, NULL);
  g_autofree char *contents = NULL;
  g_auto(GStrv) lines = NULL;
  SteadDayTemps *days = g_new0 (SteadDayTemps, n);
  gsize found = 0;

  g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  lines = g_strsplit (contents, "\n", -1);
  for (gsize i = 0; lines[i] != NULL; i++)
    {
      g_auto(GStrv) cells = g_strsplit (lines[i], ",", -1);
      SteadDay day;

      if (g_strv_length (cells) != 3
          || !stead_day_parse (cells[0], first, STEAD_DATE_ORDER_YMD, &day, NULL)
          || day < first || day >= first + (SteadDay) n)
        continue;
      days[day - first] = (SteadDayTemps) { g_ascii_strtod (cells[1], NULL),
                                            g_ascii_strtod (cells[2], NULL) };
      found++;
    }
  g_assert_cmpuint (found, ==, n);
  return days;
}

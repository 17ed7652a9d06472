/* stead-calendar.c - days as numbers: counting, school years, ages. */
#include "config.h"

#include "core/stead-calendar.h"

#define FIRST_YEAR 1900
#define LAST_YEAR  2199

static gboolean
is_leap (int year)
{
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

static int
days_in_month (int year,
               int month)
{
  static const int days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };

  return days[month - 1] + (month == 2 && is_leap (year));
}

/* Days before 1 January of @year, counted from 1970-01-01. */
static int
days_before_year (int year)
{
  int y = year - 1;

  return 365 * (year - 1970) + (y / 4 - y / 100 + y / 400) - (1969 / 4 - 1969 / 100 + 1969 / 400);
}

static gboolean
is_valid (SteadDay day)
{
  return day >= days_before_year (FIRST_YEAR) && day < days_before_year (LAST_YEAR + 1);
}

SteadDay
stead_day_new (int year,
               int month,
               int day)
{
  SteadDay result;

  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12
      || day < 1 || day > days_in_month (year, month))
    return STEAD_DAY_NONE;
  result = days_before_year (year) + day - 1;
  for (int m = 1; m < month; m++)
    result += days_in_month (year, m);
  return result;
}

gboolean
stead_day_is_valid (SteadDay day)
{
  return is_valid (day);
}

void
stead_day_split (SteadDay  day,
                 int      *year,
                 int      *month,
                 int      *mday)
{
  int y;
  int m = 1;
  int left;

  g_return_if_fail (is_valid (day));

  /* A year is never longer than 366 days: this guess is at most one too low. */
  y = FIRST_YEAR + (day - days_before_year (FIRST_YEAR)) / 366;
  while (days_before_year (y + 1) <= day)
    y++;
  left = day - days_before_year (y);
  while (left >= days_in_month (y, m))
    left -= days_in_month (y, m++);
  if (year != NULL)
    *year = y;
  if (month != NULL)
    *month = m;
  if (mday != NULL)
    *mday = left + 1;
}

int
stead_day_weekday (SteadDay day)
{
  g_return_val_if_fail (is_valid (day), 1);

  /* 1970-01-01 was a Thursday. */
  return ((day + 3) % 7 + 7) % 7 + 1;
}

int
stead_day_of_year (SteadDay day)
{
  int year = FIRST_YEAR;

  g_return_val_if_fail (is_valid (day), 1);

  stead_day_split (day, &year, NULL, NULL);
  return day - days_before_year (year) + 1;
}

char *
stead_day_code (SteadDay day)
{
  int year;

  g_return_val_if_fail (is_valid (day), NULL);

  stead_day_split (day, &year, NULL, NULL);
  return g_strdup_printf ("%02d%03d", year % 100, stead_day_of_year (day));
}

SteadDay
stead_school_year_start (SteadDay day,
                         int      month,
                         int      mday)
{
  int year;
  SteadDay start;

  g_return_val_if_fail (is_valid (day), STEAD_DAY_NONE);
  g_return_val_if_fail (month >= 1 && month <= 12, STEAD_DAY_NONE);
  g_return_val_if_fail (mday >= 1 && mday <= 31, STEAD_DAY_NONE);

  stead_day_split (day, &year, NULL, NULL);
  start = days_before_year (year);
  /* 29 February, or the 31st of a short month, is the month's last day. */
  for (int tries = 0; tries < 2; tries++)
    {
      start = stead_day_new (MAX (year - tries, FIRST_YEAR), month,
                             MIN (mday, days_in_month (year - tries, month)));
      if (start <= day)
        break;
    }
  return MIN (start, day);
}

double
stead_age_weeks (SteadDay hatched,
                 SteadDay day)
{
  g_return_val_if_fail (is_valid (hatched) && is_valid (day), 0);
  return (day - hatched) / 7.0;
}

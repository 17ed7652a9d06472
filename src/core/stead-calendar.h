/* stead-calendar.h - days, school years, weeks of age, and the text of them.
 *
 * A day is counted from 1970-01-01, so a week later is + 7 and SQL can show it
 * with date(day * 86400, 'unixepoch').  No clock is read here: today is handed
 * in by the caller.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Days since 1970-01-01; the years 1900 to 2199 are accepted as input. */
typedef gint32 SteadDay;

#define STEAD_DAY_NONE G_MININT32

/* How an all-digit date with slashes is to be read. */
typedef enum
{
  STEAD_DATE_ORDER_UNKNOWN, /* 03/04 is refused: it could be either */
  STEAD_DATE_ORDER_MDY,
  STEAD_DATE_ORDER_DMY,
  STEAD_DATE_ORDER_YMD,
} SteadDateOrder;

typedef enum
{
  STEAD_DAY_STYLE_ISO,     /* 2026-03-03, whatever the locale */
  STEAD_DAY_STYLE_SHORT,   /* Mar 3 */
  STEAD_DAY_STYLE_MEDIUM,  /* Mar 3, 2026 */
  STEAD_DAY_STYLE_LONG,    /* Tuesday, March 3 */
  STEAD_DAY_STYLE_ENGLISH, /* Mar 3, 2026, whatever the locale: beside words that a law gives in English */
} SteadDayStyle;

/**
 * stead_day_new:
 *
 * Returns: the day, or %STEAD_DAY_NONE if there is no such day in 1900 to 2199
 */
SteadDay stead_day_new (int year,
                        int month,
                        int day);

/**
 * stead_day_is_valid:
 * @day: any number
 *
 * Returns: whether @day lies in the years 1900 to 2199
 */
gboolean stead_day_is_valid (SteadDay day);

/**
 * stead_day_split:
 * @day: a valid day
 * @year: (out) (optional): the year
 * @month: (out) (optional): 1 to 12
 * @mday: (out) (optional): 1 to 31
 */
void stead_day_split (SteadDay  day,
                      int      *year,
                      int      *month,
                      int      *mday);

/**
 * stead_day_weekday:
 * @day: a valid day
 *
 * Returns: 1 for Monday to 7 for Sunday (ISO 8601)
 */
int stead_day_weekday (SteadDay day);

/**
 * stead_day_of_year:
 * @day: a valid day
 *
 * Returns: 1 to 366, the day-of-year number that egg cartons carry
 */
int stead_day_of_year (SteadDay day);

/**
 * stead_day_code:
 * @day: a valid day
 *
 * Two digits of the year and three of the day of the year: "26062" for
 * 3 March 2026, as lot codes use it.
 *
 * Returns: (transfer full): five digits
 */
char *stead_day_code (SteadDay day) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_day_format:
 * @day: a valid day
 * @style: how
 *
 * Returns: (transfer full): the text, in the language and order of the locale
 */
char *stead_day_format (SteadDay      day,
                        SteadDayStyle style) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_month_format:
 * @year: the year
 * @month: 1 to 12
 *
 * Returns: (transfer full): "August 2026", in the language of the locale
 */
char *stead_month_format (int year,
                          int month) G_GNUC_WARN_UNUSED_RESULT;

/* "Aug", of a month from 1 to 12; (transfer none). */
const char *stead_month_short (int month);

/**
 * stead_date_order_from_locale:
 *
 * Returns: the order in which the locale of this moment writes a date of digits
 */
SteadDateOrder stead_date_order_from_locale (void);

/**
 * stead_day_parse:
 * @text: "2026-03-03", "3/3/2026", "3.3.26", "Mar 3", "3 March 2026", "3 de marzo",
 *   "today", "yesterday"
 * @today: the present day: fills a missing year with the one that puts the day
 *   nearest to, and not more than a week after, @today; a two-digit year goes
 *   to the century that puts it nearest to @today
 * @order: how to read digits with slashes, points or dashes
 * @out_day: (out): the day
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE with @error set and @out_day left alone
 */
gboolean stead_day_parse (const char      *text,
                          SteadDay         today,
                          SteadDateOrder   order,
                          SteadDay        *out_day,
                          GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_school_year_start:
 * @day: a valid day
 * @month: the month in which the farm's school year begins, 1 to 12
 * @mday: the day of that month
 *
 * Returns: the first day of the school year that @day lies in
 */
SteadDay stead_school_year_start (SteadDay day,
                                  int      month,
                                  int      mday);

/**
 * stead_age_weeks:
 * @hatched: the day of hatching
 * @day: a day
 *
 * Returns: age in weeks, fractions kept; negative before hatching
 */
double stead_age_weeks (SteadDay hatched,
                        SteadDay day);

G_END_DECLS

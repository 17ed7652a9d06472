/* stead-calendar-text.c - days as people write them.
 *
 * Names of months and days are this program's own words, so that a Spanish
 * window never shows an English month; only the order follows the locale.
 */
#include "config.h"

#include "core/stead-calendar.h"
#include "core/stead-core-error.h"
#include "core/stead-number-private.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>
#include <stdlib.h>
#include <string.h>

static const char * const month_names[] = {
  N_("January"), N_("February"), N_("March"), N_("April"), NC_("month", "May"), N_("June"),
  N_("July"), N_("August"), N_("September"), N_("October"), N_("November"), N_("December"),
};

static const char * const short_month_names[] = {
  NC_("short month", "Jan"), NC_("short month", "Feb"), NC_("short month", "Mar"),
  NC_("short month", "Apr"), NC_("short month", "May"), NC_("short month", "Jun"),
  NC_("short month", "Jul"), NC_("short month", "Aug"), NC_("short month", "Sep"),
  NC_("short month", "Oct"), NC_("short month", "Nov"), NC_("short month", "Dec"),
};

static const char * const weekday_names[] = {
  N_("Monday"), N_("Tuesday"), N_("Wednesday"), N_("Thursday"), N_("Friday"), N_("Saturday"),
  N_("Sunday"),
};

/* Spanish is read in every locale: one school writes both. */
static const char * const spanish_months[] = {
  "enero", "febrero", "marzo", "abril", "mayo", "junio",
  "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre",
};

static const char * const spanish_weekdays[] = {
  "lunes", "martes", "miercoles", "jueves", "viernes", "sabado", "domingo",
};

static const char *
month_name (int month)
{
  return month == 5 ? g_dpgettext2 (GETTEXT_PACKAGE, "month", month_names[4])
                    : _(month_names[month - 1]);
}

static const char *
short_month_name (int month)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "short month", short_month_names[month - 1]);
}

char *
stead_month_format (int year,
                    int month)
{
  g_return_val_if_fail (month >= 1 && month <= 12, NULL);

  /* Translators: a month and a year: "August 2026". */
  return g_strdup_printf (C_("a month", "%1$s %2$d"), month_name (month), year);
}

const char *
stead_month_short (int month)
{
  g_return_val_if_fail (month >= 1 && month <= 12, NULL);
  return short_month_name (month);
}

SteadDateOrder
stead_date_order_from_locale (void)
{
  SteadDateOrder order = STEAD_DATE_ORDER_MDY;
  const char *format = nl_langinfo (D_FMT);
  const char *day = strpbrk (format, "de");
  const char *month = strpbrk (format, "mbB");
  const char *year = strpbrk (format, "yYGF");

  /* "%D" is the C locale's short form of %m/%d/%y. */
  if (strchr (format, 'F') != NULL)
    return STEAD_DATE_ORDER_YMD;
  if (day == NULL || month == NULL)
    return order;
  if (year != NULL && year < month)
    order = STEAD_DATE_ORDER_YMD;
  else if (day < month)
    order = STEAD_DATE_ORDER_DMY;
  return order;
}

char *
stead_day_format (SteadDay      day,
                  SteadDayStyle style)
{
  gboolean day_first;
  int year;
  int month;
  int mday;

  g_return_val_if_fail (stead_day_is_valid (day), NULL);

  stead_day_split (day, &year, &month, &mday);
  day_first = stead_date_order_from_locale () == STEAD_DATE_ORDER_DMY;
  switch (style)
    {
    case STEAD_DAY_STYLE_SHORT:
      return day_first
        /* Translators: day, short month: "3 Mar". */
        ? g_strdup_printf (_("%1$d %2$s"), mday, short_month_name (month))
        /* Translators: short month, day: "Mar 3".  Put them in your language's order. */
        : g_strdup_printf (_("%1$s %2$d"), short_month_name (month), mday);
    case STEAD_DAY_STYLE_MEDIUM:
      return day_first
        /* Translators: day, short month, year: "3 Mar 2026". */
        ? g_strdup_printf (_("%1$d %2$s %3$d"), mday, short_month_name (month), year)
        /* Translators: short month, day, year: "Mar 3, 2026".  In your language's order. */
        : g_strdup_printf (_("%1$s %2$d, %3$d"), short_month_name (month), mday, year);
    case STEAD_DAY_STYLE_LONG:
      return day_first
        /* Translators: weekday, day, month: "Tuesday, 3 March". */
        ? g_strdup_printf (_("%1$s, %2$d %3$s"), _(weekday_names[stead_day_weekday (day) - 1]),
                           mday, month_name (month))
        /* Translators: weekday, month, day: "Tuesday, March 3".  In your language's order. */
        : g_strdup_printf (_("%1$s, %2$s %3$d"), _(weekday_names[stead_day_weekday (day) - 1]),
                           month_name (month), mday);
    case STEAD_DAY_STYLE_ENGLISH:
      return g_strdup_printf ("%s %d, %d", short_month_names[month - 1], mday, year);
    case STEAD_DAY_STYLE_ISO:
    default:
      return g_strdup_printf ("%04d-%02d-%02d", year, month, mday);
    }
}

#define NO_YEAR (-1)

/* The parts that a text gave; 0: not given. */
typedef struct
{
  int  numbers[3];
  int  digits[3];     /* how many digits each was typed with */
  char separators[2]; /* what stood between them */
  int  n_numbers;
  int  month;         /* named, 1 to 12 */
  int  month_at;      /* how many numbers stood before the name */
} Parts;

static gboolean
set_not_a_day (const char  *text,
               GError     **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” is not a date. Type one such as 2026-03-03 or Mar 3."), text);
  return FALSE;
}

/* Lower case, without accents and points. */
static char *
fold_word (const char *text,
           gsize       length)
{
  g_autofree char *word = g_strndup (text, length);
  g_autofree char *wide = g_utf8_normalize (word, -1, G_NORMALIZE_DEFAULT);
  g_autofree char *lower = g_utf8_strdown (wide != NULL ? wide : word, -1);
  GString *out = g_string_new (NULL);

  for (const char *p = lower; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c != '.' && !g_unichar_ismark (c))
        g_string_append_unichar (out, c);
    }
  return g_string_free (out, FALSE);
}

/* Whether @word is @name or its beginning, three letters or more. */
static gboolean
begins_name (const char *word,
             const char *name)
{
  g_autofree char *folded = fold_word (name, strlen (name));

  return strlen (word) >= 3 && g_str_has_prefix (folded, word);
}

static int
month_of_word (const char *word)
{
  for (int i = 0; i < 12; i++)
    if (begins_name (word, month_names[i]) || begins_name (word, spanish_months[i])
        || begins_name (word, month_name (i + 1)))
      return i + 1;
  if (g_str_equal (word, "sept") || g_str_equal (word, "setiembre"))
    return 9;
  return 0;
}

/* Words that may stand in a date without telling which day it is. */
static gboolean
is_filler (const char *word)
{
  static const char * const fillers[] = { "st", "nd", "rd", "th", "of", "the", "de", "del", "el" };

  for (gsize i = 0; i < G_N_ELEMENTS (fillers); i++)
    if (g_str_equal (word, fillers[i]))
      return TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (weekday_names); i++)
    if (begins_name (word, weekday_names[i]) || begins_name (word, spanish_weekdays[i])
        || begins_name (word, _(weekday_names[i])))
      return TRUE;
  return FALSE;
}

static gboolean
take_word (const char *start,
           gsize       length,
           Parts      *parts)
{
  g_autofree char *word = fold_word (start, length);
  int month;

  if (*word == '\0')
    return TRUE;
  /* "mar" is March, not martes: months go first. */
  month = month_of_word (word);
  if (month == 0)
    return is_filler (word);
  if (parts->month != 0)
    return FALSE;
  parts->month = month;
  parts->month_at = parts->n_numbers;
  return TRUE;
}

static gboolean
take_number (const char *start,
             gsize       length,
             char        before,
             Parts      *parts)
{
  if (parts->n_numbers == 3 || length > 4)
    return FALSE;
  if (parts->n_numbers > 0)
    parts->separators[parts->n_numbers - 1] = before;
  parts->numbers[parts->n_numbers] = (int) strtol (start, NULL, 10);
  parts->digits[parts->n_numbers] = (int) length;
  parts->n_numbers++;
  return TRUE;
}

static gboolean
is_word_char (const char *p)
{
  return g_unichar_isalpha (g_utf8_get_char (p)) || *p == '.';
}

/* Cuts the text into numbers and words. */
static gboolean
scan_parts (const char *text,
            Parts      *parts)
{
  const char *p = text;
  char before = '\0';

  while (*p != '\0')
    {
      const char *start = p;

      if (g_ascii_isdigit (*p))
        {
          while (g_ascii_isdigit (*p))
            p++;
          if (!take_number (start, (gsize) (p - start), before, parts))
            return FALSE;
          before = '\0';
        }
      else if (g_unichar_isalpha (g_utf8_get_char (p)))
        {
          while (*p != '\0' && is_word_char (p))
            p = g_utf8_next_char (p);
          if (!take_word (start, (gsize) (p - start), parts))
            return FALSE;
        }
      else if (strchr (" ,/.-", *p) != NULL)
        {
          if (*p != ' ')
            before = *p;
          p++;
        }
      else
        return FALSE;
    }
  return TRUE;
}

/* A two-digit year goes to the century that puts the day nearest to today. */
static int
full_year (int      year,
           int      digits,
           SteadDay today)
{
  int this_year;
  int best;

  if (digits > 2)
    return year;
  stead_day_split (today, &this_year, NULL, NULL);
  best = this_year / 100 * 100 + year;
  if (best > this_year + 50)
    best -= 100;
  else if (best < this_year - 50)
    best += 100;
  return best;
}

/* The last such day that is not more than a week after today. */
static SteadDay
day_without_year (int      month,
                  int      mday,
                  SteadDay today)
{
  int year;

  stead_day_split (today, &year, NULL, NULL);
  /* 29 February may lie eight years back. */
  for (int y = year + 1; y >= year - 8; y--)
    {
      SteadDay day = stead_day_new (y, month, mday);

      if (day != STEAD_DAY_NONE && day <= today + 7)
        return day;
    }
  return STEAD_DAY_NONE;
}

/* Settles which of two numbers is the month; FALSE: it could be either. */
static gboolean
order_two (int             first,
           int             second,
           SteadDateOrder  order,
           int            *month,
           int            *mday)
{
  if (order == STEAD_DATE_ORDER_UNKNOWN)
    {
      if (first != second && first <= 12 && second <= 12)
        return FALSE;
      order = first > 12 ? STEAD_DATE_ORDER_DMY : STEAD_DATE_ORDER_MDY;
    }
  *month = order == STEAD_DATE_ORDER_DMY ? second : first;
  *mday = order == STEAD_DATE_ORDER_DMY ? first : second;
  return TRUE;
}

static gboolean
set_ambiguous (const char  *text,
               GError     **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” can be read in two ways. Type the month as a word, or use 2026-03-03."),
               text);
  return FALSE;
}

/* Year, month and day of @parts; *year is NO_YEAR without one. */
static gboolean
resolve (const Parts    *parts,
         const char     *text,
         SteadDay        today,
         SteadDateOrder  order,
         int            *year,
         int            *month,
         int            *mday,
         GError        **error)
{
  const int *n = parts->numbers;
  const int *d = parts->digits;
  gboolean year_first = d[0] == 4 || d[0] == 3;

  *year = NO_YEAR;
  if (parts->month != 0)
    {
      if (parts->n_numbers < 1 || parts->n_numbers > 2)
        return set_not_a_day (text, error);
      year_first = year_first && parts->n_numbers == 2;
      *month = parts->month;
      *mday = n[year_first ? 1 : 0];
      if (parts->n_numbers == 2)
        *year = full_year (n[year_first ? 0 : 1], d[year_first ? 0 : 1], today);
      return TRUE;
    }
  if (parts->n_numbers < 2 || parts->separators[0] == '\0')
    return set_not_a_day (text, error);
  if (parts->n_numbers == 2)
    {
      if (order == STEAD_DATE_ORDER_YMD)
        order = STEAD_DATE_ORDER_MDY;
      return order_two (n[0], n[1], order, month, mday) || set_ambiguous (text, error);
    }
  if (year_first || (order == STEAD_DATE_ORDER_YMD && d[2] <= 2))
    {
      *year = full_year (n[0], d[0], today);
      *month = n[1];
      *mday = n[2];
      return TRUE;
    }
  if (order == STEAD_DATE_ORDER_YMD)
    order = STEAD_DATE_ORDER_UNKNOWN;
  *year = full_year (n[2], d[2], today);
  return order_two (n[0], n[1], order, month, mday) || set_ambiguous (text, error);
}

/* "today", "yesterday" and their Spanish; %STEAD_DAY_NONE for other words. */
static SteadDay
day_of_word (const char *text,
             SteadDay    today)
{
  g_autofree char *word = fold_word (text, strlen (text));
  g_autofree char *today_word = fold_word (C_("day", "today"), strlen (C_("day", "today")));
  g_autofree char *yesterday_word = fold_word (C_("day", "yesterday"),
                                               strlen (C_("day", "yesterday")));

  if (g_str_equal (word, "today") || g_str_equal (word, "hoy") || g_str_equal (word, today_word))
    return today;
  if (g_str_equal (word, "yesterday") || g_str_equal (word, "ayer")
      || g_str_equal (word, yesterday_word))
    return today - 1;
  return STEAD_DAY_NONE;
}

static gboolean
set_no_such_day (const char  *text,
                 int          year,
                 GError     **error)
{
  if (year != NO_YEAR && (year < 1900 || year > 2199))
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                 _("“%s” is not in the years 1900 to 2199. Check the year."), text);
  else
    g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                 _("There is no day “%s” in the calendar. Check the month and the day."), text);
  return FALSE;
}

gboolean
stead_day_parse (const char      *text,
                 SteadDay         today,
                 SteadDateOrder   order,
                 SteadDay        *out_day,
                 GError         **error)
{
  g_autofree char *plain = NULL;
  Parts parts = { 0 };
  SteadDay day;
  int year;
  int month;
  int mday;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (stead_day_is_valid (today), FALSE);
  g_return_val_if_fail (out_day != NULL, FALSE);

  plain = stead_text_plain (text, error);
  if (plain == NULL)
    return FALSE;
  day = day_of_word (plain, today);
  if (day == STEAD_DAY_NONE)
    {
      if (!scan_parts (plain, &parts))
        return set_not_a_day (plain, error);
      if (!resolve (&parts, plain, today, order, &year, &month, &mday, error))
        return FALSE;
      day = year != NO_YEAR ? stead_day_new (year, month, mday) : day_without_year (month, mday, today);
      if (day == STEAD_DAY_NONE)
        return set_no_such_day (plain, year, error);
    }
  *out_day = day;
  return TRUE;
}

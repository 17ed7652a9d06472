/* stead-number.c - numbers as people write them.
 *
 * Two ways of writing are in use round the world, 1,234.5 and 1.234,5, and
 * both are met in one school.  What a text can only mean in one way is read
 * that way; only a single comma or point with exactly three digits after it
 * is read as the locale reads it.
 */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-number-private.h"
#include "core/stead-quantity.h"
#include "core/stead-round.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define MAX_GROUPS 8

static const struct { gunichar sign; const char *text; } vulgar_fractions[] = {
  { 0x00BC, " 1/4" }, { 0x00BD, " 1/2" }, { 0x00BE, " 3/4" }, { 0x2150, " 1/7" },
  { 0x2151, " 1/9" }, { 0x2152, " 1/10" }, { 0x2153, " 1/3" }, { 0x2154, " 2/3" },
  { 0x2155, " 1/5" }, { 0x2156, " 2/5" }, { 0x2157, " 3/5" }, { 0x2158, " 4/5" },
  { 0x2159, " 1/6" }, { 0x215A, " 5/6" }, { 0x215B, " 1/8" }, { 0x215C, " 3/8" },
  { 0x215D, " 5/8" }, { 0x215E, " 7/8" },
};

/* A run of digits and the separator in front of it. */
typedef struct
{
  char        separator;
  const char *digits;
  gsize       length;
} Group;

SteadNumberStyle
stead_number_style (void)
{
  const char *name = setlocale (LC_NUMERIC, NULL);
  SteadNumberStyle style = { nl_langinfo (RADIXCHAR), nl_langinfo (THOUSEP),
                             localeconv ()->grouping };

  /* Without a locale the program speaks American English, grouping included. */
  if (name == NULL || g_str_equal (name, "C") || g_str_equal (name, "POSIX")
      || g_str_has_prefix (name, "C."))
    return (SteadNumberStyle) { ".", ",", "\3" };
  return style;
}

void
stead_number_append_grouped (GString    *text,
                             const char *digits)
{
  SteadNumberStyle style = stead_number_style ();
  const char *sizes = style.grouping;
  gsize left = strlen (digits);
  gsize breaks[32];
  gsize n_breaks = 0;

  /* From the point leftwards; the last size repeats, CHAR_MAX or 0 ends it. */
  while (*style.separator != '\0' && *sizes > 0 && *sizes < G_MAXINT8
         && left > (gsize) *sizes && n_breaks < G_N_ELEMENTS (breaks))
    {
      left -= (gsize) *sizes;
      breaks[n_breaks++] = left;
      if (sizes[1] != 0)
        sizes++;
    }
  for (gsize i = 0; digits[i] != '\0'; i++)
    {
      if (n_breaks > 0 && i == breaks[n_breaks - 1])
        {
          g_string_append (text, style.separator);
          n_breaks--;
        }
      g_string_append_c (text, digits[i]);
    }
}

static const char *
vulgar_fraction (gunichar c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (vulgar_fractions); i++)
    if (vulgar_fractions[i].sign == c)
      return vulgar_fractions[i].text;
  return NULL;
}

static gboolean
is_dash (gunichar c)
{
  return c == '-' || c == 0x2212 || (c >= 0x2010 && c <= 0x2015) || c == 0xFE63 || c == 0xFF0D;
}

static void
append_plain (GString  *plain,
              gunichar  c)
{
  const char *fraction = vulgar_fraction (c);

  if (fraction != NULL)
    g_string_append (plain, fraction);
  else if (g_unichar_isdigit (c))
    g_string_append_c (plain, (char) ('0' + g_unichar_digit_value (c)));
  else if (is_dash (c))
    g_string_append_c (plain, '-');
  else if (c == 0x2044 || c == 0x2215)
    g_string_append_c (plain, '/');
  else if (c == 0x2019)
    g_string_append_c (plain, '\'');
  else if (g_unichar_isspace (c) || c == 0x00A0 || c == 0x2007 || c == 0x202F)
    g_string_append_c (plain, ' ');
  else
    g_string_append_unichar (plain, c);
}

/* One space between words, none at the ends or beside a slash. */
static char *
squeeze_spaces (const char *text)
{
  GString *out = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p++)
    {
      char before = out->len > 0 ? out->str[out->len - 1] : ' ';

      if (*p == '/' && before == ' ' && out->len > 0)
        g_string_truncate (out, out->len - 1);
      if (*p != ' ' || (before != ' ' && before != '/'))
        g_string_append_c (out, *p);
    }
  if (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

char *
stead_text_plain (const char  *text,
                  GError     **error)
{
  g_autoptr(GString) spaced = NULL;
  g_autofree char *plain = NULL;

  g_return_val_if_fail (text != NULL, NULL);

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                           _("This is not readable text. Type it again."));
      return NULL;
    }
  if (strlen (text) > STEAD_TEXT_MAX)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                           _("This is too long. Type only the amount."));
      return NULL;
    }
  spaced = g_string_new (NULL);
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    append_plain (spaced, g_utf8_get_char (p));
  plain = squeeze_spaces (spaced->str);
  if (*plain == '\0')
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                           _("Nothing is typed here yet. Type an amount."));
      return NULL;
    }
  return g_steal_pointer (&plain);
}

static gsize
digits_at (const char *p)
{
  gsize n = 0;

  while (g_ascii_isdigit (p[n]))
    n++;
  return n;
}

/* Whether the character at @p goes on with the number that stands before it. */
static gboolean
is_separator (const char *p)
{
  gsize n;

  if (*p == '\0')
    return FALSE;
  n = digits_at (p + 1);
  if (*p == '.' || *p == ',')
    return n > 0;
  /* A space or an apostrophe groups thousands; "1 1/2" is another thing. */
  return (*p == ' ' || *p == '\'') && n == 3 && p[4] != '/';
}

static gsize
split_groups (const char *p,
              Group      *groups)
{
  gsize n = 0;

  groups[n++] = (Group) { '\0', p, digits_at (p) };
  p += groups[0].length;
  while (is_separator (p))
    {
      if (n == MAX_GROUPS)
        return 0;
      groups[n] = (Group) { *p, p + 1, digits_at (p + 1) };
      p += 1 + groups[n].length;
      n++;
    }
  return n;
}

/* Whether groups 0 to @n - 1 are a whole number with separators at the thousands. */
static gboolean
groups_are_whole (const Group *groups,
                  gsize        n)
{
  SteadNumberStyle style = stead_number_style ();
  gboolean pairs = style.grouping[0] == 3 && style.grouping[1] == 2;

  if (n == 1)
    return TRUE;
  if (groups[0].length < 1 || groups[0].length > 3 || groups[0].digits[0] == '0')
    return FALSE;
  for (gsize i = 1; i < n; i++)
    if (groups[i].separator != groups[1].separator
        || !(groups[i].length == 3 || (pairs && i < n - 1 && groups[i].length == 2)))
      return FALSE;
  return TRUE;
}

/* Whether the last group stands behind the decimal point. */
static gboolean
last_is_part (const Group *groups,
              gsize        n)
{
  char separator = groups[n - 1].separator;

  if (n == 1 || separator == ' ' || separator == '\'')
    return FALSE;
  if (n > 2)
    return separator != groups[n - 2].separator;
  if (!groups_are_whole (groups, n))
    return TRUE;
  return separator == *stead_number_style ().point;
}

/* A buffer holds as many digits as a whole text may have. */
static void
append_digits (char        *buffer,
               gsize        size,
               const Group *group)
{
  gsize used = strlen (buffer);
  gsize length = MIN (group->length, size - 1 - used);

  memcpy (buffer + used, group->digits, length);
  buffer[used + length] = '\0';
}

/* "007" is 7, "000" is 0. */
static void
strip_zeros (char *whole)
{
  gsize zeros = strspn (whole, "0");

  memmove (whole, whole + zeros, strlen (whole) + 1 - zeros);
  if (whole[0] == '\0')
    strcpy (whole, "0");
}

gboolean
stead_decimal_scan (const char   **cursor,
                    SteadDecimal  *out)
{
  Group groups[MAX_GROUPS];
  gsize n = split_groups (*cursor, groups);
  gsize n_whole;
  const char *end;
  SteadDecimal decimal = { "", "" };

  if (n == 0 || (n == 1 && groups[0].length == 0))
    return FALSE;
  n_whole = last_is_part (groups, n) ? n - 1 : n;
  if (!groups_are_whole (groups, n_whole))
    return FALSE;
  for (gsize i = 0; i < n_whole; i++)
    append_digits (decimal.whole, sizeof decimal.whole, &groups[i]);
  if (n_whole < n)
    append_digits (decimal.part, sizeof decimal.part, &groups[n - 1]);
  strip_zeros (decimal.whole);
  end = groups[n - 1].digits + groups[n - 1].length;
  /* "5." at the end of a word. */
  if (n_whole == n && *end == '.' && (end[1] == '\0' || end[1] == ' '))
    end++;
  *cursor = end;
  *out = decimal;
  return TRUE;
}

static gboolean
set_not_a_number (const char  *text,
                  GError     **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” is not a number. Type one such as 12, 4.5 or 1 1/2."), text);
  return FALSE;
}

static gboolean
check_size (double   value,
            GError **error)
{
  if (value <= STEAD_NUMBER_MAX)
    return TRUE;
  g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                       _("This number is too large. Check how many digits you typed."));
  return FALSE;
}

static double
decimal_value (const SteadDecimal *decimal)
{
  g_autofree char *text = g_strconcat (decimal->whole, ".", decimal->part, "0", NULL);

  return g_ascii_strtod (text, NULL);
}

/* "n/d" at *@cursor; FALSE with no error set if there is none. */
static gboolean
scan_fraction (const char **cursor,
               double      *out_value,
               GError     **error)
{
  gsize above = digits_at (*cursor);
  gsize below = above > 0 && (*cursor)[above] == '/' ? digits_at (*cursor + above + 1) : 0;
  double divisor;

  if (above == 0 || below == 0 || above > 6 || below > 6)
    return FALSE;
  divisor = g_ascii_strtod (*cursor + above + 1, NULL);
  if (divisor == 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
                           _("A fraction cannot have 0 below the line."));
      return FALSE;
    }
  *out_value = g_ascii_strtod (*cursor, NULL) / divisor;
  *cursor += above + 1 + below;
  return TRUE;
}

gboolean
stead_number_scan (const char **cursor,
                   double      *out_value,
                   GError     **error)
{
  const char *p = *cursor;
  SteadDecimal decimal;
  GError *fraction_error = NULL;
  double value;
  double fraction;

  if (scan_fraction (&p, &value, &fraction_error))
    {
      *cursor = p;
      *out_value = value;
      return TRUE;
    }
  if (fraction_error != NULL)
    {
      g_propagate_error (error, fraction_error);
      return FALSE;
    }
  if (!stead_decimal_scan (&p, &decimal))
    return set_not_a_number (*cursor, error);
  value = decimal_value (&decimal);

  if (decimal.part[0] == '\0' && (*p == ' ' || *p == '-'))
    {
      const char *q = p + 1;

      if (scan_fraction (&q, &fraction, &fraction_error))
        {
          if (fraction >= 1)
            return set_not_a_number (*cursor, error);
          value += fraction;
          p = q;
        }
      else if (fraction_error != NULL)
        {
          g_propagate_error (error, fraction_error);
          return FALSE;
        }
    }
  if (!check_size (value, error))
    return FALSE;
  *cursor = p;
  *out_value = value;
  return TRUE;
}

gboolean
stead_number_parse (const char  *text,
                    double      *out_value,
                    GError     **error)
{
  g_autofree char *plain = NULL;
  const char *cursor;
  gboolean negative;
  double value;

  g_return_val_if_fail (text != NULL, FALSE);
  g_return_val_if_fail (out_value != NULL, FALSE);

  plain = stead_text_plain (text, error);
  if (plain == NULL)
    return FALSE;
  cursor = plain;
  negative = *cursor == '-';
  if (*cursor == '-' || *cursor == '+')
    cursor += cursor[1] == ' ' ? 2 : 1;
  if (!stead_number_scan (&cursor, &value, error))
    return FALSE;
  if (*cursor != '\0')
    return set_not_a_number (plain, error);
  *out_value = negative ? -value : value;
  return TRUE;
}

char *
stead_number_format (double value,
                     int    max_digits)
{
  g_autofree char *digits = NULL;
  GString *text;
  char *point;
  gsize end;
  char buffer[400];

  g_return_val_if_fail (isfinite (value), NULL);
  g_return_val_if_fail (max_digits >= 0 && max_digits <= 6, NULL);

  value = stead_round_digits (value, max_digits);
  g_ascii_formatd (buffer, sizeof buffer, max_digits == 0 ? "%.0f" : "%.6f", fabs (value));
  point = strchr (buffer, '.');
  if (point != NULL)
    {
      end = strlen (buffer);
      while (buffer[end - 1] == '0')
        end--;
      buffer[end] = '\0';
    }
  digits = g_strndup (buffer, point != NULL ? (gsize) (point - buffer) : strlen (buffer));
  text = g_string_new (NULL);
  if (value < 0)
    g_string_append (text, "\xe2\x88\x92");
  stead_number_append_grouped (text, digits);
  if (point != NULL && point[1] != '\0')
    {
      g_string_append (text, stead_number_style ().point);
      g_string_append (text, point + 1);
    }
  return g_string_free (text, FALSE);
}

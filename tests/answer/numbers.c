/* numbers.c - the numbers that stand in a text. */
#include "numbers.h"

#include <math.h>
#include <string.h>

GArray *
numbers_in (const char *text)
{
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (double));
  const char *p = text;

  while (*p != '\0')
    {
      g_autoptr(GString) digits = g_string_new (NULL);
      gboolean minus;
      double value;

      if (!g_ascii_isdigit (*p))
        {
          p++;
          continue;
        }
      /* "−$1.20" and "−3": the sign stands before the symbol. */
      minus = (p - text >= 3 && strncmp (p - 3, "−", 3) == 0)
              || (p - text >= 4 && p[-1] == '$' && strncmp (p - 4, "−", 3) == 0);
      for (; g_ascii_isdigit (*p) || ((*p == ',' || *p == '.') && g_ascii_isdigit (p[1])); p++)
        if (*p != ',')
          g_string_append_c (digits, *p);
      value = g_ascii_strtod (digits->str, NULL) * (minus ? -1 : 1);
      g_array_append_val (numbers, value);
    }
  return numbers;
}

static gboolean
is_near (double a,
         double b)
{
  return fabs (a - b) <= 0.0051;
}

void
numbers_assert_among (const char   *text,
                      const double *allowed,
                      gsize         n_allowed)
{
  g_autoptr(GArray) numbers = numbers_in (text);

  for (guint i = 0; i < numbers->len; i++)
    {
      double value = g_array_index (numbers, double, i);
      gboolean found = FALSE;

      for (gsize k = 0; k < n_allowed && !found; k++)
        found = is_near (value, allowed[k]);
      if (!found)
        g_error ("%g is no figure in: %s", value, text);
    }
}

void
numbers_assert_are (const char   *text,
                    const double *expected,
                    gsize         n_expected)
{
  g_autoptr(GArray) numbers = numbers_in (text);

  if (numbers->len != n_expected)
    g_error ("%u numbers instead of %" G_GSIZE_FORMAT " in: %s", numbers->len, n_expected, text);
  numbers_assert_among (text, expected, n_expected);
  for (gsize k = 0; k < n_expected; k++)
    {
      gboolean found = FALSE;

      for (guint i = 0; i < numbers->len && !found; i++)
        found = is_near (g_array_index (numbers, double, i), expected[k]);
      if (!found)
        g_error ("%g is missing in: %s", expected[k], text);
    }
}

/* stead-record.c - codes of content standards, and points of events. */
#include "config.h"

#include "core/stead-record.h"

#include <math.h>
#include <string.h>

/* ".02" at *@text, which is moved on. */
static gboolean
skip_pair (const char **text)
{
  if ((*text)[0] != '.' || !g_ascii_isdigit ((*text)[1]) || !g_ascii_isdigit ((*text)[2]))
    return FALSE;
  *text += 3;
  return TRUE;
}

SteadStandardLevel
stead_standard_level (const char *code)
{
  gsize letters;
  int pairs = 0;

  g_return_val_if_fail (code != NULL, STEAD_STANDARD_NONE);

  letters = strspn (code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ");
  if (letters < 2 || letters > 3)
    return STEAD_STANDARD_NONE;
  code += letters;
  while (skip_pair (&code))
    pairs++;
  if (pairs == 3 && code[0] == '.' && code[1] >= 'a' && code[1] <= 'c' && code[2] == '\0')
    return STEAD_STANDARD_MEASUREMENT;
  if (*code != '\0' || pairs < 1 || pairs > 2)
    return STEAD_STANDARD_NONE;
  return pairs == 1 ? STEAD_STANDARD_STANDARD : STEAD_STANDARD_INDICATOR;
}

double
stead_event_points (const double *parts,
                    gsize         n_parts,
                    double        members,
                    double        each)
{
  double sum;

  g_return_val_if_fail (parts != NULL || n_parts == 0, NAN);

  if (!(members >= 0 && each >= 0))
    return NAN;
  sum = members * each;
  for (gsize i = 0; i < n_parts; i++)
    {
      if (!(parts[i] >= 0))
        return NAN;
      sum += parts[i];
    }
  return sum;
}

/* stead-sale-words.c - hours, places and kinds of the sale days in words. */
#include "config.h"

#include "answer/stead-sale-answer.h"

#include <glib/gi18n-lib.h>
#include <string.h>

char *
stead_sale_clock (int minute)
{
  g_autoptr(GDateTime) time = NULL;

  g_return_val_if_fail (minute >= 0 && minute <= 2880, NULL);
  time = g_date_time_new_utc (2000, 1, 1, minute % 1440 / 60, minute % 60, 0);
  /* Translators: a time of the day, as strftime() writes it: "9:30 AM" or "9:30". */
  return g_date_time_format (time, C_("time of day", "%-l:%M %p"));
}

/* "am", "p.m.", "a": -1 none, 0 morning, 1 afternoon, -2 something else. */
static int
half_of_day (const char *text)
{
  g_autofree char *letters = g_ascii_strdown (text, -1);
  GString *kept = g_string_new (NULL);
  g_autofree char *word = NULL;

  for (const char *c = letters; *c != '\0'; c++)
    if (!g_ascii_isspace (*c) && *c != '.')
      g_string_append_c (kept, *c);
  word = g_string_free (kept, FALSE);
  if (*word == '\0' || strcmp (word, "h") == 0)
    return -1;
  if (strcmp (word, "a") == 0 || strcmp (word, "am") == 0)
    return 0;
  return strcmp (word, "p") == 0 || strcmp (word, "pm") == 0 ? 1 : -2;
}

gboolean
stead_sale_clock_parse (const char *text,
                        int        *out_minute)
{
  char *end = NULL;
  gint64 hour, minute = 0;
  int half;

  g_return_val_if_fail (text != NULL && out_minute != NULL, FALSE);
  while (g_ascii_isspace (*text))
    text++;
  if (!g_ascii_isdigit (*text))
    return FALSE;
  hour = g_ascii_strtoll (text, &end, 10);
  if ((*end == ':' || *end == '.') && g_ascii_isdigit (end[1]))
    minute = g_ascii_strtoll (end + 1, &end, 10);
  half = half_of_day (end);
  if (half == -2 || minute > 59 || hour > (half >= 0 ? 12 : 23) || (half >= 0 && hour == 0))
    return FALSE;
  if (half >= 0)
    hour = hour % 12 + 12 * half;
  *out_minute = (int) (hour * 60 + minute);
  return TRUE;
}

char *
stead_sale_when (const SteadSale *sale)
{
  g_autofree char *day = NULL;
  g_autofree char *opens = NULL;
  g_autofree char *closes = NULL;

  g_return_val_if_fail (sale != NULL, NULL);
  day = stead_day_format (sale->day, STEAD_DAY_STYLE_LONG);
  opens = stead_sale_clock (sale->opens_min);
  closes = stead_sale_clock (sale->closes_min);
  if (sale->location == NULL)
    /* Translators: a day, and two times of the day. */
    return g_strdup_printf (_("%s, %s to %s"), day, opens, closes);
  /* Translators: a day, two times of the day, and where. */
  return g_strdup_printf (_("%s, %s to %s, %s"), day, opens, closes, sale->location);
}

const char *
stead_sale_left_name (SteadLeftPlace goes_to)
{
  switch (goes_to)
    {
    case STEAD_LEFT_STORE: return _("Back to the store room");
    case STEAD_LEFT_KITCHEN: return _("For the kitchen");
    case STEAD_LEFT_GIVEN: return _("Donated");
    case STEAD_LEFT_WASTE: return _("Thrown away or missing");
    default: g_return_val_if_reached ("");
    }
}

const char *
stead_sale_tap_name (SteadTapKind kind)
{
  switch (kind)
    {
    case STEAD_TAP_SOLD: return C_("tally", "Sold");
    case STEAD_TAP_SAMPLE: return C_("tally", "Sample");
    case STEAD_TAP_GIVEN: return C_("tally", "Given away");
    case STEAD_TAP_SPOILED: return C_("tally", "Spoiled");
    default: g_return_val_if_reached ("");
    }
}

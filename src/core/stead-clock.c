/* stead-clock.c - times of the day and their text. */
#include "config.h"

#include "core/stead-clock.h"
#include "core/stead-core-error.h"

#include <glib/gi18n-lib.h>
#include <langinfo.h>

#define DAY_MINUTES (24 * 60)

char *
stead_minute_format (int minute)
{
  g_autoptr(GDateTime) moment = NULL;

  if (!(minute >= 0 && minute < DAY_MINUTES))
    return g_strdup ("");
  moment = g_date_time_new_utc (2001, 1, 1, minute / 60, minute % 60, 0);
  return g_date_time_format (moment, *nl_langinfo (AM_STR) != '\0' ? "%-I:%M %p" : "%-H:%M");
}

static gboolean
refuse (const char  *text,
        GError     **error)
{
  g_set_error (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_PARSE,
               _("“%s” is no time of the day. Enter it as 7:30 or 7:30 pm."), text);
  return FALSE;
}

/* Hours of a clock with morning ('a') and afternoon ('p'); -1 if there is no such hour. */
static int
full_hour (int  hour,
           char half)
{
  if (half == '\0')
    return hour < 24 ? hour : -1;
  if (hour < 1 || hour > 12)
    return -1;
  return hour % 12 + (half == 'p' ? 12 : 0);
}

gboolean
stead_minute_parse (const char  *text,
                    int         *out_minute,
                    GError     **error)
{
  static GRegex *form = NULL;
  g_autoptr(GMatchInfo) match = NULL;
  g_autofree char *trimmed = NULL, *hours = NULL, *minutes = NULL, *half = NULL;
  int hour, minute;

  g_return_val_if_fail (text != NULL && out_minute != NULL, FALSE);
  if (g_once_init_enter (&form))
    g_once_init_leave (&form, g_regex_new ("^(\\d{1,2}?)(?:[:.h]?(\\d{2}))?\\s*(?:([ap])\\.?\\s?m\\.?)?$",
                                           G_REGEX_CASELESS | G_REGEX_OPTIMIZE, 0, NULL));
  trimmed = g_strstrip (g_strdup (text));
  if (*trimmed == '\0')
    {
      *out_minute = STEAD_MINUTE_NONE;
      return TRUE;
    }
  if (!g_regex_match (form, trimmed, 0, &match))
    return refuse (trimmed, error);
  hours = g_match_info_fetch (match, 1);
  minutes = g_match_info_fetch (match, 2);
  half = g_match_info_fetch (match, 3);
  hour = full_hour ((int) g_ascii_strtoll (hours, NULL, 10), half != NULL ? g_ascii_tolower (*half) : '\0');
  minute = minutes != NULL && *minutes != '\0' ? (int) g_ascii_strtoll (minutes, NULL, 10) : 0;
  if (hour < 0 || minute > 59)
    return refuse (trimmed, error);
  *out_minute = hour * 60 + minute;
  return TRUE;
}

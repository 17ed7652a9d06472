/* stead-ics.c - days and times as an open calendar file (RFC 5545). */
#include "config.h"

#include "core/stead-ics.h"

#include <string.h>

#define NEW_LINE "\r\n"
#define LONGEST_LINE 75   /* octets, the line break not counted (3.1) */
#define SECONDS_A_DAY 86400

void
stead_ics_thing_free (SteadIcsThing *thing)
{
  if (thing == NULL)
    return;
  g_free (thing->uid);
  g_free (thing->summary);
  g_free (thing->note);
  g_free (thing->place);
  g_free (thing);
}

/* Folded between two letters, never within one; what follows begins with a blank. */
static void
add_line (GString    *out,
          const char *line)
{
  gsize room = LONGEST_LINE;

  for (const char *at = line; *at != '\0'; at = g_utf8_next_char (at))
    {
      gsize size = (gsize) (g_utf8_next_char (at) - at);

      if (size > room)
        {
          g_string_append (out, NEW_LINE " ");
          room = LONGEST_LINE - 1;
        }
      g_string_append_len (out, at, (gssize) size);
      room -= size;
    }
  g_string_append (out, NEW_LINE);
}

/* A value of type TEXT: backslash, semicolon and comma are escaped, a line break is \n;
 * other control signs may not stand in it (3.3.11). */
static void
add_text (GString    *out,
          const char *property,
          const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autoptr(GString) line = g_string_new (property);

  g_string_append_c (line, ':');
  for (const char *at = valid; *at != '\0'; at++)
    {
      if (strchr ("\\;,", *at) != NULL)
        g_string_append_printf (line, "\\%c", *at);
      else if (*at == '\n' || (*at == '\r' && at[1] != '\n'))
        g_string_append (line, "\\n");
      else if (*at == '\t' || !g_ascii_iscntrl (*at))
        g_string_append_c (line, *at);
    }
  add_line (out, line->str);
}

static void
add_day (GString    *out,
         const char *property,
         SteadDay    day)
{
  int year, month, mday;

  stead_day_split (day, &year, &month, &mday);
  g_string_append_printf (out, "%s;VALUE=DATE:%04d%02d%02d" NEW_LINE, property, year, month, mday);
}

static void
add_moment (GString    *out,
            const char *property,
            gint64      at)
{
  SteadDay day = (SteadDay) (at / SECONDS_A_DAY - (at % SECONDS_A_DAY < 0));
  int second = (int) (at - (gint64) day * SECONDS_A_DAY);
  int year, month, mday;

  stead_day_split (day, &year, &month, &mday);
  g_string_append_printf (out, "%s:%04d%02d%02dT%02d%02d%02dZ" NEW_LINE, property, year, month, mday,
                          second / 3600, second / 60 % 60, second % 60);
}

/* Of a day UNTIL is a day, as DTSTART is (3.3.10). */
static void
add_again (GString             *out,
           const SteadIcsThing *thing)
{
  int year, month, mday;

  if (thing->every_days <= 0 || thing->day == STEAD_DAY_NONE || thing->until < thing->day + thing->every_days)
    return;
  stead_day_split (thing->until, &year, &month, &mday);
  g_string_append_printf (out, "RRULE:FREQ=DAILY;INTERVAL=%d;UNTIL=%04d%02d%02d" NEW_LINE, thing->every_days, year, month,
                          mday);
}

/* The end is the first day, or the first moment, that no longer belongs to it (3.6.1). */
static void
add_thing (GString             *out,
           const SteadIcsThing *thing,
           gint64               made_at)
{
  g_string_append (out, "BEGIN:VEVENT" NEW_LINE);
  add_text (out, "UID", thing->uid);
  add_moment (out, "DTSTAMP", made_at);
  if (thing->day != STEAD_DAY_NONE)
    {
      add_day (out, "DTSTART", thing->day);
      add_day (out, "DTEND", thing->day + 1);
      add_again (out, thing);
    }
  else
    {
      add_moment (out, "DTSTART", thing->from_at);
      add_moment (out, "DTEND", thing->to_at);
    }
  add_text (out, "SUMMARY", thing->summary);
  if (thing->note != NULL)
    add_text (out, "DESCRIPTION", thing->note);
  if (thing->place != NULL)
    add_text (out, "LOCATION", thing->place);
  g_string_append_printf (out, "TRANSP:%s" NEW_LINE "END:VEVENT" NEW_LINE, thing->busy ? "OPAQUE" : "TRANSPARENT");
}

char *
stead_ics_write (const GPtrArray *things,
                 const char      *name,
                 gint64           made_at)
{
  GString *out = g_string_new ("BEGIN:VCALENDAR" NEW_LINE "VERSION:2.0" NEW_LINE
                               "PRODID:-//Steading//School farm//EN" NEW_LINE "CALSCALE:GREGORIAN" NEW_LINE
                               "METHOD:PUBLISH" NEW_LINE);

  g_return_val_if_fail (things != NULL && name != NULL, NULL);
  add_text (out, "NAME", name);   /* RFC 7986 (2016), 5.1 */
  for (guint i = 0; i < things->len; i++)
    add_thing (out, things->pdata[i], made_at);
  g_string_append (out, "END:VCALENDAR" NEW_LINE);
  return g_string_free (out, FALSE);
}

/* test-ics.c - an open calendar, held against the rules of RFC 5545 (2009). */
#include "config.h"

#include <string.h>

#include "core/stead-ics.h"

static SteadIcsThing *
thing_new (const char *uid,
           const char *summary,
           SteadDay    day)
{
  SteadIcsThing *thing = g_new0 (SteadIcsThing, 1);

  thing->uid = g_strdup (uid);
  thing->summary = g_strdup (summary);
  thing->day = day;
  return thing;
}

static GPtrArray *
things_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) stead_ics_thing_free);
}

/* Each line ends in CR LF and holds at most 75 octets of whole letters (3.1). */
static GPtrArray *
unfold (const char *ics)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_auto(GStrv) raw = g_strsplit (ics, "\r\n", -1);
  guint n = g_strv_length (raw);

  g_assert_cmpstr (raw[n - 1], ==, "");
  for (guint i = 0; i + 1 < n; i++)
    {
      g_assert_cmpuint (strlen (raw[i]), <=, 75);
      g_assert_true (g_utf8_validate (raw[i], -1, NULL));
      g_assert_null (strpbrk (raw[i], "\r\n"));
      if (raw[i][0] == ' ')
        {
          char *last = lines->pdata[lines->len - 1];

          lines->pdata[lines->len - 1] = g_strconcat (last, raw[i] + 1, NULL);
          g_free (last);
        }
      else
        g_ptr_array_add (lines, g_strdup (raw[i]));
    }
  return lines;
}

static gboolean
has_line (GPtrArray  *lines,
          const char *wanted)
{
  for (guint i = 0; i < lines->len; i++)
    if (g_str_equal (lines->pdata[i], wanted))
      return TRUE;
  return FALSE;
}

static void
test_fold (void)
{
  g_autoptr(GPtrArray) things = things_new ();
  g_autoptr(GPtrArray) lines = NULL;
  g_autofree char *ics = NULL;
  GString *long_text = g_string_new ("SUMMARY:");

  for (int i = 0; i < 60; i++)
    g_string_append (long_text, i % 3 == 0 ? "鶏" : i % 3 == 1 ? "👩‍🌾" : "é");
  g_ptr_array_add (things, thing_new ("a", long_text->str + strlen ("SUMMARY:"), stead_day_new (2026, 3, 3)));
  ics = stead_ics_write (things, "Farm", 0);
  lines = unfold (ics);
  g_assert_true (has_line (lines, long_text->str));
  g_string_free (long_text, TRUE);
}

/* 3.3.11 gives this example of an escaped value. */
static void
test_escape (void)
{
  g_autoptr(GPtrArray) things = things_new ();
  g_autoptr(GPtrArray) lines = NULL;
  g_autofree char *ics = NULL;
  SteadIcsThing *thing = thing_new ("a", "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.",
                                    stead_day_new (2026, 3, 3));

  thing->place = g_strdup ("Gym; left, by \\stairs\r\nEND:VEVENT");
  g_ptr_array_add (things, thing);
  ics = stead_ics_write (things, "Farm", 0);
  lines = unfold (ics);
  g_assert_true (has_line (lines, "SUMMARY:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared."));
  g_assert_true (has_line (lines, "LOCATION:Gym\\; left\\, by \\\\stairs\\nEND:VEVENT"));
}

/* 3.3.10: every ten days; a whole day ends on the next (3.6.1, third example); a moment in
 * universal time as "19980119T070000Z" (3.3.5), which is 885193200 (date -u -d @885193200). */
static void
test_times (void)
{
  g_autoptr(GPtrArray) things = things_new ();
  g_autoptr(GPtrArray) lines = NULL;
  g_autofree char *ics = NULL;
  SteadIcsThing *sale = thing_new ("sale", "Sale", STEAD_DAY_NONE);
  SteadIcsThing *task = thing_new ("task", "Weigh", stead_day_new (2024, 2, 29));

  sale->from_at = 885193200;
  sale->to_at = 885193200 + 90 * 60;
  sale->busy = TRUE;
  task->every_days = 10;
  task->until = stead_day_new (2024, 3, 31);
  g_ptr_array_add (things, sale);
  g_ptr_array_add (things, task);
  ics = stead_ics_write (things, "Farm", 885193200);
  lines = unfold (ics);
  g_assert_true (has_line (lines, "DTSTART:19980119T070000Z"));
  g_assert_true (has_line (lines, "DTEND:19980119T083000Z"));
  g_assert_true (has_line (lines, "DTSTAMP:19980119T070000Z"));
  g_assert_true (has_line (lines, "DTSTART;VALUE=DATE:20240229"));
  g_assert_true (has_line (lines, "DTEND;VALUE=DATE:20240301"));
  g_assert_true (has_line (lines, "RRULE:FREQ=DAILY;INTERVAL=10;UNTIL=20240331"));
  g_assert_true (has_line (lines, "TRANSP:OPAQUE"));
}

/* 3.6: VERSION and PRODID once, before what is in it; 3.6.1: UID and DTSTAMP in each. */
static void
test_whole (void)
{
  g_autoptr(GPtrArray) things = things_new ();
  g_autoptr(GPtrArray) lines = NULL;
  g_autofree char *ics = NULL;
  guint begins = 0, ends = 0, uids = 0, stamps = 0;

  g_ptr_array_add (things, thing_new ("a", "One", stead_day_new (2026, 3, 3)));
  g_ptr_array_add (things, thing_new ("b", "Two", stead_day_new (2026, 3, 4)));
  ics = stead_ics_write (things, "Farm", 0);
  lines = unfold (ics);
  g_assert_cmpstr (lines->pdata[0], ==, "BEGIN:VCALENDAR");
  g_assert_cmpstr (lines->pdata[1], ==, "VERSION:2.0");
  g_assert_true (g_str_has_prefix (lines->pdata[2], "PRODID:"));
  g_assert_cmpstr (lines->pdata[lines->len - 1], ==, "END:VCALENDAR");
  for (guint i = 0; i < lines->len; i++)
    {
      begins += g_str_equal (lines->pdata[i], "BEGIN:VEVENT");
      ends += g_str_equal (lines->pdata[i], "END:VEVENT");
      uids += g_str_has_prefix (lines->pdata[i], "UID:");
      stamps += g_str_has_prefix (lines->pdata[i], "DTSTAMP:");
    }
  g_assert_cmpuint (begins, ==, 2);
  g_assert_cmpuint (ends, ==, 2);
  g_assert_cmpuint (uids, ==, 2);
  g_assert_cmpuint (stamps, ==, 2);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/ics/fold", test_fold);
  g_test_add_func ("/core/ics/escape", test_escape);
  g_test_add_func ("/core/ics/times", test_times);
  g_test_add_func ("/core/ics/whole", test_whole);
  return g_test_run ();
}

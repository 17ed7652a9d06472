/* check-hours.c - the topics on hours of work, digging and permits. */
#include "check-food.h"

#include "core/stead-dig.h"
#include "core/stead-hours.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Any day with clocks of 24 hours. */
#define SOME_DAY 0

static double
minutes_of (CheckRow   *row,
            const char *name)
{
  double value = check_number_or (row, name, 0);

  if (value >= 0 && value <= 1440 && value == floor (value))
    return value;
  return check_bad_input (row, name);
}

/* HH:MM, or with a day before it. */
static void
read_clock (CheckRow   *row,
            const char *name,
            const char *text,
            SteadDay   *out_day,
            int        *out_minute)
{
  const char *clock = strchr (text, 'T');
  int hour = 0, minute = 0, used = 0;

  if (clock != NULL)
    {
      g_autofree char *day = g_strndup (text, (gsize) (clock - text));

      *out_day = check_day_of (row, name, day);
    }
  clock = clock != NULL ? clock + 1 : text;
  if (strlen (clock) != 5 || sscanf (clock, "%2d:%2d%n", &hour, &minute, &used) != 2 || used != 5
      || hour < 0 || hour > 23 || minute < 0 || minute > 59)
    check_bad_input (row, name);
  *out_minute = 60 * hour + minute;
}

static SteadWork
work_of (CheckRow *row)
{
  SteadWork work = { .day = SOME_DAY };
  SteadDay end_day = SOME_DAY;

  read_clock (row, "start", check_text (row, "start"), &work.day, &work.start);
  read_clock (row, "end", check_text (row, "end"), &end_day, &work.end);
  work.next_day = check_yes (row, "next_day", 0);
  work.meal_min = (int) minutes_of (row, "meal_min");
  work.rest_min = (int) minutes_of (row, "rest_min");
  if (end_day == work.day + 1)
    work.next_day = TRUE;
  else if (end_day != work.day)
    check_bad_input (row, "end");
  return work;
}

/* work hours */

static double
listed_minutes (CheckRow *row)
{
  gsize n = 0;
  const double *entries = check_list (row, "entries_min", &n);
  g_autofree SteadHoursEntry *list = g_new0 (SteadHoursEntry, n);
  SteadHoursSum sum;

  for (gsize i = 0; i < n; i++)
    {
      if (!(entries[i] >= 0 && entries[i] == floor (entries[i])))
        return check_bad_input (row, "entries_min");
      list[i].minutes = (gint64) entries[i];
    }
  stead_hours_sum (list, n, 0, &sum);
  return (double) sum.unpaid_min;
}

static double
worked_minutes (CheckRow *row)
{
  SteadWork work;
  g_autoptr(GTimeZone) zone = NULL;
  g_autoptr(GError) error = NULL;
  int minutes;

  if (check_has (row, "entries_min"))
    return listed_minutes (row);
  work = work_of (row);
  if (check_has (row, "zone"))
    {
      zone = g_time_zone_new_identifier (check_text (row, "zone"));
      if (zone == NULL)
        return check_bad_input (row, "zone");
    }
  if (!stead_work_minutes (&work, zone, &minutes, NULL, &error))
    return check_answer_none (row, error);
  return minutes;
}

static double
worked_hours (CheckRow *row)
{
  double minutes = worked_minutes (row);

  return isnan (minutes) ? NAN : stead_hours_of_minutes ((gint64) minutes);
}

static double
worked_text (CheckRow *row)
{
  double minutes = worked_minutes (row);
  g_autofree char *text = NULL;

  if (!(minutes >= 0))
    return NAN;
  text = stead_hours_format ((gint64) minutes);
  return check_answer_word (row, text);
}

static double
worked_verdict (CheckRow *row)
{
  double minutes = worked_minutes (row);

  return check_answer_word (row, !isnan (minutes) && stead_work_is_likely ((int) minutes) ? "accept" : "reject");
}

static const CheckAsk work_asks[] = {
  { "hours", "h", worked_hours },
  { "minutes", "min", worked_minutes },
  { "h_mm", "text", worked_text },
  { "verdict", "text", worked_verdict },
  { NULL }
};

/* quarter hour rounding */

static double
quarter_minutes (CheckRow *row)
{
  check_need (row, "minutes_past");
  return stead_quarter_round ((int) minutes_of (row, "minutes_past"));
}

static double
quarter_clock (CheckRow *row)
{
  SteadDay day = SOME_DAY;
  int minute = 0;
  g_autofree char *text = NULL;

  read_clock (row, "clock", check_text (row, "clock"), &day, &minute);
  minute = stead_quarter_round (minute) % 1440;
  text = g_strdup_printf ("%02d:%02d", minute / 60, minute % 60);
  return check_answer_word (row, text);
}

static double
quarter_hours (CheckRow *row)
{
  SteadWork work = work_of (row);

  return stead_hours_of_minutes (stead_quarter_minutes (&work));
}

static const CheckAsk quarter_asks[] = {
  { "rounded_minutes", "min", quarter_minutes },
  { "clock", "text", quarter_clock },
  { "hours", "h", quarter_hours },
  { NULL }
};

/* group hours, hours summary */

static double
group_hours (CheckRow *row)
{
  double students = check_number (row, "students");
  double minutes = 60 * check_number (row, "hours_each_h");
  SteadHoursSum sum;
  g_autofree SteadHoursEntry *entries = NULL;

  if (!(students >= 0 && students <= 1000 && students == floor (students) && minutes >= 0
        && fabs (minutes - floor (minutes + 0.5)) < 1e-9))
    return check_bad_input (row, "students");
  entries = g_new0 (SteadHoursEntry, (gsize) students + 1);
  for (gsize i = 0; i < (gsize) students; i++)
    entries[i].minutes = (gint64) floor (minutes + 0.5);
  stead_hours_sum (entries, (gsize) students, 0, &sum);
  return stead_hours_of_minutes (sum.unpaid_min);
}

static const CheckAsk group_asks[] = {
  { "student_hours", "h", group_hours },
  { NULL }
};

/* The words of a list as long as @n; all of them @fallback if it is not there. */
static GStrv
words_of (CheckRow   *row,
          const char *name,
          guint       n,
          const char *fallback)
{
  g_autoptr(GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  g_auto(GStrv) given = NULL;

  if (check_has (row, name))
    {
      given = g_strsplit (check_text (row, name), "|", -1);
      if (g_strv_length (given) == n)
        return g_steal_pointer (&given);
      check_bad_input (row, name);
    }
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (words, g_strdup (fallback));
  g_ptr_array_add (words, NULL);
  return (GStrv) g_ptr_array_free (g_steal_pointer (&words), FALSE);
}

static gboolean
says_yes (CheckRow   *row,
          const char *name,
          const char *word)
{
  if (!g_str_equal (word, "yes") && !g_str_equal (word, "no"))
    check_bad_input (row, name);
  return g_str_equal (word, "yes");
}

/* One entry, as minutes; those of another activity than the one asked for are left out. */
static SteadHoursEntry *
read_entries (CheckRow *row,
              guint    *out_n)
{
  g_auto(GStrv) activity = g_strsplit (check_text (row, "activity"), "|", -1);
  guint n = g_strv_length (activity);
  g_auto(GStrv) start = words_of (row, "start", n, "");
  g_auto(GStrv) end = words_of (row, "end", n, "");
  g_auto(GStrv) next_day = words_of (row, "next_day", n, "no");
  g_auto(GStrv) meal = words_of (row, "meal_min", n, "0");
  g_auto(GStrv) paid = words_of (row, "paid", n, "no");
  g_auto(GStrv) pay = words_of (row, "pay_usd_h", n, "0");
  const char *asked = check_has (row, "activity_asked") ? check_text (row, "activity_asked") : NULL;
  SteadHoursEntry *entries = g_new0 (SteadHoursEntry, n + 1);

  *out_n = 0;
  for (guint i = 0; i < n; i++)
    {
      SteadWork work = { .day = SOME_DAY, .next_day = says_yes (row, "next_day", next_day[i]),
                         .meal_min = (int) g_ascii_strtod (meal[i], NULL) };
      SteadDay day = SOME_DAY;
      int minutes = 0;

      read_clock (row, "start", start[i], &day, &work.start);
      read_clock (row, "end", end[i], &day, &work.end);
      if (!stead_work_minutes (&work, NULL, &minutes, NULL, NULL) || minutes < 0)
        check_bad_input (row, "end");
      if (asked == NULL || g_str_equal (asked, activity[i]))
        entries[(*out_n)++] = (SteadHoursEntry) { MAX (minutes, 0), says_yes (row, "paid", paid[i]),
                                                  100 * g_ascii_strtod (pay[i], NULL) };
    }
  if (*out_n == 0)
    check_bad_input (row, "activity_asked");
  return entries;
}

static SteadHoursSum
summary_of (CheckRow *row)
{
  guint n;
  g_autofree SteadHoursEntry *entries = read_entries (row, &n);
  SteadHoursSum sum = { 0 };

  stead_hours_sum (entries, n, check_cents_or (row, "value_usd_h", 0), &sum);
  return sum;
}

#define SUMMARY_ASK(name, value)                                     \
  static double name (CheckRow *row)                                 \
  {                                                                  \
    SteadHoursSum sum = summary_of (row);                            \
                                                                     \
    return (double) (value);                                         \
  }

SUMMARY_ASK (sum_unpaid, stead_hours_of_minutes (sum.unpaid_min))
SUMMARY_ASK (sum_paid, stead_hours_of_minutes (sum.paid_min))
SUMMARY_ASK (sum_total, stead_hours_of_minutes (sum.paid_min + sum.unpaid_min))
SUMMARY_ASK (sum_wages, sum.wages_cents)
SUMMARY_ASK (sum_value, sum.value_cents)

static double
sum_activity (CheckRow *row)
{
  check_need (row, "activity_asked");
  return sum_total (row);
}

static const CheckAsk summary_asks[] = {
  { "activity_hours", "h", sum_activity },
  { "unpaid_hours", "h", sum_unpaid },
  { "paid_hours", "h", sum_paid },
  { "total_hours", "h", sum_total },
  { "wages", "USD", sum_wages },
  { "unpaid_value", "USD", sum_value },
  { NULL }
};

/* volunteer value */

static double
volunteer_value (CheckRow *row)
{
  double minutes = 60 * check_number (row, "hours_h");
  SteadHoursEntry entry = { 0 };
  SteadHoursSum sum;

  if (!(minutes >= 0 && fabs (minutes - floor (minutes + 0.5)) < 1e-9))
    return check_bad_input (row, "hours_h");
  entry.minutes = (gint64) floor (minutes + 0.5);
  stead_hours_sum (&entry, 1, check_cents (row, "rate_usd_h"), &sum);
  return (double) sum.value_cents;
}

static const CheckAsk value_asks[] = {
  { "value", "USD", volunteer_value },
  { NULL }
};

/* late entry */

static double
late_days (CheckRow *row)
{
  return stead_hours_late_days (check_day (row, "work_date"), check_day (row, "entered"));
}

static double
late_verdict (CheckRow *row)
{
  return check_answer_word (row, late_days (row) > check_number (row, "limit_d") ? "accept_marked_late" : "accept");
}

static const CheckAsk late_asks[] = {
  { "verdict", "text", late_verdict },
  { "days_after", "d", late_days },
  { NULL }
};

/* dig notice, dig zone, permit flag */

static double
latest_call (CheckRow *row)
{
  g_auto(GStrv) texts = g_strsplit (check_has (row, "holidays") ? check_text (row, "holidays") : "", "|", -1);
  g_autoptr(GArray) holidays = g_array_new (FALSE, FALSE, sizeof (SteadDay));
  SteadDay call;

  for (gsize i = 0; texts[i] != NULL; i++)
    {
      SteadDay day = check_day_of (row, "holidays", texts[i]);

      g_array_append_val (holidays, day);
    }
  call = stead_dig_latest_call (check_day (row, "dig_date"), (int) minutes_of (row, "notice_business_days"),
                                (SteadDay *) (void *) holidays->data, holidays->len);
  check_need (row, "notice_business_days");
  return call == STEAD_DAY_NONE ? NAN : check_answer_day (row, call);
}

static const CheckAsk notice_asks[] = {
  { "latest_call_date", "text", latest_call },
  { NULL }
};

static double
dig_zone (CheckRow *row)
{
  return check_answer_word (row, stead_dig_by_hand (check_base (row, "distance", "in"), check_base (row, "zone", "in"))
                                 ? "hand_dig_only" : "machine_allowed");
}

static const CheckAsk zone_asks[] = {
  { "flag", "text", dig_zone },
  { NULL }
};

static double
permit_flag (CheckRow *row)
{
  gboolean fence = check_has (row, "fence_height_ft");
  double size = fence ? check_number (row, "fence_height_ft")
                      : check_number (row, "shed_length_ft") * check_number (row, "shed_width_ft");
  double limit = check_number (row, fence ? "limit_ft" : "limit_sqft");

  return check_answer_word (row, stead_permit_by_size (size, limit) ? "permit" : "no_permit_by_size");
}

static const CheckAsk permit_asks[] = {
  { "flag", "text", permit_flag },
  { NULL }
};

const CheckTopic check_hours_topics[] = {
  { "work hours", "start end next_day zone meal_min rest_min entries_min", work_asks },
  { "quarter hour rounding", "minutes_past clock start end next_day meal_min", quarter_asks },
  { "group hours", "students hours_each_h", group_asks },
  { "hours summary",
    "activity start end next_day meal_min paid pay_usd_h value_usd_h activity_asked", summary_asks },
  { "volunteer value", "hours_h rate_usd_h", value_asks },
  { "late entry", "work_date entered limit_d", late_asks },
  { "dig notice", "dig_date notice_business_days holidays", notice_asks },
  { "dig zone", "distance_in zone_in", zone_asks },
  { "permit flag", "shed_length_ft shed_width_ft limit_sqft fence_height_ft limit_ft", permit_asks },
  { NULL }
};

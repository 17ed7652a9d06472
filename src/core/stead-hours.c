/* stead-hours.c - hours of work: from clock to clock, over midnight, through clock changes. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#define DAY_MIN 1440
#define DAY_S 86400

/* A moment that the clock on the wall shows once, twice, or not at all. */
typedef struct
{
  gint64 unix_s[2];   /* the earlier one first */
  int    n;
} Moments;

static gint32
offset_at (GTimeZone *zone,
           gint64     unix_s)
{
  return g_time_zone_get_offset (zone, g_time_zone_find_interval (zone, G_TIME_TYPE_UNIVERSAL, unix_s));
}

/* The offsets a day before and a day after are the only two that the time can have. */
static Moments
find_moments (SteadDay   day,
              int        minute,
              GTimeZone *zone)
{
  gint64 local_s = (gint64) day * DAY_S + minute * 60;
  Moments found = { 0 };
  gint32 before;
  gint32 after;

  if (zone == NULL)
    return (Moments) { { local_s, 0 }, 1 };
  before = offset_at (zone, local_s - DAY_S);
  after = offset_at (zone, local_s + DAY_S);
  if (offset_at (zone, local_s - before) == before)
    found.unix_s[found.n++] = local_s - before;
  if (after != before && offset_at (zone, local_s - after) == after)
    found.unix_s[found.n++] = local_s - after;
  return found;
}

static gboolean
is_clock (const SteadWork *work)
{
  return stead_day_is_valid (work->day) && work->start >= 0 && work->start < DAY_MIN && work->end >= 0
         && work->end < DAY_MIN && work->meal_min >= 0 && work->meal_min <= DAY_MIN
         && work->rest_min >= 0 && work->rest_min <= DAY_MIN;
}

/* Both ends in absolute time; FALSE with @error set. */
static gboolean
find_ends (const SteadWork  *work,
           GTimeZone        *zone,
           gint64            unix_s[2],
           gboolean         *out_twice,
           GError          **error)
{
  Moments start;
  Moments end;

  if (!is_clock (work))
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("A stretch of work needs a day, a start, an end, and breaks of up to a day. "
                             "Check them."));
      return FALSE;
    }
  start = find_moments (work->day, work->start, zone);
  end = find_moments (work->day + (work->next_day ? 1 : 0), work->end, zone);
  if (start.n == 0 || end.n == 0)
    {
      g_set_error_literal (error, STEAD_CORE_ERROR, STEAD_CORE_ERROR_RANGE,
                           _("The clocks went forward that night, so this time did not come. "
                             "Check start and end."));
      return FALSE;
    }
  unix_s[0] = start.unix_s[work->start_second && start.n == 2 ? 1 : 0];
  unix_s[1] = end.unix_s[work->end_second && end.n == 2 ? 1 : 0];
  *out_twice = start.n == 2 || end.n == 2;
  return TRUE;
}

gboolean
stead_work_minutes (const SteadWork  *work,
                    GTimeZone        *zone,
                    int              *out_minutes,
                    gboolean         *out_twice,
                    GError          **error)
{
  gint64 unix_s[2];
  gboolean twice;

  g_return_val_if_fail (work != NULL && out_minutes != NULL, FALSE);

  if (!find_ends (work, zone, unix_s, &twice, error))
    return FALSE;
  *out_minutes = (int) ((unix_s[1] - unix_s[0]) / 60) - work->meal_min
                 - (work->rest_min > STEAD_HOURS_REST_MIN ? work->rest_min : 0);
  if (out_twice != NULL)
    *out_twice = twice;
  return TRUE;
}

gboolean
stead_work_times (const SteadWork  *work,
                  GTimeZone        *zone,
                  gint64           *out_from,
                  gint64           *out_to,
                  GError          **error)
{
  gint64 unix_s[2];
  gboolean twice;

  g_return_val_if_fail (work != NULL && out_from != NULL && out_to != NULL, FALSE);

  if (!find_ends (work, zone, unix_s, &twice, error))
    return FALSE;
  *out_from = unix_s[0];
  *out_to = unix_s[1];
  return TRUE;
}

gboolean
stead_work_is_likely (int minutes)
{
  return minutes > 0 && minutes <= STEAD_HOURS_MOST_MIN;
}

/* Overlaps */

typedef struct
{
  gint64 unix_s[2];
  gsize  place;
} Stretch;

static int
compare_stretches (const void *a,
                   const void *b)
{
  const Stretch *left = a;
  const Stretch *right = b;

  if (left->unix_s[0] != right->unix_s[0])
    return left->unix_s[0] < right->unix_s[0] ? -1 : 1;
  return left->place < right->place ? -1 : 1;
}

gboolean
stead_work_find_overlap (const SteadWork *works,
                         gsize            n,
                         GTimeZone       *zone,
                         gsize           *out_first,
                         gsize           *out_second)
{
  g_autofree Stretch *stretches = g_new (Stretch, n + 1);
  gsize read = 0;
  gsize longest = 0;

  g_return_val_if_fail (works != NULL || n == 0, FALSE);
  g_return_val_if_fail (out_first != NULL && out_second != NULL, FALSE);

  for (gsize i = 0; i < n; i++)
    {
      gboolean twice;

      if (find_ends (&works[i], zone, stretches[read].unix_s, &twice, NULL)
          && stretches[read].unix_s[1] > stretches[read].unix_s[0])
        stretches[read++].place = i;
    }
  qsort (stretches, read, sizeof *stretches, compare_stretches);
  /* Of all that began before, the one that lasts longest is met first. */
  for (gsize i = 1; i < read; i++)
    {
      if (stretches[i].unix_s[0] < stretches[longest].unix_s[1])
        {
          *out_first = stretches[longest].place;
          *out_second = stretches[i].place;
          return TRUE;
        }
      longest = i;
    }
  return FALSE;
}

/* Rounding, text, sums */

int
stead_quarter_round (int minute)
{
  g_return_val_if_fail (minute >= 0, 0);
  return (minute + 7) / 15 * 15;
}

int
stead_quarter_minutes (const SteadWork *work)
{
  g_return_val_if_fail (work != NULL && is_clock (work), 0);
  return stead_quarter_round (work->end + (work->next_day ? DAY_MIN : 0)) - stead_quarter_round (work->start)
         - work->meal_min;
}

double
stead_hours_of_minutes (gint64 minutes)
{
  return (double) minutes / 60;
}

char *
stead_hours_format (gint64 minutes)
{
  g_return_val_if_fail (minutes >= 0, g_strdup (""));
  return g_strdup_printf ("%" G_GINT64_FORMAT ":%02d", minutes / 60, (int) (minutes % 60));
}

int
stead_hours_late_days (SteadDay work,
                       SteadDay entered)
{
  g_return_val_if_fail (stead_day_is_valid (work) && stead_day_is_valid (entered), 0);
  return entered - work;
}

void
stead_hours_sum (const SteadHoursEntry *entries,
                 gsize                  n,
                 double                 value_cents_h,
                 SteadHoursSum         *out)
{
  SteadHoursSum sum = { 0 };
  double wages = 0;

  g_return_if_fail (entries != NULL || n == 0);
  g_return_if_fail (value_cents_h >= 0 && value_cents_h < 1e9);
  g_return_if_fail (out != NULL);

  for (gsize i = 0; i < n; i++)
    {
      g_return_if_fail (entries[i].minutes >= 0 && entries[i].minutes < 1000000000);
      if (!entries[i].paid)
        {
          sum.unpaid_min += entries[i].minutes;
          continue;
        }
      g_return_if_fail (entries[i].pay_cents_h >= 0 && entries[i].pay_cents_h < 1e9);
      sum.paid_min += entries[i].minutes;
      wages += (double) entries[i].minutes * entries[i].pay_cents_h / 60;
    }
  sum.wages_cents = stead_money_round (wages);
  sum.value_cents = stead_money_round ((double) sum.unpaid_min * value_cents_h / 60);
  *out = sum;
}

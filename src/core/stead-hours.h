/* stead-hours.h - hours of work: from clock to clock, over midnight, through clock changes.
 *
 * Invariants:
 *  1. Minutes are stored and added; only a sum becomes hours.  Three times 20 min are
 *     1 h; three times 0.33 h are not.
 *  2. The day of the end is asked for, never guessed.
 *  3. Hours of students are not rounded.  The quarter hour is there for a payroll that
 *     needs it, and rounds both ends alike.
 * Sources: 29 CFR 785.18 (rests) and 785.48(b) (rounding); University of Arizona payroll,
 * rounding reported hours (7 down, 8 up).
 */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

/* A longer stretch is a slip of the pen, unless an advisor says so: 16 h (own rule). */
#define STEAD_HOURS_MOST_MIN (16 * 60)

/* A rest up to so long is work time: 5 to 20 min, 29 CFR 785.18. */
#define STEAD_HOURS_REST_MIN 20

/* An entry made later than this after the work is marked (own rule). */
#define STEAD_HOURS_LATE_DAYS 7

/* One stretch of work, as the clock on the wall showed it. */
typedef struct
{
  SteadDay day;            /* of the start */
  int      start;          /* minutes after midnight, 0 to 1439 */
  int      end;            /* minutes after midnight, 0 to 1439 */
  gboolean next_day;       /* the end is on the next day */
  int      meal_min;       /* a real meal, free of duty: taken off */
  int      rest_min;       /* rests: taken off only beyond STEAD_HOURS_REST_MIN */
  gboolean start_second;   /* where clocks go back, an hour comes twice: the second one */
  gboolean end_second;
} SteadWork;

/**
 * stead_work_minutes:
 * @work: the stretch
 * @zone: (nullable): of the place; %NULL: every day has 24 hours
 * @out_minutes: (out): end - start - meal; may be 0 or less for a slip of the pen
 * @out_twice: (out) (optional): whether the start or the end is a time that came twice
 *   that night, so that it is worth asking which
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE; or %FALSE with the outputs left alone: a number cannot be, or clocks
 *   went forward over that time
 */
gboolean stead_work_minutes (const SteadWork  *work,
                             GTimeZone        *zone,
                             int              *out_minutes,
                             gboolean         *out_twice,
                             GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_work_times:
 * @out_from: (out): the start, seconds since 1970
 * @out_to: (out): the end; not later than @out_from for a slip of the pen
 *
 * As stead_work_minutes(), for what is kept.
 */
gboolean stead_work_times (const SteadWork  *work,
                           GTimeZone        *zone,
                           gint64           *out_from,
                           gint64           *out_to,
                           GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_work_is_likely:
 * Returns: whether @minutes are above 0 and not more than %STEAD_HOURS_MOST_MIN
 */
gboolean stead_work_is_likely (int minutes);

/**
 * stead_work_find_overlap:
 * @works: (array length=n): of one person, in any order
 * @n: how many
 * @zone: (nullable): as above
 * @out_first: (out): the one that begins earlier
 * @out_second: (out): the one that begins before it is over
 *
 * A stretch that cannot be read is passed over.  What begins as another ends does not
 * overlap it.
 *
 * Returns: %TRUE with the earliest overlap; %FALSE with the outputs left alone for none
 */
gboolean stead_work_find_overlap (const SteadWork *works,
                                  gsize            n,
                                  GTimeZone       *zone,
                                  gsize           *out_first,
                                  gsize           *out_second);

/**
 * stead_quarter_round:
 * @minute: 0 or more
 *
 * Returns: to the quarter hour: up to 7 min past it go down, 8 go up
 */
int stead_quarter_round (int minute);

/**
 * stead_quarter_minutes:
 * Both ends go to the quarter hour; the meal is not rounded.
 *
 * Returns: minutes by the clock; for payroll only
 */
int stead_quarter_minutes (const SteadWork *work);

/**
 * stead_hours_of_minutes: minutes / 60
 */
double stead_hours_of_minutes (gint64 minutes);

/**
 * stead_hours_format:
 * @minutes: 0 or more
 *
 * Returns: (transfer full): "3:25"
 */
char *stead_hours_format (gint64 minutes) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_hours_late_days:
 * Returns: days from the work to the entry; late beyond %STEAD_HOURS_LATE_DAYS
 */
int stead_hours_late_days (SteadDay work,
                           SteadDay entered);

/* Entries whose minutes are known. */
typedef struct
{
  gint64   minutes;
  gboolean paid;
  double   pay_cents_h;    /* of an hour that is paid */
} SteadHoursEntry;

typedef struct
{
  gint64 paid_min;
  gint64 unpaid_min;
  gint64 wages_cents;
  gint64 value_cents;      /* of the unpaid hours: a memo line, never income */
} SteadHoursSum;

/**
 * stead_hours_sum:
 * @entries: (array length=n): of a person, a group or a duty
 * @n: how many
 * @value_cents_h: what the school would pay for an hour of this work; 0: no memo
 * @out: (out): the sums; money is rounded once, at the end
 *
 * Source of the basis of the value: 2 CFR 200.306(e), the rate for similar work.
 */
void stead_hours_sum (const SteadHoursEntry *entries,
                      gsize                  n,
                      double                 value_cents_h,
                      SteadHoursSum         *out);

G_END_DECLS

/* stead-ics.h - days and times as an open calendar file.
 *
 * Source of the form: RFC 5545 (2009): lines of at most 75 octets that end in CR LF and
 * are folded (3.1), values of type TEXT (3.3.11), days (3.3.4), moments in UTC (3.3.5,
 * form 2), what a calendar and an event must have (3.6, 3.6.1).
 */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

/* One thing in the calendar: a whole day, or from one moment to another. */
typedef struct
{
  char     *uid;        /* the same each time it is written; no two are alike */
  char     *summary;
  char     *note;       /* (nullable) */
  char     *place;      /* (nullable) */
  SteadDay  day;        /* of a thing that has no time; else STEAD_DAY_NONE */
  int       every_days; /* comes again after so many days; 0: once */
  SteadDay  until;      /* last day on which it may come again; ignored without every_days */
  gint64    from_at;    /* of a thing with a time: seconds since 1970 */
  gint64    to_at;      /* later than @from_at */
  gboolean  busy;       /* takes up the time, as a sale day does */
} SteadIcsThing;

void stead_ics_thing_free (SteadIcsThing *thing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadIcsThing, stead_ics_thing_free)

/**
 * stead_ics_write:
 * @things: (element-type SteadIcsThing): what stands in it; may be empty of things that
 *   are, not of the array
 * @name: of the calendar
 * @made_at: the moment that the file says it was made, seconds since 1970
 *
 * Returns: (transfer full): the file; UTF-8
 */
char *stead_ics_write (const GPtrArray *things,
                       const char      *name,
                       gint64           made_at) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

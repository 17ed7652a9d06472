/* stead-ripening.h - when a crop will be ripe, by the warmth that it needs.
 *
 * The need is the sum of degree days from transplanting to the first ripe fruit.
 * It starts as a handbook's figure and is learned from the farm's own years, variety
 * by variety (core/stead-learn.h).  Own sums are worth something only beside the
 * method and the base that they were counted with.
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-degree-days.h"
#include "core/stead-learn.h"
#include "core/stead-typical-year.h"

G_BEGIN_DECLS

/* Days of the log whose mean stands for the days to come, and how many of them
 * must have been read (common practice, no source). */
#define STEAD_RIPE_RECENT_DAYS 14
#define STEAD_RIPE_RECENT_LEAST 5

/* How far ahead of the log's end a date is looked for. */
#define STEAD_RIPE_HORIZON_DAYS 366

/**
 * stead_ripe_days:
 * @need: degree days still needed, 0 or more
 * @daily: degree days of a usual day, in the same unit
 *
 * Source: garden answers on how long tomatoes take to ripen (need over daily mean).
 *
 * Returns: days; NAN if the days bring no warmth
 */
double stead_ripe_days (double need,
                        double daily);

/* What stands for the days that have no reading yet. */
typedef enum
{
  STEAD_RIPE_BY_RECENT,   /* the mean of the log's last days */
  STEAD_RIPE_BY_NORMALS,  /* a typical year */
} SteadRipeOutlook;

/* The log of one planting. */
typedef struct
{
  SteadDegreeDayRule   rule;
  SteadDay             first_day;  /* of transplanting, and of days[0] */
  const SteadDayTemps *days;       /* up to the last day that should have been read */
  gsize                n_days;     /* 0: transplanting is still to come */
} SteadRipeLog;

typedef struct
{
  SteadDay         day;         /* when the need is reached; STEAD_DAY_NONE: not within the horizon */
  SteadDay         early;       /* the band, after the log's end: in 8 of 10 cases the day ... */
  SteadDay         late;        /* ... lies between; each STEAD_DAY_NONE beyond the horizon */
  double           sum_c;       /* °C-days that were read */
  double           assumed_c;   /* °C-days put in for the gaps */
  gsize            n_gaps;      /* days of the log without readings */
  double           coming_c;    /* °C-days expected of the first day to come */
  SteadRipeOutlook outlook;     /* what was used for the days to come */
} SteadRipeDate;

/**
 * stead_ripe_date:
 * @log: readings since transplanting
 * @need: the need, as it was learned
 * @outlook: what to expect of the days to come, if it can be had; else the other
 * @normals: (nullable): a valid typical year of the place where the crop stands;
 *   one of the weather outdoors does not fit a heated house
 * @out_date: (out): the day and what it rests on
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * A gap between two days that were read gets what lies between them; a gap at an
 * end what the nearest reading or the outlook says.  It is told in @out_date.
 *
 * The band is that of stead_learn_days(): how much varieties and years differ, and how
 * much the weather to come does.  The fruit is taken not to be ripe at the log's end, as
 * whoever looks can see: a @day that lies within the log means "any day now".
 *
 * Returns: %TRUE, or %FALSE if nothing can be expected: there is no typical year
 *   and too little was read lately
 */
gboolean stead_ripe_date (const SteadRipeLog      *log,
                          const SteadLearned      *need,
                          SteadRipeOutlook         outlook,
                          const SteadTypicalYear  *normals,
                          SteadRipeDate           *out_date,
                          GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

/* stead-reading-series.h - one reading over time, with its limits: what a trend chart draws. */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-trend.h"
#include "core/stead-water-limit.h"

G_BEGIN_DECLS

typedef struct
{
  double            day;       /* with the time of the day as a fraction */
  double            value;
  SteadWaterVerdict verdict;
} SteadReadingPoint;

typedef struct
{
  const SteadReadingPoint *points;     /* (array length=n_points): oldest first; a test that did not read it is not there */
  gsize                    n_points;
  SteadDay                 from, to;   /* the span that is shown */
  SteadDay                 today;
  double                   gap_days;   /* points further apart are not joined */
  double                   min, max;   /* of the limits, in the unit of the values; NAN: no end */
  double                   act_below, act_above;
  const SteadTrend        *trend;      /* (nullable): told by the last points */
  double                   trend_day;  /* the day of its last point */
  int                      ahead_days; /* that it is carried on */
} SteadReadingSeries;

G_END_DECLS

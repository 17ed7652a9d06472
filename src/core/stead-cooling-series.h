/* stead-cooling-series.h - a pot that cools, as a chart shows it.
 *
 * Minutes count from the first reading; temperatures are °F, since the marks are.  The
 * arrays belong to whoever filled them in.
 */
#pragma once

#include "core/stead-cooling.h"

G_BEGIN_DECLS

/* The fitted curve: from the reading where it begins up to now what it was, after that what is expected. */
typedef struct
{
  double minute;
  double low_f, likely_f, high_f;
} SteadCoolingStep;

typedef struct
{
  double                temp_f;
  double                due_min;   /* the last minute for it */
  SteadCoolingMarkState state;
} SteadCoolingDue;

typedef struct
{
  const SteadCoolingReading *readings;   /* by minute */
  gsize                      n_readings;
  const SteadCoolingStep    *steps;      /* by minute; none without a fit */
  gsize                      n_steps;
  SteadCoolingDue            marks[STEAD_COOLING_MARKS];
  gsize                      n_marks;
  double                     clock_min;  /* when the clock of the rule started */
  double                     now_min;    /* NAN: over */
  double                     act_min;    /* the last minute to act; NAN: none */
  double                     end_min;    /* of the chart */
  int                        first_of_day;  /* minute of the day of minute 0, as the clock on the wall shows it */
} SteadCoolingSeries;

G_END_DECLS

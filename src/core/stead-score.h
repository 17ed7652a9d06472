/* stead-score.h - scores of practices over time, as shares of all points. */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

typedef struct
{
  SteadDay day;
  double   frac;      /* of the points that could be had, 0 to 1 */
  gboolean is_final;  /* of the event itself */
} SteadScorePoint;

/* What can be compared: one part of an event, by one person or by the whole team.
 * The array and the name belong to whoever filled them in. */
typedef struct
{
  const char            *name;
  const SteadScorePoint *points;   /* (array length=n): by day */
  gsize                  n;        /* 1 or more */
} SteadScoreLine;

/* Lines of one chart.  The array belongs to whoever filled it in. */
typedef struct
{
  const SteadScoreLine *lines;        /* (array length=n) */
  int                   n;            /* 1 to %STEAD_SCORE_MOST_LINES */
  SteadDay              event;        /* marked; STEAD_DAY_NONE: not said */
  const char           *unit;         /* over the left axis: "% of the points" */
  const char           *event_name;   /* (nullable): at the mark */
} SteadScoreSeries;

/* More lines than these can't be told apart in one chart. */
#define STEAD_SCORE_MOST_LINES 6

G_END_DECLS

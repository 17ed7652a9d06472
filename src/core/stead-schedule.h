/* stead-schedule.h - the critical path: when each step of a project must begin.
 *
 * Steps take whole days and wait for others.  Forward it is told when each can begin at the
 * earliest, backward when it must begin at the latest; what has no day to spare decides how
 * long all of it takes.
 * Source: the critical path method, as taught for project planning (1959): forward and
 * backward pass; slack = latest less earliest start (memory).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_SCHEDULE_MOST_DAYS 10000   /* of one step */
#define STEAD_SCHEDULE_MOST_AFTER 4

typedef struct
{
  int   days;        /* 0 to %STEAD_SCHEDULE_MOST_DAYS; 0: a moment */
  gsize n_after;
  gsize after[STEAD_SCHEDULE_MOST_AFTER];   /* steps that must be over first, each earlier in the list */
} SteadScheduleStep;

/* Days are counted from the begin of the first step, 0. */
typedef struct
{
  int earliest;      /* start */
  int latest;        /* start that makes all of it no longer */
} SteadScheduleTime;

/**
 * stead_schedule:
 * @steps: (array length=n): what waits for a step stands after it
 * @out: (out caller-allocates) (array length=n): when each begins
 *
 * Returns: days of all of it, 0 without a step
 */
int stead_schedule (const SteadScheduleStep *steps,
                    gsize                    n,
                    SteadScheduleTime       *out);

G_END_DECLS

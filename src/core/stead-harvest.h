/* stead-harvest.h - how much will be picked in which week.
 *
 * A crop gives a total per plant over its picking span, spread over the span by a
 * shape.  The span is counted in days or, where a log of temperatures runs, in
 * degree days: a warm week then brings more of the crop than a cool one.
 *
 * The shapes are common practice, no source: they say what pickers see, not what
 * a trial measured.  The farm's own pickings replace them.
 */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_HARVEST_EVEN,      /* the same all along: cut greens.  A span of 1 day: all at once */
  STEAD_HARVEST_BELL,      /* slow, much, slow: bush tomatoes, which ripen together */
  STEAD_HARVEST_PLATEAU,   /* up over a quarter of the span, level, down over the last
                            * eighth: tomatoes on strings, peppers */
} SteadHarvestShape;

/**
 * stead_harvest_share:
 * @shape: how the crop comes in
 * @part: part of the picking span that has gone by; below 0 counts as 0, above 1 as 1
 *
 * Returns: share of the crop that has been picked by then, 0 to 1, never falling
 */
double stead_harvest_share (SteadHarvestShape shape,
                            double            part);

typedef struct
{
  SteadHarvestShape shape;
  double            plants;        /* that will bear */
  double            plant_kg;      /* total of a plant over the whole span */
  double            plant_low_kg;  /* its band; low <= total <= high */
  double            plant_high_kg;
  SteadDay          start;         /* first ripe fruit; STEAD_DAY_NONE: not in sight */
  SteadDay          start_early;   /* ends of its band, STEAD_DAY_NONE likewise */
  SteadDay          start_late;
  SteadDay          last_day;      /* of picking: frost, or the bed is needed */
  double            span;          /* length of the whole picking span: days, or °C-days if
                                    * daily_c is given; above 0 */
  const double     *daily_c;       /* (nullable): °C-days expected of each day ... */
  gsize             n_daily;
  SteadDay          daily_day;     /* ... from this day on; none are expected of other days */
} SteadHarvestPlan;

typedef struct
{
  SteadDay first_day;
  double   kg;        /* expected */
  double   low_kg;    /* for the low total and whichever start brings the least ... */
  double   high_kg;   /* ... and the high total and the start that brings the most */
} SteadHarvestSpan;

/**
 * stead_harvest_between:
 * @plan: what is expected of the crop
 * @first_day: first day of the span that is asked about
 * @last_day: its last day, not before @first_day
 * @out_span: (out): the picking of these days
 *
 * What the season's last day cuts off is not picked: a sum over all weeks can fall
 * short of plants times total.
 */
void stead_harvest_between (const SteadHarvestPlan *plan,
                            SteadDay                first_day,
                            SteadDay                last_day,
                            SteadHarvestSpan       *out_span);

/**
 * stead_harvest_weeks:
 * @plan: what is expected of the crop
 * @first_day: first day of the first week
 * @weeks: (array length=n_weeks): to be filled in
 * @n_weeks: how many
 */
void stead_harvest_weeks (const SteadHarvestPlan *plan,
                          SteadDay                first_day,
                          SteadHarvestSpan       *weeks,
                          gsize                   n_weeks);

G_END_DECLS

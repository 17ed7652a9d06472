/* stead-harvest-series.h - what a harvest chart is made of. */
#pragma once

#include "core/stead-calendar.h"

G_BEGIN_DECLS

/* Seven days of picking. */
typedef struct
{
  SteadDay first_day;
  double   picked_kg;   /* good, into lots */
  double   lost_kg;     /* thrown out when picked */
  double   low_kg;      /* expected, with its band; NAN in a week that is over */
  double   likely_kg;
  double   high_kg;
} SteadPickWeek;

typedef struct
{
  const SteadPickWeek *weeks;        /* one after the other, without gaps */
  gsize                n_weeks;
  SteadDay             today;        /* STEAD_DAY_NONE: the crop is over */
  SteadDay             first_ripe;   /* seen, or expected; STEAD_DAY_NONE: not known */
  SteadDay             ripe_early;   /* ends of its band; both are first_ripe once it was seen */
  SteadDay             ripe_late;
} SteadHarvestSeries;

G_END_DECLS

/* stead-aquaponics.h - how much bed a feed keeps, and how many plants.
 *
 * Sources: FAO Technical Paper 589, component calculations (feed of 32 %
 * protein); UVI raft feeding rate ratio.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  STEAD_BED_LEAFY,      /* 40 to 50 g of feed a square meter and day, FAO 589 */
  STEAD_BED_FRUITING,   /* 50 to 80, FAO 589 */
  STEAD_BED_RAFT,       /* 60 to 100, UVI, any crop on rafts */
} SteadBed;

#define STEAD_N_BEDS (STEAD_BED_RAFT + 1)

/**
 * stead_bed_feed_rate:
 * @bed: what grows, and how
 * @out_min_g_m2: (out): g of feed for a square meter and day
 * @out_max_g_m2: (out): the same at most
 */
void stead_bed_feed_rate (SteadBed  bed,
                          double   *out_min_g_m2,
                          double   *out_max_g_m2);

/**
 * stead_bed_area_m2: bed that a feed keeps, feed / rate
 * stead_bed_feed_g: feed that a bed needs, area x rate
 *
 * Returns: m², or g a day; NAN without a rate
 */
double stead_bed_area_m2 (double feed_g_day,
                          double rate_g_m2);
double stead_bed_feed_g (double area_m2,
                         double rate_g_m2);

/**
 * stead_bed_plants_for_feed:
 * @bed: what grows, and how
 * @feed_g_day: feed given
 * @out_min: (out): plants that it keeps: dense feed, wide stand
 * @out_max: (out): the same at most: thin feed, close stand
 *
 * How close they stand is told by stead_crop_density_range(); rafts hold leafy crops.
 */
void stead_bed_plants_for_feed (SteadBed  bed,
                                double    feed_g_day,
                                double   *out_min,
                                double   *out_max);

G_END_DECLS

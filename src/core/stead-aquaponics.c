/* stead-aquaponics.c - how much bed a feed keeps, and how many plants. */
#include "config.h"

#include "core/stead-aquaponics.h"
#include "core/stead-crop.h"

#include <math.h>

static const struct
{
  double min_g_m2;
  double max_g_m2;
  SteadCropKind kind;
} beds[STEAD_N_BEDS] = {
  [STEAD_BED_LEAFY] = { 40, 50, STEAD_CROP_KIND_LEAFY },
  [STEAD_BED_FRUITING] = { 50, 80, STEAD_CROP_KIND_FRUITING },
  [STEAD_BED_RAFT] = { 60, 100, STEAD_CROP_KIND_LEAFY },
};

static gboolean
is_bed (SteadBed bed)
{
  return (gsize) bed < G_N_ELEMENTS (beds);
}

void
stead_bed_feed_rate (SteadBed  bed,
                     double   *out_min_g_m2,
                     double   *out_max_g_m2)
{
  g_return_if_fail (is_bed (bed));
  g_return_if_fail (out_min_g_m2 != NULL && out_max_g_m2 != NULL);

  *out_min_g_m2 = beds[bed].min_g_m2;
  *out_max_g_m2 = beds[bed].max_g_m2;
}

double
stead_bed_area_m2 (double feed_g_day,
                   double rate_g_m2)
{
  return rate_g_m2 > 0 ? feed_g_day / rate_g_m2 : NAN;
}

double
stead_bed_feed_g (double area_m2,
                  double rate_g_m2)
{
  return area_m2 >= 0 && rate_g_m2 >= 0 ? area_m2 * rate_g_m2 : NAN;
}

void
stead_bed_plants_for_feed (SteadBed  bed,
                           double    feed_g_day,
                           double   *out_min,
                           double   *out_max)
{
  double least, most;

  g_return_if_fail (is_bed (bed));
  g_return_if_fail (out_min != NULL && out_max != NULL);

  stead_crop_density_range (beds[bed].kind, &least, &most);
  *out_min = stead_crop_plants (stead_bed_area_m2 (feed_g_day, beds[bed].max_g_m2), least);
  *out_max = stead_crop_plants (stead_bed_area_m2 (feed_g_day, beds[bed].min_g_m2), most);
}

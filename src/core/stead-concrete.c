/* stead-concrete.c - concrete round posts: holes, the job, bags. */
#include "config.h"

#include "core/stead-concrete.h"
#include "core/stead-count.h"
#include "core/stead-us-units.h"

#include <math.h>

static double
area_m2 (SteadHoleShape shape,
         double         width_m)
{
  return shape == STEAD_HOLE_ROUND ? G_PI / 4 * width_m * width_m : width_m * width_m;
}

/* The widest straight line through the post, and the narrowest through the hole: a
 * square post in a round hole must fit corner to corner. */
static gboolean
post_fits (const SteadPostHole *hole)
{
  double across = hole->post_width_m;

  if (hole->post_shape == STEAD_HOLE_SQUARE && hole->hole_shape == STEAD_HOLE_ROUND)
    across *= M_SQRT2;
  return hole->post_width_m >= 0 && across <= hole->hole_width_m;
}

double
stead_post_hole_m3 (const SteadPostHole *hole)
{
  g_return_val_if_fail (hole != NULL, NAN);

  if (!(hole->hole_width_m > 0 && hole->depth_m >= 0) || !post_fits (hole))
    return NAN;
  return (area_m2 (hole->hole_shape, hole->hole_width_m) - area_m2 (hole->post_shape, hole->post_width_m))
         * hole->depth_m;
}

double
stead_concrete_bag_m3 (int bag_lb)
{
  switch (bag_lb)
    {
    case 40:
      return 0.30 * STEAD_CUBIC_FOOT_M3;
    case 60:
      return 0.45 * STEAD_CUBIC_FOOT_M3;
    case 80:
      return 0.60 * STEAD_CUBIC_FOOT_M3;
    default:
      return NAN;
    }
}

gint64
stead_concrete_bags (double volume_m3,
                     int    bag_lb)
{
  return stead_count_up (volume_m3, stead_concrete_bag_m3 (bag_lb));
}

gint64
stead_concrete_bags_by_hole (double hole_m3,
                             gint64 holes,
                             int    bag_lb)
{
  gint64 each = stead_concrete_bags (hole_m3, bag_lb);

  if (each == STEAD_COUNT_NONE || holes < 0 || (each > 0 && holes > STEAD_COUNT_MOST / each))
    return STEAD_COUNT_NONE;
  return holes * each;
}

double
stead_footing_depth_m (double frost_m)
{
  return frost_m >= 0 ? MAX (frost_m, STEAD_FOOTING_LEAST_M) : NAN;
}

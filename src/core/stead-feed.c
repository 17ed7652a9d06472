/* stead-feed.c - feed: how much, and what it costs by gain and by dozen. */
#include "config.h"

#include "core/stead-feed.h"

#include <math.h>

double
stead_feed_for_gain (double gain,
                     double conversion)
{
  return gain * conversion;
}

double
stead_feed_conversion (double feed,
                       double mass)
{
  return mass > 0 ? feed / mass : NAN;
}

double
stead_feed_per_dozen (double feed_hen_day,
                      double hen_day_frac)
{
  return hen_day_frac > 0 ? 12 * feed_hen_day / hen_day_frac : NAN;
}

double
stead_feed_cents (double feed,
                  double bag_cents,
                  double bag_weight)
{
  return bag_weight > 0 ? feed * bag_cents / bag_weight : NAN;
}

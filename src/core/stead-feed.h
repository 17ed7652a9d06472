/* stead-feed.h - feed: how much, and what it costs by gain and by dozen.
 *
 * Sources: a farm management question on catfish feed (gain); a small-flock
 * owner's figures (dozen).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_feed_for_gain:
 * @gain: weight to be gained
 * @conversion: weight of feed for one of gain
 *
 * Returns: weight of feed
 */
double stead_feed_for_gain (double gain,
                            double conversion);

/**
 * stead_feed_conversion:
 * Returns: weight of feed for one of @mass; NAN without mass
 */
double stead_feed_conversion (double feed,
                              double mass);

/**
 * stead_feed_per_dozen:
 * @feed_hen_day: feed of one hen and day, in any unit of weight
 * @hen_day_frac: eggs per hen and day, above 0
 *
 * Returns: feed for a dozen eggs in the same unit; NAN without eggs
 */
double stead_feed_per_dozen (double feed_hen_day,
                             double hen_day_frac);

/**
 * stead_feed_cents:
 * @feed: weight of feed
 * @bag_cents: price of a bag, or of any known weight
 * @bag_weight: that weight, in the same unit, above 0
 *
 * Returns: what the feed costs; NAN without a weight
 */
double stead_feed_cents (double feed,
                         double bag_cents,
                         double bag_weight);

G_END_DECLS

/* stead-hen-house.h - room, feed and water for hens by rule of thumb.
 *
 * Planning values, never promises: local extension advice goes first.
 * Sources: county extension column on successful backyard egg production (floor,
 * perch, feeder, water); extension answer 257347, Ohio (usual floor, nests);
 * Calculating Agriculture, chapter 12, p. 12-8 (feeders by rim); old state
 * college column (feed); leaflet on feeding layers (pullets).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_hen_floor_least_m2: 1.5 square feet a hen
 * stead_hen_floor_usual_m2: 2 square feet a hen
 */
double stead_hen_floor_least_m2 (gint64 hens);
double stead_hen_floor_usual_m2 (gint64 hens);

/**
 * stead_hen_nest_boxes:
 * @hens: how many
 * @hens_per_box: hens that share one, above 0; 4 or 5 is usual
 *
 * Returns: boxes, rounded up
 */
gint64 stead_hen_nest_boxes (gint64 hens,
                             double hens_per_box);

/**
 * stead_hen_troughs:
 * @birds: how many
 * @each_m: room at the rim that one bird needs
 * @rim_m: rim of one feeder or waterer, above 0
 *
 * Returns: feeders or waterers, rounded up
 */
gint64 stead_hen_troughs (gint64 birds,
                          double each_m,
                          double rim_m);

/**
 * stead_hen_water_least_l: litres a day; 5 US gallons for 100 hens
 * stead_hen_feed_kg: kg a day; 25 pounds for 100 hens in half lay or better
 */
double stead_hen_water_least_l (gint64 hens);
double stead_hen_feed_kg (gint64 hens);

/**
 * stead_pullet_feed_kg:
 * @birds: how many
 * @to_age_weeks: end of a stage: 6 (starter) or 16 (starter and grower)
 * @out_kg: (out): 2 pounds a bird, and 11 more to week 16
 * @error: return location for a #GError in %STEAD_CORE_ERROR
 *
 * Returns: %TRUE, or %FALSE for another age
 */
gboolean stead_pullet_feed_kg (gint64   birds,
                               int      to_age_weeks,
                               double  *out_kg,
                               GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS

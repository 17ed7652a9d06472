/* stead-crop.h - plants, room and yield of a crop.
 *
 * Handbook figures are planning values, never promises: local extension advice
 * goes first, then the farm's own years.
 */
#pragma once

#include "core/stead-degree-days.h"

G_BEGIN_DECLS

/**
 * stead_crop_tomato_rule:
 * @out_rule: (out): the plain average over 10 °C (50 °F), as the default need for
 *   ripening was counted; upper 30 °C (86 °F) for the methods that look at it
 *
 * Source: garden answers on how long tomatoes take to ripen (average, base);
 * Iowa State University, Agronomy 541 lesson 2b (upper).
 */
void stead_crop_tomato_rule (SteadDegreeDayRule *out_rule);

typedef enum
{
  STEAD_CROP_KIND_LEAFY,      /* lettuce, basil, greens */
  STEAD_CROP_KIND_FRUITING,   /* tomatoes, peppers, cucumbers */
} SteadCropKind;

/**
 * stead_crop_density_range:
 * @kind: what grows
 * @out_least: (out) (optional): plants on a m² at least
 * @out_most: (out) (optional): plants on a m² at most
 *
 * Sources: FAO Technical Paper 589, component calculations: leafy 20 to 25,
 * fruiting 4 (another copy of the same text has 4 to 8); greenhouse tomato review
 * for Mexico, introduction: 3, so 2.5 is the least here.
 */
void stead_crop_density_range (SteadCropKind  kind,
                               double        *out_least,
                               double        *out_most);

/**
 * stead_crop_plants:
 * @area_m2: of bed, 0 or more
 * @density_m2: plants on a m², 0 or more
 *
 * Returns: plants, fractions kept
 */
double stead_crop_plants (double area_m2,
                          double density_m2);

/**
 * stead_crop_density:
 * @row_m: from row to row
 * @plant_m: from plant to plant in the row
 *
 * Returns: plants on a m²; NAN unless both are above 0
 */
double stead_crop_density (double row_m,
                           double plant_m);

/**
 * stead_crop_bed_plants:
 * @length_m: of the bed, along the rows
 * @width_m: of the bed
 * @row_m: from row to row, above 0
 * @plant_m: from plant to plant in the row, above 0
 *
 * Each plant stands in the middle of its own room, so half a spacing stays free
 * along the edges.
 *
 * Returns: whole plants in whole rows; 0 if the bed is too small for one
 */
gint64 stead_crop_bed_plants (double length_m,
                              double width_m,
                              double row_m,
                              double plant_m);

/**
 * stead_crop_area_m2:
 * Returns: bed that so many plants need; NAN unless the density is above 0
 */
double stead_crop_area_m2 (double plants,
                           double density_m2);

/**
 * stead_crop_yield_plant_kg: harvest / plants; NAN without plants
 * stead_crop_yield_m2_kg: harvest / area; NAN without an area
 */
double stead_crop_yield_plant_kg (double harvest_kg,
                                  double plants);
double stead_crop_yield_m2_kg (double harvest_kg,
                               double area_m2);

/**
 * stead_crop_tons_per_acre:
 * @yield_m2_kg: kg from a m²
 *
 * Source of the rule, pounds / square feet x 43,560 / 2,000: uniformity trial with
 * tomatoes of 1941, yield verification.
 *
 * Returns: short tons of 2,000 pounds from an acre
 */
double stead_crop_tons_per_acre (double yield_m2_kg);

typedef enum
{
  STEAD_FRUIT_SET_GOOD,
  STEAD_FRUIT_SET_UNSURE,   /* sources differ by about 3 °C (5 °F) */
  STEAD_FRUIT_SET_POOR,
} SteadFruitSet;

/**
 * stead_fruit_set:
 * @day_c: highest temperature of the day
 * @night_c: lowest temperature of the night
 *
 * Tomatoes.  Good: a night of 60 to 70 °F and a day to 90 °F.  Poor: a night under
 * 55 or over 75 °F, or a day over 95 °F; a few hours at 103 °F on two days stop it.
 * Sources: news report on extreme heat and tomato flowers, University of Maryland;
 * county extension column on tomato blossom drop, Oklahoma 2021.
 *
 * Returns: how well flowers set fruit at such temperatures
 */
SteadFruitSet stead_fruit_set (double day_c,
                               double night_c);

G_END_DECLS
